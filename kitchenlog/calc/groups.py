"""Readings in groups, such as people or days: is there more between the groups than within?

One-way analysis of variance. Sources: JCGM 100:2008 H.5 and the certified results of NIST StRD
SiRstv, both read. The spread between the workers of one kitchen is intermediate precision (JCGM
200:2012 2.22, read), not reproducibility, which needs other places.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.elementary import added
from kitchenlog.calc.numbers import as_double, difference
from kitchenlog.calc.quantiles import f_beyond
from kitchenlog.calc.readings import Doubt


@dataclass(frozen=True, kw_only=True)
class Group:
    """One group: the mean as a distance from an origin that all groups share, and the sum of
    squared deviations from it."""

    count: int
    mean: float
    squares: float


@dataclass(frozen=True, kw_only=True)
class Analysis:
    """A one-way analysis of variance.

    `f` and `p` are None when nothing varies within the groups. `effective_count` is the size of
    a group where all are alike, and the usual average of sizes where they are not.
    """

    mean: float
    mean_of_means: float
    means_sd: float
    group_count: int
    count: int
    squares_between: float
    squares_within: float
    degrees_between: int
    degrees_within: int
    f: float | None
    p: float | None
    r_squared: float | None
    effective_count: float


@dataclass(frozen=True, kw_only=True)
class Components:
    """Standard deviations within and between groups, and of both together. `is_set_to_zero`
    says that the estimate between groups came out negative and stands at zero."""

    within_sd: float
    between_sd: float
    intermediate_sd: float
    is_set_to_zero: bool


def group_of(values: Sequence[Decimal], origin: Decimal) -> Group:
    """Count, mean and sum of squares of readings, the mean as a distance from `origin`, so that
    readings far from zero lose nothing. Raises ValueError for none."""
    if not values:
        raise ValueError("a group without readings")
    distances = [as_double(difference(value, origin)) for value in values]
    mean = added(distances) / len(distances)
    squares = added((x - mean) * (x - mean) for x in distances)
    return Group(count=len(distances), mean=mean, squares=squares)


def analysis_of(groups: Sequence[Sequence[Decimal]]) -> Analysis:
    """The analysis of readings, one sequence a group; sizes may differ.

    Raises ValueError for fewer than two groups, an empty one, or no repeats at all.
    """
    if not groups or not groups[0]:
        raise ValueError("no readings")
    origin = groups[0][0]
    return analysis_of_groups([group_of(group, origin) for group in groups], origin)


def analysis_of_groups(groups: Sequence[Group], origin: Decimal) -> Analysis:
    """The same from counts, means and sums of squares (sd^2 x (count - 1)), for published
    tables without single readings. Means are distances from `origin`; 0 for plain means."""
    group_count = len(groups)
    count = sum(group.count for group in groups)
    degrees_within = count - group_count
    if group_count < 2 or degrees_within < 1:
        raise ValueError("two groups and a repeat are needed")
    mean = added(group.count * group.mean for group in groups) / count
    between = added(
        group.count * ((group.mean - mean) * (group.mean - mean)) for group in groups
    )
    within = added(group.squares for group in groups)
    mean_of_means = added(group.mean for group in groups) / group_count
    means_squares = added(
        (group.mean - mean_of_means) * (group.mean - mean_of_means) for group in groups
    )
    degrees_between = group_count - 1
    f = (between / degrees_between) / (within / degrees_within) if within > 0 else None
    whole = between + within
    sizes = sum(group.count * group.count for group in groups)
    return Analysis(
        mean=as_double(origin) + mean,
        mean_of_means=as_double(origin) + mean_of_means,
        means_sd=math.sqrt(means_squares / degrees_between),
        group_count=group_count,
        count=count,
        squares_between=between,
        squares_within=within,
        degrees_between=degrees_between,
        degrees_within=degrees_within,
        f=f,
        p=None if f is None else f_beyond(f, over=degrees_between, under=degrees_within),
        r_squared=between / whole if whole > 0 else None,
        effective_count=(count - sizes / count) / degrees_between,
    )


def components_of(analysis: Analysis) -> Components:
    """Spread within and between groups (JCGM 100 H.5.2.5). A negative component is set to zero
    and said so, never rooted; then both together are what is within."""
    within = analysis.squares_within / analysis.degrees_within
    between_mean = analysis.squares_between / analysis.degrees_between
    between = (between_mean - within) / analysis.effective_count
    kept = max(between, 0.0)
    return Components(
        within_sd=math.sqrt(within),
        between_sd=math.sqrt(kept),
        intermediate_sd=math.sqrt(within + kept),
        is_set_to_zero=between < 0,
    )


def mean_u_with_groups(analysis: Analysis) -> Doubt:
    """Doubt of the mean of the group means when groups do differ: each counts as one
    observation (JCGM 100 H.5.2.4)."""
    u = analysis.means_sd / math.sqrt(analysis.group_count)
    return Doubt(u=u, degrees=analysis.degrees_between)


def mean_u_without_groups(analysis: Analysis) -> Doubt:
    """Doubt of the mean when groups do not differ and all readings are one sample
    (JCGM 100 H.5.2.4). Too small where they do: use it only after the F test."""
    degrees = analysis.count - 1
    variance = (analysis.squares_between + analysis.squares_within) / degrees
    return Doubt(u=math.sqrt(variance / analysis.count), degrees=degrees)
