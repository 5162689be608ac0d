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
from kitchenlog.logbook.stored_rows import Misread, rows_in_order
from kitchenlog.logbook.subjects import can_open, is_finished
from kitchenlog.logbook.verify_links import LinkCheck
from kitchenlog.logbook.wire import wire_time

ROWS_AT_ONCE = 2_000
# What stands in columns of its own must say the same as the entry it was taken from.
_COLUMNS = (
    "id", "kind", "author", "device", "device_seq", "happened_at", "corrects", "audience",
)  # fmt: skip


# What parsing raises for a text that is not an entry.
_NO_ENTRY = (KeyError, TypeError, ValueError, AttributeError)


@dataclass(frozen=True)
class BadPlace:
    """A place where the log is not what was written; `seq` is None where it has no number."""

    seq: int | None
    says: str
    is_of_links: bool = False


def bad_places(cooperative: UUID) -> Iterator[BadPlace]:
    """Recompute every fingerprint, the chain over them and the links; none if all holds (R80).

    After a bad place the chain goes on from what stands there, so that one is named once.
    """
    previous, previous_seq = FIRST_CHAIN_HASH, 0
    links = LinkCheck(cooperative)
    for part in rows_in_order(cooperative):
        drafts: dict[int, Draft] = {}
        for row in part:
            draft, wrong = _examined(row, previous)
            if wrong is not None:
                yield BadPlace(row.seq, wrong)
            if draft is not None and row.seq is not None:
                drafts[row.seq] = draft
            previous = previous if row.chain_hash is None else row.chain_hash
            previous_seq = previous_seq if row.seq is None else row.seq
        yield from _of_links(links.wrong_in(drafts))
    yield from _of_links(links.wrong_in_families())
    yield from _of_links(links.without_entry())
    yield from _bad_end(cooperative, previous, previous_seq)


def first_bad_place(cooperative: UUID) -> BadPlace | None:
    """The first place where the entries or their chain are not what was written, or None."""
    return next((bad for bad in bad_places(cooperative) if not bad.is_of_links), None)


def _of_links(wrong: Iterator[tuple[int, str]]) -> Iterator[BadPlace]:
    return (BadPlace(seq, says, is_of_links=True) for seq, says in wrong)


def _bad_end(cooperative: UUID, previous: str, previous_seq: int) -> Iterator[BadPlace]:
    head = LogHead.objects.get(cooperative=cooperative)
    if previous != head.chain_hash:
        yield BadPlace(None, "entries are missing at the end")
    if not isinstance(head.last_seq, int) or previous_seq > head.last_seq:
        yield BadPlace(None, "the next number is one that is taken")


def _examined(row: Entry | Misread, previous: str) -> tuple[Draft | None, str | None]:
    """What the entry says, and what is wrong with its row."""
    if isinstance(row, Misread):
        return None, row.says
    if fingerprint_of_text(row.canonical) != row.fingerprint:
        return None, f"entry {row.id} is not what its fingerprint says"
    try:
        draft = _as_it_came(row.canonical)
    except _NO_ENTRY:
        return None, f"entry {row.id} cannot be read as an entry"
    differing = next(
        (n for n in _COLUMNS if _as_written(getattr(row, n)) != getattr(draft, n)), None
    )
    if differing is not None:
        return draft, f"entry {row.id}: its {differing} was changed"
    if not _follows(row, previous):
        return draft, f"entry {row.id} does not follow the one before it"
    return draft, None


def _as_written(stored: object) -> object:
    """A draft has its ids as text."""
    return str(stored) if isinstance(stored, UUID) else stored


def _follows(entry: Entry, previous: str) -> bool:
    expected = chain_hash(
        previous,
        fingerprint=entry.fingerprint,
        seq=entry.seq,
        received_at=wire_time(entry.received_at),
    )
    return entry.chain_hash == expected


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
    for entry in (
        Entry.objects.filter(cooperative=cooperative)
        .order_by("seq")
        .iterator(chunk_size=ROWS_AT_ONCE)
    ):
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
