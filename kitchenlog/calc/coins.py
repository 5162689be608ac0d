"""Money as coins: exact fractions become parts that add up to the coin."""

import math
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from kitchenlog.calc.numbers import ZERO, divided, product

StepRule = Literal["up", "nearest", "down"]


def as_decimal(amount: Fraction, places: int) -> Decimal:
    """An exact fraction rounded once to so many places."""
    return divided(Decimal(amount.numerator), Decimal(amount.denominator), places)


def coin_parts(parts: Sequence[Fraction], places: int) -> tuple[Decimal, ...]:
    """Rounded parts whose sum is the rounded sum of the exact ones: each is cut, and what is
    left goes one coin each to the largest remainders, of equals to the first (production 2.5).

    Parts below zero, such as the value of a by-product, are cut downwards.
    """
    steps = [part * 10**places for part in parts]
    cut = [math.floor(step) for step in steps]
    missing = round(sum(steps, Fraction(0))) - sum(cut)
    by_remainder = sorted(range(len(cut)), key=lambda i: (cut[i] - steps[i], i))
    for i in by_remainder[:missing]:
        cut[i] += 1
    return tuple(divided(Decimal(part), Decimal(10**places), places) for part in cut)


def in_steps(amount: Fraction, step: Decimal, rule: StepRule) -> Decimal:
    """An amount as a whole number of a coin, such as 0.25; halfway goes up.

    Raises ValueError for a coin that is not above zero and an amount below zero.
    """
    if step <= ZERO or amount < 0:
        raise ValueError("a price is paid in coins above zero")
    exact = amount / Fraction(step)
    counts = {
        "up": math.ceil(exact),
        "nearest": math.floor(exact + Fraction(1, 2)),
        "down": math.floor(exact),
    }
    return product(Decimal(counts[rule]), step)
