"""The hash chain over a cooperative's entries: each is tied to all before it."""

from __future__ import annotations

import hashlib
from datetime import datetime

from kitchenlog.logbook.wire import wire_time


def chain_hash(
    previous: str, *, fingerprint: str, seq: int, received_at: datetime, skew_ms: int | None
) -> str:
    """SHA-256 of the previous hash, the fingerprint, the number, the time of receipt, the skew.

    `skew_ms` is None for entries chained before the skew was part of it.
    """
    skew = "" if skew_ms is None else str(skew_ms)
    text = f"{previous}{fingerprint}{seq}{wire_time(received_at)}{skew}"
    return hashlib.sha256(text.encode()).hexdigest()


def fingerprint_of_text(canonical: str) -> str:
    """The fingerprint (R26) of an entry that is already canonical JSON text."""
    return hashlib.sha256(canonical.encode()).hexdigest()
