"""Weighing water to learn what a vessel holds: density of water, air buoyancy, volume.

Not taken into account: the vessel growing with warmth (below 0.1 % for glass and plastic in a
kitchen), water left hanging in it, other air than 0.0012 g/mL.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.check_tables import HOT_WATER_ROWS
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import (
    HUNDRED,
    ONE,
    as_double,
    difference,
    divided,
    parse_decimal,
    product,
    rounded,
    total,
)
from kitchenlog.calc.readings import Doubt, combined_u, doubt_of, mean
from kitchenlog.calc.weighing import sum_doubt

COLDEST, WARMEST = Decimal(0), Decimal(40)  # degC between which the formula holds
KG_PLACES = 4  # kg/m3, as the published table has them
VOLUME_PLACES = 6
CELSIUS_PLACES = 3
# Tanaka et al., Metrologia 38 (2001) 301-309, kg/m3 and degC: coefficients read in quotation.
_DENSEST = Decimal("999.974950")
_DENSEST_AT = Decimal("3.983035")
_A2 = Decimal("301.797")
_A3 = Decimal("522528.9")
_A4 = Decimal("69.34881")
_TANAKA = Cited(
    what="water_density",
    source="Tanaka et al., Metrologia 38 (2001) 301-309 (coefficients read in quotation)",
    basis="read-secondary",
)
_THOUSAND = Decimal(1000)
# g/mL, the usual convention for a weighing in air; own definition, DEVELOPERS.md 4.
_AIR = Decimal("0.0012")
_WEIGHTS_IN_AIR = Decimal("0.99985")  # 1 - 0.0012 / 8.0: the scale's weights float a little too


@dataclass(frozen=True, kw_only=True)
class WaterDensity:
    """Density of water in kg/m3 and who says so."""

    kg_per_m3: Decimal
    cited: tuple[Cited, ...]


@dataclass(frozen=True, kw_only=True)
class HeldVolume:
    """What a vessel holds, in mL, and its doubt."""

    volume: Decimal
    doubt: Doubt
    cited: tuple[Cited, ...]


def water_density(celsius: Decimal) -> WaterDensity:
    """Density of water at a temperature, rounded to 0.0001 kg/m3.

    From 0 to 40 degC by formula, within 0.0012 of IAPWS-95. Above, the formula does not hold:
    only the temperatures of the table are answered, others raise ValueError.
    """
    if COLDEST <= celsius <= WARMEST:
        return WaterDensity(kg_per_m3=_by_formula(celsius), cited=(_TANAKA,))
    for row in HOT_WATER_ROWS:
        if parse_decimal(row.temp_C) == celsius:
            cited = Cited(what="water_density", source=row.source, basis=row.basis)
            return WaterDensity(kg_per_m3=parse_decimal(row.iapws95_kg_per_m3), cited=(cited,))
    raise ValueError("the density of water is known from 0 to 40 degC; let it cool")


def mass_of_water(volume_mL: Decimal, celsius: Decimal) -> Decimal:  # noqa: N803
    """Grams of water in a volume; hot water is lighter. Raises as water_density does."""
    density = water_density(celsius).kg_per_m3
    return divided(product(volume_mL, density), _THOUSAND, VOLUME_PLACES)


def millilitres_per_gram(celsius: Decimal, places: int) -> Decimal:
    """mL of water for each gram a scale shows in air. Raises as water_density does.

    (1 - air / weights) / (density - air) with air 0.0012 and weights 8.0 g/mL.
    """
    return divided(_WEIGHTS_IN_AIR, _density_above_air(celsius), places)


def held_volume(
    masses: Sequence[Decimal],
    *,
    celsius: Decimal,
    celsius_u: float,
    division: Decimal,
    readings: int = 2,
    repeatability: Decimal | None = None,
) -> HeldVolume:
    """mL of water that show these masses, in g net: several fillings of one vessel, their mean.

    The doubt is that of the mean mass, as readings.doubt_of gives it, and that of the
    temperature, in degC. Raises ValueError for no mass and outside 0 to 40 degC.
    """
    if not COLDEST <= celsius <= WARMEST:
        raise ValueError("a vessel is checked with water between 0 and 40 degC")
    weighed = mean(masses, VOLUME_PLACES)
    above_air = _density_above_air(celsius)
    volume = divided(product(weighed, _WEIGHTS_IN_AIR), above_air, VOLUME_PLACES)
    weighing = doubt_of(
        division=division,
        readings=readings,
        repeatability=repeatability,
        repeats=masses if len(masses) > 1 else (),
    )
    factor = as_double(_WEIGHTS_IN_AIR) / as_double(above_air)
    of_mass = Doubt(u=weighing.u * factor, degrees=weighing.degrees)
    # dV / dt = V x (density lost a degree) / (density - air)
    steepness = _steepness(as_double(celsius)) / (1000 * as_double(above_air))
    of_warmth = Doubt(u=combined_u([as_double(volume) * steepness * celsius_u]), degrees=None)
    doubt = sum_doubt([of_mass, of_warmth])
    assert doubt is not None
    return HeldVolume(volume=volume, doubt=doubt, cited=(_TANAKA,))


def error_percent(value: Decimal, nominal: Decimal, places: int) -> Decimal:
    """(value - nominal) / nominal in percent, rounded once. Raises ZeroDivisionError."""
    return divided(product(difference(value, nominal), HUNDRED), nominal, places)


def _by_formula(celsius: Decimal) -> Decimal:
    at = rounded(celsius, CELSIUS_PLACES)
    from_densest = difference(at, _DENSEST_AT)
    lost = product(product(from_densest, from_densest), total([at, _A2]))
    under = product(_A3, total([at, _A4]))
    return divided(product(_DENSEST, difference(under, lost)), under, KG_PLACES)


def _density_above_air(celsius: Decimal) -> Decimal:
    """Density of water less that of air, exact, in g/mL."""
    density = product(water_density(celsius).kg_per_m3, divided(ONE, _THOUSAND, 3))
    return difference(density, _AIR)


def _steepness(celsius: float) -> float:
    """How much density water loses, kg/m3 for each degC: the formula's own slope."""
    from_densest = celsius - as_double(_DENSEST_AT)
    lost = from_densest * from_densest * (celsius + as_double(_A2))
    lost_slope = 2 * from_densest * (celsius + as_double(_A2)) + from_densest * from_densest
    under = celsius + as_double(_A4)
    slope = (lost_slope * under - lost) / (as_double(_A3) * under * under)
    return as_double(_DENSEST) * slope
