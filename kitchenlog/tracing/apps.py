"""Names the app to Django, and hangs the graph on lot and batch sheets."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_table


class TracingConfig(AppConfig):
    """Where goods came from and went."""

    name = "kitchenlog.tracing"
    verbose_name = "Tracing"

    def ready(self) -> None:
        """Keep the graph with each sheet it follows from; the fields have named them before."""
        from kitchenlog.tracing.rebuild import (  # noqa: PLC0415 tables load later
            BATCH_EDGES,
            DOUBTFUL,
            LOT_EDGES,
            TOUCHED,
        )

        register_table("lot", LOT_EDGES)
        for table in (BATCH_EDGES, DOUBTFUL, TOUCHED):
            register_table("batch", table)
