"""Names the app to Django, and its subject to the log."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_subjects


class TrainingConfig(AppConfig):
    """Drills of members."""

    name = "kitchenlog.training"
    verbose_name = "Training"

    def ready(self) -> None:
        """Practice never ends; a sheet is closed while nobody drills, and opened by the next
        drill."""
        register_subjects("skill", opens=True, ends_by_itself=True)
