"""Names the app to Django, and its subjects to the log."""

from django.apps import AppConfig

from kitchenlog.logbook.subjects import register_subjects, register_table


class StockConfig(AppConfig):
    """Lots and where they stand."""

    name = "kitchenlog.stock"
    verbose_name = "Stock"

    def ready(self) -> None:
        """Lots and what they cost, and the definitions stock is kept by."""
        from kitchenlog.stock.rebuild import LOT_TABLE, PLACE_TABLE  # noqa: PLC0415 tables load later

        register_subjects("place", "material", "source", "recipient", "asked")
        register_subjects("lot", "price", opens=True)
        register_table("lot", LOT_TABLE)
        register_table("lot", PLACE_TABLE)
