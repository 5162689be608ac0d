"""From a lot sheet to the rows stock is found and added up by."""

from __future__ import annotations

from datetime import date
from uuid import UUID

from kitchenlog.calc.numbers import parse_decimal, rounded
from kitchenlog.calc.stock import LotState
from kitchenlog.logbook.subjects import FieldTable
from kitchenlog.stock.models import LotAtPlace, LotRow

# A base unit as the tables count it: its smallest unit, and how many of those it has.
SMALLEST_UNITS = {"g": ("mg", 1_000), "mL": ("uL", 1_000), "pc": ("pc", 1)}


def smallest_units(amount: str, unit: str | None) -> int:
    """An amount in a base unit as a whole number of its smallest unit; finer digits go."""
    if unit is None:
        return 0
    return int(rounded(parse_decimal(amount) * SMALLEST_UNITS[unit][1], 0))


def smallest_unit(unit: str | None) -> str:
    """What `smallest_units` counts; empty where nothing was measured."""
    return "" if unit is None else SMALLEST_UNITS[unit][0]


def _lot_rows(cooperative: UUID, code: str, lot: LotState) -> list[LotRow]:
    life = lot["life"]
    return [
        LotRow(
            cooperative_id=cooperative,
            code=code,
            material=lot["material"] or "",
            unit=smallest_unit(lot["unit"]),
            on_hand=smallest_units(lot["on_hand"], lot["unit"]),
            life_on=date.fromisoformat(life["on"]) if life else None,
            is_refused=lot["condition"] == "refused",
        )
    ]


def _place_rows(cooperative: UUID, code: str, lot: LotState) -> list[LotAtPlace]:
    return [
        LotAtPlace(
            cooperative_id=cooperative,
            lot=code,
            place=place,
            material=lot["material"] or "",
            unit=smallest_unit(lot["unit"]),
            amount=smallest_units(amount, lot["unit"]),
        )
        for place, amount in lot["places"].items()
    ]


LOT_TABLE = FieldTable(LotRow, owner="code", rows=_lot_rows)
PLACE_TABLE = FieldTable(LotAtPlace, owner="lot", rows=_place_rows)
