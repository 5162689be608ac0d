"""A lot sheet: how much there is, where, where it came from and went."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.bodies import (
    Amount,
    Quantity,
    amount_in,
    items_in,
    object_in,
    quantity_in,
    text_in,
)
from kitchenlog.calc.fill_trust import FillCheck, failed_scales, fill_checks
from kitchenlog.calc.holds import Hold, held_findings, hold_state
from kitchenlog.calc.numbers import ZERO, plain, total
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
from kitchenlog.calc.stock_moves import (
    MAKING,
    Count,
    Ledger,
    moved_amount,
    touches_lot,
    walked,
)
from kitchenlog.calc.subjects import id_in
from kitchenlog.calc.trusted import NOTHING_BESIDE, Sheets

LOT_FOLD = 5  # 3 held nothing back, 4 knew no log as a cause and no day of a loss


class Life(TypedDict):
    """A kind of date (use_by, best_before, expires_on) and the last usable day."""

    sort: str
    on: str


class CameFrom(TypedDict):
    """A lot of which some was poured into this one."""

    lot: str
    amount: str


class MadeFrom(TypedDict):
    """How much came from a source, a batch or a lot."""

    origin: str
    amount: str


class WentTo(TypedDict):
    """How much went to a batch, recipient, stall day or lot, less returns, and the last day."""

    to: str
    amount: str
    on: str


class LostOn(TypedDict):
    """How much was lost or missed on a day, less what was found; below zero more was found."""

    on: str
    amount: str


class MadeState(TypedDict):
    """What the entry that made a lot says of it."""

    lot: str
    material: str | None
    made_by: str | None
    maker: str | None
    author: str | None
    condition: str | None
    made_on: str | None
    life: Life | None
    source: str | None
    their_lot: str | None
    batch: str | None
    pack_net: Quantity | None
    came_from: list[CameFrom]
    made_from: list[MadeFrom]


class MovedState(TypedDict):
    """What all entries about a lot add up to, in `unit`, which is g, mL or pc."""

    unit: str | None
    made: str
    on_hand: str
    places: dict[str, str]
    went_to: list[WentTo]
    sold: str
    dispatched: str
    returned: str
    used: str
    lost: str
    found: str
    lost_on: list[LostOn]
    counts: list[Count]


class LotState(MadeState, MovedState):
    """All entries about one lot, added up.

    made + returned + found = sold + dispatched + used + lost + on_hand, always.
    """

    fills: list[FillCheck]
    hold: Hold | None  # None where nothing was ever held or decided
    last_on: str | None
    findings: list[Finding]
    notes: list[Note]


def lot_state(subject: str, facts: Sequence[Fact], beside: Sheets = NOTHING_BESIDE) -> LotState:
    """Fold all entries about `lot:<code>`; a balance is a fold, never a field.

    `beside` holds the sheets of the scales its fill checks lean on, by subject.
    """
    code = id_in(subject)
    record = as_it_stands(facts)
    touching = [entry for entry in record.standing if touches_lot(entry, code)]
    makers = [entry for entry in touching if _makes(entry, code)]
    ledger = Ledger(code=code, unit=_unit([*makers, *touching], code))
    for entry in touching:
        walked(ledger, entry)
    fills = fill_checks(record.standing, code, beside)
    findings = [*record.findings, *ledger.findings, *_maker_findings(makers, touching)]
    hold = hold_state(subject, facts, record.standing)
    findings.extend([*failed_scales(fills), *held_findings(hold)])
    return {
        **_made_state(code, makers),
        **_moved_state(ledger),
        "fills": fills,
        "hold": hold if hold["causes"] or hold["decisions"] else None,
        "last_on": max((entry.local_date for entry in touching), default=None),
        "findings": settled(findings, record.standing, subject),
        "notes": notes_about(record.standing, subject),
    }


def _makes(entry: Standing, code: str) -> bool:
    return entry.kind in MAKING and text_in(entry.body, "lot") == code


def _unit(entries: Sequence[Standing], code: str) -> str | None:
    """The base unit of the first amount known; the lot's maker is asked first."""
    amounts = (moved_amount(entry, code) for entry in entries)
    return next((amount.unit for amount in amounts if amount is not None), None)


def _maker_findings(makers: Sequence[Standing], touching: Sequence[Standing]) -> list[Finding]:
    if touching and not makers:
        return [finding("no_maker", "no_maker", entry=touching[0].id)]
    if len(makers) > 1:
        return [finding("two_makers", "two_makers", entry=makers[1].id)]
    return []


def _made_state(code: str, makers: Sequence[Standing]) -> MadeState:
    maker = makers[0] if makers else None
    body = {} if maker is None else maker.body
    made_from = _made_from(makers)
    return MadeState(
        lot=code,
        material=text_in(body, "material"),
        made_by=None if maker is None else maker.kind,
        maker=None if maker is None else maker.id,
        author=None if maker is None else maker.author,
        condition=_condition(maker),
        made_on=None if maker is None else maker.local_date,
        life=_life(maker),
        source=text_in(body, "source"),
        their_lot=text_in(body, "their_lot"),
        batch=text_in(body, "batch"),
        pack_net=quantity_in(body, "pack_net"),
        came_from=[
            CameFrom(lot=id_in(each["origin"]), amount=each["amount"])
            for each in made_from
            if each["origin"].startswith("lot:")
        ],
        made_from=made_from,
    )


def _made_from(makers: Sequence[Standing]) -> list[MadeFrom]:
    """Every source, batch and lot a lot came from, also where two entries claim to make it."""
    amounts: dict[str, Decimal] = {}

    def add(origin: str, amount: Amount | None) -> None:
        value = ZERO if amount is None else amount.value
        amounts[origin] = total([amounts.get(origin, ZERO), value])

    for maker in makers:
        for poured in items_in(maker.body, "from"):
            add(f"lot:{text_in(poured, 'lot') or ''}", amount_in(poured, "amount"))
        for name in ("source", "batch"):
            origin = text_in(maker.body, name)
            if origin is not None:
                is_refused = text_in(maker.body, "condition") == "refused"
                add(f"{name}:{origin}", None if is_refused else amount_in(maker.body, "amount"))
    return [
        MadeFrom(origin=origin, amount=plain(amount))
        for origin, amount in sorted(amounts.items())
    ]


def _moved_state(ledger: Ledger) -> MovedState:
    return MovedState(
        unit=ledger.unit,
        made=_sum(ledger, "made"),
        on_hand=plain(total(ledger.places.values())),
        places={place: plain(value) for place, value in sorted(ledger.places.items()) if value},
        went_to=[
            WentTo(to=target, amount=plain(way.amount), on=way.on)
            for target, way in sorted(ledger.ways.items())
        ],
        sold=_sum(ledger, "sold"),
        dispatched=_sum(ledger, "dispatched"),
        returned=_sum(ledger, "returned"),
        used=_sum(ledger, "used"),
        lost=_sum(ledger, "lost"),
        found=_sum(ledger, "found"),
        lost_on=[
            LostOn(on=day, amount=plain(amount))
            for day, amount in sorted(ledger.lost_on.items())
            if amount
        ],
        counts=ledger.counts,
    )


def _condition(maker: Standing | None) -> str | None:
    """As recorded at receipt; what was packed as good output or poured together is fit."""
    if maker is None:
        return None
    return text_in(maker.body, "condition") or "fit"


def _life(maker: Standing | None) -> Life | None:
    life = None if maker is None else object_in(maker.body, "life")
    if life is None:
        return None
    return Life(sort=text_in(life, "sort") or "", on=text_in(life, "on") or "")


def _sum(ledger: Ledger, name: str) -> str:
    return plain(ledger.sums.get(name, ZERO))
