"""What all tests stand on: a database of either kind, people, a real server, a browser."""

from __future__ import annotations

import atexit
import os
import shutil
import tempfile
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import Any

import hypothesis
import pytest
from django.conf import settings
from django.core.management import call_command
from django.db import connection, connections

from kitchenlog.config.celery import app as celery_app
from kitchenlog.config.environment import database_settings
from tests.browsers import BROWSER_FLAGS, chromium
from tests.people import Kitchen
from tests.servers import KitchenlogServer, postgresql

# A busy machine is slow, not wrong; and a failure must come again on another one.
hypothesis.settings.register_profile("kitchenlog", deadline=None, derandomize=True)
hypothesis.settings.load_profile("kitchenlog")

ENGINE = os.environ.get("KITCHENLOG_TEST_DATABASE", "sqlite")
APP_ROLE = "kitchenlog_app"

# Playwright's loop runs in the test's thread, and Django would take that for async code.
os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"

_RUN = Path(tempfile.mkdtemp(prefix="kl-tests-"))
_STANDING = ExitStack()
_STANDING.callback(shutil.rmtree, _RUN, ignore_errors=True)
atexit.register(_STANDING.close)


def _point_settings_at(run: Path) -> None:
    """Nothing a test does may touch the data folder of whoever runs it.

    pytest-django reads the settings before any conftest, so they are changed in place.
    """
    assert ENGINE in ("sqlite", "postgresql"), "KITCHENLOG_TEST_DATABASE: sqlite or postgresql"
    address = f"sqlite:///{run}/unused.sqlite3"
    if ENGINE == "postgresql":
        given = os.environ.get("KITCHENLOG_TEST_POSTGRESQL")
        address = given or _STANDING.enter_context(postgresql())
    database = database_settings(address, root=run)
    database["CONN_MAX_AGE"] = 0
    database["TEST"] = {"NAME": str(run / "tests.sqlite3") if ENGINE == "sqlite" else None}
    settings.DATABASES["default"] = database
    connections.__dict__.pop("settings", None)
    connections._settings = None
    if hasattr(connections._connections, "default"):
        del connections["default"]
    settings.KITCHENLOG_DATA = run
    settings.WORKER_SEEN_FILE = run / "worker_seen"
    # A thousand rounds of hashing are for attackers, not for tests.
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
    celery_app.conf.broker_url = "memory://"


_point_settings_at(_RUN)


@pytest.fixture(scope="session")
def _prepared(django_db_blocker: Any) -> str:
    """A migrated database of our own: a file to copy, or a database to empty."""
    name = str(_RUN / "prepared.sqlite3") if ENGINE == "sqlite" else "kitchenlog_log"
    with django_db_blocker.unblock():
        if ENGINE == "postgresql":
            with connection.cursor() as cursor:
                cursor.execute(f"DROP DATABASE IF EXISTS {name}")
                cursor.execute(f"CREATE DATABASE {name}")
        with _DefaultDatabase(name):
            call_command("migrate", verbosity=0)
            _finish_preparing()
    return name


def _finish_preparing() -> None:
    with connection.cursor() as cursor:
        if ENGINE == "sqlite":
            cursor.execute("PRAGMA wal_checkpoint(TRUNCATE)")
            return
        cursor.execute("SELECT 1 FROM pg_roles WHERE rolname = %s", [APP_ROLE])
        if cursor.fetchone() is None:
            cursor.execute(f"CREATE ROLE {APP_ROLE} NOLOGIN NOBYPASSRLS")
        rights = "SELECT, INSERT, UPDATE, DELETE ON ALL TABLES"
        cursor.execute(f"GRANT {rights} IN SCHEMA public TO {APP_ROLE}")
        cursor.execute(f"GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO {APP_ROLE}")


@pytest.fixture
def log_db(_prepared: str, tmp_path: Path, django_db_blocker: Any) -> Iterator[None]:
    """A database whose commits are real, for threads, triggers and on_commit.

    SQLite: a fresh copy of a migrated file, because triggers on the log would break a
    flush. PostgreSQL: emptied afterwards; TRUNCATE fires no row trigger.
    """
    name = _prepared
    if ENGINE == "sqlite":
        name = str(tmp_path / "kitchenlog.sqlite3")
        shutil.copyfile(_prepared, name)
    with django_db_blocker.unblock(), _DefaultDatabase(name):
        yield
        if ENGINE == "postgresql":
            _empty_postgresql()


@pytest.fixture
def walled_db(log_db: None) -> Iterator[None]:
    """As `log_db`, but on PostgreSQL as the role that row security binds (R68).

    A superuser, as which the other tests connect, passes every policy.
    """
    if ENGINE == "sqlite":
        yield
        return
    options = {"options": f"-c role={APP_ROLE}"}
    with _DefaultDatabase(connection.settings_dict["NAME"], options=options):
        yield


class _DefaultDatabase:
    """For a while the default connection, in every thread, is to this database."""

    def __init__(self, name: str, *, options: dict[str, str] | None = None) -> None:
        self.now = (name, options)

    def __enter__(self) -> None:
        known = connections.settings["default"]
        self.before = (known["NAME"], known["OPTIONS"])
        name, options = self.now
        self._move_to(name, {**known["OPTIONS"], **(options or {})})

    def __exit__(self, *_: object) -> None:
        self._move_to(*self.before)

    @staticmethod
    def _move_to(name: str, options: dict[str, Any]) -> None:
        connection.close()
        for known in (connections.settings["default"], connection.settings_dict):
            known["NAME"] = name
            known["OPTIONS"] = options


def _empty_postgresql() -> None:
    tables = [
        name for name in connection.introspection.table_names() if name != "django_migrations"
    ]
    with connection.cursor() as cursor:
        quoted = ", ".join(connection.ops.quote_name(name) for name in tables)
        cursor.execute(f"TRUNCATE {quoted} CASCADE")


@pytest.fixture
def kitchen(request: pytest.FixtureRequest) -> Kitchen:
    """A cooperative with one member of each role; needs `django_db` or `log_db` beside it."""
    return Kitchen("hearth")


@pytest.fixture
def other_kitchen() -> Kitchen:
    """Another cooperative, whose record must never be seen."""
    return Kitchen("orchard")


@pytest.fixture
def no_limits(settings: Any) -> None:
    """Lift every limit on how often."""
    settings.SIGN_INS_PER_MINUTE = None
    settings.PUSHES_PER_MINUTE = None
    settings.PUSHED_ENTRIES_PER_DAY = None


@pytest.fixture
def server(tmp_path: Path) -> Iterator[KitchenlogServer]:
    """The real processes, started; kill and start them as you like."""
    running = KitchenlogServer(tmp_path)
    running.start()
    try:
        yield running
    finally:
        running.stop()


@pytest.fixture
def make_server(tmp_path: Path) -> Iterator[Callable[..., KitchenlogServer]]:
    """Servers not yet started, for tests that set the environment."""
    made: list[KitchenlogServer] = []

    def make(**environment: str) -> KitchenlogServer:
        folder = tmp_path / f"server{len(made)}"
        folder.mkdir()
        made.append(KitchenlogServer(folder, environment=environment))
        return made[-1]

    yield make
    for one in made:
        one.stop()


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args: dict[str, Any]) -> dict[str, Any]:
    """The machine's own Chromium, quiet."""
    return {**browser_type_launch_args, "executable_path": chromium(), "args": BROWSER_FLAGS}


@pytest.fixture(scope="session")
def browser_context_args(browser_context_args: dict[str, Any]) -> dict[str, Any]:
    """A small phone."""
    return {
        **browser_context_args,
        "viewport": {"width": 360, "height": 800},
        "device_scale_factor": 2,
        "is_mobile": True,
        "has_touch": True,
    }
