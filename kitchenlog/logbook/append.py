"""Appending to the log: number, chain, insert, link, put on the work list; or nothing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import NamedTuple
from uuid import UUID

from django.db import DatabaseError, transaction

from kitchenlog.logbook.chain import chain_hash
from kitchenlog.logbook.drafts import Draft, Kept, KeptStatus
from kitchenlog.logbook.families import Link, missing_links
from kitchenlog.logbook.insert import insert_rows
from kitchenlog.logbook.models import Entry, EntryMention, EntrySubject, LogHead, Sheet
from kitchenlog.logbook.selectors import LogPlace, is_among, relatives_in_log
from kitchenlog.logbook.subjects import can_open
from kitchenlog.logbook.turnstile import locked_head, mark_stale
from kitchenlog.logbook.wire import to_the_millisecond, wire_time


class Appended(NamedTuple):
    """What became of each draft, in the order given, and where the log stands after it."""

    kept: list[Kept]
    place: LogPlace


@transaction.atomic(savepoint=False)
def append_entries(
    drafts: Sequence[Draft], *, cooperative: UUID, received_at: datetime, skew_ms: int
) -> Appended:
    """Append each draft once, in the order given. Sending it again returns the same numbers."""
    received_at = to_the_millisecond(received_at)
    head = locked_head(cooperative)
    known, is_named = _known(cooperative, drafts)
    new: list[Draft] = []
    statuses: list[KeptStatus] = []
    for draft in drafts:
        status = _status(draft, known)
        statuses.append(status)
        if status == "created":
            known[draft.id] = (None, draft.fingerprint)
            new.append(draft)
    numbered = _insert(head, new, Arrival(received_at, skew_ms))
    if numbered:
        _link_and_mark_stale(head, numbered, is_named=is_named)
    numbers = {each.draft.id: each.seq for each in numbered}
    kept = [
        _kept(draft, status, known, numbers)
        for draft, status in zip(drafts, statuses, strict=True)
    ]
    return Appended(kept, LogPlace(head.epoch, head.last_seq))


@dataclass(frozen=True)
class Arrival:
    """When entries came, and how far their device's clock was from ours."""

    received_at: datetime
    skew_ms: int


class Numbered(NamedTuple):
    """A draft with its place in the log."""

    draft: Draft
    seq: int
    chain_hash: str


Known = dict[str, tuple[int | None, str]]  # id -> number (None: in this push), fingerprint


def _known(cooperative: UUID, drafts: Sequence[Draft]) -> tuple[Known, bool]:
    """Those the log holds already, and whether it holds corrections of any of them."""
    ids = {draft.id for draft in drafts}
    found = relatives_in_log(cooperative, ids)
    known: Known = {each.id: (each.seq, each.fingerprint) for each in found if each.id in ids}
    return known, any(each.corrects in ids for each in found)


def _status(draft: Draft, known: Known) -> KeptStatus:
    if draft.id not in known:
        return "created"
    return "exists" if known[draft.id][1] == draft.fingerprint else "mismatch"


def _kept(draft: Draft, status: KeptStatus, known: Known, numbers: Mapping[str, int]) -> Kept:
    seq = numbers.get(draft.id) or known[draft.id][0]
    if seq is None:
        return Kept(draft.id, "unstorable", None)
    return Kept(draft.id, status, seq)


def _insert(head: LogHead, drafts: Sequence[Draft], arrival: Arrival) -> list[Numbered]:
    """All in one go; if the database refuses that, one by one, leaving out what it refuses.

    The second way costs a savepoint each and is rare: `parse` already refuses what is known
    not to fit.
    """
    if not drafts:
        return []
    try:
        return _insert_together(head, drafts, arrival)
    except _REFUSED:
        stored = []
        for draft in drafts:
            try:
                stored += _insert_together(head, [draft], arrival)
            except _REFUSED:
                continue
        return stored


# What drivers raise for a value that does not fit; the last two before the database sees it.
_REFUSED = (DatabaseError, OverflowError, ValueError)

_ENTRY_COLUMNS = (
    "id", "seq", "kind", "author", "device", "device_seq", "happened_at", "corrects",
    "audience", "canonical", "fingerprint", "chain_hash",
)  # fmt: skip


def _insert_together(
    head: LogHead, drafts: Sequence[Draft], arrival: Arrival
) -> list[Numbered]:
    """Number and insert; the head moves on only if the database took all of them."""
    numbered = _numbered(head, drafts, arrival)
    same = {
        "cooperative": head.cooperative_id,
        "received_at": arrival.received_at,
        "skew_ms": arrival.skew_ms,
    }
    with transaction.atomic():
        insert_rows(Entry, _ENTRY_COLUMNS, map(_row, numbered), same=same)
    head.last_seq, head.chain_hash = numbered[-1].seq, numbered[-1].chain_hash
    return numbered


def _numbered(head: LogHead, drafts: Sequence[Draft], arrival: Arrival) -> list[Numbered]:
    numbered = []
    previous, received_at = head.chain_hash, wire_time(arrival.received_at)
    for seq, draft in enumerate(drafts, head.last_seq + 1):
        previous = chain_hash(
            previous,
            fingerprint=draft.fingerprint,
            seq=seq,
            received_at=received_at,
        )
        numbered.append(Numbered(draft, seq, previous))
    return numbered


def _row(each: Numbered) -> tuple[object, ...]:
    draft = each.draft
    return (
        draft.id, each.seq, draft.kind, draft.author, draft.device, draft.device_seq,
        draft.happened_at, draft.corrects, draft.audience, draft.canonical, draft.fingerprint,
        each.chain_hash,
    )  # fmt: skip


def _link_and_mark_stale(
    head: LogHead, numbered: Sequence[Numbered], *, is_named: bool
) -> None:
    """`is_named`: the log held corrections of some of these before they came."""
    cooperative = head.cooperative_id
    links = [Link(subject, each.seq) for each in numbered for subject in each.draft.subjects]
    _insert_links(cooperative, links)
    insert_rows(
        EntryMention,
        ("subject", "seq"),
        ((subject, each.seq) for each in numbered for subject in each.draft.mentions),
        same={"cooperative": cooperative},
    )
    widened: list[Link] = []
    if is_named or any(each.draft.corrects is not None for each in numbered):
        widened = missing_links(cooperative, [each.draft for each in numbered])
        _insert_links(cooperative, widened)
    subjects = {link.subject for link in (*links, *widened)}
    _reopen(cooperative, subjects)
    mark_stale(head, subjects)
    head.save(update_fields=["last_seq", "chain_hash", "has_stale"])


def _insert_links(cooperative: UUID, links: Sequence[Link]) -> None:
    insert_rows(
        EntrySubject,
        ("subject", "seq", "can_open"),
        ((link.subject, link.seq, can_open(link.subject)) for link in links),
        same={"cooperative": cooperative},
    )


def _reopen(cooperative: UUID, subjects: Iterable[str]) -> None:
    """A sheet is open again from the moment something arrives, or a pull would skip it."""
    openable = [subject for subject in subjects if can_open(subject)]
    if openable:
        closed = Sheet.objects.filter(cooperative=cooperative, is_open=False)
        closed.filter(is_among("subject", openable, "text")).update(is_open=True)
