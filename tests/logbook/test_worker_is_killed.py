"""A real worker on the file broker, killed, its queue emptied: no sheet is lost."""

from __future__ import annotations

import json
import os
import shutil
import signal
import subprocess
import sys
import time
import urllib.request
import uuid
from dataclasses import dataclass
from typing import Any

from kitchenlog.members.sessions import cookie_name
from tests.servers import PROJECT, KitchenlogServer
from tests.writing import Pen, push_of

WAIT_S_MAX = 60  # the sweep comes every 10 s, and a busy machine may be slow to start a worker
PASSPHRASE = "a spoon of thyme"
LOTS_EACH = 40


@dataclass(frozen=True)
class _Named:
    """A device or member as the server told of it."""

    id: str
    cooperative_id: str = ""


class HttpPhone:
    """A device that speaks to a real server over HTTP."""

    def __init__(self, server: KitchenlogServer) -> None:
        self.server = server
        self.headers = {"Sec-Fetch-Site": "same-origin", "Content-Type": "application/json"}
        sign_in = {"login": "ada@hearth", "passphrase": PASSPHRASE, "app_version": "test"}
        told, cookie = self._ask("devices", sign_in)
        self.device = _Named(uuid.UUID(told["device"]))  # type: ignore[arg-type] # as Pen needs
        self.member = _Named(told["member"]["id"], told["cooperative"]["id"])
        assert cookie.startswith(cookie_name(uuid.UUID(told["device"])))
        self.headers["Cookie"] = cookie.partition(";")[0]
        self.headers["Kitchenlog-Device"] = told["device"]

    def push(self, entries: list[dict[str, Any]]) -> list[str]:
        told, _ = self._ask("sync/push", push_of(self, entries))  # type: ignore[arg-type]
        return [result["status"] for result in told["results"]]

    def lot_sheets(self) -> dict[str, Any]:
        sheets: dict[str, Any] = {}
        cursor, more = "", True
        while more:
            page, _ = self._ask(f"sync/pull?cursor={cursor}")
            for change in page["changes"]:
                if change["type"] == "sheet" and change["id"].startswith("lot:"):
                    sheets[change["id"]] = change["data"]
            cursor, more = page["next"], page["more"]
        return sheets

    def _ask(self, path: str, body: Any = None) -> tuple[Any, str]:
        request = urllib.request.Request(
            f"{self.server.url}/api/v1/{path}",
            data=None if body is None else json.dumps(body).encode(),
            headers=self.headers,
        )
        with urllib.request.urlopen(request, timeout=30) as answer:
            return json.load(answer), answer.headers.get("Set-Cookie", "")


def begin_cooperative(server: KitchenlogServer) -> None:
    subprocess.run(
        [sys.executable, "manage.py", "start_cooperative", "--name", "Hearth", "--handle",
         "hearth", "--time-zone", "Europe/Dublin", "--currency", "EUR", "--language", "en",
         "--login", "ada", "--member", "Ada", "--passphrase-stdin"],
        cwd=PROJECT, env=server.environment, input=PASSPHRASE, text=True, check=True,
        stdout=subprocess.DEVNULL,
    )  # fmt: skip


def worker_of(server: KitchenlogServer) -> int | None:
    assert server.process is not None
    asked = ["ps", "--ppid", str(server.process.pid), "-o", "pid=,args="]
    found = subprocess.run(asked, capture_output=True, text=True, check=False)
    lines = [line.split(maxsplit=1) for line in found.stdout.splitlines()]
    return next((int(pid) for pid, words in lines if "celery" in words), None)


def kill_worker(server: KitchenlogServer) -> None:
    _until(lambda: worker_of(server))
    worker = worker_of(server)
    assert worker is not None
    os.kill(worker, signal.SIGKILL)


def empty_queue(server: KitchenlogServer) -> None:
    for folder in (server.folder / "queue").iterdir():
        for message in folder.iterdir():
            if message.is_file():
                message.unlink(missing_ok=True)
            else:
                shutil.rmtree(message, ignore_errors=True)


def test_a_killed_worker_and_an_emptied_queue_lose_nothing(server: KitchenlogServer) -> None:
    begin_cooperative(server)
    phone = HttpPhone(server)
    pen = Pen(phone)  # type: ignore[arg-type] # it has the device and member Pen asks for
    lots = [f"J{number}" for number in range(2 * LOTS_EACH)]

    for part in range(2):
        some = lots[part * LOTS_EACH : (part + 1) * LOTS_EACH]
        entries = [pen.receipt(lot, "10") for lot in some] + [
            pen.sale(lot, "3") for lot in some
        ]
        assert set(phone.push(entries)) == {"created"}
        kill_worker(server)
        empty_queue(server)

    _until(lambda: all(_is_whole(phone.lot_sheets().get(f"lot:{lot}")) for lot in lots))
    _until(lambda: "sheets equal the log" in _checked(server))


def _is_whole(sheet: Any) -> bool:
    return sheet is not None and sheet["entry_count"] == 2 and sheet["state"]["on_hand"] == "7"


def _checked(server: KitchenlogServer) -> str:
    done = subprocess.run(
        [sys.executable, "manage.py", "rebuild_sheets", "--check"],
        cwd=PROJECT, env=server.environment, capture_output=True, text=True, check=False,
    )  # fmt: skip
    return done.stdout


def _until(is_so: Any) -> None:
    until = time.monotonic() + WAIT_S_MAX
    while not is_so():
        assert time.monotonic() < until, f"waited {WAIT_S_MAX} s"
        time.sleep(0.2)
