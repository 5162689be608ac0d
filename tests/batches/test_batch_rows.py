"""The row a batch is found by follows its sheet."""

from __future__ import annotations

from typing import Any

import pytest

from kitchenlog.batches.models import BatchRow
from kitchenlog.batches.selectors import codes_of_batches
from tests.people import Kitchen
from tests.writing import Pen, made_id, pushed, recompute_all, statuses

pytestmark = pytest.mark.django_db


def started(pen: Pen) -> dict[str, Any]:
    body = {
        "batch": made_id("b"), "code": "MJ-260605-K7-1", "recipe": made_id("jam recipe"),
        "recipe_version": made_id("version"), "product": made_id("jam"),
        "place": made_id("kitchen"), "makes": {"amount": "10", "unit": "kg"},
        "scaled_by": "as_written", "steps": [],
        "lines": [
            {"line": "1", "material": made_id("sugar"), "amount": {"amount": "5", "unit": "kg"}}
        ],
    }  # fmt: skip
    return pen.write("batch_started", body)


def test_a_started_batch_is_found_by_its_code_and_day(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    assert statuses(pushed(phone, [started(pen)])) == ["created"]
    recompute_all()

    row = BatchRow.objects.get()
    assert (row.code, row.started_on.isoformat()) == ("MJ-260605-K7-1", "2026-06-05")
    assert (row.product, row.place) == (made_id("jam"), made_id("kitchen"))
    assert not row.is_finished
    named = codes_of_batches(kitchen.cooperative.pk, [made_id("b"), made_id("other")])
    assert named == {made_id("b"): "MJ-260605-K7-1"}

    pushed(phone, [pen.write("batch_finished", {"batch": made_id("b")})])
    recompute_all()
    assert BatchRow.objects.get().is_finished


def test_a_batch_whose_start_has_not_come_yet_has_a_sheet_and_no_row(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.write("batch_finished", {"batch": made_id("b")})])
    recompute_all()

    told = phone.get("entries", subject=f"batch:{made_id('b')}").json()

    assert told["sheet"]["state"]["is_finished"] is True
    assert not BatchRow.objects.exists()
