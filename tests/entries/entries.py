"""Whole entries for tests, as a device would make them."""

from typing import Any

from kitchenlog.entries.envelope import uuid7
from kitchenlog.entries.links import subjects_of

MADE_AT_MS = 1_794_297_600_000  # 2026-11-10T08:00:00Z


def made_entry(kind: str, body: dict[str, Any]) -> dict[str, Any]:
    """One entry as it travels."""
    return {
        "id": uuid7(MADE_AT_MS, chance=bytes(range(10))),
        "kind": kind,
        "version": 1,
        "subjects": list(subjects_of(kind, body)),
        "cooperative": "0192f0c4-0000-4000-8000-000000000001",
        "author": "0192f0c4-0000-4000-8000-000000000002",
        "device": "0192f0c4-0000-4000-8000-000000000003",
        "device_seq": 17,
        "recorded_at": "2026-11-10T08:00:00.000Z",
        "tz": "Europe/Lisbon",
        "utc_offset_min": 0,
        "local_date": "2026-11-10",
        "seen": "",
        "happened_at": "2026-11-10T08:00:00.000Z",
        "app_version": "0.1.0",
        "body": body,
    }
