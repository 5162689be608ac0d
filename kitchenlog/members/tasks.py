"""What the worker does for members."""

from datetime import UTC, datetime

from celery import shared_task

from kitchenlog.members import limits


@shared_task
def forget_old_attempts() -> None:
    """Drop counts whose window closed long ago."""
    limits.forget_old_attempts(now=datetime.now(UTC))
