"""The log itself: numbers, links, families, the work list, what the database refuses."""

from __future__ import annotations

import uuid
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime
from typing import Any

import pytest
from django.db import DatabaseError, connection, transaction

from kitchenlog.entries.envelope import Entry as Made
from kitchenlog.entries.envelope import parse_envelope
from kitchenlog.entries.parse import parse_body
from kitchenlog.logbook import services, turnstile
from kitchenlog.logbook.drafts import Draft, Kept, draft_of
from kitchenlog.logbook.models import Entry, EntryMention, EntrySubject, LogHead, StaleSubject
from kitchenlog.logbook.selectors import relatives_in_log
from kitchenlog.members.scope import in_cooperative
from tests.people import Kitchen, Phone
from tests.writing import Pen, made_id, push_of, pushed, statuses

NOW = datetime(2026, 6, 6, tzinfo=UTC)


def drafted(entry: dict[str, Any]) -> Draft:
    made = parse_envelope(entry)
    assert isinstance(made, Made)
    body = parse_body(made.kind, made.version, made.body)
    assert isinstance(body, dict)
    return draft_of(made, made=entry, body=body)


def append(kitchen: Kitchen, drafts: Sequence[Draft]) -> list[Kept]:
    with in_cooperative(kitchen.cooperative):
        return services.append_entries(
            drafts, cooperative=kitchen.cooperative.pk, received_at=NOW, skew_ms=0
        ).kept


def subjects_by_entry() -> dict[str, list[str]]:
    numbers = dict(Entry.objects.values_list("seq", "id"))
    found: dict[str, list[str]] = {str(entry): [] for entry in numbers.values()}
    for seq, subject in EntrySubject.objects.order_by("subject").values_list("seq", "subject"):
        found[str(numbers[seq])].append(subject)
    return found


@pytest.mark.django_db
def test_entries_are_numbered_in_the_order_given(kitchen: Kitchen) -> None:
    pen = Pen(kitchen.phone())
    drafts = [drafted(pen.receipt(f"J{number}")) for number in range(5)]
    before = LogHead.objects.get().last_seq

    kept = append(kitchen, drafts)

    assert [each.seq for each in kept] == [before + number for number in range(1, 6)]
    assert LogHead.objects.get().last_seq == before + 5
    assert append(kitchen, drafts[::-1]) == [
        Kept(each.id, "exists", each.seq) for each in reversed(kept)
    ]


@pytest.mark.django_db
def test_the_same_id_twice_in_one_push_is_one_entry(kitchen: Kitchen) -> None:
    entry = Pen(kitchen.phone()).receipt()
    other = {**entry, "app_version": "another"}

    kept = append(kitchen, [drafted(entry), drafted(entry), drafted(other)])

    assert [each.status for each in kept] == ["created", "exists", "mismatch"]
    assert len({each.seq for each in kept}) == 1


@pytest.mark.django_db
def test_subjects_and_mentions_follow_from_the_body_even_if_the_phone_forgot(
    kitchen: Kitchen,
) -> None:
    entry = Pen(kitchen.phone()).receipt("J1", subjects=[])

    append(kitchen, [drafted(entry)])

    assert subjects_by_entry()[entry["id"]] == ["lot:J1"]
    assert set(EntryMention.objects.values_list("subject", flat=True)) == {
        f"material:{made_id('jam')}",
        f"source:{made_id('farm')}",
        f"place:{made_id('store')}",
    }


@pytest.mark.django_db
def test_every_touched_subject_is_on_the_work_list_with_its_latest_reason(
    kitchen: Kitchen,
) -> None:
    pen = Pen(kitchen.phone())
    append(kitchen, [drafted(pen.receipt("J1")), drafted(pen.receipt("J2"))])

    kept = append(kitchen, [drafted(pen.receipt("J2"))])

    marks = dict(StaleSubject.objects.values_list("subject", "mark"))
    assert marks == {"lot:J1": kept[0].seq - 1, "lot:J2": kept[0].seq}
    assert LogHead.objects.get().has_stale


def _family(pen: Pen) -> list[dict[str, Any]]:
    """A sale of J1; its correction to J2; a correction of that to J3; a void of the last."""
    sale = pen.sale("J1")
    second = pen.correction(sale, {**sale["body"], "lot": "J2"}, subjects=[])
    third = pen.correction(second, {**sale["body"], "lot": "J3"}, subjects=[])
    return [sale, second, third, pen.void(third, subjects=[])]


@pytest.mark.django_db
@pytest.mark.parametrize("order", [(0, 1, 2, 3), (3, 2, 1, 0), (1, 3, 0, 2), (2, 0, 3, 1)])
def test_a_correction_family_shares_its_subjects_in_any_order_of_arrival(
    order: tuple[int, ...], kitchen: Kitchen
) -> None:
    family = _family(Pen(kitchen.phone()))

    for number in order:
        append(kitchen, [drafted(family[number])])

    day = f"day:{made_id('store')}:{family[0]['local_date']}"
    assert subjects_by_entry() == {
        each["id"]: [day, "lot:J1", "lot:J2", "lot:J3"] for each in family
    }
    assert set(StaleSubject.objects.values_list("subject", flat=True)) == {
        day, "lot:J1", "lot:J2", "lot:J3",
    }  # fmt: skip


@pytest.mark.django_db
def test_two_corrections_of_an_entry_that_never_came_are_one_family(kitchen: Kitchen) -> None:
    pen = Pen(kitchen.phone())
    sale = pen.sale("J1")
    one = pen.correction(sale, {**sale["body"], "lot": "J2"}, subjects=[])
    two = pen.correction(sale, {**sale["body"], "lot": "J3"}, subjects=[])

    append(kitchen, [drafted(one)])
    append(kitchen, [drafted(two)])

    found = subjects_by_entry()
    assert found[one["id"]] == found[two["id"]]
    assert {"lot:J2", "lot:J3"} < set(found[one["id"]])


@pytest.mark.django_db
def test_one_entry_the_database_refuses_does_not_cost_the_others(kitchen: Kitchen) -> None:
    pen = Pen(kitchen.phone())
    drafts = [drafted(pen.receipt(f"J{number}")) for number in range(3)]
    drafts[1] = drafts[1]._replace(device_seq=2**63)

    kept = append(kitchen, drafts)

    assert [each.status for each in kept] == ["created", "unstorable", "created"]
    assert kept[2].seq == (kept[0].seq or 0) + 1
    assert Entry.objects.count() == 2


@pytest.mark.parametrize(
    "statement", ["UPDATE logbook_entry SET kind = 'x'", "DELETE FROM logbook_entry"]
)
def test_the_database_refuses_to_change_entries(
    statement: str, log_db: None, kitchen: Kitchen
) -> None:
    append(kitchen, [drafted(Pen(kitchen.phone()).receipt())])

    with (
        pytest.raises(DatabaseError, match="never changed or deleted"),
        transaction.atomic(),
        connection.cursor() as cursor,
    ):
        cursor.execute(statement)

    assert Entry.objects.get().kind == "receipt"


def test_twenty_threads_with_the_same_push_make_one_set_of_rows(
    log_db: None, kitchen: Kitchen
) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    push = push_of(phone, [pen.receipt(), *(pen.sale() for _ in range(9))])
    phones = [Phone(phone.device, phone.token) for _ in range(20)]

    def send(one: Phone) -> Any:
        try:
            return one.post("sync/push", push)
        finally:
            connection.close()

    with ThreadPoolExecutor(20) as pool:
        answers = list(pool.map(send, phones))

    assert {answer.status_code for answer in answers} == {200}
    made = [statuses(answer.json()["results"]).count("created") for answer in answers]
    assert sorted(made) == [0] * 19 + [10]
    assert Entry.objects.count() == 10


def test_a_silent_broker_does_not_fail_a_push(
    log_db: None, kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise ConnectionError("no broker")

    monkeypatch.setattr(turnstile.current_app, "send_task", broken)
    phone = kitchen.phone()

    assert statuses(pushed(phone, [Pen(phone).receipt()])) == ["created"]


def test_the_bell_is_rung_once_while_work_waits(
    log_db: None, kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    rung: list[str] = []
    monkeypatch.setattr(turnstile.current_app, "send_task", lambda name, **_: rung.append(name))
    phone = kitchen.phone()
    pen = Pen(phone)

    for _ in range(3):
        pushed(phone, [pen.receipt()])

    assert rung == ["kitchenlog.logbook.tasks.recompute_stale"]


@pytest.mark.django_db
def test_another_cooperative_may_use_the_same_id(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    phone, other = kitchen.phone(), other_kitchen.phone()
    entry = Pen(phone).receipt()
    pushed(phone, [entry])
    same_id = {**Pen(other).receipt(), "id": entry["id"]}

    assert statuses(pushed(other, [same_id])) == ["created"]
    assert uuid.UUID(entry["id"]) in set(Entry.objects.values_list("id", flat=True))


@pytest.mark.django_db
def test_relatives_are_looked_up_and_the_log_is_not_read_for_them(
    kitchen: Kitchen, django_assert_num_queries: Any
) -> None:
    family = _family(Pen(kitchen.phone()))
    append(kitchen, [drafted(each) for each in family])

    with django_assert_num_queries(1) as asked:
        found = relatives_in_log(kitchen.cooperative.pk, [family[1]["id"]])

    assert {str(each.id) for each in found} == {family[1]["id"], family[2]["id"]}
    if connection.vendor == "sqlite":
        with connection.cursor() as cursor:
            cursor.execute(f"EXPLAIN QUERY PLAN {asked.captured_queries[0]['sql']}")
            plan = "\n".join(row[3] for row in cursor.fetchall())
        assert plan.count("SEARCH logbook_entry") == 2
        assert "AND id=?)" in plan and "AND corrects=?)" in plan
