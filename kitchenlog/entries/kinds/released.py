"""The tables of kinds that went out with a release: apps know them that people hold."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import asdict

from kitchenlog.entries.kinds.fields import Kind

# The fingerprint of each released table, by its number; a release writes its own down. None has
# gone out yet, so table 1 may still change as a whole.
RELEASED: Mapping[int, str] = {}


def fingerprint(kinds: Mapping[str, Kind]) -> str:
    """SHA-256 over every kind with its fields, limits and version; a change makes another."""
    declared = {name: asdict(kind) for name, kind in kinds.items()}
    text = json.dumps(declared, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return hashlib.sha256(text.encode()).hexdigest()


def number_trouble(
    number: int, kinds: Mapping[str, Kind], *, released: Mapping[int, str] = RELEASED
) -> str | None:
    """Why this table may not go by this number, in one sentence; None where it may.

    A phone with an older number stops pulling (R91). Were a kind or a field added under the
    same number, its app would read the new entries by the old table, and publish a recipe
    without the fields it does not know.
    """
    newest = max(released, default=0)
    if number < newest:
        return f"table {newest} is released: a later one has a higher number"
    if number in released and released[number] != fingerprint(kinds):
        return f"table {number} is released and has changed since: raise TABLE_NUMBER"
    return None
