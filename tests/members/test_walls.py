"""PostgreSQL's own wall between cooperatives, met as the role that serves (R68)."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from django.db import connection

from kitchenlog.logbook.work import recompute_for_a_slice
from kitchenlog.members.scope import in_cooperative
from tests.people import Kitchen
from tests.writing import Pen, pushed, statuses

pytestmark = pytest.mark.usefixtures("walled_db", "no_limits")

ROWS = "SELECT count(*) FROM logbook_entry"


@pytest.fixture
def two_records(walled_db: None) -> tuple[Kitchen, Kitchen]:
    """Two cooperatives, with one receipt and with two."""
    hearth, orchard = Kitchen("hearth"), Kitchen("orchard")
    one, other = hearth.phone(), orchard.phone()
    assert statuses(pushed(one, [Pen(one).receipt()])) == ["created"]
    pen = Pen(other)
    assert len(pushed(other, [pen.receipt(lot="A1"), pen.receipt(lot="A2")])) == 2
    return hearth, orchard


def test_raw_sql_in_one_scope_sees_that_cooperatives_rows_only(
    two_records: tuple[Kitchen, Kitchen],
) -> None:
    counts = []
    for kitchen in two_records:
        with in_cooperative(kitchen.cooperative):
            counts.append(_rows())

    # SQLite has no such wall: there the queries alone keep cooperatives apart.
    assert counts == ([1, 2] if connection.vendor == "postgresql" else [3, 3])


def test_raw_sql_outside_any_scope_sees_nothing(two_records: tuple[Kitchen, Kitchen]) -> None:
    assert _rows() == (0 if connection.vendor == "postgresql" else 3)


def test_the_worker_does_its_rounds_behind_the_wall(
    two_records: tuple[Kitchen, Kitchen],
) -> None:
    recompute_for_a_slice(clock=lambda: datetime.now(UTC))

    hearth, orchard = two_records
    assert hearth.phone().get("lots/J1").status_code == 200
    assert orchard.phone().get("lots/A2").status_code == 200
    assert hearth.phone().get("lots/A2").status_code == 404


def test_people_join_and_leave_behind_the_wall(two_records: tuple[Kitchen, Kitchen]) -> None:
    hearth, _ = two_records
    coordinator, seller = hearth.phone("coordinator"), hearth.phone("seller")

    code = coordinator.post("join-codes", {"roles": ["seller"]})
    shut_out = coordinator.delete(f"devices/{seller.device.id}")

    assert (code.status_code, shut_out.status_code) == (201, 200)
    assert seller.get("sync/pull").json()["code"] == "device_revoked"


def _rows() -> int:
    with connection.cursor() as cursor:
        cursor.execute(ROWS)
        return int(cursor.fetchone()[0])
