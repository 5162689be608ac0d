"""Walking the graph of goods, in the database, over as much of it as the answer holds."""

from __future__ import annotations

from typing import Any, Literal
from uuid import UUID

from django.db import connection

from kitchenlog.logbook.selectors import subjects_with_sheet
from kitchenlog.tracing.models import Edge

Direction = Literal["back", "forward"]

# One statement for the whole walk; UNION drops what was reached, so a recorded circle ends.
_WALK = """
WITH RECURSIVE reached(node) AS (
  SELECT CAST(%(start)s AS varchar(120))
  UNION
  SELECT edge.{far} FROM tracing_edge edge JOIN reached ON edge.{near} = reached.node
  WHERE edge.cooperative_id = %(cooperative)s
)
SELECT edge.from_node, edge.to_node, edge.amount, edge.unit
FROM reached JOIN tracing_edge edge ON edge.{near} = reached.node
WHERE edge.cooperative_id = %(cooperative)s
ORDER BY edge.from_node, edge.to_node, edge.unit, edge.amount
"""
_FORWARD = _WALK.format(near="from_node", far="to_node")
_BACK = _WALK.format(near="to_node", far="from_node")


def trace_of(cooperative: UUID, lot: str, direction: Direction) -> dict[str, Any] | None:
    """Everything a lot came from or went into, with amounts; None for a lot nobody recorded.

    `missing` names lots and batches that edges lead to but whose own record has not come yet.
    """
    start = f"lot:{lot}"
    edges = _edges(cooperative, start, direction)
    nodes = sorted({start, *(edge[0] for edge in edges), *(edge[1] for edge in edges)})
    recorded = [node for node in nodes if node.startswith(("lot:", "batch:"))]
    known = subjects_with_sheet(cooperative, recorded)
    if not edges and start not in known:
        return None
    missing = [node for node in recorded if node not in known]
    return {
        "lot": lot,
        "direction": direction,
        "nodes": [{"id": node} for node in nodes],
        "edges": [
            {"from": edge[0], "to": edge[1], "amount": edge[2], "unit": edge[3] or None}
            for edge in edges
        ],
        "is_complete": not missing,
        "missing": missing,
    }


def _edges(
    cooperative: UUID, start: str, direction: Direction
) -> list[tuple[str, str, str, str]]:
    # SQLite keeps a UUID as 32 digits, PostgreSQL as itself: the field knows.
    key = Edge._meta.get_field("cooperative").get_db_prep_value(cooperative, connection)
    with connection.cursor() as cursor:
        cursor.execute(
            _FORWARD if direction == "forward" else _BACK,
            {"start": start, "cooperative": key},
        )
        return cursor.fetchall()
