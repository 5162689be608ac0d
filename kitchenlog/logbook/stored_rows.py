"""Entries in the order of their numbers, also where something in a row cannot be read.

SQLite holds any text in any column, so somebody who changes a row by SQL can leave there what
is no time and no id. Checking the record must name such a row and go on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from uuid import UUID

from django.db import DatabaseError

from kitchenlog.logbook.models import Entry
from kitchenlog.logbook.selectors import in_parts

# What drivers and fields raise for a value that is none of its column's.
_MISREAD = (ValueError, TypeError, AttributeError, OverflowError, DatabaseError)

_COLUMNS: dict[str, type | tuple[type, ...]] = {
    "seq": int,
    "id": UUID,
    "kind": str,
    "author": UUID,
    "device": UUID,
    "device_seq": int,
    "happened_at": datetime,
    "corrects": (UUID, type(None)),
    "audience": str,
    "canonical": str,
    "fingerprint": str,
    "chain_hash": str,
    "received_at": datetime,
    "skew_ms": int,
}


@dataclass(frozen=True)
class Misread:
    """A row of which one column holds what cannot be there."""

    seq: int | None
    column: str
    chain_hash: str | None

    @property
    def says(self) -> str:
        """One sentence about it."""
        return f"the {self.column} of this entry cannot be read"


def rows_in_order(cooperative: UUID, **where: Any) -> Iterator[list[Entry | Misread]]:
    """All entries in parts; `where` narrows them as a filter does."""
    numbers = Entry.objects.filter(cooperative=cooperative, **where).order_by("seq")
    seqs = list(numbers.values_list("seq", flat=True))
    for part in in_parts([seq for seq in seqs if isinstance(seq, int)]):
        yield _part(cooperative, part)
    nameless = [Misread(None, "seq", None) for seq in seqs if not isinstance(seq, int)]
    if nameless:
        yield [*nameless]


def _part(cooperative: UUID, seqs: Sequence[int]) -> list[Entry | Misread]:
    rows = Entry.objects.filter(cooperative=cooperative, seq__in=seqs).order_by("seq")
    try:
        entries = list(rows)
    except _MISREAD:
        return [_row(cooperative, seq) for seq in seqs]
    return [
        entry if _strange_column(entry) is None else _row(cooperative, entry.seq)
        for entry in entries
    ]


def _row(cooperative: UUID, seq: int) -> Entry | Misread:
    rows = Entry.objects.filter(cooperative=cooperative, seq=seq)
    for name, types in _COLUMNS.items():
        try:
            value = rows.values_list(name, flat=True).get()
        except _MISREAD:
            value = _MISREAD
        if not isinstance(value, types):
            kept = None if name == "chain_hash" else rows.values_list("chain_hash").get()[0]
            return Misread(seq, name, kept)
    return rows.get()


def _strange_column(entry: Entry) -> str | None:
    return next(
        (
            name
            for name, types in _COLUMNS.items()
            if not isinstance(getattr(entry, name), types)
        ),
        None,
    )
