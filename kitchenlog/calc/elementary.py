"""Exponential, logarithm and sums of doubles by + - * / alone, so that every machine and both
languages get the same bits: their own libraries differ in the last one."""

import math
from collections.abc import Iterable

# ln 2 in two parts; the first has its last 20 bits zero, so that a whole multiple is exact.
_LN_2_HIGH = 0.6931471803691238
_LN_2_LOW = 1.9082149292705877e-10
_LN_2 = 0.6931471805599453
_SQRT_HALF = 0.7071067811865476

EXPONENT_MIN = -745.0  # below this e^x is less than the smallest double
EXPONENT_MAX = 709.0
_EXPONENTIAL_TERMS = 18  # 0.35^18 / 18! is below 1e-24
_LOGARITHM_TERMS = 12  # 0.1716^25 / 25 is below 1e-20


def added(values: Iterable[float]) -> float:
    """Sum of doubles from left to right (Python's own `sum` compensates from 3.12 on)."""
    so_far = 0.0
    for value in values:
        so_far = so_far + value
    return so_far


def exponential(x: float) -> float:
    """e^x, to about two units of the last digit; 0 far below zero.

    Raises ValueError above 709, where a double ends.
    """
    if x > EXPONENT_MAX:
        raise ValueError(f"e^{x} is too large")
    if x < EXPONENT_MIN:
        return 0.0
    halvings = math.floor(x / _LN_2 + 0.5)
    rest = (x - halvings * _LN_2_HIGH) - halvings * _LN_2_LOW
    series = 1.0
    for term in range(_EXPONENTIAL_TERMS, 0, -1):
        series = 1.0 + series * rest / term
    return _scaled(series, halvings)


def logarithm(x: float) -> float:
    """Natural logarithm. Raises ValueError unless x is above zero and finite."""
    if not 0.0 < x < math.inf:
        raise ValueError(f"no logarithm of {x}")
    reduced, doublings = x, 0
    while reduced < _SQRT_HALF:
        reduced, doublings = reduced * 2.0, doublings - 1
    while reduced > 2.0 * _SQRT_HALF:
        reduced, doublings = reduced * 0.5, doublings + 1
    near_one = _twice_artanh((reduced - 1.0) / (reduced + 1.0))
    return doublings * _LN_2_HIGH + (near_one + doublings * _LN_2_LOW)


def log_one_plus(x: float) -> float:
    """ln(1 + x) without loss where x is small. Raises ValueError unless x is above -1."""
    if _SQRT_HALF - 1.0 < x < 2.0 * _SQRT_HALF - 1.0:
        return _twice_artanh(x / (2.0 + x))
    return logarithm(1.0 + x)


def _twice_artanh(s: float) -> float:
    """ln((1 + s) / (1 - s)) for |s| <= 0.1716, by its series."""
    square = s * s
    series = 0.0
    for term in range(_LOGARITHM_TERMS, -1, -1):
        series = series * square + 1.0 / (2 * term + 1)
    return 2.0 * s * series


def _scaled(x: float, doublings: int) -> float:
    """x times a power of two, each step exact."""
    step = 2.0 if doublings > 0 else 0.5
    for _ in range(abs(doublings)):
        x = x * step
    return x
