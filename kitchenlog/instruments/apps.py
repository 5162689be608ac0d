"""Names the app to Django, and its subject to the log."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_subjects


class InstrumentsConfig(AppConfig):
    """What measures."""

    name = "kitchenlog.instruments"
    verbose_name = "Instruments"

    def ready(self) -> None:
        """Its checks go to every phone: the bench fits and applies their corrections."""
        register_subjects("instrument", opens=True)
