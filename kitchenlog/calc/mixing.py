"""Mixing two strengths: the Pearson square and dilution, refused where it cannot be done.

By mass the square is exact. A percent of the water is turned into one of the whole first. Grams
in 100 mL are mixed by volume, which is an approximation: volumes do not add up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.balance import MASS_PLACES, PERCENT_PLACES, percent_of, solids_in
from kitchenlog.calc.numbers import HUNDRED, ZERO, difference, divided, product, total

StrengthBasis = Literal["by_mass", "of_water", "per_100_mL"]
Solute = Literal["salt", "sugar", "acid", "alcohol", "fat", "other"]
Side = Literal["strong", "weak"]
CautionKey = Literal["acidified"]


@dataclass(frozen=True, kw_only=True)
class Square:
    """Two strengths and the one wanted, in percent of one basis, and of what."""

    strong: Decimal
    weak: Decimal
    target: Decimal
    basis: StrengthBasis = "by_mass"
    solute: Solute = "other"


@dataclass(frozen=True, kw_only=True)
class Marks:
    """How far an answer may be trusted: `is_exact` is false for volumes; the sum of an acid
    says nothing about pH, so it carries a caution."""

    basis: StrengthBasis
    is_exact: bool
    caution: CautionKey | None


@dataclass(frozen=True, kw_only=True)
class Shares:
    """Percents of the mixture that come from each side; they add up to 100."""

    strong_percent: Decimal
    weak_percent: Decimal
    marks: Marks


@dataclass(frozen=True, kw_only=True)
class Mixture:
    """Amounts from each side that make what was wanted: they add up to it."""

    strong: Decimal
    weak: Decimal
    marks: Marks


@dataclass(frozen=True, kw_only=True)
class Addition:
    """How much to add of the other side, and what it all makes then."""

    to_add: Decimal
    makes: Decimal
    marks: Marks


def pearson_shares(square: Square) -> Shares:
    """Share of the strong one: (target - weak) / (strong - weak).

    Raises ValueError where the target lies outside both strengths, which differences taken
    without sign would hide, where they are equal, and for impossible percents.
    """
    over, under = _strong_share(square)
    strong = divided(product(over, HUNDRED), under, PERCENT_PLACES)
    return Shares(
        strong_percent=strong, weak_percent=difference(HUNDRED, strong), marks=_marks(square)
    )


def mixed_to(makes: Decimal, square: Square) -> Mixture:
    """Amounts of both sides for this much of the target strength; a dilution has weak = 0.

    Raises ValueError for an amount below 0 and as pearson_shares does.
    """
    if makes < ZERO:
        raise ValueError("an amount is not below 0")
    over, under = _strong_share(square)
    strong = divided(product(makes, over), under, MASS_PLACES)
    return Mixture(strong=strong, weak=difference(makes, strong), marks=_marks(square))


def added_to_reach(amount: Decimal, square: Square, *, at_hand: Side) -> Addition:
    """How much of the other side to add to an amount of the strong or the weak one.

    Raises ValueError where no amount of it reaches the target, and as mixed_to does.
    """
    if amount < ZERO:
        raise ValueError("an amount is not below 0")
    strong, under = _strong_share(square)
    weak = difference(under, strong)
    here, other = (strong, weak) if at_hand == "strong" else (weak, strong)
    if not here:
        raise ValueError("no amount of the other side reaches its own strength")
    to_add = divided(product(amount, other), here, MASS_PLACES)
    return Addition(to_add=to_add, makes=total([amount, to_add]), marks=_marks(square))


def strength_of(parts: Sequence[tuple[Decimal, Decimal]]) -> Decimal | None:
    """Percent by mass of what (mass, percent) pairs make together; None of nothing."""
    return percent_of(solids_in(parts), total(mass for mass, _ in parts))


def _strong_share(square: Square) -> tuple[Decimal, Decimal]:
    """Share of the strong one as an exact fraction: over and under.

    For percents of the water the strengths by mass are p / (100 + p); with them the square
    becomes (t - w)(100 + s) over (s - w)(100 + t).
    """
    strong, weak, target = square.strong, square.weak, square.target
    if weak < ZERO or (square.basis == "by_mass" and strong > HUNDRED):
        raise ValueError("no such strength")
    if strong <= weak or not weak <= target <= strong:
        raise ValueError("the target lies outside the two strengths")
    over, under = difference(target, weak), difference(strong, weak)
    if square.basis != "of_water":
        return over, under
    return (
        product(over, total([HUNDRED, strong])),
        product(under, total([HUNDRED, target])),
    )


def _marks(square: Square) -> Marks:
    return Marks(
        basis=square.basis,
        is_exact=square.basis != "per_100_mL",
        caution="acidified" if square.solute == "acid" else None,
    )
