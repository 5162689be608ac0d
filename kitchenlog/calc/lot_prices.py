"""What a lot cost: kept on a sheet of its own, because not everybody sees it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypedDict

from kitchenlog.calc.bodies import text_in
from kitchenlog.calc.record import (
    Fact,
    Finding,
    Note,
    as_it_stands,
    finding,
    notes_about,
    settled,
)
from kitchenlog.calc.subjects import id_in

PRICE_FOLD = 1


class PriceState(TypedDict):
    """What a received lot cost as a whole, as last recorded."""

    lot: str
    price: str | None
    currency: str | None
    entry: str | None
    findings: list[Finding]
    notes: list[Note]


def price_state(subject: str, facts: Sequence[Fact]) -> PriceState:
    """Fold all entries about `price:<lot code>`; of several prices the last stands, and the
    finding `two_prices` names it."""
    code = id_in(subject)
    record = as_it_stands(facts)
    paid = [
        entry
        for entry in record.standing
        if entry.kind == "price_paid" and text_in(entry.body, "lot") == code
    ]
    last = paid[-1] if paid else None
    findings = list(record.findings)
    if last is not None and len(paid) > 1:
        findings.append(finding("two_prices", "two_prices", entry=last.id))
    return PriceState(
        lot=code,
        price=None if last is None else text_in(last.body, "price"),
        currency=None if last is None else text_in(last.body, "currency"),
        entry=None if last is None else last.id,
        findings=settled(findings, record.standing, subject),
        notes=notes_about(record.standing, subject),
    )
