"""A time-temperature log with what is known of its thermometer: corrected, and judged with the
guard band of its readings, as any reading is.

The correction is the one in force when the log began; a failed check puts the log in question
when any of its time lies in the stretch that the check does.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.bodies import Body, text_in
from kitchenlog.calc.cooling import HeatVerdict
from kitchenlog.calc.heat_judged import HeatJudged, HeatStage, judged_log
from kitchenlog.calc.heat_logs import HeatLog, log_in
from kitchenlog.calc.numbers import plain, product, rounded, significant
from kitchenlog.calc.readings import guard_band
from kitchenlog.calc.shelf_life import later
from kitchenlog.calc.trusted import Sheets, TrustedReading, meant, trusted_reading

U_DIGITS = 3
_THOUSAND = 1000
_THOUSANDTH = Decimal("0.001")
_MINUTE_S = 60
_MOST = 10**12  # thousandths: no correction makes more of a temperature
_WORST_FIRST: tuple[HeatVerdict, ...] = ("fail", "not_proven", "unfinished", "pass")


class HeatTrust(TypedDict):
    """What a sheet says of the thermometer of a log, in the unit of the log.

    `lowest` and `highest` are corrected, None where nothing corrects; `u` is the largest
    standard uncertainty of a reading, None where the division is not known; `least_min` is the
    sum of heat if every reading were as much colder as its guard band. `moves` is what a failed
    check would add at most, `would_be` the verdict if that counted.
    """

    lowest: str | None
    highest: str | None
    u: str | None
    least_min: str | None
    found_by: str | None
    is_extrapolated: bool
    failed_by: str | None
    moves: str | None
    would_be: HeatVerdict | None


class TrustedHeat(HeatJudged):
    """What a log comes to, its thermometer counted; `rows` as they were read."""

    trust: HeatTrust | None  # None for one that cannot be read


def trusted_log(body: Body, *, happened_at: str, instruments: Sheets) -> TrustedHeat:
    """What the body of a `heat_log` comes to when its thermometer is taken for what it is.

    A pass is one only with every reading a guard band nearer to harm, a failure only with every
    one a guard band further from it; else the log is not proven. Without a known doubt nothing
    passes. `instruments` are sheets by subject.
    """
    log = log_in(body)
    if log is None:
        return {**judged_log(body), "trust": None}
    taken = _taken(log, _readings(log, body, happened_at, instruments))
    judged, careful = _sure(body, taken, taken.log)
    as_read = judged_log({**body, "judged": {}}, log)["rows"]
    return {
        **judged,
        "rows": as_read,
        "trust": _written(body, taken, None if careful is None else careful["sum"]),
    }


@dataclass(frozen=True, kw_only=True)
class _Taken:
    """A log as its thermometer is trusted. `guard` is the widest guard band in thousandths,
    `moved` the log as a failed check would have it, `furthest` how far at most."""

    log: HeatLog
    first: TrustedReading
    is_extrapolated: bool
    u: float | None
    guard: int | None
    moved: HeatLog | None
    furthest: Decimal | None


def _readings(
    log: HeatLog, body: Body, happened_at: str, instruments: Sheets
) -> Mapping[int, TrustedReading]:
    """Each temperature that was read, as a reading of the thermometer the log names."""
    began_at = text_in(body, "began_at") or happened_at
    until = _end(began_at, log.at_s[-1])
    about = {name: text_in(body, name) for name in ("instrument", "division", "repeatability")}
    known = {name: value for name, value in about.items() if value is not None}

    def reading(value: int) -> TrustedReading:
        shown = {"reading": {**known, "unit": log.unit, "shown": _degrees(value)}}
        found = trusted_reading(
            shown, happened_at=began_at, until=until, instruments=instruments
        )
        assert found is not None  # it was shown
        return found

    values = {*log.low, *log.high}
    first = reading(log.low[0])
    if first.found_by is None and first.moves is None:  # no line: each stands as it was read
        return dict.fromkeys(values, first)
    return {value: reading(value) for value in values}


def _end(began_at: str, span_s: int) -> str:
    """The last minute of a log; its beginning where that is no instant."""
    try:
        return later(began_at, -(-span_s // _MINUTE_S))
    except ValueError:
        return began_at


def _taken(log: HeatLog, readings: Mapping[int, TrustedReading]) -> _Taken:
    first = readings[log.low[0]]
    all_read = readings.values()
    doubts = [each.doubt for each in all_read]
    known = [each for each in doubts if each is not None]
    is_known = len(known) == len(doubts)
    moves = [each.moves for each in all_read if each.moves is not None]
    return _Taken(
        log=_mapped(log, lambda value: _corrected(value, readings[value])),
        first=first,
        is_extrapolated=any(each.is_extrapolated for each in all_read),
        u=max(each.u for each in known) if is_known else None,
        guard=_guard(max(guard_band(each) for each in known)) if is_known else None,
        moved=_mapped(log, lambda value: _corrected(value, readings[value], is_moved=True))
        if moves
        else None,
        # Of two that are as far both ways the upward one, so that no order decides.
        furthest=max(moves, key=lambda each: (abs(each), each)) if moves else None,
    )


def _corrected(value: int, reading: TrustedReading, *, is_moved: bool = False) -> int:
    if reading.found_by is None and not is_moved:
        return value
    stands = meant(reading, is_moved=is_moved).net
    exact = int(rounded(product(stands, Decimal(_THOUSAND)), 0))
    return max(-_MOST, min(_MOST, exact))


def _guard(band: float) -> int:
    """Never narrower than it is."""
    return math.ceil(band * _THOUSAND)


def _mapped(log: HeatLog, change: Callable[[int], int]) -> HeatLog:
    return replace(log, low=tuple(map(change, log.low)), high=tuple(map(change, log.high)))


def _widened(log: HeatLog, by: int) -> HeatLog:
    """The colder readings so much colder, the warmer ones warmer: each judgement takes the one
    that is nearer to harm. With a negative width the one further from it."""
    return replace(
        log,
        low=tuple(value - by for value in log.low),
        high=tuple(value + by for value in log.high),
    )


def _sure(body: Body, taken: _Taken, log: HeatLog) -> tuple[HeatJudged, HeatJudged | None]:
    """A log judged with its guard band, and what it comes to nearest to harm; None where the
    doubt is not known."""
    judged = judged_log(body, log)
    if taken.guard is None:
        return _decided(judged, None, judged, why="thermometer_unknown"), None
    careful = judged_log(body, _widened(log, taken.guard))
    verdicts = [judged["verdict"], *(each["verdict"] for each in judged["stages"])]
    kindest = judged_log(body, _widened(log, -taken.guard)) if "fail" in verdicts else judged
    return _decided(judged, careful, kindest, why="thermometer"), careful


def _decided(
    judged: HeatJudged, careful: HeatJudged | None, kindest: HeatJudged, *, why: str
) -> HeatJudged:
    """The verdicts that hold either way, the others not proven."""
    stages = [
        _stage(
            stage,
            None if careful is None else careful["stages"][number],
            kindest["stages"][number],
            why=why,
        )
        for number, stage in enumerate(judged["stages"])
    ]
    if stages:
        worst = min((each["verdict"] for each in stages), key=_WORST_FIRST.index)
        reasons = [each["reason"] for each in stages if each["reason"] is not None]
        unique = list(dict.fromkeys(reasons))
        return {**judged, "verdict": worst, "stages": stages, "reasons": unique}
    says = None if careful is None else careful["verdict"]
    if not _is_turned(judged["verdict"], says, kindest["verdict"]):
        return judged
    return {**judged, "verdict": "not_proven", "reasons": [why]}


def _stage(
    stage: HeatStage, careful: HeatStage | None, kindest: HeatStage, *, why: str
) -> HeatStage:
    says = None if careful is None else careful["verdict"]
    if not _is_turned(stage["verdict"], says, kindest["verdict"]):
        return stage
    return {**stage, "verdict": "not_proven", "reason": why}


def _is_turned(
    verdict: HeatVerdict | None, careful: HeatVerdict | None, kindest: HeatVerdict | None
) -> bool:
    if verdict == "pass":
        return careful != "pass"
    return verdict == "fail" and kindest != "fail"


def _written(body: Body, taken: _Taken, careful: object) -> HeatTrust:
    first, moved = taken.first, taken.moved
    least = text_in(careful, "minutes") if isinstance(careful, dict) else None
    would_be = None if moved is None else _sure(body, taken, moved)[0]["verdict"]
    is_corrected = first.found_by is not None
    return HeatTrust(
        lowest=_degrees(min(taken.log.low)) if is_corrected else None,
        highest=_degrees(max(taken.log.high)) if is_corrected else None,
        u=None if taken.u is None else significant(taken.u, U_DIGITS),
        least_min=least,
        found_by=first.found_by,
        is_extrapolated=taken.is_extrapolated,
        failed_by=first.failed_by,
        moves=None if taken.furthest is None else plain(taken.furthest),
        would_be=would_be,
    )


def _degrees(thousandths: int) -> str:
    return plain(product(Decimal(thousandths), _THOUSANDTH))
