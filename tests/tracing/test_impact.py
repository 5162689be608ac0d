"""What leaned on an instrument that failed: backwards in time, and forwards to who has it."""

from __future__ import annotations

import json
import uuid
from datetime import UTC, datetime
from typing import Any

import pytest

from kitchenlog.entries.rights import SEES_ALL
from kitchenlog.logbook.selectors import states_of
from kitchenlog.tracing.doubtful import DoubtfulReading, readings_page
from kitchenlog.tracing.impact import Impact, impact_of
from tests.people import Kitchen, Phone
from tests.writing import Pen, made_id, pushed, recompute_all, statuses

pytestmark = pytest.mark.django_db

SCALE = made_id("bench scale")


def at(day: int) -> datetime:
    return datetime(2026, 11, day, 9, tzinfo=UTC)


@pytest.fixture
def phone(kitchen: Kitchen) -> Phone:
    return kitchen.phone("coordinator")


@pytest.fixture
def pen(phone: Phone) -> Pen:
    pen = Pen(phone)
    scale = {
        "instrument": SCALE, "name": "Bench scale", "sort": "scale", "unit": "g",
        "division": "1", "accuracy_class": "III", "interval": "1",
    }  # fmt: skip
    pushed(phone, [pen.write("instrument_defined", scale, at=at(1))])
    return pen


def check(pen: Pen, day: int, shown: str) -> dict[str, Any]:
    """One known mass of 500 g; in service a scale of class III may be off by 1 g."""
    step = {"sort": "rising", "reference": "500", "tolerance": "0.025", "readings": [shown]}
    body = {"instrument": SCALE, "unit": "g", "division": "1", "steps": [step]}
    return pen.write("instrument_checked", body, at=at(day))


def batch(pen: Pen, name: str, day: int) -> list[dict[str, Any]]:
    """Sugar for 500 g give or take 5 g, weighed on the scale; 4 jars, 3 to a shop."""
    line = {
        "line": "sugar", "material": "sugar", "amount": {"amount": "500", "unit": "g"},
        "below": "5", "above": "5",
    }  # fmt: skip
    start = {
        "batch": name, "code": name.upper(), "recipe": "r", "product": "jam", "place": "k",
        "recipe_version": str(uuid.UUID(int=1)), "makes": {"amount": "1", "unit": "kg"},
        "scaled_by": "as_written", "lines": [line], "steps": [],
    }  # fmt: skip
    reading = {"instrument": SCALE, "unit": "g", "shown": "502", "division": "1"}
    weighed = {
        "batch": name, "line": "sugar", "material": "sugar", "lot": "SU-1", "place": "k",
        "reading": reading,
    }  # fmt: skip
    jars = {"amount": "4", "unit": "pc"}
    lot = f"J-{name.upper()}"
    out = {"batch": name, "lot": lot, "material": "jam", "place": "k", "amount": jars}
    gone = {
        "lot": lot, "amount": {"amount": "3", "unit": "pc"}, "place": "k",
        "recipient": "shop",
    }  # fmt: skip
    return [
        pen.write("batch_started", start, at=at(day)),
        pen.write("weigh_in", weighed, at=at(day)),
        pen.write("output", out, at=at(day)),
        pen.write("dispatch", gone, at=at(day)),
    ]


def findings(kitchen: Kitchen) -> list[dict[str, Any]]:
    state = states_of(kitchen.cooperative.pk, ["batch:b1"])["batch:b1"]
    named: list[dict[str, Any]] = state["findings"]
    return named


def found(kitchen: Kitchen, entry: dict[str, Any]) -> Impact:
    impact = impact_of(kitchen.cooperative.pk, SCALE, entry["id"], eyes=SEES_ALL)
    assert impact is not None
    return impact


def read(kitchen: Kitchen, entry: dict[str, Any]) -> list[DoubtfulReading]:
    page = readings_page(kitchen.cooperative.pk, entry["id"])
    readings: list[DoubtfulReading] = json.loads(page.readings_json)
    return readings


def test_a_failed_check_names_what_was_read_since_the_last_pass_and_who_has_it(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    passed, failed = check(pen, 3, "500"), check(pen, 7, "508")
    results = pushed(phone, [*batch(pen, "b1", 2), passed, *batch(pen, "b2", 5), failed])
    assert set(statuses(results)) == {"created"}
    recompute_all()

    impact = found(kitchen, failed)

    assert (impact["after"], impact["until"]) == (passed["happened_at"], None)
    [reading] = read(kitchen, failed)
    assert (reading["subject"], reading["place"]) == ("batch:b2", "sugar")
    assert (reading["read"], reading["moves"], reading["unit"]) == ("502", "-8", "g")
    [touched] = impact["touched"]
    assert touched["would_change"] == ["sugar:within:outside"]
    assert "J-B2" in impact["lots"] and "J-B1" not in impact["lots"]
    assert [(each["id"], each["amount"]) for each in impact["reached"]] == [
        ("recipient:shop", "3")
    ]


def test_one_that_is_recorded_late_works_backwards(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    pushed(phone, batch(pen, "b1", 5))
    recompute_all()
    assert not findings(kitchen)

    failed = check(pen, 4, "508")
    pushed(phone, [failed])
    recompute_all()

    [finding] = findings(kitchen)
    assert finding["key"] == f"instrument_failed:{failed['id']}"
    assert [each["subject"] for each in found(kitchen, failed)["touched"]] == ["batch:b1"]


def test_a_check_that_passed_and_one_nobody_made_have_no_impact(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    passed = check(pen, 3, "500")
    pushed(phone, [passed])
    recompute_all()

    cooperative = kitchen.cooperative.pk
    assert impact_of(cooperative, SCALE, passed["id"], eyes=SEES_ALL) is None
    assert impact_of(cooperative, "another", passed["id"], eyes=SEES_ALL) is None
