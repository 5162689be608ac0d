"""The time-temperature logs on a batch sheet: results only, the rows stay in the entries."""

from __future__ import annotations

from collections.abc import Sequence

from kitchenlog.calc.bodies import object_in, text_in
from kitchenlog.calc.heat_trust import TrustedHeat, trusted_log
from kitchenlog.calc.record import Finding, Standing, finding
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


def heat_results(
    entries: Sequence[Standing], instruments: Sheets
) -> tuple[list[HeatResult], list[Finding]]:
    """The logs of a batch in business order, and a finding for each that is no pass.

    `instruments` are the sheets of their thermometers, by subject.
    """
    results = [_result(entry, instruments) for entry in entries if entry.kind == "heat_log"]
    findings = [found for each in results if (found := _finding(each)) is not None]
    return results, findings


def _result(entry: Standing, instruments: Sheets) -> HeatResult:
    body = entry.body
    return HeatResult(
        **trusted_log(body, happened_at=entry.happened_at, instruments=instruments),
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
