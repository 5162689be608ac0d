"""The steps of a batch: what was planned, what was read, and whether each check is within."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypedDict

from kitchenlog.calc.bodies import Amount, Body, in_base_unit, items_in, object_in, text_in
from kitchenlog.calc.brine import Strength
from kitchenlog.calc.numbers import ONE, as_double, difference, plain, significant
from kitchenlog.calc.readings import Doubt
from kitchenlog.calc.record import Finding, Standing, finding
from kitchenlog.calc.step_values import StepValue, step_value, value_verdict
from kitchenlog.calc.trusted import (
    Sheets,
    Trust,
    TrustedReading,
    meant,
    trusted_reading,
    written_trust,
)
from kitchenlog.calc.units import in_base
from kitchenlog.calc.weighing import in_unit, scaled_doubt, weighing_of

U_DIGITS = 3  # a standard uncertainty is shown and kept to three significant digits


class Figure(TypedDict):
    """A published figure a value leans on."""

    what: str
    source: str
    basis: str
    note: str


class Computed(TypedDict):
    """What was worked out from a reading or a titration, or from what was weighed in; `value`
    is None where that cannot be told. `table` is the printed one, or the scale."""

    how: str
    value: str | None
    unit: str | None
    u: str | None
    table: str | None
    cited: list[Figure]


class Done(TypedDict):
    """A step carried out; `value` as it was read, in `unit`, and `u` of what it stands for;
    None where it measures another thing or nothing. The verdict is about what was `computed`,
    else about the corrected value."""

    entry: str
    value: str | None
    unit: str | None
    u: str | None
    computed: Computed | None
    verdict: str | None
    instrument: str | None
    trust: Trust
    action: str | None
    happened_at: str
    author: str


class Counted(TypedDict):
    """How much of a line counts as the salt or sugar that is worked out."""

    line: str
    percent: str


class Step(TypedDict):
    """One step with its limits and all times it was done, in business order."""

    step: str
    says: str | None
    measures: str | None
    line: str | None
    acid: str | None
    counts: list[Counted]
    minutes: str | None
    unit: str | None
    low: str | None
    high: str | None
    level: str | None
    set_by: str | None
    caution: str | None
    done: list[Done]


@dataclass(kw_only=True)
class StepWork:
    """A step while its entries are gathered."""

    step: str
    plan: Body
    done: list[Standing] = field(default_factory=list)
    readings: list[TrustedReading | None] = field(default_factory=list)  # one a time done
    strength: Strength | None = None  # of what was weighed in, where the step asks for it


@dataclass(frozen=True, kw_only=True)
class Mass:
    """A mass in g that a step measured, and its doubt in g."""

    amount: Amount
    doubt: Doubt | None


def gathered_steps(
    plan: Sequence[Body], entries: Sequence[Standing], instruments: Sheets
) -> list[StepWork]:
    """The planned steps in the recipe's order, then those only the entries name.

    `instruments` are the sheets of those that were read, by subject.
    """
    works: dict[str, StepWork] = {}
    for each in plan:
        step = text_in(each, "step") or ""
        works.setdefault(step, StepWork(step=step, plan=each))
    for entry in entries:
        named = text_in(entry.body, "step")
        if named is not None and entry.kind == "step_done":
            work = works.setdefault(named, StepWork(step=named, plan={}))
            work.done.append(entry)
            at = entry.happened_at
            work.readings.append(
                trusted_reading(entry.body, happened_at=at, instruments=instruments)
            )
    return list(works.values())


def measured_mass(works: Sequence[StepWork], measures: str, line: str | None) -> Mass | None:
    """The last mass read in a step that measures this (of this line); the last, because a
    kettle that is not done yet is weighed again."""
    masses = [
        mass
        for work in works
        if text_in(work.plan, "measures") == measures and text_in(work.plan, "line") == line
        for entry in work.done
        if (mass := _mass(entry)) is not None
    ]
    return masses[-1] if masses else None


def written_step(work: StepWork) -> tuple[Step, list[Finding]]:
    """A step as its sheet shows it, and the checks that failed or that the instrument could not
    decide: the first of each, also where a later reading was within."""
    plan = work.plan
    done = [
        _written_done(work, entry, reading)
        for entry, reading in zip(work.done, work.readings, strict=True)
    ]
    step = Step(
        step=work.step,
        says=text_in(plan, "says"),
        measures=text_in(plan, "measures"),
        line=text_in(plan, "line"),
        acid=text_in(plan, "acid"),
        counts=[
            Counted(line=text_in(each, "line") or "", percent=text_in(each, "percent") or "0")
            for each in items_in(plan, "counts")
        ],
        minutes=text_in(plan, "minutes"),
        unit=text_in(plan, "unit"),
        low=text_in(plan, "low"),
        high=text_in(plan, "high"),
        level=text_in(plan, "level"),
        set_by=text_in(plan, "set_by"),
        caution=text_in(plan, "caution"),
        done=done,
    )
    return step, _step_findings(work, done)


def step_if_moved(work: StepWork, number: int) -> str | None:
    """The verdict of one reading of a step if the error a failed check found counted."""
    trusted, body = work.readings[number], work.done[number].body
    if trusted is None:
        return None
    moved = step_value(work.plan, body, trusted, strength=work.strength, is_moved=True)
    return value_verdict(work.plan, moved)


def step_verdict(
    work: StepWork, body: Body, *, happened_at: str, instruments: Sheets
) -> str | None:
    """The verdict of any body a step was done with, in force or not."""
    trusted = trusted_reading(body, happened_at=happened_at, instruments=instruments)
    return value_verdict(
        work.plan, step_value(work.plan, body, trusted, strength=work.strength)
    )


def _written_done(work: StepWork, entry: Standing, trusted: TrustedReading | None) -> Done:
    found = step_value(work.plan, entry.body, trusted, strength=work.strength)
    raw = None if found is None else found.raw
    unit = text_in(work.plan, "unit") if raw is None else raw.unit
    stands_for = None if trusted is None else in_unit(meant(trusted), unit)
    doubt = None if stands_for is None else stands_for.doubt
    return Done(
        entry=entry.id,
        value=None if raw is None else plain(raw.net),
        unit=None if raw is None else raw.unit,
        u=None if doubt is None else significant(doubt.u, U_DIGITS),
        computed=_written_computed(found),
        verdict=value_verdict(work.plan, found),
        instrument=text_in(object_in(entry.body, "reading") or {}, "instrument"),
        trust=_trust_in(unit, trusted),
        action=text_in(entry.body, "action"),
        happened_at=entry.happened_at,
        author=entry.author,
    )


def _written_computed(found: StepValue | None) -> Computed | None:
    if found is None or found.how == "read":
        return None
    value = found.value
    doubt = None if value is None else value.doubt
    return Computed(
        how=found.how,
        value=None if value is None else plain(value.net),
        unit=None if value is None else value.unit,
        u=None if doubt is None else significant(doubt.u, U_DIGITS),
        table=found.table,
        cited=[
            Figure(what=each.what, source=each.source, basis=each.basis, note=each.note)
            for each in found.cited
        ],
    )


def _trust_in(unit: str | None, trusted: TrustedReading | None) -> Trust:
    """The trust of a reading with its figures in the unit of the step."""
    written = written_trust(trusted)
    if trusted is None:
        return written
    now, moved = (in_unit(meant(trusted, is_moved=each), unit) for each in (False, True))
    if now is None or moved is None:
        return {**written, "corrected": None, "moves": None}
    return {
        **written,
        "corrected": None if trusted.found_by is None else plain(now.net),
        "moves": None if trusted.moves is None else plain(difference(moved.net, now.net)),
    }


def _mass(entry: Standing) -> Mass | None:
    weighing = weighing_of(entry.body)
    amount = None if weighing is None else in_base_unit(weighing.net, weighing.unit)
    if weighing is None or amount is None or amount.unit != "g":
        return None
    factor = as_double(in_base(ONE, weighing.unit))
    return Mass(amount=amount, doubt=scaled_doubt(weighing.doubt, factor))


_SAYS = {"outside": "step_outside", "cannot_tell": "step_cannot_tell"}


def _step_findings(work: StepWork, done: Sequence[Done]) -> list[Finding]:
    findings = [
        finding(f"unit:{each['entry']}", "unit", entry=each["entry"])
        for entry, each in zip(work.done, done, strict=True)
        if each["value"] is None and weighing_of(entry.body) is not None
    ]
    for says, what in _SAYS.items():
        first = next((each for each in done if each["verdict"] == says), None)
        if first is not None:
            key, detail = f"{what}:{work.step}", {"step": work.step}
            findings.append(finding(key, what, entry=first["entry"], detail=detail))
    return findings
