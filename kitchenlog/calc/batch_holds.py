"""Which readings of a batch's steps keep it back: those outside a limit of the process, and
those where the instrument could not tell."""

from __future__ import annotations

from collections.abc import Sequence

from kitchenlog.calc.batch_steps import StepWork, step_verdict
from kitchenlog.calc.bodies import text_in
from kitchenlog.calc.holds import Cause, Written, ever_written
from kitchenlog.calc.record import Fact
from kitchenlog.calc.trusted import Sheets

# A mass is cooked or filled on until it is right: it says what is yielded, not what is fit.
_MASSES = ("prepared_mass", "kettle_mass", "mass")
_FAILED = ("outside", "cannot_tell")  # the graver first


def failed_checks(
    steps: Sequence[StepWork], facts: Sequence[Fact], batch: str, instruments: Sheets
) -> list[Cause]:
    """One cause for each reading that failed its check, as it was first read or as it was
    corrected to; where it failed in both ways the graver counts."""
    works = {work.step: work for work in steps}
    failed: dict[str, Cause] = {}
    for written in ever_written(facts, "step_done"):
        work = works.get(text_in(written.body, "step") or "")
        if work is None or text_in(written.body, "batch") != batch:
            continue
        if text_in(work.plan, "measures") in _MASSES:
            continue
        at = written.fact.happened_at
        says = step_verdict(work, written.body, happened_at=at, instruments=instruments)
        if says is None or says not in _FAILED:
            continue
        known = failed.get(written.root)
        if known is None or _FAILED.index(says) < _FAILED.index(known["what"]):
            failed[written.root] = _cause(work, written, says, instruments)
    return list(failed.values())


def _cause(work: StepWork, written: Written, says: str, instruments: Sheets) -> Cause:
    at = written.fact.happened_at
    now = next((entry for entry in work.done if entry.id == written.root), None)
    verdict_now = (
        None
        if now is None
        else step_verdict(work, now.body, happened_at=at, instruments=instruments)
    )
    return Cause(
        entry=written.root,
        what=says,
        because="check",
        step=work.step,
        judged_by=None,
        reason=None if now is None else text_in(now.body, "action"),
        at=at,
        author=written.fact.author,
        stands=verdict_now in _FAILED,
        decided=None,
        decided_by=None,
    )
