"""Curing: parts per million of nitrite or nitrate that go in, and how much cure gives them.

Dry and comminuted: substance x 1e6 / green weight. Pumped: substance x pump fraction x 1e6 /
whole pickle, never its water alone. Immersed: substance x 1e6 / (meat + pickle). Source: FSIS
Processing Inspectors' Calculations Handbook (1995) as quoted, read-secondary. Every answer
carries its basis, its limits and the caution; over a limit no amount is worked out. Masses are
in one unit, whichever.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.cure_limits import (
    CureCase,
    CureLimit,
    CureVerdict,
    cure_limits,
    worst_verdict,
)
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import HUNDRED, ZERO, divided, product, total
from kitchenlog.calc.recipes import Factor

IngoingBasis = Literal["green_weight", "whole_pickle", "meat_and_pickle"]
CautionKey = Literal["curing"]

PPM_PLACES = 4
CURE_PLACES = 6
# Ingoing nitrite above this is a percent typed where a fraction belongs, or a wrong unit.
NITRITE_PPM_MAX = Decimal(1000)  # own bound: the highest limit is 625
# Of anything else a percent; where no limit is known nothing else would stop such a slip.
OTHER_PPM_MAX = Decimal(10_000)  # own bound: the highest limit is 2187.5
_MILLION = Decimal(1_000_000)
_MILLIONTHS_OF_PERCENT = Decimal(10_000)  # ppm in one percent
_FORMULA = Cited(
    what="cure_formula",
    source="FSIS Processing Inspectors' Calculations Handbook (Directive 7620.3, rev. 1995), "
    "as quoted",
    basis="read-secondary",
)
_BASES: dict[str, IngoingBasis] = {
    "pumped": "whole_pickle",
    "bacon_pumped": "whole_pickle",
    "bacon_pumped_alternative": "whole_pickle",
    "immersed": "meat_and_pickle",
    "bacon_immersed": "meat_and_pickle",
}


@dataclass(frozen=True, kw_only=True)
class CureMade:
    """A cure that was weighed: its mass, percent of the substance in it, and what it goes on.

    `others` is all else in the pickle (water, salt, sugar); `green` the meat as weighed in;
    `pump_percent` what is pumped in, of the green weight.
    """

    cure: Decimal
    substance_percent: Decimal
    green: Decimal | None = None
    others: Sequence[Decimal] = ()
    pump_percent: Decimal | None = None


@dataclass(frozen=True, kw_only=True)
class CureWanted:
    """Parts per million that are wanted, the cure they come from, and what it goes on; `pickle`
    is the whole of it, the cure included."""

    ppm: Decimal
    substance_percent: Decimal
    green: Decimal | None = None
    pickle: Decimal | None = None
    pump_percent: Decimal | None = None


@dataclass(frozen=True, kw_only=True)
class Ingoing:
    """What goes in, on which basis, and what each limit says of it; shown with its caution."""

    ppm: Decimal
    basis: IngoingBasis
    verdict: CureVerdict
    limits: tuple[CureLimit, ...]
    cited: tuple[Cited, ...]
    caution: CautionKey = "curing"


@dataclass(frozen=True, kw_only=True)
class CureNeeded:
    """Masses of cure and of the substance in it; None where the wanted amount is over a limit
    or not permitted."""

    cure: Decimal | None
    substance: Decimal | None
    basis: IngoingBasis
    verdict: CureVerdict
    limits: tuple[CureLimit, ...]
    cited: tuple[Cited, ...]
    caution: CautionKey = "curing"


def ingoing(case: CureCase, made: CureMade) -> Ingoing:
    """Parts per million that a weighed cure puts in.

    Raises ValueError for masses or percents not above 0, a percent above 100, a missing green
    weight, pickle or pump, and for nitrite beyond 1000 ppm or anything else beyond 10 000,
    which is a slip of typing.
    """
    basis = _basis(case)
    _refuse_unless_above_zero(made.cure, made.substance_percent)
    substance = product(made.cure, made.substance_percent)
    pickle = total([made.cure, *made.others])
    share, whole = _spread_over(
        basis, green=made.green, pickle=pickle, pump_percent=made.pump_percent
    )
    ppm = Factor(wanted=product(product(substance, share), _MILLIONTHS_OF_PERCENT), base=whole)
    _refuse_slip(case, ppm)
    limits = cure_limits(case, ppm)
    return Ingoing(
        ppm=divided(ppm.wanted, ppm.base, PPM_PLACES),
        basis=basis,
        verdict=worst_verdict(limits),
        limits=limits,
        cited=_cited(limits),
    )


def cure_needed(case: CureCase, wanted: CureWanted) -> CureNeeded:
    """How much of a cure gives the wanted parts per million; nothing over a limit.

    Raises ValueError as ingoing does.
    """
    basis = _basis(case)
    _refuse_unless_above_zero(wanted.ppm, wanted.substance_percent)
    share, whole = _spread_over(
        basis, green=wanted.green, pickle=wanted.pickle, pump_percent=wanted.pump_percent
    )
    ppm = Factor(wanted=wanted.ppm, base=Decimal(1))
    _refuse_slip(case, ppm)
    limits = cure_limits(case, ppm)
    verdict = worst_verdict(limits)
    is_refused = verdict in ("over", "not_permitted")
    over = product(wanted.ppm, whole)
    under = product(share, _MILLION)
    in_percent = product(product(share, wanted.substance_percent), _MILLIONTHS_OF_PERCENT)
    return CureNeeded(
        cure=None if is_refused else divided(over, in_percent, CURE_PLACES),
        substance=None if is_refused else divided(over, under, CURE_PLACES),
        basis=basis,
        verdict=verdict,
        limits=limits,
        cited=_cited(limits),
    )


def _basis(case: CureCase) -> IngoingBasis:
    return _BASES.get(case.use, "green_weight")


def _spread_over(
    basis: IngoingBasis,
    *,
    green: Decimal | None,
    pickle: Decimal | None,
    pump_percent: Decimal | None,
) -> tuple[Decimal, Decimal]:
    """The share of the substance that reaches the mass it is counted on, and that mass."""
    if basis == "green_weight":
        return Decimal(1), _needed(green)
    if basis == "meat_and_pickle":
        return Decimal(1), total([_needed(green), _needed(pickle)])
    pump = _needed(pump_percent)
    if pump > HUNDRED:
        raise ValueError("a pump is at most 100 % of the green weight")
    return product(pump, Decimal("0.01")), _needed(pickle)


def _needed(amount: Decimal | None) -> Decimal:
    if amount is None or amount <= ZERO:
        raise ValueError("green weight, pickle or pump is missing")
    return amount


def _refuse_unless_above_zero(amount: Decimal, percent: Decimal) -> None:
    if amount <= ZERO or not ZERO < percent <= HUNDRED:
        raise ValueError("a cure is more than nothing and has up to 100 % of a substance")


def _refuse_slip(case: CureCase, ppm: Factor) -> None:
    is_nitrite = case.substance == "sodium_nitrite"
    most_ppm = NITRITE_PPM_MAX if is_nitrite else OTHER_PPM_MAX
    if ppm.wanted > product(most_ppm, ppm.base):
        raise ValueError("more than any method puts in: is a percent or a unit wrong?")


def _cited(limits: Sequence[CureLimit]) -> tuple[Cited, ...]:
    return (_FORMULA, *dict.fromkeys(limit.cited for limit in limits))
