"""What a pull tells, page by page, and to whom."""

from __future__ import annotations

import base64
import random
import threading
import time
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from hypothesis import HealthCheck, given
from hypothesis import settings as examples
from hypothesis import strategies as st

from kitchenlog.logbook.models import Entry, LogHead, Sheet
from kitchenlog.logbook.work import close_quiet
from tests.people import Kitchen, Phone
from tests.writing import Pen, made_id, pulled, pushed, recompute_all


def entry_ids(changes: list[dict[str, Any]]) -> list[str]:
    return [change["id"] for change in changes if change["type"] == "entry"]


def sheet_ids(changes: list[dict[str, Any]]) -> list[str]:
    return [change["id"] for change in changes if change["type"] == "sheet"]


@pytest.mark.django_db
def test_an_entry_comes_back_as_it_was_made(kitchen: Kitchen) -> None:
    phone, other = kitchen.phone(), kitchen.phone("seller")
    entry = Pen(phone).receipt()
    pushed(phone, [entry])

    changes, _ = pulled(other)

    told = next(change for change in changes if change["type"] == "entry")
    assert told["id"] == entry["id"]
    assert told["data"]["entry"] == entry
    assert set(told["data"]) == {"entry", "received_at", "skew_ms"}


@pytest.mark.django_db
def test_a_sheet_comes_with_what_a_phone_needs_to_trust_it(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pushed(phone, [Pen(phone).receipt("J1", "3")])
    recompute_all()

    changes, _ = pulled(phone)

    told = next(change for change in changes if change["id"] == "lot:J1")
    assert set(told["data"]) == {"state", "upto_seq", "entry_count", "fold", "is_open"}
    assert told["data"]["state"]["on_hand"] == "3"
    assert told["data"]["entry_count"] == 1


@pytest.mark.django_db
def test_changes_come_in_order_of_number_and_none_twice_over_small_pages(
    kitchen: Kitchen,
) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    entries = [pen.receipt(f"J{number}") for number in range(7)]
    pushed(phone, entries)
    recompute_all()

    whole, end = pulled(phone)
    paged, paged_end = pulled(phone, limit=2)

    assert paged == whole
    assert paged_end == end
    numbers = [change["seq"] for change in whole]
    assert numbers == sorted(set(numbers))
    assert entry_ids(whole) == [entry["id"] for entry in entries]
    assert pulled(phone, end) == ([], end)


@pytest.mark.django_db
def test_only_what_is_new_comes_after_a_cursor(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt()])
    recompute_all()
    _, cursor = pulled(phone)
    sale = pen.sale()
    pushed(phone, [sale])
    recompute_all()

    changes, _ = pulled(phone, cursor)

    assert entry_ids(changes) == [sale["id"]]
    assert set(sheet_ids(changes)) == set(sale["subjects"])


@pytest.mark.django_db
def test_entries_about_closed_subjects_and_definitions_are_not_sent(kitchen: Kitchen) -> None:
    phone = kitchen.phone("coordinator")
    pen = Pen(phone)
    place = pen.write(
        "place_defined", {"place": made_id("store"), "name": "Store", "sort": "store"}
    )
    gone = [pen.receipt("J1", "1"), pen.sale("J1", "1")]
    kept = pen.receipt("J2", "1")
    pushed(phone, [place, *gone, kept])
    recompute_all()
    close_quiet(at=datetime.now(UTC) + timedelta(days=15))

    changes, _ = pulled(phone)

    assert entry_ids(changes) == [kept["id"]]
    assert {f"place:{made_id('store')}", "lot:J1", "lot:J2"} < set(sheet_ids(changes))


@pytest.mark.django_db
def test_a_closed_lot_sold_from_again_is_whole_after_one_pull(kitchen: Kitchen) -> None:
    phone, other = kitchen.phone(), kitchen.phone("seller")
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1", "1"), pen.sale("J1", "1")])
    recompute_all()
    close_quiet(at=datetime.now(UTC) + timedelta(days=15))
    _, cursor = pulled(other)

    late = pen.sale("J1", "1")
    pushed(phone, [late])
    before_the_worker, _ = pulled(other, cursor)
    recompute_all()
    changes, _ = pulled(other, cursor)

    assert entry_ids(before_the_worker) == [late["id"]]
    assert entry_ids(changes) == [late["id"]]
    sheet = next(change["data"] for change in changes if change["id"] == "lot:J1")
    assert (sheet["is_open"], sheet["entry_count"]) == (True, 3)
    assert sheet["state"]["on_hand"] == "-1"
    about = other.get("entries", subject="lot:J1").json()
    assert len(about["entries"]) == sheet["entry_count"]
    assert about["sheet"]["state"] == sheet["state"]


@pytest.mark.django_db
def test_what_was_paid_is_told_to_coordinators_alone(kitchen: Kitchen) -> None:
    seller, coordinator = kitchen.phone("seller"), kitchen.phone("coordinator")
    pen = Pen(coordinator)
    paid = pen.write("price_paid", {"lot": "J1", "price": "66.60", "currency": "EUR"})
    note = pen.write("note", {"subject": "price:J1", "says": "too dear, 66.60"})
    about = {"entry": paid, "body": {**paid["body"], "price": "6.66"}}
    fixed = pen.correction(about["entry"], about["body"])
    pushed(coordinator, [pen.receipt("J1"), paid, note, fixed, pen.void(fixed)])
    recompute_all()

    by_seller, _ = pulled(seller)
    by_coordinator, _ = pulled(coordinator)

    assert "6.6" not in str(by_seller)
    assert {paid["id"], note["id"], fixed["id"]} < set(entry_ids(by_coordinator))
    assert "price:J1" in sheet_ids(by_coordinator)
    for path in (f"entries/{paid['id']}", f"entries/{note['id']}"):
        assert seller.get(path).status_code == 404
        assert coordinator.get(path).status_code == 200
    hidden = seller.get("entries", subject="price:J1").json()
    assert (hidden["entries"], hidden["sheet"]) == ([], None)


@pytest.mark.django_db
def test_a_phone_with_an_older_table_of_kinds_must_be_updated(kitchen: Kitchen) -> None:
    phone = kitchen.phone()

    answer = phone.get("sync/pull", kinds=0)
    newer = phone.get("sync/pull", kinds=99)

    assert answer.status_code == 426
    assert answer.json()["code"] == "upgrade_required"
    assert newer.status_code == 200


@pytest.mark.django_db
@pytest.mark.parametrize("query", [{"limit": 0}, {"limit": 501}, {"kinds": "-"}])
def test_a_query_that_cannot_be_read_is_answered_with_400(
    query: dict[str, Any], kitchen: Kitchen
) -> None:
    answer = kitchen.phone().get("sync/pull", **query)

    assert answer.status_code == 400
    assert answer.json()["field"] == next(iter(query))


def is_reset(phone: Phone, cursor: str) -> bool:
    answer = phone.get("sync/pull", cursor=cursor)
    assert answer.status_code == 200
    return answer.json().get("reset") is True


@pytest.mark.django_db
def test_another_view_epoch_or_cooperative_and_a_number_to_come_reset(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    phone, stranger = kitchen.phone(), other_kitchen.phone()
    _, cursor = pulled(phone)
    _, foreign = pulled(stranger)
    assert not is_reset(phone, cursor)

    assert is_reset(phone, foreign)
    future = base64.urlsafe_b64encode(
        base64.urlsafe_b64decode(cursor + "==").rsplit(b" ", 1)[0] + b" 99999"
    )
    assert is_reset(phone, future.decode().rstrip("="))
    phone.member.roles = ["coordinator"]
    phone.member.save()
    assert is_reset(phone, cursor)
    phone.member.roles = ["processor", "seller"]
    phone.member.save()
    assert not is_reset(phone, cursor)
    LogHead.objects.filter(cooperative=kitchen.cooperative).update(epoch="another")
    assert is_reset(phone, cursor)


@pytest.mark.django_db
def test_who_has_left_is_reset_and_then_told_nothing(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pushed(phone, [Pen(phone).receipt()])
    _, cursor = pulled(phone)
    phone.member.left_at = kitchen.at
    phone.member.save()

    assert is_reset(phone, cursor)
    assert pulled(phone)[0] == []


@pytest.mark.django_db
@examples(
    max_examples=60,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(text=st.text(max_size=60), place=st.integers(0, 200), mark=st.characters())
def test_any_cursor_gives_reset_or_a_page_and_never_an_error(
    text: str, place: int, mark: str, kitchen: Kitchen
) -> None:
    phone = _only_phone(kitchen)
    _, cursor = pulled(phone)
    spoilt = cursor[: place % len(cursor)] + mark + cursor[place % len(cursor) + 1 :]

    for one in (text, spoilt, cursor + mark, cursor[:place]):
        answer = phone.get("sync/pull", cursor=one)
        assert answer.status_code == 200, one
        assert answer["Content-Type"] == "application/json"


def _only_phone(kitchen: Kitchen) -> Phone:
    """One device for all examples: a cooperative has marks for 576."""
    if not hasattr(kitchen, "_phone"):
        kitchen._phone = kitchen.phone()  # type: ignore[attr-defined] # kept here only
    return kitchen._phone  # type: ignore[attr-defined,no-any-return] # as above


@pytest.mark.django_db
def test_a_pull_only_reads(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pushed(phone, [Pen(phone).receipt()])

    with CaptureQueriesContext(connection) as asked:
        pulled(phone)

    statements = [query["sql"].split()[0].upper() for query in asked.captured_queries]
    assert set(statements) <= {"SELECT", "SAVEPOINT", "RELEASE"}
    assert len([one for one in statements if one == "SELECT"]) <= 7  # one more on PostgreSQL


@pytest.mark.django_db
def test_have_names_what_is_missing_and_anothers_is_like_unknown(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    phone, stranger = kitchen.phone(), other_kitchen.phone()
    own, foreign = Pen(phone).receipt(), Pen(stranger).receipt()
    pushed(phone, [own])
    pushed(stranger, [foreign])
    unknown = made_id("unknown")

    answer = phone.post("sync/have", {"ids": [own["id"], foreign["id"], unknown]})

    assert answer.json()["missing"] == [foreign["id"], unknown]
    too_many = phone.post("sync/have", {"ids": [unknown] * 1001})
    assert too_many.status_code == 400


WRITERS = 6
PUSHES_EACH = 12


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_tight_reader_beside_six_writers_loses_and_doubles_nothing(
    seed: int, log_db: None, kitchen: Kitchen, no_limits: None
) -> None:
    phones = [kitchen.phone() for _ in range(WRITERS)]
    reader = kitchen.phone("seller")
    written: list[str] = []
    troubles: list[BaseException] = []

    def write(number: int) -> None:
        chance = random.Random(seed * 100 + number)
        pen = Pen(phones[number])
        try:
            for step in range(PUSHES_EACH):
                entries = [pen.receipt(f"W{number}-{step}-{each}") for each in range(3)]
                pushed(phones[number], entries)
                written.extend(entry["id"] for entry in entries)
                time.sleep(chance.random() / 200)
        except BaseException as trouble:
            troubles.append(trouble)
        finally:
            connection.close()

    threads = [threading.Thread(target=write, args=(number,)) for number in range(WRITERS)]
    for thread in threads:
        thread.start()
    read: list[str] = []
    cursor = ""
    while any(thread.is_alive() for thread in threads):
        changes, cursor = pulled(reader, cursor, limit=7)
        read += entry_ids(changes)
    changes, cursor = pulled(reader, cursor)
    read += entry_ids(changes)

    assert not troubles
    assert len(read) == len(set(read)) == WRITERS * PUSHES_EACH * 3
    assert set(read) == set(written)


@pytest.mark.django_db
def test_all_phones_of_one_role_hold_the_same_in_the_end(kitchen: Kitchen) -> None:
    one, two = kitchen.phone(), kitchen.phone("seller")
    pen, other_pen = Pen(one), Pen(two)
    held: dict[str, dict[str, int]] = {"one": {}, "two": {}}
    cursors = {"one": "", "two": ""}
    for step in range(4):
        pushed(one, [pen.receipt(f"J{step}")])
        pushed(two, [other_pen.sale(f"J{step}")])
        if step % 2:
            recompute_all()
            changes, cursors["one"] = pulled(one, cursors["one"])
            held["one"] |= {change["id"]: change["seq"] for change in changes}
    recompute_all()
    for name, phone in (("one", one), ("two", two)):
        changes, cursors[name] = pulled(phone, cursors[name])
        held[name] |= {change["id"]: change["seq"] for change in changes}

    assert held["one"] == held["two"]
    stored = dict(Sheet.objects.values_list("subject", "seq")) | {
        str(entry): seq for entry, seq in Entry.objects.values_list("id", "seq")
    }
    assert held["one"] == stored
