"""What repeated readings of one thing say: mean, spread, and how well the mean is known.

Sources: JCGM 100:2008 4.2 and 4.4.3 (read); pooling NIST/SEMATECH e-Handbook 2.4.4.4 (read);
the repeatability limit ISO 5725-6 (memory).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.elementary import added
from kitchenlog.calc.numbers import as_double, total
from kitchenlog.calc.quantiles import t_quantile
from kitchenlog.calc.readings import repeat_sd

REPEATABILITY_FACTOR = 2.8  # ISO 5725-6: 1.96 x sqrt 2 = 2.77, rounded there; memory


@dataclass(frozen=True, kw_only=True)
class Repeats:
    """Repeats in the unit of their readings. `sd` (n - 1) and `standard_error` are None for a
    single reading, which says nothing of spread."""

    count: int
    mean: float
    sd: float | None
    standard_error: float | None
    degrees: int


@dataclass(frozen=True, kw_only=True)
class Interval:
    """Where a mean lies at the level that was asked for, in the unit of the readings."""

    low: float
    high: float


@dataclass(frozen=True, kw_only=True)
class Spread:
    """A sum of squared deviations and the degrees of freedom it rests on."""

    sum_of_squares: float
    degrees: int


@dataclass(frozen=True, kw_only=True)
class PooledSd:
    """One standard deviation of several groups, in their unit, and its degrees of freedom."""

    sd: float
    degrees: int


def repeats_of(values: Sequence[Decimal]) -> Repeats:
    """Mean, standard deviation of a single reading (n - 1) and of the mean (JCGM 100 4.2).
    Sums are exact. Raises ValueError for none."""
    if not values:
        raise ValueError("no values")
    count = len(values)
    sd = repeat_sd(values) if count > 1 else None
    return Repeats(
        count=count,
        mean=as_double(total(values)) / count,
        sd=sd,
        standard_error=None if sd is None else sd / math.sqrt(count),
        degrees=count - 1,
    )


def mean_interval(repeats: Repeats, level: float) -> Interval | None:
    """Where the mean of endless repeats lies, at this level, two-sided by Student's t
    (JCGM 100 G.3). None for a single reading; ValueError for a level that is none."""
    if repeats.standard_error is None:
        return None
    half = t_quantile(level, degrees=repeats.degrees, sides=2) * repeats.standard_error
    return Interval(low=repeats.mean - half, high=repeats.mean + half)


def pooled_sd(spreads: Sequence[Spread]) -> PooledSd:
    """One standard deviation from several: sums of squares and degrees are added, never
    standard deviations averaged. Raises ValueError without any degrees."""
    degrees = sum(spread.degrees for spread in spreads)
    if degrees < 1:
        raise ValueError("no degrees of freedom")
    squares = added(spread.sum_of_squares for spread in spreads)
    return PooledSd(sd=math.sqrt(squares / degrees), degrees=degrees)


def repeatability_limit(sd: float) -> float:
    """How far two readings of one thing may lie apart, about 95 times in 100: 2.8 s."""
    return REPEATABILITY_FACTOR * sd
