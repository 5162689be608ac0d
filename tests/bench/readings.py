"""How fast readings are judged, and how fast a failed instrument's readings are listed."""

from __future__ import annotations

import json
import math
import subprocess
import time
import uuid
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

from django.core.management import call_command
from django.db import connection
from django.test.utils import setup_test_environment
from uncertainties import ufloat

from kitchenlog.calc.numbers import as_double, difference
from kitchenlog.calc.readings import Doubt, doubt_of, verdict
from kitchenlog.calc.weighing import sum_doubt
from kitchenlog.entries.rights import SEES_ALL
from kitchenlog.tracing.doubtful import readings_page
from kitchenlog.tracing.impact import impact_of
from tests.bench.table import head, line, p95, seconds
from tests.people import Kitchen
from tests.servers import PROJECT
from tests.writing import Pen, pushed, recompute_all, statuses

READINGS = 100_000
SAMPLE = 5_000  # of the slower ways; times are compared for each reading
TIMES_FASTER = 20
BATCHES = 500
READINGS_A_BATCH = 20
ASKED = 20
ROUNDS_MAX = 2_000  # of a second, to add up twice some 20 000 entries on a busy machine
IMPACT_MS_MOST = 200  # all of it: the sums, then page after page of the readings

# The same weighing for all three: 380 to 386 g net of a bowl, and a correction with its doubt.
LOADS = tuple(Decimal(500 + n) for n in range(7))
TARE, DIVISION, SPREAD = Decimal(120), Decimal(1), Decimal("0.4")
LOW, HIGH = Decimal(370), Decimal(390)
SLOPE_U, SLOPE_DEGREES, COVERAGE = 0.0007, 8, 1.645


def measure() -> None:
    """Judging first, then the list of a failed instrument."""
    call_command("migrate", verbosity=0)
    setup_test_environment()  # its client asks for a host of its own
    if connection.vendor == "sqlite":
        _judging()
    _impact()


def _judging() -> None:
    head(f"budget and verdict of {READINGS:,} readings")
    phone_us = _phone_seconds() / READINGS * 1e6
    server_us = seconds(_ours) / SAMPLE * 1e6
    theirs_us = seconds(_uncertainties) / SAMPLE * 1e6
    line("the uncertainties library, a reading", f"{theirs_us:,.1f} us")
    times = theirs_us / phone_us
    line("ours on a phone (Node.js), a reading", f"{phone_us:,.1f} us, {times:.0f} times",
         floor=f">= {TIMES_FASTER} times", holds=times >= TIMES_FASTER)  # fmt: skip
    line("ours on the server (Python), a reading",
         f"{server_us:,.1f} us, {theirs_us / server_us:.1f} times")  # fmt: skip


def _phone_seconds() -> float:
    node, script = PROJECT / ".venv/bin/node", Path(__file__).with_name("readings.mjs")
    told = subprocess.run(
        [node, script, str(READINGS)], check=True, capture_output=True, text=True
    ).stdout
    took: float = json.loads(told)["seconds"]
    return took


def _ours() -> None:
    for number in range(SAMPLE):
        net = difference(LOADS[number % len(LOADS)], TARE)
        calibration = Doubt(u=SLOPE_U * as_double(net), degrees=SLOPE_DEGREES)
        doubt = sum_doubt(
            [doubt_of(division=DIVISION, readings=2, repeatability=SPREAD), calibration]
        )
        verdict(net, low=LOW, high=HIGH, doubt=doubt)


def _uncertainties() -> None:
    """The same components, propagated; and which of them the doubt comes from."""
    resolution, spread = as_double(DIVISION) / math.sqrt(12), as_double(SPREAD)
    slope = ufloat(0, SLOPE_U)
    for number in range(SAMPLE):
        load = ufloat(as_double(LOADS[number % len(LOADS)]), resolution)
        bowl = ufloat(as_double(TARE), resolution)
        net = load + ufloat(0, spread) - bowl - ufloat(0, spread)
        value = net + slope * net
        value.error_components()
        band = COVERAGE * value.std_dev
        _ = value.nominal_value - band >= LOW and value.nominal_value + band <= HIGH


def _impact() -> None:
    head(f"a failed scale with {BATCHES * READINGS_A_BATCH:,} readings, {connection.vendor}")
    kitchen = Kitchen("bench")
    pen = Pen(kitchen.phone("coordinator"))
    check = _fill(pen)
    recompute_all(rounds=ROUNDS_MAX)
    cooperative = kitchen.cooperative.pk
    sums_ms, all_ms = [], []
    for _ in range(ASKED):
        begin = time.perf_counter()
        found = impact_of(cooperative, "scale", check, eyes=SEES_ALL)
        sums_ms.append((time.perf_counter() - begin) * 1000)
        pages = _all_readings(cooperative, check)
        all_ms.append((time.perf_counter() - begin) * 1000)
    assert found is not None
    listed = sum(len(json.loads(page)) for page in pages)
    assert found["readings"] == listed == BATCHES * READINGS_A_BATCH
    line(f"what leaned on it in sums, p95 of {ASKED}", f"{p95(sums_ms):,.0f} ms")
    figure = p95(all_ms)
    line(f"and every reading of it, p95 of {ASKED}", f"{figure:,.0f} ms",
         floor=f"<= {IMPACT_MS_MOST} ms", holds=figure <= IMPACT_MS_MOST)  # fmt: skip


def _all_readings(cooperative: uuid.UUID, check: str) -> list[str]:
    """Page after page, as a phone asks for them."""
    pages, after = [], ""
    for _ in range(BATCHES):
        page = readings_page(cooperative, check, after=after)
        pages.append(page.readings_json)
        if page.more is None:
            break
        after = page.more
    return pages


def _fill(pen: Pen) -> str:
    """Batches weighed on one scale, then the check that it fails; the id of the check."""
    scale = {
        "instrument": "scale", "name": "Scale", "sort": "scale", "unit": "g", "division": "1",
        "accuracy_class": "III", "interval": "1",
    }  # fmt: skip
    start = datetime(2026, 6, 6, 8, tzinfo=UTC)
    _push(pen, [pen.write("instrument_defined", scale, at=start)])
    for number in range(BATCHES):
        _push(pen, _batch(pen, number, start + timedelta(hours=number)))
    step = {"sort": "rising", "reference": "500", "readings": ["508"]}
    body = {"instrument": "scale", "unit": "g", "division": "1", "steps": [step]}
    check = pen.write("instrument_checked", body, at=start + timedelta(hours=BATCHES))
    _push(pen, [check])
    check_id: str = check["id"]
    return check_id


def _push(pen: Pen, entries: list[dict[str, Any]]) -> None:
    assert set(statuses(pushed(pen.phone, entries))) == {"created"}


def _batch(pen: Pen, number: int, at: datetime) -> list[dict[str, Any]]:
    lines = [
        {
            "line": f"l{n}", "material": "sugar", "amount": {"amount": "500", "unit": "g"},
            "below": "5", "above": "5",
        }
        for n in range(READINGS_A_BATCH)
    ]  # fmt: skip
    begun = {
        "batch": f"b{number}", "code": f"B-{number}", "recipe": "r", "product": "jam",
        "place": "k", "recipe_version": str(uuid.UUID(int=1)),
        "makes": {"amount": "10", "unit": "kg"}, "scaled_by": "as_written", "lines": lines,
        "steps": [],
    }  # fmt: skip
    reading = {"instrument": "scale", "unit": "g", "shown": "502", "division": "1"}
    weighed = [
        {
            "batch": f"b{number}", "line": f"l{n}", "material": "sugar", "lot": f"SU-{number}",
            "place": "k", "reading": reading,
        }
        for n in range(READINGS_A_BATCH)
    ]  # fmt: skip
    out = {
        "batch": f"b{number}", "lot": f"J-{number}", "material": "jam", "place": "k",
        "amount": {"amount": "40", "unit": "pc"},
    }  # fmt: skip
    gone = {
        "lot": f"J-{number}", "amount": {"amount": "30", "unit": "pc"}, "place": "k",
        "recipient": f"shop{number % 10}",
    }  # fmt: skip
    return [
        pen.write("batch_started", begun, at=at),
        *(pen.write("weigh_in", each, at=at) for each in weighed),
        pen.write("output", out, at=at),
        pen.write("dispatch", gone, at=at),
    ]
