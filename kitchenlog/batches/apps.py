"""Names the app to Django, and its subjects to the log."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_subjects, register_table


class BatchesConfig(AppConfig):
    """Runs of recipes."""

    name = "kitchenlog.batches"
    verbose_name = "Batches"

    def ready(self) -> None:
        """A batch ends when it is finished; what it cost is open while something is added."""
        from kitchenlog.batches.rebuild import BATCH_TABLE  # noqa: PLC0415 tables load later

        register_subjects("batch", "cost", opens=True)
        register_subjects("rates")
        register_table("batch", BATCH_TABLE)
