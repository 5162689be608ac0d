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
from kitchenlog.calc.numbers import HUNDRED, ZERO, difference, divided, product, total

Basis = Literal["wet", "dry"]

_RATIO_PLACES = 4


@dataclass(frozen=True, kw_only=True)
class Moisture:
    """Percent of water, of the whole (`wet`) or of the dry solids (`dry`)."""

    percent: Decimal
    basis: Basis


@dataclass(frozen=True, kw_only=True)
class Dried:
    """What drying or wetting makes, in the unit of the mass. `water_out` below zero is water
    to add; `drying_ratio` is mass in over mass out."""

    solids: Decimal
    makes: Decimal
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


def dried(mass: Decimal, *, before: Moisture, after: Moisture) -> Dried:
    """The mass at another moisture: mass x solids before / solids after.

    Raises ValueError for a mass below 0, a moisture below 0 or a wet one from 100 % on.
    """
    if mass < ZERO:
        raise ValueError("a mass is not below 0")
    water_before, solids_before = _parts(before)
    water_after, solids_after = _parts(after)
    whole_before = total([water_before, solids_before])
    whole_after = total([water_after, solids_after])
    over = product(product(mass, solids_before), whole_after)
    makes = divided(over, product(whole_before, solids_after), MASS_PLACES)
    return Dried(
        solids=divided(product(mass, solids_before), whole_before, MASS_PLACES),
        makes=makes,
        water_out=difference(mass, makes),
        drying_ratio=divided(
            product(whole_before, solids_after),
            product(solids_before, whole_after),
            _RATIO_PLACES,
        ),
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


def _parts(moisture: Moisture) -> tuple[Decimal, Decimal]:
    """Water and solids in proportion."""
    percent = moisture.percent
    if percent < ZERO or (moisture.basis == "wet" and percent >= HUNDRED):
        raise ValueError("moisture is not below 0 %, and of the whole it is below 100 %")
    solids = difference(HUNDRED, percent) if moisture.basis == "wet" else HUNDRED
    return percent, solids
