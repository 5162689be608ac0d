"""A drill is its member's and the coordinators': nobody else gets a byte of it."""

from __future__ import annotations

import json
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from kitchenlog.logbook.verify import sheets_that_differ
from kitchenlog.members.scope import in_cooperative
from tests.people import Kitchen, Phone
from tests.writing import Pen, pulled, push_of, pushed, recompute_all, statuses

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("no_limits")]

SECRET = "77.125"  # stands in every drill below and nowhere else


def drill(pen: Pen, of: Phone | None = None, **other: Any) -> dict[str, Any]:
    """A drill of the member, by default the writer."""
    body = {
        "member": str((of or pen.phone).member.pk),
        "seed": 7,
        "drawn_by": 1,
        "questions": [{"sort": "dial", "truth": "77", "division": "1", "read": SECRET}],
        **other,
    }
    return pen.write("drill_done", body)


def note(pen: Pen, of: Phone) -> dict[str, Any]:
    """Words about a member's practice."""
    return pen.write("note", {"subject": f"skill:{of.member.pk}", "says": f"read {SECRET}"})


def answers(phone: Phone, entries: list[dict[str, Any]], subject: str) -> str:
    """All that a phone can be told by any address."""
    told = [json.dumps(pulled(phone)[0])]
    for path in (f"entries?subject={subject}", "quarantine", "sync/pull?limit=1"):
        told.append(phone.get(path).content.decode())
    told += [phone.get(f"entries/{entry['id']}").content.decode() for entry in entries]
    return "".join(told)


def test_a_drill_is_told_to_its_member_and_to_coordinators_alone(kitchen: Kitchen) -> None:
    ana, other = kitchen.phone("processor"), kitchen.phone("seller")
    coordinator = kitchen.phone("coordinator")
    pen, trainer = Pen(ana), Pen(coordinator)
    done, again = drill(pen), drill(pen)
    fixed = pen.correction(done, {**done["body"], "note": SECRET})
    written = [done, again, fixed, pen.void(again), note(pen, ana)]
    pushed(ana, written)
    trained = [note(trainer, ana), trainer.correction(done, done["body"])]
    pushed(coordinator, trained)
    recompute_all()
    subject = f"skill:{ana.member.pk}"
    everything = [*written, *trained]

    hidden = answers(other, everything, subject)

    for secret in (SECRET, subject, *(entry["id"] for entry in everything)):
        assert secret not in hidden
    for phone in (ana, coordinator):
        changes, _ = pulled(phone)
        ids = {change["id"] for change in changes}
        assert {subject, *(entry["id"] for entry in everything)} <= ids
        sheet = phone.get("entries", subject=subject).json()["sheet"]
        assert len(sheet["state"]["drills"]) == 1
    with in_cooperative(kitchen.cooperative):
        assert list(sheets_that_differ(kitchen.cooperative.pk)) == []


def test_a_drill_of_somebody_else_is_kept_aside(kitchen: Kitchen) -> None:
    ana, other = kitchen.phone("processor"), kitchen.phone("seller")
    pen = Pen(other)

    results = pushed(other, [drill(pen, of=ana), note(pen, ana), drill(pen)])

    assert statuses(results) == ["quarantined role", "quarantined role", "created"]


def test_a_coordinator_may_write_for_a_member_who_then_sees_it(kitchen: Kitchen) -> None:
    ana, other = kitchen.phone("processor"), kitchen.phone("seller")
    coordinator = kitchen.phone("coordinator")
    done = drill(Pen(coordinator), of=ana)

    results = pushed(coordinator, [done])

    assert statuses(results) == ["created"]
    assert ana.get(f"entries/{done['id']}").status_code == 200
    assert other.get(f"entries/{done['id']}").status_code == 404


@pytest.mark.parametrize("of_kind", ["drill_done", "sale"])
def test_who_guesses_the_id_of_a_drill_can_neither_change_nor_read_it(
    kitchen: Kitchen, of_kind: str
) -> None:
    ana, other = kitchen.phone("processor"), kitchen.phone("seller")
    done = drill(Pen(ana))
    pushed(ana, [done])
    pen = Pen(other)
    own = drill(pen)
    about = {"corrects": done["id"], "of_kind": of_kind, "reason": "x"}
    moved = pen.write("correction", {**about, "of_kind": "drill_done", "body": own["body"]},
                      subjects=own["subjects"])  # fmt: skip
    gone = pen.write("void", about, subjects=["lot:J1"])

    results = pushed(other, [own, moved, gone, {**done, "author": own["author"]}])

    assert statuses(results)[:3] == ["created", "quarantined role", "quarantined role"]
    assert statuses(results)[3].startswith("quarantined")
    recompute_all()
    subject = f"skill:{ana.member.pk}"
    assert "drawn_by" in ana.get(f"entries/{done['id']}").content.decode()
    assert ana.get("entries", subject=subject).json()["sheet"]["entry_count"] == 1
    assert other.get(f"entries/{done['id']}").status_code == 404


def test_another_entry_under_the_id_of_a_drill_does_not_bring_the_drill_out(
    kitchen: Kitchen,
) -> None:
    ana, other = kitchen.phone("processor"), kitchen.phone("seller")
    done = drill(Pen(ana))
    pushed(ana, [done])

    results = pushed(other, [{**Pen(other).receipt(), "id": done["id"]}])

    assert results[0]["status"] == "mismatch"
    assert SECRET not in json.dumps(results)
    assert SECRET not in other.get("quarantine").content.decode()
    assert SECRET in kitchen.phone("coordinator").get("quarantine").content.decode()


def test_a_drill_that_a_coordinator_moves_to_its_reader_is_hidden_from_both_but_counted(
    kitchen: Kitchen,
) -> None:
    """Written on the wrong person's phone: no entry that stands on two members' sheets is told
    to either, their sheets say what counts."""
    ana, other = kitchen.phone("processor"), kitchen.phone("seller")
    coordinator = kitchen.phone("coordinator")
    done = drill(Pen(ana))
    pushed(ana, [done])
    moved = Pen(coordinator).correction(done, {**done["body"], "member": str(other.member.pk)})
    pushed(coordinator, [moved])
    recompute_all()

    for phone, count in ((ana, 0), (other, 1)):
        about = phone.get("entries", subject=f"skill:{phone.member.pk}").json()
        assert len(about["sheet"]["state"]["drills"]) == count
        assert about["entries"] == []


def test_pulling_asks_no_more_of_the_database_for_own_drills(kitchen: Kitchen) -> None:
    ana = kitchen.phone("processor")
    pen = Pen(ana)
    pushed(ana, [drill(pen) for _ in range(10)])
    recompute_all()
    with CaptureQueriesContext(
        connection,
    ) as few:
        ana.get("sync/pull", limit=1)
    with CaptureQueriesContext(connection) as many:
        ana.get("sync/pull", limit=100)

    assert len(many) == len(few)


def test_a_push_without_corrections_asks_nothing_about_owners(kitchen: Kitchen) -> None:
    ana = kitchen.phone("processor")
    pen = Pen(ana)
    with CaptureQueriesContext(connection) as queries:
        ana.post("sync/push", push_of(ana, [pen.receipt("J1")]))

    assert not [q for q in queries if "audience" in q["sql"] and "SELECT" in q["sql"][:6]]
