"""What stands where in the story, so that nobody uses by accident what is not there."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from decimal import Decimal

FAR_OFF = "9999-12-31"  # sorts behind every lot that has a date


@dataclass(frozen=True)
class Lot:
    """A lot and the day by which it goes first."""

    code: str
    material: str
    unit: str
    life_on: str


class Shelf:
    """Amounts by place and lot, in g, mL or pc."""

    def __init__(self) -> None:
        self._lots: dict[str, Lot] = {}
        self._stock: dict[str, dict[str, Decimal]] = defaultdict(lambda: defaultdict(Decimal))

    def put(self, lot: Lot, place: str, amount: Decimal) -> None:
        """More of a lot at a place."""
        self._lots[lot.code] = lot
        self._stock[place][lot.code] += amount

    def take(self, code: str, place: str, amount: Decimal) -> None:
        """Less of a lot at a place; it may go below zero where the story wants it."""
        self._stock[place][code] -= amount

    def move(self, code: str, amount: Decimal, *, from_place: str, to_place: str) -> None:
        """From one place to another."""
        self.take(code, from_place, amount)
        self.put(self._lots[code], to_place, amount)

    def lot(self, code: str) -> Lot:
        """A lot that was put somewhere once."""
        return self._lots[code]

    def amount(self, code: str, place: str) -> Decimal:
        """How much of one lot the record has at a place."""
        return self._stock[place][code]

    def lots(self, material: str, place: str) -> list[tuple[Lot, Decimal]]:
        """Lots of a material that stand at a place, first expired first."""
        there = [
            (self._lots[code], amount)
            for code, amount in self._stock[place].items()
            if amount > 0 and self._lots[code].material == material
        ]
        return sorted(there, key=lambda row: (row[0].life_on, row[0].code))

    def on_hand(self, material: str, place: str) -> Decimal:
        """All of a material at a place."""
        return sum((amount for _, amount in self.lots(material, place)), Decimal(0))

    def portions(self, material: str, place: str, amount: Decimal) -> list[tuple[Lot, Decimal]]:
        """Which lots give this amount, first expired first; less where there is less."""
        portions, missing = [], amount
        for lot, there in self.lots(material, place):
            portion = min(there, missing)
            if portion > 0:
                portions.append((lot, portion))
                missing -= portion
        return portions
