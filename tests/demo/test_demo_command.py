"""The demo through the front door of a real server: once, twice, and after a week."""

from __future__ import annotations

import json
import subprocess
import urllib.request
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

from tests.servers import KitchenlogServer

ANCHOR = "2026-11-24"
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


@pytest.fixture(scope="module")
def sheets(server: KitchenlogServer, first_said: str) -> dict[str, Any]:
    """What a coordinator's new phone pulls, by subject."""
    assert first_said
    body = {"login": "ilsa@tamarelle", "passphrase": "green mango at noon", "app_version": "1"}
    answer, cookie = _asked(server, "POST", "/api/v1/devices", body, {})
    headers = {"Kitchenlog-Device": answer["device"], "Cookie": cookie}
    server.until_quiet()
    return {
        change["id"]: change["data"]["state"]
        for change in _pulled(server, headers)
        if change["type"] == "sheet"
    }


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
    sheets: dict[str, Any],
) -> None:
    """Production pack 1.9 [B01]."""
    balances = [s["balance"] for name, s in sheets.items() if name.startswith("batch:")]
    assert "79.5426" in [balance["recovery_percent"] for balance in balances]
    assert "68.9521" in [balance["implied_solids_percent"] for balance in balances]


def test_the_sheets_of_instruments_say_which_is_fit_failed_or_never_checked(
    sheets: dict[str, Any],
) -> None:
    verdicts = {
        name.removeprefix("instrument:"): [check["verdict"] for check in state["checks"]]
        for name, state in sheets.items()
        if name.startswith("instrument:")
    }

    assert verdicts.pop("hanging-scale") == []
    assert verdicts.pop("dryer-dial") == ["fit", "failed"]
    assert len(verdicts) == 11 and {
        each for all_of in verdicts.values() for each in all_of
    } == {"fit"}
    refractometer = sheets["instrument:hand-refractometer"]
    due_on = date.fromisoformat(refractometer["checks"][-1]["on"]) + timedelta(
        days=refractometer["fields"]["check_days"]
    )
    assert due_on == date.fromisoformat(ANCHOR) - timedelta(days=1)


def test_the_sheets_of_batches_say_what_leans_on_the_failed_dial_and_on_the_correction(
    sheets: dict[str, Any],
) -> None:
    batches = [state for name, state in sheets.items() if name.startswith("batch:")]
    [doubt] = sheets["instrument:dryer-dial"]["doubts"]

    doubted = {
        state["code"]: state["started_at"]
        for state in batches
        if f"instrument_failed:{doubt['check']}" in [each["key"] for each in state["findings"]]
    }
    assert all(code.startswith("BD-") for code in doubted)
    assert doubted == {
        state["code"]: state["started_at"]
        for state in batches
        if state["recipe"] == "dried-banana" and state["started_at"] > doubt["after"]
    }
    weigh_ins = [w for b in batches for line in b["lines"] for w in line["weigh_ins"]]
    corrected = [each for each in weigh_ins if each["trust"]["corrected"] is not None]
    assert len(doubted) >= 3 and len(corrected) >= 12
    assert {each["instrument"] for each in corrected} == {"mill-scale"}


def test_the_sheets_of_lots_say_which_packs_are_short(sheets: dict[str, Any]) -> None:
    fills = [
        (state["material"], fill["verdict"])
        for name, state in sheets.items()
        if name.startswith("lot:")
        for fill in state["fills"]
    ]

    others = sorted(each for each in fills if each[1] != "pass")
    assert others == [("coconut-biscuits", "fail"), ("dried-banana", "not_decided")]
    assert len(fills) >= 9


def test_the_log_it_leaves_is_whole(server: KitchenlogServer, first_said: str) -> None:
    assert first_said
    server.until_quiet()

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
