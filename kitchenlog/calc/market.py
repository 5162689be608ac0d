"""A stall-day sheet: what was sold and returned at one place on one day, and for how much."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.bodies import (
    Amount,
    Body,
    amount_in,
    decimal_in,
    object_in,
    sum_of,
    text_in,
)
from kitchenlog.calc.numbers import ZERO, difference, plain, product, total
from kitchenlog.calc.record import (
    Fact,
    Finding,
    Note,
    Standing,
    as_it_stands,
    finding,
    notes_about,
    settled,
)
from kitchenlog.calc.subjects import id_in

DAY_FOLD = 1


class DayLot(TypedDict):
    """One lot on one stall day; amounts in `unit`, takings None if a price is missing."""

    lot: str
    unit: str | None
    sold: str
    returned: str
    takings: str | None


class DayState(TypedDict):
    """All sales and returns of one place and day; `sold` is None for lots of unlike units."""

    place: str
    on: str
    lots: list[DayLot]
    sold: str | None
    takings: str | None
    sales_count: int
    findings: list[Finding]
    notes: list[Note]


@dataclass(kw_only=True)
class _LotDay:
    unit: str | None
    sold: list[Amount | None] = field(default_factory=list)
    returned: list[Amount | None] = field(default_factory=list)
    takings: list[Decimal | None] = field(default_factory=list)


def day_state(subject: str, facts: Sequence[Fact]) -> DayState:
    """Fold all entries about `day:<place>:<YYYY-MM-DD>`. Takings are price x amount in the unit
    of the sale, less its discount, exact; nothing is rounded."""
    place, _, on = id_in(subject).rpartition(":")
    record = as_it_stands(facts)
    entries = [
        each
        for each in record.standing
        if each.kind in ("sale", "return")
        and text_in(each.body, "place") == place
        and text_in(each.body, "on") == on
    ]
    lots: dict[str, _LotDay] = {}
    findings = list(record.findings)
    for entry in entries:
        findings.extend(_taken(lots, entry))
    sales = [amount for lot in lots.values() for amount in lot.sold]
    return DayState(
        place=place,
        on=on,
        lots=[_written(lot, lots[lot]) for lot in sorted(lots)],
        sold=_sold(sales),
        takings=_takings([each for lot in lots.values() for each in lot.takings]),
        sales_count=len(sales),
        findings=settled(findings, record.standing, subject),
        notes=notes_about(record.standing, subject),
    )


def _taken(lots: dict[str, _LotDay], entry: Standing) -> list[Finding]:
    """Take one entry in; an amount in another unit than the lot's first counts for nothing."""
    amount = amount_in(entry.body, "amount")
    lot = lots.setdefault(text_in(entry.body, "lot") or "", _LotDay(unit=None))
    if lot.unit is None and amount is not None:
        lot.unit = amount.unit
    is_known = amount is not None and amount.unit == lot.unit
    if entry.kind == "sale":
        lot.sold.append(amount if is_known else None)
        lot.takings.append(_paid(entry.body))
    else:
        lot.returned.append(amount if is_known else None)
    return [] if is_known else [finding(f"unit:{entry.id}", "unit", entry=entry.id)]


def _paid(body: Body) -> Decimal | None:
    amount = decimal_in(object_in(body, "amount") or {}, "amount")
    price_each = decimal_in(body, "price_each")
    if amount is None or price_each is None:
        return None
    return difference(product(price_each, amount), decimal_in(body, "discount") or ZERO)


def _written(lot: str, day: _LotDay) -> DayLot:
    return DayLot(
        lot=lot,
        unit=day.unit,
        sold=_known(day.sold),
        returned=_known(day.returned),
        takings=_takings(day.takings),
    )


def _known(amounts: Sequence[Amount | None]) -> str:
    return plain(total(each.value for each in amounts if each is not None))


def _sold(sales: Sequence[Amount | None]) -> str | None:
    if not sales:
        return "0"
    whole = sum_of(sales)
    return None if whole is None else plain(whole.value)


def _takings(takings: Sequence[Decimal | None]) -> str | None:
    known = [each for each in takings if each is not None]
    return plain(total(known)) if len(known) == len(takings) else None
