"""Counting attempts, also twenty at once."""

from __future__ import annotations

from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from django.db import connection
from django.test import Client

from kitchenlog.members.limits import forget_old_attempts, wait_s
from kitchenlog.members.models import Attempt
from tests.people import PASSPHRASE, Kitchen

NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)


@pytest.mark.django_db
def test_the_sixth_attempt_waits_for_the_window_of_the_first() -> None:
    waits = [
        wait_s("door", at_most=5, per_s=60, now=NOON + timedelta(seconds=second))
        for second in (0, 1, 2, 3, 4, 20, 59, 60)
    ]

    assert waits == [0, 0, 0, 0, 0, 40, 1, 0]


@pytest.mark.django_db
def test_keys_do_not_count_for_one_another() -> None:
    for _ in range(6):
        wait_s("login:a", at_most=5, per_s=60, now=NOON)

    assert wait_s("login:b", at_most=5, per_s=60, now=NOON) == 0


@pytest.mark.django_db
def test_many_may_be_counted_at_once() -> None:
    first = wait_s("pushed", at_most=20_000, per_s=86_400, now=NOON, by=20_000)
    second = wait_s("pushed", at_most=20_000, per_s=86_400, now=NOON, by=1)

    assert (first, second) == (0, 86_400)


@pytest.mark.django_db
def test_no_limit_counts_nothing() -> None:
    assert wait_s("door", at_most=None, per_s=60, now=NOON) == 0
    assert not Attempt.objects.exists()


@pytest.mark.django_db
def test_old_counts_are_forgotten() -> None:
    wait_s("old", at_most=5, per_s=60, now=NOON - timedelta(days=3))
    wait_s("new", at_most=5, per_s=60, now=NOON)

    forget_old_attempts(now=NOON)

    assert [attempt.key for attempt in Attempt.objects.all()] == ["new"]


def test_of_twenty_sign_ins_at_once_five_are_looked_at(log_db: None) -> None:
    Kitchen("hearth")

    with ThreadPoolExecutor(20) as threads:
        answers = list(threads.map(_try, range(20)))

    assert Counter(answer.status_code for answer in answers) == {401: 5, 429: 15}
    refused = next(answer for answer in answers if answer.status_code == 429)
    assert refused.json()["code"] == "rate_limited"
    assert 1 <= int(refused["Retry-After"]) <= 60


@pytest.mark.django_db
def test_an_account_is_guarded_from_many_addresses(kitchen: Kitchen) -> None:
    answers = [_try(turn, address=f"10.0.0.{turn}") for turn in range(6)]

    assert [answer.status_code for answer in answers] == [401] * 5 + [429]


@pytest.mark.django_db
def test_an_unknown_login_is_limited_like_a_known_one(kitchen: Kitchen) -> None:
    answers = [_try(turn, address=f"10.0.0.{turn}", login="nobody@hearth") for turn in range(6)]

    assert [answer.status_code for answer in answers] == [401] * 5 + [429]


@pytest.mark.django_db
def test_the_right_passphrase_does_not_pass_the_limit(kitchen: Kitchen) -> None:
    for turn in range(5):
        _try(turn)

    assert _try(6, passphrase=PASSPHRASE).status_code == 429


@pytest.mark.django_db
def test_codes_cannot_be_guessed_faster_than_passphrases(kitchen: Kitchen) -> None:
    answers = [
        _client().post(
            "/api/v1/devices",
            {"join_code": f"AAAAA{turn:05}", "name": "N", "login": "n", "passphrase": "x" * 12},
            content_type="application/json",
        )
        for turn in range(6)
    ]

    assert [answer.status_code for answer in answers] == [401] * 5 + [429]


@pytest.mark.django_db
def test_behind_the_proxy_the_address_is_the_one_the_proxy_wrote(
    kitchen: Kitchen, settings: Any
) -> None:
    settings.KITCHENLOG_BEHIND_PROXY = True
    for turn in range(5):
        _try(turn, login=f"a{turn}@hearth", forwarded=f"1.2.3.{turn}, 9.9.9.9")

    same = _try(6, login="b@hearth", forwarded="4.4.4.4, 9.9.9.9")
    other = _try(7, login="c@hearth", forwarded="9.9.9.9, 8.8.8.8")

    assert (same.status_code, other.status_code) == (429, 401)


def _try(
    turn: int,
    *,
    address: str = "127.0.0.1",
    login: str = "seller@hearth",
    passphrase: str = "wrong",
    forwarded: str = "",
) -> Any:
    headers = {"X-Forwarded-For": forwarded} if forwarded else {}
    try:
        return _client().post(
            "/api/v1/devices",
            {"login": login, "passphrase": passphrase},
            content_type="application/json",
            headers=headers,
            REMOTE_ADDR=address,
        )
    finally:
        if not connection.in_atomic_block:
            connection.close()


def _client() -> Client:
    return Client(raise_request_exception=False, headers={"Sec-Fetch-Site": "same-origin"})
