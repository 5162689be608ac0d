"""Batches of packs under 76/211/EEC Annex I with OIML R 87: the mean, and packs below T1, T2.

Its tables are in net_limits.py, with the basis of each row; a result says where it leans on
memory.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.limits import Cited
from kitchenlog.calc.net_content import PLACES, NetVerdict, net_verdict, package_errors
from kitchenlog.calc.net_limits import (
    BatchPlan,
    BatchRules,
    batch_plan,
    pack_division_eu,
    tolerable_shortage,
)
from kitchenlog.calc.numbers import as_double, difference, total
from kitchenlog.calc.readings import mean, repeat_sd


@dataclass(frozen=True, kw_only=True)
class FilledBatch:
    """Net contents of packs in the order they were taken, g or mL; `nominal` is Qn."""

    nominal: Decimal
    contents: tuple[Decimal, ...]
    batch_size: int
    rules: BatchRules
    is_destructive: bool
    division: Decimal | None


@dataclass(frozen=True, kw_only=True)
class BatchResult:
    """76/211/EEC. T1 = Qn - T, T2 = Qn - 2T; `mean_limit` is Qn - k s."""

    verdict: NetVerdict
    reasons: tuple[str, ...]
    t: Decimal
    t1: Decimal
    t2: Decimal
    below_t1: tuple[int, ...]
    below_t2: tuple[int, ...]
    mean: Decimal | None
    sd: float
    mean_limit: float
    plan: BatchPlan
    cited: tuple[Cited, ...]


def batch_check(batch: FilledBatch) -> BatchResult:
    """Whether a batch passes 76/211/EEC: the mean, the packs below T1, none below T2.

    The first packs taken are the first sample; between accept and reject the second sample
    decides. Not decided before enough packs are measured and with too coarse a scale. Raises
    ValueError where T or the plan is not known.
    """
    plan = batch_plan(batch.batch_size, rules=batch.rules, is_destructive=batch.is_destructive)
    shortage = tolerable_shortage(batch.nominal)
    t1 = difference(batch.nominal, shortage.amount)
    t2 = difference(t1, shortage.amount)
    below_t1 = tuple(n for n, each in enumerate(batch.contents) if each < t1)
    below_t2 = tuple(n for n, each in enumerate(batch.contents) if each < t2)
    for_mean = batch.contents[: plan.mean_sample_size]
    sd = repeat_sd(for_mean)
    slack = sd * as_double(plan.mean_factor)
    cited = (*plan.cited, *shortage.cited)
    reasons = [
        *(["scale_too_coarse"] if _is_coarse(batch.division, batch.nominal) else []),
        *(["below_t2"] if below_t2 else []),
        *_count_reasons(plan, len(batch.contents), below_t1),
        *_mean_reasons(plan, batch, slack),
    ]
    return BatchResult(
        verdict=net_verdict(reasons),
        reasons=tuple(reasons),
        t=shortage.amount,
        t1=t1,
        t2=t2,
        below_t1=below_t1,
        below_t2=below_t2,
        mean=mean(for_mean, PLACES) if for_mean else None,
        sd=sd,
        mean_limit=as_double(batch.nominal) - slack,
        plan=plan,
        cited=cited,
    )


def _mean_of(errors: Sequence[Decimal]) -> float:
    """Mean to compare with a limit that is a double: the sum is exact, nothing is rounded."""
    return as_double(total(errors)) / len(errors)


def _is_coarse(division: Decimal | None, nominal: Decimal) -> bool:
    return division is not None and division > pack_division_eu(nominal).amount


def _count_reasons(plan: BatchPlan, count: int, below_t1: Sequence[int]) -> list[str]:
    """What the number of packs below T1 says; positions tell which sample they came from."""
    accept, reject = plan.accept_at_most, plan.reject_at_least
    if accept is None or reject is None:
        return []
    in_first = len([n for n in below_t1 if n < plan.sample_size])
    if in_first >= reject:
        return ["too_many_below_t1"]
    if count < plan.sample_size:
        return ["sample_unfinished"]
    if in_first <= accept:
        return []
    return _second_reasons(plan, count, below_t1)


def _second_reasons(plan: BatchPlan, count: int, below_t1: Sequence[int]) -> list[str]:
    size, reject = plan.second_cumulative_size, plan.second_reject_at_least
    if size is None or reject is None:
        return []
    if len([n for n in below_t1 if n < size]) >= reject:
        return ["too_many_below_t1"]
    return ["second_sample_needed"] if count < size else []


def _mean_reasons(plan: BatchPlan, batch: FilledBatch, slack: float) -> list[str]:
    if len(batch.contents) < plan.mean_sample_size:
        return ["mean_not_known"]
    measured = batch.contents[: plan.mean_sample_size]
    errors = package_errors(measured, batch.nominal)
    return ["mean_short"] if _mean_of(errors) < -slack else []
