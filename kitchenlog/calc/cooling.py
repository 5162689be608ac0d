"""Cooling judged by a rule of time and temperature: pass, fail, not proven or unfinished.

FDA Food Code 3-501.14 as adopted word for word in 16 Del. Admin. Code, read. Limits are
inclusive. A crossing lies on the straight line between two readings, which on a decaying curve
is late: careful for the end, not for the start, so to pass the clock starts at the last reading
before it. Without readings near a limit nothing is proven.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.crossings import MINUTE_PLACES, MINUTE_S, NEAR_S, Crossing, Seconds
from kitchenlog.calc.heat_logs import HeatLog, limit_in_thousandths
from kitchenlog.calc.heat_tables import COOLING_ROWS, CoolingRow
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import divided, parse_decimal, product
from kitchenlog.calc.reheating import Reheat

HeatVerdict = Literal["pass", "fail", "not_proven", "unfinished"]
OneStage = Literal["ambient", "received"]

_HOUR_S = Decimal(3600)
_WORST_FIRST: tuple[HeatVerdict, ...] = ("fail", "not_proven", "unfinished", "pass")


@dataclass(frozen=True, kw_only=True)
class Stage:
    """One stage of cooling: minutes by the straight line, what they are at least and at most,
    and why it is not a pass: a key of a sentence."""

    rule: str
    end_celsius: Decimal
    limit_min: Decimal
    verdict: HeatVerdict
    reason: str | None
    minutes: Decimal | None
    at_least_min: Decimal | None
    at_most_min: Decimal | None
    cited: Cited


@dataclass(frozen=True, kw_only=True)
class Cooling:
    """The worst of its stages decides. `reheated_count` says how often the clock began anew
    because food was shown to have been reheated."""

    verdict: HeatVerdict
    stages: tuple[Stage, ...]
    reheated_count: int
    contradicted_count: int


def two_stage_cooling(log: HeatLog) -> Cooling:
    """Cooked food: from 57 to 21 degC within 2 h and to 5 degC within 6 h in all, the clock
    started when it first passes 57 degC after cooking or after being reheated.

    Reheated is what two readings or more in a row show at 74 degC for 15 s, reached within 2 h
    of the coldest reading and while the 6 h were not over. A warmer one is only warm: the clock
    goes on.
    """
    walk = _Walk(log)
    for row in range(len(log.at_s)):
        walk.step(row)
        if walk.whole is not None:
            break
    first = _judged("stage_1", walk.start, walk.stage_1, log)
    if walk.has_warmed and first.verdict == "pass":
        first = replace(first, verdict="not_proven", reason="warmed_again")
    whole = _judged("whole", walk.start, walk.whole, log)
    stages = [first, whole]
    if walk.reheat.is_in_vain:
        stages = [_in_vain(each) for each in stages]
    return _worst(stages, log, walk.reheat.count)


def one_stage_cooling(log: HeatLog, rule: OneStage, begin_s: int) -> Cooling:
    """Food made from ambient ingredients, or received above 5 degC where law allows: 5 degC
    within 4 h of `begin_s`, the end of preparation or the receipt."""
    row = cooling_row(rule)
    start = Crossing.at_reading(begin_s, earliest_s=begin_s)
    first = next((n for n, second in enumerate(log.at_s) if second >= begin_s), None)
    end = None if first is None else _first_cold(log, first, start)
    stage = _judged(rule, start, end, log)
    if first is not None and stage.verdict == "pass" and row.start_C:
        warmest = limit_in_thousandths(parse_decimal(row.start_C), log.unit)
        if log.high[first] > warmest:
            stage = replace(stage, verdict="not_proven", reason="not_ambient")
    return _worst([stage], log, 0)


def cooling_row(rule: str) -> CoolingRow:
    """A rule of tables/cooling_rule.csv. Raises ValueError for another."""
    for row in COOLING_ROWS:
        if row.rule == rule:
            return row
    raise ValueError(f"no rule of cooling is called {rule!r}")


class _Walk:
    """What has been seen of a cooling so far, reading by reading."""

    def __init__(self, log: HeatLog) -> None:
        self._log = log
        self._passed = _start_of("stage_1", log)
        self._mild = _end_of("stage_1", log)
        self._cold = _end_of("whole", log)
        self.reheat = Reheat(
            log,
            hot=_end_of("reheat", log),
            within_s=_limit_s("reheat"),
            whole_s=_limit_s("whole"),
            near_s=NEAR_S,
        )
        self.start: Crossing | None = None
        self.stage_1: Crossing | None = None
        self.whole: Crossing | None = None
        self.has_warmed = False

    def step(self, row: int) -> None:
        """Of readings that contradict each other the colder starts the clock, the warmer must
        have reached an end."""
        coldest, warmest = self._log.low[row], self._log.high[row]
        if self.start is None and coldest < self._passed:
            self.start = Crossing.into(self._log, self._log.low, row=row, limit=self._passed)
        if self.start is None:
            return
        if self.reheat.step(row, self.start.earliest_s):
            self.start = self.stage_1 = None
            self.has_warmed = False
            return
        if self.stage_1 is not None:
            self.has_warmed = self.has_warmed or warmest > self._mild
        elif warmest <= self._mild:
            self.stage_1 = Crossing.into(self._log, self._log.high, row=row, limit=self._mild)
        if warmest <= self._cold:
            self.whole = Crossing.into(self._log, self._log.high, row=row, limit=self._cold)


def _in_vain(stage: Stage) -> Stage:
    is_why = stage.reason in ("too_slow", "warmed_again")
    return replace(stage, reason="reheat_not_shown") if is_why else stage


def _first_cold(log: HeatLog, first: int, start: Crossing) -> Crossing | None:
    """When 5 degC was reached, from the reading `first` on."""
    limit = _end_of("whole", log)
    for row in range(first, len(log.at_s)):
        if log.high[row] > limit:
            continue
        if row > first:
            return Crossing.into(log, log.high, row=row, limit=limit)
        # Cold at the first reading: since when, between the start and it, nobody knows.
        return Crossing.at_reading(log.at_s[row], earliest_s=start.earliest_s)
    return None


def _judged(rule: str, start: Crossing | None, end: Crossing | None, log: HeatLog) -> Stage:
    row = cooling_row(rule)
    limit_s = Decimal(_limit_s(rule))
    least = most = line = None
    if start is not None:
        last_s = log.at_s[-1] if end is None else end.earliest_s
        least = None if last_s is None else Decimal(max(last_s - start.latest_s, 0))
    if start is not None and end is not None:
        line = end.line.since(start.line)
        if start.earliest_s is not None:
            most = Decimal(end.latest_s - start.earliest_s)
    verdict, reason = _verdict(start, end, _Spans(least, most, line), limit_s)
    return Stage(
        rule=rule,
        end_celsius=parse_decimal(row.end_C),
        limit_min=divided(limit_s, MINUTE_S, 0),
        verdict=verdict,
        reason=reason,
        minutes=None if line is None or most is None else line.minutes(),
        at_least_min=None if least is None else divided(least, MINUTE_S, MINUTE_PLACES),
        at_most_min=None if most is None else divided(most, MINUTE_S, MINUTE_PLACES),
        cited=Cited(what=rule, source=row.source, basis=row.basis),
    )


@dataclass(frozen=True)
class _Spans:
    """How long it took: at least, at most (seconds) and by the straight line."""

    least: Decimal | None
    most: Decimal | None
    line: Seconds | None


def _verdict(
    start: Crossing | None, end: Crossing | None, spans: _Spans, limit_s: Decimal
) -> tuple[HeatVerdict, str | None]:
    if start is None:
        return "unfinished", "not_started"
    is_exact = spans.most is not None and spans.least == spans.most
    # A crossing between two readings comes after the first of them.
    if spans.least is not None and (
        spans.least > limit_s or (spans.least == limit_s and not is_exact)
    ):
        return "fail", "too_slow"
    if end is None or spans.line is None:
        return "unfinished", "not_finished"
    if spans.most is None or start.earliest_s is None:
        return "not_proven", "start_not_seen"
    if spans.most <= limit_s:
        return "pass", None
    if not (start.is_near and end.is_near):
        return "not_proven", "no_reading_near"
    return _by_line(start.earliest_s, end, spans.line, limit_s)


def _by_line(
    earliest_s: int, end: Crossing, line: Seconds, limit_s: Decimal
) -> tuple[HeatVerdict, str | None]:
    if not end.line.since(Seconds.whole(earliest_s)).exceeds(limit_s):
        return "pass", None
    if line.exceeds(limit_s):
        return "fail", "too_slow"
    return "not_proven", "start_between_readings"


def _worst(stages: Sequence[Stage], log: HeatLog, reheated_count: int) -> Cooling:
    verdicts = [stage.verdict for stage in stages]
    return Cooling(
        verdict=min(verdicts, key=_WORST_FIRST.index),
        stages=tuple(stages),
        reheated_count=reheated_count,
        contradicted_count=len(log.contradicted_s),
    )


def _limit_s(rule: str) -> int:
    return int(product(parse_decimal(cooling_row(rule).limit_h), _HOUR_S))


def _start_of(rule: str, log: HeatLog) -> int:
    return limit_in_thousandths(parse_decimal(cooling_row(rule).start_C), log.unit)


def _end_of(rule: str, log: HeatLog) -> int:
    return limit_in_thousandths(parse_decimal(cooling_row(rule).end_C), log.unit)
