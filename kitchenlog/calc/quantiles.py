"""Normal, Student's t and Fisher's F: what lies below a value, and where a level is reached.

Formulas: NIST Digital Library of Mathematical Functions 8.17 (incomplete beta, its continued
fraction 8.17.22), 7.9 (tail of the normal) and 5.11 (Stirling's series), memory; every figure
is held against scipy and against plain integration in tests.
"""

import math
from dataclasses import dataclass
from typing import Literal

from kitchenlog.calc.elementary import exponential, log_one_plus, logarithm

Sides = Literal[1, 2]

LEVEL_MIN = 0.5
LEVEL_MAX = 0.9999
NEWTON_STEPS_MAX = 100
FRACTION_STEPS_MAX = 10_000

_NORMAL_SERIES_BELOW = 3.0  # beyond, the continued fraction is quicker and keeps all digits
_NORMAL_SERIES_TERMS = 60
_NORMAL_FRACTION_TERMS = 60
_ROOT_TWO_PI = 2.5066282746310002
_TWO_PI = 6.283185307179586
_STIRLING_FROM = 12.0  # from here on the series below has 16 digits
# Coefficients of 1/a, 1/a^3, ... of Stirling's series.
_STIRLING = (1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360)
_TINY = 1e-300  # stands for a zero in the continued fraction
_CLOSE = 1e-16
_STEP_CLOSE = 1e-9  # each step squares the error, so the next one would be below a digit


@dataclass(frozen=True, kw_only=True)
class Shares:
    """Parts of a distribution below and above a value; the smaller one keeps all its digits."""

    below: float
    above: float


def normal_cumulative(x: float) -> float:
    """Share of the standard normal distribution below x."""
    half_outside = 0.5 * _normal_within(abs(x)).above
    return 1.0 - half_outside if x >= 0 else half_outside


def normal_quantile(level: float, *, sides: Sides) -> float:
    """The z below which (sides 1), or within -z and z (sides 2), lies `level` of the normal
    distribution; to 1e-12 of itself. Raises ValueError for a level outside 0.5 to 0.9999."""
    wanted = _wanted_within(level, sides)
    z = 0.0
    for _ in range(NEWTON_STEPS_MAX):
        step = _newton_step(_normal_within(z), wanted, density=_normal_density(z))
        z = z + step
        if abs(step) <= _STEP_CLOSE * z:
            break
    return z


def t_cumulative(t: float, *, degrees: float) -> float:
    """Share of Student's distribution below t. Raises ValueError for degrees below 1."""
    half_outside = 0.5 * t_beyond(t, degrees=degrees)
    return 1.0 - half_outside if t >= 0 else half_outside


def t_beyond(t: float, *, degrees: float) -> float:
    """Chance of a value at least as far from zero as t, on either side: the two-sided p.
    Raises ValueError for degrees below 1."""
    return f_shares(t * t, over=1.0, under=degrees).above


def t_quantile(level: float, *, degrees: float, sides: Sides) -> float:
    """The t below which (sides 1), or within -t and t (sides 2), lies `level` of Student's
    distribution; to 1e-12 of itself.

    Raises ValueError for a level outside 0.5 to 0.9999 or degrees below 1. Newton's steps begin
    at the normal quantile, which is always the smaller one, and only go up.
    """
    wanted = _wanted_within(level, sides)
    t = normal_quantile(level, sides=sides)
    if not degrees >= 1:
        raise ValueError(f"no distribution with {degrees} degrees")
    if t == 0:
        return t
    for _ in range(NEWTON_STEPS_MAX):
        # Student's density is this front over t.
        density = _beta_front(t * t, over=1.0, under=degrees) / t
        step = _newton_step(f_shares(t * t, over=1.0, under=degrees), wanted, density=density)
        t = t + step
        if abs(step) <= _STEP_CLOSE * t:
            break
    return t


def f_cumulative(f: float, *, over: float, under: float) -> float:
    """Share of Fisher's distribution below f, with `over` and `under` degrees of freedom."""
    return f_shares(f, over=over, under=under).below


def f_beyond(f: float, *, over: float, under: float) -> float:
    """Chance of a ratio of variances of at least f: the p of an F test."""
    return f_shares(f, over=over, under=under).above


def f_shares(f: float, *, over: float, under: float) -> Shares:
    """Both shares of Fisher's distribution at f, by the incomplete beta function.

    Raises ValueError for f below 0 and degrees below 1.
    """
    if not (f >= 0 and over >= 1 and under >= 1):
        raise ValueError(f"no share of F at {f} with {over} and {under} degrees")
    weight = over * f + under
    if weight == math.inf:
        return Shares(below=1.0, above=0.0)
    a, b = 0.5 * over, 0.5 * under
    x, y = over * f / weight, under / weight
    if x == 0:
        return Shares(below=0.0, above=1.0)
    front = _beta_front(f, over=over, under=under)
    lead = over * (under / weight) * 0.5 * (1.0 - f)
    if x < (a + 1) / (a + b + 2):
        below = front * _beta_fraction(a, b, x=x, lead=lead)
        return Shares(below=below, above=1.0 - below)
    above = front * _beta_fraction(b, a, x=y, lead=-lead)
    return Shares(below=1.0 - above, above=above)


def _wanted_within(level: float, sides: Sides) -> Shares:
    """A level as what lies between -z and z, and what lies outside; both differences are exact
    from 0.5 on."""
    if not LEVEL_MIN <= level <= LEVEL_MAX:
        raise ValueError(f"a level of {level} is not between {LEVEL_MIN} and {LEVEL_MAX}")
    if sides == 1:
        return Shares(below=2.0 * level - 1.0, above=2.0 * (1.0 - level))
    return Shares(below=level, above=1.0 - level)


def _newton_step(found: Shares, wanted: Shares, *, density: float) -> float:
    """How far to go on from a value with these shares within and outside -value and value.
    The smaller of the wanted shares leads: it holds the digits."""
    if wanted.below < 0.5:
        return (wanted.below - found.below) / (2.0 * density)
    return (found.above - wanted.above) / (2.0 * density)


def _normal_within(z: float) -> Shares:
    """What of the normal distribution lies between -z and z, and outside, for z >= 0."""
    density = _normal_density(z)
    if z < _NORMAL_SERIES_BELOW:
        series = 1.0
        for term in range(_NORMAL_SERIES_TERMS, 0, -1):
            series = 1.0 + series * z * z / (2 * term + 1)
        within = 2.0 * density * z * series
        return Shares(below=within, above=1.0 - within)
    fraction = z
    for term in range(_NORMAL_FRACTION_TERMS, 0, -1):
        fraction = z + term / fraction
    outside = 2.0 * density / fraction
    return Shares(below=1.0 - outside, above=outside)


def _normal_density(z: float) -> float:
    return exponential(-0.5 * z * z) / _ROOT_TWO_PI


def _beta_front(f: float, *, over: float, under: float) -> float:
    """x^a y^b / B(a, b) for a, b half the degrees and x : y as over f : under.

    Around f = 1 the two powers nearly cancel and so do the gamma functions; written as ratios
    to their sum, and by Stirling's errors, no digits go with them.
    """
    a, b, weight = 0.5 * over, 0.5 * under, over * f + under
    power_x = _log_ratio(f * (over + under) / weight, under * (f - 1.0) / weight)
    power_y = _log_ratio((over + under) / weight, over * (1.0 - f) / weight)
    errors = _stirling_error(a + b) - _stirling_error(a) - _stirling_error(b)
    scale = math.sqrt(a * (b / (_TWO_PI * (a + b))))
    return scale * exponential(a * power_x + b * power_y + errors)


def _log_ratio(ratio: float, excess: float) -> float:
    """ln(ratio), where `excess` is ratio - 1 worked out without loss."""
    return log_one_plus(excess) if abs(excess) < 0.25 else logarithm(ratio)


def _stirling_error(a: float) -> float:
    """ln Gamma(a) less Stirling's (a - 1/2) ln a - a + ln(2 pi) / 2."""
    shift = 0.0
    while a < _STIRLING_FROM:
        shift = shift + ((a + 0.5) * log_one_plus(1.0 / a) - 1.0)
        a = a + 1.0
    series = 0.0
    for coefficient in reversed(_STIRLING):
        series = series / (a * a) + coefficient
    return shift + series / a


def _beta_fraction(a: float, b: float, *, x: float, lead: float) -> float:
    """The incomplete beta function over its front: the even part of the continued fraction
    8.17.22, by Lentz's method. `lead` is a (1 - x) - b x, which the caller knows without loss.
    """
    fraction = _not_zero(a * (lead + 1.0) / (a + 1.0))
    over, under = fraction, 0.0
    for m in range(1, FRACTION_STEPS_MAX):
        odd = a + (2 * m - 1)
        numerator = (a + (m - 1)) / odd * ((a + b + (m - 1)) / odd) * (m * (b - m) * x * x)
        denominator = (
            m + m * (b - m) * x / odd + (a + m) * (lead + 1.0 + m * (2.0 - x)) / (odd + 2.0)
        )
        under = 1.0 / _not_zero(denominator + numerator * under)
        over = _not_zero(denominator + numerator / over)
        factor = over * under
        fraction = fraction * factor
        if abs(factor - 1.0) <= _CLOSE:
            break
    return 1.0 / fraction


def _not_zero(x: float) -> float:
    return x if abs(x) > _TINY else _TINY
