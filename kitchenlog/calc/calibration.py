"""Corrections of an instrument from its check points: found, judged, and put to a reading.

A correction is reference - reading and is added to the reading (JCGM 100:2008 H.3, read). Three
sorts: `offset` (the mean error), `two_point` (a line through two points), `least_squares` (a
line through three or more).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.elementary import exponential
from kitchenlog.calc.lines import (
    Line,
    Point,
    is_extrapolated,
    least_squares,
    level_through_mean,
    predicted,
    through_mean,
)
from kitchenlog.calc.numbers import as_double, difference
from kitchenlog.calc.quantiles import f_beyond, normal_cumulative, t_beyond

Sort = Literal["offset", "two_point", "least_squares"]


@dataclass(frozen=True, kw_only=True)
class CheckPoint:
    """What the instrument showed and what was true, in one unit."""

    reading: Decimal
    reference: Decimal


@dataclass(frozen=True, kw_only=True)
class Correction:
    """A line of corrections over readings. `terms` is how many figures were fitted: 1 or 2."""

    sort: Sort
    line: Line
    terms: int


@dataclass(frozen=True, kw_only=True)
class Significance:
    """A test against "there is nothing to correct". `is_significant` is None when no spread is
    known; the statistic and p are None then, and when the spread is 0."""

    statistic: float | None
    p: float | None
    is_significant: bool | None


@dataclass(frozen=True, kw_only=True)
class Corrected:
    """A reading put right. `correction` is what was found, `value` has it only if it is
    applied; `u` is the correction's, applied or not: leaving it out does not make it known."""

    value: float
    correction: float
    u: float | None
    degrees: int | None
    is_applied: bool
    is_extrapolated: bool


def correction_points(checks: Sequence[CheckPoint]) -> list[Point]:
    """The correction over the reading: reference - reading, exactly."""
    return [
        Point(x=check.reading, y=difference(check.reference, check.reading)) for check in checks
    ]


def correction_of(
    checks: Sequence[CheckPoint], sort: Sort, *, known_sd: float | None
) -> Correction:
    """The correction of this sort through the check points.

    `known_sd` is the standard uncertainty of one point from elsewhere (resolution,
    repeatability, the masses), None when unknown. It stands in where points show no scatter of
    their own, and counts when it is the larger: three readings that look alike are not exact
    (JCGM 100 F.2.2.1). Raises ValueError for too few points, for a line through points
    that share a reading, for `two_point` with another number of points, and for a spread below
    zero.
    """
    if known_sd is not None and known_sd < 0:
        raise ValueError("a spread below zero")
    points = correction_points(checks)
    if sort == "offset":
        return Correction(
            sort=sort, line=_judged(level_through_mean(points), known_sd), terms=1
        )
    if sort == "least_squares":
        return Correction(sort=sort, line=_judged(least_squares(points), known_sd), terms=2)
    if len(points) != 2:
        raise ValueError("two_point takes two points")
    return Correction(sort=sort, line=_judged(through_mean(points), known_sd), terms=2)


def significance(correction: Correction, level: float) -> Significance:
    """Whether the correction as a whole is more than chance: F test of all its terms at once
    against zero, F = (n height^2 + slope^2 Sxx) / (terms s^2) with `terms` and nu degrees.

    Draper and Smith, Applied Regression Analysis, the joint test of coefficients (memory). One
    judgement for the whole range, so that a corrected scale has no jumps. Where s is known
    without scatter the limit of F for endless degrees is used.
    """
    line = correction.line
    if line.sd is None:
        return Significance(statistic=None, p=None, is_significant=None)
    explained = line.count * line.height * line.height + line.slope * line.slope * line.sum_xx
    if line.sd == 0:
        return Significance(statistic=None, p=None, is_significant=explained > 0)
    f = explained / (correction.terms * (line.sd * line.sd))
    p = _p_of(f, correction.terms, line.degrees)
    return Significance(statistic=f, p=p, is_significant=p < 1.0 - level)


def significance_at(correction: Correction, reading: float, *, level: float) -> Significance:
    """Whether the correction at one reading is more than chance: t = correction / u with the
    line's degrees, two-sided (Student's test of a predicted mean; JCGM 100 H.3.3 gives u)."""
    line = correction.line
    found = predicted(line, reading)
    if found.u is None:
        return Significance(statistic=None, p=None, is_significant=None)
    if found.u == 0:
        return Significance(statistic=None, p=None, is_significant=found.value != 0)
    t = found.value / found.u
    p = (
        2.0 * normal_cumulative(-abs(t))
        if line.degrees is None
        else t_beyond(t, degrees=line.degrees)
    )
    return Significance(statistic=t, p=p, is_significant=p < 1.0 - level)


def corrected(correction: Correction, reading: Decimal, *, level: float) -> Corrected:
    """The reading with its correction, if that is significant at this level; else as it is.

    One that cannot be judged, because no spread is known, is not applied either.
    """
    shown = as_double(reading)
    found = predicted(correction.line, shown)
    is_applied = significance(correction, level).is_significant is True
    return Corrected(
        value=shown + found.value if is_applied else shown,
        correction=found.value,
        u=found.u,
        degrees=correction.line.degrees,
        is_applied=is_applied,
        is_extrapolated=is_extrapolated(correction.line, shown),
    )


def _judged(line: Line, known_sd: float | None) -> Line:
    """The larger of scatter and known spread is the line's."""
    if known_sd is None or (line.sd is not None and known_sd <= line.sd):
        return line
    return replace(line, sd=known_sd, degrees=None)


def _p_of(f: float, terms: int, degrees: int | None) -> float:
    """p of the F test; without degrees, terms x F is chi-squared with 1 or 2 degrees."""
    if degrees is not None:
        return f_beyond(f, over=terms, under=degrees)
    return exponential(-f) if terms == 2 else 2.0 * normal_cumulative(-math.sqrt(f))
