"""What the worker is asked to do: one line each, no arguments."""

from celery import shared_task
from django.utils import timezone

from kitchenlog.logbook.work import close_quiet, recompute_for_a_slice


@shared_task(name="kitchenlog.logbook.tasks.recompute_stale")
def recompute_stale() -> None:
    """Bring stale sheets up to the log."""
    recompute_for_a_slice(clock=timezone.now)


@shared_task(name="kitchenlog.logbook.tasks.close_quiet_sheets")
def close_quiet_sheets() -> None:
    """Close finished sheets that have been quiet long enough (R3)."""
    close_quiet(at=timezone.now())
