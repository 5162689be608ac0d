"""The read API: entries, what is kept aside, lots; and that others' things look unknown."""

from __future__ import annotations

import json
import uuid
from typing import Any

import pytest

from tests.people import Kitchen
from tests.writing import Pen, pushed, recompute_all

pytestmark = pytest.mark.django_db


def test_an_entry_is_told_as_made_with_its_number(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    entry = Pen(phone).receipt()
    pushed(phone, [entry])

    told = phone.get(f"entries/{entry['id']}").json()

    assert told["entry"] == entry
    assert set(told) == {"protocol", "entry", "received_at", "skew_ms", "seq"}


def test_a_subject_is_told_with_every_entry_and_its_sheet(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    entries = [pen.receipt(), pen.sale(), pen.sale()]
    pushed(phone, entries)

    before = phone.get("entries", subject="lot:J1").json()
    recompute_all()
    after = phone.get("entries", subject="lot:J1").json()

    assert [each["entry"] for each in after["entries"]] == entries
    assert before["sheet"] is None
    assert after["sheet"]["entry_count"] == 3
    assert after["sheet"]["state"]["on_hand"] == "8"


def test_a_subject_nobody_wrote_of_has_nothing(kitchen: Kitchen) -> None:
    told = kitchen.phone().get("entries", subject="lot:NONE").json()

    assert told == {"protocol": 1, "entries": [], "sheet": None}


@pytest.mark.parametrize("subject", [None, "", "lot", "lot:small", "jar:J1", "lot:\x00"])
def test_a_subject_that_is_none_is_answered_with_400(
    subject: str | None, kitchen: Kitchen
) -> None:
    query = {} if subject is None else {"subject": subject}

    answer = kitchen.phone().get("entries", **query)

    assert answer.status_code == 400
    assert answer.json()["code"] == "unreadable"
    assert answer.json()["field"] == "subject"


def test_a_lot_is_told_by_its_code(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pushed(phone, [Pen(phone).receipt("MJ-261110-K7-1", "12")])
    recompute_all()

    told = phone.get("lots/MJ-261110-K7-1").json()

    assert told["lot"] == "MJ-261110-K7-1"
    assert told["state"]["on_hand"] == "12"


def test_authors_see_their_own_kept_aside_and_coordinators_all(kitchen: Kitchen) -> None:
    processor, seller = kitchen.phone("processor"), kitchen.phone("seller")
    coordinator = kitchen.phone("coordinator")
    bad = {**Pen(processor).receipt(), "kind": "tasting"}
    pushed(processor, [bad, "not an entry"])
    pushed(seller, [{"id": "x"}])

    own = processor.get("quarantine").json()["items"]
    everything = coordinator.get("quarantine").json()["items"]

    assert {item["code"] for item in own} == {"unknown_kind", "unreadable"}
    assert {item["author"] for item in own} == {str(processor.member.id)}
    assert len(everything) == 3
    assert json.dumps(bad) in {item["raw"] for item in own}
    assert all(item["device"] == str(processor.device.id) for item in own)
    assert all(item["entry"] is None for item in own)


def test_a_readable_entry_kept_aside_is_told_as_an_entry(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    entry = {**Pen(phone).receipt(), "author": str(uuid.uuid4())}
    pushed(phone, [entry])

    item = phone.get("quarantine").json()["items"][0]

    assert (item["id"], item["entry"]) == (entry["id"], entry)


def test_another_cooperatives_things_look_exactly_like_unknown_ones(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    phone, stranger = kitchen.phone(), other_kitchen.phone("coordinator")
    entry = Pen(phone).receipt("J1")
    pushed(phone, [entry, {"id": "bad"}])
    recompute_all()
    pairs: list[tuple[str, str, dict[str, Any]]] = [
        (f"entries/{entry['id']}", f"entries/{uuid.uuid4()}", {}),
        ("lots/J1", "lots/J2", {}),
        ("lots/J1/trace", "lots/J2/trace", {"direction": "back"}),
    ]

    for foreign, unknown, query in pairs:
        one, other = stranger.get(foreign, **query), stranger.get(unknown, **query)
        assert one.status_code == other.status_code == 404
        assert one.content == other.content
    assert stranger.get("entries", subject="lot:J1").json()["entries"] == []
    assert stranger.get("quarantine").json()["items"] == []
    assert str(phone.member.id) not in str(stranger.get("sync/pull").content)


@pytest.mark.parametrize("direction", [None, "", "sideways"])
def test_a_trace_needs_a_direction(direction: str | None, kitchen: Kitchen) -> None:
    query = {} if direction is None else {"direction": direction}

    answer = kitchen.phone().get("lots/J1/trace", **query)

    assert answer.status_code == 400
    assert answer.json()["field"] == "direction"
