"""Names the app to Django, and its subject to the log."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_follow_up, register_subjects


class InstrumentsConfig(AppConfig):
    """What measures."""

    name = "kitchenlog.instruments"
    verbose_name = "Instruments"

    def ready(self) -> None:
        """Its checks go to every phone: the bench fits and applies their corrections. Each
        check begins the count of uses anew."""
        from kitchenlog.instruments.services import count_uses  # noqa: PLC0415 tables load later

        register_subjects("instrument", opens=True)
        register_follow_up("instrument", count_uses)
