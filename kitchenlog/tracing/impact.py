"""What leaned on an instrument whose check failed: readings, batches, lots, who has them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, NotRequired, TypedDict
from uuid import UUID

from kitchenlog.calc.bodies import decimal_in
from kitchenlog.calc.instruments import InDoubt
from kitchenlog.calc.numbers import ZERO, plain, total
from kitchenlog.calc.subjects import id_in, type_in
from kitchenlog.calc.trace import WALKED, Edge
from kitchenlog.logbook.selectors import states_of, subjects_with_sheet
from kitchenlog.tracing.labels import labels_of
from kitchenlog.tracing.models import DoubtfulReading as DoubtfulRow
from kitchenlog.tracing.models import TouchedBatch as TouchedRow
from kitchenlog.tracing.selectors import edges_from

_ENDS = ("recipient", "day")


class DoubtfulReading(TypedDict):
    """A reading made in the stretch of time that the failed check puts in question."""

    entry: str
    happened_at: str
    author: str
    batch: str
    place: str
    moves: str | None


class TouchedBatch(TypedDict):
    """A batch with such readings; `would_change` as in its finding, `line:was:would_be`."""

    batch: str
    code: str | None
    product: str | None
    readings: int
    would_change: list[str]


class Reached(TypedDict):
    """A recipient or a stall's day that packs of such a batch went to, in one unit."""

    id: str
    label: NotRequired[str]
    amount: str
    unit: str | None


class Impact(TypedDict):
    """Everything that leaned on the instrument from its last pass on. `lots` are all that hold
    some of what was measured, `missing` those whose own record has not come yet."""

    instrument: str
    check: str
    failed_at: str
    after: str | None
    until: str | None
    readings: list[DoubtfulReading]
    batches: list[TouchedBatch]
    lots: list[str]
    reached: list[Reached]
    is_complete: bool
    missing: list[str]


def impact_of(cooperative: UUID, instrument: str, check: str) -> Impact | None:
    """What a failed check means for the record; None where the instrument has no such check, or
    it did not fail."""
    named = f"instrument:{instrument}"
    doubt = _doubt(states_of(cooperative, [named]).get(named, {}), check)
    if doubt is None:
        return None
    readings, batches = _readings(cooperative, check), _batches(cooperative, check)
    edges = edges_from(cooperative, [f"batch:{each['batch']}" for each in batches], "forward")
    lots = sorted({id_in(edge["to"]) for edge in edges if type_in(edge["to"]) == "lot"})
    walked = {node for edge in edges for node in (edge["from"], edge["to"])}
    recorded = sorted(node for node in walked if type_in(node) in WALKED)
    missing = sorted(set(recorded) - subjects_with_sheet(cooperative, recorded))
    return Impact(
        instrument=instrument,
        check=check,
        failed_at=doubt["failed_at"],
        after=doubt["after"],
        until=doubt["until"],
        readings=readings,
        batches=batches,
        lots=lots,
        reached=_reached(cooperative, edges),
        is_complete=not missing,
        missing=missing,
    )


def _doubt(state: Mapping[str, Any], check: str) -> InDoubt | None:
    rows: Sequence[InDoubt] = state.get("doubts", ())
    return next((row for row in rows if row["check"] == check), None)


def _readings(cooperative: UUID, check: str) -> list[DoubtfulReading]:
    rows = DoubtfulRow.objects.filter(cooperative=cooperative, check_entry=check)
    columns = ("entry", "happened_at", "author", "batch", "place", "moves")
    return [
        DoubtfulReading(
            entry=entry,
            happened_at=happened_at,
            author=author,
            batch=batch,
            place=place,
            moves=moves or None,
        )
        for entry, happened_at, author, batch, place, moves in rows.order_by(
            "happened_at", "entry"
        ).values_list(*columns)
    ]


def _batches(cooperative: UUID, check: str) -> list[TouchedBatch]:
    rows = TouchedRow.objects.filter(cooperative=cooperative, check_entry=check)
    return [
        TouchedBatch(
            batch=row.batch,
            code=row.code or None,
            product=row.product or None,
            readings=row.readings,
            would_change=row.would_change.split(),
        )
        for row in rows.order_by("batch")
    ]


def _reached(cooperative: UUID, edges: Sequence[Edge]) -> list[Reached]:
    """Sums by who has it and unit; of what the sheets say in whole or in part."""
    amounts: dict[tuple[str, str], list[Edge]] = {}
    for edge in edges:
        if type_in(edge["to"]) in _ENDS:
            amounts.setdefault((edge["to"], edge["unit"] or ""), []).append(edge)
    labels = labels_of(cooperative, sorted({node for node, _ in amounts}))
    reached = []
    for (node, unit), some in sorted(amounts.items()):
        amount = plain(total(decimal_in(edge, "amount") or ZERO for edge in some))
        each = Reached(id=node, amount=amount, unit=unit or None)
        reached.append(Reached(**each, label=labels[node]) if node in labels else each)
    return reached
