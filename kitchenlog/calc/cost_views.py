"""Two views of what a batch's lots cost: first in first out, and the moving average.

They are views (production 2.4): what a batch cost is the actual cost of its lots. The movements
of a material are those its lot sheets tell, by their days; on one day what came in is first.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import TypedDict

from kitchenlog.calc.batch_costs import cost_of_batch
from kitchenlog.calc.bodies import Body, decimal_in, items_in, text_in
from kitchenlog.calc.coins import coin_parts
from kitchenlog.calc.cost_walk import CostWalk
from kitchenlog.calc.costs import LOT_PLACES
from kitchenlog.calc.lot_worth import Sheets
from kitchenlog.calc.numbers import (
    ONE,
    ZERO,
    divided,
    parse_decimal,
    total,
    written,
)
from kitchenlog.calc.stock_costs import Move, StockCost, View, stock_cost
from kitchenlog.calc.subjects import type_in


class ViewedCost(TypedDict):
    """What the lots of a batch cost in a view, and with that the whole batch; None while it is
    not known. `missing` are the lots without a price, or what has no cost of its own. `parts`
    say where all that was ever paid for its materials is in this view: in this batch (`here`),
    `elsewhere`, `lost` or `left`; they add up to `bought`, to the coin."""

    view: str
    lots: str | None
    total: str | None
    missing: list[str]
    parts: dict[str, str] | None


_PARTS = ("bought", "here", "elsewhere", "lost", "left")
_LOST = " lost"


@dataclass(frozen=True, kw_only=True)
class _Dated:
    on: str
    rank: int
    move: Move


def viewed_cost(
    batch: str, view: View, *, cooperative: str, sheets: Sheets, lots: Iterable[str]
) -> ViewedCost:
    """A batch seen in a view over these lots, which should be all of its materials'.

    What was lost goes out on its day, unless a count found it again; what counts found beyond
    all losses comes in for nothing. Lots that were poured together only change their code; a
    product has no price of its own and is named.
    """
    places = CostWalk(cooperative=cooperative, sheets=sheets).places
    used = items_in(sheets.get(f"batch:{batch}", {}), "lots_in")
    codes = sorted(lots)
    seen: dict[str, Decimal] = {}
    missing: set[str] = set()
    parts: dict[str, Decimal] | None = dict.fromkeys(_PARTS, ZERO)
    for material in sorted({text_in(each, "material") or "" for each in used}):
        made = stock_cost(_moves_of(material, codes, sheets), view, LOT_PLACES)
        here = [out.cost for out in made.outs if out.id.endswith(f" batch:{batch}")]
        known = [cost for cost in here if cost is not None]
        if not here or len(known) < len(here):
            missing.update(made.missing or [material])
        told = _told_in_coins(made, batch, places)
        seen[material] = total(known) if told is None else told["here"]
        parts = None if parts is None or told is None else _added(parts, told)
    if missing:
        return ViewedCost(view=view, lots=None, total=None, missing=sorted(missing), parts=None)
    answer = cost_of_batch(batch, cooperative=cooperative, sheets=sheets, seen=seen)
    lots_cost = [parse_decimal(answer["parts"][part]) for part in ("materials", "packs")]
    return ViewedCost(
        view=view,
        lots=written(total(lots_cost)),
        total=answer["total"],
        missing=[],
        parts=None
        if parts is None
        else {name: written(divided(x, ONE, places)) for name, x in parts.items()},
    )


def _told_in_coins(made: StockCost, batch: str, places: int) -> dict[str, Decimal] | None:
    """Where the money of one material is; None while any of it is not known."""
    if made.closing is None or made.cost_of_goods is None:
        return None
    sums = {"here": ZERO, "elsewhere": ZERO, "lost": ZERO, "left": made.closing}
    for out in made.outs:
        where = "here" if out.id.endswith(f" batch:{batch}") else "elsewhere"
        where = "lost" if out.id.endswith(_LOST) else where
        sums[where] = total([sums[where], out.cost or ZERO])
    coins = dict(zip(sums, coin_parts([*map(Fraction, sums.values())], places), strict=True))
    return {"bought": total(coins.values()), **coins}


def _added(one: dict[str, Decimal], other: dict[str, Decimal]) -> dict[str, Decimal]:
    return {name: total([one[name], other[name]]) for name in _PARTS}


def _moves_of(material: str, codes: Sequence[str], sheets: Sheets) -> list[Move]:
    dated: list[_Dated] = []
    for code in codes:
        lot = sheets.get(f"lot:{code}", {})
        if text_in(lot, "material") == material:
            dated.extend(_moves_of_lot(code, lot, sheets))
    dated.sort(key=lambda each: (each.on, each.rank, each.move.id))
    return [each.move for each in dated]


def _moves_of_lot(code: str, lot: Body, sheets: Sheets) -> list[_Dated]:
    """What came in at its price, and each way it went; pouring together is no movement."""
    made, moves = decimal_in(lot, "made") or ZERO, []
    if text_in(lot, "made_by") != "topped_up" and made > ZERO:
        price = decimal_in(sheets.get(f"price:{code}", {}), "price")
        receipt = Move(sort="in", id=code, amount=made, price=price)
        moves.append(_Dated(on=text_in(lot, "made_on") or "", rank=0, move=receipt))
    for way in items_in(lot, "went_to"):
        to, amount = text_in(way, "to") or "", decimal_in(way, "amount") or ZERO
        if type_in(to) != "lot" and amount > ZERO:
            out = Move(sort="out", id=f"{code} {to}", amount=amount)
            moves.append(_Dated(on=text_in(way, "on") or "", rank=1, move=out))
    return [*moves, *_lost_or_found(code, lot)]


def _lost_or_found(code: str, lot: Body) -> list[_Dated]:
    """What was lost and not found again, each on its day; or what was only ever found, for
    which nothing was paid."""
    dated = []
    for on, amount in _left_of(items_in(lot, "lost_on")):
        if amount > ZERO:
            out = Move(sort="out", id=f"{code} {on}{_LOST}", amount=amount)
            dated.append(_Dated(on=on, rank=1, move=out))
        else:
            found = Move(
                sort="in", id=f"{code} {on} found", amount=amount.copy_negate(), price=ZERO
            )
            dated.append(_Dated(on=on, rank=0, move=found))
    return dated


def _left_of(days: Iterable[Body]) -> list[tuple[str, Decimal]]:
    """Days of losses, or of finds below zero, so that all that is left is one of the two: a
    find takes back the losses before it, the latest first, and a loss the finds."""
    left: list[tuple[str, Decimal]] = []
    for each in days:
        on, amount = text_in(each, "on") or "", decimal_in(each, "amount") or ZERO
        while left and amount and (left[-1][1] < ZERO) != (amount < ZERO):
            before, was = left.pop()
            rest = total([was, amount])
            is_taken_back = not rest or (rest < ZERO) != (was < ZERO)
            on, amount = (on, rest) if is_taken_back else (before, rest)
        if amount:
            left.append((on, amount))
    return left
