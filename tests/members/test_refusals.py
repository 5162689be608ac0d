"""Each code of R4 provoked once; no answer under /api/ is ever a page."""

from __future__ import annotations

import json
import logging
from typing import Any

import pytest
from django.test import Client

from kitchenlog.members import limits
from kitchenlog.members.json_body import read_json
from kitchenlog.members.refusals import CODES, Refused
from kitchenlog.sync import join
from tests.people import PASSPHRASE, Kitchen

pytestmark = pytest.mark.django_db


def _unreadable(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    return kitchen.phone().post("sync/push", "{")


def _not_authenticated(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    phone = kitchen.phone()
    phone.token = "another"
    return phone.get("sync/pull")


def _csrf(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    phone = kitchen.phone()
    phone.headers["Sec-Fetch-Site"] = "cross-site"
    return phone.post("sync/push", {})


def _forbidden(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    return kitchen.phone("seller").post("join-codes", {"roles": ["coordinator"]})


def _device_revoked(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    phone = kitchen.phone("seller")
    kitchen.phone("coordinator").delete(f"devices/{phone.device.id}")
    return phone.get("sync/pull")


def _not_found(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    return kitchen.phone().get("no/such/address")


def _too_large(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    return kitchen.phone().post("sync/have", json.dumps({"ids": ["x" * 1024 * 1024]}))


def _rate_limited(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    patch.setattr(limits, "wait_s", lambda *_, **__: 7)
    return kitchen.phone().post("session", {"login": "a@hearth", "passphrase": "b"})


def _upgrade_required(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    return kitchen.phone().get("sync/pull", kinds=0)


def _server_error(kitchen: Kitchen, patch: pytest.MonkeyPatch) -> Any:
    def break_down(*_: object) -> None:
        raise ZeroDivisionError(PASSPHRASE)

    patch.setattr(join, "epoch_of", break_down)
    return kitchen.phone("seller").post(
        "session", {"login": "seller@hearth", "passphrase": PASSPHRASE}
    )


PROVOKED = {
    "unreadable": (_unreadable, 400),
    "not_authenticated": (_not_authenticated, 401),
    "csrf": (_csrf, 403),
    "forbidden": (_forbidden, 403),
    "device_revoked": (_device_revoked, 403),
    "not_found": (_not_found, 404),
    "too_large": (_too_large, 413),
    "rate_limited": (_rate_limited, 429),
    "upgrade_required": (_upgrade_required, 426),
    "server_error": (_server_error, 500),
}


def test_every_code_is_provoked_here() -> None:
    assert set(PROVOKED) == set(CODES)


@pytest.mark.parametrize("code", CODES)
def test_the_code_comes_with_its_status_the_protocol_and_a_sentence(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch, code: str
) -> None:
    provoke, status = PROVOKED[code]

    answer = provoke(kitchen, monkeypatch)

    body = answer.json()
    assert (answer.status_code, body["code"], body["protocol"]) == (status, code, 1)
    assert body["detail"]
    assert answer["Content-Type"] == "application/json"
    assert answer["Cache-Control"] == "no-store"


def test_a_defect_is_told_by_a_number_that_stands_in_the_log(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    with caplog.at_level(logging.ERROR):
        answer = _server_error(kitchen, monkeypatch)

    assert PASSPHRASE not in answer.content.decode()
    assert answer.json()["id"] in answer.json()["detail"]
    assert answer.json()["id"] in caplog.text


def test_a_defect_rolls_back_what_the_request_wrote(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    phone = kitchen.phone("coordinator")
    monkeypatch.setattr(join, "wire_time", lambda at: 1 // 0)

    answer = phone.post("join-codes", {"roles": ["seller"]})

    assert answer.status_code == 500
    assert not kitchen.cooperative.join_codes.exists()


@pytest.mark.parametrize(
    "address", ["/api", "/api/", "/api/v1", "/api/v1/", "/api/v2/sync/pull", "/api/v1/sync/pul"]
)
def test_unknown_addresses_under_api_answer_json(address: str) -> None:
    for method in ("get", "post", "delete"):
        answer = getattr(Client(), method)(address)

        assert (answer.status_code, answer.json()["code"]) == (404, "not_found")


def test_a_method_an_address_does_not_know_answers_json(kitchen: Kitchen) -> None:
    answer = kitchen.phone().ask("PUT", "sync/pull", body={})

    assert (answer.status_code, answer.json()["code"]) == (405, "not_found")


@pytest.mark.parametrize("wanted", ["text/html", "application/xml", "nonsense"])
def test_whatever_is_asked_for_the_answer_is_json(kitchen: Kitchen, wanted: str) -> None:
    phone = kitchen.phone()
    phone.headers["Accept"] = wanted

    answer = phone.get("sync/pull")

    assert (answer.status_code, answer["Content-Type"]) == (200, "application/json")


@pytest.mark.parametrize("path", ["sync/push", "sync/have", "join-codes", "session"])
@pytest.mark.parametrize(
    "raw", [b"[" * 100_000, b'{"a":' * 100_000, b"\xff\xfe", b"NaN", b"1e999", b"nonsense"]
)
def test_nonsense_is_refused_and_never_a_defect(
    kitchen: Kitchen, path: str, raw: bytes
) -> None:
    answer = kitchen.phone("coordinator").post(path, raw)

    assert (answer.status_code, answer.json()["code"]) == (400, "unreadable")


@pytest.mark.parametrize(
    ("path", "body", "field", "says"),
    [
        ("session", {"passphrase": "x"}, "login", "login: This field is required."),
        ("sync/have", {"ids": "x"}, "ids", "ids: Expected a list"),
        ("sync/have", {"ids": [[]]}, "ids", "ids.0: Must be a valid UUID."),
        ("join-codes", {"roles": ["king"]}, "roles", 'roles.0: "king" is not a valid choice.'),
    ],
)
def test_the_sentence_names_the_field_that_is_wrong(
    kitchen: Kitchen, path: str, body: dict[str, Any], field: str, says: str
) -> None:
    answer = kitchen.phone("coordinator").post(path, body)

    assert answer.json()["detail"].startswith(says)
    assert answer.json()["field"] == field


def test_djangos_own_too_large_comes_out_as_413(kitchen: Kitchen, settings: Any) -> None:
    settings.DATA_UPLOAD_MAX_MEMORY_SIZE = 20

    answer = kitchen.phone().post("sync/push", "{" + " " * 30 + "}")

    assert (answer.status_code, answer.json()["code"]) == (413, "too_large")


def test_numbers_no_field_takes_stay_text_and_cost_nobody_else() -> None:
    read = read_json(b'{"a": 1e999, "b": NaN, "c": 1.50, "d": 12, "e": 99999999999999999999}')

    assert read == {"a": "1e999", "b": "NaN", "c": "1.50", "d": 12, "e": "99999999999999999999"}


def test_a_refusal_must_use_a_known_code() -> None:
    with pytest.raises(AssertionError):
        Refused("teapot", 418, "No.")
