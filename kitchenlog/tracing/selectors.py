"""Walking the graph of goods, in the database, over as much of it as the answer holds."""

from __future__ import annotations

from uuid import UUID

from django.db import connection

from kitchenlog.calc.trace import WALKED, Direction, Edge, Node, Trace
from kitchenlog.logbook.selectors import subjects_with_sheet
from kitchenlog.tracing.models import Edge as EdgeRow

# One statement for the whole walk; UNION drops what was reached, so a recorded circle ends.
_WALK = """
WITH RECURSIVE reached(node) AS (
  SELECT CAST(%(start)s AS varchar(120))
  UNION
  SELECT edge.neighbour FROM reached JOIN tracing_edge edge ON edge.node = reached.node
  WHERE edge.cooperative_id = %(cooperative)s AND edge.way = %(way)s
)
SELECT edge.node, edge.neighbour, edge.amount, edge.unit
FROM reached JOIN tracing_edge edge ON edge.node = reached.node
WHERE edge.cooperative_id = %(cooperative)s AND edge.way = %(way)s
"""


def trace_of(cooperative: UUID, lot: str, direction: Direction) -> Trace | None:
    """Everything a lot came from or went into, with amounts; None for a lot nobody recorded.

    `missing` names lots and batches that edges lead to but whose own record has not come yet.
    """
    start = f"lot:{lot}"
    edges = _edges(cooperative, start, direction)
    nodes = sorted({start, *(edge["from"] for edge in edges), *(edge["to"] for edge in edges)})
    recorded = [node for node in nodes if node.partition(":")[0] in WALKED]
    known = subjects_with_sheet(cooperative, recorded)
    if not edges and start not in known:
        return None
    missing = [node for node in recorded if node not in known]
    return Trace(
        lot=lot,
        direction=direction,
        nodes=[Node(id=node) for node in nodes],
        edges=edges,
        is_complete=not missing,
        missing=missing,
    )


def _edges(cooperative: UUID, start: str, direction: Direction) -> list[Edge]:
    # SQLite keeps a UUID as 32 digits, PostgreSQL as itself: the field knows.
    field = EdgeRow._meta.get_field("cooperative")
    key = field.get_db_prep_value(cooperative, connection)
    with connection.cursor() as cursor:
        cursor.execute(_WALK, {"start": start, "cooperative": key, "way": direction})
        rows = cursor.fetchall()
    edges = [_edge(direction, *row) for row in rows]
    return sorted(edges, key=lambda edge: (edge["from"], edge["to"], edge["unit"] or ""))


def _edge(direction: Direction, node: str, neighbour: str, amount: str, unit: str) -> Edge:
    is_back = direction == "back"
    return {
        "from": neighbour if is_back else node,
        "to": node if is_back else neighbour,
        "amount": amount,
        "unit": unit or None,
    }
