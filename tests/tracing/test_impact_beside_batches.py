"""What a failed instrument was read for beside batches: packs, practice, other instruments."""

from __future__ import annotations

from typing import Any

import pytest

from kitchenlog.entries.rights import SEES_ALL
from kitchenlog.logbook.selectors import sheet_about, states_of, subjects_in_log
from kitchenlog.tracing import doubtful
from tests.people import Kitchen, Phone
from tests.tracing.test_impact import SCALE, at, batch, check, pen, phone
from tests.writing import Pen, made_id, pushed, recompute_all, statuses

pytestmark = pytest.mark.django_db

__all__ = ["pen", "phone"]  # fixtures

CUP = made_id("cup")
PROBE = made_id("probe")


def asked(phone: Phone, failed: dict[str, Any], more: str = "", **query: str) -> dict[str, Any]:
    answer = phone.get(f"instruments/{SCALE}/impact{more}", check=failed["id"], **query)
    assert answer.status_code == 200
    found: dict[str, Any] = answer.json()
    return found


def failed_along_its_range(pen: Pen, day: int) -> dict[str, Any]:
    """Reads 2 % high at both masses: a slope, which does not fall out of a net mass."""
    steps = [
        {"sort": "rising", "reference": mass, "tolerance": "0.025", "readings": [shown]}
        for mass, shown in (("250", "255"), ("500", "510"))
    ]
    body = {"instrument": SCALE, "unit": "g", "division": "1", "steps": steps}
    return pen.write("instrument_checked", body, at=at(day))


def fill_check(pen: Pen, lot: str, day: int) -> dict[str, Any]:
    """Packs of 340 g that pass as they were read."""
    body = {
        "lot": lot, "on": "2026-11-05", "label": [{"amount": {"amount": "340", "unit": "g"}}],
        "rules": "us", "unit": "g", "tares": ["20", "20"], "gross": ["360"] * 4,
        "instrument": SCALE, "division": "1", "lot_size": 4,
    }  # fmt: skip
    return pen.write("fill_checked", body, at=at(day))


def cooled(pen: Pen, name: str, day: int) -> dict[str, Any]:
    """Cold holding that passes as it was read."""
    body = {
        "batch": name, "instrument": PROBE, "division": "0.1", "came_by": "typed",
        "unit": "degC", "began_at": f"2026-11-0{day}T09:00:00.000Z",
        "at_s": [0, 1800], "temperatures": ["3.5", "4"],
        "judged": {"by": "cold_hold", "set_by": "the local code"},
    }  # fmt: skip
    return pen.write("heat_log", body, at=at(day))


def failed_thermometer(pen: Pen, day: int) -> dict[str, Any]:
    """Reads 2 degC too low in melting ice, where 1 degC is allowed."""
    steps = [{"sort": "ice", "reference": "0", "tolerance": "0.1", "readings": ["-2"]}]
    body = {
        "instrument": PROBE, "unit": "degC", "division": "0.1", "steps": steps,
        "judged_by": "own", "most_error": "1",
    }  # fmt: skip
    return pen.write("instrument_checked", body, at=at(day))


def drill(pen: Pen, day: int, member: str) -> dict[str, Any]:
    """Practice that weighs one thing three times on the scale."""
    questions = [{"sort": "dial", "truth": "5", "division": "1", "read": "5"}]
    weighing = {"instrument": SCALE, "unit": "g", "division": "1", "shown": ["502"] * 3}
    body = {"member": member, "seed": 1, "drawn_by": 1, "questions": questions,
            "weighing": weighing}  # fmt: skip
    return pen.write("drill_done", body, at=at(day))


def cup_check(pen: Pen, day: int) -> dict[str, Any]:
    """A cup of water, weighed on the scale."""
    step = {"sort": "water", "readings": ["236"], "celsius": "20", "division": "1"}
    body = {"instrument": CUP, "unit": "g", "check_scale": SCALE, "steps": [step],
            "holds": {"amount": "236.6", "unit": "mL"}}  # fmt: skip
    return pen.write("instrument_checked", body, at=at(day))


def seqs(kitchen: Kitchen) -> dict[str, int]:
    """The number of each sheet: another one where it was folded anew."""
    subjects = subjects_in_log(kitchen.cooperative.pk)
    sheets = {
        each: sheet_about(kitchen.cooperative.pk, each, eyes=SEES_ALL) for each in subjects
    }
    return {each: sheet.seq for each, sheet in sheets.items() if sheet is not None}


def test_a_fill_check_on_it_is_listed_with_what_its_verdict_would_be(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    jars = batch(pen, "b1", 2)
    filled, failed = fill_check(pen, "J-B1", 5), failed_along_its_range(pen, 7)
    results = pushed(phone, [*jars, check(pen, 4, "500"), filled, failed])
    assert set(statuses(results)) == {"created"}
    recompute_all()

    impact = asked(phone, failed)

    [touched] = impact["touched"]
    assert (touched["subject"], touched["readings"]) == ("lot:J-B1", 1)
    assert touched["would_change"] == [f"{filled['id']}:pass:fail"]
    [reading] = asked(phone, failed, "/readings")["readings"]
    assert (reading["entry"], reading["kind"]) == (filled["id"], "fill_checked")
    assert float(reading["moves"]) == pytest.approx(-340 * 0.02, abs=0.2)
    assert impact["lots"] == ["J-B1"]
    [shop] = impact["reached"]
    assert (shop["id"], shop["lots"]) == ("recipient:shop", [{"lot": "J-B1", "amount": "3"}])
    lot = states_of(kitchen.cooperative.pk, ["lot:J-B1"])["lot:J-B1"]
    assert f"instrument_failed:{failed['id']}" in [each["key"] for each in lot["findings"]]


def test_a_check_that_is_recorded_late_reaches_the_fill_checks_before_it(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    pushed(phone, [*batch(pen, "b1", 2), fill_check(pen, "J-B1", 5)])
    recompute_all()
    failed = failed_along_its_range(pen, 4)
    pushed(phone, [failed])
    recompute_all()

    assert asked(phone, failed)["is_adding_up"] is False
    touched = {each["subject"]: each["readings"] for each in asked(phone, failed)["touched"]}

    assert touched == {"batch:b1": 1, "lot:J-B1": 1}


def test_what_was_only_weighed_in_from_a_lot_is_not_folded_anew(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    pushed(phone, [*batch(pen, "b1", 2), fill_check(pen, "J-B1", 5)])
    recompute_all()
    knew = seqs(kitchen)
    pushed(phone, [failed_along_its_range(pen, 7)])
    recompute_all()

    now = seqs(kitchen)

    assert {each for each in now if now[each] != knew.get(each)} == {
        f"instrument:{SCALE}", "batch:b1", "lot:J-B1",
    }  # fmt: skip


def test_a_log_of_temperature_is_listed_with_what_its_verdict_would_be(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    probe = {"instrument": PROBE, "name": "Probe", "sort": "thermometer", "unit": "degC"}
    pushed(phone, [pen.write("instrument_defined", probe, at=at(1))])
    made = batch(pen, "b1", 2)
    logged, failed = cooled(pen, "b1", 5), failed_thermometer(pen, 7)
    pushed(phone, [*made, logged, failed])
    recompute_all()

    answer = phone.get(f"instruments/{PROBE}/impact", check=failed["id"]).json()
    listed = phone.get(f"instruments/{PROBE}/impact/readings", check=failed["id"]).json()

    touched = [(each["readings"], each["would_change"]) for each in answer["touched"]]
    assert touched == [(1, [f"{logged['id']}:pass:fail"])]
    assert [
        (each["kind"], each["says"], each["read"], each["moves"]) for each in listed["readings"]
    ] == [("heat_log", "cold_hold", "4", "2")]


def test_practice_on_it_is_listed_for_its_member_and_coordinators_alone(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    reader, other = kitchen.phone("processor"), kitchen.phone("seller")
    failed = check(pen, 7, "508")
    pushed(phone, [failed])
    done = drill(Pen(reader), 5, str(reader.member.id))
    assert statuses(pushed(reader, [done])) == ["created"]
    recompute_all()

    [seen] = asked(reader, failed)["elsewhere"]

    assert (seen["kind"], seen["read"], seen["moves"]) == ("drill_done", "502.0", "-8")
    assert asked(phone, failed)["elsewhere"] == [seen]
    assert asked(other, failed)["elsewhere"] == []


def test_a_cup_whose_water_was_weighed_on_it_is_listed(
    kitchen: Kitchen, phone: Phone, pen: Pen
) -> None:
    before, within = cup_check(pen, 2), cup_check(pen, 5)
    passed, failed = check(pen, 3, "500"), check(pen, 7, "508")
    cup = {"instrument": CUP, "name": "Cup", "sort": "cup", "unit": "mL"}
    defined = pen.write("instrument_defined", cup, at=at(1))
    pushed(phone, [defined, before, passed, within, failed])
    recompute_all()

    listed = asked(phone, failed)["elsewhere"]

    assert [(each["subject"], each["entry"]) for each in listed] == [
        (f"instrument:{CUP}", within["id"])
    ]


def test_page_after_page_holds_every_reading_once(
    kitchen: Kitchen, phone: Phone, pen: Pen, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(doubtful, "READINGS_A_PAGE", 2)
    failed = check(pen, 9, "508")
    made = [entry for number in range(5) for entry in batch(pen, f"b{number}", 2 + number)]
    pushed(phone, [*made, failed])
    recompute_all()

    pages, after = [], ""
    while after is not None:
        page = asked(phone, failed, "/readings", after=after)
        pages.append([each["subject"] for each in page["readings"]])
        after = page["more"]

    assert pages == [["batch:b0", "batch:b1"], ["batch:b2", "batch:b3"], ["batch:b4"]]
    assert asked(phone, failed)["readings"] == 5


def test_a_check_that_has_just_come_is_still_being_added_up(phone: Phone, pen: Pen) -> None:
    failed = check(pen, 7, "508")
    pushed(phone, [failed])

    impact = asked(phone, failed)

    assert (impact["is_adding_up"], impact["is_complete"]) == (True, False)
    recompute_all()
    assert asked(phone, failed)["is_adding_up"] is False


def test_readings_of_a_check_nobody_made_are_not_found(phone: Phone, pen: Pen) -> None:
    passed = check(pen, 3, "500")
    pushed(phone, [passed])
    recompute_all()

    answer = phone.get(f"instruments/{SCALE}/impact/readings", check=passed["id"])

    assert answer.status_code == 404
