"""The worker on real brokers: rings are heard, and losing every one of them loses nothing."""

from __future__ import annotations

import json
import os
import shutil
import signal
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any
from uuid import UUID

import pytest

from tests.people import PASSPHRASE
from tests.servers import PROJECT, KitchenlogServer, postgresql, valkey
from tests.writing import Pen, push_of

SHEET_S_MAX = 40
MANY = 40


class FarPhone:
    """A phone that knows the server by HTTP only."""

    def __init__(self, server: KitchenlogServer, handle: str) -> None:
        self.url = f"{server.url}/api/v1"
        self.headers = {"Content-Type": "application/json", "Sec-Fetch-Site": "same-origin"}
        body = {"login": f"anna@{handle}", "passphrase": PASSPHRASE, "app_version": "test"}
        said, cookie = self._ask("devices", body)
        self.headers["Kitchenlog-Device"] = said["device"]
        self.headers["Cookie"] = cookie.strip().partition(";")[0]
        self.device = SimpleNamespace(id=UUID(said["device"]))
        self.member = SimpleNamespace(
            id=said["member"]["id"], cooperative_id=said["cooperative"]["id"]
        )

    def push(self, entries: list[dict[str, Any]]) -> list[str]:
        """The statuses of a push."""
        answer, _ = self._ask("sync/push", push_of(self, entries))  # type: ignore[arg-type] # by shape
        return [result["status"] for result in answer["results"]]

    def sheets(self) -> set[str]:
        """The subjects of all sheets there are."""
        answer, _ = self._ask("sync/pull?limit=500")
        return {one["id"] for one in answer["changes"] if one["type"] == "sheet"}

    def _ask(self, path: str, body: Any = None) -> tuple[Any, str]:
        raw = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(f"{self.url}/{path}", raw, self.headers)
        with urllib.request.urlopen(request, timeout=10) as answer:
            return json.load(answer), answer.headers.get("Set-Cookie", "")


@pytest.fixture(scope="module")
def standing(tmp_path_factory: pytest.TempPathFactory) -> Iterator[KitchenlogServer]:
    """One server for all tests; each has a cooperative of its own on it."""
    running = KitchenlogServer(tmp_path_factory.mktemp("standing"))
    running.start()
    yield running
    running.stop()


@pytest.fixture
def scaled_out(tmp_path: Path) -> Iterator[KitchenlogServer]:
    """The same processes on PostgreSQL and a Redis-compatible broker."""
    with postgresql() as database, valkey() as broker:
        running = KitchenlogServer(
            tmp_path,
            environment={"KITCHENLOG_DATABASE": database, "KITCHENLOG_BROKER": broker},
        )
        running.start()
        yield running
        running.stop()


def test_a_push_becomes_sheets_on_one_machine(standing: KitchenlogServer) -> None:
    phone, entries, lots = _begun(standing, "hearth")

    statuses = phone.push(entries)

    assert statuses == ["created"] * MANY
    _until(lambda: lots <= phone.sheets())


def test_a_push_becomes_sheets_scaled_out(scaled_out: KitchenlogServer) -> None:
    phone, entries, lots = _begun(scaled_out, "hearth")

    statuses = phone.push(entries)

    assert statuses == ["created"] * MANY
    _until(lambda: lots <= phone.sheets())


def test_a_killed_worker_and_an_emptied_queue_lose_nothing(standing: KitchenlogServer) -> None:
    phone, entries, lots = _begun(standing, "orchard")

    for first in range(0, MANY, 10):
        phone.push(entries[first : first + 10])
        _kill_worker(standing)
        for message in (standing.folder / "queue" / "messages").iterdir():
            message.unlink(missing_ok=True)

    _until(lambda: lots <= phone.sheets())


def test_a_queue_folder_that_is_gone_fails_no_push(standing: KitchenlogServer) -> None:
    phone, entries, _ = _begun(standing, "mill")
    shutil.rmtree(standing.folder / "queue")

    statuses = phone.push(entries)

    assert statuses == ["created"] * MANY


def _begun(
    server: KitchenlogServer, handle: str
) -> tuple[FarPhone, list[dict[str, Any]], set[str]]:
    """A cooperative, its phone, receipts to push, and the sheets they must become."""
    subprocess.run(
        [sys.executable, "manage.py", "start_cooperative", "--name", "Hearth",
         "--handle", handle, "--time-zone", "Europe/Dublin", "--currency", "EUR",
         "--language", "en", "--login", "anna"],
        cwd=PROJECT, env=server.environment, input=PASSPHRASE + "\n", text=True,
        check=True, stdout=subprocess.DEVNULL,
    )  # fmt: skip
    phone = FarPhone(server, handle)
    pen = Pen(phone)  # type: ignore[arg-type] # by shape
    entries = [pen.receipt(lot=f"J{number}") for number in range(MANY)]
    return phone, entries, {f"lot:J{number}" for number in range(MANY)}


def _kill_worker(server: KitchenlogServer) -> None:
    assert server.process is not None
    found = subprocess.run(
        ["pgrep", "--parent", str(server.process.pid), "--full", "celery"],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    for pid in found.stdout.split():
        os.kill(int(pid), signal.SIGKILL)


def _until(is_so: Callable[[], bool]) -> None:
    until = time.monotonic() + SHEET_S_MAX
    while not is_so():
        if time.monotonic() > until:
            pytest.fail(f"Waited {SHEET_S_MAX} s in vain.")
        time.sleep(0.2)
