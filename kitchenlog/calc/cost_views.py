"""Two views of what a batch's lots cost: first in first out, and the moving average.

They are views (production 2.4): what a batch cost is the actual cost of its lots. The movements
of a material are those its lot sheets tell, by their days; on one day what came in is first.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.batch_costs import cost_of_batch
from kitchenlog.calc.bodies import Body, decimal_in, items_in, text_in
from kitchenlog.calc.costs import LOT_PLACES
from kitchenlog.calc.lot_worth import Sheets
from kitchenlog.calc.numbers import ZERO, parse_decimal, total, written
from kitchenlog.calc.stock_costs import Move, View, stock_cost
from kitchenlog.calc.subjects import type_in


class ViewedCost(TypedDict):
    """What the lots of a batch cost in a view, and with that the whole batch; None while it is
    not known. `missing` are the lots without a price, or what has no cost of its own."""

    view: str
    lots: str | None
    total: str | None
    missing: list[str]


@dataclass(frozen=True, kw_only=True)
class _Dated:
    on: str
    rank: int
    move: Move


def viewed_cost(
    batch: str, view: View, *, cooperative: str, sheets: Sheets, lots: Iterable[str]
) -> ViewedCost:
    """A batch seen in a view over these lots, which should be all of its materials'.

    What was lost or found is not dated on a sheet and stays in stock here. Lots that were
    poured together only change their code; a product has no price of its own and is named.
    """
    used = items_in(sheets.get(f"batch:{batch}", {}), "lots_in")
    codes = sorted(lots)
    seen: dict[str, Decimal] = {}
    missing: set[str] = set()
    for material in sorted({text_in(each, "material") or "" for each in used}):
        made = stock_cost(_moves_of(material, codes, sheets), view, LOT_PLACES)
        here = [out.cost for out in made.outs if out.id.endswith(f" batch:{batch}")]
        known = [cost for cost in here if cost is not None]
        if not here or len(known) < len(here):
            missing.update(made.missing or [material])
        seen[material] = total(known)
    if missing:
        return ViewedCost(view=view, lots=None, total=None, missing=sorted(missing))
    answer = cost_of_batch(batch, cooperative=cooperative, sheets=sheets, seen=seen)
    parts = answer["parts"]
    return ViewedCost(
        view=view,
        lots=written(total(parse_decimal(parts[part]) for part in ("materials", "packs"))),
        total=answer["total"],
        missing=[],
    )


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
    return moves
