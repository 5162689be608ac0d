"""The worker's application, and the clock inside the worker."""

import os
import threading
import warnings
from typing import Any

from celery import Celery
from celery.beat import EmbeddedService
from celery.signals import task_postrun, worker_init, worker_ready
from django.conf import settings
from kombu.transport import TRANSPORT_ALIASES

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "kitchenlog.config.settings")

# It warns of messages that could hold code. Ours hold nothing, and JSON is all that is read.
warnings.filterwarnings("ignore", message=".*superuser privileges")

WORKER_NICENESS = 10

TRANSPORT_ALIASES["filesystem"] = "kitchenlog.config.doorbell:Transport"

app = Celery("kitchenlog")
app.config_from_object("django.conf:settings", namespace="CELERY")
app.autodiscover_tasks()


@worker_init.connect
def begin(**_: Any) -> None:
    """Stand back, and tell the health page that there is a worker.

    Where a machine has too little for both, adding up waits for uploads: a person waits for
    those. What waits is in the database and is done as soon as the uploads pause.
    """
    os.nice(WORKER_NICENESS)
    settings.WORKER_SEEN_FILE.touch()


@task_postrun.connect
def note_work(**_: Any) -> None:
    """The sweep comes every few seconds: a file that is older speaks of a dead worker."""
    settings.WORKER_SEEN_FILE.touch()


@worker_ready.connect
def start_clock(**_: Any) -> None:
    """Tick inside the worker.

    `celery worker -B` makes the clock a second process that outlives a killed worker, so
    that after a restart two clocks tick. A daemon thread ends with its process.
    """
    if not settings.KITCHENLOG_WORKER_HAS_CLOCK:
        return
    clock = EmbeddedService(app, thread=True, scheduler_cls="celery.beat:Scheduler")
    assert isinstance(clock, threading.Thread)
    clock.daemon = True
    clock.start()
