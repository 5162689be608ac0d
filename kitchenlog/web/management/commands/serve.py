"""`manage.py serve`: everything one machine needs, in one command."""

from __future__ import annotations

import sys
from argparse import ArgumentParser
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand

from kitchenlog.web.supervisor import Child, supervise

# Measured: one process with more threads starved single requests for over a second.
WEB_PROCESSES = 2
WEB_THREADS = 2
# One of its processes that is told to stop while it starts may never hear it.
WEB_STOP_S_MAX = 5


class Command(BaseCommand):
    """Serve the app, the API and the worker."""

    help = "Serve the app and run its worker until stopped."

    def add_arguments(self, parser: ArgumentParser) -> None:
        """What may be left out or added."""
        parser.add_argument(
            "--demo", action="store_true", help="load the demo cooperative once it answers"
        )
        parser.add_argument(
            "--only",
            choices=["web", "worker"],
            help="run one of the two, where each has a machine or container of its own",
        )
        parser.add_argument(
            "--pool",
            choices=["solo", "prefork"],
            default="solo",
            help="prefork for a worker of several processes; not with the file broker",
        )

    def handle(self, *args: Any, **options: Any) -> None:
        """Start what was asked for and stay."""
        children = []
        if options["only"] != "worker":
            children.append(web())
            self.stdout.write(f"kitchenlog is at {_address()}")
            self.stdout.flush()
        if options["only"] != "web":
            children.append(worker(options["pool"]))
        if options["demo"]:
            children.append(demo())
        supervise(children, folder=settings.BASE_DIR)


def web() -> Child:
    """The web server. It starts one of its own processes again when that dies."""
    return Child(
        "web",
        [
            sys.executable, "-m", "granian", "kitchenlog.config.wsgi:application",
            "--interface", "wsgi",
            "--host", settings.KITCHENLOG_BIND,
            "--port", str(settings.KITCHENLOG_PORT),
            "--workers", str(WEB_PROCESSES),
            "--blocking-threads", str(WEB_THREADS),
            "--respawn-failed-workers",
            "--workers-kill-timeout", str(WEB_STOP_S_MAX),
            "--no-ws",
            "--log-level", "warning",
        ],
    )  # fmt: skip


def worker(pool: str) -> Child:
    """The worker. Alone it does one thing at a time, which the file broker serves best."""
    return Child(
        "worker",
        [
            sys.executable, "-m", "celery", "--app", "kitchenlog.config.celery:app", "--quiet",
            "worker", "--pool", pool, "--without-gossip", "--without-mingle",
            "--loglevel", "WARNING",
        ],
    )  # fmt: skip


def demo() -> Child:
    """Load the demo through the front door, as its members' devices would."""
    address = f"http://localhost:{settings.KITCHENLOG_PORT}"
    return Child("demo", [sys.executable, "manage.py", "demo", "--to", address], is_once=True)


def _address() -> str:
    if settings.KITCHENLOG_HOST:
        return f"https://{settings.KITCHENLOG_HOST}"
    return f"http://localhost:{settings.KITCHENLOG_PORT}"
