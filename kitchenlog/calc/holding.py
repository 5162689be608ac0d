"""Hot and cold holding, and time as a control: FDA Food Code 3-501.16 and 3-501.19 as in
16 Del. Admin. Code, read. At the limit itself food is held; at the hour it is discarded."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise
from typing import Literal

from kitchenlog.calc.cooling import HeatVerdict, cooling_row
from kitchenlog.calc.crossings import NEAR_S
from kitchenlog.calc.heat_logs import Gap, HeatLog, gaps, limit_in_thousandths
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import parse_decimal, product

HoldingSort = Literal["hot", "cold"]
TimeSort = Literal["time_4_h", "time_6_h"]

# Between two looks at held food; a habit, so that it can still be put right within 4 h.
HOLD_GAP_S = 7200
_HOUR_S = Decimal(3600)


@dataclass(frozen=True, kw_only=True)
class Outside:
    """Readings in a row that were beyond the limit, and the worst of them in degrees."""

    from_s: int
    to_s: int
    worst: float


@dataclass(frozen=True, kw_only=True)
class Holding:
    """Whether food was held; `outside_min` is the time beyond the limit by straight lines.

    A log whose readings all held and that has gaps proves nothing about the gaps.
    """

    verdict: HeatVerdict
    outside: tuple[Outside, ...]
    outside_min: float
    gaps: tuple[Gap, ...]
    cited: Cited


@dataclass(frozen=True, kw_only=True)
class TimeControl:
    """Whether food without temperature control was used in time; `discard_s` is the second of
    the log at which it must be gone, `reasons` are keys of sentences."""

    verdict: HeatVerdict
    reasons: tuple[str, ...]
    discard_s: int
    cited: Cited


def holding_of(log: HeatLog, sort: HoldingSort, longest_s: int = HOLD_GAP_S) -> Holding:
    """Hot food at or above 57 degC, cold food at or below 5 degC, at every reading.

    Of readings that contradict each other the one nearer to harm counts.
    """
    row = cooling_row(sort)
    limit = limit_in_thousandths(parse_decimal(row.end_C), log.unit)
    # How far beyond the limit each reading is, above zero where it is.
    beyond = [limit - low for low in log.low]
    if sort == "cold":
        beyond = [high - limit for high in log.high]
    outside = _outside(log, beyond, limit, -1 if sort == "hot" else 1)
    unseen = gaps(log, longest_s)
    verdict: HeatVerdict = "fail" if outside else "not_proven" if unseen else "pass"
    return Holding(
        verdict=verdict,
        outside=outside,
        outside_min=_minutes_beyond(log.at_s, beyond),
        gaps=unseen,
        cited=Cited(what=sort, source=row.source, basis=row.basis),
    )


def time_control(log: HeatLog, sort: TimeSort, *, out_s: int, used_s: int) -> TimeControl:
    """Time as a control, from the second food was taken out to the one it was used up.

    4 h: taken out at or below 5 or at or above 57 degC. 6 h: taken out at or below 5 degC and
    never above 21 degC. Raises ValueError when it was used before it was taken out.
    """
    if used_s < out_s:
        raise ValueError("food is used after it is taken out")
    row = cooling_row(sort)
    limit_s = int(product(parse_decimal(row.limit_h), _HOUR_S))
    broken = ["over_time"] if used_s - out_s >= limit_s else []
    unproven: list[str] = []
    start = _start_reason(log, sort, out_s)
    if start is not None:
        (unproven if start == "start_not_seen" else broken).append(start)
    if sort == "time_6_h":
        warmest = limit_in_thousandths(parse_decimal(row.end_C), log.unit)
        broken.extend(_too_warm(log, warmest, out_s, used_s))
        unproven.extend(_unseen(log, out_s, used_s))
    return TimeControl(
        verdict="fail" if broken else "not_proven" if unproven else "pass",
        reasons=(*broken, *unproven),
        discard_s=out_s + limit_s,
        cited=Cited(what=sort, source=row.source, basis=row.basis),
    )


def _outside(log: HeatLog, beyond: Sequence[int], limit: int, sign: int) -> tuple[Outside, ...]:
    spans: list[Outside] = []
    worst = 0
    for row, excess in enumerate(beyond):
        if excess <= 0:
            worst = 0
            continue
        began = spans.pop().from_s if worst > 0 else log.at_s[row]
        worst = max(worst, excess)
        degrees = (limit + sign * worst) / 1000
        spans.append(Outside(from_s=began, to_s=log.at_s[row], worst=degrees))
    return tuple(spans)


def _minutes_beyond(at_s: Sequence[int], beyond: Sequence[int]) -> float:
    """Time above zero of the straight lines between the readings."""
    minutes = 0.0
    for row in range(1, len(at_s)):
        before, now = beyond[row - 1], beyond[row]
        step_min = (at_s[row] - at_s[row - 1]) / 60
        if before > 0 and now > 0:
            minutes = minutes + step_min
        elif before > 0 or now > 0:
            minutes = minutes + step_min * (max(before, now) / abs(before - now))
    return minutes


def _start_reason(log: HeatLog, sort: TimeSort, out_s: int) -> str | None:
    """What is wrong with the last reading before food was taken out; only a recent one says."""
    rows = [n for n, second in enumerate(log.at_s) if out_s - NEAR_S <= second <= out_s]
    if not rows:
        return "start_not_seen"
    cold = limit_in_thousandths(parse_decimal(cooling_row("cold").end_C), log.unit)
    hot = limit_in_thousandths(parse_decimal(cooling_row("hot").end_C), log.unit)
    is_cold, is_hot = log.high[rows[-1]] <= cold, log.low[rows[-1]] >= hot
    return None if is_cold or (is_hot and sort == "time_4_h") else "not_held_before"


def _too_warm(log: HeatLog, warmest: int, out_s: int, used_s: int) -> list[str]:
    pairs = zip(log.at_s, log.high, strict=True)
    is_warm = any(out_s <= second <= used_s and high > warmest for second, high in pairs)
    return ["too_warm"] if is_warm else []


def _unseen(log: HeatLog, out_s: int, used_s: int) -> list[str]:
    """Readings must follow one another within half an hour from one end to the other."""
    seen = [out_s, *(second for second in log.at_s if out_s <= second <= used_s), used_s]
    is_unseen = any(b - a > NEAR_S for a, b in pairwise(seen))
    return ["not_watched"] if is_unseen else []
