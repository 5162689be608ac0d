"""The hash chain over a cooperative's entries: each is tied to all before it."""

from __future__ import annotations

import hashlib
from datetime import datetime

from kitchenlog.logbook.wire import wire_time


def chain_hash(previous: str, *, fingerprint: str, seq: int, received_at: datetime) -> str:
    """SHA-256 of the previous hash, the fingerprint, number and time of receipt (R80)."""
    text = f"{previous}{fingerprint}{seq}{wire_time(received_at)}"
    return hashlib.sha256(text.encode()).hexdigest()


def fingerprint_of_text(canonical: str) -> str:
    """The fingerprint (R26) of an entry that is already canonical JSON text."""
    return hashlib.sha256(canonical.encode()).hexdigest()
