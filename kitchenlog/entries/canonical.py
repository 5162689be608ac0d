"""One way to write an entry as bytes, and the fingerprint taken of it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from hashlib import sha256


def canonical_text(value: object) -> str:
    """Canonical JSON: keys by code point, no spaces, nothing escaped that need not be."""
    return _CANONICAL.encode(value)


# Made once, and not asked to look for circles: what came as JSON has none.
_CANONICAL = json.JSONEncoder(
    sort_keys=True,
    separators=(",", ":"),
    ensure_ascii=False,
    allow_nan=False,
    check_circular=False,
)


def canonical(value: object) -> bytes:
    """Canonical JSON in UTF-8.

    Half a surrogate pair is written as its three bytes, so that even an entry nobody can store
    has one fingerprint.
    """
    return canonical_text(value).encode("utf-8", "surrogatepass")


def fingerprint(entry: Mapping[str, object]) -> str:
    """SHA-256 of an entry as made (R26), 64 hexadecimal digits."""
    return sha256(canonical(entry)).hexdigest()
