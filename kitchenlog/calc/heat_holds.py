"""Which logs of time and temperature keep a batch back: those that failed, and those that prove
nothing.

A log that is not at its end keeps nothing back: its time is not over, and corrected to the
whole log it may well pass. What once was a cause would stay one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kitchenlog.calc.bodies import text_in
from kitchenlog.calc.cooling import HeatVerdict
from kitchenlog.calc.heat_results import HeatResult, JudgedLog, heat_results, judged_logs
from kitchenlog.calc.holds import Cause
from kitchenlog.calc.record import Fact, Finding, Standing
from kitchenlog.calc.trusted import Sheets

_FAILED: tuple[HeatVerdict | None, ...] = ("fail", "not_proven")  # the graver first


@dataclass(frozen=True, kw_only=True)
class BatchHeat:
    """What the logs of a batch come to: results, what to look at, what keeps the batch back."""

    results: list[HeatResult]
    findings: list[Finding]
    causes: list[Cause]


def batch_heat(
    facts: Sequence[Fact], entries: Sequence[Standing], batch: str, instruments: Sheets
) -> BatchHeat:
    """All about the logs among the facts of a batch. `entries` are those that stand, in
    business order; `instruments` are the sheets of thermometers, by subject."""
    logs = judged_logs(facts, entries, batch, instruments)
    results, findings = heat_results(entries, logs)
    return BatchHeat(results=results, findings=findings, causes=failed_logs(logs))


def failed_logs(logs: Sequence[JudgedLog]) -> list[Cause]:
    """One cause for each log that failed or proved nothing, as it was kept or as it was
    corrected to; where it did both the graver counts."""
    failed: dict[str, JudgedLog] = {}
    for log in logs:
        known = failed.get(log.written.root)
        if _is_failed(log) and (known is None or _gravity(log) < _gravity(known)):
            failed[log.written.root] = log
    in_force = {log.written.root: log for log in logs if log.entry is not None}
    return [_cause(log, in_force.get(root)) for root, log in failed.items()]


def _is_failed(log: JudgedLog) -> bool:
    return log.comes_to["verdict"] in _FAILED


def _gravity(log: JudgedLog) -> int:
    """0 is the graver."""
    return _FAILED.index(log.comes_to["verdict"])


def _cause(failed: JudgedLog, now: JudgedLog | None) -> Cause:
    written = failed.written
    return Cause(
        entry=written.root,
        what=failed.comes_to["verdict"] or "",
        because="check",
        step=text_in(written.body, "step"),
        judged_by=failed.comes_to["by"],
        reason=None if now is None else text_in(now.written.body, "action"),
        at=written.fact.happened_at,
        author=written.fact.author,
        stands=now is not None and _is_failed(now),
        decided=None,
        decided_by=None,
    )
