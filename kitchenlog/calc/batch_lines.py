"""The lines of a batch: what was planned, laid out, weighed in, and whether it is within."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypedDict

from kitchenlog.calc.batch_steps import U_DIGITS, Mass
from kitchenlog.calc.bodies import (
    Amount,
    Body,
    Quantity,
    amount_in,
    decimal_in,
    in_base_unit,
    items_in,
    object_in,
    quantity_in,
    sum_of,
    text_in,
)
from kitchenlog.calc.numbers import ONE, as_double, difference, plain, significant, total
from kitchenlog.calc.readings import Doubt, verdict
from kitchenlog.calc.record import Finding, Standing, Was, finding
from kitchenlog.calc.trusted import (
    Sheets,
    Trust,
    TrustedReading,
    meant,
    trusted_reading,
    written_trust,
)
from kitchenlog.calc.units import in_base
from kitchenlog.calc.weighing import Weighing, scaled_doubt, sum_doubt, weighed, weighing_of


class WeighIn(TypedDict):
    """One weigh-in as it stands, in the unit it was read in, with the corrections applied."""

    entry: str
    lot: str | None
    net: str | None
    unit: str | None
    u: str | None
    instrument: str | None
    shown: str | None
    tare: str | None
    trust: Trust
    happened_at: str
    author: str
    was: list[Was]


class Yields(TypedDict):
    """What is left of 100 as bought, by whom (table, own, typed), and as what."""

    percent: str | None
    by: str | None
    source: str | None
    prepared_as: str | None


class Line(TypedDict):
    """One line; `in_base`, `corrected` and `u` in `unit`, which is g, mL or pc.

    `in_base` adds up what was read; `corrected`, which the verdict is about, is None where no
    correction was in force.
    """

    line: str
    material: str | None
    planned: Quantity | None
    below: str | None
    above: str | None
    level: str | None
    soluble_percent: str | None
    state: str | None
    yields: Yields | None
    laid_out: list[str]
    in_base: str | None
    corrected: str | None
    unit: str | None
    u: str | None
    verdict: str | None
    prepared: str | None
    weigh_ins: list[WeighIn]


@dataclass(kw_only=True)
class LineWork:
    """A line while its entries are gathered."""

    line: str
    plan: Body
    unit: str | None
    weigh_ins: list[Standing] = field(default_factory=list)
    readings: list[TrustedReading | None] = field(default_factory=list)  # one a weigh-in
    laid_out: list[str] = field(default_factory=list)
    prepared: Mass | None = None  # as a step measured it
    is_prepared: bool = False  # a step or a loss says that it is prepared before the kettle


@dataclass(frozen=True, kw_only=True)
class LineSum:
    """What went in on one line; None where nothing was weighed or a unit does not fit."""

    amount: Amount | None
    doubt: Doubt | None


def gathered_lines(
    plan: Sequence[Body], entries: Sequence[Standing], instruments: Sheets
) -> list[LineWork]:
    """The planned lines in the recipe's order, then those only the entries name.

    `instruments` are the sheets of those that were read, by subject.
    """
    works: dict[str, LineWork] = {}
    for each in plan:
        line = text_in(each, "line") or ""
        amount = amount_in(each, "amount")
        unit = None if amount is None else amount.unit
        works.setdefault(line, LineWork(line=line, plan=each, unit=unit))
    for entry in entries:
        named = text_in(entry.body, "line")
        if named is None or entry.kind not in ("weigh_in", "laid_out", "loss"):
            continue
        work = works.setdefault(named, LineWork(line=named, plan={}, unit=None))
        if entry.kind == "weigh_in":
            _weigh_in(work, entry, instruments)
        elif entry.kind == "laid_out":
            _lay_out(work, entry)
        elif text_in(entry.body, "stage") == "preparation":
            work.is_prepared = True
    return list(works.values())


def line_sum(work: LineWork) -> LineSum:
    """The net sum of a line in its base unit, and its doubt: variances add."""
    amount = sum_of(_fitting(work, entry) for entry in work.weigh_ins)
    if amount is None:
        return LineSum(amount=None, doubt=None)
    return LineSum(
        amount=amount, doubt=sum_doubt([_base_doubt(entry) for entry in work.weigh_ins])
    )


def written_line(work: LineWork) -> tuple[Line, list[Finding]]:
    """A line as its sheet shows it, and what a person should look at."""
    amount, plan = line_sum(work).amount, work.plan
    put_in = line_put_in(work)
    says = None if put_in.amount is None else _verdict(plan, put_in.amount, put_in.doubt)
    line = Line(
        line=work.line,
        material=text_in(plan, "material") or _first_material(work.weigh_ins),
        planned=quantity_in(plan, "amount"),
        below=text_in(plan, "below"),
        above=text_in(plan, "above"),
        level=text_in(plan, "level"),
        soluble_percent=text_in(plan, "soluble_percent"),
        state=text_in(plan, "state"),
        yields=_yields(plan),
        laid_out=work.laid_out,
        in_base=None if amount is None else plain(amount.value),
        corrected=_corrected_sum(work, put_in),
        unit=work.unit if amount is None else amount.unit,
        u=None if put_in.doubt is None else significant(put_in.doubt.u, U_DIGITS),
        verdict=says,
        prepared=None if work.prepared is None else plain(work.prepared.amount.value),
        weigh_ins=[
            _written_weigh_in(entry, reading)
            for entry, reading in zip(work.weigh_ins, work.readings, strict=True)
        ],
    )
    return line, _line_findings(work, says)


def _yields(plan: Body) -> Yields | None:
    said = object_in(plan, "yields")
    if said is None:
        return None
    return Yields(
        percent=text_in(said, "percent"),
        by=text_in(said, "by"),
        source=text_in(said, "source"),
        prepared_as=text_in(said, "prepared_as"),
    )


def line_if_moved(work: LineWork) -> str | None:
    """The verdict of a line if the errors that failed checks found counted."""
    put_in = line_put_in(work, is_moved=True)
    return None if put_in.amount is None else _verdict(work.plan, put_in.amount, put_in.doubt)


def _corrected_sum(work: LineWork, put_in: LineSum) -> str | None:
    is_corrected = any(each is not None and each.found_by for each in work.readings)
    return plain(put_in.amount.value) if put_in.amount is not None and is_corrected else None


def line_put_in(work: LineWork, *, is_moved: bool = False) -> LineSum:
    """What the readings of a line stand for: corrected where a correction was in force."""
    if line_sum(work).amount is None:
        return LineSum(amount=None, doubt=None)
    stands = [meant(each, is_moved=is_moved) for each in work.readings if each is not None]
    return LineSum(
        amount=sum_of(in_base_unit(each.net, each.unit) for each in stands),
        doubt=sum_doubt([_in_base_doubt(each) for each in stands]),
    )


def _weigh_in(work: LineWork, entry: Standing, instruments: Sheets) -> None:
    """A line without a plan takes the dimension of its first weigh-in."""
    work.weigh_ins.append(entry)
    work.readings.append(
        trusted_reading(entry.body, happened_at=entry.happened_at, instruments=instruments)
    )
    amount = weighed(entry.body)
    if work.unit is None and amount is not None:
        work.unit = amount.unit


def _lay_out(work: LineWork, entry: Standing) -> None:
    for each in items_in(entry.body, "lots"):
        lot = text_in(each, "lot")
        if lot is not None and lot not in work.laid_out:
            work.laid_out.append(lot)


def _fitting(work: LineWork, entry: Standing) -> Amount | None:
    """The net amount where its unit measures what the line is planned in."""
    amount = weighed(entry.body)
    return amount if amount is not None and amount.unit == work.unit else None


def _base_doubt(entry: Standing) -> Doubt | None:
    weighing = weighing_of(entry.body)
    return None if weighing is None else _in_base_doubt(weighing)


def _in_base_doubt(weighing: Weighing) -> Doubt | None:
    return scaled_doubt(weighing.doubt, as_double(in_base(ONE, weighing.unit)))


def _verdict(plan: Body, amount: Amount, doubt: Doubt | None) -> str | None:
    planned = amount_in(plan, "amount")
    unit = text_in(object_in(plan, "amount") or {}, "unit")
    below = in_base_unit(decimal_in(plan, "below"), unit)
    above = in_base_unit(decimal_in(plan, "above"), unit)
    if planned is None:
        return None
    low = None if below is None else difference(planned.value, below.value)
    high = None if above is None else total([planned.value, above.value])
    level = decimal_in(plan, "level")
    return verdict(amount.value, low=low, high=high, doubt=doubt, level=level)


def _first_material(weigh_ins: Sequence[Standing]) -> str | None:
    return next((text_in(entry.body, "material") for entry in weigh_ins), None)


def _written_weigh_in(entry: Standing, trusted: TrustedReading | None) -> WeighIn:
    reading = object_in(entry.body, "reading") or {}
    doubt = None if trusted is None else trusted.doubt
    return WeighIn(
        entry=entry.id,
        lot=text_in(entry.body, "lot"),
        net=None if trusted is None else plain(trusted.read.net),
        unit=None if trusted is None else trusted.read.unit,
        u=None if doubt is None else significant(doubt.u, U_DIGITS),
        instrument=text_in(reading, "instrument"),
        shown=text_in(reading, "shown"),
        tare=text_in(reading, "tare"),
        trust=written_trust(trusted),
        happened_at=entry.happened_at,
        author=entry.author,
        was=list(entry.was),
    )


def _line_findings(work: LineWork, says: str | None) -> list[Finding]:
    findings = [
        finding(f"unit:{entry.id}", "unit", entry=entry.id)
        for entry in work.weigh_ins
        if _fitting(work, entry) is None
    ]
    if says in ("outside", "cannot_tell"):
        last = work.weigh_ins[-1].id
        detail = {"line": work.line}
        findings.append(finding(f"{says}:{work.line}", says, entry=last, detail=detail))
    return findings
