"""Printing what was measured, beside its floor and what it is compared with."""

from __future__ import annotations

import os
import platform
import statistics
import time
from collections.abc import Callable, Sequence
from pathlib import Path


def print_machine() -> None:
    """One line about the machine: figures mean nothing without it."""
    model = next(
        (
            line.split(":", 1)[1].strip()
            for line in Path("/proc/cpuinfo").read_text().splitlines()
            if line.startswith("model name")
        ),
        platform.machine(),
    )
    memory_gib = os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES") / 2**30
    print(
        f"machine: {os.cpu_count()} cores, {model}, {memory_gib:.0f} GiB, "
        f"Python {platform.python_version()}, {platform.system()} {platform.release()}"
    )


def head(title: str) -> None:
    """The title of a section."""
    print(f"\n{title}", flush=True)


def line(what: str, figure: str, *, floor: str = "", holds: bool | None = None) -> None:
    """One measured figure, with its floor and whether it holds."""
    verdict = "" if holds is None else ("holds" if holds else "MISSED")
    print(f"  {what:<52} {figure:>18}  {floor:<18} {verdict}".rstrip(), flush=True)


def seconds(act: Callable[[], object]) -> float:
    """How long one call takes."""
    start = time.perf_counter()
    act()
    return time.perf_counter() - start


def p95(values: Sequence[float]) -> float:
    """The value that 95 of 100 do not exceed."""
    return statistics.quantiles(values, n=20)[-1]
