"""A batch sheet: what was planned, what went in and came out, and where the mass went."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypedDict

from kitchenlog.calc.batch_balance import Balance, batch_balance
from kitchenlog.calc.batch_doubts import failed_instruments
from kitchenlog.calc.batch_holds import failed_checks
from kitchenlog.calc.batch_lines import Line, LineWork, gathered_lines, written_line
from kitchenlog.calc.batch_output import (
    Loss,
    LotIn,
    LotOut,
    Output,
    lots_in,
    lots_out,
    written_loss,
    written_output,
)
from kitchenlog.calc.batch_steps import (
    Step,
    StepWork,
    gathered_steps,
    measured_mass,
    written_step,
)
from kitchenlog.calc.batch_strength import step_strength
from kitchenlog.calc.bodies import (
    Quantity,
    decimal_in,
    items_in,
    quantity_in,
    text_in,
)
from kitchenlog.calc.heat_holds import batch_heat
from kitchenlog.calc.heat_results import HeatResult
from kitchenlog.calc.holds import Hold, decided_findings, held_findings, hold_state
from kitchenlog.calc.record import (
    Fact,
    Finding,
    Note,
    Standing,
    as_it_stands,
    finding,
    notes_about,
    settled,
)
from kitchenlog.calc.subjects import id_in
from kitchenlog.calc.trusted import NOTHING_BESIDE, Sheets

# 1 knew no checks of instruments, 2 no logs of temperature, 3 no holds, 4 took logs as read,
# 5 held nothing back for them.
BATCH_FOLD = 6


class BatchHead(TypedDict):
    """What its start and its finish say of a batch."""

    batch: str
    code: str | None
    recipe: str | None
    recipe_version: str | None
    product: str | None
    place: str | None
    started_on: str | None
    started_at: str | None
    author: str | None
    is_finished: bool
    finished_at: str | None
    makes: Quantity | None
    scaled_by: str | None
    pack_net: Quantity | None


class BatchState(BatchHead):
    """All entries about one batch, added up."""

    lines: list[Line]
    steps: list[Step]
    heat: list[HeatResult]
    outputs: list[Output]
    losses: list[Loss]
    lots_in: list[LotIn]
    lots_out: list[LotOut]
    balance: Balance
    hold: Hold | None  # None where nothing was ever held or decided
    findings: list[Finding]
    notes: list[Note]


def batch_state(
    subject: str,
    facts: Sequence[Fact],
    beside: Sheets = NOTHING_BESIDE,
) -> BatchState:
    """Fold all entries about `batch:<id>`; without its start it shows what is known.

    `beside` holds the sheets of the instruments its readings lean on, by subject.
    """
    batch = id_in(subject)
    record = as_it_stands(facts)
    entries = [each for each in record.standing if text_in(each.body, "batch") == batch]
    starts = [each for each in entries if each.kind == "batch_started"]
    plan = starts[0].body if starts else {}
    steps = gathered_steps(items_in(plan, "steps"), entries, beside)
    lines = gathered_lines(items_in(plan, "lines"), entries, beside)
    for work in lines:
        _note_preparation(work, steps)
    for step in steps:
        step.strength = step_strength(step, lines)
    heat = batch_heat(facts, entries, batch, beside)
    checks = [*failed_checks(steps, facts, batch, beside), *heat.causes]
    hold = hold_state(subject, facts, record.standing, checks)
    written_lines = [written_line(work) for work in lines]
    written_steps = [written_step(work) for work in steps]
    balance, too_much = batch_balance(
        lines, steps, entries, target_percent=decimal_in(plan, "target_solids_percent")
    )
    findings = [*record.findings, *_start_findings(starts, entries), *too_much]
    for _, found in (*written_lines, *written_steps):
        findings.extend(found)
    findings.extend(
        [
            *heat.findings,
            *failed_instruments(lines, steps, heat.results),
            *held_findings(hold),
        ]
    )
    return {
        **_head(batch, starts, entries),
        "lines": [line for line, _ in written_lines],
        "steps": [step for step, _ in written_steps],
        "heat": heat.results,
        "outputs": [written_output(each) for each in entries if each.kind == "output"],
        "losses": [written_loss(each) for each in entries if each.kind == "loss"],
        "lots_in": lots_in(entries),
        "lots_out": lots_out(entries),
        "balance": balance,
        "hold": hold if hold["causes"] or hold["decisions"] else None,
        "findings": decided_findings(settled(findings, record.standing, subject), hold),
        "notes": notes_about(record.standing, subject),
    }


def _head(batch: str, starts: Sequence[Standing], entries: Sequence[Standing]) -> BatchHead:
    start = starts[0] if starts else None
    plan = {} if start is None else start.body
    finishes = [each for each in entries if each.kind == "batch_finished"]
    return BatchHead(
        batch=batch,
        code=text_in(plan, "code"),
        recipe=text_in(plan, "recipe"),
        recipe_version=text_in(plan, "recipe_version"),
        product=text_in(plan, "product"),
        place=text_in(plan, "place"),
        started_on=None if start is None else start.local_date,
        started_at=None if start is None else start.happened_at,
        author=None if start is None else start.author,
        is_finished=bool(finishes),
        finished_at=finishes[-1].happened_at if finishes else None,
        makes=quantity_in(plan, "makes"),
        scaled_by=text_in(plan, "scaled_by"),
        pack_net=quantity_in(plan, "pack_net"),
    )


def _note_preparation(work: LineWork, steps: Sequence[StepWork]) -> None:
    """A line that a step weighs after preparation enters the kettle as prepared."""
    work.prepared = measured_mass(steps, "prepared_mass", work.line)
    work.is_prepared = work.is_prepared or any(
        text_in(step.plan, "measures") == "prepared_mass"
        and text_in(step.plan, "line") == work.line
        for step in steps
    )


def _start_findings(starts: Sequence[Standing], entries: Sequence[Standing]) -> list[Finding]:
    if entries and not starts:
        return [finding("not_started", "not_started", entry=entries[0].id)]
    if len(starts) > 1:
        return [finding("two_starts", "two_starts", entry=starts[1].id)]
    return []
