"""Salt and sugar in percent: from what was weighed, of the whole or of the water, and in
degrees of a salometer, whose scale must be said."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.balance import PERCENT_PLACES, percent_of, solids_in
from kitchenlog.calc.bench_tables import SALOMETER_ROWS, SalometerRow
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import (
    HUNDRED,
    ZERO,
    as_double,
    difference,
    divided,
    parse_decimal,
    product,
    total,
)
from kitchenlog.calc.readings import combined_u

SALT_PLACES = 4
SATURATED_PERCENT = Decimal("26.395")  # 100 degrees of the 60 degF scale: no brine holds more


@dataclass(frozen=True, kw_only=True)
class Weighed:
    """A mass that went in, the percent of it that is the salt or sugar asked for (0 for water),
    and the mass's standard uncertainty."""

    amount: Decimal
    percent: Decimal
    u: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Strength:
    """Percent by mass of the whole, and its standard uncertainty from the weighings."""

    percent: Decimal
    u: float


@dataclass(frozen=True, kw_only=True)
class Salometer:
    """Degrees of one scale and the percent of salt by mass they stand for."""

    degrees: Decimal
    percent: Decimal
    scale: str
    cited: tuple[Cited, ...]


def weighed_strength(parts: Sequence[Weighed]) -> Strength | None:
    """Percent of salt or sugar by what was weighed in; None when nothing was.

    u is the root of the squares of u_i (percent_i - percent) / mass (JCGM 100:2008 5.1.2).
    """
    whole = total(part.amount for part in parts)
    percent = percent_of(solids_in([(p.amount, p.percent) for p in parts]), whole)
    if percent is None:
        return None
    mass = as_double(whole)
    doubts = [as_double(difference(p.percent, percent)) / mass * p.u for p in parts]
    return Strength(percent=percent, u=combined_u(doubts))


def percent_by_mass(percent_of_water: Decimal, places: int = PERCENT_PLACES) -> Decimal:
    """Of the whole brine, from a percent of its water: 100 p / (100 + p).

    Raises ValueError below 0.
    """
    if percent_of_water < ZERO:
        raise ValueError("a percent is not below 0")
    over = product(percent_of_water, HUNDRED)
    return divided(over, total([HUNDRED, percent_of_water]), places)


def percent_of_water(percent_by_mass: Decimal, places: int = PERCENT_PLACES) -> Decimal:
    """Of the water, from a percent of the whole brine: 100 p / (100 - p).

    Raises ValueError below 0 and from 100 on.
    """
    if not ZERO <= percent_by_mass < HUNDRED:
        raise ValueError("a brine has some water")
    over = product(percent_by_mass, HUNDRED)
    return divided(over, difference(HUNDRED, percent_by_mass), places)


def salometer_percent(degrees: Decimal, scale: str) -> Salometer:
    """Salt by mass that a salometer's degrees say on the `standard` or the `canning` scale.

    Raises ValueError for another scale, below 0 and beyond a saturated brine.
    """
    row = _scale(scale)
    percent = divided(product(degrees, parse_decimal(row.percent_at_100)), HUNDRED, SALT_PLACES)
    return _salometer(row, degrees=degrees, percent=percent)


def salometer_degrees(percent: Decimal, scale: str) -> Salometer:
    """Degrees a salometer of this scale shows in a brine of this percent by mass.

    Raises as salometer_percent does.
    """
    row = _scale(scale)
    degrees = divided(product(percent, HUNDRED), parse_decimal(row.percent_at_100), SALT_PLACES)
    return _salometer(row, degrees=degrees, percent=percent)


def _scale(scale: str) -> SalometerRow:
    for row in SALOMETER_ROWS:
        if row.scale == scale:
            return row
    raise ValueError(f"which scale? there is none called {scale!r}")


def _salometer(row: SalometerRow, *, degrees: Decimal, percent: Decimal) -> Salometer:
    if not ZERO <= percent <= SATURATED_PERCENT:
        raise ValueError("a brine has from 0 to 26.395 % of salt")
    cited = Cited(what="salometer", source=row.source, basis=row.basis, note=row.note)
    return Salometer(degrees=degrees, percent=percent, scale=row.scale, cited=(cited,))
