"""Who gets what, for every address there is: an address missing here fails (R67, R69, R83)."""

from __future__ import annotations

import uuid
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import partial
from typing import Any

import pytest
from django.test import Client
from django.urls import URLPattern, URLResolver, get_resolver

from kitchenlog.logbook.work import recompute_for_a_slice
from tests.people import PASSPHRASE, Kitchen, Phone
from tests.writing import Pen, push_of, pushed

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("no_limits")]

METHODS = ("get", "post", "put", "patch", "delete")


@dataclass(frozen=True)
class World:
    """One cooperative with something in its record."""

    kitchen: Kitchen
    entry: str
    lot: str
    device: str
    check: str
    batch: str


@dataclass(frozen=True)
class Door:
    """How one address is asked, who may, and what the right one gets.

    `names_a_thing`: the address names something of the cooperative, so that for another
    cooperative it must be just as if it were not there.
    """

    path: Callable[[World], str]
    may: str
    status: int = 200
    body: Callable[[World, Phone], Any] | None = None
    names_a_thing: bool = False


def _sign_in(world: World, phone: Phone) -> dict[str, str]:
    return {"login": phone.member.full_login, "passphrase": PASSPHRASE, "app_version": "1"}


_FAILED = {
    "instrument": "scale", "unit": "g", "division": "1", "most_error": "1",
    "steps": [{"sort": "comparison", "reference": "500", "readings": ["510"]}],
}  # fmt: skip


MATRIX: dict[tuple[str, str], Door] = {
    ("api/v1/devices", "post"): Door(lambda w: "devices", "anybody", 201, _sign_in),
    ("api/v1/devices", "get"): Door(lambda w: "devices", "coordinator"),
    ("api/v1/devices/<uuid:device>", "delete"): Door(
        lambda w: f"devices/{w.device}", "coordinator", names_a_thing=True
    ),
    ("api/v1/session", "post"): Door(lambda w: "session", "anybody", 200, _sign_in),
    ("api/v1/session", "delete"): Door(lambda w: "session", "signed_in"),
    ("api/v1/join-codes", "post"): Door(
        lambda w: "join-codes", "coordinator", 201, lambda w, p: {"roles": ["seller"]}
    ),
    ("api/v1/sync/push", "post"): Door(
        lambda w: "sync/push", "signed_in", 200, lambda w, p: push_of(p, [])
    ),
    ("api/v1/sync/pull", "get"): Door(lambda w: "sync/pull", "signed_in"),
    ("api/v1/sync/have", "post"): Door(
        lambda w: "sync/have", "member", 200, lambda w, p: {"ids": [w.entry]}
    ),
    ("api/v1/entries", "get"): Door(
        lambda w: f"entries?subject=lot:{w.lot}", "member", names_a_thing=True
    ),
    ("api/v1/entries/<uuid:entry>", "get"): Door(
        lambda w: f"entries/{w.entry}", "member", names_a_thing=True
    ),
    ("api/v1/quarantine", "get"): Door(lambda w: "quarantine", "member"),
    ("api/v1/batches/<str:batch>/cost", "get"): Door(
        lambda w: f"batches/{w.batch}/cost", "coordinator", names_a_thing=True
    ),
    ("api/v1/lots/<str:code>", "get"): Door(
        lambda w: f"lots/{w.lot}", "member", names_a_thing=True
    ),
    ("api/v1/lots/<str:code>/trace", "get"): Door(
        lambda w: f"lots/{w.lot}/trace?direction=back", "member", names_a_thing=True
    ),
    ("api/v1/instruments/<str:instrument>/impact", "get"): Door(
        lambda w: f"instruments/scale/impact?check={w.check}", "member", names_a_thing=True
    ),
    ("api/v1/instruments/<str:instrument>/impact/readings", "get"): Door(
        lambda w: f"instruments/scale/impact/readings?check={w.check}",
        "member",
        names_a_thing=True,
    ),
    ("api/v1/schema", "get"): Door(lambda w: "schema", "anybody"),
}
# Beside the API: they hold nothing of anybody, and answer everybody alike.
OPEN = {
    "healthz", "robots.txt", "serviceworker.js", "manifest.json",
    "^static/.*$", "favicon.ico", r"^.*\.(?:js|css|map|ico|png|svg|woff2|wasm)$",
    r"^api(?:/.*)?$", "^.*$",
}  # fmt: skip


@pytest.fixture
def world(kitchen: Kitchen) -> World:
    """A receipt in the record, and a phone to be shut out."""
    phone = kitchen.phone("processor")
    pen = Pen(phone)
    receipt, check = pen.receipt(), pen.write("instrument_checked", _FAILED)
    batch = str(uuid.uuid4())
    pushed(phone, [receipt, check, pen.write("batch_finished", {"batch": batch})])
    recompute_for_a_slice(clock=lambda: datetime.now(UTC))
    device = str(phone.device.id)
    return World(kitchen, receipt["id"], receipt["body"]["lot"], device, check["id"], batch)


def test_every_address_stands_in_the_matrix() -> None:
    served = set(_addresses(get_resolver().url_patterns))

    api = {(path, method) for path, method in served if path.startswith("api/v1/")}
    assert api == set(MATRIX)
    assert {path for path, _ in served - api} == OPEN


@pytest.mark.parametrize("door", MATRIX.values(), ids=map(str, MATRIX))
def test_a_stranger(world: World, door: Door, request: pytest.FixtureRequest) -> None:
    stranger = Phone(world.kitchen.phone("seller").device, "not the token")

    answer = _ask(stranger, door, world, request)

    assert answer.status_code == (door.status if door.may == "anybody" else 401)


@pytest.mark.parametrize("door", MATRIX.values(), ids=map(str, MATRIX))
@pytest.mark.parametrize("role", ["processor", "seller", "coordinator"])
def test_a_member(world: World, door: Door, role: str, request: pytest.FixtureRequest) -> None:
    answer = _ask(world.kitchen.phone(role), door, world, request)

    may = door.may != "coordinator" or role == "coordinator"
    assert answer.status_code == (door.status if may else 403)
    if not may:
        assert answer.json()["code"] == "forbidden"


@pytest.mark.parametrize("door", MATRIX.values(), ids=map(str, MATRIX))
def test_a_member_who_has_left(
    world: World, door: Door, request: pytest.FixtureRequest
) -> None:
    phone = world.kitchen.phone("seller")
    phone.member.left_at = world.kitchen.at
    phone.member.save()

    answer = _ask(phone, door, world, request)

    if door.may in ("member", "coordinator"):
        assert answer.status_code == 403
    assert str(world.entry) not in answer.content.decode()


@pytest.mark.parametrize("door", MATRIX.values(), ids=map(str, MATRIX))
def test_a_revoked_device(world: World, door: Door, request: pytest.FixtureRequest) -> None:
    phone = world.kitchen.phone("coordinator")
    world.kitchen.phone("coordinator").delete(f"devices/{phone.device.id}")

    answer = _ask(phone, door, world, request)

    if door.may == "anybody" and "session" not in door.path(world):
        assert answer.status_code == door.status
    else:
        assert (answer.status_code, answer.json()["code"]) == (403, "device_revoked")


@pytest.mark.parametrize("door", MATRIX.values(), ids=map(str, MATRIX))
def test_another_cooperative(
    world: World, other_kitchen: Kitchen, door: Door, request: pytest.FixtureRequest
) -> None:
    ids = [str(uuid.uuid4()) for _ in range(4)]
    nowhere = World(other_kitchen, ids[0], "ZZ-261110-K7-9", ids[1], ids[2], ids[3])
    phone = other_kitchen.phone("coordinator")

    theirs = _ask(phone, door, world, request)
    unknown = _ask(phone, door, nowhere, request)

    if door.names_a_thing:
        assert theirs.status_code == unknown.status_code
        assert _without_names(theirs, world) == _without_names(unknown, nowhere)
    for marker in (str(world.kitchen.cooperative.id), "Hearth", "hearth"):
        assert marker not in theirs.content.decode()


def test_no_address_changes_anything_when_it_is_read(world: World) -> None:
    reads = [door for (_, method), door in MATRIX.items() if method == "get"]
    phone = world.kitchen.phone("coordinator")
    before = phone.get("sync/pull").json()["next"]

    for door in reads:
        phone.get(door.path(world))

    assert phone.get("sync/pull").json()["next"] == before


def _ask(phone: Phone, door: Door, world: World, request: pytest.FixtureRequest) -> Any:
    method = request.node.callspec.id.rsplit("'", 2)[-2]
    body = door.body(world, phone) if door.body else None
    answer = phone.ask(method.upper(), door.path(world), body=body)
    assert answer["Content-Type"] == "application/json"
    assert answer["Cache-Control"] == "no-store"
    return answer


def _without_names(answer: Any, world: World) -> str:
    text: str = answer.content.decode()
    for name in (world.entry, world.lot, world.device):
        text = text.replace(name, "<name>")
    return text


def _addresses(
    patterns: list[URLPattern | URLResolver], before: str = ""
) -> Iterator[tuple[str, str]]:
    for pattern in patterns:
        path = before + str(pattern.pattern)
        if isinstance(pattern, URLResolver):
            yield from _addresses(pattern.url_patterns, path)
            continue
        view = getattr(pattern.callback, "cls", None)
        methods = ("get",) if view is None else filter(partial(hasattr, view), METHODS)
        for method in methods:
            yield path, method


def test_a_cookie_and_a_header_in_the_address_open_nothing(world: World) -> None:
    phone = world.kitchen.phone("coordinator")

    answer = Client().get(
        f"/api/v1/sync/pull?Kitchenlog-Device={phone.device.id}&token={phone.token}"
    )

    assert answer.status_code == 401
