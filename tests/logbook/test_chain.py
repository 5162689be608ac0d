"""Tampering by SQL is named: change, delete, insert, swap, and a chain made anew."""

from __future__ import annotations

from io import StringIO

import pytest
from django.core.management import CommandError, call_command
from django.db import connection

from kitchenlog.logbook.chain import fingerprint_of_text
from kitchenlog.logbook.models import Entry, LogHead
from tests.people import Kitchen
from tests.writing import Pen, made_id, pushed

pytestmark = pytest.mark.django_db

SECOND = "seq = (SELECT min(seq) + 1 FROM logbook_entry)"
THIRD = "seq = (SELECT min(seq) + 2 FROM logbook_entry)"
OF_LOT = "AND subject LIKE 'lot:%'"
FALSE = "(1 = 0)"
LAST = "seq = (SELECT max(seq) FROM logbook_entry)"

TAMPERED: dict[str, tuple[list[str], str]] = {
    "a changed body": (
        [f"UPDATE logbook_entry SET canonical = replace(canonical, 'J1', 'J9') WHERE {SECOND}"],
        "is not what its fingerprint says",
    ),
    "a changed column": (
        [f"UPDATE logbook_entry SET kind = 'count' WHERE {SECOND}"],
        "its kind was changed",
    ),
    "an entry shown to others": (
        [f"UPDATE logbook_entry SET audience = 'coordinator' WHERE {SECOND}"],
        "its audience was changed",
    ),
    "a changed time of receipt": (
        [f"UPDATE logbook_entry SET received_at = '2020-01-01 00:00:00+00:00' WHERE {SECOND}"],
        "does not follow the one before it",
    ),
    "a link to another sheet": (
        [f"UPDATE logbook_entrysubject SET subject = 'lot:J9' WHERE {SECOND} {OF_LOT}"],
        "its link of lot:J1 is missing",
    ),
    "a link nobody made": (
        [f"UPDATE logbook_entrysubject SET subject = 'lot:J9' WHERE {SECOND} {OF_LOT}"],
        "it has a link of lot:J9 that does not follow from it",
    ),
    "a link of a subject that phones are not sent": (
        [f"UPDATE logbook_entrysubject SET can_open = {FALSE} WHERE {SECOND} {OF_LOT}"],
        "its link to lot:J1 was changed",
    ),
    "a mention of another place": (
        [f"UPDATE logbook_entrymention SET subject = 'place:x' WHERE {SECOND}"],
        "it has a mention of place:x that does not follow from it",
    ),
    "a deleted entry": (
        [f"DELETE FROM logbook_entry WHERE {SECOND}"],
        "does not follow the one before it",
    ),
    "a deleted last entry": (
        [f"DELETE FROM logbook_entry WHERE {LAST}"],
        "entries are missing at the end",
    ),
    "two swapped entries": (
        [
            f"UPDATE logbook_entry SET seq = 999 WHERE {SECOND}",
            "UPDATE logbook_entry SET seq = (SELECT min(seq) + 1 FROM logbook_entry)"
            f" WHERE {THIRD}",
            "UPDATE logbook_entry SET seq = (SELECT min(seq) + 2 FROM logbook_entry)"
            " WHERE seq = 999",
        ],
        "does not follow the one before it",
    ),
}


@pytest.mark.parametrize("what", TAMPERED)
def test_verify_chain_names(what: str, kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1"), *(pen.sale("J1") for _ in range(3))])
    assert "hearth: whole" in _verify()
    second = Entry.objects.order_by("seq")[1].seq
    statements, says = TAMPERED[what]

    _tamper(*statements)

    said = _verify()
    assert says in said
    where = second + 1 if what == "a deleted entry" else second
    assert f"broken at {where}:" in said or what == "a deleted last entry"


def test_verify_chain_names_an_inserted_entry(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1"), pen.sale("J1")])
    forged = Entry.objects.order_by("seq")[1]
    head = forged.seq
    forged.id = "01890000-0000-7000-8000-000000000000"
    forged.seq = head + 1
    forged.canonical = forged.canonical.replace(str(Entry.objects.get(seq=head).id), forged.id)
    Entry.objects.bulk_create([forged])

    assert f"broken at {head + 1}:" in _verify()


def test_verify_chain_names_a_head_that_would_give_a_number_twice(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pushed(phone, [Pen(phone).receipt("J1")])

    LogHead.objects.update(last_seq=0)

    assert "hearth: broken at the end: the next number is one that is taken" in _verify()


def test_verify_chain_names_a_link_whose_entry_is_another(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pushed(phone, [Pen(phone).receipt("J1")])

    _tamper(
        "UPDATE logbook_entrysubject SET seq = 999", "UPDATE logbook_entrymention SET seq = 999"
    )

    said = _verify()
    assert "its link of lot:J1 is missing" in said
    assert "broken at 999: a link to lot:J1 is of no entry" in said
    assert f"broken at 999: a mention to place:{made_id('store')} is of no entry" in said


def test_a_correction_to_another_lot_and_its_original_are_on_both_sheets_and_whole(
    kitchen: Kitchen,
) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    sale = pen.sale("J1")
    moved = pen.correction(sale, {**sale["body"], "lot": "J2"}, subjects=["lot:J2"])
    pushed(phone, [sale, moved, pen.void(moved)])
    assert "hearth: whole" in _verify()

    _tamper(
        "DELETE FROM logbook_entrysubject WHERE subject = 'lot:J2' AND seq ="
        " (SELECT min(seq) FROM logbook_entry)"
    )

    assert f"entry {sale['id']}: its link of lot:J2 is missing" in _verify()


NO_SUCH_VALUE = {
    "received_at": "'when it rained'",
    "id": "'seven'",
    "author": "'me'",
    "corrects": "'that one'",
    "happened_at": "'2026-13-45 99:00:00'",
    "device_seq": "'many'",
    "skew_ms": "'late'",
    "canonical": "x'00ff'",
}


@pytest.mark.parametrize("column", NO_SUCH_VALUE)
def test_a_row_that_cannot_be_read_is_named_and_the_check_goes_on(
    column: str, kitchen: Kitchen
) -> None:
    if connection.vendor == "postgresql":
        return  # its columns hold nothing but values of their type
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1"), *(pen.sale("J1") for _ in range(3))])
    second = Entry.objects.order_by("seq")[1].seq

    _tamper(
        f"UPDATE logbook_entry SET {column} = {NO_SUCH_VALUE[column]} WHERE {SECOND}",
        f"UPDATE logbook_entry SET kind = 'count' WHERE {LAST}",
    )

    said = _verify()
    assert f"hearth: broken at {second}: the {column} of this entry cannot be read" in said
    assert "its kind was changed" in said
    assert said.count("broken at") == 2


def test_a_text_that_is_no_entry_is_named_also_under_its_own_fingerprint(
    kitchen: Kitchen,
) -> None:
    phone = kitchen.phone()
    pushed(phone, [Pen(phone).receipt("J1")])

    _tamper(
        "UPDATE logbook_entry SET canonical = '{}',"
        f" fingerprint = '{fingerprint_of_text('{}')}'"
    )

    assert "cannot be read as an entry" in _verify()


def test_another_log_is_judged_by_itself(kitchen: Kitchen, other_kitchen: Kitchen) -> None:
    for one in (kitchen, other_kitchen):
        phone = one.phone()
        pushed(phone, [Pen(phone).receipt("J1")])
    _tamper(
        "UPDATE logbook_entry SET canonical = '{}' WHERE cooperative_id ="
        " (SELECT id FROM members_cooperative WHERE handle = 'orchard')"
    )

    said = _verify()

    assert "hearth: whole" in said
    assert "orchard: broken" in said


def _tamper(*statements: str) -> None:
    """As somebody does who holds the database and takes its triggers off first."""
    off = (
        ["ALTER TABLE logbook_entry DISABLE TRIGGER USER"]
        if connection.vendor == "postgresql"
        else [f"DROP TRIGGER logbook_entry_refuses_{word}" for word in ("UPDATE", "DELETE")]
    )
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute("SET CONSTRAINTS ALL IMMEDIATE")
        for statement in (*off, *statements):
            cursor.execute(statement)


def _verify() -> str:
    out = StringIO()
    try:
        call_command("verify_chain", stdout=out)
    except CommandError as broken:
        out.write(str(broken))
    return out.getvalue()
