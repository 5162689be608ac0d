"""Names the app to Django."""

from django.apps import AppConfig


class ApiConfig(AppConfig):
    """The read API."""

    name = "kitchenlog.api"
    verbose_name = "Api"
