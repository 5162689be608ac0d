"""Names the app to Django, and its subject to the log."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_subjects, register_table


class BatchesConfig(AppConfig):
    """Runs of recipes."""

    name = "kitchenlog.batches"
    verbose_name = "Batches"

    def ready(self) -> None:
        """A batch ends when it is finished."""
        from kitchenlog.batches.rebuild import BATCH_TABLE  # noqa: PLC0415 tables load later

        register_subjects("batch", opens=True)
        register_table("batch", BATCH_TABLE)
