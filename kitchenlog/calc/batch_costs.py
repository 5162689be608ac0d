"""What a batch cost, worked out over sheets when somebody asks: like a trace, a walk.

No sheet holds this sum. It rests on the sheets of the batch, of its lots, of what was paid for
them and of the batches they come from, so that a price that comes late moves every cost that
rests on it, and in whatever order things arrived the cost is the same.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.bodies import Body, amount_in, decimal_in, object_in, sum_of, text_in
from kitchenlog.calc.cost_walk import CostWalk, Item
from kitchenlog.calc.costs import LOT_PLACES, PACK_PLACES, Labour, Packs
from kitchenlog.calc.lot_worth import Lacking, Sheets
from kitchenlog.calc.numbers import (
    ONE,
    ZERO,
    difference,
    divided,
    parse_decimal,
    plain,
    product,
    total,
    written,
)
from kitchenlog.calc.product_shares import Product, Products

_THOUSANDTH = parse_decimal("0.001")


class Line(TypedDict):
    """What one lot, member or expense cost, in coins; `amount` of a lot in its base unit."""

    part: str
    of: str
    material: str | None
    amount: str | None
    unit: str | None
    minutes: str | None
    entries: list[str]
    cost: str
    is_paid: bool


class ProductCost(TypedDict):
    """What one product costs, or what a by-product is worth, in coins: main products add up to
    `total`. `each` is of a good pack, kg or L; None where it is not known. `by` is how several
    main ones share, `basis` how sure that rule is."""

    lot: str
    material: str | None
    sort: str
    per: str | None
    good: str | None
    cost: str | None
    each: str | None
    by: str | None
    basis: str | None


class CostAnswer(TypedDict):
    """What a batch cost, less the value of its by-products. Lines and parts add up to `known`;
    `total` is None, and so is what rests on it, while anything is missing. Good packs are
    pieces, or kg or L of a mass, of main products; None where these are not alike."""

    batch: str
    currency: str | None
    places: int
    lines: list[Line]
    parts: dict[str, str]
    known: str
    unpaid: str
    total: str | None
    missing: list[Lacking]
    per: str | None
    good: str | None
    filled: str | None
    per_good_pack: str | None
    per_filled_pack: str | None
    per_good_pack_paid: str | None
    minutes: str | None
    products: list[ProductCost]


def cost_of_batch(
    batch: str,
    *,
    cooperative: str,
    sheets: Sheets,
    seen: Mapping[str, Decimal] | None = None,
) -> CostAnswer:
    """The actual cost of a batch over the sheets at hand; `cooperative` is the id of whose
    currency and rates count. For a view, `seen` says what its lots of each material cost."""
    walk = CostWalk(cooperative=cooperative, sheets=sheets)
    items = walk.items_of(batch, (f"batch:{batch}",), seen)
    products = walk.products_of(batch)
    packs = _packs_of([row for each in products.main for row in each.rows])
    made = walk.sum_of(items, Packs(good=packs.good, filled=packs.filled), walk.places)
    known = [item for item in items if not item.lacking]
    minutes = [item.minutes for item in items if item.minutes is not None]
    return CostAnswer(
        batch=batch,
        currency=walk.currency,
        places=walk.places,
        lines=[
            _line(item, written(line.cost), line.part)
            for item, line in zip(known, made.lines, strict=True)
        ],
        parts={part: written(value) for part, value in made.parts.items()},
        known=written(made.known),
        unpaid=written(made.unpaid),
        total=_text(made.total),
        missing=[each for item in items for each in item.lacking],
        per=packs.per,
        good=None if packs.good is None else plain(packs.good),
        filled=None if packs.filled is None else plain(packs.filled),
        per_good_pack=_text(made.per_good_pack),
        per_filled_pack=_text(made.per_filled_pack),
        per_good_pack_paid=_text(made.per_good_pack_paid),
        minutes=plain(total(minutes)) if minutes else None,
        products=_product_costs(products, items, walk),
    )


@dataclass(frozen=True, kw_only=True)
class _PacksOf:
    per: str | None
    good: Decimal | None
    filled: Decimal | None


def _product_costs(
    products: Products, items: Sequence[Item], walk: CostWalk
) -> list[ProductCost]:
    """Shares in coins for what is told, and more finely for what is divided by packs."""
    none = Packs(good=None, filled=None)
    made = walk.sum_of(items, none, walk.places)
    finely = walk.sum_of(items, none, LOT_PLACES)
    fine = {each.lot: each.value for each in products.by_products if each.value is not None}
    coins = {
        line.of: difference(ZERO, line.cost)
        for line in made.lines
        if line.part == "by_products"
    }
    if made.total is not None and finely.total is not None:
        fine |= products.shares(finely.total, LOT_PLACES) or {}
        coins |= products.shares(made.total, walk.places) or {}
    is_joint = len(products.main) > 1
    return [
        _product_cost(
            each,
            coins.get(each.lot),
            fine.get(each.lot),
            by=products.by if is_joint and each.sort == "main" else None,
        )
        for each in products.rows
    ]


def _product_cost(
    each: Product, coins: Decimal | None, fine: Decimal | None, *, by: str | None
) -> ProductCost:
    packs = _packs_of(each.rows)
    good = packs.good or ZERO  # nobody is told what one of none costs
    each_of = None if fine is None or not good else divided(fine, good, PACK_PLACES)
    return ProductCost(
        lot=each.lot,
        material=text_in(each.rows[0], "material"),
        sort=each.sort,
        per=packs.per,
        good=None if packs.good is None else plain(packs.good),
        cost=_text(coins),
        each=_text(each_of),
        by=by,
        basis=None if by is None else "memory",
    )


def _packs_of(outputs: Sequence[Body]) -> _PacksOf:
    """Good ones, and all that were filled where somebody counted rejects."""
    good = sum_of([amount_in({"amount": each}, "amount") for each in outputs])
    alike = {(text_in(each, "material"), _pack_words(each)) for each in outputs}
    if good is None or len(alike) > 1:
        return _PacksOf(per=None, good=None, filled=None)
    rejected = [each for row in outputs if (each := decimal_in(row, "rejected")) is not None]
    is_counted = good.unit == "pc"
    factor = ONE if is_counted else _THOUSANDTH
    return _PacksOf(
        per={"pc": "pc", "g": "kg", "mL": "L"}[good.unit],
        good=product(good.value, factor),
        filled=product(total([good.value, *rejected]), factor) if rejected else None,
    )


def _pack_words(row: Body) -> str:
    pack = object_in(row, "pack_net") or {}
    return f"{text_in(pack, 'amount')} {text_in(pack, 'unit')}"


def _line(item: Item, cost: str, part: str) -> Line:
    return Line(
        part=part,
        of=item.of,
        material=item.material,
        amount=None if item.amount is None else plain(item.amount),
        unit=item.unit,
        minutes=None if item.minutes is None else plain(item.minutes),
        entries=list(item.entries),
        cost=cost,
        is_paid=not isinstance(item.what, Labour) or item.what.is_paid,
    )


def _text(x: Decimal | None) -> str | None:
    return None if x is None else written(x)
