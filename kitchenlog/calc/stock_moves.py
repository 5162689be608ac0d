"""What each kind of entry does to one lot: to its places, its sums and where it went."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.bodies import Amount, amount_in, items_in, sum_of, text_in
from kitchenlog.calc.numbers import ZERO, difference, plain, total
from kitchenlog.calc.record import Finding, Standing, finding
from kitchenlog.calc.weighing import weighed

MAKING = ("receipt", "output", "topped_up")


class Count(TypedDict):
    """What was seen at a place, and by how much the record differed then (counted - record)."""

    entry: str
    place: str
    counted: str
    variance: str


@dataclass(frozen=True, kw_only=True)
class Way:
    """How much of a lot went to one target, and the last day it did."""

    amount: Decimal
    on: str


@dataclass
class Ledger:
    """A lot's running sums while its entries are walked in business order."""

    code: str
    unit: str | None
    places: dict[str, Decimal] = field(default_factory=dict)
    sums: dict[str, Decimal] = field(default_factory=dict)
    ways: dict[str, Way] = field(default_factory=dict)
    lost_on: dict[str, Decimal] = field(default_factory=dict)  # by day, less what was found
    counts: list[Count] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)


def touches_lot(entry: Standing, code: str) -> bool:
    """Whether a standing entry moves, makes or counts this lot."""
    if entry.kind not in _MOVES:
        return False
    if text_in(entry.body, "lot") == code:
        return True
    return entry.kind == "topped_up" and any(
        text_in(each, "lot") == code for each in items_in(entry.body, "from")
    )


def moved_amount(entry: Standing, code: str) -> Amount | None:
    """How much of the lot an entry is about, in base units; None where that is unknown."""
    if entry.kind == "weigh_in":
        return weighed(entry.body)
    if entry.kind != "topped_up":
        return amount_in(entry.body, "amount")
    poured = items_in(entry.body, "from")
    if text_in(entry.body, "lot") != code:
        poured = [each for each in poured if text_in(each, "lot") == code]
    return sum_of(amount_in(each, "amount") for each in poured)


def walked(ledger: Ledger, entry: Standing) -> None:
    """Take one entry into the ledger.

    An amount of another dimension than the lot's is a finding and moves nothing, but its target
    is still named: a trace must not lose a way.
    """
    amount = moved_amount(entry, ledger.code)
    is_known = amount is not None and amount.unit == ledger.unit
    if not is_known:
        ledger.findings.append(finding(f"unit:{entry.id}", "unit", entry=entry.id))
    value = amount.value if amount is not None and is_known else ZERO
    if entry.kind == "count" and not is_known:
        return
    _MOVES[entry.kind](ledger, entry, value)


def _received(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    if text_in(entry.body, "condition") != "refused":
        _made(ledger, entry, value)


def _made(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    _add(ledger, "made", value)
    _put(ledger, entry, value)


def _topped_up(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    if text_in(entry.body, "lot") == ledger.code:
        _made(ledger, entry, value)
    else:
        _add(ledger, "used", value)
        _take(ledger, entry, value)
        _went(ledger, entry, f"lot:{_text(entry, 'lot')}", value)


def _used(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    _add(ledger, "used", value)
    _take(ledger, entry, value)
    _went(ledger, entry, f"batch:{_text(entry, 'batch')}", value)


def _lost(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    _lose(ledger, entry, value)
    _take(ledger, entry, value)


def _transferred(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    from_place, to_place = _text(entry, "from_place"), _text(entry, "to_place")
    if from_place != to_place:
        _change(ledger, entry, from_place, value.copy_negate())
        _change(ledger, entry, to_place, value)


def _dispatched(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    _add(ledger, "dispatched", value)
    _take(ledger, entry, value)
    _went(ledger, entry, f"recipient:{_text(entry, 'recipient')}", value)


def _sold(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    _add(ledger, "sold", value)
    _take(ledger, entry, value)
    _went(ledger, entry, _day(entry), value)


def _returned(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    """What comes back unfit is lost at once and never stands at a place."""
    _add(ledger, "returned", value)
    if text_in(entry.body, "condition") == "unfit":
        _lose(ledger, entry, value)
    else:
        _put(ledger, entry, value)
    recipient = text_in(entry.body, "recipient")
    target = _day(entry) if recipient is None else f"recipient:{recipient}"
    _went(ledger, entry, target, value.copy_negate())


def _counted(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    """A count sets the running balance; its variance is found anew at each fold."""
    place = _text(entry, "place")
    variance = difference(value, ledger.places.get(place, ZERO))
    _add(ledger, "found", variance)
    _date_loss(ledger, entry, variance.copy_negate())
    ledger.places[place] = value
    ledger.counts.append(
        Count(entry=entry.id, place=place, counted=plain(value), variance=plain(variance))
    )


_MOVES: Mapping[str, Callable[[Ledger, Standing, Decimal], None]] = {
    "receipt": _received,
    "output": _made,
    "topped_up": _topped_up,
    "weigh_in": _used,
    "loss": _lost,
    "transfer": _transferred,
    "dispatch": _dispatched,
    "sale": _sold,
    "return": _returned,
    "count": _counted,
}


def _text(entry: Standing, name: str) -> str:
    return text_in(entry.body, name) or ""


def _day(entry: Standing) -> str:
    return f"day:{_text(entry, 'place')}:{text_in(entry.body, 'on') or entry.local_date}"


def _add(ledger: Ledger, name: str, value: Decimal) -> None:
    ledger.sums[name] = total([ledger.sums.get(name, ZERO), value])


def _lose(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    _add(ledger, "lost", value)
    _date_loss(ledger, entry, value)


def _date_loss(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    """What went on a day without going anywhere; below zero it came from nowhere."""
    before = ledger.lost_on.get(entry.local_date, ZERO)
    ledger.lost_on[entry.local_date] = total([before, value])


def _put(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    _change(ledger, entry, _text(entry, "place"), value)


def _take(ledger: Ledger, entry: Standing, value: Decimal) -> None:
    _change(ledger, entry, _text(entry, "place"), value.copy_negate())


def _change(ledger: Ledger, entry: Standing, place: str, value: Decimal) -> None:
    """Move the balance of a place; the first entry that takes it below zero is named."""
    ledger.places[place] = total([ledger.places.get(place, ZERO), value])
    key = f"negative:{place}"
    if ledger.places[place] < ZERO and all(each["key"] != key for each in ledger.findings):
        ledger.findings.append(finding(key, "negative", entry=entry.id, place=place))


def _went(ledger: Ledger, entry: Standing, target: str, value: Decimal) -> None:
    before = ledger.ways.get(target, Way(amount=ZERO, on=entry.local_date))
    ledger.ways[target] = Way(
        amount=total([before.amount, value]), on=max(before.on, entry.local_date)
    )
