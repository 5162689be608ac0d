"""Drying, concentrating and wetting: the dry solids are what stays.

Moisture is said in two ways: of the whole (wet basis) or of the dry solids (dry basis), which
passes 100 %. Percents of moisture do not subtract: 80 % to 20 % takes three quarters of the
mass.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.balance import MASS_PLACES, PERCENT_PLACES
from kitchenlog.calc.numbers import (
    HUNDRED,
    ZERO,
    as_double,
    difference,
    divided,
    product,
    total,
)
from kitchenlog.calc.readings import combined_u

Basis = Literal["wet", "dry"]

_RATIO_PLACES = 4


@dataclass(frozen=True, kw_only=True)
class Moisture:
    """Percent of water, of the whole (`wet`) or of the dry solids (`dry`), and its standard
    uncertainty."""

    percent: Decimal
    basis: Basis
    u: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Dried:
    """What drying or wetting makes, in the unit of the mass. `water_out` below zero is water
    to add; `drying_ratio` is mass in over mass out."""

    solids: Decimal
    makes: Decimal
    makes_u: float
    water_out: Decimal
    drying_ratio: Decimal


@dataclass(frozen=True, kw_only=True)
class Concentrated:
    """What concentrating makes when something else is stirred in (sugar, salt)."""

    makes: Decimal
    to_add: Decimal
    water_out: Decimal


def dry_basis_percent(wet_basis_percent: Decimal, places: int = PERCENT_PLACES) -> Decimal:
    """Water of the dry solids from water of the whole: M / (1 - M).

    Raises ValueError below 0 and from 100 % on: nothing would be left.
    """
    water, solids = _parts(Moisture(percent=wet_basis_percent, basis="wet"))
    return divided(product(water, HUNDRED), solids, places)


def wet_basis_percent(dry_basis_percent: Decimal, places: int = PERCENT_PLACES) -> Decimal:
    """Water of the whole from water of the dry solids: M / (1 + M).

    Raises ValueError below 0.
    """
    water, solids = _parts(Moisture(percent=dry_basis_percent, basis="dry"))
    return divided(product(water, HUNDRED), total([water, solids]), places)


def dried(mass: Decimal, *, before: Moisture, after: Moisture, mass_u: float = 0.0) -> Dried:
    """The mass at another moisture: mass x solids before / solids after.

    Its doubt is from those of mass and both moistures (JCGM 100:2008 5.1.2).
    Raises ValueError for a mass below 0, a moisture below 0 or a wet one from 100 % on.
    """
    if mass < ZERO:
        raise ValueError("a mass is not below 0")
    water_before, solids_before = _parts(before)
    water_after, solids_after = _parts(after)
    whole_before = total([water_before, solids_before])
    whole_after = total([water_after, solids_after])
    over = product(product(mass, solids_before), whole_after)
    under = product(whole_before, solids_after)
    makes = divided(over, under, MASS_PLACES)
    share = as_double(product(solids_before, whole_after)) / as_double(under)
    return Dried(
        solids=divided(product(mass, solids_before), whole_before, MASS_PLACES),
        makes=makes,
        makes_u=_makes_u(makes, mass_u * share, before, after),
        water_out=difference(mass, makes),
        drying_ratio=divided(under, product(solids_before, whole_after), _RATIO_PLACES),
    )


def concentrated(
    mass: Decimal,
    *,
    solids_percent: Decimal,
    to_percent: Decimal,
    added_percent: Decimal = ZERO,
) -> Concentrated:
    """A liquid of solids_percent brought to to_percent of its own solids, with added_percent of
    the product stirred in: 200 kg at 10 % to 15 % with 15 % sugar makes 133.3333 kg.

    Raises ValueError for a mass or percent below 0, a target of 0, and percents of the
    product above 100 together.
    """
    parts = total([to_percent, added_percent])
    if min(mass, solids_percent, added_percent) < ZERO or to_percent <= ZERO:
        raise ValueError("masses and percents are not below 0")
    if parts > HUNDRED or solids_percent > HUNDRED:
        raise ValueError("more than all of it")
    solids = product(mass, solids_percent)
    makes = divided(solids, to_percent, MASS_PLACES)
    to_add = divided(product(solids, added_percent), product(to_percent, HUNDRED), MASS_PLACES)
    return Concentrated(
        makes=makes, to_add=to_add, water_out=difference(total([mass, to_add]), makes)
    )


def _makes_u(makes: Decimal, by_mass: float, before: Moisture, after: Moisture) -> float:
    """What the mass adds, and the relative doubt of the solids before and after."""
    amount = as_double(makes)
    solids = [amount * _solids_doubt(moisture) for moisture in (before, after)]
    return combined_u([by_mass, *solids])


def _solids_doubt(moisture: Moisture) -> float:
    """u of the share of solids over that share: u / (100 - M) wet, u / (100 + M) dry."""
    percent = as_double(moisture.percent)
    rest = 100.0 - percent if moisture.basis == "wet" else 100.0 + percent
    return moisture.u / rest


def _parts(moisture: Moisture) -> tuple[Decimal, Decimal]:
    """Water and solids in proportion."""
    percent = moisture.percent
    if percent < ZERO or (moisture.basis == "wet" and percent >= HUNDRED):
        raise ValueError("moisture is not below 0 %, and of the whole it is below 100 %")
    solids = difference(HUNDRED, percent) if moisture.basis == "wet" else HUNDRED
    return percent, solids
