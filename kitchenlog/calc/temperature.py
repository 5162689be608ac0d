"""Temperatures: a reading and a difference are changed by different rules.

NIST SP 811 (2008) App. B.8 and SP 1038 (2006) n.33, both read.
"""

from decimal import Decimal

from kitchenlog.calc.numbers import difference, divided, product, rounded, total

_FAHRENHEIT_ZERO = Decimal(32)
_FAHRENHEIT_STEPS = Decimal("1.8")
_KELVIN_ZERO = Decimal("273.15")


def celsius(reading: Decimal, code: str, places: int) -> Decimal:
    """A temperature shown in degF, K or degC as degC, rounded once.

    Raises ValueError for another unit, also for a difference.
    """
    if code == "degF":
        return divided(difference(reading, _FAHRENHEIT_ZERO), _FAHRENHEIT_STEPS, places)
    if code == "K":
        return rounded(difference(reading, _KELVIN_ZERO), places)
    if code == "degC":
        return rounded(reading, places)
    raise ValueError(f"{code!r} is not a temperature")


def celsius_to_half(reading: Decimal, code: str) -> Decimal:
    """A converted temperature to the nearest 0.5 degC, as SP 1038 4.4.1.3 asks: 165 F is 74.0.

    Raises ValueError for another unit, also for a difference.
    """
    if code == "degF":
        doubled = product(difference(reading, _FAHRENHEIT_ZERO), Decimal(2))
        halves = divided(doubled, _FAHRENHEIT_STEPS, 0)
    elif code == "K":
        halves = rounded(product(difference(reading, _KELVIN_ZERO), Decimal(2)), 0)
    elif code == "degC":
        halves = rounded(product(reading, Decimal(2)), 0)
    else:
        raise ValueError(f"{code!r} is not a temperature")
    return product(halves, Decimal("0.5"))


def celsius_interval(change: Decimal, code: str, places: int) -> Decimal:
    """A difference of temperatures in degC: 9 F cooler is 5 C cooler, 32 is never subtracted.

    Raises ValueError for a reading.
    """
    if code == "delta_degF":
        return divided(change, _FAHRENHEIT_STEPS, places)
    if code == "delta_degC":
        return rounded(change, places)
    raise ValueError(f"{code!r} is not a difference of temperatures")


def fahrenheit(degrees_celsius: Decimal) -> Decimal:
    """Exact degF of a temperature in degC."""
    return total([product(degrees_celsius, _FAHRENHEIT_STEPS), _FAHRENHEIT_ZERO])


def kelvin(degrees_celsius: Decimal) -> Decimal:
    """Exact K of a temperature in degC."""
    return total([degrees_celsius, _KELVIN_ZERO])
