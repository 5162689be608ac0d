"""Exact decimals: how a number is read, added, divided, rounded and written."""

import re
from collections.abc import Iterable
from decimal import (
    ROUND_HALF_EVEN,
    ROUND_HALF_UP,
    Clamped,
    Context,
    Decimal,
    DivisionByZero,
    Inexact,
    InvalidOperation,
    Overflow,
    Subnormal,
    Underflow,
)
from fractions import Fraction
from typing import Literal

Rule = Literal["half_even", "half_up"]

DIGITS_MAX = 30  # two such numbers multiplied still fit the precision below
PRECISION = 60

# A sum or product that would lose a digit is a defect and raises.
EXACT = Context(
    prec=PRECISION,
    rounding=ROUND_HALF_EVEN,
    traps=[Clamped, DivisionByZero, Inexact, InvalidOperation, Overflow, Subnormal, Underflow],
)
# Rounding on purpose: nothing is trapped but nonsense.
_ROUNDING = Context(prec=10 * PRECISION, traps=[InvalidOperation, DivisionByZero, Overflow])
_RULES = {"half_even": ROUND_HALF_EVEN, "half_up": ROUND_HALF_UP}

ZERO = Decimal(0)
ONE = Decimal(1)
HUNDRED = Decimal(100)

_GRAMMAR = re.compile(r"-?[0-9]+(\.[0-9]+)?")


def parse_decimal(text: str) -> Decimal:
    """The number a wire text says, with the digits that were read ("12.50" keeps its zero).

    Raises ValueError for anything else: exponents, signs but "-", spaces, digits of other
    scripts, more than 30 digits.
    """
    if not _GRAMMAR.fullmatch(text) or sum(c.isdigit() for c in text) > DIGITS_MAX:
        raise ValueError(f"not a decimal: {text!r}")
    return _without_negative_zero(Decimal(text))


def written(x: Decimal) -> str:
    """The number as text with all its places kept, never with an exponent."""
    return format(_without_negative_zero(x), "f")


def plain(x: Decimal) -> str:
    """The number as text without trailing zeros or exponent; zero is "0"."""
    text = written(x)
    return text.rstrip("0").rstrip(".") if "." in text else text


def total(amounts: Iterable[Decimal]) -> Decimal:
    """Exact sum; of nothing: 0."""
    so_far = ZERO
    for amount in amounts:
        so_far = EXACT.add(so_far, amount)
    return _without_negative_zero(so_far)


def difference(a: Decimal, b: Decimal) -> Decimal:
    """Exact a - b."""
    return _without_negative_zero(EXACT.subtract(a, b))


def product(a: Decimal, b: Decimal) -> Decimal:
    """Exact a x b."""
    return _without_negative_zero(EXACT.multiply(a, b))


def rounded(x: Decimal, places: int, *, rule: Rule = "half_even") -> Decimal:
    """x with this many places. A tie goes to the even digit (NIST SP 811 (2008) B.7.1);
    "half_up" (away from zero) is for the rules that name it, such as 21 CFR 101.9(b)(5)(ix)."""
    step = Decimal(1).scaleb(-places)
    return _without_negative_zero(x.quantize(step, rounding=_RULES[rule], context=_ROUNDING))


def divided(a: Decimal, b: Decimal, places: int, *, rule: Rule = "half_even") -> Decimal:
    """a / b as an exact fraction, rounded once to this many places.

    Raises ZeroDivisionError: a caller knows what a missing whole means, this does not.
    """
    scaled = Fraction(a) / Fraction(b) * 10**places
    if rule == "half_even":
        units = round(scaled)
    else:
        away = (2 * abs(scaled.numerator) + scaled.denominator) // (2 * scaled.denominator)
        units = away if scaled >= 0 else -away
    return Decimal(units).scaleb(-places, context=_ROUNDING)


def significant(x: Decimal | float, digits: int) -> str:
    """x to this many significant digits, ties to even, trailing zeros kept (NIST SP 811 B.7.1).

    A double is taken at its exact binary value, so that both languages write the same text.
    """
    exact = Decimal(x)
    if not exact:
        return "0"
    cut = Context(prec=digits, rounding=ROUND_HALF_EVEN, traps=[InvalidOperation])
    short = cut.create_decimal(exact)
    last_place = short.adjusted() - digits + 1
    if last_place < 0:
        short = short.quantize(Decimal(1).scaleb(last_place), context=_ROUNDING)
    return written(short)


def as_double(x: Decimal) -> float:
    """The nearest double: only for what is measured (uncertainty, regression), never to add
    amounts with."""
    return float(x)


def _without_negative_zero(x: Decimal) -> Decimal:
    return x if x else x.copy_abs()
