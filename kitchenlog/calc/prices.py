"""What to ask for a pack: markup, margin, commission, break-even (production 2.2 and 2.3).

Markup is a share of the cost, margin of the price: whoever shows one says which.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from kitchenlog.calc.coins import StepRule, as_decimal, in_steps
from kitchenlog.calc.numbers import HUNDRED, ONE, ZERO, difference, divided, product, total

PERCENT_PLACES = 4
PRICE_PLACES = 4


@dataclass(frozen=True, kw_only=True)
class PackCost:
    """What so many packs cost together: kept as a whole, so that nothing is rounded between."""

    cost: Decimal
    packs: Decimal = ONE


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """What is to be earned, in percent of cost (markup) or of price (margin), and what a stall
    keeps, in percent of price."""

    of: Literal["cost", "price"]
    percent: Decimal
    commission_percent: Decimal = ZERO


@dataclass(frozen=True, kw_only=True)
class PriceProposal:
    """A price in coins and what is earned with it, commission taken off; `exact` is to be read
    and was not rounded before."""

    exact: Decimal
    price: Decimal
    commission: Decimal
    earned: Decimal
    markup_percent: Decimal | None
    margin_percent: Decimal | None


@dataclass(frozen=True, kw_only=True)
class BreakEven:
    """How many packs carry the fixed cost: exactly, and in whole packs."""

    exact: Decimal
    packs: int


def markup_percent(cost: Decimal, price: Decimal) -> Decimal | None:
    """(price - cost) in percent of the cost; None for a cost of nothing."""
    if not cost:
        return None
    return divided(product(difference(price, cost), HUNDRED), cost, PERCENT_PLACES)


def margin_percent(cost: Decimal, price: Decimal) -> Decimal | None:
    """(price - cost) in percent of the price; None for a price of nothing."""
    if not price:
        return None
    return divided(product(difference(price, cost), HUNDRED), price, PERCENT_PLACES)


def margin_of_markup(markup: Decimal) -> Decimal:
    """The margin that a markup is, both in percent: k / (1 + k). Raises ValueError at and
    below -100 %."""
    if markup <= -HUNDRED:
        raise ValueError("nothing is given away and paid for")
    return divided(product(markup, HUNDRED), total([markup, HUNDRED]), PERCENT_PLACES)


def markup_of_margin(margin: Decimal) -> Decimal:
    """The markup that a margin is, both in percent: m / (1 - m). Raises ValueError at and
    above 100 %."""
    if margin >= HUNDRED:
        raise ValueError("a margin is less than the price")
    return divided(product(margin, HUNDRED), difference(HUNDRED, margin), PERCENT_PLACES)


def exact_price(cost: PackCost, wanted: Wanted, places: int = PRICE_PLACES) -> Decimal:
    """The price of a pack before coins: cost / (1 - margin - commission), or
    cost (1 + markup) / (1 - commission). Raises ValueError as price_proposal does."""
    return as_decimal(_price(cost, wanted), places)


def price_proposal(
    cost: PackCost, wanted: Wanted, *, coin: Decimal, rule: StepRule = "up"
) -> PriceProposal:
    """A price as a whole number of a coin, upwards where nobody says otherwise.

    Raises ValueError for a cost below zero, no packs, a markup below -100 %, margin and
    commission that leave nothing, and a coin that is not above zero.
    """
    exact = _price(cost, wanted)
    price = in_steps(exact, coin, rule)
    each = Fraction(cost.cost) / Fraction(cost.packs)
    commission = Fraction(product(price, wanted.commission_percent)) / 100
    earned = Fraction(price) - commission - each
    return PriceProposal(
        exact=as_decimal(exact, PRICE_PLACES),
        price=price,
        commission=as_decimal(commission, PRICE_PLACES),
        earned=as_decimal(earned, PRICE_PLACES),
        markup_percent=as_decimal(100 * earned / each, PERCENT_PLACES) if each else None,
        margin_percent=(
            as_decimal(100 * earned / Fraction(price), PERCENT_PLACES) if price else None
        ),
    )


def break_even(fixed: Decimal, *, price: Decimal, variable: Decimal) -> BreakEven | None:
    """How many packs at a price, each with its variable cost, carry a fixed cost of the same
    period, rounded up; None for never. Raises ValueError for a fixed cost below zero."""
    if fixed < ZERO:
        raise ValueError("a fixed cost is not below zero")
    left = difference(price, variable)
    if left <= ZERO:
        return None
    exact = divided(fixed, left, PRICE_PLACES)
    return BreakEven(exact=exact, packs=math.ceil(Fraction(fixed) / Fraction(left)))


def _price(cost: PackCost, wanted: Wanted) -> Fraction:
    if cost.cost < ZERO or cost.packs <= ZERO:
        raise ValueError("a price is asked for packs that cost something")
    each = Fraction(cost.cost) / Fraction(cost.packs)
    share, kept = Fraction(wanted.percent) / 100, Fraction(wanted.commission_percent) / 100
    left = 1 - kept if wanted.of == "cost" else 1 - share - kept
    if left <= 0 or kept < 0 or share < -1:
        raise ValueError("margin and commission leave nothing")
    return each * (1 + share) / left if wanted.of == "cost" else each / left
