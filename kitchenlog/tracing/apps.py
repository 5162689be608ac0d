"""Names the app to Django, and hangs the graph on lot and batch sheets."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_table


class TracingConfig(AppConfig):
    """Where goods came from and went."""

    name = "kitchenlog.tracing"
    verbose_name = "Tracing"

    def ready(self) -> None:
        """Keep the graph with each sheet it follows from; the fields have named them before."""
        from kitchenlog.tracing.rebuild import BATCH_EDGES, LOT_EDGES  # noqa: PLC0415 tables load later

        register_table("lot", LOT_EDGES)
        register_table("batch", BATCH_EDGES)
