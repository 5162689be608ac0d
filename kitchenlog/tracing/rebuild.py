"""From lot and batch sheets to the graph of goods, and to what failed checks touch."""

from __future__ import annotations

from functools import partial
from uuid import UUID

from kitchenlog.calc.batch_lines import WeighIn
from kitchenlog.calc.batch_steps import Done
from kitchenlog.calc.batches import BatchState
from kitchenlog.calc.trace import Direction, edges_at
from kitchenlog.logbook.subjects import FieldTable, State
from kitchenlog.tracing.models import DoubtfulReading, Edge, TouchedBatch

_WAYS: tuple[Direction, ...] = ("back", "forward")


def _edges(prefix: str, cooperative: UUID, id_part: str, state: State) -> list[Edge]:
    node = f"{prefix}:{id_part}"
    return [
        Edge(
            cooperative_id=cooperative,
            node=node,
            way=way,
            neighbour=edge["from"] if way == "back" else edge["to"],
            amount=edge["amount"],
            unit=edge["unit"] or "",
        )
        for way in _WAYS
        for edge in edges_at(node, state, way)
    ]


def _edges_of(prefix: str) -> FieldTable:
    return FieldTable(
        Edge,
        owner="node",
        rows=partial(_edges, prefix),
        owner_of=lambda id_part: f"{prefix}:{id_part}",
        index={"way__in": _WAYS},
    )


def _doubtful(cooperative: UUID, batch: str, state: BatchState) -> list[DoubtfulReading]:
    rows: list[tuple[str, WeighIn | Done]] = []
    rows += [(line["line"], each) for line in state["lines"] for each in line["weigh_ins"]]
    rows += [(step["step"], each) for step in state["steps"] for each in step["done"]]
    return [
        DoubtfulReading(
            cooperative_id=cooperative,
            batch=batch,
            check_entry=each["trust"]["failed_by"],
            entry=each["entry"],
            happened_at=each["happened_at"],
            author=each["author"],
            place=place,
            moves=each["trust"]["moves"] or "",
        )
        for place, each in rows
        if each["trust"]["failed_by"] is not None
    ]


def _touched(cooperative: UUID, batch: str, state: BatchState) -> list[TouchedBatch]:
    return [
        TouchedBatch(
            cooperative_id=cooperative,
            batch=batch,
            check_entry=found["entry"],
            code=state["code"] or "",
            product=state["product"] or "",
            readings=int(found["detail"]["readings"]),
            would_change=found["detail"]["would_change"],
        )
        for found in state["findings"]
        if found["what"] == "instrument_failed"
    ]


DOUBTFUL = FieldTable(DoubtfulReading, owner="batch", rows=_doubtful)
TOUCHED = FieldTable(TouchedBatch, owner="batch", rows=_touched)
LOT_EDGES = _edges_of("lot")
BATCH_EDGES = _edges_of("batch")
