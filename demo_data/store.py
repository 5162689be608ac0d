"""Work in the store: receive, refuse, pour together, carry from place to place, write off."""

from __future__ import annotations

from datetime import datetime, timedelta
from decimal import Decimal

from demo_data.diary import Body, Diary, Written
from demo_data.shelf import FAR_OFF, Lot, Shelf
from demo_data.story import Row, Story
from kitchenlog.calc.shelf_life import add_days

BASE_UNITS = {"mass": "g", "volume": "mL", "count": "pc"}
BASE_PER_UNIT = {"kg": 1000, "L": 1000, "pc": 1}
WRITES_PRICES = "bettina"


class Store:
    """What is written about lots before and between batches."""

    def __init__(self, story: Story, diary: Diary, shelf: Shelf) -> None:
        self.story = story
        self.diary = diary
        self.shelf = shelf

    def receive(
        self, by: str, material: str, amount: str, at: datetime, *, their_lot: str
    ) -> Written:
        """A delivery becomes a lot in the store, and a coordinator writes what it cost."""
        row = self.story.materials[material]
        bought, lot = row["bought"], self._new_lot(by, row, at)
        body = {**self._receipt(row, lot, amount), "condition": "fit", "their_lot": their_lot}
        self.shelf.put(lot, "store", Decimal(amount) * BASE_PER_UNIT[bought["unit"]])
        price = {
            "lot": lot.code,
            "price": f"{Decimal(bought['price']) * Decimal(amount):.2f}",
            "currency": self.story.cooperative["currency"],
        }
        self.diary.write(WRITES_PRICES, "price_paid", price, at + timedelta(hours=2))
        return self.diary.write(by, "receipt", body, at)

    def refuse(self, by: str, material: str, amount: str, at: datetime, *, why: str) -> None:
        """A delivery that was sent back; it is recorded and makes no stock."""
        row = self.story.materials[material]
        body = self._receipt(row, self._new_lot(by, row, at), amount)
        refused = {"condition": "refused", "refused_why": why}
        self.diary.write(by, "receipt", {**body, **refused}, at)

    def top_up(self, by: str, material: str, at: datetime) -> None:
        """What is left of several lots in the store is poured together into a new lot."""
        poured = self.shelf.lots(material, "store")
        earliest = min(lot.life_on for lot, _ in poured)
        fresh = self._new_lot(by, self.story.materials[material], at)
        lot = Lot(fresh.code, material, fresh.unit, earliest)
        body: Body = {
            "lot": lot.code,
            "material": material,
            "place": "store",
            "from": [
                {"lot": old.code, "amount": quantity(left, old.unit)} for old, left in poured
            ],
            "life": {"sort": "best_before", "on": earliest},
        }
        self.diary.write(by, "topped_up", body, at)
        for old, left in poured:
            self.shelf.take(old.code, "store", left)
            self.shelf.put(lot, "store", left)

    def transfer(
        self, by: str, lot: Lot, amount: Decimal, at: datetime, *, way: tuple[str, str]
    ) -> None:
        """Stock goes from the first place of `way` to the second."""
        from_place, to_place = way
        body = {
            "lot": lot.code,
            "amount": quantity(amount, lot.unit),
            "from_place": from_place,
            "to_place": to_place,
        }
        self.diary.write(by, "transfer", body, at)
        self.shelf.move(lot.code, amount, from_place=from_place, to_place=to_place)

    def lose(
        self, by: str, material: str, amount: Decimal, at: datetime, *, loss: Body
    ) -> None:
        """Part of the lot of a material that goes first is lost; `loss` says where and why."""
        for lot, portion in self.shelf.portions(material, loss["place"], amount):
            body = {"lot": lot.code, "amount": quantity(portion, lot.unit), **loss}
            self.diary.write(by, "loss", body, at)
            self.shelf.take(lot.code, loss["place"], portion)

    def _receipt(self, row: Row, lot: Lot, amount: str) -> Body:
        bought = row["bought"]
        body: Body = {
            "lot": lot.code,
            "material": row["material"],
            "source": bought["source"],
            "amount": {"amount": amount, "unit": bought["unit"]},
            "place": "store",
        }
        if lot.life_on != FAR_OFF:
            body["life"] = {"sort": "best_before", "on": lot.life_on}
        return body

    def _new_lot(self, by: str, row: Row, at: datetime) -> Lot:
        lasts_days = row["bought"].get("lasts_days")
        on = at.astimezone(self.diary.zone).date().isoformat()
        life_on = FAR_OFF if lasts_days is None else add_days(on, lasts_days)
        code = self.diary.new_code(by, row["letters"], at)
        return Lot(code, row["material"], BASE_UNITS[row["measured_by"]], life_on)


def quantity(amount: Decimal, unit: str) -> dict[str, str]:
    """An amount as it stands in a body."""
    return {"amount": f"{amount:f}", "unit": unit}
