"""Names the app to Django, and its subject to the log."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_subjects


class RecipesConfig(AppConfig):
    """Recipes in versions."""

    name = "kitchenlog.recipes"
    verbose_name = "Recipes"

    def ready(self) -> None:
        """A definition: its sheet is enough on a phone."""
        register_subjects("recipe")
