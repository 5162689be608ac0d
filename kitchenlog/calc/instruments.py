"""An instrument's sheet: its definition, its checks, and how its readings are to be taken."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypedDict

from kitchenlog.calc.bodies import text_in
from kitchenlog.calc.calibration import Correction
from kitchenlog.calc.checks import CheckResult, cited_in
from kitchenlog.calc.definitions import DefinitionState, definition_state
from kitchenlog.calc.instrument_checks import (
    U_DIGITS,
    CheckedPoint,
    CorrectionLine,
    check_result,
    checked_unit,
    correction_found,
    error_found,
    written_correction,
    written_points,
)
from kitchenlog.calc.numbers import plain, significant
from kitchenlog.calc.record import Fact, Finding, Standing, Was, as_it_stands, finding, settled
from kitchenlog.calc.subjects import id_in

# 1 was the bare definition; 2 had no single repeats, nor the scale that weighed the water.
INSTRUMENT_FOLD = 3


class CitedFigure(TypedDict):
    """A published figure a limit leans on; its basis is shown wherever the limit is."""

    what: str
    source: str
    basis: str
    note: str


class Check(TypedDict):
    """One check as it stands; `says` and `values` make its sentence. `check_scale` is the scale
    the water in a vessel was weighed on."""

    entry: str
    happened_at: str
    on: str
    author: str
    unit: str | None
    verdict: str
    says: str
    values: dict[str, str]
    worst: int | None
    points: list[CheckedPoint]
    bias: str | None
    repeatability: str | None
    hysteresis: str | None
    cited: list[CitedFigure]
    is_adjusted: bool
    check_scale: str | None
    was: list[Was]


class InForce(TypedDict):
    """From `since` until the next row: the line (found by the check `found_by`), and the spread
    of a single reading that a check found, in `unit`."""

    since: str
    check: str
    unit: str | None
    line: CorrectionLine | None
    found_by: str | None
    repeatability: str | None


class InDoubt(TypedDict):
    """Readings after `after` and up to `until` are in doubt because of a failed check; `after`
    is None where it never passed, `until` where nothing has put it right yet. `line` says how
    far it was off."""

    check: str
    failed_at: str
    after: str | None
    until: str | None
    line: CorrectionLine | None


class InstrumentState(DefinitionState):
    """All entries about one instrument, added up. Uses are no entries about it: they are
    counted where they stand."""

    checks: list[Check]
    corrections: list[InForce]
    doubts: list[InDoubt]


class _Made(TypedDict):
    """One check while they are gathered."""

    entry: Standing
    result: CheckResult
    unit: str | None
    line: Correction | None


def instrument_state(subject: str, facts: Sequence[Fact]) -> InstrumentState:
    """Fold all entries about `instrument:<id>`: the definition by the order of the log, the
    checks by when they happened, so that one that arrives late counts from its own time."""
    definition = definition_state(subject, facts)
    record = as_it_stands(facts)
    checks = [
        _made(each, definition)
        for each in record.standing
        if each.kind == "instrument_checked"
        and text_in(each.body, "instrument") == id_in(subject)
    ]
    doubts = _doubts(checks)
    findings = [*definition["findings"], *_failed(checks, doubts)]
    return {
        **definition,
        "findings": settled(findings, record.standing, subject),
        "checks": [_written_check(each) for each in checks],
        "corrections": _corrections(checks),
        "doubts": doubts,
    }


def _made(entry: Standing, definition: DefinitionState) -> _Made:
    fields = definition["fields"]
    sort = text_in(fields, "sort")
    result = check_result(sort, entry.body, fields)
    return _Made(
        entry=entry,
        result=result,
        unit=checked_unit(sort, entry.body),
        line=correction_found(entry.body, result),
    )


def _corrections(checks: Sequence[_Made]) -> list[InForce]:
    """One row for each check that says something about the line or the spread."""
    rows: list[InForce] = []
    line: CorrectionLine | None = None
    found_by: str | None = None
    spread: str | None = None
    unit: str | None = None
    for made in checks:
        entry, asked = made["entry"], text_in(made["entry"].body, "line")
        found = made["result"].repeatability
        decides = made["line"] is not None or asked == "none" or _is_adjusted(entry)
        if not decides and found is None:
            continue
        if decides:
            line = _written(made["line"], made["unit"])
            found_by = None if line is None else entry.id
        if found is not None:
            spread, unit = significant(found, U_DIGITS), made["unit"]
        rows.append(
            InForce(
                since=entry.happened_at,
                check=entry.id,
                unit=unit,
                line=line,
                found_by=found_by,
                repeatability=spread,
            )
        )
    return rows


def _written(line: Correction | None, unit: str | None) -> CorrectionLine | None:
    return None if line is None else written_correction(line, unit)


def _doubts(checks: Sequence[_Made]) -> list[InDoubt]:
    """One row for each failed check: from the last pass before it to what put it right."""
    rows: list[InDoubt] = []
    passed_at: str | None = None
    for number, made in enumerate(checks):
        entry = made["entry"]
        if made["result"].verdict == "failed":
            rows.append(
                InDoubt(
                    check=entry.id,
                    failed_at=entry.happened_at,
                    after=passed_at,
                    until=_put_right(checks[number:]),
                    line=_written(error_found(entry.body, made["result"]), made["unit"]),
                )
            )
        if made["result"].verdict == "fit" or _puts_right(made):
            passed_at = entry.happened_at
    return rows


def _put_right(checks: Sequence[_Made]) -> str | None:
    """When readings can be taken for what they are again: with the failed check itself where it
    was adjusted or a correction was found, else with the next check that is passed."""
    for made in checks:
        if made["result"].verdict == "fit" or _puts_right(made):
            return made["entry"].happened_at
    return None


def _puts_right(made: _Made) -> bool:
    line = _written(made["line"], made["unit"])
    is_corrected = line is not None and line["is_significant"] is True
    return _is_adjusted(made["entry"]) or is_corrected


def _is_adjusted(entry: Standing) -> bool:
    return entry.body.get("is_adjusted") is True


def _failed(checks: Sequence[_Made], doubts: Sequence[InDoubt]) -> list[Finding]:
    made = {each["entry"].id: each for each in checks}
    return [
        finding(
            f"failed:{each['check']}",
            "check_failed",
            entry=each["check"],
            detail={**made[each["check"]]["result"].values, "after": each["after"] or ""},
        )
        for each in doubts
    ]


def _written_check(made: _Made) -> Check:
    entry, result = made["entry"], made["result"]
    spread = result.repeatability
    return Check(
        entry=entry.id,
        happened_at=entry.happened_at,
        on=entry.local_date,
        author=entry.author,
        unit=made["unit"],
        verdict=result.verdict,
        says=result.says,
        values=result.values,
        worst=result.worst,
        points=written_points(result, entry.body),
        bias=None if result.bias is None else plain(result.bias),
        repeatability=None if spread is None else significant(spread, U_DIGITS),
        hysteresis=None if result.hysteresis is None else plain(result.hysteresis),
        cited=[
            CitedFigure(what=c.what, source=c.source, basis=c.basis, note=c.note)
            for c in cited_in(result)
        ],
        is_adjusted=_is_adjusted(entry),
        check_scale=text_in(entry.body, "check_scale"),
        was=list(entry.was),
    )
