"""Names the app to Django."""

from django.apps import AppConfig


class TrainingConfig(AppConfig):
    """Drills and skill."""

    name = "kitchenlog.training"
    verbose_name = "Training"
