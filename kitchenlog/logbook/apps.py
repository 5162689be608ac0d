"""Names the app to Django, and the subjects that belong to no field."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_subjects


class LogbookConfig(AppConfig):
    """The log itself."""

    name = "kitchenlog.logbook"
    verbose_name = "Log"

    def ready(self) -> None:
        """A cooperative's own definition, and what members are called."""
        register_subjects("cooperative", "member")
