"""The demo through the front door of a real server: once, twice, and after a week."""

from __future__ import annotations

import json
import subprocess
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.servers import KitchenlogServer

ANCHOR = "2026-11-24"
WORKED_OUT_S_MAX = 60
PAGES_MAX = 20


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[KitchenlogServer]:
    """A server with the demo in it."""
    running = KitchenlogServer(tmp_path_factory.mktemp("demo"))
    running.start()
    try:
        yield running
    finally:
        running.stop()


@pytest.fixture(scope="module")
def first_said(server: KitchenlogServer) -> str:
    """What the command said when it loaded the demo."""
    return server.manage("demo", "--to", server.url, "--today", ANCHOR)


def test_it_says_how_to_sign_in(first_said: str) -> None:
    assert "ilsa@tamarelle" in first_said
    assert "green mango at noon" in first_said
    assert "created" in first_said and "quarantined" not in first_said


def test_loading_it_twice_adds_nothing(server: KitchenlogServer, first_said: str) -> None:
    created = first_said.split(" created", maxsplit=1)[0].rpartition(" ")[2]

    said = server.manage("demo", "--to", server.url, "--today", ANCHOR)

    assert f": {created} exists." in said


def test_after_a_week_it_says_how_to_begin_afresh(
    server: KitchenlogServer, first_said: str
) -> None:
    soon = server.manage("demo", "--to", server.url, "--today", "2026-12-01")
    later = server.manage("demo", "--to", server.url, "--today", "2026-12-02")

    assert first_said and "afresh" not in soon
    assert "9 days ago" in later and f"demo --to {server.url} --afresh" in later


def test_a_member_signs_in_and_pulls_the_worked_batch_with_its_sheet(
    server: KitchenlogServer, first_said: str
) -> None:
    """Production pack 1.9 [B01]."""
    assert first_said
    body = {"login": "ilsa@tamarelle", "passphrase": "green mango at noon", "app_version": "1"}
    answer, cookie = _asked(server, "POST", "/api/v1/devices", body, {})
    headers = {"Kitchenlog-Device": answer["device"], "Cookie": cookie}
    _wait_until_worked_out(server)

    sheets = {
        change["id"]: change["data"]["state"]
        for change in _pulled(server, headers)
        if change["type"] == "sheet"
    }

    balances = [s["balance"] for name, s in sheets.items() if name.startswith("batch:")]
    assert "79.5426" in [balance["recovery_percent"] for balance in balances]
    assert "68.9521" in [balance["implied_solids_percent"] for balance in balances]


def test_the_log_it_leaves_is_whole(server: KitchenlogServer, first_said: str) -> None:
    assert first_said
    _wait_until_worked_out(server)

    assert server.manage("rebuild_sheets", "--check")
    assert server.manage("verify_chain")


def test_another_one_begins_beside_it(server: KitchenlogServer, first_said: str) -> None:
    said = server.manage("demo", "--to", server.url, "--today", "2026-12-02", "--afresh")

    assert first_said and "ilsa@tamarelle-2" in said and "created" in said
    assert "afresh" not in said


def test_it_is_not_loaded_where_the_public_looks(tmp_path: Path) -> None:
    public = KitchenlogServer(
        tmp_path,
        environment={"KITCHENLOG_HOST": "log.example.org", "KITCHENLOG_SECRET_KEY": "x" * 60},
    )

    with pytest.raises(subprocess.CalledProcessError):
        public.manage("demo", "--to", public.url)


def _asked(
    server: KitchenlogServer, method: str, path: str, body: Any, headers: dict[str, str]
) -> tuple[Any, str]:
    """The answer and the cookie it brought."""
    request = urllib.request.Request(
        server.url + path,
        data=None if body is None else json.dumps(body).encode(),
        method=method,
        headers={
            "Content-Type": "application/json",
            "Sec-Fetch-Site": "same-origin",
            **headers,
        },
    )
    with urllib.request.urlopen(request, timeout=30) as answer:
        return json.load(answer), (answer.headers.get("Set-Cookie") or "").split(";")[0]


def _pulled(server: KitchenlogServer, headers: dict[str, str]) -> Iterator[Any]:
    cursor, pages = "", 0
    while pages < PAGES_MAX:
        path = f"/api/v1/sync/pull?cursor={cursor}"
        page, _ = _asked(server, "GET", path, None, headers)
        yield from page["changes"]
        cursor, pages = page["next"], pages + 1
        if not page["more"]:
            return


def _wait_until_worked_out(server: KitchenlogServer) -> None:
    until = time.monotonic() + WORKED_OUT_S_MAX
    while _asked(server, "GET", "/healthz", None, {})[0]["logs_behind"]:
        assert time.monotonic() < until, "The worker did not come to an end."
        time.sleep(0.2)
