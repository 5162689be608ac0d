"""What was recorded about money beside the lots: a batch's labour and expenses, and the rates.

The whole cost of a batch is worked out from these and from other sheets when somebody asks
(batch_costs.py): a price that comes late moves it without a sheet being made anew.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, TypedDict

from kitchenlog.calc.bodies import Body, decimal_in, items_in, object_in, text_in
from kitchenlog.calc.record import (
    Fact,
    Finding,
    Note,
    Standing,
    as_it_stands,
    notes_about,
    settled,
)
from kitchenlog.calc.subjects import id_in

COST_FOLD = 2
RATES_FOLD = 2


class Worked(TypedDict):
    """Minutes of a member, or of somebody who is none and has only a name."""

    entry: str
    member: str | None
    name: str | None
    minutes: str | None
    is_paid: bool
    pay_per_hour: str | None
    author: str
    on: str


class Spent(TypedDict):
    """Fuel, overhead or something else, in the currency it was paid in."""

    entry: str
    part: str | None
    says: str | None
    amount: str | None
    currency: str | None
    author: str
    on: str


class SharedBy(TypedDict):
    """One product: `main` carries the cost, `by_product` lowers it by its value. `value_each`
    is of a pack, or of a kg or L."""

    lot: str | None
    sort: str | None
    value_each: str | None


class Shared(TypedDict):
    """How the cost is shared among several products, as said last."""

    entry: str
    by: str | None
    currency: str | None
    products: list[SharedBy]
    author: str
    on: str


class CostState(TypedDict):
    """What a batch cost beside its lots, as recorded, in business order."""

    batch: str
    labour: list[Worked]
    expenses: list[Spent]
    shared: Shared | None
    findings: list[Finding]
    notes: list[Note]


class Overhead(TypedDict):
    """A rate for each batch, labour hour or kg of good product, or in percent of a base."""

    by: str | None
    rate: str | None
    percent_of: str | None


class Proposal(TypedDict):
    """How a price is proposed: in percent of cost or price, in whole coins."""

    of: str | None
    percent: str | None
    commission_percent: str | None
    coin: str | None
    rule: str | None


class Rates(TypedDict):
    """What counts from a day on, until the next."""

    entry: str
    since: str
    pay_per_hour: str | None
    overhead: Overhead | None
    proposal: Proposal | None


class RatesState(TypedDict):
    """All rates of a cooperative, the earliest first; of two for one day the last counts."""

    cooperative: str
    rates: list[Rates]
    findings: list[Finding]
    notes: list[Note]


def cost_state(subject: str, facts: Sequence[Fact]) -> CostState:
    """Fold all entries about `cost:<batch>`; of what was said of products the last counts."""
    batch = id_in(subject)
    record = as_it_stands(facts)
    entries = [each for each in record.standing if text_in(each.body, "batch") == batch]
    return CostState(
        batch=batch,
        labour=[_worked(each) for each in entries if each.kind == "labour"],
        expenses=[_spent(each) for each in entries if each.kind == "expense"],
        shared=_last_shared(entries),
        findings=settled(record.findings, record.standing, subject),
        notes=notes_about(record.standing, subject),
    )


def rates_state(subject: str, facts: Sequence[Fact]) -> RatesState:
    """Fold all entries about `rates:<cooperative>`."""
    record = as_it_stands(facts)
    rows = [_rates(each) for each in record.standing if each.kind == "rates_set"]
    return RatesState(
        cooperative=id_in(subject),
        rates=sorted(rows, key=lambda row: row["since"]),
        findings=settled(record.findings, record.standing, subject),
        notes=notes_about(record.standing, subject),
    )


def rates_on(state: Mapping[str, Any], on: str) -> Body:
    """The row of a rates sheet in force on a day; empty before the first."""
    rows = [row for row in items_in(state, "rates") if (text_in(row, "since") or "") <= on]
    return rows[-1] if rows else {}


def _worked(entry: Standing) -> Worked:
    return Worked(
        entry=entry.id,
        member=text_in(entry.body, "member"),
        name=text_in(entry.body, "name"),
        minutes=_number(entry.body, "minutes"),
        is_paid=entry.body.get("is_paid") is not False,
        pay_per_hour=_number(entry.body, "pay_per_hour"),
        author=entry.author,
        on=entry.local_date,
    )


def _spent(entry: Standing) -> Spent:
    return Spent(
        entry=entry.id,
        part=text_in(entry.body, "part"),
        says=text_in(entry.body, "says"),
        amount=_number(entry.body, "amount"),
        currency=text_in(entry.body, "currency"),
        author=entry.author,
        on=entry.local_date,
    )


def _last_shared(entries: Sequence[Standing]) -> Shared | None:
    said = [each for each in entries if each.kind == "cost_shared"]
    if not said:
        return None
    last = said[-1]
    return Shared(
        entry=last.id,
        by=text_in(last.body, "by"),
        currency=text_in(last.body, "currency"),
        products=[
            SharedBy(
                lot=text_in(each, "lot"),
                sort=text_in(each, "sort"),
                value_each=_number(each, "value_each"),
            )
            for each in items_in(last.body, "products")
        ],
        author=last.author,
        on=last.local_date,
    )


def _rates(entry: Standing) -> Rates:
    overhead = object_in(entry.body, "overhead")
    proposal = object_in(entry.body, "proposal")
    return Rates(
        entry=entry.id,
        since=text_in(entry.body, "since") or entry.local_date,
        pay_per_hour=_number(entry.body, "pay_per_hour"),
        overhead=None
        if overhead is None
        else Overhead(
            by=text_in(overhead, "by"),
            rate=_number(overhead, "rate"),
            percent_of=text_in(overhead, "percent_of"),
        ),
        proposal=None
        if proposal is None
        else Proposal(
            of=text_in(proposal, "of"),
            percent=_number(proposal, "percent"),
            commission_percent=_number(proposal, "commission_percent"),
            coin=_number(proposal, "coin"),
            rule=text_in(proposal, "rule"),
        ),
    )


def _number(body: Body, name: str) -> str | None:
    """The number as it was typed; None where it is none."""
    return text_in(body, name) if decimal_in(body, name) is not None else None
