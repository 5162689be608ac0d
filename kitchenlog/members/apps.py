"""Names the app to Django."""

from importlib import import_module

from django.apps import AppConfig


class MembersConfig(AppConfig):
    """Who works here."""

    name = "kitchenlog.members"
    verbose_name = "Members"

    def ready(self) -> None:
        """Have drf-spectacular find the description of the device cookie."""
        import_module("kitchenlog.members.schema")
