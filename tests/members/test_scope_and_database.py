"""The database fixture itself: its commits are real, and each test begins afresh."""

from __future__ import annotations

import threading

import pytest
from django.db import connection

from kitchenlog.members.models import Cooperative
from kitchenlog.members.scope import in_cooperative
from tests.people import Kitchen


@pytest.mark.parametrize("turn", ["first", "second"])
def test_another_thread_sees_what_was_committed_and_the_next_test_does_not(
    log_db: None, turn: str
) -> None:
    Kitchen("hearth")
    seen: list[int] = []

    def look() -> None:
        seen.append(Cooperative.objects.count())
        connection.close()

    thread = threading.Thread(target=look)
    thread.start()
    thread.join()

    assert seen == [1]


def test_what_fails_in_a_scope_leaves_nothing_behind(log_db: None) -> None:
    kitchen = Kitchen("hearth")

    with pytest.raises(ZeroDivisionError), in_cooperative(kitchen.cooperative):
        kitchen.add_member("another", roles=["seller"])
        raise ZeroDivisionError

    assert kitchen.cooperative.members.count() == 3


def test_a_scope_that_only_reads_opens_no_transaction_on_sqlite(log_db: None) -> None:
    kitchen = Kitchen("hearth")

    with in_cooperative(kitchen.cooperative, writes=False):
        in_transaction = connection.in_atomic_block

    assert in_transaction is (connection.vendor == "postgresql")


def test_a_scope_tells_postgresql_whose_rows_may_be_seen(log_db: None) -> None:
    kitchen = Kitchen("hearth")

    with in_cooperative(kitchen.cooperative):
        told = _told()

    assert told == (str(kitchen.cooperative.id) if connection.vendor == "postgresql" else None)


def _told() -> str | None:
    if connection.vendor != "postgresql":
        return None
    with connection.cursor() as cursor:
        cursor.execute("SELECT current_setting('kitchenlog.cooperative')")
        return str(cursor.fetchone()[0])
