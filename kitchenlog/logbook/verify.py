"""Checking the record against itself: the chain over the entries, the sheets over the log."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from uuid import UUID

from kitchenlog.calc.subjects import type_in
from kitchenlog.entries.rights import audience_of_subject
from kitchenlog.logbook.chain import chain_hash, fingerprint_of_text
from kitchenlog.logbook.field_rows import tables_that_differ
from kitchenlog.logbook.models import FIRST_CHAIN_HASH, Entry, LogHead, Sheet
from kitchenlog.logbook.rebuild import Folded, folded
from kitchenlog.logbook.selectors import entries_about, subjects_in_log
from kitchenlog.logbook.services import state_text
from kitchenlog.logbook.subjects import can_open, is_finished
from kitchenlog.logbook.wire import wire_time

ROWS_AT_ONCE = 2_000
# What stands in columns of its own must say the same as the entry it was taken from.
_COLUMNS = ("id", "kind", "author", "device", "device_seq")


@dataclass(frozen=True)
class BadPlace:
    """The first place where the log is not what was written; `seq` is None at its end."""

    seq: int | None
    says: str


def first_bad_place(cooperative: UUID) -> BadPlace | None:
    """Recompute every fingerprint and the chain over them; None if all of it holds (R80)."""
    previous = FIRST_CHAIN_HASH
    for entry in _in_order(cooperative):
        if fingerprint_of_text(entry.canonical) != entry.fingerprint:
            return BadPlace(entry.seq, f"entry {entry.id} is not what its fingerprint says")
        differing = _differing_column(entry)
        if differing is not None:
            return BadPlace(entry.seq, f"entry {entry.id}: its {differing} was changed")
        previous = chain_hash(
            previous,
            fingerprint=entry.fingerprint,
            seq=entry.seq,
            received_at=entry.received_at,
        )
        if previous != entry.chain_hash:
            return BadPlace(entry.seq, f"entry {entry.id} does not follow the one before it")
    head = LogHead.objects.get(cooperative=cooperative)
    if previous != head.chain_hash:
        return BadPlace(None, "entries are missing at the end")
    return None


def _in_order(cooperative: UUID) -> Iterator[Entry]:
    rows = Entry.objects.filter(cooperative=cooperative).order_by("seq")
    return rows.iterator(chunk_size=ROWS_AT_ONCE)


def _differing_column(entry: Entry) -> str | None:
    made = json.loads(entry.canonical)
    for name in _COLUMNS:
        if str(getattr(entry, name)) != str(made[name]):
            return name
    if wire_time(entry.happened_at) != made["happened_at"]:
        return "happened_at"
    corrects = None if entry.corrects is None else str(entry.corrects)
    return "corrects" if corrects != made["body"].get("corrects") else None


def sheets_that_differ(cooperative: UUID) -> Iterator[str]:
    """A sentence for each sheet, or row following from one, that is not what the log says."""
    subjects = subjects_in_log(cooperative)
    for subject in subjects:
        rows = entries_about(cooperative, subject)
        sheet = Sheet.objects.filter(cooperative=cooperative, subject=subject).first()
        yield from _differences(cooperative, folded(subject, rows), sheet)
    # Members are not entries: their sheets come from elsewhere.
    stored = Sheet.objects.filter(cooperative=cooperative).exclude(subject__in=subjects)
    for subject in stored.order_by("subject").values_list("subject", flat=True):
        if type_in(subject) != "member":
            yield f"{subject}: has a sheet and no entry"


def _differences(cooperative: UUID, made: Folded, stored: Sheet | None) -> Iterator[str]:
    if stored is None:
        yield f"{made.subject}: has no sheet"
        return
    wanted = {
        "state": state_text(made.state),
        "upto_seq": made.upto_seq,
        "entry_count": made.entry_count,
        "fold": made.fold,
        "is_finished": is_finished(made.subject, made.state),
        "audience": audience_of_subject(made.subject),
        "last_received_at": made.last_received_at,
    }
    for name, value in wanted.items():
        if getattr(stored, name) != value:
            yield f"{made.subject}: its {name} differs"
    # A finished sheet may be open or closed, by the clock; one that is not must be open.
    if can_open(made.subject) and not stored.is_finished and not stored.is_open:
        yield f"{made.subject}: is closed and not finished"
    for table in tables_that_differ(cooperative, made.subject, made.state):
        yield f"{made.subject}: its rows in {table} differ"
