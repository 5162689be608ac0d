"""What the worker does for instruments."""

from celery import shared_task
from django.utils import timezone

from kitchenlog.instruments.services import count_all_uses


@shared_task(name="kitchenlog.instruments.tasks.count_uses")
def count_uses() -> None:
    """Count the uses of every instrument since its last check."""
    count_all_uses(at=timezone.now())
