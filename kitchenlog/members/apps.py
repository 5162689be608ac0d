"""Names the app to Django."""

from django.apps import AppConfig


class MembersConfig(AppConfig):
    """Who works here."""

    name = "kitchenlog.members"
    verbose_name = "Members"
