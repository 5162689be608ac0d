"""The steps of a batch: what was planned, what was read, and whether each check is within."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypedDict

from kitchenlog.calc.bodies import Amount, Body, decimal_in, in_base_unit, object_in, text_in
from kitchenlog.calc.numbers import ONE, as_double, difference, plain, significant
from kitchenlog.calc.readings import Doubt, verdict
from kitchenlog.calc.record import Finding, Standing, finding
from kitchenlog.calc.trusted import (
    Sheets,
    Trust,
    TrustedReading,
    meant,
    trusted_reading,
    written_trust,
)
from kitchenlog.calc.units import in_base
from kitchenlog.calc.weighing import Weighing, in_unit, scaled_doubt, weighing_of

U_DIGITS = 3  # a standard uncertainty is shown and kept to three significant digits


class Done(TypedDict):
    """A step carried out; `value` as it was read and `u` in the step's unit, None where it
    measures another thing or nothing. The verdict is about the corrected value."""

    entry: str
    value: str | None
    u: str | None
    verdict: str | None
    instrument: str | None
    trust: Trust
    action: str | None
    happened_at: str
    author: str


class Step(TypedDict):
    """One step with its limits and all times it was done, in business order."""

    step: str
    says: str | None
    measures: str | None
    line: str | None
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
        _written_done(plan, entry, reading)
        for entry, reading in zip(work.done, work.readings, strict=True)
    ]
    step = Step(
        step=work.step,
        says=text_in(plan, "says"),
        measures=text_in(plan, "measures"),
        line=text_in(plan, "line"),
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
    trusted = work.readings[number]
    return None if trusted is None else _verdict(work.plan, meant(trusted, is_moved=True))


def _verdict(plan: Body, weighing: Weighing) -> str | None:
    read = in_unit(weighing, text_in(plan, "unit"))
    if read is None:
        return None
    low, high = decimal_in(plan, "low"), decimal_in(plan, "high")
    level = decimal_in(plan, "level")
    return verdict(read.net, low=low, high=high, doubt=read.doubt, level=level)


def _written_done(plan: Body, entry: Standing, trusted: TrustedReading | None) -> Done:
    unit = text_in(plan, "unit")
    read = None if trusted is None else in_unit(trusted.read, unit)
    stands_for = None if trusted is None else in_unit(meant(trusted), unit)
    doubt = None if stands_for is None else stands_for.doubt
    return Done(
        entry=entry.id,
        value=None if read is None else plain(read.net),
        u=None if doubt is None else significant(doubt.u, U_DIGITS),
        verdict=None if trusted is None else _verdict(plan, meant(trusted)),
        instrument=text_in(object_in(entry.body, "reading") or {}, "instrument"),
        trust=_trust_in(unit, trusted),
        action=text_in(entry.body, "action"),
        happened_at=entry.happened_at,
        author=entry.author,
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
