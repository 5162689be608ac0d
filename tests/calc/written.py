"""Results as JSON, whole: how vectors write what a check says. Sheets keep a part of it."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from kitchenlog.calc.checks import CheckResult, Point, cited_in
from kitchenlog.calc.limits import leans_on_memory
from kitchenlog.calc.net_batches import BatchResult
from kitchenlog.calc.net_packs import PackResult
from kitchenlog.calc.numbers import plain, significant


def written_pack_result(result: PackResult, digits: int) -> dict[str, Any]:
    """The result as JSON: amounts as plain text, doubles to so many digits."""
    return {
        "verdict": result.verdict,
        "reasons": list(result.reasons),
        "nominal_gross": plain(result.nominal_gross),
        "errors": [plain(each) for each in result.errors],
        "total_error": plain(result.total_error),
        "mean_error": plain(result.mean_error),
        "sd": significant(result.sd, digits),
        "sel": None if result.sel is None else significant(result.sel, digits),
        "mav": plain(result.mav),
        "beyond_mav": list(result.beyond_mav),
        "sample_size": result.plan.sample_size,
        "cited": [asdict(each) for each in result.cited],
        "leans_on_memory": leans_on_memory(result.cited),
    }


def written_batch_result(result: BatchResult, digits: int) -> dict[str, Any]:
    """The result as JSON: amounts as plain text, doubles to so many digits."""
    return {
        "verdict": result.verdict,
        "reasons": list(result.reasons),
        "t": plain(result.t),
        "t1": plain(result.t1),
        "t2": plain(result.t2),
        "below_t1": list(result.below_t1),
        "below_t2": list(result.below_t2),
        "mean": None if result.mean is None else plain(result.mean),
        "sd": significant(result.sd, digits),
        "mean_limit": significant(result.mean_limit, digits),
        "sample_size": result.plan.sample_size,
        "cited": [asdict(each) for each in result.cited],
        "leans_on_memory": leans_on_memory(result.cited),
    }


def written_check(result: CheckResult, digits: int) -> dict[str, Any]:
    """The result as JSON: amounts as plain text, doubts to so many digits."""
    cited = cited_in(result)
    spread = result.repeatability
    return {
        "verdict": result.verdict,
        "says": result.says,
        "values": result.values,
        "worst": result.worst,
        "bias": None if result.bias is None else plain(result.bias),
        "repeatability": None if spread is None else significant(spread, digits),
        "hysteresis": None if result.hysteresis is None else plain(result.hysteresis),
        "points": [_written_point(each, digits) for each in result.points],
        "cited": [asdict(each) for each in cited],
        "leans_on_memory": leans_on_memory(cited),
    }


def _written_point(point: Point, digits: int) -> dict[str, Any]:
    doubt = point.doubt
    return {
        "step": point.step,
        "sort": point.sort,
        "reference": plain(point.reference),
        "error": plain(point.error),
        "u": None if doubt is None else significant(doubt.u, digits),
        "degrees": None if doubt is None else doubt.degrees,
        "limit": None if point.limit is None else plain(point.limit.amount),
        "verdict": point.verdict,
    }
