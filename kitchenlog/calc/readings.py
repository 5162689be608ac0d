"""What an instrument showed, how far it can be trusted, and what that decides.

Sources: JCGM 100:2008 (resolution F.2.2.1, repeats 4.2.3, effective degrees of freedom G.4.1)
and JCGM 106:2012 8.3.3 (guard bands), all read.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.numbers import (
    ZERO,
    as_double,
    difference,
    divided,
    product,
    total,
)
from kitchenlog.calc.quantiles import normal_quantile, t_quantile

Verdict = Literal["within", "outside", "cannot_tell"]

LEVEL_PERCENT = Decimal(95)  # how sure a verdict is where nobody asks for another level
ONE_SIDED_95 = 1.645  # normal quantile, JCGM 106:2012 8.3.3: u known without repeats
# One-sided 95 % of Student's t for 1, 2, 3 ... 30 degrees of freedom: computed by integration,
# checked again in tests; JCGM 100:2008 Table G.2 prints the same to two places (column 90 %).
T_TABLE = (
    6.3138, 2.9200, 2.3534, 2.1318, 2.0150, 1.9432, 1.8946, 1.8595, 1.8331, 1.8125,
    1.7959, 1.7823, 1.7709, 1.7613, 1.7531, 1.7459, 1.7396, 1.7341, 1.7291, 1.7247,
    1.7207, 1.7171, 1.7139, 1.7109, 1.7081, 1.7056, 1.7033, 1.7011, 1.6991, 1.6973,
)  # fmt: skip
_T_BEYOND = ((120, 1.6577), (60, 1.6706), (40, 1.6839), (30, 1.6973))
DEGREES_MAX = 1200  # from here on Student's t is 1.645 to two places


@dataclass(frozen=True, kw_only=True)
class Doubt:
    """Standard uncertainty of a value, in its unit; `degrees` of freedom is None when u does
    not rest on repeats."""

    u: float
    degrees: int | None


def net(shown: Decimal, tare: Decimal | None) -> Decimal:
    """What is in the bowl: shown less tare, exactly; without a tare what was shown."""
    return difference(shown, ZERO if tare is None else tare)


def mean(values: Sequence[Decimal], places: int) -> Decimal:
    """Mean of repeats, rounded once. Raises ValueError for none."""
    if not values:
        raise ValueError("no values")
    return divided(total(values), Decimal(len(values)), places)


def repeat_sd(values: Sequence[Decimal]) -> float:
    """Standard deviation of single readings, n - 1 (JCGM 100 4.2.2); 0 for a single one.

    The sum of squares is exact, so that readings far from zero lose nothing.
    """
    count = len(values)
    if count < 2:
        return 0.0
    squares = product(total(product(v, v) for v in values), Decimal(count))
    sum_of_values = total(values)
    over = difference(squares, product(sum_of_values, sum_of_values))
    return math.sqrt(as_double(over) / (count * (count - 1)))


def resolution_u(division: Decimal, readings: int) -> float:
    """d / sqrt(12) for each reading that was made, also when repeats are identical.

    A net mass rests on two readings: the tare was read too (JCGM 100 F.2.2.1).
    """
    step = as_double(division)
    return math.sqrt(readings * step * step / 12)


def rectangular_u(tolerance: Decimal) -> float:
    """Standard uncertainty of what lies anywhere within plus or minus a tolerance:
    tolerance / sqrt(3) (JCGM 100:2008 4.3.7)."""
    return as_double(tolerance) / math.sqrt(3)


def combined_u(parts: Sequence[float]) -> float:
    """Root of the sum of squares of independent standard uncertainties (JCGM 100 5.1.2)."""
    so_far = 0.0
    for part in parts:
        so_far = so_far + part * part
    return math.sqrt(so_far)


def doubt_of(
    *,
    division: Decimal,
    readings: int,
    repeatability: Decimal | None = None,
    repeats: Sequence[Decimal] = (),
) -> Doubt:
    """Doubt of a value taken from this many readings (2 with a tare).

    Resolution counts once a reading. The spread is s / sqrt(n) of the repeats where there are
    two or more, and the instrument's own repeatability for each reading without repeats.
    """
    repeated = len(repeats) >= 2
    single_readings = readings - 1 if repeated else readings
    spread = repeat_sd(repeats) / math.sqrt(len(repeats)) if repeated else 0.0
    known = as_double(repeatability) if repeatability is not None else 0.0
    u = combined_u(
        [resolution_u(division, readings), spread, known * math.sqrt(single_readings)]
    )
    return Doubt(u=u, degrees=_effective_degrees(u, spread, len(repeats) - 1))


def coverage_factor(degrees: int | None, level: Decimal | None = None) -> float:
    """One-sided 95 %: 1.645, or Student's t where u rests on repeats; or another `level` in
    percent, worked out.

    Between two rows of the table the fewer degrees count, which is the wider band.
    """
    if level is not None and level != LEVEL_PERCENT:
        share = as_double(level) / 100
        if degrees is None:
            return normal_quantile(share, sides=1)
        return t_quantile(share, degrees=max(degrees, 1), sides=1)
    if degrees is None:
        return ONE_SIDED_95
    if degrees <= len(T_TABLE):
        return T_TABLE[max(degrees, 1) - 1]
    return next(t for least, t in _T_BEYOND if degrees >= least)


def guard_band(doubt: Doubt, level: Decimal | None = None) -> float:
    """How near a limit a value may come before it is undecided; in the value's unit."""
    return coverage_factor(doubt.degrees, level) * doubt.u


def verdict(
    value: Decimal,
    *,
    low: Decimal | None,
    high: Decimal | None,
    doubt: Doubt | None,
    level: Decimal | None = None,
) -> Verdict | None:
    """Within or outside only where that is at least 95 % sure (or `level`, in percent), else
    cannot_tell.

    Limits are inclusive; a missing one does not limit. None when there is no limit at all.
    Without a known doubt nothing can be told.
    """
    if low is None and high is None:
        return None
    if doubt is None:
        return "cannot_tell"
    band = guard_band(doubt, level)
    room = [as_double(difference(value, low))] if low is not None else []
    room += [as_double(difference(high, value))] if high is not None else []
    nearest = min(room)
    if nearest >= band:
        return "within"
    return "outside" if nearest < -band else "cannot_tell"


def is_fine_enough(
    division: Decimal,
    *,
    below: Decimal | None,
    above: Decimal | None,
    readings: int = 2,
    repeatability: Decimal | None = None,
) -> bool:
    """Whether an instrument can say "within" at all for a line that may be this much below or
    above its target: the guard bands leave room for one division of the display.

    With one limit, or none, there is always room on the open side.
    """
    if below is None or above is None:
        return True
    doubt = doubt_of(division=division, readings=readings, repeatability=repeatability)
    return as_double(total([below, above])) - 2 * guard_band(doubt) >= as_double(division)


def _effective_degrees(u: float, spread: float, repeats_degrees: int) -> int | None:
    """Welch-Satterthwaite with only the repeats finite, cut to a whole number (G.4.1)."""
    if spread == 0:
        return None
    ratio = (u * u) / (spread * spread)
    degrees = ratio * ratio * repeats_degrees
    return int(degrees) if degrees < DEGREES_MAX else None
