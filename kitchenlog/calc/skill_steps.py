"""What became better from one drill to the next: only steps larger than their own doubt.

Standard uncertainty of a mean: s / sqrt(n) (JCGM 100:2008 4.2.3). Of a standard deviation s of
n readings: s / sqrt(2 (n - 1)) (E.4.3). Of a share p of n: sqrt(p (1 - p) / n), binomial.
A step counts when it exceeds the root of both squared; that is one standard uncertainty, not
proof: few readings make any step small.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, NotRequired, TypedDict

from kitchenlog.calc.numbers import as_double, parse_decimal
from kitchenlog.calc.readings import combined_u

Figures = Mapping[str, Any]
Drill = Mapping[str, Any]


class Improved(TypedDict):
    """One thing that became better: `what` is a text key, figures are those of the drills."""

    what: str
    sort: NotRequired[str]
    technique: NotRequired[str]
    before: NotRequired[str]
    now: NotRequired[str]


def improved_between(before: Drill, now: Drill) -> list[Improved]:
    """What of the later drill is better than the earlier one, in the order of the sheet."""
    made: list[Improved] = []
    for sort, figures in now["sorts"].items():
        earlier = before["sorts"].get(sort)
        if earlier is not None:
            made += _better_reading(sort, earlier, figures)
    made += _better_weighing(before["weighing"], now["weighing"])
    made += [
        Improved(what="technique", technique=each)
        for each in now["techniques"]
        if each not in before["techniques"]
    ]
    return made


def _better_reading(sort: str, before: Figures, now: Figures) -> list[Improved]:
    names = ("bias", "spread", "within_half_percent")
    steps = (_bias_step, _spread_step, _share_step)
    return [
        Improved(what=name, sort=sort, before=before[name], now=now[name])
        for name, step in zip(names, steps, strict=True)
        if before["count"] > 1 and now["count"] > 1 and step(before, now)
    ]


def _bias_step(before: Figures, now: Figures) -> bool:
    doubts = [_number(each["spread"]) / math.sqrt(each["count"]) for each in (before, now)]
    return _exceeds(abs(_number(before["bias"])) - abs(_number(now["bias"])), doubts)


def _spread_step(before: Figures, now: Figures) -> bool:
    doubts = [_doubt_of_spread(_number(e["spread"]), e["count"]) for e in (before, now)]
    return _exceeds(_number(before["spread"]) - _number(now["spread"]), doubts)


def _share_step(before: Figures, now: Figures) -> bool:
    shares = [_number(each["within_half_percent"]) / 100 for each in (before, now)]
    counts = [before["count"], now["count"]]
    doubts = [math.sqrt(p * (1 - p) / n) for p, n in zip(shares, counts, strict=True)]
    return _exceeds(shares[1] - shares[0], doubts)


def _better_weighing(before: Figures | None, now: Figures | None) -> list[Improved]:
    """Only on one instrument: another one repeats otherwise by itself."""
    if before is None or now is None or before["s"] is None or now["s"] is None:
        return []
    is_same = all(before[name] == now[name] for name in ("instrument", "unit", "division"))
    spreads = [_number(each["s"]) for each in (before, now)]
    doubts = [_doubt_of_spread(_number(each["s"]), each["count"]) for each in (before, now)]
    if not is_same or not _exceeds(spreads[0] - spreads[1], doubts):
        return []
    return [Improved(what="repeatability", before=before["s"], now=now["s"])]


def _doubt_of_spread(spread: float, count: int) -> float:
    return spread / math.sqrt(2 * (count - 1))


def _exceeds(step: float, doubts: list[float]) -> bool:
    return step > combined_u(doubts)


def _number(text: str) -> float:
    return as_double(parse_decimal(text))
