"""One way to write an entry as bytes, and the fingerprint taken of it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from hashlib import sha256


def canonical(value: object) -> bytes:
    """Canonical JSON: keys by code point, no spaces, UTF-8, nothing escaped that need not be.

    Half a surrogate pair is written as its three bytes, so that even an entry nobody can store
    has one fingerprint.
    """
    text = json.dumps(
        value, sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False
    )
    return text.encode("utf-8", "surrogatepass")


def fingerprint(entry: Mapping[str, object]) -> str:
    """SHA-256 of an entry as made (R26), 64 hexadecimal digits."""
    return sha256(canonical(entry)).hexdigest()
