"""What a push answers, entry by entry."""

from __future__ import annotations

import json
import uuid
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from kitchenlog.logbook.models import Entry, Quarantined
from kitchenlog.logbook.wire import wire_time
from tests.people import Kitchen
from tests.writing import (
    Pen,
    made_id,
    pulled,
    push_of,
    pushed,
    recompute_all,
    statuses,
)

pytestmark = pytest.mark.django_db


def test_a_new_entry_is_created_and_the_same_again_exists(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    entry = Pen(phone).receipt()

    first = pushed(phone, [entry])
    again = pushed(phone, [entry])

    assert statuses(first) == ["created"]
    assert statuses(again) == ["exists"]
    assert first[0]["id"] == again[0]["id"] == entry["id"]


def test_another_entry_under_the_same_id_is_a_mismatch_and_both_are_kept(
    kitchen: Kitchen,
) -> None:
    phone = kitchen.phone()
    entry = Pen(phone).receipt(amount="10")
    other = {**entry, "app_version": "another"}
    pushed(phone, [entry])

    results = pushed(phone, [other])

    assert statuses(results) == ["mismatch"]
    items = phone.get("quarantine").json()["items"]
    assert [item["code"] for item in items] == ["mismatch"]
    assert items[0]["entry"] == other
    assert items[0]["other"] == entry


def test_the_answer_echoes_the_push_and_says_epoch_time_and_cursor(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    push = push_of(phone, [])

    answer = phone.post("sync/push", push).json()

    assert answer["protocol"] == 1
    assert answer["push"] == push["push"]
    assert set(answer) == {"protocol", "push", "server_time", "epoch", "through", "results"}
    assert phone.get("sync/pull", cursor=answer["through"]).json()["changes"] == []


QUARANTINED: dict[str, tuple[str, dict[str, Any]]] = {
    "a field is missing": ("unreadable", {"body": {}}),
    "a field nobody knows": ("unreadable", {"received_at": "2026-06-05T08:00:00.000Z"}),
    "an id that is none": ("unreadable", {"id": "7"}),
    "a kind nobody knows": ("unknown_kind", {"kind": "tasting"}),
    "another author": ("wrong_author", {"author": str(uuid.uuid4())}),
    "another cooperative": ("wrong_author", {"cooperative": str(uuid.uuid4())}),
    "a device nobody knows": ("wrong_author", {"device": str(uuid.uuid4())}),
}


@pytest.mark.parametrize("why", QUARANTINED)
def test_it_is_kept_aside_for(why: str, kitchen: Kitchen) -> None:
    code, change = QUARANTINED[why]
    phone = kitchen.phone()
    entry = {**Pen(phone).receipt(), **change}

    results = pushed(phone, [entry])

    assert statuses(results) == [f"quarantined {code}"]
    assert results[0]["id"] == entry["id"]
    assert results[0]["detail"].endswith(".")
    kept = Quarantined.objects.get()
    assert json.loads(bytes(kept.raw)) == entry
    assert not Entry.objects.exists()


def test_what_only_coordinators_write_is_kept_aside_for_its_role(kitchen: Kitchen) -> None:
    phone, coordinator = kitchen.phone("seller"), kitchen.phone("coordinator")
    body = {"place": made_id("store"), "name": "Store", "sort": "store"}

    by_seller = pushed(phone, [Pen(phone).write("place_defined", body)])
    by_coordinator = pushed(coordinator, [Pen(coordinator).write("place_defined", body)])

    assert statuses(by_seller) == ["quarantined role"]
    assert statuses(by_coordinator) == ["created"]


def test_nobody_else_corrects_what_a_coordinator_writes_whatever_they_call_it(
    kitchen: Kitchen,
) -> None:
    seller, coordinator = kitchen.phone("seller"), kitchen.phone("coordinator")
    pen, own = Pen(seller), Pen(coordinator)
    store = own.write("place_defined", {"place": "s", "name": "Store", "sort": "store"})
    changed = own.correction(store, {**store["body"], "name": "Cool store"})
    pushed(coordinator, [store, changed])
    about = {"of_kind": "note", "reason": "x"}
    says = {"subject": "place:s", "says": "gone"}
    false = [
        pen.write("void", {**about, "corrects": store["id"]}, subjects=["place:s"]),
        pen.write(
            "correction",
            {**about, "corrects": changed["id"], "body": says},
            subjects=["place:s"],
        ),
    ]

    results = pushed(seller, [*false, pen.receipt()])

    assert statuses(results) == ["quarantined role", "quarantined role", "created"]


def test_who_has_left_is_heard_and_kept_aside(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    before, after = Pen(phone).receipt("J1"), Pen(phone).receipt("J2")
    after["id"] = before["id"][:-1] + ("0" if before["id"][-1] != "0" else "1")
    pushed(phone, [before])
    phone.member.left_at = kitchen.at
    phone.member.save()

    results = pushed(phone, [before, after])

    assert statuses(results) == ["exists", "quarantined not_a_member"]


def test_what_a_revoked_device_wrote_is_kept_aside_when_its_member_brings_it(
    kitchen: Kitchen,
) -> None:
    old, new = kitchen.phone(), kitchen.phone()
    entry = Pen(old).receipt()
    old.device.revoked_at = kitchen.at
    old.device.save()

    results = pushed(new, [entry])

    assert statuses(results) == ["quarantined revoked_device"]


def test_what_a_signed_out_device_wrote_is_taken(kitchen: Kitchen) -> None:
    old, new = kitchen.phone(), kitchen.phone()
    entry = Pen(old).receipt()
    old.device.signed_out_at = kitchen.at
    old.device.save()

    assert statuses(pushed(new, [entry])) == ["created"]


def test_a_colleagues_entry_is_kept_aside(kitchen: Kitchen) -> None:
    processor, seller = kitchen.phone("processor"), kitchen.phone("seller")

    results = pushed(seller, [Pen(processor).receipt()])

    assert statuses(results) == ["quarantined wrong_author"]


def test_a_newer_version_is_asked_for_again_and_nothing_is_stored(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    newer = {**Pen(phone).receipt(), "version": 2}

    results = pushed(phone, [newer])

    assert statuses(results) == ["retry"]
    assert not Entry.objects.exists()
    assert not Quarantined.objects.exists()


def test_replaying_a_push_three_times_has_no_effect(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    entry = pen.receipt()
    entries = [entry, pen.sale(), {**entry, "app_version": "x"}, {"id": 1}, 7]
    first = pushed(phone, entries)
    before = _everything()

    for _ in range(3):
        assert [r["id"] for r in pushed(phone, entries)] == [r["id"] for r in first]

    assert _everything() == before


def test_seven_bad_entries_do_not_touch_ninety_three_good_ones(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    entries: list[Any] = [pen.receipt(f"J{number}") for number in range(93)]
    sale = pen.sale()
    bad = [
        _with_body(sale, amount={"amount": "1\x00", "unit": "pc"}),
        _with_body(sale, amount={"amount": "1" * 15, "unit": "pc"}),
        _with_body(sale, on="1999-12-31"),
        _with_body(sale, amount={"amount": "1", "unit": "pinch"}),
        {**sale, "app_version": "\ud800"},
        {**sale, "device_seq": -1},
        None,
    ]
    for number, one in enumerate(bad):
        entries.insert(number * 13, one)

    results = pushed(phone, entries)

    assert statuses(results).count("created") == 93
    assert statuses(results).count("quarantined unreadable") == 7
    assert Entry.objects.count() == 93
    assert Quarantined.objects.count() == 7


BAD_JSON = {
    "NaN": '{"amount": NaN, "unit": "pc"}',
    "Infinity": '{"amount": -Infinity, "unit": "pc"}',
    "a huge exponent": '{"amount": 1e999, "unit": "pc"}',
    "a number with a point": '{"amount": 1.5, "unit": "pc"}',
    "a key twice": '{"amount": "1", "amount": "1", "unit": "pc"}',
    "a very long number": f'{{"amount": {"9" * 5000}, "unit": "pc"}}',
    "thirty levels": "[" * 30 + "]" * 30,
    "a text over ten thousand": json.dumps("x" * 10_001),
}


@pytest.mark.parametrize("what", BAD_JSON)
def test_only_the_entry_is_kept_aside_that_holds(what: str, kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    good, bad = pen.receipt(), pen.receipt("J2")
    bad["body"]["amount"] = "HERE"
    text = json.dumps(push_of(phone, [good, bad])).replace('"HERE"', BAD_JSON[what])

    answer = phone.post("sync/push", text)

    assert statuses(answer.json()["results"]) == ["created", "quarantined unreadable"]
    assert BAD_JSON[what].encode() in bytes(Quarantined.objects.get().raw)


def test_too_much_at_once_is_too_large(kitchen: Kitchen, settings: Any) -> None:
    phone = kitchen.phone()
    many = phone.post("sync/push", push_of(phone, [1] * 501))
    long = phone.post("sync/push", push_of(phone, ["x" * (1024 * 1024)]))

    for answer in (many, long):
        assert answer.status_code == 413
        assert answer.json()["code"] == "too_large"


@pytest.mark.parametrize(
    "body",
    [
        " ",
        "{",
        "[]",
        "\xff",
        "null",
        "[" * 100_000,
        '{"protocol": 1, "protocol": 1}',
        '{"protocol": 2}',
        '{"protocol": 1, "entries": {}}',
        '{"protocol": 1, "entries": []}',
        '{"protocol": 1, "entries": [], "epoch": "", "push": 7}',
    ],
)
def test_a_push_that_cannot_be_read_is_answered_with_400(body: str, kitchen: Kitchen) -> None:
    answer = kitchen.phone().post("sync/push", body.encode("latin-1"))

    assert answer.status_code == 400
    assert answer.json()["code"] == "unreadable"


def test_the_device_in_the_body_is_the_one_in_the_header(kitchen: Kitchen) -> None:
    phone, other = kitchen.phone(), kitchen.phone()

    answer = phone.post("sync/push", push_of(other, []))

    assert answer.status_code == 400
    assert answer.json()["field"] == "device"


def test_more_than_the_minutes_pushes_must_wait(kitchen: Kitchen, settings: Any) -> None:
    settings.PUSHES_PER_MINUTE = 3
    phone, other = kitchen.phone(), kitchen.phone()
    for _ in range(3):
        pushed(phone, [])

    answer = phone.post("sync/push", push_of(phone, []))

    assert answer.status_code == 429
    assert answer.json()["code"] == "rate_limited"
    assert 1 <= int(answer["Retry-After"]) <= 60
    assert pushed(other, []) == []


def test_more_than_the_days_entries_must_wait(kitchen: Kitchen, settings: Any) -> None:
    settings.PUSHED_ENTRIES_PER_DAY = 3
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt(), pen.sale()])

    answer = phone.post("sync/push", push_of(phone, [pen.sale(), pen.sale()]))

    assert answer.status_code == 429
    assert Entry.objects.count() == 2


def test_the_server_remembers_how_far_a_device_has_come(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    entries = [pen.receipt(), pen.sale(), pen.sale()]
    pushed(phone, [entries[2]])
    pushed(phone, entries[:2])

    phone.device.refresh_from_db()

    assert phone.device.highest_device_seq == 3


@pytest.mark.parametrize("days", [-400, 400])
def test_a_wrong_clock_is_noted_and_never_a_reason(days: int, kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    wrong = datetime.now(UTC) + timedelta(days=days)
    entry = Pen(phone).receipt(at=wrong)

    results = pushed(phone, [entry], device_time=wire_time(wrong))

    assert statuses(results) == ["created"]
    told = phone.get(f"entries/{entry['id']}").json()
    assert told["entry"]["recorded_at"] == wire_time(wrong)
    assert abs(told["skew_ms"] + days * 86_400_000) < 60_000


ODD_CLOCKS = [
    "0001-01-01T00:00:00.000Z",
    "1901-12-13T20:45:52.000Z",
    "1969-12-31T23:59:59.999Z",
    "9999-01-01T00:00:00.000Z",
    "9999-12-31T23:59:59.999Z",
]


@pytest.mark.parametrize("clock", ODD_CLOCKS)
def test_a_clock_of_any_year_hands_everything_over(clock: str, kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    entry = Pen(phone).receipt()
    entry |= {"recorded_at": clock, "happened_at": clock, "local_date": clock[:10]}

    results = pushed(phone, [entry], device_time=clock)

    assert statuses(results) == ["created"]
    told = phone.get(f"entries/{entry['id']}").json()
    assert told["entry"] == entry
    off = datetime.now(UTC) - datetime.fromisoformat(clock)
    assert abs(told["skew_ms"] - off.total_seconds() * 1000) < 60_000
    recompute_all()
    sheets = {c["id"]: c["data"]["state"] for c in pulled(phone)[0] if c["type"] == "sheet"}
    assert sheets["lot:J1"]["on_hand"] == "10"
    assert sheets["lot:J1"]["made_on"] == clock[:10]


@pytest.mark.parametrize(
    "clock", ["-000001-06-05T08:00:00.000Z", "+010000-01-01T00:00:00.000Z"]
)
def test_a_clock_no_time_can_hold_hands_over_too(clock: str, kitchen: Kitchen) -> None:
    phone = kitchen.phone()

    results = pushed(phone, [Pen(phone).receipt()], device_time=clock)

    assert statuses(results) == ["created"]


@pytest.mark.parametrize("clock", [None, 7, "", "now", "2026-02-30T08:00:00.000Z", "0000"])
def test_what_is_no_clock_at_all_is_answered_with_400(clock: Any, kitchen: Kitchen) -> None:
    phone = kitchen.phone()

    answer = phone.post("sync/push", push_of(phone, [], device_time=clock))

    assert answer.status_code == 400
    assert answer.json()["field"] == "device_time"


def test_the_number_of_queries_does_not_grow_with_the_entries(
    kitchen: Kitchen, django_assert_max_num_queries: Any
) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt()])

    for count in (1, 50):
        with django_assert_max_num_queries(22):
            pushed(phone, [pen.sale() for _ in range(count)])


def _with_body(entry: dict[str, Any], **change: Any) -> dict[str, Any]:
    return {**entry, "body": {**entry["body"], **change}}


def _everything() -> tuple[list[Any], list[Any]]:
    return (
        list(Entry.objects.order_by("seq").values_list("id", "seq", "chain_hash")),
        list(Quarantined.objects.order_by("digest", "code").values_list("digest", "code")),
    )
