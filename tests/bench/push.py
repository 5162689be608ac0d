"""Push and pull of a real server, beside the raw database and a bare Django view."""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import replace
from pathlib import Path

from tests.bench.bare import BareView
from tests.bench.raw import raw_insert_rate
from tests.bench.table import head, line, p95
from tests.bench.wire import ENTRIES_A_PUSH, Line, Sender, pushes
from tests.servers import PROJECT, KitchenlogServer, postgresql

DEVICES = 8
PUSHES = 120  # of all devices together: one slow disk write must not decide
WARM_UP = 2
PUSH_FLOOR = 2_000
PULL_FLOOR = 3_000


def measure() -> None:
    """SQLite first, then PostgreSQL."""
    for engine in ("sqlite", "postgresql"):
        head(f"push and pull, {engine}, {ENTRIES_A_PUSH} entries a push, worker running")
        with ExitStack() as stack:
            address = stack.enter_context(postgresql()) if engine == "postgresql" else None
            server = stack.enter_context(_server(address))
            senders = _senders(server)
            raw = raw_insert_rate(address)
            bare = _bare_rate(senders[0])
            _push_lines(senders, raw=raw, bare=bare)
            _pull_lines(senders[0])


@contextmanager
def _server(address: str | None) -> Iterator[KitchenlogServer]:
    with tempfile.TemporaryDirectory(prefix="kl-bench-") as folder:
        environment = {} if address is None else {"KITCHENLOG_DATABASE": address}
        server = KitchenlogServer(Path(folder), environment=environment)
        server.start()
        try:
            yield server
        finally:
            server.stop()


def _senders(server: KitchenlogServer) -> list[Sender]:
    made = subprocess.run(
        [sys.executable, "-m", "tests.bench.people", str(DEVICES + 1)],
        cwd=PROJECT, env=server.environment, check=True, capture_output=True, text=True,
    )  # fmt: skip
    known = json.loads(made.stdout.splitlines()[-1])
    return [
        Sender(server.port, known["cooperative"], known["author"], device, token)
        for device, token in known["devices"]
    ]


def _push_lines(senders: Sequence[Sender], *, raw: float, bare: float) -> None:
    line("raw insert of the same rows, no server", f"{raw:,.0f} entries/s")
    line("a bare Django view that parses the same body", f"{bare:,.0f} entries/s")
    alone, _ = _push_rate(senders[DEVICES:], mark="ONE")
    line("push, 1 device", f"{alone:,.0f} entries/s", floor=f">= {PUSH_FLOOR:,}",
         holds=alone >= PUSH_FLOOR)  # fmt: skip
    together, waits = _push_rate(senders[:DEVICES], mark="ALL")
    line(f"push, {DEVICES} devices", f"{together:,.0f} entries/s", floor=f">= {PUSH_FLOOR:,}",
         holds=together >= PUSH_FLOOR)  # fmt: skip
    line(f"  one push, p95 of {len(waits)}", f"{p95(waits) * 1000:,.0f} ms")
    line("  share of the raw insert rate", f"{together / raw:.2f}")
    line("  share of the bare view's rate", f"{together / bare:.2f}")


def _push_rate(senders: Sequence[Sender], *, mark: str) -> tuple[float, list[float]]:
    """Entries a second of all senders together, and how long each push took."""
    each = PUSHES // len(senders)
    work = [
        (Line(sender), pushes(sender, each + WARM_UP, mark=f"{mark}{number}"))
        for number, sender in enumerate(senders)
    ]
    for talk, bodies in work:
        for body in bodies[:WARM_UP]:
            talk.post("sync/push", body)
    waits: list[float] = []

    def push_all(talk: Line, bodies: Sequence[bytes]) -> None:
        for body in bodies:
            start = time.perf_counter()
            answer = talk.post("sync/push", body)
            waits.append(time.perf_counter() - start)
            assert all(row["status"] == "created" for row in answer["results"])

    threads = [
        threading.Thread(target=push_all, args=(talk, bodies[WARM_UP:]))
        for talk, bodies in work
    ]
    start = time.perf_counter()
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    took = time.perf_counter() - start
    return len(waits) * ENTRIES_A_PUSH / took, waits


def _bare_rate(sender: Sender) -> float:
    body = pushes(sender, 1, mark="BARE")[0]
    with BareView() as bare:
        talk = Line(replace(sender, port=bare.port))
        for _ in range(20):
            talk.post("bare", body)
        start = time.perf_counter()
        for _ in range(100):
            talk.post("bare", body)
        return 100 * ENTRIES_A_PUSH / (time.perf_counter() - start)


def _pull_lines(sender: Sender) -> None:
    talk = Line(sender)
    cursor, entries, sheets = "", 0, 0
    start = time.perf_counter()
    while True:
        page = talk.get(f"sync/pull?limit=500&cursor={cursor}")
        entries += sum(change["type"] == "entry" for change in page["changes"])
        sheets += sum(change["type"] == "sheet" for change in page["changes"])
        cursor = page["next"]
        if not page["more"]:
            break
    took = time.perf_counter() - start
    rate = (entries + sheets) / took
    line(
        f"pull of {entries:,} entries and {sheets:,} sheets, 500 a page",
        f"{rate:,.0f} changes/s",
        floor=f">= {PULL_FLOOR:,}",
        holds=rate >= PULL_FLOOR,
    )
