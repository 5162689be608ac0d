"""What leaned on an instrument whose check failed: batches, fills, lots, who has them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, NotRequired, TypedDict
from uuid import UUID

from kitchenlog.calc.bodies import decimal_in
from kitchenlog.calc.instruments import InDoubt
from kitchenlog.calc.numbers import ZERO, plain, total
from kitchenlog.calc.subjects import id_in, type_in
from kitchenlog.calc.trace import WALKED, Edge
from kitchenlog.entries.rights import Eyes
from kitchenlog.logbook.selectors import (
    stale_marks,
    stale_subjects,
    states_of,
    subjects_with_sheet,
)
from kitchenlog.tracing.doubtful import DoubtfulReading, read_elsewhere
from kitchenlog.tracing.labels import labels_of
from kitchenlog.tracing.models import Touched as TouchedRow
from kitchenlog.tracing.selectors import edges_from

_ENDS = ("recipient", "day")


class Touched(TypedDict):
    """A batch with readings, or a lot with fill checks, in question: how many, and which
    verdicts would change, as in its finding: `line:was:would_be`."""

    subject: str
    code: str | None
    material: str | None
    readings: int
    would_change: list[str]


class OfLot(TypedDict):
    """How much of one lot."""

    lot: str
    amount: str


class Reached(TypedDict):
    """A recipient or a stall's day that packs of such a batch went to, in one unit."""

    id: str
    label: NotRequired[str]
    amount: str
    unit: str | None
    lots: list[OfLot]


class Impact(TypedDict):
    """Everything that leaned on the instrument from its last pass on, but for the readings
    themselves, of which there may be thousands (readings_page). `lots` are all that hold some
    of what was measured, `missing` those whose own record has not come yet; `elsewhere` was
    read where no lot comes of it. While `is_adding_up` sheets are behind; there may be more."""

    instrument: str
    check: str
    failed_at: str | None
    after: str | None
    until: str | None
    readings: int
    touched: list[Touched]
    elsewhere: list[DoubtfulReading]
    lots: list[str]
    reached: list[Reached]
    is_complete: bool
    is_adding_up: bool
    missing: list[str]


def impact_of(cooperative: UUID, instrument: str, check: str, *, eyes: Eyes) -> Impact | None:
    """What a failed check means for the record; None where the instrument has no such check, or
    it did not fail. Nothing yet where its sheet is behind: the check may just have come."""
    named = f"instrument:{instrument}"
    sheet = states_of(cooperative, [named]).get(named)
    doubt = None if sheet is None else _doubt(sheet, check)
    if sheet is None or doubt is None:
        is_behind = bool(stale_marks(cooperative, [named]))
        return _nothing_yet(instrument, check) if is_behind else None
    touched = _touched(cooperative, check)
    subjects = [each["subject"] for each in touched]
    edges = edges_from(cooperative, subjects, "forward")
    walked = {*subjects, *(node for edge in edges for node in (edge["from"], edge["to"]))}
    recorded = sorted(node for node in walked if type_in(node) in WALKED)
    # Rows of the graph follow from a sheet: only where no way goes on may there be none.
    ends = sorted({*recorded} - {*subjects} - {edge["from"] for edge in edges})
    missing = sorted({*ends} - subjects_with_sheet(cooperative, ends))
    return Impact(
        instrument=instrument,
        check=check,
        failed_at=doubt["failed_at"],
        after=doubt["after"],
        until=doubt["until"],
        readings=sum(each["readings"] for each in touched),
        touched=touched,
        elsewhere=read_elsewhere(cooperative, sheet, doubt, eyes=eyes),
        lots=[id_in(node) for node in recorded if type_in(node) == "lot"],
        reached=_reached(cooperative, edges),
        is_complete=not missing,
        is_adding_up=bool(stale_subjects(cooperative, most=1)),
        missing=missing,
    )


def _nothing_yet(instrument: str, check: str) -> Impact:
    return Impact(
        instrument=instrument,
        check=check,
        failed_at=None,
        after=None,
        until=None,
        readings=0,
        touched=[],
        elsewhere=[],
        lots=[],
        reached=[],
        is_complete=False,
        is_adding_up=True,
        missing=[],
    )


def has_failed(cooperative: UUID, instrument: str, check: str) -> bool:
    """Whether the instrument has such a check, and it failed."""
    sheet = states_of(cooperative, [f"instrument:{instrument}"])
    return any(_doubt(each, check) is not None for each in sheet.values())


def _doubt(state: Mapping[str, Any], check: str) -> InDoubt | None:
    rows: Sequence[InDoubt] = state.get("doubts", ())
    return next((row for row in rows if row["check"] == check), None)


def _touched(cooperative: UUID, check: str) -> list[Touched]:
    rows = TouchedRow.objects.filter(cooperative=cooperative, check_entry=check)
    columns = ("subject", "code", "material", "readings", "would_change")
    return [
        Touched(
            subject=subject,
            code=code or None,
            material=material or None,
            readings=readings,
            would_change=would_change.split(),
        )
        for subject, code, material, readings, would_change in rows.order_by(
            "subject"
        ).values_list(*columns)
    ]


def _reached(cooperative: UUID, edges: Sequence[Edge]) -> list[Reached]:
    """By who has it and unit, with how much of which lot; of what the sheets say in whole or in
    part."""
    by_end: dict[tuple[str, str], list[Edge]] = {}
    for edge in edges:
        if type_in(edge["to"]) in _ENDS:
            by_end.setdefault((edge["to"], edge["unit"] or ""), []).append(edge)
    labels = labels_of(cooperative, sorted({node for node, _ in by_end}))
    reached = []
    for (node, unit), some in sorted(by_end.items()):
        amount = plain(total(decimal_in(edge, "amount") or ZERO for edge in some))
        lots = [OfLot(lot=id_in(edge["from"]), amount=edge["amount"]) for edge in some]
        each = Reached(id=node, amount=amount, unit=unit or None, lots=lots)
        reached.append(Reached(**each, label=labels[node]) if node in labels else each)
    return reached
