"""The time-temperature logs on a batch sheet: results only, the rows stay in the entries."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kitchenlog.calc.bodies import object_in, text_in
from kitchenlog.calc.heat_trust import TrustedHeat, trusted_log
from kitchenlog.calc.holds import Written, ever_written
from kitchenlog.calc.record import Fact, Finding, Standing, finding
from kitchenlog.calc.trusted import Sheets


class HeatResult(TrustedHeat):
    """The result of one log on a batch sheet, with where it came from."""

    entry: str
    step: str | None
    instrument: str | None
    came_by: str | None
    unit: str | None
    began_at: str | None
    set_by: str | None
    action: str | None
    happened_at: str
    author: str


@dataclass(frozen=True, kw_only=True)
class JudgedLog:
    """A body a log has or once had, and what it comes to; `entry` is the log as it stands where
    this body is the one in force."""

    written: Written
    comes_to: TrustedHeat
    entry: Standing | None


def judged_logs(
    facts: Sequence[Fact], entries: Sequence[Standing], batch: str, instruments: Sheets
) -> list[JudgedLog]:
    """Every body the logs of a batch have or once had, each judged once, for its rows may be
    ten thousand. `entries` are those that stand; `instruments` are the sheets of thermometers,
    by subject."""
    in_force = {_writer(each): each for each in entries if each.kind == "heat_log"}
    return [
        JudgedLog(
            written=written,
            comes_to=trusted_log(
                written.body, happened_at=written.fact.happened_at, instruments=instruments
            ),
            entry=in_force.get(written.by),
        )
        for written in ever_written(facts, "heat_log")
        if text_in(written.body, "batch") == batch
    ]


def heat_results(
    entries: Sequence[Standing], logs: Sequence[JudgedLog]
) -> tuple[list[HeatResult], list[Finding]]:
    """The logs of a batch as they stand, in the order of `entries`, and a finding for each that
    is no pass."""
    judged = {log.entry.id: log.comes_to for log in logs if log.entry is not None}
    results = [_result(each, judged[each.id]) for each in entries if each.id in judged]
    findings = [found for each in results if (found := _finding(each)) is not None]
    return results, findings


def _writer(entry: Standing) -> str:
    """What wrote the body in force: the last correction applied, else the entry itself."""
    return entry.was[-1]["entry"] if entry.was else entry.id


def _result(entry: Standing, comes_to: TrustedHeat) -> HeatResult:
    body = entry.body
    return HeatResult(
        **comes_to,
        entry=entry.id,
        step=text_in(body, "step"),
        instrument=text_in(body, "instrument"),
        came_by=text_in(body, "came_by"),
        unit=text_in(body, "unit"),
        began_at=text_in(body, "began_at"),
        set_by=text_in(object_in(body, "judged") or {}, "set_by"),
        action=text_in(body, "action"),
        happened_at=entry.happened_at,
        author=entry.author,
    )


def _finding(result: HeatResult) -> Finding | None:
    if result["rows"] is None:
        what = "heat_unreadable"
    elif result["verdict"] in (None, "pass"):
        return None
    else:
        what = "heat_failed" if result["verdict"] == "fail" else "heat_not_proven"
    entry, step = result["entry"], result["step"]
    detail = {"by": result["by"] or "", **({} if step is None else {"step": step})}
    return finding(f"{what}:{entry}", what, entry=entry, detail=detail)
