"""Names the app to Django."""

from django.apps import AppConfig


class SyncConfig(AppConfig):
    """What phones speak."""

    name = "kitchenlog.sync"
    verbose_name = "Sync"
