"""What an instrument shows of a value: to its step, with as many places as the step has."""

from __future__ import annotations

from decimal import ROUND_HALF_EVEN, Decimal


def shown(value: Decimal, step: str) -> str:
    """The step nearest to a value, as it stands on a display."""
    steps = (value / Decimal(step)).quantize(Decimal(1), rounding=ROUND_HALF_EVEN)
    return f"{steps * Decimal(step) + 0:.{places_of(step)}f}"  # + 0: no display shows -0


def off_by(value: str, off: float, step: str) -> str:
    """What is shown of a value that is read too high by `off`."""
    return shown(Decimal(value) + Decimal(repr(off)), step)


def places_of(step: str) -> int:
    """Digits behind the point."""
    return max(-int(Decimal(step).as_tuple().exponent), 0)
