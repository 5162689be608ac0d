"""What a page of another origin, or a form, can and cannot send (R59, R83)."""

from __future__ import annotations

import json
from typing import Any

import pytest

from tests.people import Kitchen

pytestmark = pytest.mark.django_db

GOOD = {"Sec-Fetch-Site": "same-origin"}


@pytest.mark.parametrize(
    ("why", "headers", "content_type"),
    [
        ("another site", {"Sec-Fetch-Site": "cross-site"}, "application/json"),
        ("a neighbouring name", {"Sec-Fetch-Site": "same-site"}, "application/json"),
        ("typed into the address bar", {"Sec-Fetch-Site": "none"}, "application/json"),
        ("an old browser elsewhere", {"Origin": "http://evil.example"}, "application/json"),
        ("another scheme", {"Origin": "https://testserver"}, "application/json"),
        ("another port", {"Origin": "http://testserver:81"}, "application/json"),
        ("a hidden origin", {"Origin": "null"}, "application/json"),
        ("half an address", {"Origin": "http://[::1"}, "application/json"),
        ("no word of where from", {}, "application/json"),
        ("a form", GOOD, "application/x-www-form-urlencoded"),
        ("a form with files", GOOD, "multipart/form-data; boundary=x"),
        ("a form that plays JSON", GOOD, "text/plain"),
        (
            "the new word outweighs the old",
            {"Sec-Fetch-Site": "cross-site", "Origin": "http://testserver"},
            "application/json",
        ),
    ],
)
def test_a_change_from_elsewhere_is_refused(
    kitchen: Kitchen, why: str, headers: dict[str, str], content_type: str
) -> None:
    answer = _push(kitchen, headers, content_type)

    assert (answer.status_code, answer.json()["code"]) == (403, "csrf"), why


@pytest.mark.parametrize(
    "headers", [GOOD, {"Origin": "http://testserver"}, {**GOOD, "Origin": "http://elsewhere"}]
)
def test_a_change_from_our_own_page_is_taken(kitchen: Kitchen, headers: dict[str, str]) -> None:
    assert _push(kitchen, headers, "application/json; charset=utf-8").status_code == 200


def test_a_change_that_names_no_device_is_refused(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    del phone.headers["Kitchenlog-Device"]

    answer = phone.post("sync/have", {"ids": []})

    assert (answer.status_code, answer.json()["code"]) == (403, "csrf")


def test_a_cookie_without_the_header_opens_nothing(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    del phone.headers["Kitchenlog-Device"]

    assert phone.get("sync/pull").status_code == 401


def test_a_device_cannot_use_the_cookie_of_another_on_the_same_phone(
    kitchen: Kitchen,
) -> None:
    mine, theirs = kitchen.phone("processor"), kitchen.phone("seller")
    mine.headers["Kitchenlog-Device"] = str(theirs.device.id)

    assert mine.get("sync/pull").status_code == 401


def test_no_other_origin_is_told_it_may_read(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    phone.headers["Origin"] = "http://elsewhere.example"

    answer = phone.get("sync/pull")

    assert not [name for name in answer.headers if name.lower().startswith("access-control")]


def _push(kitchen: Kitchen, headers: dict[str, str], content_type: str) -> Any:
    phone = kitchen.phone()
    del phone.headers["Sec-Fetch-Site"]
    return phone.client.generic(
        "POST",
        "/api/v1/sync/have",
        json.dumps({"ids": []}),
        content_type=content_type,
        headers={
            **phone.headers,
            "Cookie": f"__Host-device-{phone.device.id}={phone.token}",
            **headers,
        },
    )
