"""The reading in a body: what was weighed or counted, in its unit or in g, and its doubt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.bodies import (
    Amount,
    Body,
    decimal_in,
    in_base_unit,
    object_in,
    quantity_in,
    text_in,
    texts_in,
)
from kitchenlog.calc.numbers import ONE, ZERO, as_double, parse_decimal
from kitchenlog.calc.readings import DEGREES_MAX, Doubt, combined_u, doubt_of, mean, net
from kitchenlog.calc.temperature import celsius, fahrenheit
from kitchenlog.calc.units import UNITS, converted, in_base

PLACES = 6  # as many as a body may hold; a mean or a converted reading is rounded to them
_FAHRENHEIT_STEPS = 1.8  # degF in one degC, NIST SP 811 (2008) App. B.8
_COUNTED = Doubt(u=0.0, degrees=None)  # pieces are counted without doubt


@dataclass(frozen=True, kw_only=True)
class Weighing:
    """What one reading or count says, net, in the unit it was read in, and its doubt there.

    `doubt` is None where the division of the instrument is not known.
    """

    net: Decimal
    unit: str
    doubt: Doubt | None


def weighing_of(body: Body) -> Weighing | None:
    """The `reading` of a body, or what was `counted`; None where there is neither.

    `shown` is the first reading and `repeats` are further ones of the same load: their mean
    counts.
    """
    counted = quantity_in(body, "counted")
    if counted is not None:
        return Weighing(
            net=parse_decimal(counted["amount"]), unit=counted["unit"], doubt=_COUNTED
        )
    reading = object_in(body, "reading") or {}
    load, unit = load_of(reading), text_in(reading, "unit")
    if load is None or unit is None:
        return None
    return Weighing(
        net=net(load, decimal_in(reading, "tare")),
        unit=unit,
        doubt=_doubt(reading, _readings(reading)),
    )


def load_of(reading: Body) -> Decimal | None:
    """What was shown, the bowl included: the mean of repeats; None where nothing was."""
    readings = _readings(reading)
    if not readings:
        return None
    return mean(readings, PLACES) if len(readings) > 1 else readings[0]


def weighed(body: Body) -> Amount | None:
    """What was weighed or counted, in g, mL or pc; None where the unit measures no amount."""
    weighing = weighing_of(body)
    return None if weighing is None else in_base_unit(weighing.net, weighing.unit)


def in_unit(weighing: Weighing, unit: str | None) -> Weighing | None:
    """The same in another unit, value and doubt; None where the two measure different things.

    Without a unit, or with the same one (also one of no table, such as pH), nothing changes.
    """
    if unit is None or unit == weighing.unit:
        return weighing
    known, wanted = UNITS.get(weighing.unit), UNITS.get(unit)
    if known is None or wanted is None or known.dimension != wanted.dimension:
        return None
    if known.dimension == "temperature":
        return _in_degrees(weighing, unit)
    factor = as_double(in_base(ONE, weighing.unit)) / as_double(in_base(ONE, unit))
    value = converted(weighing.net, weighing.unit, unit, PLACES)
    return Weighing(net=value, unit=unit, doubt=scaled_doubt(weighing.doubt, factor))


def scaled_doubt(doubt: Doubt | None, factor: float) -> Doubt | None:
    """The same doubt in a unit of which `factor` make one of the old."""
    return None if doubt is None else Doubt(u=doubt.u * factor, degrees=doubt.degrees)


def sum_doubt(doubts: Sequence[Doubt | None]) -> Doubt | None:
    """Doubt of a sum of independent weighings in one unit; None where one is not known.

    Variances add; degrees of freedom by Welch-Satterthwaite (JCGM 100:2008 G.4.1), cut to a
    whole number.
    """
    known = [each for each in doubts if each is not None]
    if len(known) < len(doubts) or not known:
        return None
    u = combined_u([each.u for each in known])
    under = 0.0
    for each in known:
        if each.degrees is not None:
            under = under + each.u * each.u * each.u * each.u / max(each.degrees, 1)
    degrees = u * u * u * u / under if under > 0 else DEGREES_MAX
    return Doubt(u=u, degrees=int(degrees) if degrees < DEGREES_MAX else None)


def _readings(reading: Body) -> list[Decimal]:
    """The first reading and its repeats; none without a first."""
    shown = decimal_in(reading, "shown")
    if shown is None:
        return []
    numbers = [decimal_in({"repeat": each}, "repeat") for each in texts_in(reading, "repeats")]
    return [shown, *(each for each in numbers if each is not None)]


def _doubt(reading: Body, readings: Sequence[Decimal]) -> Doubt | None:
    division = decimal_in(reading, "division")
    if division is None or division <= ZERO:
        return None
    return doubt_of(
        division=division,
        readings=1 if decimal_in(reading, "tare") is None else 2,
        repeatability=decimal_in(reading, "repeatability"),
        repeats=readings if len(readings) > 1 else (),
    )


def _in_degrees(weighing: Weighing, unit: str) -> Weighing | None:
    """Between degC and degF; K is read by no kitchen thermometer, so nothing is given in it."""
    if weighing.unit.startswith("delta") or unit not in ("degC", "degF"):
        return None
    in_celsius = celsius(weighing.net, weighing.unit, PLACES)
    is_fahrenheit = weighing.unit == "degF"
    if unit == "degC":
        factor = 1 / _FAHRENHEIT_STEPS if is_fahrenheit else 1.0
        return Weighing(net=in_celsius, unit=unit, doubt=scaled_doubt(weighing.doubt, factor))
    return Weighing(
        net=fahrenheit(in_celsius),
        unit=unit,
        doubt=scaled_doubt(weighing.doubt, _FAHRENHEIT_STEPS),
    )
