"""Names the app to Django, and hangs its tables on the sheets they follow from."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_table


class TracingConfig(AppConfig):
    """Where goods came from and went."""

    name = "kitchenlog.tracing"
    verbose_name = "Tracing"

    def ready(self) -> None:
        """Keep the graph, and what failed checks touch, with each sheet it follows from; the
        fields have named them before."""
        from kitchenlog.tracing.rebuild import BATCH_EDGES, LOT_EDGES  # noqa: PLC0415 tables load later
        from kitchenlog.tracing.touched import (  # noqa: PLC0415 tables load later
            READ_IN_CHECKS,
            READ_IN_DRILLS,
            TOUCHED_BY_BATCH,
            TOUCHED_BY_LOT,
        )

        for table in (LOT_EDGES, TOUCHED_BY_LOT):
            register_table("lot", table)
        for table in (BATCH_EDGES, TOUCHED_BY_BATCH):
            register_table("batch", table)
        register_table("skill", READ_IN_DRILLS)
        register_table("instrument", READ_IN_CHECKS)
