"""Checking a thermometer in ice and in water that boils under the air pressure of the place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.bodies import Body, decimal_in, text_in
from kitchenlog.calc.check_tables import BOILING_ROWS, BoilingRow
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
from kitchenlog.calc.limits import Cited, Limit
from kitchenlog.calc.numbers import (
    ZERO,
    as_double,
    difference,
    divided,
    parse_decimal,
    product,
    total,
)
from kitchenlog.calc.readings import Doubt, mean, repeat_sd

BOILING_PLACES = 3
METRES_IN_FOOT = Decimal("0.3048")
# The air of a day presses up to about 18 hPa more or less than its altitude says: 0.5 degC.
WEATHER_TOLERANCE = Decimal("0.5")
_WEATHER = Cited(
    what="weather",
    source="own allowance for the air pressure of the day where only the altitude is known",
    basis="common-practice",
)
_ICE = ZERO  # degC: melting ice with water between the pieces


@dataclass(frozen=True, kw_only=True)
class Thermometer:
    """What is known of a thermometer, in degC; `allowed_error` is set by the cooperative."""

    division: Decimal | None
    repeatability: Decimal | None
    allowed_error: Decimal | None


@dataclass(frozen=True, kw_only=True)
class BoilingPoint:
    """degC at which water boils, how far the weather may move it, and who says so."""

    celsius: Decimal
    tolerance: Decimal
    cited: tuple[Cited, ...]


def boiling_point_at_altitude(altitude_m: Decimal) -> BoilingPoint:
    """Where water boils at an altitude on a day of usual air pressure.

    A straight line between the printed rows, one for each 1000 ft. Raises ValueError below
    -304.8 m and above 3048 m.
    """
    places = [product(parse_decimal(row.altitude_ft), METRES_IN_FOOT) for row in BOILING_ROWS]
    celsius, rows = _between(altitude_m, places)
    cited = tuple(_cited(row) for row in rows)
    return BoilingPoint(
        celsius=celsius, tolerance=WEATHER_TOLERANCE, cited=(*_once(cited), _WEATHER)
    )


def boiling_point_at_pressure(pressure_hPa: Decimal) -> BoilingPoint:  # noqa: N803
    """Where water boils under the air pressure of the place, not reduced to sea level.

    The pressures of the rows are computed from their altitudes by the model they were printed
    with. Raises ValueError below 711.31 and above 1049.46 hPa.
    """
    pressures = [difference(ZERO, parse_decimal(row.pressure_hPa)) for row in BOILING_ROWS]
    celsius, rows = _between(difference(ZERO, pressure_hPa), pressures)
    cited = tuple(_cited(row) for row in rows)
    return BoilingPoint(celsius=celsius, tolerance=ZERO, cited=_once(cited))


def thermometer_check(thermometer: Thermometer, steps: Sequence[Body]) -> CheckResult:
    """What the steps say about a thermometer.

    Sorts: `ice`; `boiling` with `pressure_hPa` or `altitude_m`; `comparison` with the
    `reference` another thermometer showed. A `tolerance` of the step counts before the
    usual one. A step without a reading, or of which no reference is known, is left out.
    """
    points = [
        point
        for number, step in enumerate(steps)
        if (point := _point(thermometer, number, step)) is not None
    ]
    spreads = [repeat_sd(each) for step in steps if len(each := readings_in(step)) >= 2]
    return summed_up(points, repeatability=max(spreads) if spreads else None, hysteresis=None)


def _point(thermometer: Thermometer, number: int, step: Body) -> Point | None:
    readings, reference = readings_in(step), _reference(step)
    if not readings or reference is None:
        return None
    known = thermometer.repeatability
    given = decimal_in(step, "tolerance")
    doubt = reading_doubt(
        readings,
        division=thermometer.division,
        spread=None if known is None else Doubt(u=as_double(known), degrees=None),
        tolerance=reference.tolerance if given is None else given,
    )
    measured = Measured(
        step=number,
        sort=text_in(step, "sort") or "",
        value=mean(readings, PLACES),
        reference=reference.celsius,
        doubt=doubt,
    )
    allowed = thermometer.allowed_error
    limit = None if allowed is None else Limit(amount=allowed, cited=reference.cited)
    return judged(measured, limit)


def _reference(step: Body) -> BoilingPoint | None:
    sort, compared = text_in(step, "sort"), decimal_in(step, "reference")
    if sort == "ice":
        return BoilingPoint(celsius=_ICE, tolerance=ZERO, cited=())
    if sort == "comparison" and compared is not None:
        return BoilingPoint(celsius=compared, tolerance=ZERO, cited=())
    return _boiling(step) if sort == "boiling" else None


def _boiling(step: Body) -> BoilingPoint | None:
    """By the pressure of the day where it was noted, else by the altitude."""
    pressure, altitude = decimal_in(step, "pressure_hPa"), decimal_in(step, "altitude_m")
    try:
        if pressure is not None:
            return boiling_point_at_pressure(pressure)
        return None if altitude is None else boiling_point_at_altitude(altitude)
    except ValueError:  # beyond the table
        return None


def _between(at: Decimal, places: Sequence[Decimal]) -> tuple[Decimal, list[BoilingRow]]:
    """A straight line between the two rows around a place; the places rise."""
    for number in range(1, len(places)):
        low, high = places[number - 1], places[number]
        if not low <= at <= high:
            continue
        before, after = BOILING_ROWS[number - 1], BOILING_ROWS[number]
        start, end = parse_decimal(before.boiling_point_C), parse_decimal(after.boiling_point_C)
        # At a row itself the other one says nothing.
        rows = [*([before] if at != high else []), *([after] if at != low else [])]
        over = total(
            [
                product(start, difference(high, at)),
                product(end, difference(at, low)),
            ]
        )
        return divided(over, difference(high, low), BOILING_PLACES), rows
    raise ValueError("no boiling point is known for this altitude or pressure")


def _cited(row: BoilingRow) -> Cited:
    return Cited(what="boiling_point", source=row.source, basis=row.basis)


def _once(cited: Sequence[Cited]) -> tuple[Cited, ...]:
    return tuple(dict.fromkeys(cited))
