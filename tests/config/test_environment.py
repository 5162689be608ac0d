"""What the environment says, and what it may not say."""

from __future__ import annotations

import os
import stat
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from django.core.exceptions import ImproperlyConfigured

from kitchenlog.config.environment import database_settings, is_on, secret_key
from tests.servers import PROJECT

ROOT = Path("/srv/kitchenlog")
TESTS_ONLY = ("DJANGO_ALLOW_ASYNC_UNSAFE",)
PUBLIC = {
    "KITCHENLOG_HOST": "kitchen.example.org",
    "KITCHENLOG_SECRET_KEY": "k" * 25 + "abcdefghijklmnopqrstuvwxyz0123456789",
}


def test_sqlite_begins_immediate_and_loses_nothing_at_a_power_cut() -> None:
    found = database_settings("sqlite:///data/kitchenlog.sqlite3", root=ROOT)

    assert found["NAME"] == "/srv/kitchenlog/data/kitchenlog.sqlite3"
    assert found["OPTIONS"]["transaction_mode"] == "IMMEDIATE"
    assert "journal_mode=WAL" in found["OPTIONS"]["init_command"]
    assert "synchronous=FULL" in found["OPTIONS"]["init_command"]


def test_sqlite_may_stand_anywhere() -> None:
    found = database_settings("sqlite:////var/lib/k%20l.sqlite3", root=ROOT)

    assert found["NAME"] == "/var/lib/k l.sqlite3"


def test_a_postgresql_address_is_taken_apart() -> None:
    found = database_settings("postgres://ann:p%40ss@db:5433/log?sslmode=require", root=ROOT)

    assert found["ENGINE"] == "django.db.backends.postgresql"
    assert (found["USER"], found["PASSWORD"], found["HOST"]) == ("ann", "p@ss", "db")
    assert (found["PORT"], found["NAME"]) == ("5433", "log")
    assert found["OPTIONS"] == {"sslmode": "require"}


def test_a_postgresql_may_listen_on_a_socket_only() -> None:
    found = database_settings("postgresql://postgres@/log?host=/tmp/here", root=ROOT)

    assert (found["HOST"], found["PORT"], found["OPTIONS"]) == ("/tmp/here", "", {})


@pytest.mark.parametrize("address", ["", "mysql://a/b", "data/kitchenlog.sqlite3"])
def test_a_third_kind_of_database_is_refused_with_an_example(address: str) -> None:
    with pytest.raises(ImproperlyConfigured, match="for example"):
        database_settings(address, root=ROOT)


def test_a_switch_knows_on_and_off_only() -> None:
    assert is_on({"S": "on"}, "S", otherwise=False)
    assert not is_on({"S": "off"}, "S", otherwise=True)
    assert is_on({}, "S", otherwise=True)
    with pytest.raises(ImproperlyConfigured, match="must be on or off"):
        is_on({"S": "yes"}, "S", otherwise=True)


def test_the_key_is_made_once_for_the_owners_eyes(tmp_path: Path) -> None:
    first = secret_key({}, host="", data=tmp_path / "data")
    second = secret_key({}, host="", data=tmp_path / "data")

    assert first == second
    assert len(first) >= 50
    mode = stat.S_IMODE((tmp_path / "data" / "secret_key").stat().st_mode)
    assert mode == 0o600


def test_processes_that_start_at_once_agree_on_the_key(tmp_path: Path) -> None:
    with ThreadPoolExecutor(8) as threads:
        keys = set(threads.map(lambda _: secret_key({}, host="", data=tmp_path), range(8)))

    assert len(keys) == 1
    assert [path.name for path in tmp_path.iterdir()] == ["secret_key"]


def test_a_public_server_makes_no_key_of_its_own(tmp_path: Path) -> None:
    with pytest.raises(ImproperlyConfigured, match="KITCHENLOG_SECRET_KEY"):
        secret_key({}, host="kitchen.example.org", data=tmp_path)

    assert secret_key({"KITCHENLOG_SECRET_KEY": "given"}, host="h", data=tmp_path) == "given"


def test_check_deploy_has_no_warning_with_production_settings(tmp_path: Path) -> None:
    done = _manage("check", "--deploy", "--fail-level", "WARNING", data=tmp_path, **PUBLIC)

    assert done.returncode == 0, done.stderr


def test_without_a_host_only_loopback_names_answer(tmp_path: Path) -> None:
    alone = _asked("ALLOWED_HOSTS, SECURE_HSTS_SECONDS, DEBUG", data=tmp_path)
    public = _asked("ALLOWED_HOSTS, SECURE_HSTS_SECONDS, DEBUG", data=tmp_path, **PUBLIC)

    assert alone == "(['localhost', '127.0.0.1', '[::1]'], 0, False)"
    assert public == (
        "(['kitchen.example.org', 'localhost', '127.0.0.1', '[::1]'], 31536000, False)"
    )


def test_limits_are_lifted_by_one_word(tmp_path: Path) -> None:
    words = "SIGN_INS_PER_MINUTE, PUSHES_PER_MINUTE, PUSHED_ENTRIES_PER_DAY"

    assert _asked(words, data=tmp_path) == "(5, 60, 20000)"
    assert _asked(words, data=tmp_path, KITCHENLOG_LIMITS="off") == "(None, None, None)"


def test_nothing_else_in_the_project_reads_the_environment() -> None:
    readers = {
        str(path.relative_to(PROJECT))
        for path in (PROJECT / "kitchenlog").rglob("*.py")
        if any(word in path.read_text() for word in ("os.environ", "getenv"))
    }

    assert readers <= {
        "kitchenlog/config/settings.py",
        "kitchenlog/config/celery.py",  # both only name the settings to Django
        "kitchenlog/config/wsgi.py",
    }


def _asked(words: str, *, data: Path, **environment: str) -> str:
    program = f"from kitchenlog.config import settings as s; print(({_of_s(words)}))"
    done = subprocess.run(
        [sys.executable, "-c", program],
        cwd=PROJECT, env=_environment(data, environment), capture_output=True, text=True,
        check=True,
    )  # fmt: skip
    return done.stdout.strip()


def _of_s(words: str) -> str:
    return ", ".join(f"s.{word.strip()}" for word in words.split(","))


def _manage(*words: str, data: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "manage.py", *words],
        cwd=PROJECT, env=_environment(data, environment), capture_output=True, text=True,
        check=False,
    )  # fmt: skip


def _environment(data: Path, given: dict[str, str]) -> dict[str, str]:
    # The test run allows itself what a deployment must not.
    kept = {name: said for name, said in os.environ.items() if name not in TESTS_ONLY}
    return {**kept, "KITCHENLOG_DATA": str(data), **given}
