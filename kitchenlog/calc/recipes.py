"""Recipe sums: scaling to a mass, to packs or to what limits; percents of flour and formula.

Common practice in the trade; published instances stand in the vectors with their source.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from kitchenlog.calc.numbers import HUNDRED, divided, product, total

CountRule = Literal["up", "down", "nearest"]


@dataclass(frozen=True, kw_only=True)
class Factor:
    """An exact ratio: `wanted` of the thing of which the recipe as written gives `base`."""

    wanted: Decimal
    base: Decimal


@dataclass(frozen=True, kw_only=True)
class Stocked:
    """What one line needs as written and what is at hand, in one unit; `yield_percent` says how
    much of what is at hand can be used."""

    line: str
    needed: Decimal
    available: Decimal
    yield_percent: Decimal = HUNDRED


@dataclass(frozen=True, kw_only=True)
class Limit:
    """The line that runs out first and the factor it allows."""

    line: str
    factor: Factor


@dataclass(frozen=True, kw_only=True)
class WholeCount:
    """A count that was made whole, and the factor the recipe has with it."""

    count: Decimal
    factor: Factor


def scale_factor(wanted: Decimal, base: Decimal) -> Factor:
    """Finished mass over finished mass, or packs over packs. Raises ValueError unless base > 0
    and wanted >= 0."""
    if base <= 0 or wanted < 0:
        raise ValueError("a recipe makes more than nothing")
    return Factor(wanted=wanted, base=base)


def packs_factor(packs: Decimal, *, pack_net: Decimal, makes: Decimal) -> Factor:
    """For this many packs of pack_net, where the recipe as written makes `makes` of the same
    unit. Raises ValueError as scale_factor does."""
    return scale_factor(product(packs, pack_net), makes)


def limiting(lines: Sequence[Stocked]) -> Limit | None:
    """The smallest available x yield / needed over the lines that are needed at all; of equals
    the first. None when no line is needed."""
    allowed = [
        Limit(
            line=line.line,
            factor=Factor(
                wanted=product(line.available, line.yield_percent),
                base=product(line.needed, HUNDRED),
            ),
        )
        for line in lines
        if line.needed > 0
    ]
    return min(allowed, key=lambda limit: _exact(limit.factor), default=None)


def scaled(amount: Decimal, factor: Factor, places: int) -> Decimal:
    """Amount times factor, exactly, then rounded once."""
    return divided(product(amount, factor.wanted), factor.base, places)


def factor_shown(factor: Factor, places: int) -> Decimal:
    """The factor as a decimal, to be read; sums use the exact one."""
    return divided(factor.wanted, factor.base, places)


def whole_count(amount: Decimal, factor: Factor, *, rule: CountRule) -> WholeCount:
    """Eggs or jars as a whole number, with the factor that the whole recipe then has.

    Nearest: a tie goes to the even number. Raises ValueError unless amount > 0.
    """
    if amount <= 0:
        raise ValueError("nothing to count")
    exact = Fraction(product(amount, factor.wanted)) / Fraction(factor.base)
    counts = {"up": math.ceil(exact), "down": math.floor(exact), "nearest": round(exact)}
    count = Decimal(counts[rule])
    return WholeCount(count=count, factor=Factor(wanted=count, base=amount))


def bakers_percents(
    amounts: Sequence[Decimal], *, is_flour: Sequence[bool], places: int
) -> tuple[Decimal, ...]:
    """100 x each amount over all flours together. Raises ValueError without flour."""
    flour = total(a for a, counts in zip(amounts, is_flour, strict=True) if counts)
    if flour <= 0:
        raise ValueError("no flour: which ingredient is 100 %?")
    return tuple(divided(product(amount, HUNDRED), flour, places) for amount in amounts)


def formula_percents(amounts: Sequence[Decimal], places: int) -> tuple[Decimal, ...]:
    """100 x each amount over the sum of all. Raises ValueError when that is not above 0."""
    whole = total(amounts)
    if whole <= 0:
        raise ValueError("no amounts")
    return tuple(divided(product(amount, HUNDRED), whole, places) for amount in amounts)


def amounts_from_percents(
    percents: Sequence[Decimal], wanted: Decimal, places: int
) -> tuple[Decimal, ...]:
    """The amounts that make `wanted` in all, from baker's or formula percents alike.

    Raises ValueError when the percents do not sum to more than 0.
    """
    whole = total(percents)
    if whole <= 0:
        raise ValueError("no percents")
    return tuple(divided(product(wanted, percent), whole, places) for percent in percents)


def shared_out(whole: Decimal, weights: Sequence[Decimal], places: int) -> tuple[Decimal, ...]:
    """Rounded parts that add up to the whole: each is cut, and what is left goes one step each
    to the largest remainders, of equals to the first. Raises ValueError for a whole or weight
    below 0, a whole with more places, or weights of nothing."""
    all_weights = total(weights)
    steps = Fraction(whole) * 10**places
    if all_weights <= 0 or min(weights) < 0 or whole < 0 or steps.denominator != 1:
        raise ValueError("nothing to share by")
    exact = [steps * Fraction(weight) / Fraction(all_weights) for weight in weights]
    cut = [math.floor(part) for part in exact]
    by_remainder = sorted(range(len(cut)), key=lambda i: (cut[i] - exact[i], i))
    for i in by_remainder[: int(steps) - sum(cut)]:
        cut[i] += 1
    return tuple(divided(Decimal(part), Decimal(10**places), places) for part in cut)


def as_purchased(edible: Decimal, yield_percent: Decimal, places: int) -> Decimal:
    """What to buy for this much edible: edible / yield, rounded once; yields above 100 are
    right for what swells. Raises ValueError unless yield > 0."""
    if yield_percent <= 0:
        raise ValueError("a yield is more than nothing")
    return divided(product(edible, HUNDRED), yield_percent, places)


def edible_portion(bought: Decimal, yield_percent: Decimal, places: int) -> Decimal:
    """What is left to use of what was bought: bought x yield."""
    return divided(product(bought, yield_percent), HUNDRED, places)


def _exact(factor: Factor) -> Fraction:
    return Fraction(factor.wanted) / Fraction(factor.base)
