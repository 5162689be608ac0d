"""Control charts: is what varies still only what always varied?

X-bar and range, individuals and moving range: Montgomery, Introduction to Statistical Quality
Control (read-secondary). EWMA: NIST/SEMATECH e-Handbook 6.3.2.4 (read). Constants:
tables/control_chart_constants.csv. Points are counted from 0.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise
from types import MappingProxyType
from typing import Literal

from kitchenlog.calc.chart_tables import CHART_ROWS, ChartRow
from kitchenlog.calc.elementary import added
from kitchenlog.calc.numbers import as_double, difference

Rule = Literal["beyond_limit", "eight_on_one_side", "six_in_a_row", "two_of_three_far"]


@dataclass(frozen=True, kw_only=True)
class RuleSource:
    """Who published a rule, and how that was learned."""

    source: str
    basis: str


RULES: Mapping[Rule, RuleSource] = MappingProxyType(
    {
        "beyond_limit": RuleSource(
            source="Shewhart 1931; Western Electric Handbook 1956, test 1", basis="memory"
        ),
        "eight_on_one_side": RuleSource(
            source="Western Electric Handbook 1956, test 4 (Nelson 1984 asks for nine)",
            basis="memory",
        ),
        "six_in_a_row": RuleSource(
            source="Nelson, Journal of Quality Technology 16 (1984), test 3", basis="memory"
        ),
        "two_of_three_far": RuleSource(
            source="Western Electric Handbook 1956, test 2", basis="memory"
        ),
    }
)
SIDE_RUN = 8
TREND_RUN = 6
FAR_SIGMAS = 2.0
FAR_WINDOW = 3
FAR_COUNT = 2

_ROWS: Mapping[int, ChartRow] = MappingProxyType({row.n: row for row in CHART_ROWS})


@dataclass(frozen=True, kw_only=True)
class Limits:
    """The control limits of one point, in the unit of the series."""

    low: float
    high: float


@dataclass(frozen=True, kw_only=True)
class Fired:
    """A rule that fired and all points that made it fire."""

    rule: Rule
    points: tuple[int, ...]


@dataclass(frozen=True, kw_only=True)
class Chart:
    """Points with one centre and a pair of limits for each; `sigma` is the standard deviation
    of a plotted point, None for ranges, whose two sides are unlike."""

    points: tuple[float, ...]
    centre: float
    sigma: float | None
    limits: tuple[Limits, ...]
    fired: tuple[Fired, ...]


@dataclass(frozen=True, kw_only=True)
class ChartPair:
    """Where things stand, how much they vary, and the sigma of single readings."""

    places: Chart
    ranges: Chart
    sigma: float


def xbar_range(subgroups: Sequence[Sequence[Decimal]]) -> ChartPair:
    """Means and ranges of subgroups of one size from 2 to 10: limits mean +- A2 R for means,
    D3 R to D4 R for ranges, sigma R / d2.

    Raises ValueError for none, for unequal sizes, and for sizes without constants.
    """
    row = _ROWS.get(len(subgroups[0]) if subgroups else 0)
    if row is None or any(len(subgroup) != row.n for subgroup in subgroups):
        raise ValueError("subgroups of one size from 2 to 10 are needed")
    means = [_mean_of(subgroup) for subgroup in subgroups]
    ranges = [as_double(difference(max(each), min(each))) for each in subgroups]
    mean_range = added(ranges) / len(ranges)
    sigma = mean_range / row.d2
    return ChartPair(
        places=_place_chart(
            means, half_width=row.a2 * mean_range, sigma=sigma / math.sqrt(row.n)
        ),
        ranges=_range_chart(ranges, mean_range, row),
        sigma=sigma,
    )


def individuals(values: Sequence[Decimal]) -> ChartPair:
    """Single values and the moving ranges of neighbours: limits mean +- E2 MR, sigma MR / d2.

    The standard deviation of all values is not used: a drift would widen its own limits. The
    first value has no moving range, so point i of the ranges belongs to value i + 1. Raises
    ValueError for fewer than two values.
    """
    if len(values) < 2:
        raise ValueError("two values are needed")
    row = _ROWS[2]
    points = [as_double(value) for value in values]
    ranges = [abs(as_double(difference(later, earlier))) for earlier, later in pairwise(values)]
    mean_range = added(ranges) / len(ranges)
    sigma = mean_range / row.d2
    return ChartPair(
        places=_place_chart(points, half_width=row.e2 * mean_range, sigma=sigma),
        ranges=_range_chart(ranges, mean_range, row),
        sigma=sigma,
    )


def ewma(
    values: Sequence[Decimal], *, start: float, sd: float, weight: float, width: float
) -> Chart:
    """Exponentially weighted moving averages from `start`, a target or an earlier mean, never
    the first value. `sd` is that of single values, `weight` lambda, `width` k of the limits.

    Limits are the exact ones: start +- k sd sqrt(lambda / (2 - lambda) (1 - (1 - lambda)^2t)),
    narrow at first. `sigma` is that of a late point; only the limits are watched, for
    neighbours are alike by their making. Raises ValueError unless 0 < weight <= 1, sd >= 0 and
    width > 0.
    """
    if not (0 < weight <= 1 and sd >= 0 and width > 0):
        raise ValueError("no such chart")
    late_sigma = sd * math.sqrt(weight / (2.0 - weight))
    points, limits = [], []
    average, forgotten = start, 1.0
    for value in values:
        average = weight * as_double(value) + (1.0 - weight) * average
        forgotten = forgotten * ((1.0 - weight) * (1.0 - weight))
        half = width * late_sigma * math.sqrt(1.0 - forgotten)
        points.append(average)
        limits.append(Limits(low=start - half, high=start + half))
    return Chart(
        points=tuple(points),
        centre=start,
        sigma=late_sigma,
        limits=tuple(limits),
        fired=_as_fired([("beyond_limit", points_outside(points, limits))]),
    )


def points_outside(points: Sequence[float], limits: Sequence[Limits]) -> list[int]:
    """Points beyond their limit; one on the limit is inside."""
    return [
        i
        for i, (point, limit) in enumerate(zip(points, limits, strict=True))
        if point < limit.low or point > limit.high
    ]


def points_on_one_side(points: Sequence[float], centre: float) -> list[int]:
    """Points in runs of eight or more above, or below, the centre; one on it ends a run."""
    sides = [_sign(point - centre) for point in points]
    return _in_long_runs(sides, SIDE_RUN)


def points_in_a_row(points: Sequence[float]) -> list[int]:
    """Points in runs of six or more that only rise, or only fall; a tie ends a run."""
    steps = [_sign(b - a) for a, b in pairwise(points)]
    ends = _in_long_runs(steps, TREND_RUN - 1)  # six points have five steps
    return sorted({point for step in ends for point in (step, step + 1)})


def points_far(points: Sequence[float], *, centre: float, sigma: float) -> list[int]:
    """Points more than two sigma to one side, where two of three neighbours are."""
    far = [
        _sign(point - centre) if abs(point - centre) > FAR_SIGMAS * sigma else 0
        for point in points
    ]
    found: set[int] = set()
    for first in range(len(points) - FAR_WINDOW + 1):
        window = range(first, first + FAR_WINDOW)
        for side in (-1, 1):
            there = [i for i in window if far[i] == side]
            found |= set(there) if len(there) >= FAR_COUNT else set()
    return sorted(found)


def _place_chart(points: Sequence[float], *, half_width: float, sigma: float) -> Chart:
    """Every rule is watched where the two sides are alike."""
    centre = added(points) / len(points)
    limits = [Limits(low=centre - half_width, high=centre + half_width)] * len(points)
    return Chart(
        points=tuple(points),
        centre=centre,
        sigma=sigma,
        limits=tuple(limits),
        fired=_as_fired(
            [
                ("beyond_limit", points_outside(points, limits)),
                ("eight_on_one_side", points_on_one_side(points, centre)),
                ("six_in_a_row", points_in_a_row(points)),
                ("two_of_three_far", points_far(points, centre=centre, sigma=sigma)),
            ]
        ),
    )


def _range_chart(ranges: Sequence[float], mean_range: float, row: ChartRow) -> Chart:
    """Ranges lean to one side and moving ranges hang together: only the limits are watched."""
    limits = [Limits(low=row.d3_low * mean_range, high=row.d4_high * mean_range)] * len(ranges)
    return Chart(
        points=tuple(ranges),
        centre=mean_range,
        sigma=None,
        limits=tuple(limits),
        fired=_as_fired([("beyond_limit", points_outside(ranges, limits))]),
    )


def _as_fired(found: Sequence[tuple[Rule, Sequence[int]]]) -> tuple[Fired, ...]:
    return tuple(Fired(rule=rule, points=tuple(points)) for rule, points in found if points)


def _in_long_runs(signs: Sequence[int], least: int) -> list[int]:
    """Places in runs of the same sign, not 0, that are at least this long."""
    found: list[int] = []
    run: list[int] = []
    for i, sign in enumerate(signs):
        if run and sign == signs[run[-1]]:
            run.append(i)
        else:
            run = [i]
        if sign != 0 and len(run) >= least:
            found += run if len(run) == least else [i]
    return found


def _mean_of(values: Sequence[Decimal]) -> float:
    """The mean from the first value on, so that nothing is lost far from zero."""
    distances = [as_double(difference(value, values[0])) for value in values]
    return as_double(values[0]) + added(distances) / len(distances)


def _sign(x: float) -> int:
    return 1 if x > 0 else -1 if x < 0 else 0
