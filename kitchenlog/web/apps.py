"""Names the app to Django."""

from django.apps import AppConfig


class WebConfig(AppConfig):
    """What browsers are given."""

    name = "kitchenlog.web"
    verbose_name = "Web"
