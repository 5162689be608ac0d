"""`manage.py start_cooperative`, as an operator without a screen uses it."""

from __future__ import annotations

import io
import re
from typing import Any

import pytest
from django.core.management import CommandError, call_command
from django.test import Client

from kitchenlog.members.models import Cooperative, Member
from tests.people import PASSPHRASE, Kitchen

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("no_limits")]

SAID = {
    "name": "Hearth and Orchard",
    "handle": "Hearth",
    "time_zone": "Europe/Dublin",
    "currency": "eur",
    "language": "en",
}


def test_a_new_cooperative_answers_a_code_for_its_first_coordinator() -> None:
    said = _start(**SAID)

    cooperative = Cooperative.objects.get()
    assert cooperative.handle == "hearth"
    assert cooperative.starts_with["currency"] == "EUR"
    assert cooperative.log_head.last_seq == 0
    answer = _join(_code(said))
    assert answer.json()["member"]["roles"] == ["processor", "seller", "coordinator"]


def test_with_a_login_and_a_passphrase_the_coordinator_is_made_at_once(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(PASSPHRASE + "\n"))

    said = _start(**SAID, login="anna", member="Anna")

    assert "Sign in as anna@hearth." in said
    member = Member.objects.get()
    assert (member.name, member.roles) == ("Anna", ["processor", "seller", "coordinator"])
    assert member.check_password(PASSPHRASE)


def test_a_weak_passphrase_is_refused_and_the_second_try_goes_on_from_there(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("1234\n"))

    with pytest.raises(CommandError, match="passphrase"):
        _start(**SAID, login="anna")

    assert not Cooperative.objects.exists()


def test_the_first_member_gets_in_again_by_a_new_code(kitchen: Kitchen) -> None:
    said = _start(handle="hearth", login="coordinator")

    answer = _join(_code(said))

    assert "Hearth has begun already." in said
    assert answer.json()["member"]["login"] == "coordinator@hearth"
    assert Member.objects.count() == 3


@pytest.mark.parametrize(
    ("field", "value", "sentence"),
    [
        ("time_zone", "Dublin", "--time-zone"),
        ("currency", "euro", "--currency"),
        ("handle", "a b", "handle"),
        ("handle", "a@b", "handle"),
        ("name", "", "--name"),
        ("login", "no such", "nobody"),
    ],
)
def test_what_is_wrong_is_named(
    kitchen: Kitchen, field: str, value: str, sentence: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO())
    handle = "hearth" if field == "login" else "another"

    with pytest.raises(CommandError, match=sentence):
        _start(**{**SAID, "handle": handle, field: value})

    assert Cooperative.objects.count() == 1


def _start(**said: Any) -> str:
    out = io.StringIO()
    call_command("start_cooperative", stdout=out, **said)
    return out.getvalue()


def _code(said: str) -> str:
    found = re.search(r"Join code for [^:]+: (\w{10})", said)
    assert found
    return found[1]


def _join(code: str) -> Any:
    body = {"join_code": code, "name": "Anna", "login": "anna", "passphrase": PASSPHRASE}
    return Client().post(
        "/api/v1/devices",
        body,
        content_type="application/json",
        headers={"Sec-Fetch-Site": "same-origin"},
    )
