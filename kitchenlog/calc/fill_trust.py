"""A fill check with what is known of its scale: as the masses stand for, or in question."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypedDict

from kitchenlog.calc.bodies import Body, text_in, texts_in
from kitchenlog.calc.fills import Fill, fill_of
from kitchenlog.calc.net_content import NetVerdict
from kitchenlog.calc.numbers import difference, parse_decimal, plain
from kitchenlog.calc.record import Finding, Standing, Was, finding
from kitchenlog.calc.trusted import Sheets, TrustedReading, meant, trusted_reading

_MASSES = ("tares", "gross")


class FillTrust(TypedDict):
    """What the checks of its scale say of a fill check, as Trust does of a reading.

    `moves` is how far the mean content would move, in the unit of the fill, and `would_be` the
    verdict, if the error that a failed check found counted; None where nobody can say.
    """

    found_by: str | None
    is_extrapolated: bool
    failed_by: str | None
    moves: str | None
    would_be: NetVerdict | None


class FillCheck(Fill):
    """A fill check of the lot: its entry, the day, who made it, what was corrected; the scale
    and what the checks of that scale say of it."""

    entry: str
    on: str
    happened_at: str
    author: str
    instrument: str | None
    trust: FillTrust
    was: list[Was]


class DoubtedFill(TypedDict):
    """What a finding needs to know of a fill check."""

    entry: str
    verdict: NetVerdict
    trust: FillTrust


@dataclass(frozen=True, kw_only=True)
class TrustedFill:
    """What a fill check says with every mass as it stands for, and how far to trust it."""

    fill: Fill
    trust: FillTrust


def trusted_fill(body: Body, *, happened_at: str, instruments: Sheets) -> TrustedFill:
    """Every mass on the scale is corrected as a reading of that time is, then judged.

    `instruments` are sheets by subject; without its scale's own the masses stand as read.
    """
    readings = {
        name: [
            trusted_reading(
                _reading(body, mass), happened_at=happened_at, instruments=instruments
            )
            for mass in texts_in(body, name)
        ]
        for name in _MASSES
    }
    known = [each for some in readings.values() for each in some if each is not None]
    fill = fill_of(_with_masses(body, readings, is_moved=False))
    failed_by = next((each.failed_by for each in known if each.failed_by is not None), None)
    moved = None
    if failed_by is not None and all(each.moves is not None for each in known):
        moved = fill_of(_with_masses(body, readings, is_moved=True))
    return TrustedFill(
        fill=fill,
        trust=FillTrust(
            found_by=next((each.found_by for each in known if each.found_by), None),
            is_extrapolated=any(each.is_extrapolated for each in known),
            failed_by=failed_by,
            moves=None if moved is None else _moves(fill, moved),
            would_be=None if moved is None else moved["verdict"],
        ),
    )


def fill_checks(standing: Sequence[Standing], code: str, scales: Sheets) -> list[FillCheck]:
    """The fill checks of a lot in the order they were made; `scales` are sheets by subject."""
    return [
        _fill_check(each, scales)
        for each in standing
        if each.kind == "fill_checked" and text_in(each.body, "lot") == code
    ]


def failed_scales(fills: Sequence[DoubtedFill]) -> list[Finding]:
    """By failed check: how many fill checks it puts in question, and which verdicts would
    change: `<entry>:pass:fail`."""
    checks = {each["trust"]["failed_by"] for each in fills} - {None}
    return [
        _finding(check, [each for each in fills if each["trust"]["failed_by"] == check])
        for check in sorted(str(each) for each in checks)
    ]


def _fill_check(entry: Standing, scales: Sheets) -> FillCheck:
    trusted = trusted_fill(entry.body, happened_at=entry.happened_at, instruments=scales)
    return FillCheck(
        **trusted.fill,
        entry=entry.id,
        on=text_in(entry.body, "on") or entry.local_date,
        happened_at=entry.happened_at,
        author=entry.author,
        instrument=text_in(entry.body, "instrument"),
        trust=trusted.trust,
        was=list(entry.was),
    )


def _reading(body: Body, mass: str) -> Body:
    reading = {"shown": mass, "unit": text_in(body, "unit") or ""}
    instrument = text_in(body, "instrument")
    return {"reading": reading if instrument is None else {**reading, "instrument": instrument}}


def _with_masses(
    body: Body, readings: dict[str, list[TrustedReading | None]], *, is_moved: bool
) -> Body:
    """The body with masses as they stand for."""
    masses = {
        name: [
            _mass(text, each, is_moved=is_moved)
            for text, each in zip(texts_in(body, name), readings[name], strict=True)
        ]
        for name in _MASSES
    }
    return {**body, **masses}


def _mass(text: str, reading: TrustedReading | None, *, is_moved: bool) -> str:
    """What nothing moves, and what cannot be read, stays as it was written."""
    if reading is None:
        return text
    stands = meant(reading, is_moved=is_moved).net
    return text if stands == reading.read.net else plain(stands)


def _moves(fill: Fill, moved: Fill) -> str | None:
    if fill["mean_error"] is None or moved["mean_error"] is None:
        return None
    is_now, would_be = (
        parse_decimal(each) for each in (fill["mean_error"], moved["mean_error"])
    )
    return plain(difference(would_be, is_now))


def _finding(check: str, fills: Sequence[DoubtedFill]) -> Finding:
    changes = [
        f"{each['entry']}:{each['verdict']}:{each['trust']['would_be']}"
        for each in fills
        if each["trust"]["would_be"] not in (None, each["verdict"])
    ]
    detail = {"readings": str(len(fills)), "would_change": " ".join(changes)}
    return finding(
        f"instrument_failed:{check}", "instrument_failed", entry=check, detail=detail
    )
