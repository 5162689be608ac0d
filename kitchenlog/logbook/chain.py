"""The hash chain over a cooperative's entries: each is tied to all before it."""

from __future__ import annotations

import hashlib


def chain_hash(previous: str, *, fingerprint: str, seq: int, received_at: str) -> str:
    """SHA-256 of the previous hash, the fingerprint, number and time of receipt (R80).

    The time is written as on the wire: all entries of a push have the same.
    """
    text = f"{previous}{fingerprint}{seq}{received_at}"
    return hashlib.sha256(text.encode()).hexdigest()


def fingerprint_of_text(canonical: str) -> str:
    """The fingerprint (R26) of an entry that is already canonical JSON text."""
    return hashlib.sha256(canonical.encode()).hexdigest()
