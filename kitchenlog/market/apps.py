"""Names the app to Django, and its subject to the log."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_subjects


class MarketConfig(AppConfig):
    """Days at a stall."""

    name = "kitchenlog.market"
    verbose_name = "Market"

    def ready(self) -> None:
        """A day is over by itself; it stays open for a while after its last entry."""
        register_subjects("day", opens=True, ends_by_itself=True)
