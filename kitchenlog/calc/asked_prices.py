"""What is asked for a product: by pack, from a day on, at the stall or from a business."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, TypedDict

from kitchenlog.calc.bodies import Body, Quantity, amount_in, items_in, quantity_in, text_in
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

ASKED_FOLD = 1


class AskedPrice(TypedDict):
    """A price for each pack of one size, or of every size where none is named."""

    entry: str
    since: str
    for_whom: str | None
    pack_net: Quantity | None
    price: str | None
    currency: str | None
    author: str
    on: str


class AskedState(TypedDict):
    """All prices of a product, the earliest first; of two for one day the last counts."""

    material: str
    prices: list[AskedPrice]
    findings: list[Finding]
    notes: list[Note]


def asked_state(subject: str, facts: Sequence[Fact]) -> AskedState:
    """Fold all entries about `asked:<material>`."""
    material = id_in(subject)
    record = as_it_stands(facts)
    rows = [
        _price(each)
        for each in record.standing
        if each.kind == "price_asked" and text_in(each.body, "material") == material
    ]
    return AskedState(
        material=material,
        prices=sorted(rows, key=lambda row: row["since"]),
        findings=settled(record.findings, record.standing, subject),
        notes=notes_about(record.standing, subject),
    )


def asked_on(
    state: Mapping[str, Any], on: str, *, for_whom: str, pack_net: Quantity | None
) -> Body | None:
    """The price in force on a day: of this size of pack before that of every size; a business
    without a price of its own is asked what the stall asks. None where nobody said one."""
    rows = [row for row in items_in(state, "prices") if (text_in(row, "since") or "") <= on]
    whose = ("business", "stall") if for_whom == "business" else ("stall",)
    for who in whose:
        own = [row for row in rows if text_in(row, "for_whom") == who]
        same = [row for row in own if _is_of(row, pack_net)]
        every = [row for row in own if row.get("pack_net") is None]
        if same or every:
            return (same or every)[-1]
    return None


def _is_of(row: Body, pack_net: Quantity | None) -> bool:
    asked = amount_in(row, "pack_net")
    return asked is not None and asked == amount_in({"pack_net": pack_net}, "pack_net")


def _price(entry: Standing) -> AskedPrice:
    return AskedPrice(
        entry=entry.id,
        since=text_in(entry.body, "since") or entry.local_date,
        for_whom=text_in(entry.body, "for_whom"),
        pack_net=quantity_in(entry.body, "pack_net"),
        price=text_in(entry.body, "price"),
        currency=text_in(entry.body, "currency"),
        author=entry.author,
        on=entry.local_date,
    )
