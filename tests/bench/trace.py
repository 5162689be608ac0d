"""Tracing on graphs of 1 000 to 100 000 lots: growing with the answer, not with the graph."""

from __future__ import annotations

import json
import random
import uuid

from django.core.management import call_command
from django.db import connection, transaction

from kitchenlog.logbook.insert import insert_rows
from kitchenlog.logbook.models import Sheet
from kitchenlog.members.models import Cooperative
from kitchenlog.tracing.models import Edge
from kitchenlog.tracing.selectors import trace_of
from tests.bench.table import head, line, p95, seconds
from tests.people import Kitchen

SIZES = (1_000, 10_000, 100_000)
ASKED = 200
P95_MS_MOST = 50
INPUTS_A_BATCH = 4
DELIVERY_EVERY = 4
REWORK_EVERY = 10
WAYS_OUT = 3
ROWS_AT_ONCE = 5_000
EDGE_COLUMNS = ("cooperative", "node", "way", "neighbour", "amount", "unit")
SHEET_COLUMNS = (
    "cooperative", "subject", "seq", "upto_seq", "entry_count", "fold", "is_open",
    "is_finished", "audience", "state",
)  # fmt: skip


def measure() -> None:
    """Tables filled directly; each size is a cooperative of its own in the same tables."""
    call_command("migrate", verbosity=0)
    head(f"trace of {ASKED} lots by chance, both ways, {connection.vendor}")
    for size in SIZES:
        kitchen = Kitchen(f"bench{size}")
        _fill(kitchen.cooperative, size)
        _measure_size(kitchen.cooperative, size)


def _fill(cooperative: Cooperative, lots: int) -> None:
    """A quarter are deliveries; the rest come out of batches of deliveries or older lots.

    Batches reach back fifty lots at most, as a store does that is used up.
    """
    graph = _Graph(cooperative.pk)
    chance = random.Random(lots)
    for number in range(lots):
        _add_lot(graph, number, chance)
    graph.write(everything=True)
    with connection.cursor() as cursor:
        cursor.execute("ANALYZE")


def _add_lot(graph: _Graph, number: int, chance: random.Random) -> None:
    lot = f"lot:L{number}"
    graph.add_sheet(lot, {"lot": f"L{number}", "material": f"m{number % 20}"})
    if number % DELIVERY_EVERY == 0:
        graph.add_edge(f"source:S{number % 40}", lot)
    else:
        batch = f"batch:{uuid.UUID(int=number)}"
        graph.add_sheet(batch, {"code": f"B{number}", "product": f"m{number % 20}"})
        for _ in range(INPUTS_A_BATCH):
            delivery = max(0, number - chance.randint(1, 50)) // DELIVERY_EVERY * DELIVERY_EVERY
            graph.add_edge(f"lot:L{delivery}", batch)
        if number % REWORK_EVERY == 0:
            graph.add_edge(f"lot:L{max(1, number - 3)}", batch)
        graph.add_edge(batch, lot)
        for way in range(WAYS_OUT):
            graph.add_edge(lot, f"recipient:R{(number + way) % 30}")
    graph.write()


class _Graph:
    """Rows on their way into the tables, a few thousand at a time."""

    def __init__(self, cooperative: uuid.UUID) -> None:
        self.cooperative = cooperative
        self.edges: list[tuple[object, ...]] = []
        self.sheets: list[tuple[object, ...]] = []
        self.seq = 1_000  # members have sheets already

    def add_edge(self, from_node: str, to_node: str) -> None:
        """Both ends say it, each of its own way; only lots and batches have sheets."""
        for node, way, neighbour in (
            (from_node, "forward", to_node),
            (to_node, "back", from_node),
        ):
            if node.startswith(("lot:", "batch:")):
                self.edges.append((self.cooperative, node, way, neighbour, "1", "pc"))

    def add_sheet(self, subject: str, state: dict[str, str]) -> None:
        """As little of a sheet as a label needs."""
        self.seq += 1
        self.sheets.append(
            (self.cooperative, subject, self.seq, self.seq, 1, 1, False, True, "member",
             json.dumps(state))
        )  # fmt: skip

    def write(self, *, everything: bool = False) -> None:
        """Write when enough has gathered."""
        if everything or len(self.edges) >= ROWS_AT_ONCE:
            with transaction.atomic():
                insert_rows(Edge, EDGE_COLUMNS, self.edges)
                insert_rows(Sheet, SHEET_COLUMNS, self.sheets)
            self.edges, self.sheets = [], []


def _measure_size(cooperative: Cooperative, size: int) -> None:
    chance = random.Random(size + 1)
    waits, answered = [], []
    for _ in range(ASKED):
        lot = f"L{chance.randrange(size)}"
        for direction in ("back", "forward"):
            answer: list[dict[str, list[object]] | None] = []
            waits.append(
                seconds(
                    lambda lot=lot, way=direction, to=answer: to.append(
                        trace_of(cooperative.pk, lot, way)
                    )
                )
            )
            answered.append(len((answer[0] or {"edges": []})["edges"]))
    worst_ms = p95(waits) * 1000
    line(
        f"{size:,} lots, {sum(answered) / len(answered):,.0f} edges an answer",
        f"p95 {worst_ms:,.1f} ms",
        floor=f"<= {P95_MS_MOST} ms",
        holds=worst_ms <= P95_MS_MOST,
    )
    line("  for each edge of the answer", f"{sum(waits) / max(1, sum(answered)) * 1e6:,.0f} us")
