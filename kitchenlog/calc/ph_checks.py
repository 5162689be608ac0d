"""Checking a pH meter with two or three buffers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

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
from kitchenlog.calc.limits import Limit
from kitchenlog.calc.numbers import (
    HUNDRED,
    ZERO,
    as_double,
    difference,
    divided,
    product,
    total,
)
from kitchenlog.calc.readings import Doubt, mean

SORT = "buffer"
PERCENT_PLACES = 1
NEUTRAL = Decimal(7)
# mV a pH at 25 degC: ln 10 x R x 298.15 K / F with the CODATA constants, computed. The slope of
# a perfect electrode grows with the temperature in kelvin.
THEORY_MV = Decimal("59.16")
_THEORY_AT = Decimal("298.15")
_KELVIN_ZERO = Decimal("273.15")


@dataclass(frozen=True, kw_only=True)
class PhMeter:
    """What is known of a pH meter; `allowed_error` is set by the cooperative."""

    division: Decimal | None
    repeatability: Decimal | None
    allowed_error: Decimal | None


@dataclass(frozen=True, kw_only=True)
class PhCheck:
    """`offset` is the error at the buffer nearest to 7, `span_percent` what the meter makes of
    the way from the lowest to the highest buffer, `slope_percent` that of its electrode."""

    result: CheckResult
    offset: Decimal | None
    span_percent: Decimal | None
    slope_percent: Decimal | None


def ph_check(meter: PhMeter, steps: Sequence[Body]) -> PhCheck:
    """What steps of the sort `buffer` say about a pH meter.

    Each has `reference` (pH the bottle gives at the buffer's temperature) with `tolerance`,
    `readings`, and `millivolts` and `celsius` where the meter shows them. A step without a
    reading or a reference is left out.
    """
    points = [
        point
        for number, step in enumerate(steps)
        if (point := _point(meter, number, step)) is not None
    ]
    buffers = [steps[point.step] for point in points]
    return PhCheck(
        result=summed_up(points, repeatability=None, hysteresis=None),
        offset=_offset(points),
        span_percent=_span_percent(points),
        slope_percent=slope_percent(buffers),
    )


def slope_percent(steps: Sequence[Body]) -> Decimal | None:
    """Slope of the electrode in percent of 59.16 mV a pH (25 degC), by least squares.

    Where every buffer has a temperature, the theory at their mean. None unless two or more
    buffers of different pH have `millivolts`.
    """
    pairs = [(decimal_in(step, "reference"), decimal_in(step, "millivolts")) for step in steps]
    shown = [(ph, mv) for ph, mv in pairs if ph is not None and mv is not None]
    count = Decimal(len(shown))
    phs, millivolts = total(ph for ph, _ in shown), total(mv for _, mv in shown)
    over = difference(
        product(phs, millivolts), product(count, total(product(ph, mv) for ph, mv in shown))
    )
    under = difference(
        product(count, total(product(ph, ph) for ph, _ in shown)), product(phs, phs)
    )
    kelvin = _mean_kelvin(steps)
    if under <= ZERO or kelvin <= ZERO:
        return None
    # percent = 100 x slope x 298.15 / (59.16 x T), in one division so that it is rounded once
    theory = product(product(under, THEORY_MV), kelvin)
    return divided(product(product(over, HUNDRED), _THEORY_AT), theory, PERCENT_PLACES)


def _point(meter: PhMeter, number: int, step: Body) -> Point | None:
    readings, reference = readings_in(step), decimal_in(step, "reference")
    if text_in(step, "sort") != SORT or not readings or reference is None:
        return None
    known = meter.repeatability
    doubt = reading_doubt(
        readings,
        division=meter.division,
        spread=None if known is None else Doubt(u=as_double(known), degrees=None),
        tolerance=decimal_in(step, "tolerance"),
    )
    measured = Measured(
        step=number,
        sort=SORT,
        value=mean(readings, PLACES),
        reference=reference,
        doubt=doubt,
    )
    allowed = meter.allowed_error
    return judged(measured, None if allowed is None else Limit(amount=allowed, cited=()))


def _offset(points: Sequence[Point]) -> Decimal | None:
    """Error at the buffer nearest to 7; of two as near the first."""
    nearest: Point | None = None
    for each in points:
        away = abs(difference(each.reference, NEUTRAL))
        if nearest is None or away < abs(difference(nearest.reference, NEUTRAL)):
            nearest = each
    return None if nearest is None else nearest.error


def _span_percent(points: Sequence[Point]) -> Decimal | None:
    """Way between the readings of the outermost buffers in percent of the way between them."""
    if not points:
        return None
    low = min(points, key=lambda each: each.reference)
    high = max(points, key=lambda each: each.reference)
    way = difference(high.reference, low.reference)
    if way <= ZERO:
        return None
    shown = total([way, difference(high.error, low.error)])
    return divided(product(shown, HUNDRED), way, PERCENT_PLACES)


def _mean_kelvin(steps: Sequence[Body]) -> Decimal:
    """Mean temperature of the buffers; 298.15 K where one was not noted."""
    noted = [decimal_in(step, "celsius") for step in steps]
    known = [each for each in noted if each is not None]
    if not known or len(known) < len(noted):
        return _THEORY_AT
    return total([mean(known, PLACES), _KELVIN_ZERO])
