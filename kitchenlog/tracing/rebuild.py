"""From lot and batch sheets to the graph of goods."""

from __future__ import annotations

from functools import partial
from uuid import UUID

from kitchenlog.calc.trace import Direction, edges_at
from kitchenlog.logbook.subjects import FieldTable, State
from kitchenlog.tracing.models import Edge

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


LOT_EDGES = _edges_of("lot")
BATCH_EDGES = _edges_of("batch")
