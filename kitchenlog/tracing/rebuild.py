"""From lot and batch sheets to the graph of goods."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial
from typing import NamedTuple
from uuid import UUID

from kitchenlog.logbook.subjects import FieldTable, State
from kitchenlog.tracing.models import Edge


class _Way(NamedTuple):
    from_node: str
    to_node: str
    amount: str
    unit: str | None


def _lot_edges(cooperative: UUID, code: str, lot: State) -> list[Edge]:
    """Where a lot came from and what left the house; batches tell what they took and gave."""
    return _edges(cooperative, f"lot:{code}", _ways_of_lot(f"lot:{code}", lot))


def _ways_of_lot(subject: str, lot: State) -> Iterable[_Way]:
    if lot["source"] and lot["condition"] != "refused":
        yield _Way(f"source:{lot['source']}", subject, lot["made"], lot["unit"])
    for each in lot["came_from"]:
        yield _Way(f"lot:{each['lot']}", subject, each["amount"], lot["unit"])
    for each in lot["went_to"]:
        if each["to"].startswith(("recipient:", "day:")):
            yield _Way(subject, each["to"], each["amount"], lot["unit"])


def _batch_edges(cooperative: UUID, batch_id: str, batch: State) -> list[Edge]:
    subject = f"batch:{batch_id}"
    taken = (
        _Way(f"lot:{each['lot']}", subject, each["amount"], each["unit"])
        for each in batch["lots_in"]
    )
    given = (
        _Way(subject, f"lot:{each['lot']}", each["amount"], each["unit"])
        for each in batch["lots_out"]
    )
    return _edges(cooperative, subject, [*taken, *given])


def _edges(cooperative: UUID, told_by: str, ways: Iterable[_Way]) -> list[Edge]:
    return [
        Edge(
            cooperative_id=cooperative,
            told_by=told_by,
            from_node=way.from_node,
            to_node=way.to_node,
            amount=way.amount,
            unit=way.unit or "",
        )
        for way in ways
    ]


def _told_by(prefix: str, id_part: str) -> dict[str, str]:
    return {"told_by": f"{prefix}:{id_part}"}


LOT_EDGES = FieldTable(Edge, owned=partial(_told_by, "lot"), rows=_lot_edges)
BATCH_EDGES = FieldTable(Edge, owned=partial(_told_by, "batch"), rows=_batch_edges)
