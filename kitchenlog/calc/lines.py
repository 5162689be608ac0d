"""A straight line through points: its doubt, what it predicts, and what it says backwards.

A line is kept around the mean of its points, where height and slope are independent; far from
zero nothing is lost. Sources: JCGM 100:2008 H.3 (fit, covariance, prediction), NIST StRD Norris
(certified fit), NIST/SEMATECH e-Handbook 2.3.6.7.3 (calibrated values); all read. The interval
backwards is the usual one of Draper and Smith, Applied Regression Analysis, memory.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from kitchenlog.calc.elementary import added
from kitchenlog.calc.numbers import as_double, difference
from kitchenlog.calc.quantiles import f_beyond, t_quantile

FIT_POINTS_MIN = 3  # two points give a line but leave nothing to judge it by


@dataclass(frozen=True, kw_only=True)
class Point:
    """One pair, each in the unit of its axis; exact, as it was read."""

    x: Decimal
    y: Decimal


@dataclass(frozen=True, kw_only=True)
class Line:
    """y = height + slope (x - centre).

    `sum_xx` is the sum of squared distances from the centre, 0 where no slope was fitted. `sd`
    is the standard deviation of one point about the line, None when nothing tells it; `degrees`
    is None when it does not rest on scatter. `low` and `high` are the ends of the points.
    """

    count: int
    centre: float
    height: float
    slope: float
    sum_xx: float
    sd: float | None
    degrees: int | None
    low: float
    high: float


@dataclass(frozen=True, kw_only=True)
class Coefficients:
    """y = intercept + slope (x - at), with standard deviations and covariance of the two."""

    intercept: float
    slope: float
    intercept_sd: float
    slope_sd: float
    covariance: float
    correlation: float | None


@dataclass(frozen=True, kw_only=True)
class Fit:
    """How much of the spread in y the line explains; F and its p are None for a perfect fit."""

    r_squared: float | None
    f: float | None
    p: float | None


@dataclass(frozen=True, kw_only=True)
class Estimate:
    """A value and its standard uncertainty, None where the line has no known spread."""

    value: float
    u: float | None


@dataclass(frozen=True, kw_only=True)
class Backwards:
    """The x that belongs to a y, its standard uncertainty and its interval."""

    x: float
    u: float
    low: float
    high: float


@dataclass(frozen=True, kw_only=True)
class _Cloud:
    """Points as distances from their mean, and the mean."""

    xs: list[float]
    ys: list[float]
    centre: float
    height: float


def least_squares(points: Sequence[Point]) -> Line:
    """The line with the least sum of squared distances in y.

    Raises ValueError for fewer than three points, or when all have the same x.
    """
    if len(points) < FIT_POINTS_MIN:
        raise ValueError("a fit needs three points")
    line, cloud = through_mean(points), _cloud_of(points)
    residuals = [y - line.slope * x for x, y in zip(cloud.xs, cloud.ys, strict=True)]
    degrees = len(points) - 2
    sd = math.sqrt(added(r * r for r in residuals) / degrees)
    return replace(line, sd=sd, degrees=degrees)


def through_mean(points: Sequence[Point]) -> Line:
    """The same line for two or more points, without a judgement of its spread (`sd` None).
    Raises ValueError for fewer than two points, or when all have the same x."""
    if len(points) < 2:
        raise ValueError("a line needs two points")
    cloud = _cloud_of(points)
    sum_xx = added(x * x for x in cloud.xs)
    if sum_xx == 0:
        raise ValueError("all points have the same x")
    sum_xy = added(x * y for x, y in zip(cloud.xs, cloud.ys, strict=True))
    return replace(_level(points, cloud), slope=sum_xy / sum_xx, sum_xx=sum_xx)


def level_through_mean(points: Sequence[Point]) -> Line:
    """The mean of y as a level line, its spread that of the ys (n - 1); one point has none.
    Raises ValueError for no points."""
    if not points:
        raise ValueError("a mean needs a point")
    cloud = _cloud_of(points)
    line, degrees = _level(points, cloud), len(points) - 1
    if degrees == 0:
        return line
    return replace(
        line, sd=math.sqrt(added(y * y for y in cloud.ys) / degrees), degrees=degrees
    )


def coefficients(line: Line, at: float) -> Coefficients | None:
    """The line as intercept at x = `at` and slope (JCGM 100 H.3.2 takes 20 C). None where the
    line has no slope of its own or no known spread; correlation is None for spread 0."""
    if line.sd is None or line.sum_xx == 0:
        return None
    away = at - line.centre
    variance = line.sd * line.sd
    intercept_sd = line.sd * math.sqrt(1 / line.count + away * away / line.sum_xx)
    slope_sd = line.sd / math.sqrt(line.sum_xx)
    covariance = variance * away / line.sum_xx
    scale = intercept_sd * slope_sd
    return Coefficients(
        intercept=line.height + line.slope * away,
        slope=line.slope,
        intercept_sd=intercept_sd,
        slope_sd=slope_sd,
        covariance=covariance,
        correlation=None if scale == 0 else covariance / scale,
    )


def fit_of(line: Line) -> Fit:
    """R squared, and F for a slope of zero, of a least-squares line. Nothing is said (None) for
    a line without scatter of its own, or where y never changes."""
    if line.sd is None or line.degrees is None:
        return Fit(r_squared=None, f=None, p=None)
    explained = line.slope * line.slope * line.sum_xx
    unexplained = line.sd * line.sd * line.degrees
    whole = explained + unexplained
    r_squared = None if whole == 0 else explained / whole
    if line.sd == 0:
        return Fit(r_squared=r_squared, f=None, p=None)
    f = explained / (line.sd * line.sd)
    return Fit(r_squared=r_squared, f=f, p=f_beyond(f, over=1.0, under=line.degrees))


def predicted(line: Line, x: float) -> Estimate:
    """The line's y at x with the standard uncertainty of the line itself (not of one more
    reading), covariance included (JCGM 100 H.3.3)."""
    away = x - line.centre
    value = line.height + line.slope * away
    if line.sd is None:
        return Estimate(value=value, u=None)
    lever = away * away / line.sum_xx if line.sum_xx > 0 else 0.0
    return Estimate(value=value, u=line.sd * math.sqrt(1 / line.count + lever))


def backwards(line: Line, y: float, *, readings: int, level: float) -> Backwards | None:
    """The x whose mean of so many readings is y, with u = (s / b) sqrt(1/m + 1/n +
    (y - mean)^2 / (b^2 Sxx)) and its two-sided interval by Student's t.

    None for a line that is level, or without scatter. Raises ValueError for no readings or a
    level that is none.
    """
    if readings < 1:
        raise ValueError("no readings")
    if line.sd is None or line.degrees is None or line.slope == 0:
        return None
    away = (y - line.height) / line.slope
    root = math.sqrt(1 / readings + 1 / line.count + away * away / line.sum_xx)
    u = line.sd / abs(line.slope) * root
    half = t_quantile(level, degrees=line.degrees, sides=2) * u
    x = line.centre + away
    return Backwards(x=x, u=u, low=x - half, high=x + half)


def calibrated(y: float, line: Coefficients, *, y_sd: float) -> Estimate:
    """The true value X = (y - intercept) / slope behind a reading y, with the law of
    propagation: u^2 = (s_y^2 + var a + X^2 var b + 2 X cov) / b^2 (e-Handbook 2.3.6.7.3).

    `y_sd` is the spread of such readings from a check standard. Raises ValueError for a slope
    of zero.
    """
    if line.slope == 0:
        raise ValueError("a level line cannot be read backwards")
    x = (y - line.intercept) / line.slope
    variance = (
        y_sd * y_sd
        + line.intercept_sd * line.intercept_sd
        + x * x * (line.slope_sd * line.slope_sd)
        + 2 * x * line.covariance
    )
    # A covariance that does not fit its variances may leave a rounding below zero.
    return Estimate(value=x, u=math.sqrt(max(variance, 0.0)) / abs(line.slope))


def is_extrapolated(line: Line, x: float) -> bool:
    """Whether x lies outside the points that the line rests on."""
    return x < line.low or x > line.high


def _cloud_of(points: Sequence[Point]) -> _Cloud:
    """Distances from the first point are exact decimals; only they become doubles."""
    xs = [as_double(difference(point.x, points[0].x)) for point in points]
    ys = [as_double(difference(point.y, points[0].y)) for point in points]
    mean_x, mean_y = added(xs) / len(xs), added(ys) / len(ys)
    return _Cloud(
        xs=[x - mean_x for x in xs],
        ys=[y - mean_y for y in ys],
        centre=as_double(points[0].x) + mean_x,
        height=as_double(points[0].y) + mean_y,
    )


def _level(points: Sequence[Point], cloud: _Cloud) -> Line:
    """A level line at the mean, nothing known of its spread."""
    return Line(
        count=len(points),
        centre=cloud.centre,
        height=cloud.height,
        slope=0.0,
        sum_xx=0.0,
        sd=None,
        degrees=None,
        low=as_double(min(point.x for point in points)),
        high=as_double(max(point.x for point in points)),
    )
