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

from kitchenlog.calc.heat_logs import HeatLog, limit_in_thousandths
from kitchenlog.calc.heat_tables import COOLING_ROWS, CoolingRow
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import ONE, difference, divided, parse_decimal, product
from kitchenlog.calc.reheating import Reheat

HeatVerdict = Literal["pass", "fail", "not_proven", "unfinished"]
OneStage = Literal["ambient", "received"]

MINUTE_PLACES = 2
# How far apart the readings around a limit may be for a straight line to decide; own proposal.
NEAR_S = 1800
_HOUR_S = Decimal(3600)
_MINUTE_S = Decimal(60)
_WORST_FIRST: tuple[HeatVerdict, ...] = ("fail", "not_proven", "unfinished", "pass")


@dataclass(frozen=True, kw_only=True)
class Seconds:
    """An exact time: `over` / `under` seconds since the log began."""

    over: Decimal
    under: Decimal


@dataclass(frozen=True, kw_only=True)
class Crossing:
    """When a limit was passed: between two readings, and on the straight line between them.

    `earliest_s` is None where it was before the first reading; both are alike where a reading
    is exactly the limit.
    """

    earliest_s: int | None
    latest_s: int
    line: Seconds


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
    start = Crossing(earliest_s=begin_s, latest_s=begin_s, line=_whole(begin_s))
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
            self.start = _crossing(self._log, self._log.low, row, self._passed)
        if self.start is None:
            return
        if self.reheat.step(row, self.start.earliest_s):
            self.start = self.stage_1 = None
            self.has_warmed = False
            return
        if self.stage_1 is not None:
            self.has_warmed = self.has_warmed or warmest > self._mild
        elif warmest <= self._mild:
            self.stage_1 = _crossing(self._log, self._log.high, row, self._mild)
        if warmest <= self._cold:
            self.whole = _crossing(self._log, self._log.high, row, self._cold)


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
            return _crossing(log, log.high, row, limit)
        # Cold at the first reading: since when, between the start and it, nobody knows.
        at = log.at_s[row]
        return Crossing(earliest_s=start.earliest_s, latest_s=at, line=_whole(at))
    return None


def _crossing(log: HeatLog, values: Sequence[int], row: int, limit: int) -> Crossing:
    """Where a log falls through a limit between the reading before `row` and that one."""
    at = log.at_s[row]
    if row == 0:
        return Crossing(earliest_s=None, latest_s=at, line=_whole(at))
    before, above, below = log.at_s[row - 1], values[row - 1], values[row]
    over = before * (above - below) + (above - limit) * (at - before)
    return Crossing(
        earliest_s=at if below == limit else before,
        latest_s=before if above == limit else at,
        line=Seconds(over=Decimal(over), under=Decimal(above - below)),
    )


def _judged(rule: str, start: Crossing | None, end: Crossing | None, log: HeatLog) -> Stage:
    row = cooling_row(rule)
    limit_s = Decimal(_limit_s(rule))
    least = most = line = None
    if start is not None:
        last_s = log.at_s[-1] if end is None else end.earliest_s
        least = None if last_s is None else Decimal(max(last_s - start.latest_s, 0))
    if start is not None and end is not None:
        line = _between(start.line, end.line)
        if start.earliest_s is not None:
            most = Decimal(end.latest_s - start.earliest_s)
    verdict, reason = _verdict(start, end, _Spans(least, most, line), limit_s)
    return Stage(
        rule=rule,
        end_celsius=parse_decimal(row.end_C),
        limit_min=divided(limit_s, _MINUTE_S, 0),
        verdict=verdict,
        reason=reason,
        minutes=None if line is None or most is None else _minutes(line),
        at_least_min=None if least is None else divided(least, _MINUTE_S, MINUTE_PLACES),
        at_most_min=None if most is None else divided(most, _MINUTE_S, MINUTE_PLACES),
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
    if not (_is_near(start) and _is_near(end)):
        return "not_proven", "no_reading_near"
    return _by_line(start.earliest_s, end, spans.line, limit_s)


def _by_line(
    earliest_s: int, end: Crossing, line: Seconds, limit_s: Decimal
) -> tuple[HeatVerdict, str | None]:
    if not _exceeds(_between(_whole(earliest_s), end.line), limit_s):
        return "pass", None
    if _exceeds(line, limit_s):
        return "fail", "too_slow"
    return "not_proven", "start_between_readings"


def _is_near(crossing: Crossing) -> bool:
    earliest = crossing.earliest_s
    return earliest is not None and crossing.latest_s - earliest <= NEAR_S


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


def _whole(second: int) -> Seconds:
    return Seconds(over=Decimal(second), under=ONE)


def _between(start: Seconds, end: Seconds) -> Seconds:
    over = difference(product(end.over, start.under), product(start.over, end.under))
    return Seconds(over=over, under=product(start.under, end.under))


def _exceeds(span: Seconds, limit_s: Decimal) -> bool:
    return span.over > product(limit_s, span.under)


def _minutes(span: Seconds) -> Decimal:
    return divided(span.over, product(span.under, _MINUTE_S), MINUTE_PLACES)
