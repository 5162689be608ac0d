"""How long a quality lasts at another temperature, and how much of it a history has used.

Q10: life x Q10^((at - T) / 10). Arrhenius: life x exp(E / R (1 / T - 1 / at)), in kelvin.
Square root: life x ((at - T_min) / (T - T_min))^2. Shares of a life add up (Charm 1972,
McMeekin 1988, as named by the DTU Aqua page after Dalgaard 2002, read); temperatures are never
averaged first. Quality only: a model may shorten a date and never lengthens one, and the clock
of food out of chill stands above it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.elementary import exponential, logarithm
from kitchenlog.calc.limits import Cited

LifeKind = Literal["q10", "arrhenius_kJ", "arrhenius_kcal", "square_root"]
ChillVerdict = Literal["chill_again", "sell_now", "throw_out"]
CautionKey = Literal["shelf_life", "holding"]

KELVIN_ZERO = 273.15
TEN = 10.0
HOURS_IN_DAY = 24.0
CHILL_AGAIN_BELOW_MIN = 120
SELL_BELOW_MIN = 240
_GAS_CONSTANT = {"arrhenius_kJ": 0.008314, "arrhenius_kcal": 0.001987}  # energy / (mol K)
_CLOCK = Cited(
    what="out_of_chill",
    source="2-hour/4-hour rule: under 2 h chill again, under 4 h sell, 4 h or more throw out",
    basis="read-secondary",
    note="UK (NI) SR 2006/3 Sch. 4 para 5, read: display is defended for less than four hours",
)


@dataclass(frozen=True, kw_only=True)
class LifeModel:
    """A life in days at one temperature (degC), and how it changes: by Q10, by an activation
    energy in kJ/mol or kcal/mol, or by the temperature (degC) at which nothing spoils."""

    kind: LifeKind
    parameter: Decimal
    life_days: Decimal
    at: Decimal


@dataclass(frozen=True, kw_only=True)
class LifeUsed:
    """The share of a life that is used, the days left where it is stored, and the one
    temperature that would have used as much. Never shown without its caution."""

    used: float
    left_days: float
    effective_celsius: float
    caution: CautionKey = "shelf_life"


@dataclass(frozen=True, kw_only=True)
class OutOfChill:
    """All minutes out of chill together, and what may still be done."""

    minutes: int
    verdict: ChillVerdict
    cited: tuple[Cited, ...] = (_CLOCK,)
    caution: CautionKey = "holding"


def q10_of_lives(cold: tuple[Decimal, Decimal], warm: tuple[Decimal, Decimal]) -> float:
    """Q10 from two (life, degC) of storage tests: (life cold / life warm)^(10 / difference).

    Raises ValueError for lives not above 0 and unless the second is warmer.
    """
    (long, at_cold), (short, at_warm) = cold, warm
    if long <= 0 or short <= 0 or at_warm <= at_cold:
        raise ValueError("two lives above 0, the second at the warmer place")
    step = TEN / (float(at_warm) - float(at_cold))
    return exponential(step * logarithm(float(long) / float(short)))


def life_at(model: LifeModel, celsius: Decimal) -> float:
    """Days at this temperature.

    Raises ValueError for a life or parameter not above 0, below absolute zero, and for a square
    root at or below the temperature where nothing spoils.
    """
    return _life(_checked(model), float(celsius))


def life_used(
    model: LifeModel, history: Sequence[tuple[Decimal, Decimal]], *, stored_at: Decimal
) -> LifeUsed:
    """What (hours, degC) one after the other have used: the sum of hours / life.

    Left is never below 0. Raises ValueError as life_at does, for hours below 0 and for a
    history without any.
    """
    checked = _checked(model)
    used = 0.0
    days = 0.0
    for hours, celsius in history:
        if hours < 0:
            raise ValueError("time does not run back")
        used += float(hours) / HOURS_IN_DAY / _life(checked, float(celsius))
        days += float(hours) / HOURS_IN_DAY
    if days == 0.0:
        raise ValueError("a history has some hours")
    left = max(0.0, 1.0 - used) * _life(checked, float(stored_at))
    return LifeUsed(
        used=used, left_days=left, effective_celsius=_celsius_for(checked, days / used)
    )


def out_of_chill(minutes: Sequence[int]) -> OutOfChill:
    """The times out of chill, in minutes, added up over all days: none of them is forgotten.

    Raises ValueError for a time below 0.
    """
    if any(each < 0 for each in minutes):
        raise ValueError("time does not run back")
    together = sum(minutes)
    verdict: ChillVerdict = "throw_out"
    if together < CHILL_AGAIN_BELOW_MIN:
        verdict = "chill_again"
    elif together < SELL_BELOW_MIN:
        verdict = "sell_now"
    return OutOfChill(minutes=together, verdict=verdict)


def _checked(model: LifeModel) -> LifeModel:
    is_scale = model.kind == "square_root"
    if model.life_days <= 0 or (not is_scale and model.parameter <= 0):
        raise ValueError("a life and what changes it are more than nothing")
    if model.kind == "q10" and model.parameter == 1:
        raise ValueError("a Q10 of 1 changes nothing")
    return model


def _life(model: LifeModel, celsius: float) -> float:
    life, at, parameter = float(model.life_days), float(model.at), float(model.parameter)
    if model.kind == "q10":
        return life * exponential((at - celsius) / TEN * logarithm(parameter))
    if model.kind == "square_root":
        if celsius <= parameter or at <= parameter:
            raise ValueError("nothing spoils so cold by this model")
        ratio = (at - parameter) / (celsius - parameter)
        return life * ratio * ratio
    energy = parameter / _GAS_CONSTANT[model.kind]
    return life * exponential(energy * (1.0 / _kelvin(celsius) - 1.0 / _kelvin(at)))


def _celsius_for(model: LifeModel, days: float) -> float:
    """The temperature at which the life is this many days."""
    life, at, parameter = float(model.life_days), float(model.at), float(model.parameter)
    if model.kind == "q10":
        return at - TEN * logarithm(days / life) / logarithm(parameter)
    if model.kind == "square_root":
        return parameter + (at - parameter) * math.sqrt(life / days)
    energy = parameter / _GAS_CONSTANT[model.kind]
    return 1.0 / (1.0 / _kelvin(at) + logarithm(days / life) / energy) - KELVIN_ZERO


def _kelvin(celsius: float) -> float:
    if celsius <= -KELVIN_ZERO:
        raise ValueError("below absolute zero")
    return celsius + KELVIN_ZERO
