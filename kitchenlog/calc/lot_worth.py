"""What a lot is worth, followed over sheets back to the prices that were paid (production 2.4).

A received lot is worth what was paid for it, a topped-up one what was poured into it, a product
its share of what its batch cost, a by-product its value. What is not known is named, with the
lot one has to look at.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, TypedDict

from kitchenlog.calc.bodies import Body, decimal_in, items_in, text_in
from kitchenlog.calc.costs import LOT_PLACES, UsedLot, lot_cost
from kitchenlog.calc.numbers import ZERO
from kitchenlog.calc.product_shares import Products

Sheets = Mapping[str, Mapping[str, Any]]  # subject -> state; each is read by its own type


class Lacking(TypedDict):
    """What is not known ("price", "currency", "lot", "unit", "circle", "rate", "amount",
    "value" or "share") of which lot, member or expense, and through which lot of the batch one
    comes to it."""

    what: str
    of: str
    through: str | None


@dataclass(frozen=True, kw_only=True)
class Worth:
    """What so much of a lot cost; `lacking` is not empty where that is not known."""

    price: Decimal | None
    of_amount: Decimal | None
    unit: str | None
    lacking: tuple[Lacking, ...]


@dataclass(frozen=True, kw_only=True)
class OfBatch:
    """The exact total of a batch, None while something is lacking."""

    cost: Decimal | None
    lacking: tuple[Lacking, ...]


CostOf = Callable[[str, tuple[str, ...]], OfBatch]


@dataclass(frozen=True, kw_only=True)
class Worths:
    """Follows lots over sheets; `cost_of` works out a batch, given the way one came."""

    sheets: Sheets
    currency: str | None
    cost_of: CostOf

    def worth_of(self, code: str, way: tuple[str, ...]) -> Worth:
        """`way` are the subjects from which one came: goods that go in a circle by a slip have
        no cost."""
        subject = f"lot:{code}"
        lot = self.sheets.get(subject)
        if lot is None:
            return _unknown("lot", code)
        if subject in way:
            return _unknown("circle", code)
        made_by, way = text_in(lot, "made_by"), (*way, subject)
        if made_by == "receipt":
            return self._paid(code, lot)
        if made_by == "topped_up":
            return self._poured(lot, way)
        batch = text_in(lot, "batch")
        if made_by == "output" and batch is not None:
            return self._produced(code, batch, way)
        return _unknown("lot", code)

    def _paid(self, code: str, lot: Body) -> Worth:
        sheet = self.sheets.get(f"price:{code}", {})
        price = decimal_in(sheet, "price")
        if price is None:
            return _unknown("price", code)
        if self.currency is not None and text_in(sheet, "currency") != self.currency:
            return _unknown("currency", code)
        made = decimal_in(lot, "made")
        if not made:
            return _unknown("price", code)
        return Worth(price=price, of_amount=made, unit=text_in(lot, "unit"), lacking=())

    def _poured(self, lot: Body, way: tuple[str, ...]) -> Worth:
        used: list[UsedLot] = []
        lacking: list[Lacking] = []
        for each in items_in(lot, "came_from"):
            code, amount = text_in(each, "lot") or "", decimal_in(each, "amount") or ZERO
            worth = self.worth_of(code, way)
            lacking.extend(worth.lacking)
            used.append(used_lot(worth, code, amount))
        made = decimal_in(lot, "made")
        unit = text_in(lot, "unit")
        if lacking or not used or not made:
            found = tuple(lacking) or (_lacks("price", text_in(lot, "lot") or ""),)
            return Worth(price=None, of_amount=None, unit=unit, lacking=found)
        return Worth(price=lot_cost(used).cost, of_amount=made, unit=unit, lacking=())

    def _produced(self, code: str, batch: str, way: tuple[str, ...]) -> Worth:
        state = self.sheets.get(f"batch:{batch}", {})
        products = Products.of(state, self.sheets.get(f"cost:{batch}", {}), self.currency)
        own = next((each for each in products.rows if each.lot == code), None)
        if own is None or not own.amount:
            return _unknown("share", code)
        if own.sort == "by_product":
            if own.value is None:
                return _unknown("value", code)
            return Worth(price=own.value, of_amount=own.amount, unit=own.unit, lacking=())
        found = self.cost_of(batch, way)
        if found.cost is None:
            return Worth(price=None, of_amount=None, unit=None, lacking=found.lacking)
        shares = products.shares(found.cost, LOT_PLACES)
        if shares is None:
            return _unknown("share", code)
        return Worth(price=shares[code], of_amount=own.amount, unit=own.unit, lacking=())


def used_lot(worth: Worth, code: str, amount: Decimal) -> UsedLot:
    """So much of a lot, at what it is worth."""
    return UsedLot(
        part="materials",
        lot=code,
        amount=amount,
        price=worth.price,
        of_amount=worth.of_amount,
    )


def _unknown(what: str, of: str) -> Worth:
    return Worth(price=None, of_amount=None, unit=None, lacking=(_lacks(what, of),))


def _lacks(what: str, of: str) -> Lacking:
    return Lacking(what=what, of=of, through=None)
