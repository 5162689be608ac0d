"""Declared content: which figure of a label is verified, and how far each pack is from it.

The rules of a country are in net_packs.py (US) and net_batches.py (EU).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.numbers import difference, divided, total
from kitchenlog.calc.readings import mean
from kitchenlog.calc.units import dimension_of, in_base

NetVerdict = Literal["pass", "fail", "not_decided"]

PLACES = 6  # of a mean tare, a mean error
# Nothing is decided on a weighing or a figure that cannot carry it.
_BLOCKING = ("mav_disputed", "scale_too_coarse", "too_few_tares", "sample_too_large")
# More packs cannot mend these, so they count before the sample is complete.
_FIRM = ("over_mav", "below_t2", "too_many_below_t1")


@dataclass(frozen=True, kw_only=True)
class Declared:
    """One declaration of a label: an amount in a unit, and in its base unit."""

    position: int
    in_base: Decimal


def larger_declaration(declarations: Sequence[tuple[Decimal, str]]) -> Declared:
    """The declaration to verify: the larger, compared exactly (HB 133 (2026) 2.3.3.1, read).

    Of equal ones the first. Raises ValueError for none, and for mass beside volume.
    """
    if len({dimension_of(unit) for _, unit in declarations}) != 1:
        raise ValueError("declarations of one label measure the same thing")
    amounts = [in_base(amount, unit) for amount, unit in declarations]
    largest = max(amounts)
    return Declared(position=amounts.index(largest), in_base=largest)


def nominal_gross(label: Decimal, tares: Sequence[Decimal]) -> Decimal:
    """Label and mean tare, the weight a full pack shows. Raises ValueError without a tare."""
    return total([label, mean(tares, PLACES)])


def package_errors(gross: Sequence[Decimal], nominal: Decimal) -> list[Decimal]:
    """Gross less nominal gross of each pack: below zero is short."""
    return [difference(each, nominal) for each in gross]


def in_measure_units(error: Decimal, unit_of_measure: Decimal, places: int) -> Decimal:
    """An error in units of measure: -0.5 g is -5 of 0.1 g. Raises ZeroDivisionError."""
    return divided(error, unit_of_measure, places)


def net_verdict(reasons: Sequence[str]) -> NetVerdict:
    """What the reasons against a lot or batch decide; without one it passes.

    A disputed figure and a weighing that cannot carry a verdict decide nothing.
    """
    if any(each in _BLOCKING for each in reasons):
        return "not_decided"
    if any(each in _FIRM for each in reasons):
        return "fail"
    if any(each != "mean_short" for each in reasons):
        return "not_decided"
    return "fail" if reasons else "pass"
