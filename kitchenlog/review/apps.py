"""Names the app to Django."""

from django.apps import AppConfig


class ReviewConfig(AppConfig):
    """Reads for review."""

    name = "kitchenlog.review"
    verbose_name = "Review"
