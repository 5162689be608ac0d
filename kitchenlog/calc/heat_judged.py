"""What a time-temperature log comes to: how whole it is, and what it is judged by.

A log proves nothing about
its gaps, and where it does not say from when a clock runs, nothing is proven either.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from decimal import Decimal
from itertools import pairwise
from typing import Any, Literal, TypedDict

from kitchenlog.calc.bodies import Body, decimal_in, object_in, text_in
from kitchenlog.calc.cooling import Cooling, HeatVerdict, one_stage_cooling, two_stage_cooling
from kitchenlog.calc.heat_logs import HeatLog, log_in
from kitchenlog.calc.holding import HoldingSort, TimeSort, holding_of, time_control
from kitchenlog.calc.lethality import Reference, lethality, own_reference, reference_of
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import as_double, plain, product, significant

MINUTE_DIGITS = 6  # of a sum of doubles, as a sheet keeps it
# A sum of doubles that is short of the wanted minutes by less than this is not short.
SUM_ERROR = 1e-9
_THOUSANDTH = Decimal("0.001")
_HOLDS: dict[str, HoldingSort] = {"hot_hold": "hot", "cold_hold": "cold"}
_TIMES: dict[str, TimeSort] = {"time_4_h": "time_4_h", "time_6_h": "time_6_h"}


class HeatRows(TypedDict):
    """How whole a log is; temperatures in its unit. `repeated_count` rows say a second again,
    `contradicted_count` seconds have readings that differ: then the worse counts."""

    row_count: int
    left_out_count: int
    repeated_count: int
    contradicted_count: int
    span_s: int
    longest_gap_s: int
    lowest: str
    highest: str


class HeatSum(TypedDict):
    """Minutes at the reference; `bridged_min` is what lines across gaps would add."""

    minutes: str
    bridged_min: str
    wanted_min: str | None
    t_ref: str
    z: str
    unit: str
    base: str | None


class HeatStage(TypedDict):
    """One stage of cooling in minutes: by the straight line, and the least and most it took."""

    rule: str
    verdict: HeatVerdict
    reason: str | None
    limit_min: str
    minutes: str | None
    at_least_min: str | None
    at_most_min: str | None


class HeatOutside(TypedDict):
    """How often held food was beyond the limit, how far at worst, for how many minutes."""

    count: int
    worst: str
    minutes: str


class HeatJudged(TypedDict):
    """What a log comes to. `rows` is None for one that cannot be read; the verdict is None
    where nothing was asked. `reasons` are keys of sentences; `gap_count` counts the gaps this
    judgement minds; `discard_s` is when food under time as a control must be gone."""

    by: str | None
    verdict: HeatVerdict | None
    reasons: list[str]
    rows: HeatRows | None
    sum: HeatSum | None
    stages: list[HeatStage]
    reheated_count: int
    outside: HeatOutside | None
    gap_count: int
    discard_s: int | None
    cited: list[dict[str, str]]


def judged_log(body: Body, taken: HeatLog | None = None) -> HeatJudged:
    """What the body of a `heat_log` comes to, by what it asks to be judged by; with its rows as
    they were read, or as they are `taken` where that is another thing."""
    asked = object_in(body, "judged") or {}
    by = text_in(asked, "by")
    log = taken or log_in(body)
    if log is None:
        return _judged(by, rows=None, verdict=None, reasons=["unreadable"])
    rows = _rows(log, len(body["at_s"]), body.get("left_out"))
    if by == "lethality":
        return _by_lethality(log, asked, rows)
    if by in _HOLDS:
        return _by_holding(log, by, rows)
    if by in _TIMES:
        return _by_time(log, asked, rows)
    return _by_cooling(log, asked, rows)


def _rows(log: HeatLog, count: int, left_out: object) -> HeatRows:
    return HeatRows(
        row_count=count,
        left_out_count=left_out if type(left_out) is int else 0,
        repeated_count=count - len(log.at_s),
        contradicted_count=len(log.contradicted_s),
        span_s=log.at_s[-1] - log.at_s[0],
        longest_gap_s=max((b - a for a, b in pairwise(log.at_s)), default=0),
        lowest=_degrees(min(log.low)),
        highest=_degrees(max(log.high)),
    )


def _by_lethality(log: HeatLog, asked: Body, rows: HeatRows) -> HeatJudged:
    reference = _reference(asked)
    if reference is None:
        return _judged("lethality", rows=rows, verdict="not_proven", reasons=["no_reference"])
    try:
        found = lethality(log, reference)
    except ValueError:
        return _judged("lethality", rows=rows, verdict="not_proven", reasons=["too_far"])
    wanted = decimal_in(asked, "wanted_min")
    verdict: HeatVerdict | None = None
    if wanted is not None:
        enough = as_double(wanted) * (1 - SUM_ERROR)
        bridged = found.minutes + found.bridged_min
        verdict = "fail" if bridged < enough else "not_proven"
        verdict = "pass" if found.minutes >= enough else verdict
    why: dict[HeatVerdict | None, str] = {"fail": "too_little", "not_proven": "gap"}
    return _judged(
        "lethality",
        rows=rows,
        verdict=verdict,
        reasons=[why[verdict]] if verdict in why else [],
        sum=HeatSum(
            minutes=significant(found.minutes, MINUTE_DIGITS),
            bridged_min=significant(found.bridged_min, MINUTE_DIGITS),
            wanted_min=None if wanted is None else plain(wanted),
            t_ref=plain(reference.t_ref),
            z=plain(reference.z),
            unit=reference.unit,
            base=None if reference.base is None else plain(reference.base),
        ),
        gap_count=len(found.gaps),
        cited=_written(reference.cited),
    )


def _reference(asked: Body) -> Reference | None:
    """The reference asked for; None where it is not said whole."""
    named = text_in(asked, "reference") or ""
    t_ref, z = decimal_in(asked, "t_ref"), decimal_in(asked, "z")
    try:
        if named != "own":
            return reference_of(named)
        if t_ref is None or z is None:
            return None
        return own_reference(t_ref, z=z, unit=text_in(asked, "reference_unit") or "")
    except ValueError:
        return None


def _by_holding(log: HeatLog, by: str, rows: HeatRows) -> HeatJudged:
    found = holding_of(log, _HOLDS[by])
    worst: Literal[1, -1] = -1 if by == "hot_hold" else 1
    ends = [each.worst for each in found.outside]
    outside = None
    if ends:
        furthest = max(worst * each for each in ends) * worst
        outside = HeatOutside(
            count=len(ends),
            worst=_degrees(round(furthest * 1000)),
            minutes=significant(found.outside_min, MINUTE_DIGITS),
        )
    return _judged(
        by,
        rows=rows,
        verdict=found.verdict,
        reasons={"fail": ["outside"], "not_proven": ["gap"]}.get(found.verdict, []),
        outside=outside,
        gap_count=len(found.gaps),
        cited=_written([found.cited]),
    )


def _by_time(log: HeatLog, asked: Body, rows: HeatRows) -> HeatJudged:
    by = text_in(asked, "by") or ""
    out_s, used_s = asked.get("from_s"), asked.get("to_s")
    if type(out_s) is not int or type(used_s) is not int:
        return _judged(by, rows=rows, verdict="not_proven", reasons=["times_not_said"])
    if used_s < out_s:
        return _judged(by, rows=rows, verdict="not_proven", reasons=["times_turned"])
    found = time_control(log, _TIMES[by], out_s=out_s, used_s=used_s)
    return _judged(
        by,
        rows=rows,
        verdict=found.verdict,
        reasons=list(found.reasons),
        discard_s=found.discard_s,
        cited=_written([found.cited]),
    )


def _by_cooling(log: HeatLog, asked: Body, rows: HeatRows) -> HeatJudged:
    by = text_in(asked, "by")
    if by == "two_stage_cooling":
        return _cooled(by, two_stage_cooling(log), rows)
    if by not in ("ambient_cooling", "received_cooling"):
        return _judged(None, rows=rows, verdict=None, reasons=[])
    begin_s = asked.get("from_s")
    if type(begin_s) is not int:
        return _judged(by, rows=rows, verdict="not_proven", reasons=["times_not_said"])
    rule: Literal["ambient", "received"] = "ambient" if by == "ambient_cooling" else "received"
    return _cooled(by, one_stage_cooling(log, rule, begin_s), rows)


def _cooled(by: str, found: Cooling, rows: HeatRows) -> HeatJudged:
    reasons = [each.reason for each in found.stages if each.reason is not None]
    return _judged(
        by,
        rows=rows,
        verdict=found.verdict,
        reasons=sorted(set(reasons), key=reasons.index),
        stages=[
            HeatStage(
                rule=each.rule,
                verdict=each.verdict,
                reason=each.reason,
                limit_min=plain(each.limit_min),
                minutes=None if each.minutes is None else plain(each.minutes),
                at_least_min=None if each.at_least_min is None else plain(each.at_least_min),
                at_most_min=None if each.at_most_min is None else plain(each.at_most_min),
            )
            for each in found.stages
        ],
        reheated_count=found.reheated_count,
        cited=_written([each.cited for each in found.stages]),
    )


def _judged(
    by: str | None,
    *,
    rows: HeatRows | None,
    verdict: HeatVerdict | None,
    reasons: list[str],
    **more: Any,  # the fields of HeatJudged that this judgement has
) -> HeatJudged:
    nothing: HeatJudged = {
        "by": by, "verdict": verdict, "reasons": reasons, "rows": rows, "sum": None,
        "stages": [], "reheated_count": 0, "outside": None, "gap_count": 0, "discard_s": None,
        "cited": [],
    }  # fmt: skip
    return {**nothing, **more}  # type: ignore[typeddict-item] # of the fields named above


def _written(cited: Sequence[Cited]) -> list[dict[str, str]]:
    return [asdict(each) for each in cited]


def _degrees(thousandths: int) -> str:
    return plain(product(Decimal(thousandths), _THOUSANDTH))
