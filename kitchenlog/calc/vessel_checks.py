"""Checking a spoon, a cup or a cylinder with weighed water."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.bodies import Body, decimal_in, text_in
from kitchenlog.calc.checks import (
    CheckResult,
    Measured,
    Point,
    judged,
    readings_in,
    summed_up,
)
from kitchenlog.calc.limits import Limit, cylinder_limit, measure_limit
from kitchenlog.calc.numbers import ONE, ZERO, as_double, difference
from kitchenlog.calc.readings import rectangular_u, repeat_sd
from kitchenlog.calc.water import COLDEST, WARMEST, held_volume, millilitres_per_gram

# How far a kitchen thermometer in the water may be off when the step does not say: 1 degC, own
# definition. At 25 degC it moves a cup by 0.02 %.
CELSIUS_TOLERANCE = ONE
FACTOR_PLACES = 6


@dataclass(frozen=True, kw_only=True)
class Vessel:
    """A measure: what it holds at its upper mark, mL, and for a cylinder its class."""

    sort: Literal["spoon", "cup", "cylinder"]
    capacity_mL: Decimal  # noqa: N815  the unit is mL
    cylinder_class: str | None


def vessel_limit(vessel: Vessel, graduation: Decimal) -> Limit | None:
    """Plus or minus how many mL a graduation may be off: 5 % of it on a household measure, one
    figure for all marks of a cylinder. None for a cylinder whose class is not known."""
    if vessel.sort != "cylinder":
        return measure_limit(graduation, vessel.sort)
    if vessel.cylinder_class not in ("A", "B"):
        return None
    return cylinder_limit(vessel.capacity_mL, vessel.cylinder_class)


def vessel_check(vessel: Vessel, steps: Sequence[Body]) -> CheckResult:
    """What steps of the sort `water` say about a vessel.

    Each has `readings` (g on the scale, one a filling, a spoon levelled anew each time), a
    `tare` where the scale was not set to zero with the vessel on it, `celsius` of the water
    with its `celsius_tolerance`, `division` and `repeatability` of the scale, and `reference`
    (mL) where it is not the upper mark. A step without a reading, or with water that is not
    between 0 and 40 degC, is left out. Repeatability is in mL.
    """
    points, spreads = [], []
    for number, step in enumerate(steps):
        masses, celsius = _masses(step), decimal_in(step, "celsius")
        is_water = text_in(step, "sort") == "water" and bool(masses)
        if not is_water or celsius is None or not COLDEST <= celsius <= WARMEST:
            continue
        points.append(_point(vessel, number, step, celsius))
        if len(masses) >= 2:
            factor = as_double(millilitres_per_gram(celsius, FACTOR_PLACES))
            spreads.append(repeat_sd(masses) * factor)
    return summed_up(points, repeatability=max(spreads) if spreads else None, hysteresis=None)


def _point(vessel: Vessel, number: int, step: Body, celsius: Decimal) -> Point:
    division = decimal_in(step, "division")
    given = decimal_in(step, "celsius_tolerance")
    held = held_volume(
        _masses(step),
        celsius=celsius,
        celsius_u=rectangular_u(CELSIUS_TOLERANCE if given is None else given),
        division=ZERO if division is None else division,
        readings=1 if decimal_in(step, "tare") is None else 2,
        repeatability=decimal_in(step, "repeatability"),
    )
    reference = decimal_in(step, "reference")
    graduation = vessel.capacity_mL if reference is None else reference
    measured = Measured(
        step=number,
        sort="water",
        value=held.volume,
        reference=graduation,
        doubt=held.doubt if division is not None and division > ZERO else None,
    )
    return judged(measured, vessel_limit(vessel, graduation))


def _masses(step: Body) -> list[Decimal]:
    tare = decimal_in(step, "tare") or ZERO
    return [difference(each, tare) for each in readings_in(step)]
