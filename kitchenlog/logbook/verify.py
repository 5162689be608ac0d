"""Checking the record against itself: the chain over the entries, the sheets over the log."""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from uuid import UUID

from kitchenlog.calc.subjects import type_in
from kitchenlog.entries.envelope import Entry as MadeEntry
from kitchenlog.entries.rights import audience_of_subject
from kitchenlog.entries.upcast import lifted
from kitchenlog.logbook.chain import chain_hash, fingerprint_of_text
from kitchenlog.logbook.drafts import Draft, draft_of
from kitchenlog.logbook.field_rows import tables_that_differ
from kitchenlog.logbook.models import FIRST_CHAIN_HASH, Entry, EntrySubject, LogHead, Sheet
from kitchenlog.logbook.rebuild import Folded, folded
from kitchenlog.logbook.selectors import entries_about, subjects_in_log
from kitchenlog.logbook.services import state_text
from kitchenlog.logbook.subjects import can_open, is_finished
from kitchenlog.logbook.wire import wire_time

ROWS_AT_ONCE = 2_000
# What stands in columns of its own must say the same as the entry it was taken from.
_COLUMNS = (
    "id", "kind", "author", "device", "device_seq", "happened_at", "corrects", "audience",
)  # fmt: skip


@dataclass(frozen=True)
class BadPlace:
    """The first place where the log is not what was written; `seq` is None at its end."""

    seq: int | None
    says: str


def first_bad_place(cooperative: UUID) -> BadPlace | None:
    """Recompute every fingerprint and the chain over them; None if all of it holds (R80)."""
    previous, previous_seq = FIRST_CHAIN_HASH, 0
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
            received_at=wire_time(entry.received_at),
        )
        if previous != entry.chain_hash:
            return BadPlace(entry.seq, f"entry {entry.id} does not follow the one before it")
        previous_seq = entry.seq
    head = LogHead.objects.get(cooperative=cooperative)
    if previous != head.chain_hash:
        return BadPlace(None, "entries are missing at the end")
    if previous_seq > head.last_seq:
        return BadPlace(None, "the next number is one that is taken")
    return None


def _in_order(cooperative: UUID) -> Iterator[Entry]:
    rows = Entry.objects.filter(cooperative=cooperative).order_by("seq")
    return rows.iterator(chunk_size=ROWS_AT_ONCE)


def _differing_column(entry: Entry) -> str | None:
    draft = _as_it_came(entry.canonical)
    return next((n for n in _COLUMNS if getattr(entry, n) != getattr(draft, n)), None)


def _as_it_came(canonical: str) -> Draft:
    """The draft that was appended; what it takes from the entry was checked at that time."""
    made = json.loads(canonical)
    body = lifted(made["kind"], made["version"], made["body"])
    return draft_of(MadeEntry(**made), made=made, body=body)


def sheets_that_differ(cooperative: UUID) -> Iterator[str]:
    """A sentence for each sheet, or row following from one, that is not what the log says."""
    yield from _entries_lost_from_sight(cooperative)
    subjects = subjects_in_log(cooperative)
    for subject in subjects:
        rows = entries_about(cooperative, subject)
        sheet = Sheet.objects.filter(cooperative=cooperative, subject=subject).first()
        yield from _differences(cooperative, folded(cooperative, subject, rows), sheet)
    # Members are not entries: their sheets come from elsewhere.
    stored = Sheet.objects.filter(cooperative=cooperative).exclude(subject__in=subjects)
    for subject in stored.order_by("subject").values_list("subject", flat=True):
        if type_in(subject) != "member":
            yield f"{subject}: has a sheet and no entry"


def _entries_lost_from_sight(cooperative: UUID) -> Iterator[str]:
    """Sheets are folded from links; an entry without its own would be in none of them."""
    linked: dict[int, set[str]] = defaultdict(set)
    links = EntrySubject.objects.filter(cooperative=cooperative)
    for seq, subject in links.values_list("seq", "subject").iterator(ROWS_AT_ONCE):
        linked[seq].add(subject)
    for entry in _in_order(cooperative):
        for subject in _as_it_came(entry.canonical).subjects:
            if subject not in linked[entry.seq]:
                yield f"{subject}: entry {entry.id} is not linked to it"


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
