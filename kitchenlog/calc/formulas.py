"""Formulas: lines written as a share of the base or of the whole become amounts.

The base is all lines marked so, together: the flours of a dough are 100 (production 1.2). A
share is always of what is prepared; a line as bought counts with what its yield leaves of it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from kitchenlog.calc.numbers import HUNDRED, ZERO, difference, divided, product
from kitchenlog.calc.recipes import Factor

Share = Literal["base", "whole"]
FormulaTrouble = Literal["no_base", "base_too_much", "whole_too_much", "no_amount", "not_whole"]

# Printed percents are rounded: as far from 100 they still mean all of it; own proposal.
SUM_SLACK_PERCENT = Fraction(1, 2)
_ALL = Fraction(100)


@dataclass(frozen=True, kw_only=True)
class FormulaLine:
    """A line with an amount, or with a percent of the base or of the whole, never both.

    Amounts are masses in one unit, as they are to be weighed in; `yield_percent` says how much
    of that the sums count.
    """

    amount: Decimal | None = None
    percent: Decimal | None = None
    percent_of: Share = "whole"
    is_base: bool = False
    yield_percent: Decimal = HUNDRED


@dataclass(frozen=True, kw_only=True)
class _Sums:
    """Of all lines and of the base: amounts, percents of the whole, percents of the base."""

    amount: Fraction
    of_whole: Fraction
    of_base: Fraction
    base_amount: Fraction
    base_of_whole: Fraction
    base_of_base: Fraction


def formula_trouble(
    lines: Sequence[FormulaLine], whole: Decimal | None
) -> FormulaTrouble | None:
    """Why no amounts follow from these lines, or None where they do.

    `no_base`: a share of a base no line is marked as; `base_too_much`, `whole_too_much`: shares
    that leave nothing for the rest; `no_amount`: shares alone, and `whole` is not known;
    `not_whole`: shares alone that do not add up to all of it.
    """
    answer = _solved(lines, None if whole is None else Fraction(whole))
    return answer if isinstance(answer, str) else None


def formula_amounts(
    lines: Sequence[FormulaLine], *, whole: Decimal | None, factor: Factor, places: int
) -> tuple[Decimal, ...]:
    """The amount of each line times the factor, as it is to be weighed in, rounded once.

    `whole` is all that is prepared, asked only where no amount, or no base, says how large the
    formula is. Raises ValueError where `formula_trouble` says why.
    """
    answer = _solved(lines, None if whole is None else Fraction(whole))
    if isinstance(answer, str):
        raise ValueError(answer)
    times = Fraction(factor.wanted) / Fraction(factor.base)
    exact = [
        each * times / _yield(line) if line.amount is None else Fraction(line.amount) * times
        for line, each in zip(lines, answer, strict=True)
    ]
    return tuple(
        divided(Decimal(each.numerator), Decimal(each.denominator), places) for each in exact
    )


def good_factor(wanted: Decimal, *, makes: Decimal, loss_percent: Decimal) -> Factor:
    """For this much that is good, where of what the recipe makes so many percent are lost.

    Raises ValueError unless makes > 0, wanted >= 0 and 0 <= loss_percent < 100.
    """
    if makes <= 0 or wanted < 0 or not 0 <= loss_percent < 100:
        raise ValueError("a loss leaves something")
    left = difference(HUNDRED, loss_percent)
    return Factor(wanted=product(wanted, HUNDRED), base=product(makes, left))


def packs_of(makes: Decimal, *, net: Decimal, loss_percent: Decimal) -> Decimal:
    """How many whole packs what is made fills after the expected loss; makes and net in one
    unit. Raises ValueError unless net > 0, makes >= 0 and 0 <= loss_percent < 100."""
    if net <= 0 or makes < 0 or not 0 <= loss_percent < 100:
        raise ValueError("a pack holds something")
    left = difference(HUNDRED, loss_percent)
    good = Fraction(product(makes, left)) / Fraction(product(net, HUNDRED))
    return Decimal(math.floor(good))


def _solved(
    lines: Sequence[FormulaLine], whole: Fraction | None
) -> list[Fraction] | FormulaTrouble:
    """What is prepared of each line."""
    sums = _sums(lines)
    has_base_shares = any(_is_share(line, "base") for line in lines)
    if has_base_shares and not any(line.is_base for line in lines):
        return "no_base"
    if has_base_shares and sums.base_of_base >= _ALL:
        return _with_free_base(lines, sums, whole)
    return _with_bound_base(lines, sums, whole)


def _with_free_base(
    lines: Sequence[FormulaLine], sums: _Sums, whole: Fraction | None
) -> list[Fraction] | FormulaTrouble:
    """The base lines are shares of their own sum, so only the whole says how much that is."""
    if sums.base_amount or sums.base_of_whole:
        return "base_too_much"
    if abs(sums.base_of_base - _ALL) > SUM_SLACK_PERCENT:
        return "base_too_much"
    if not whole:
        return "no_amount"
    base = ((_ALL - sums.of_whole) * whole - _ALL * sums.amount) / sums.of_base
    return _amounts(lines, base=base, whole=whole) if base > 0 else "whole_too_much"


def _with_bound_base(
    lines: Sequence[FormulaLine], sums: _Sums, whole: Fraction | None
) -> list[Fraction] | FormulaTrouble:
    """Two sums, of the base and of the whole, each a share of the other: solved together."""
    rest_of_base = _ALL - sums.base_of_base
    left = (_ALL - sums.of_whole) * rest_of_base - sums.of_base * sums.base_of_whole
    given = _ALL * (sums.amount * rest_of_base + sums.of_base * sums.base_amount)
    if given:
        if left <= 0:
            return "whole_too_much"
        return _amounts(lines, whole=given / left, base=_base_for(sums, given / left))
    if not whole:
        return "no_amount"
    if abs(left) > SUM_SLACK_PERCENT * rest_of_base:
        return "not_whole"
    parts = _amounts(lines, whole=whole, base=_base_for(sums, whole))
    return [part * whole / sum(parts) for part in parts]


def _base_for(sums: _Sums, whole: Fraction) -> Fraction:
    """The base lines together, where the whole is this much."""
    return (_ALL * sums.base_amount + sums.base_of_whole * whole) / (_ALL - sums.base_of_base)


def _amounts(
    lines: Sequence[FormulaLine], *, base: Fraction, whole: Fraction
) -> list[Fraction]:
    def prepared(line: FormulaLine) -> Fraction:
        if line.percent is None:
            return _prepared(line)
        return Fraction(line.percent) * (base if line.percent_of == "base" else whole) / _ALL

    return [prepared(line) for line in lines]


def _sums(lines: Sequence[FormulaLine]) -> _Sums:
    base = [line for line in lines if line.is_base]
    return _Sums(
        amount=_sum(lines, _prepared),
        of_whole=_sum(lines, lambda line: _share(line, "whole")),
        of_base=_sum(lines, lambda line: _share(line, "base")),
        base_amount=_sum(base, _prepared),
        base_of_whole=_sum(base, lambda line: _share(line, "whole")),
        base_of_base=_sum(base, lambda line: _share(line, "base")),
    )


def _sum(lines: Sequence[FormulaLine], of: Callable[[FormulaLine], Fraction]) -> Fraction:
    return sum((of(line) for line in lines), Fraction(0))


def _is_share(line: FormulaLine, of: Share) -> bool:
    return line.percent is not None and line.percent_of == of


def _share(line: FormulaLine, of: Share) -> Fraction:
    return Fraction(line.percent or 0) if line.percent_of == of else Fraction(0)


def _prepared(line: FormulaLine) -> Fraction:
    """What the sums count of a line with an amount; nothing of a share."""
    if line.percent is not None:
        return Fraction(0)
    return Fraction(line.amount or ZERO) * _yield(line)


def _yield(line: FormulaLine) -> Fraction:
    """The part that is left; raises ValueError for a yield of nothing."""
    if line.yield_percent <= 0:
        raise ValueError("a yield is more than nothing")
    return Fraction(line.yield_percent) / _ALL
