"""What a check at the bench says: errors with their doubt, the worst of them, one verdict.

A check is a list of steps as they stand in the body of its entry: each has a `sort`, its
`readings`, where there is one a `reference` value with its `tolerance` (plus or minus), all in
the unit of the instrument, and what its sort needs more. Each instrument has a file of its own.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.bodies import Body, decimal_in, texts_in
from kitchenlog.calc.limits import Cited, Limit
from kitchenlog.calc.numbers import ZERO, difference, plain, product, significant
from kitchenlog.calc.readings import (
    Doubt,
    Verdict,
    guard_band,
    mean,
    rectangular_u,
    repeat_sd,
    resolution_u,
    verdict,
)
from kitchenlog.calc.weighing import sum_doubt

CheckVerdict = Literal["fit", "failed", "cannot_tell"]

PLACES = 6  # a mean of readings is rounded to them
SHOWN_DIGITS = 3  # of an uncertainty in a sentence
# Which steps a verdict of the whole check comes from; None: there was no limit to judge by.
_DECIDES: dict[CheckVerdict, tuple[Verdict | None, ...]] = {
    "fit": ("within",),
    "failed": ("outside",),
    "cannot_tell": ("cannot_tell", None),
}


@dataclass(frozen=True, kw_only=True)
class Measured:
    """What one step measured against its reference; `step` counts from 0."""

    step: int
    sort: str
    value: Decimal
    reference: Decimal
    doubt: Doubt | None


@dataclass(frozen=True, kw_only=True)
class Point:
    """An error (reading less reference), and what it decides; None without a limit."""

    step: int
    sort: str
    reference: Decimal
    error: Decimal
    doubt: Doubt | None
    limit: Limit | None
    verdict: Verdict | None


@dataclass(frozen=True, kw_only=True)
class CheckResult:
    """What a check says. `bias` is the mean of all errors, `repeatability` a standard
    deviation, `hysteresis` the largest difference between a rising and a falling load; each
    None where the steps do not tell. `says` and `values` make one sentence."""

    verdict: CheckVerdict
    points: tuple[Point, ...]
    worst: int | None
    bias: Decimal | None
    repeatability: float | None
    hysteresis: Decimal | None
    says: str
    values: dict[str, str]


def readings_in(step: Body) -> list[Decimal]:
    """The readings of a step; one that is no number is left out."""
    numbers = [decimal_in({"reading": each}, "reading") for each in texts_in(step, "readings")]
    return [each for each in numbers if each is not None]


def reading_doubt(
    readings: Sequence[Decimal],
    *,
    division: Decimal | None,
    spread: Doubt | None,
    tolerance: Decimal | None,
) -> Doubt | None:
    """Doubt of the error a mean of readings shows: display, repeats, reference.

    `spread` is that of a single reading, known from elsewhere; two or more readings of one
    load speak for themselves. None where the division is not known.
    """
    if division is None or division <= ZERO:
        return None
    own = spread
    if len(readings) >= 2:
        sd_of_mean = repeat_sd(readings) / math.sqrt(len(readings))
        own = Doubt(u=sd_of_mean, degrees=len(readings) - 1)
    parts = [Doubt(u=resolution_u(division, 1), degrees=None)]
    parts += [] if own is None else [own]
    parts += [] if tolerance is None else [Doubt(u=rectangular_u(tolerance), degrees=None)]
    return sum_doubt(parts)


def judged(measured: Measured, limit: Limit | None) -> Point:
    """The error of a step against plus or minus its limit, with the guard band."""
    error = difference(measured.value, measured.reference)
    said = None
    if limit is not None:
        low = difference(ZERO, limit.amount)
        said = verdict(error, low=low, high=limit.amount, doubt=measured.doubt)
    return Point(
        step=measured.step,
        sort=measured.sort,
        reference=measured.reference,
        error=error,
        doubt=measured.doubt,
        limit=limit,
        verdict=said,
    )


def summed_up(
    points: Sequence[Point], *, repeatability: float | None, hysteresis: Decimal | None
) -> CheckResult:
    """The verdict of a check: failed by one step outside; fit when all are within."""
    said = _check_verdict(points)
    deciding = [each for each in points if each.verdict in _DECIDES[said]]
    worst = _worst(deciding)
    return CheckResult(
        verdict=said,
        points=tuple(points),
        worst=None if worst is None else worst.step,
        bias=mean([each.error for each in points], PLACES) if points else None,
        repeatability=repeatability,
        hysteresis=hysteresis,
        says=f"{said}.{_reason(said, worst)}",
        values={} if worst is None else _values(worst),
    )


def cited_in(result: CheckResult) -> tuple[Cited, ...]:
    """Every published figure the limits of a check lean on, each once."""
    found: dict[Cited, None] = {}
    for point in result.points:
        for each in () if point.limit is None else point.limit.cited:
            found[each] = None
    return tuple(found)


def _check_verdict(points: Sequence[Point]) -> CheckVerdict:
    verdicts = {each.verdict for each in points}
    if "outside" in verdicts:
        return "failed"
    return "fit" if verdicts == {"within"} else "cannot_tell"


def _worst(points: Sequence[Point]) -> Point | None:
    """The step with the largest share of its limit; one without a limit before all others."""
    worst: Point | None = None
    for each in points:
        if worst is None or _is_worse(each, worst):
            worst = each
    return worst


def _is_worse(a: Point, b: Point) -> bool:
    if a.limit is None or b.limit is None:
        return a.limit is None and (b.limit is not None or abs(a.error) > abs(b.error))
    ours, theirs = product(abs(a.error), b.limit.amount), product(abs(b.error), a.limit.amount)
    return ours > theirs


def _reason(said: CheckVerdict, worst: Point | None) -> str:
    if worst is None:
        return "no_steps"
    if said != "cannot_tell":
        return "within" if said == "fit" else "worst"
    if worst.limit is None:
        return "no_limit"
    return "no_division" if worst.doubt is None else "near_limit"


def _values(point: Point) -> dict[str, str]:
    """What a sentence about a step may name, as text in the instrument's unit."""
    values = {
        "sort": point.sort,
        "reference": plain(point.reference),
        "error": plain(point.error),
    }
    if point.limit is not None:
        values["limit"] = plain(point.limit.amount)
    if point.doubt is not None:
        values["guard_band"] = significant(guard_band(point.doubt), SHOWN_DIGITS)
    return values
