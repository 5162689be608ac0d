"""Checking a scale: zero, tare, known masses up and down, off centre, repeats."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.bodies import Body, decimal_in, text_in
from kitchenlog.calc.checks import (
    PLACES,
    CheckResult,
    Measured,
    Point,
    judged,
    reading_doubt,
    readings_in,
    summed_up,
)
from kitchenlog.calc.limits import (
    Cited,
    Limit,
    division_tolerance,
    scale_class,
    scale_error_limit,
)
from kitchenlog.calc.numbers import ZERO, as_double, difference
from kitchenlog.calc.readings import Doubt, mean, repeat_sd

Rules = Literal["r76_initial", "r76_in_service", "hb133"]

REPEATS_LEAST = 5  # readings of one load before a spread is called the scale's repeatability
# Nothing lies on the scale, or only what was tared: the display must say 0.
_EMPTY_SORTS = ("zero", "tare", "return_to_zero")


@dataclass(frozen=True, kw_only=True)
class Scale:
    """What is known of a scale, in its unit; g where its class must be told by divisions.

    `e` is the verification interval, else the division stands for it.
    """

    division: Decimal | None
    e: Decimal | None
    accuracy_class: str | None
    capacity: Decimal | None
    repeatability: Decimal | None
    rules: Rules


def scale_limit(scale: Scale, load: Decimal) -> Limit | None:
    """How far a scale may be off at a load, under the rules it is checked by.

    Without a class on it, the class its divisions allow. None where nothing is published for
    such a scale or load.
    """
    step = scale.division if scale.e is None or scale.rules == "hb133" else scale.e
    if step is None or step <= ZERO or load < ZERO:
        return None
    accuracy_class, cited = _class_of(scale, step)
    if accuracy_class is None:
        return None
    try:
        if scale.rules == "hb133":
            limit = division_tolerance(load, division=step, accuracy_class=accuracy_class)
        else:
            limit = scale_error_limit(
                load,
                e=step,
                accuracy_class=accuracy_class,
                when="initial" if scale.rules == "r76_initial" else "in_service",
            )
    except ValueError:  # another class, or a load beyond the last band
        return None
    return Limit(amount=limit.amount, cited=(*limit.cited, *cited))


def scale_check(scale: Scale, steps: Sequence[Body]) -> CheckResult:
    """What the steps say about a scale.

    Sorts: `zero`, `tare`, `return_to_zero` (reference 0), `rising`, `falling`, `off_centre`
    (reference a known mass), `repeats` (one load, five times or more; its mass need not be
    known). A step without a reading or a reference is left out.
    """
    known = _spread(scale, steps)
    points = [
        point
        for number, step in enumerate(steps)
        if (point := _point(scale, number, step, known)) is not None
    ]
    repeated = _repeats(steps)
    return summed_up(
        points,
        repeatability=None if repeated is None else repeated.u,
        hysteresis=_hysteresis(steps),
    )


def _class_of(scale: Scale, step: Decimal) -> tuple[str | None, tuple[Cited, ...]]:
    if scale.accuracy_class is not None:
        return scale.accuracy_class, ()
    by_divisions = None if scale.capacity is None else scale_class(scale.capacity, step)
    if by_divisions is None:
        return None, ()
    return by_divisions.accuracy_class, by_divisions.cited


def _point(scale: Scale, number: int, step: Body, known: Doubt | None) -> Point | None:
    sort, readings = text_in(step, "sort") or "", readings_in(step)
    reference = ZERO if sort in _EMPTY_SORTS else decimal_in(step, "reference")
    if reference is None or not readings:
        return None
    doubt = reading_doubt(
        readings,
        division=scale.division,
        spread=known,
        tolerance=decimal_in(step, "tolerance"),
    )
    measured = Measured(
        step=number,
        sort=sort,
        value=mean(readings, PLACES),
        reference=reference,
        doubt=doubt,
    )
    return judged(measured, scale_limit(scale, reference))


def _spread(scale: Scale, steps: Sequence[Body]) -> Doubt | None:
    """Spread of a single reading: from the repeats of this check, else the scale's own."""
    repeated = _repeats(steps)
    if repeated is not None:
        return repeated
    if scale.repeatability is None:
        return None
    return Doubt(u=as_double(scale.repeatability), degrees=None)


def _repeats(steps: Sequence[Body]) -> Doubt | None:
    """The largest standard deviation among steps that repeat one load often enough."""
    found: Doubt | None = None
    for step in steps:
        readings = readings_in(step)
        if text_in(step, "sort") != "repeats" or len(readings) < REPEATS_LEAST:
            continue
        spread = Doubt(u=repeat_sd(readings), degrees=len(readings) - 1)
        found = spread if found is None or spread.u > found.u else found
    return found


def _hysteresis(steps: Sequence[Body]) -> Decimal | None:
    """The largest difference between rising and falling readings of the same mass."""
    rising, falling = _means(steps, "rising"), _means(steps, "falling")
    apart = [
        abs(difference(falling[mass], shown))
        for mass, shown in rising.items()
        if mass in falling
    ]
    return max(apart) if apart else None


def _means(steps: Sequence[Body], sort: str) -> Mapping[Decimal, Decimal]:
    """Mean reading by reference; of two steps alike the later one."""
    found = {}
    for step in steps:
        reference, readings = decimal_in(step, "reference"), readings_in(step)
        if text_in(step, "sort") == sort and reference is not None and readings:
            found[reference] = mean(readings, PLACES)
    return found
