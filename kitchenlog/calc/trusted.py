"""A reading with what is known of its instrument: corrected, doubted, or in question.

What counts is what held when the reading was made, also where the check came later.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from types import MappingProxyType
from typing import Any, TypedDict

from kitchenlog.calc.bodies import Body, decimal_in, items_in, object_in, text_in
from kitchenlog.calc.numbers import (
    ZERO,
    as_double,
    difference,
    parse_decimal,
    plain,
    rounded,
    significant,
    total,
)
from kitchenlog.calc.readings import Doubt
from kitchenlog.calc.weighing import PLACES, Weighing, load_of, sum_doubt, weighing_of

Sheets = Mapping[str, Mapping[str, Any]]  # states by subject
NOTHING_BESIDE: Sheets = MappingProxyType({})

_CORRECTION_DIGITS = 12  # of a double, before it is added to an exact reading
_LEAST_MOVE = 5e-7  # less than this is no step at PLACES
_MOST_MOVE = 1e15  # more than any reading: what says so is no correction


@dataclass(frozen=True, kw_only=True)
class TrustedReading:
    """What a reading stands for, in the unit it was read in.

    `read` is what was read, net, with the doubt of the reading alone. `value` is that with the
    correction in force, and `doubt` counts the correction's `calibration_u`, too. `found_by` is
    the check the correction comes from. `failed_by` is a failed check that puts the reading in
    question, and `moves` what would be added if the error it found counted.
    """

    read: Weighing
    value: Decimal
    doubt: Doubt | None
    calibration_u: float | None
    found_by: str | None
    is_extrapolated: bool
    failed_by: str | None
    moves: Decimal | None


class Trust(TypedDict):
    """What a sheet says of a reading's instrument: the corrected value and the check it comes
    from, the failed check that puts it in question and how far that would move it."""

    corrected: str | None
    found_by: str | None
    is_extrapolated: bool
    failed_by: str | None
    moves: str | None


def trusted_reading(
    body: Body, *, happened_at: str, instruments: Sheets, until: str | None = None
) -> TrustedReading | None:
    """The reading or count in a body made at this time; None where there is neither.

    `instruments` are sheets by subject; without its own a reading stands as it was read. One
    of many in a row is in question where any time up to `until` is.
    """
    reading = object_in(body, "reading") or {}
    sheet: Body = instruments.get(f"instrument:{text_in(reading, 'instrument')}", {})
    in_force = _in_force(sheet, happened_at)
    weighing = weighing_of(_with_spread(body, reading, in_force))
    if weighing is None:
        return None
    line = _fitting_line(object_in(in_force, "line"), weighing)
    if line is not None and line.get("is_significant") is not True:
        line = None
    found = None if line is None else _correction(line, reading)
    value = weighing.net if found is None else _moved(weighing.net, found.correction)
    in_doubt = _in_doubt(sheet, happened_at, until or happened_at)
    return TrustedReading(
        read=weighing,
        value=value,
        doubt=weighing.doubt if found is None else _with(weighing.doubt, found),
        calibration_u=None if found is None else found.u,
        found_by=None if found is None else text_in(in_force, "found_by"),
        is_extrapolated=found is not None and found.is_extrapolated,
        failed_by=None if in_doubt is None else text_in(in_doubt, "check"),
        moves=None if in_doubt is None else _moves(in_doubt, weighing, reading, value),
    )


def meant(trusted: TrustedReading, *, is_moved: bool = False) -> Weighing:
    """What a reading stands for as a weighing of its own; `is_moved` as if the error that a
    failed check found counted."""
    by = trusted.moves if is_moved else None
    value = trusted.value if by is None else total([trusted.value, by])
    return Weighing(net=value, unit=trusted.read.unit, doubt=trusted.doubt)


def written_trust(trusted: TrustedReading | None) -> Trust:
    """The same as text; a reading nobody corrected says so by nothing."""
    found_by = None if trusted is None else trusted.found_by
    moves = None if trusted is None else trusted.moves
    return Trust(
        corrected=None if trusted is None or found_by is None else plain(trusted.value),
        found_by=found_by,
        is_extrapolated=trusted is not None and trusted.is_extrapolated,
        failed_by=None if trusted is None else trusted.failed_by,
        moves=None if moves is None else plain(moves),
    )


@dataclass(frozen=True, kw_only=True)
class _Found:
    correction: float
    u: float
    degrees: int | None
    is_extrapolated: bool


def _in_force(sheet: Body, happened_at: str) -> Body:
    """The last row that holds at a time; nothing before the first check."""
    held = [row for row in items_in(sheet, "corrections") if _time(row, "since") <= happened_at]
    return held[-1] if held else {}


def _in_doubt(sheet: Body, from_at: str, to_at: str) -> Body | None:
    """The first failed check whose stretch of time holds some of the reading's."""
    for row in items_in(sheet, "doubts"):
        after, until = text_in(row, "after"), text_in(row, "until")
        if (after is None or after < to_at) and (until is None or from_at <= until):
            return row
    return None


def _time(row: Body, name: str) -> str:
    return text_in(row, name) or ""


def _with_spread(body: Body, reading: Body, in_force: Body) -> Body:
    """The spread a check found stands in where the reading has none of its own."""
    spread = text_in(in_force, "repeatability")
    if spread is None or text_in(reading, "unit") != text_in(in_force, "unit"):
        return body
    if text_in(reading, "repeatability") is not None:
        return body
    return {**body, "reading": {**reading, "repeatability": spread}}


def _fitting_line(line: Body | None, weighing: Weighing) -> Body | None:
    return line if line is not None and text_in(line, "unit") == weighing.unit else None


def _correction(line: Body, reading: Body) -> _Found | None:
    """The line at a reading; of a net mass, which is a difference, only the slope is left and
    what both readings have in common falls out, with its doubt."""
    gross, tare = load_of(reading), decimal_in(reading, "tare")
    slope, sum_xx = _double(line, "slope"), _double(line, "sum_xx")
    if gross is None:
        return None
    sd = _double(line, "sd")
    if tare is None:
        away = as_double(gross) - _double(line, "centre")
        lever = away * away / sum_xx if sum_xx > 0 else 0.0
        correction = _double(line, "height") + slope * away
        u = sd * math.sqrt(1 / max(_double(line, "count"), 1.0) + lever)
    else:
        net = as_double(difference(gross, tare))
        correction = slope * net
        u = sd * abs(net) / math.sqrt(sum_xx) if sum_xx > 0 else 0.0
    if abs(correction) > _MOST_MOVE:
        return None
    degrees = line.get("degrees")
    ends = [gross] if tare is None else [gross, tare]
    return _Found(
        correction=correction,
        u=u,
        degrees=degrees if isinstance(degrees, int) else None,
        is_extrapolated=any(_is_beyond(line, as_double(each)) for each in ends),
    )


def _is_beyond(line: Body, x: float) -> bool:
    return x < _double(line, "low") or x > _double(line, "high")


def _double(line: Body, name: str) -> float:
    """A double of a line as its sheet writes it; 0 where there is none."""
    value = line.get(name)
    return float(value) if isinstance(value, str | int) else 0.0


def _moved(net: Decimal, by: float) -> Decimal:
    if abs(by) < _LEAST_MOVE:
        return net
    exact = parse_decimal(significant(by, _CORRECTION_DIGITS))
    return rounded(total([net, exact]), PLACES)


def _with(doubt: Doubt | None, found: _Found) -> Doubt | None:
    return sum_doubt([doubt, Doubt(u=found.u, degrees=found.degrees)])


def _moves(in_doubt: Body, weighing: Weighing, reading: Body, value: Decimal) -> Decimal | None:
    """From the value in force to what the failed check would make of it; None where it cannot
    say."""
    line = _fitting_line(object_in(in_doubt, "line"), weighing)
    found = None if line is None else _correction(line, reading)
    if found is None:
        return None
    by = difference(_moved(weighing.net, found.correction), value)
    return by if by else ZERO
