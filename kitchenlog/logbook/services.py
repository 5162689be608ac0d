"""Writing to the log, for all above it: entries, sheets, what is kept aside."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from uuid import UUID, uuid4

from django.db import transaction

from kitchenlog.calc.folds import FOLDS, LEANED_ON, LEANING_KINDS, leaning_types
from kitchenlog.calc.subjects import type_in
from kitchenlog.entries.rights import audience_of_subject
from kitchenlog.logbook.append import append_entries
from kitchenlog.logbook.field_rows import write_rows
from kitchenlog.logbook.insert import insert_rows
from kitchenlog.logbook.models import LogHead, Quarantined, Sheet, StaleSubject
from kitchenlog.logbook.selectors import states_of, subjects_mentioning
from kitchenlog.logbook.subjects import is_finished
from kitchenlog.logbook.turnstile import locked_head, mark_stale
from kitchenlog.logbook.wire import to_the_millisecond

__all__ = [
    "NewAside",
    "NewSheet",
    "append_entries",
    "close_quiet_sheets",
    "epoch_of",
    "keep_aside",
    "mark_outdated_sheets",
    "open_log",
    "save_sheets",
    "state_text",
]


def open_log(cooperative: UUID) -> LogHead:
    """Begin the log of a new cooperative; its epoch is made here and changes with a restore."""
    return LogHead.objects.create(cooperative_id=cooperative, epoch=str(uuid4()))


def epoch_of(cooperative: UUID) -> str:
    """The epoch phones compare: another one means the server went back in time."""
    return LogHead.objects.values_list("epoch", flat=True).get(cooperative=cooperative)


@dataclass(frozen=True, kw_only=True)
class NewSheet:
    """What a subject adds up to, before it has a number."""

    subject: str
    state: Mapping[str, Any]
    upto_seq: int
    entry_count: int
    fold: int
    is_open: bool
    last_received_at: datetime | None = None


_SHEET_CHANGES = (
    "seq", "upto_seq", "entry_count", "fold", "is_open", "is_finished", "audience",
    "last_received_at", "state",
)  # fmt: skip


def save_sheets(head: LogHead, sheets: Sequence[NewSheet]) -> None:
    """Save sheets behind a locked head, each under a new number, with its field's own rows.

    What leans on one that changes is put on the work list.
    """
    leaning = _leaning_on(head.cooperative_id, sheets)
    rows = []
    for sheet in sheets:
        head.last_seq += 1
        rows.append(_row(head, sheet))
    head.save(update_fields=["last_seq"])
    insert_rows(
        Sheet,
        ("subject", *_SHEET_CHANGES),
        rows,
        same={"cooperative": head.cooperative_id},
        overwrite=_SHEET_CHANGES,
    )
    write_rows(head.cooperative_id, {sheet.subject: sheet.state for sheet in sheets})
    if leaning:
        mark_stale(head, leaning)
        head.save(update_fields=["has_stale"])


def _leaning_on(cooperative: UUID, sheets: Sequence[NewSheet]) -> set[str]:
    """Subjects to fold anew because of what these sheets will say from now on."""
    leaned_on = [sheet for sheet in sheets if type_in(sheet.subject) in LEANED_ON]
    before = states_of(cooperative, [sheet.subject for sheet in leaned_on])
    found: set[str] = set()
    for sheet in leaned_on:
        types = leaning_types(sheet.subject, before.get(sheet.subject), sheet.state)
        for each in types:
            kinds = LEANING_KINDS.get(each)
            found.update(subjects_mentioning(cooperative, sheet.subject, each, kinds=kinds))
    return found


def _row(head: LogHead, sheet: NewSheet) -> tuple[object, ...]:
    return (
        sheet.subject, head.last_seq, sheet.upto_seq, sheet.entry_count,
        sheet.fold, sheet.is_open, is_finished(sheet.subject, sheet.state),
        audience_of_subject(sheet.subject), sheet.last_received_at, state_text(sheet.state),
    )  # fmt: skip


def state_text(state: Mapping[str, Any]) -> str:
    """The state as stored, sent and compared: keys sorted, no spaces."""
    return json.dumps(state, sort_keys=True, separators=(",", ":"), ensure_ascii=False)


@transaction.atomic(savepoint=False)
def close_quiet_sheets(*, cooperative: UUID, quiet_since: datetime) -> int:
    """Close finished sheets about which nothing arrived since; how many were closed.

    Not those on the work list: something did arrive and their sheet does not know it yet. A
    pull would pass by that entry for good.
    """
    head = locked_head(cooperative)
    behind = StaleSubject.objects.filter(cooperative=cooperative)
    quiet = Sheet.objects.filter(
        cooperative=cooperative,
        is_open=True,
        is_finished=True,
        last_received_at__lt=quiet_since,
    ).exclude(subject__in=behind.values("subject"))
    sheets = list(quiet.order_by("subject"))
    for sheet in sheets:
        head.last_seq += 1
        sheet.seq = head.last_seq
        sheet.is_open = False
    Sheet.objects.bulk_update(sheets, ["seq", "is_open"])
    head.save(update_fields=["last_seq"])
    return len(sheets)


@dataclass(frozen=True, kw_only=True)
class NewAside:
    """What is to stand outside the record: why, and what was sent, byte for byte."""

    code: str
    detail: str
    entry: UUID | None
    is_readable: bool
    digest: str
    raw: bytes


@transaction.atomic(savepoint=False)
def mark_outdated_sheets(*, cooperative: UUID) -> int:
    """Put sheets on the work list that an older fold made; how many there were."""
    head = locked_head(cooperative)
    outdated = [
        subject
        for sort, (_, number) in FOLDS.items()
        for subject in Sheet.objects.filter(
            cooperative=cooperative, subject__startswith=f"{sort}:", fold__lt=number
        ).values_list("subject", flat=True)
    ]
    if outdated:
        mark_stale(head, outdated)
        head.save(update_fields=["has_stale"])
    return len(outdated)


def keep_aside(
    rows: Sequence[NewAside],
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
