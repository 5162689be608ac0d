"""Tampering by SQL is named: change, delete, insert, swap, and a chain made anew."""

from __future__ import annotations

from io import StringIO

import pytest
from django.core.management import CommandError, call_command
from django.db import connection

from kitchenlog.logbook.models import Entry, LogHead
from tests.people import Kitchen
from tests.writing import Pen, pushed

pytestmark = pytest.mark.django_db

SECOND = "seq = (SELECT min(seq) + 1 FROM logbook_entry)"
THIRD = "seq = (SELECT min(seq) + 2 FROM logbook_entry)"
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
