"""The head row: whoever numbers anything holds it, and lists the work they leave to do."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from uuid import UUID

from celery import current_app
from django.db import transaction

from kitchenlog.logbook.insert import insert_rows
from kitchenlog.logbook.models import LogHead, StaleSubject

RECOMPUTE_TASK = "kitchenlog.logbook.tasks.recompute_stale"


def locked_head(cooperative: UUID) -> LogHead:
    """The head row, held until the transaction ends.

    On SQLite the lock is a no-op: there BEGIN IMMEDIATE does its work.
    """
    return LogHead.objects.select_for_update().get(cooperative=cooperative)


def all_heads() -> list[LogHead]:
    """Heads of all cooperatives, not locked."""
    return list(LogHead.objects.select_related("cooperative").order_by("cooperative_id"))


def mark_stale(head: LogHead, subjects: Iterable[str]) -> None:
    """Put subjects on the work list of a locked head and ring once; the caller saves the head.

    While the list is not empty a worker is at it or a sweep will be, so one ring is enough.
    """
    insert_rows(
        StaleSubject,
        ("subject",),
        ((subject,) for subject in sorted(subjects)),
        same={"cooperative": head.cooperative_id, "mark": head.last_seq},
        overwrite=("mark",),
    )
    if not head.has_stale:
        head.has_stale = True
        # Robust: a silent broker must not fail an upload that is already committed.
        transaction.on_commit(ring, robust=True)


def settle(head: LogHead, subjects: Sequence[str]) -> None:
    """Cross subjects off the work list of a locked head."""
    rows = StaleSubject.objects.filter(cooperative=head.cooperative_id, subject__in=subjects)
    rows.delete()


def ring() -> None:
    """Tell a worker that there is work. The message holds nothing; losing it costs a sweep."""
    current_app.send_task(RECOMPUTE_TASK, retry=False, ignore_result=True)
