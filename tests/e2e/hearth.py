"""A made-up cooperative for browser flows: set up by its coordinator through the front door."""

from __future__ import annotations

import json
import re
import shutil
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from http.client import HTTPConnection
from pathlib import Path
from types import SimpleNamespace
from typing import Any
from uuid import UUID, uuid4

from kitchenlog.logbook.wire import wire_time
from tests.e2e.set_up import KITCHEN, RECIPE, STALL, set_up
from tests.people import PASSPHRASE
from tests.servers import KitchenlogServer
from tests.writing import Pen, made_id

HANDLE = "hearth"
MEMBERS = {
    "ona": ("Ona Bramhill", ["coordinator", "processor"]),
    "pim": ("Pim Tarrow", ["processor", "seller"]),
    "sela": ("Sela Quince", ["seller"]),
}
PUSH_ENTRIES_MAX = 100


class DeskPhone:
    """A member's device that speaks plain HTTP, in the shape `tests.writing.Pen` asks for."""

    def __init__(self, url: str, answer: dict[str, Any], cookie: str) -> None:
        self.url = url
        self.cookie = cookie
        self.device = SimpleNamespace(id=UUID(answer["device"]))
        self.member = SimpleNamespace(
            id=answer["member"]["id"], cooperative_id=answer["cooperative"]["id"]
        )
        self.pen = Pen(self)  # type: ignore[arg-type] # it asks for these names only

    @classmethod
    def enter(cls, url: str, **said: Any) -> DeskPhone:
        """Sign in (login, passphrase) or join (join_code, name, login, passphrase)."""
        answer, headers = _asked(url, "POST", "devices", {"app_version": "desk", **said}, {})
        cookie = next(value for name, value in headers if name.lower() == "set-cookie")
        return cls(url, answer, cookie.split(";")[0])

    def ask(self, method: str, path: str, body: Any = None) -> Any:
        """One call below /api/v1/; anything but 2xx is a defect of the test."""
        headers = {"Cookie": self.cookie, "Kitchenlog-Device": str(self.device.id)}
        return _asked(self.url, method, path, body, headers)[0]

    def push(self, entries: list[dict[str, Any]]) -> None:
        """Hand entries over; each must be taken into the record."""
        for first in range(0, len(entries), PUSH_ENTRIES_MAX):
            body = {
                "protocol": 1, "push": str(uuid4()), "device": str(self.device.id),
                "device_time": wire_time(datetime.now(UTC)), "epoch": "",
                "entries": entries[first : first + PUSH_ENTRIES_MAX],
            }  # fmt: skip
            results = self.ask("POST", "sync/push", body)["results"]
            assert {each["status"] for each in results} == {"created"}, results

    def everything(self) -> list[dict[str, Any]]:
        """Every change the server tells this member, from the beginning."""
        changes: list[dict[str, Any]] = []
        page: dict[str, Any] = {"next": "", "more": True}
        while page["more"]:
            page = self.ask("GET", f"sync/pull?cursor={page['next']}&limit=500")
            changes += page["changes"]
        return changes


@dataclass
class Hearth:
    """A running server of the cooperative and what they set up."""

    server: KitchenlogServer

    @property
    def url(self) -> str:
        """Where its server answers."""
        return self.server.url

    def desk(self, login: str = "ona") -> DeskPhone:
        """A new device of a member, beside the browsers."""
        return DeskPhone.enter(self.url, login=f"{login}@{HANDLE}", passphrase=PASSPHRASE)

    def until_quiet(self) -> None:
        """Wait until no sheet of the log is behind its entries."""
        self.server.until_quiet()


@dataclass(frozen=True)
class LivedIn:
    """What some work left: a batch under way with its one weigh-in, and packs."""

    batch: str
    weigh_in: str
    lot: str


def begin(server: KitchenlogServer) -> Hearth:
    """Start the cooperative, let its members join, and push what they set up."""
    said = server.manage(
        "start_cooperative", "--name", "Hearth Lane", "--handle", HANDLE,
        "--time-zone", "Europe/Dublin", "--currency", "EUR", "--language", "en",
    )  # fmt: skip
    found = re.search(r"Join code for a coordinator: (\S+)", said)
    assert found is not None, said
    desk = _joined(server.url, "ona", found[1])
    for login in ("pim", "sela"):
        roles = MEMBERS[login][1]
        made = desk.ask("POST", "join-codes", {"roles": roles})
        _joined(server.url, login, made["code"])
    desk.push(set_up(desk.pen))
    return Hearth(server)


def lived_in(desk: DeskPhone) -> LivedIn:
    """Give the kitchen a finished batch with sales and a business, and one under way."""
    began_at = datetime.now(UTC) - timedelta(hours=3)
    minutes = iter(range(1, 200))
    recipe = next(
        change["data"]["state"]["versions"][-1]
        for change in desk.everything()
        if change["id"] == f"recipe:{RECIPE}"
    )
    planned = {name: recipe["body"][name] for name in ("product", "makes", "lines", "steps")}
    made: list[dict[str, Any]] = []

    def write(kind: str, **body: Any) -> str:
        made.append(desk.pen.write(kind, body, at=began_at + timedelta(minutes=next(minutes))))
        return str(made[-1]["id"])

    done, open_one, today = made_id("done"), made_id("under way"), began_at.date().isoformat()
    write(
        "receipt", lot="QU-1", material=made_id("Quinces"), source=made_id("orchard"),
        amount={"amount": "9", "unit": "kg"}, place=KITCHEN, condition="fit",
    )  # fmt: skip
    for batch, code in ((done, "QJ-1"), (open_one, "QJ-2")):
        write(
            "batch_started", batch=batch, code=code, recipe=RECIPE, place=KITCHEN,
            recipe_version=recipe["entry"], scaled_by="as_written", **planned,
        )  # fmt: skip
        write("laid_out", batch=batch, line="quinces", lots=[{"lot": "QU-1"}])
        weighed = write(
            "weigh_in", batch=batch, line="quinces", material=made_id("Quinces"), lot="QU-1",
            place=KITCHEN, reading={"instrument": made_id("Bench scale"), "unit": "g",
                                    "shown": "2003", "division": "1"},
        )  # fmt: skip
    packs = {"lot": "QJ-1", "place": STALL}
    write(
        "output", batch=done, lot="QJ-1", material=made_id("Quince jelly"), place=KITCHEN,
        amount=_pieces(9), pack_net={"amount": "240", "unit": "g"},
        life={"sort": "best_before", "on": (began_at + timedelta(days=360)).date().isoformat()},
    )  # fmt: skip
    write("batch_finished", batch=done)
    write("transfer", lot="QJ-1", amount=_pieces(6), from_place=KITCHEN, to_place=STALL)
    write("sale", **packs, amount=_pieces(2), on=today, price_each="6.50")
    write("dispatch", **packs, amount=_pieces(3), recipient=made_id("inn"))
    desk.push(made)
    return LivedIn(batch=open_one, weigh_in=weighed, lot="QJ-1")


def _pieces(count: int) -> dict[str, str]:
    return {"amount": str(count), "unit": "pc"}


def copied(folder: Path, into: Path) -> None:
    """The data of a stopped server, for a server of another test."""
    shutil.copytree(folder, into, dirs_exist_ok=True)


def _joined(url: str, login: str, code: str) -> DeskPhone:
    return DeskPhone.enter(
        url, join_code=code, name=MEMBERS[login][0], login=login, passphrase=PASSPHRASE
    )


def _asked(
    url: str, method: str, path: str, body: Any, headers: dict[str, str]
) -> tuple[Any, list[tuple[str, str]]]:
    connection = HTTPConnection("localhost", int(url.rsplit(":", 1)[1]), timeout=60)
    try:
        sent = None if body is None else json.dumps(body)
        all_headers = {
            "Content-Type": "application/json", "Sec-Fetch-Site": "same-origin", **headers,
        }  # fmt: skip
        connection.request(method, f"/api/v1/{path}", sent, all_headers)
        answer = connection.getresponse()
        text = answer.read()
        assert answer.status < 300, (method, path, answer.status, text[:400])
        return json.loads(text), answer.getheaders()
    finally:
        connection.close()
