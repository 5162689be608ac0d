"""Packs under NIST HB 133 (2026) chapter 2, category A: mean and each shortage.

Its tables are in net_limits.py; many of their rows are from memory, and a result says so.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.limits import Cited, Limit, is_disputed
from kitchenlog.calc.net_content import (
    PLACES,
    NetVerdict,
    net_verdict,
    nominal_gross,
    package_errors,
)
from kitchenlog.calc.net_limits import (
    MavColumn,
    PackPlan,
    maximum_allowable_variation,
    pack_division,
    pack_plan,
)
from kitchenlog.calc.numbers import (
    HUNDRED,
    ZERO,
    as_double,
    difference,
    divided,
    product,
    total,
)
from kitchenlog.calc.readings import mean, repeat_sd

Allowance = Literal["off_nominal", "added_after"]


@dataclass(frozen=True, kw_only=True)
class Moisture:
    """Moisture allowance: flour and pasta 3 % (HB 133 (2026) 2.3.8, read), `places` as the
    unit of measure has; taken off the nominal gross weight or added afterwards to SEL and MAV,
    never both."""

    percent: Decimal
    places: int
    taken: Allowance


@dataclass(frozen=True, kw_only=True)
class WeighedLot:
    """Packs weighed under HB 133, all in g: `label` the declaration that is verified,
    `division` of the scale where it is known."""

    label: Decimal
    column: MavColumn
    tares: tuple[Decimal, ...]
    gross: tuple[Decimal, ...]
    lot_size: int
    division: Decimal | None
    moisture: Moisture | None


@dataclass(frozen=True, kw_only=True)
class PackResult:
    """HB 133 category A. `sel` is the sample error limit (None for a single pack), `beyond_mav`
    the positions of packs beyond the MAV; `reasons` are keys of sentences."""

    verdict: NetVerdict
    reasons: tuple[str, ...]
    nominal_gross: Decimal
    errors: tuple[Decimal, ...]
    total_error: Decimal
    mean_error: Decimal
    sd: float
    sel: float | None
    mav: Decimal
    beyond_mav: tuple[int, ...]
    plan: PackPlan
    cited: tuple[Cited, ...]


def moisture_allowance(label: Decimal, moisture: Moisture) -> Decimal:
    """What the label may have dried out, in its unit, rounded to the unit of measure."""
    return divided(product(label, moisture.percent), HUNDRED, moisture.places)


def sample_error_limit(sd: float, factor: Decimal) -> float:
    """SEL = s x sample correction factor, in the unit of s (HB 133, category A)."""
    return sd * as_double(factor)


def category_a(lot: WeighedLot) -> PackResult:
    """Whether a lot passes HB 133 category A: mean and each shortage.

    A mean error of 0 or more passes, a negative one while its size is not above the SEL; no
    more packs than allowed may be short by more than the MAV, which always comes from the
    label. Not decided where the MAV row is disputed, the scale is too coarse, or the sample is
    not the planned one. Raises ValueError without a pack, a tare or a label.
    """
    if not lot.gross:
        raise ValueError("no pack was weighed")
    plan, mav = pack_plan(lot.lot_size), maximum_allowable_variation(lot.label, lot.column)
    off, after = _allowances(lot)
    nominal = difference(nominal_gross(lot.label, lot.tares), off)
    errors = package_errors(lot.gross, nominal)
    sd = repeat_sd(errors)
    most = difference(ZERO, total([mav.amount, after]))
    sel = None
    if plan.factor is not None:
        sel = sample_error_limit(sd, plan.factor) + as_double(after)
    beyond = tuple(number for number, error in enumerate(errors) if error < most)
    cited = (*plan.cited, *mav.cited)
    reasons = [
        *_open_reasons(lot, plan, mav),
        *(["over_mav"] if len(beyond) > plan.allowed_over_mav else []),
        *(["mean_short"] if sel is not None and _mean_of(errors) < -sel else []),
    ]
    return PackResult(
        verdict=net_verdict(reasons),
        reasons=tuple(reasons),
        nominal_gross=nominal,
        errors=tuple(errors),
        total_error=total(errors),
        mean_error=mean(errors, PLACES),
        sd=sd,
        sel=sel,
        mav=total([mav.amount, after]),
        beyond_mav=beyond,
        plan=plan,
        cited=cited,
    )


def _allowances(lot: WeighedLot) -> tuple[Decimal, Decimal]:
    """What is taken off the nominal gross weight, and what is added to SEL and MAV."""
    if lot.moisture is None:
        return ZERO, ZERO
    allowance = moisture_allowance(lot.label, lot.moisture)
    return (allowance, ZERO) if lot.moisture.taken == "off_nominal" else (ZERO, allowance)


def _open_reasons(lot: WeighedLot, plan: PackPlan, mav: Limit) -> list[str]:
    """Why a lot may not be decided."""
    weighed = len(lot.gross)
    needed_tares = 0 if plan.tare_count is None else plan.tare_count
    is_coarse = (
        lot.division is not None and lot.division > pack_division(lot.label, lot.column).amount
    )
    return [
        *(["mav_disputed"] if is_disputed(mav.cited) else []),
        *(["scale_too_coarse"] if is_coarse else []),
        *(["too_few_tares"] if len(lot.tares) < needed_tares else []),
        *(["sample_too_large"] if weighed > plan.sample_size else []),
        *(["sample_unfinished"] if weighed < plan.sample_size else []),
    ]


def _mean_of(errors: Sequence[Decimal]) -> float:
    """Mean to compare with a limit that is a double: the sum is exact, nothing is rounded."""
    return as_double(total(errors)) / len(errors)
