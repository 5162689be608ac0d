"""What a batch cost: the lots actually used, packs, labour, fuel, overhead (production 2.1).

The rule is the actual cost of the lots in the jar (production 2.4). What is not known is named
and makes the cost incomplete, never cheaper; sums are exact and become coins once, at the end.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from kitchenlog.calc.coins import as_decimal, coin_parts
from kitchenlog.calc.numbers import HUNDRED, ONE, ZERO, divided, product, total

LotPart = Literal["materials", "packs"]
Part = Literal["materials", "packs", "labour", "fuel", "overhead", "other", "by_products"]
OverheadBy = Literal["batch", "labour_hour", "kg", "kettle_hour"]
PercentOf = Literal["materials", "labour", "materials_and_labour"]

PARTS: tuple[Part, ...] = (
    "materials", "packs", "labour", "fuel", "overhead", "other", "by_products",
)  # fmt: skip
PACK_PLACES = 4
LOT_PLACES = 8  # a cost that goes on into another lot is kept this finely
_HOUR_MIN = Decimal(60)
_BASES: dict[PercentOf, tuple[Part, ...]] = {
    "materials": ("materials", "packs"),
    "labour": ("labour",),
    "materials_and_labour": ("materials", "packs", "labour"),
}
# What the quantity of an overhead is divided by: minutes make hours, grams make kilograms.
_PER = {"batch": ONE, "labour_hour": _HOUR_MIN, "kg": Decimal(1000), "kettle_hour": _HOUR_MIN}


@dataclass(frozen=True, kw_only=True)
class UsedLot:
    """So much of a lot, and what was paid for how much of it; None where nobody knows."""

    part: LotPart
    lot: str
    amount: Decimal
    price: Decimal | None
    of_amount: Decimal | None


@dataclass(frozen=True, kw_only=True)
class Labour:
    """Minutes of a member; time that is not paid is counted and told apart."""

    member: str
    minutes: Decimal
    rate_per_hour: Decimal | None
    is_paid: bool


@dataclass(frozen=True, kw_only=True)
class Expense:
    """Fuel, overhead, another cost, or the value of a by-product: `amount` / `per`."""

    part: Literal["fuel", "overhead", "other", "by_products"]
    name: str
    amount: Decimal | None
    per: Decimal = ONE


@dataclass(frozen=True, kw_only=True)
class Surcharge:
    """Overhead in percent of ingredients and packaging, of labour (unpaid time as well) or of
    both; common practice, and the base stays in its name."""

    name: str
    percent: Decimal | None
    of: PercentOf


@dataclass(frozen=True, kw_only=True)
class Missing:
    """What is not known, "price", "rate" or "amount", and of which lot, member or expense."""

    what: str
    of: str


@dataclass(frozen=True, kw_only=True)
class CostLine:
    """What one lot, member or expense cost, in coins; a by-product lowers the cost."""

    part: Part
    of: str
    cost: Decimal
    is_paid: bool


@dataclass(frozen=True, kw_only=True)
class BatchCost:
    """Lines, parts and `known` add up to the coin. `total` is None while anything is missing;
    `unpaid` is the labour in it that nobody was paid for."""

    lines: tuple[CostLine, ...]
    parts: dict[Part, Decimal]
    known: Decimal
    unpaid: Decimal
    total: Decimal | None
    missing: tuple[Missing, ...]
    per_good_pack: Decimal | None
    per_filled_pack: Decimal | None
    per_good_pack_paid: Decimal | None


@dataclass(frozen=True, kw_only=True)
class Packs:
    """Packs that were filled and those of them that are good; None where nobody counted."""

    good: Decimal | None
    filled: Decimal | None


@dataclass(frozen=True, kw_only=True)
class LotCost:
    """The cost of what was poured together, to 8 places; None while a price is missing."""

    cost: Decimal | None
    missing: tuple[Missing, ...]


def batch_cost(
    used: Sequence[UsedLot],
    *,
    labour: Sequence[Labour],
    expenses: Sequence[Expense | Surcharge],
    packs: Packs,
    places: int,
) -> BatchCost:
    """What a batch cost in all, by line, by part and by pack; `places` are those of a coin.

    Per good pack, so that rejects are not hidden; per filled pack beside it.
    """
    direct = [*map(_of_lot, used), *map(_of_labour, labour)]
    items = [*direct, *(_of_expense(each, direct) for each in expenses)]
    known = [item for item in items if isinstance(item, _Known)]
    missing = tuple(item for item in items if isinstance(item, Missing))
    coins = coin_parts([item.cost for item in known], places)
    lines = tuple(
        CostLine(part=item.part, of=item.of, cost=coin, is_paid=item.is_paid)
        for item, coin in zip(known, coins, strict=True)
    )
    exact = None if missing else sum((item.cost for item in known), Fraction(0))
    paid = None if missing else sum((i.cost for i in known if i.is_paid), Fraction(0))
    sums = {part: _sum_of(lines, part, places) for part in PARTS}
    all_known = total(sums.values())
    return BatchCost(
        lines=lines,
        parts=sums,
        known=all_known,
        unpaid=total([divided(ZERO, ONE, places), *(x.cost for x in lines if not x.is_paid)]),
        total=None if missing else all_known,
        missing=missing,
        per_good_pack=_each(exact, packs.good),
        per_filled_pack=_each(exact, packs.filled),
        per_good_pack_paid=_each(paid, packs.good),
    )


def lot_cost(poured: Sequence[UsedLot]) -> LotCost:
    """What a lot cost that was poured together from others."""
    items = [_of_lot(each) for each in poured]
    missing = tuple(item for item in items if isinstance(item, Missing))
    cost = sum((item.cost for item in items if isinstance(item, _Known)), Fraction(0))
    return LotCost(cost=None if missing else as_decimal(cost, LOT_PLACES), missing=missing)


def planned_use(
    material: str, edible: Decimal, *, yield_percent: Decimal, price_each: Decimal | None
) -> UsedLot:
    """A recipe line as a lot to be bought: edible / yield, at a price per unit as bought
    (production 2.1). Raises ValueError unless the yield is above zero."""
    if yield_percent <= ZERO:
        raise ValueError("a yield is more than nothing")
    return UsedLot(
        part="materials",
        lot=material,
        amount=product(edible, HUNDRED),
        price=price_each,
        of_amount=yield_percent,
    )


def usable_price(price: Decimal, yield_percent: Decimal, places: int) -> Decimal:
    """Price of a unit that can be used: price as bought / yield, so it goes up (production
    1.3). Raises ValueError unless the yield is above zero."""
    if yield_percent <= ZERO:
        raise ValueError("a yield is more than nothing")
    return divided(product(price, HUNDRED), yield_percent, places)


def overhead(by: OverheadBy, rate: Decimal, quantity: Decimal | None) -> Expense:
    """Overhead at a rate for each batch, labour hour, kg or kettle hour: `quantity` are
    batches, minutes or grams; common practice, and the choice stays in its name."""
    amount = None if quantity is None else product(rate, quantity)
    return Expense(part="overhead", name=by, amount=amount, per=_PER[by])


@dataclass(frozen=True, kw_only=True)
class _Known:
    part: Part
    of: str
    cost: Fraction
    is_paid: bool = True


def _of_lot(used: UsedLot) -> _Known | Missing:
    if used.price is None or not used.of_amount:
        return Missing(what="price", of=used.lot)
    cost = Fraction(used.price) * Fraction(used.amount) / Fraction(used.of_amount)
    return _Known(part=used.part, of=used.lot, cost=cost)


def _of_labour(labour: Labour) -> _Known | Missing:
    if labour.rate_per_hour is None:
        return Missing(what="rate", of=labour.member)
    cost = Fraction(product(labour.minutes, labour.rate_per_hour)) / Fraction(_HOUR_MIN)
    return _Known(part="labour", of=labour.member, cost=cost, is_paid=labour.is_paid)


def _of_expense(
    expense: Expense | Surcharge, direct: Sequence[_Known | Missing]
) -> _Known | Missing:
    if isinstance(expense, Surcharge):
        return _of_surcharge(expense, direct)
    if expense.amount is None:
        return Missing(what="amount", of=expense.name)
    cost = Fraction(expense.amount) / Fraction(expense.per)
    is_credit = expense.part == "by_products"
    return _Known(part=expense.part, of=expense.name, cost=-cost if is_credit else cost)


def _of_surcharge(surcharge: Surcharge, direct: Sequence[_Known | Missing]) -> _Known | Missing:
    if surcharge.percent is None:
        return Missing(what="amount", of=surcharge.name)
    known = [item for item in direct if isinstance(item, _Known)]
    base = sum((i.cost for i in known if i.part in _BASES[surcharge.of]), Fraction(0))
    cost = base * Fraction(surcharge.percent) / 100
    return _Known(part="overhead", of=surcharge.name, cost=cost)


def _sum_of(lines: Sequence[CostLine], part: Part, places: int) -> Decimal:
    """A part without a line is nothing, in coins."""
    nothing = divided(ZERO, ONE, places)
    return total([nothing, *(line.cost for line in lines if line.part == part)])


def _each(cost: Fraction | None, packs: Decimal | None) -> Decimal | None:
    if cost is None or packs is None or packs <= ZERO:
        return None
    return as_decimal(cost / Fraction(packs), PACK_PLACES)
