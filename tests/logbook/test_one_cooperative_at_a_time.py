"""The database's own wall between cooperatives (R68), and what holds where there is none."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from io import StringIO

import pytest
from django.apps import apps
from django.core.management import call_command
from django.db import connection

from kitchenlog.logbook.work import close_quiet
from kitchenlog.members.scope import in_cooperative
from tests.people import Kitchen
from tests.writing import Pen, pushed, recompute_all, statuses

# People are looked up before a scope is known, and the head rows tell a task where work is.
OUTSIDE = {"logbook_loghead"}
WALLED_APPS = ("logbook", "instruments", "stock", "batches", "tracing")


def walled_tables() -> list[str]:
    models = [model for name in WALLED_APPS for model in apps.get_app_config(name).get_models()]
    return sorted({model._meta.db_table for model in models} - OUTSIDE)


def counts() -> dict[str, int]:
    found = {}
    with connection.cursor() as cursor:
        for table in walled_tables():
            cursor.execute(f"SELECT count(*) FROM {table}")
            found[table] = cursor.fetchone()[0]
    return found


@pytest.fixture
def two_kitchens(walled_db: None, kitchen: Kitchen, other_kitchen: Kitchen) -> None:
    for one in (kitchen, other_kitchen):
        phone = one.phone()
        pen = Pen(phone)
        results = pushed(phone, [pen.receipt("J1"), pen.sale("J1"), {"id": "bad"}])
        assert statuses(results) == ["created", "created", "quarantined unreadable"]
    recompute_all()


def test_without_a_scope_the_app_role_sees_nothing(two_kitchens: None) -> None:
    seen = counts()

    if connection.vendor == "postgresql":
        assert set(seen.values()) == {0}
    else:  # SQLite has no such wall: the queries alone keep cooperatives apart
        assert seen["logbook_entry"] == 4


def test_in_a_scope_it_sees_that_cooperative_alone(
    two_kitchens: None, kitchen: Kitchen
) -> None:
    with in_cooperative(kitchen.cooperative):
        seen = counts()

    share = 1 if connection.vendor == "postgresql" else 2
    assert seen["logbook_entry"] == 2 * share
    assert seen["logbook_quarantined"] == share
    assert seen["stock_lotrow"] == share


def test_the_worker_and_both_commands_work_behind_the_wall(
    two_kitchens: None, kitchen: Kitchen
) -> None:
    out = StringIO()

    call_command("rebuild_sheets", stdout=out)
    call_command("rebuild_sheets", "--check", stdout=out)
    call_command("verify_chain", stdout=out)

    said = out.getvalue()
    for handle in ("hearth", "orchard"):
        assert f"{handle}: 2 sheets rebuilt" in said
        assert f"{handle}: sheets equal the log" in said
        assert f"{handle}: whole" in said
    assert close_quiet(at=datetime.now(UTC) + timedelta(days=15)) == 2


def test_every_table_below_the_wall_is_behind_it(log_db: None) -> None:
    if connection.vendor == "sqlite":
        assert "logbook_entry" in walled_tables()
        return
    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT relname FROM pg_class WHERE relrowsecurity AND relforcerowsecurity"
        )
        forced = {row[0] for row in cursor.fetchall()}

    assert set(walled_tables()) <= forced
