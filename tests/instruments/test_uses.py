"""Uses of an instrument since the check it is judged by: counted, kept, told to phones."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from io import StringIO
from typing import Any

import pytest
from django.core.management import call_command

from kitchenlog.instruments.models import UseCount
from kitchenlog.instruments.services import count_all_uses
from kitchenlog.instruments.tasks import count_uses
from kitchenlog.members.scope import in_cooperative
from tests.people import Kitchen, Phone
from tests.tracing.test_impact import SCALE, at, batch, check, pen, phone
from tests.tracing.test_impact_beside_batches import cup_check, drill, fill_check
from tests.writing import Pen, made_id, pulled, pushed, recompute_all, statuses

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("no_limits")]

__all__ = ["pen", "phone"]  # fixtures

NIGHT = datetime(2026, 11, 28, 2, 25, tzinfo=UTC)
PUSH_MOST = 100


def step(pen: Pen, day: int) -> dict[str, Any]:
    """A step that was weighed."""
    reading = {"instrument": SCALE, "unit": "g", "shown": "80", "division": "1"}
    return pen.write("step_done", {"batch": "b1", "step": "s", "reading": reading}, at=at(day))


def kept(phone: Phone, entries: list[dict[str, Any]]) -> None:
    """Push and add up."""
    assert set(statuses(pushed(phone, entries))) == {"created"}
    recompute_all()


def counted(kitchen: Kitchen, instrument: str = SCALE) -> tuple[str, int] | None:
    """The check and the count that are stored."""
    with in_cooperative(kitchen.cooperative):
        rows = UseCount.objects.filter(
            cooperative=kitchen.cooperative.pk, instrument=instrument
        )
        return rows.values_list("check_entry", "count").first()


def told(phone: Phone, cursor: str = "") -> tuple[list[dict[str, Any]], str]:
    """What a pull says of uses, and where it ended."""
    changes, cursor = pulled(phone, cursor)
    return [each for each in changes if each["type"] == "uses"], cursor


def test_weigh_ins_steps_fills_drills_and_water_since_the_check_are_uses(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    passed, member = check(pen, 3, "500"), str(phone.member.id)
    used = [step(pen, 5), fill_check(pen, "J-B1", 6), drill(pen, 7, member), cup_check(pen, 8)]

    kept(phone, [*batch(pen, "b0", 2), passed, *batch(pen, "b1", 4), *used])

    assert counted(kitchen) == (passed["id"], 5)


def test_what_came_after_the_check_is_counted_in_the_night(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    passed = check(pen, 3, "500")
    kept(phone, [passed])
    kept(phone, batch(pen, "b1", 4))
    assert counted(kitchen) == (passed["id"], 0)

    count_uses()

    assert counted(kitchen) == (passed["id"], 1)


def test_water_weighed_on_a_scale_is_a_use_of_it_at_once(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    passed = check(pen, 3, "500")
    kept(phone, [passed])

    kept(phone, [cup_check(pen, 4)])

    assert counted(kitchen) == (passed["id"], 1)


def test_a_check_that_arrives_late_moves_the_beginning(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    first, late = check(pen, 3, "500"), check(pen, 6, "500")
    kept(phone, [first, *batch(pen, "b1", 5), *batch(pen, "b2", 7)])
    assert counted(kitchen) == (first["id"], 2)

    kept(phone, [late])

    assert counted(kitchen) == (late["id"], 1)


def test_voiding_a_check_moves_the_beginning_back(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    first, last = check(pen, 3, "500"), check(pen, 6, "500")
    kept(phone, [first, *batch(pen, "b1", 5), last])
    assert counted(kitchen) == (last["id"], 0)

    kept(phone, [pen.void(last, at=at(6))])
    assert counted(kitchen) == (first["id"], 1)

    kept(phone, [pen.void(first, at=at(3))])
    assert counted(kitchen) is None


def test_a_failed_check_that_stands_is_where_counting_begins(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    failed = check(pen, 5, "508")
    kept(phone, [check(pen, 3, "500"), *batch(pen, "b1", 4), failed, *batch(pen, "b2", 6)])

    assert counted(kitchen) == (failed["id"], 1)


def test_corrections_and_voids_count_as_they_leave_the_record(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    passed = check(pen, 3, "500")
    gone, away, misread, here = (batch(pen, f"b{n}", 4)[1] for n in range(4))
    other = {**here, "body": {**here["body"], "reading": reading_on(made_id("other scale"))}}
    to_another = {**away["body"], "reading": reading_on(made_id("other scale"))}
    again = {**misread["body"], "reading": {**misread["body"]["reading"], "shown": "501"}}
    revived = pen.void(misread, at=at(4))

    kept(phone, [passed, gone, away, misread, other])
    kept(
        phone,
        [
            pen.void(gone, at=at(4)),
            pen.correction(away, to_another, at=at(4)),
            pen.correction(other, here["body"], at=at(4)),
            revived,
            pen.void(revived, at=at(4)),
            pen.correction(misread, again, at=at(4)),
        ],
    )
    count_all_uses(at=NIGHT)

    assert counted(kitchen) == (passed["id"], 2)


def reading_on(instrument: str) -> dict[str, Any]:
    return {"instrument": instrument, "unit": "g", "shown": "502", "division": "1"}


def test_a_pull_tells_each_new_count_once(kitchen: Kitchen, phone: Phone, pen: Pen) -> None:
    seller = kitchen.phone("seller")
    passed = check(pen, 3, "500")
    kept(phone, [passed])
    [first], cursor = told(seller)
    kept(phone, batch(pen, "b1", 4))
    count_all_uses(at=NIGHT)
    count_all_uses(at=NIGHT + timedelta(days=1))

    [change], after = told(seller, cursor)

    assert (first["id"], first["data"]["count"]) == (SCALE, 0)
    assert change["id"] == SCALE
    assert change["data"] == {
        "check": passed["id"], "count": 1, "counted_at": "2026-11-28T02:25:00.000Z",
    }  # fmt: skip
    assert told(seller, after)[0] == []


def test_the_sheet_of_the_instrument_is_not_touched_by_a_count(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    kept(phone, [check(pen, 3, "500"), *batch(pen, "b1", 4)])
    cursor = pulled(phone)[1]
    kept(phone, [step(pen, 5)])
    count_all_uses(at=NIGHT)

    changes, _ = pulled(phone, cursor)

    assert f"instrument:{SCALE}" not in [each["id"] for each in changes]
    assert [each["data"]["count"] for each in changes if each["type"] == "uses"] == [2]


def test_who_has_left_is_told_no_counts(kitchen: Kitchen, phone: Phone, pen: Pen) -> None:
    kept(phone, [check(pen, 3, "500")])
    seller = kitchen.phone("seller")
    seller.member.left_at = kitchen.at
    seller.member.save()

    assert told(seller)[0] == []


def test_an_instrument_nobody_checked_has_no_count(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    kept(phone, batch(pen, "b1", 4))

    count_all_uses(at=NIGHT)

    assert counted(kitchen) is None


def test_rebuilding_sheets_leaves_the_counts_and_check_finds_them_no_difference(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    passed, out = check(pen, 3, "500"), StringIO()
    kept(phone, [passed, *batch(pen, "b1", 4)])
    kept(phone, [step(pen, 5)])  # the night has not counted it yet

    call_command("rebuild_sheets", "--check", stdout=out)
    assert counted(kitchen) == (passed["id"], 1)
    call_command("rebuild_sheets", stdout=out)

    assert "sheets equal the log" in out.getvalue()
    assert counted(kitchen) == (passed["id"], 2)


def test_many_uses_cost_as_many_questions_as_few(
    kitchen: Kitchen, phone: Phone, pen: Pen, django_assert_max_num_queries: Any
) -> None:
    passed = check(pen, 3, "500")
    kept(phone, [passed])
    used = [step(pen, 4) for _ in range(5 * PUSH_MOST)]
    for begin in range(0, len(used), PUSH_MOST):
        pushed(phone, used[begin : begin + PUSH_MOST])

    with django_assert_max_num_queries(40):
        count_all_uses(at=NIGHT)

    assert counted(kitchen) == (passed["id"], 5 * PUSH_MOST)
