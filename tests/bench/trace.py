"""Tracing on graphs of 1 000 to 100 000 lots: growing with the answer, not with the graph."""

from __future__ import annotations

import random
import uuid
from collections.abc import Iterator

from django.core.management import call_command
from django.db import connection

from kitchenlog.logbook.models import LogHead
from kitchenlog.members.models import Cooperative
from kitchenlog.tracing.models import Edge
from kitchenlog.tracing.selectors import trace_of
from tests.bench.table import head, line, p95, seconds
from tests.people import Kitchen

SIZES = (1_000, 10_000, 100_000)
ASKED = 200
P95_MS_MOST = 50
INPUTS_A_BATCH = 4
WAYS_OUT = 3


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
    chance = random.Random(lots)
    rows = []
    for edge in _edges(lots, chance):
        rows.append(Edge(cooperative=cooperative, **edge))
        if len(rows) == 5_000:
            Edge.objects.bulk_create(rows)
            rows = []
    Edge.objects.bulk_create(rows)
    LogHead.objects.filter(cooperative=cooperative).update(last_seq=lots)
    with connection.cursor() as cursor:
        cursor.execute("ANALYZE")


def _edges(lots: int, chance: random.Random) -> Iterator[dict[str, str]]:
    for number in range(lots):
        lot = f"lot:L{number}"
        if number % 4 == 0:
            yield _edge(f"source:S{number % 40}", lot, lot)
        else:
            batch = f"batch:{uuid.UUID(int=number)}"
            # Deliveries are inputs; every tenth batch reworks an earlier product.
            for _ in range(INPUTS_A_BATCH):
                older = max(0, number - chance.randint(1, 50)) // 4 * 4
                yield _edge(f"lot:L{older}", batch, batch)
            if number % 10 == 0:
                yield _edge(f"lot:L{max(1, number - 3)}", batch, batch)
            yield _edge(batch, lot, batch)
            for way in range(WAYS_OUT):
                yield _edge(lot, f"recipient:R{(number + way) % 30}", lot)


def _edge(from_node: str, to_node: str, told_by: str) -> dict[str, str]:
    return {
        "from_node": from_node, "to_node": to_node, "told_by": told_by,
        "amount": "1", "unit": "pc",
    }  # fmt: skip


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
