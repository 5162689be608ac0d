"""Writing to the log: append entries, save sheets, keep aside. One turnstile for all of it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from uuid import UUID, uuid4

from celery import current_app
from django.db import DatabaseError, transaction

from kitchenlog.logbook.chain import chain_hash
from kitchenlog.logbook.drafts import Draft, Kept, KeptStatus
from kitchenlog.logbook.families import missing_links
from kitchenlog.logbook.field_rows import write_rows
from kitchenlog.logbook.models import (
    Entry,
    EntryMention,
    EntrySubject,
    LogHead,
    Quarantined,
    Sheet,
    StaleSubject,
)
from kitchenlog.logbook.subjects import audience_of, can_open, is_finished
from kitchenlog.logbook.wire import to_the_millisecond

RECOMPUTE_TASK = "kitchenlog.logbook.tasks.recompute_stale"


def open_log(cooperative: UUID) -> LogHead:
    """Begin the log of a new cooperative; its epoch is made here and changes with a restore."""
    return LogHead.objects.create(cooperative_id=cooperative, epoch=str(uuid4()))


def epoch_of(cooperative: UUID) -> str:
    """The epoch phones compare: another one means the server went back in time."""
    return LogHead.objects.values_list("epoch", flat=True).get(cooperative=cooperative)


def locked_head(cooperative: UUID) -> LogHead:
    """The head row, held until the transaction ends. Whoever numbers anything holds it."""
    return LogHead.objects.select_for_update().get(cooperative=cooperative)


@transaction.atomic(savepoint=False)
def append_entries(
    drafts: Sequence[Draft], *, cooperative: UUID, received_at: datetime, skew_ms: int
) -> list[Kept]:
    """Append each draft once, in the order given. Sending it again returns the same numbers."""
    received_at = to_the_millisecond(received_at)
    head = locked_head(cooperative)
    known = _known(cooperative, drafts)
    new: list[Draft] = []
    verdicts: list[KeptStatus] = []
    for draft in drafts:
        status = _verdict(draft, known)
        verdicts.append(status)
        if status == "created":
            known[draft.id] = (None, draft.fingerprint)
            new.append(draft)
    arrival = Arrival(received_at, skew_ms)
    entries = _insert(head, new, arrival)
    numbered = {entry.id: entry.seq for entry in entries}
    if entries:
        _link_and_mark_stale(head, entries, [d for d in new if d.id in numbered])
    return [
        _kept(draft, status, known, numbered)
        for draft, status in zip(drafts, verdicts, strict=True)
    ]


@dataclass(frozen=True)
class Arrival:
    """When entries came, and how far their device's clock was from ours."""

    received_at: datetime
    skew_ms: int


Known = dict[UUID, tuple[int | None, str]]  # id -> number (None: in this push), fingerprint


def _known(cooperative: UUID, drafts: Sequence[Draft]) -> Known:
    rows = Entry.objects.filter(cooperative=cooperative, id__in=[d.id for d in drafts])
    return {row[0]: (row[1], row[2]) for row in rows.values_list("id", "seq", "fingerprint")}


def _verdict(draft: Draft, known: Known) -> KeptStatus:
    if draft.id not in known:
        return "created"
    return "exists" if known[draft.id][1] == draft.fingerprint else "mismatch"


def _kept(draft: Draft, status: KeptStatus, known: Known, numbered: Mapping[UUID, int]) -> Kept:
    seq = numbered.get(draft.id) or known[draft.id][0]
    if seq is None:
        return Kept(draft.id, "unstorable", None)
    return Kept(draft.id, status, seq)


def _insert(head: LogHead, drafts: Sequence[Draft], arrival: Arrival) -> list[Entry]:
    """All in one go; if the database refuses that, one by one, leaving out what it refuses.

    The second way costs a savepoint each and is rare: `parse` already refuses what is known
    not to fit.
    """
    if not drafts:
        return []
    before = (head.last_seq, head.chain_hash)
    try:
        return _insert_together(head, drafts, arrival)
    except (DatabaseError, OverflowError, ValueError):
        head.last_seq, head.chain_hash = before
    stored = []
    for draft in drafts:
        before = (head.last_seq, head.chain_hash)
        try:
            stored += _insert_together(head, [draft], arrival)
        except (DatabaseError, OverflowError, ValueError):
            head.last_seq, head.chain_hash = before
    return stored


def _insert_together(head: LogHead, drafts: Sequence[Draft], arrival: Arrival) -> list[Entry]:
    entries = [_next_entry(head, draft, arrival) for draft in drafts]
    with transaction.atomic():
        Entry.objects.bulk_create(entries)
    return entries


def _next_entry(head: LogHead, draft: Draft, arrival: Arrival) -> Entry:
    head.last_seq += 1
    head.chain_hash = chain_hash(
        head.chain_hash,
        fingerprint=draft.fingerprint,
        seq=head.last_seq,
        received_at=arrival.received_at,
    )
    return Entry(
        cooperative_id=head.cooperative_id,
        id=draft.id,
        seq=head.last_seq,
        kind=draft.kind,
        author=draft.author,
        device=draft.device,
        device_seq=draft.device_seq,
        happened_at=draft.happened_at,
        corrects=draft.corrects,
        audience=draft.audience,
        canonical=draft.canonical,
        fingerprint=draft.fingerprint,
        chain_hash=head.chain_hash,
        received_at=arrival.received_at,
        skew_ms=arrival.skew_ms,
    )


def _link_and_mark_stale(
    head: LogHead, entries: Sequence[Entry], drafts: Sequence[Draft]
) -> None:
    cooperative = head.cooperative_id
    links = [
        EntrySubject(
            cooperative_id=cooperative,
            subject=subject,
            seq=entry.seq,
            can_open=can_open(subject),
        )
        for entry, draft in zip(entries, drafts, strict=True)
        for subject in draft.subjects
    ]
    EntrySubject.objects.bulk_create(links)
    EntryMention.objects.bulk_create(
        EntryMention(cooperative_id=cooperative, subject=subject, seq=entry.seq)
        for entry, draft in zip(entries, drafts, strict=True)
        for subject in draft.mentions
    )
    widened = missing_links(cooperative, entries)
    EntrySubject.objects.bulk_create(widened)
    subjects = {link.subject for link in (*links, *widened)}
    _reopen(cooperative, subjects)
    mark_stale(head, subjects)
    head.save(update_fields=["last_seq", "chain_hash", "has_stale"])


def _reopen(cooperative: UUID, subjects: Iterable[str]) -> None:
    """A sheet is open again from the moment something arrives, or a pull would skip it."""
    openable = [subject for subject in subjects if can_open(subject)]
    if openable:
        Sheet.objects.filter(
            cooperative=cooperative, subject__in=openable, is_open=False
        ).update(is_open=True)


def mark_stale(head: LogHead, subjects: Iterable[str]) -> None:
    """Put subjects on the work list of a locked head and ring once; the caller saves the head.

    While the list is not empty a worker is at it or a sweep will be, so one ring is enough.
    """
    StaleSubject.objects.bulk_create(
        [
            StaleSubject(
                cooperative_id=head.cooperative_id, subject=subject, mark=head.last_seq
            )
            for subject in sorted(subjects)
        ],
        update_conflicts=True,
        unique_fields=["cooperative", "subject"],
        update_fields=["mark"],
    )
    if not head.has_stale:
        head.has_stale = True
        # Robust: a silent broker must not fail an upload that is already committed.
        transaction.on_commit(ring, robust=True)


def ring() -> None:
    """Tell a worker that there is work. The message holds nothing; losing it costs a sweep."""
    current_app.send_task(RECOMPUTE_TASK, retry=False, ignore_result=True)


@transaction.atomic(savepoint=False)
def save_sheet(  # noqa: PLR0913 a sheet has these parts, each named by the caller
    *,
    cooperative: UUID,
    subject: str,
    state: Mapping[str, Any],
    upto_seq: int,
    entry_count: int,
    fold: int,
    is_open: bool,
    last_received_at: datetime | None = None,
) -> Sheet:
    """Save what a subject adds up to, under a new number, with its field's own rows."""
    head = locked_head(cooperative)
    head.last_seq += 1
    head.save(update_fields=["last_seq"])
    sheet = Sheet(
        cooperative_id=cooperative,
        subject=subject,
        seq=head.last_seq,
        upto_seq=upto_seq,
        entry_count=entry_count,
        fold=fold,
        is_open=is_open,
        is_finished=is_finished(subject, state),
        audience=audience_of(subject),
        last_received_at=last_received_at,
        state=state_text(state),
    )
    _upsert(sheet)
    write_rows(cooperative, subject, state)
    return sheet


def state_text(state: Mapping[str, Any]) -> str:
    """The state as stored, sent and compared: keys sorted, no spaces."""
    return json.dumps(state, sort_keys=True, separators=(",", ":"), ensure_ascii=False)


def _upsert(sheet: Sheet) -> None:
    Sheet.objects.bulk_create(
        [sheet],
        update_conflicts=True,
        unique_fields=["cooperative", "subject"],
        update_fields=[
            "seq", "upto_seq", "entry_count", "fold", "is_open", "is_finished",
            "audience", "last_received_at", "state",
        ],
    )  # fmt: skip


def settle(head: LogHead, subject: str) -> None:
    """Cross a subject off the work list of a locked head."""
    StaleSubject.objects.filter(cooperative=head.cooperative_id, subject=subject).delete()


@transaction.atomic(savepoint=False)
def close_quiet_sheets(*, cooperative: UUID, quiet_since: datetime) -> int:
    """Close finished sheets about which nothing arrived since; how many were closed."""
    head = locked_head(cooperative)
    quiet = Sheet.objects.filter(
        cooperative=cooperative,
        is_open=True,
        is_finished=True,
        last_received_at__lt=quiet_since,
    ).order_by("subject")
    sheets = list(quiet)
    for sheet in sheets:
        head.last_seq += 1
        sheet.seq = head.last_seq
        sheet.is_open = False
    Sheet.objects.bulk_update(sheets, ["seq", "is_open"])
    head.save(update_fields=["last_seq"])
    return len(sheets)


@dataclass(frozen=True, kw_only=True)
class Aside:
    """What stands outside the record: why, and what was sent, byte for byte."""

    code: str
    detail: str
    entry: UUID | None
    is_readable: bool
    digest: str
    raw: bytes


def keep_aside(
    rows: Sequence[Aside],
    *,
    cooperative: UUID,
    author: UUID,
    device: UUID,
    received_at: datetime,
) -> None:
    """Keep what stands outside the record; the same thing again changes nothing."""
    Quarantined.objects.bulk_create(
        [
            Quarantined(
                cooperative_id=cooperative,
                digest=row.digest,
                code=row.code,
                detail=row.detail,
                entry_id=row.entry,
                is_readable=row.is_readable,
                author=author,
                device=device,
                raw=row.raw,
                received_at=to_the_millisecond(received_at),
            )
            for row in rows
        ],
        ignore_conflicts=True,
    )
