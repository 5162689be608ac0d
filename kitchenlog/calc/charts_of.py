"""Which control charts a series allows, the chart that is asked for, and where its rules fired.

A series is subgroups in their order, each of one value or more: the repeats of a check, the
packs of a lot, the yield of a batch. Charts and rules themselves: charts.py.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.charts import (
    FAR_WINDOW,
    SIDE_RUN,
    Chart,
    Fired,
    Rule,
    ewma,
    individuals,
    xbar_range,
)
from kitchenlog.calc.readings import mean

ChartSort = Literal["xbar_range", "individuals", "ewma"]
Series = Sequence[Sequence[Decimal]]

# Own practice: with fewer, limits mean little and the longest rule cannot fire at all.
POINTS_LEAST = SIDE_RUN
SUBGROUP_LEAST, SUBGROUP_MOST = 2, 10  # what the table of constants holds
# NIST/SEMATECH e-Handbook 6.3.2.4, the worked example, read; it advises 0.2 to 0.3.
EWMA_WEIGHT, EWMA_WIDTH = 0.3, 3.0
MEAN_PLACES = 6  # a mean of repeats is rounded to them, as in a check


@dataclass(frozen=True, kw_only=True)
class Charted:
    """A chart of places, and of ranges where there is one; `sigma` is that of one value."""

    places: Chart
    ranges: Chart | None
    sigma: float


@dataclass(frozen=True, kw_only=True)
class Firing:
    """A rule that fired on the points from `first` to `last`, all to one side: 1 is above the
    centre, or rising, -1 below it, or falling."""

    rule: Rule
    first: int
    last: int
    side: int


def missing_points(count: int) -> int:
    """How many points a series of so many still needs before it is charted."""
    return max(POINTS_LEAST - count, 0)


def even_subgroups(series: Series) -> list[list[Decimal]]:
    """Of each subgroup as many of its first values as the smallest has, at most ten; none where
    the smallest is a single value."""
    size = min((len(each) for each in series), default=0)
    if size < SUBGROUP_LEAST:
        return []
    return [list(each[: min(size, SUBGROUP_MOST)]) for each in series]


def chart_sorts(series: Series) -> list[ChartSort]:
    """The charts a series allows, the one to begin with first; none before there are enough
    points. With repeats what varies within is told from what varies between."""
    if missing_points(len(series)) > 0 or not all(series):
        return []
    of_repeats: list[ChartSort] = ["xbar_range"] if even_subgroups(series) else []
    return [*of_repeats, "individuals", "ewma"]


def charted(sort: ChartSort, series: Series) -> Charted:
    """The chart; without repeats that count, each point is the mean of its subgroup.

    An EWMA runs around the mean of the series with the sigma of its moving ranges. Raises
    ValueError for fewer than two points, an empty subgroup, or no even subgroups.
    """
    if sort == "xbar_range":
        pair = xbar_range(even_subgroups(series))
        return Charted(places=pair.places, ranges=pair.ranges, sigma=pair.sigma)
    values = [each[0] if len(each) == 1 else mean(each, MEAN_PLACES) for each in series]
    pair = individuals(values)
    if sort == "individuals":
        return Charted(places=pair.places, ranges=pair.ranges, sigma=pair.sigma)
    places = ewma(
        values,
        start=pair.places.centre,
        sd=pair.sigma,
        weight=EWMA_WEIGHT,
        width=EWMA_WIDTH,
    )
    return Charted(places=places, ranges=None, sigma=pair.sigma)


def firings(chart: Chart) -> list[Firing]:
    """Each run of points that made a rule fire, by its last point: there one sees it."""
    found = [firing for fired in chart.fired for firing in _runs(chart, fired)]
    return sorted(found, key=lambda each: (each.last, each.first))


def _runs(chart: Chart, fired: Fired) -> list[Firing]:
    runs: list[Firing] = []
    for place in fired.points:
        before = runs[-1] if runs else None
        if before is not None and _goes_on(chart, before, place):
            runs[-1] = replace(before, last=place)
        else:
            runs.append(_begun(chart, fired.rule, place, before))
    return runs


def _begun(chart: Chart, rule: Rule, place: int, before: Firing | None) -> Firing:
    if rule != "six_in_a_row":
        return Firing(rule=rule, first=place, last=place, side=_side(chart, place))
    # Where a rise turns into a fall, the turning point belongs to both.
    has_turned = before is not None and before.last == place - 1
    first = place - 1 if has_turned else place
    side = _sign(chart.points[first + 1] - chart.points[first])
    return Firing(rule=rule, first=first, last=place, side=side)


def _goes_on(chart: Chart, run: Firing, place: int) -> bool:
    if run.rule == "beyond_limit":
        return False
    if run.rule == "six_in_a_row":
        step = _sign(chart.points[place] - chart.points[run.last])
        return place == run.last + 1 and step == run.side
    reach = FAR_WINDOW if run.rule == "two_of_three_far" else 2
    return place - run.last < reach and _side(chart, place) == run.side


def _side(chart: Chart, place: int) -> int:
    return _sign(chart.points[place] - chart.centre)


def _sign(x: float) -> int:
    return 1 if x > 0 else -1 if x < 0 else 0
