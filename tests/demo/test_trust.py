"""The demo's checks of instruments and fills: every state, in whatever week it begins."""

from __future__ import annotations

from collections import Counter
from datetime import date, timedelta

import pytest

from demo_data.weeks import B01_DAY, first_day
from kitchenlog.calc.instruments import InstrumentState
from tests.demo.told import ANCHORS, batches, instruments, lots, of_kind

DIAL = "instrument:dryer-dial"
MILL = "instrument:mill-scale"
FRESH_DAYS = 7  # so long a demo is shown before the command asks to begin afresh
THIRD_WEEK = range(14, 21)

seven_weeks = pytest.mark.parametrize("anchor", ANCHORS, ids=str)


def standing(sheet: InstrumentState, on: date) -> str:
    """Fit, due, failed or not checked, by time; the phone counts the uses besides."""
    if any(each["until"] is None for each in sheet["doubts"]):
        return "failed"
    passed = [each["on"] for each in sheet["checks"] if each["verdict"] == "fit"]
    if not passed:
        return "not_checked"
    due_on = date.fromisoformat(passed[-1]) + timedelta(days=int(sheet["fields"]["check_days"]))
    return "due" if due_on <= on else "fit"


@seven_weeks
def test_one_instrument_is_due_one_failed_and_one_was_never_checked(anchor: date) -> None:
    found = {name: standing(sheet, anchor) for name, sheet in instruments(anchor).items()}

    others = {name: is_now for name, is_now in found.items() if is_now != "fit"}
    assert others == {
        "instrument:hand-refractometer": "due",
        DIAL: "failed",
        "instrument:hanging-scale": "not_checked",
    }
    assert len(found) == 13


@seven_weeks
def test_a_week_later_nothing_else_is_due(anchor: date) -> None:
    later = anchor + timedelta(days=FRESH_DAYS)
    found = Counter(standing(sheet, later) for sheet in instruments(anchor).values())

    assert found == {"fit": 10, "due": 1, "failed": 1, "not_checked": 1}


@seven_weeks
def test_every_check_but_one_is_passed(anchor: date) -> None:
    checks = [each for sheet in instruments(anchor).values() for each in sheet["checks"]]

    assert Counter(each["verdict"] for each in checks) == {"fit": len(checks) - 1, "failed": 1}
    assert len(checks) == len(of_kind(anchor, "instrument_checked"))


@seven_weeks
def test_every_sort_of_step_is_there(anchor: date) -> None:
    steps = [s for each in of_kind(anchor, "instrument_checked") for s in each["body"]["steps"]]

    assert {each["sort"] for each in steps} == {
        "zero", "rising", "falling", "off_centre", "return_to_zero", "repeats",
        "water", "ice", "boiling", "buffer", "comparison",
    }  # fmt: skip
    altitudes = {each["altitude_m"] for each in steps if each["sort"] == "boiling"}
    assert altitudes == {"240", "85"}


@seven_weeks
def test_the_dial_fails_in_the_third_week_and_puts_its_batches_in_question(
    anchor: date,
) -> None:
    [doubt] = instruments(anchor)[DIAL]["doubts"]

    failed_on = date.fromisoformat(doubt["failed_at"][:10])
    assert (failed_on - first_day(anchor)).days in THIRD_WEEK
    assert doubt["after"] is not None
    read = [
        (batch, done)
        for batch in batches(anchor).values()
        for step in batch["steps"]
        for done in step["done"]
        if done["instrument"] == "dryer-dial"
    ]
    since = [batch for batch, done in read if done["happened_at"] > doubt["after"]]
    assert len(since) >= 3
    doubted = [
        (batch, found)
        for batch in batches(anchor).values()
        for found in batch["findings"]
        if found["what"] == "instrument_failed"
    ]
    assert [batch["batch"] for batch, _ in doubted] == [batch["batch"] for batch in since]
    assert {found["key"] for _, found in doubted} == {f"instrument_failed:{doubt['check']}"}
    changes = {found["detail"]["would_change"] for _, found in doubted}
    assert changes & {"dryer:within:outside", "dryer:within:cannot_tell"}
    for batch, done in read:
        assert (done["trust"]["failed_by"] == doubt["check"]) == (batch in since)


@seven_weeks
def test_weigh_ins_after_it_use_the_significant_correction_and_no_others(
    anchor: date,
) -> None:
    rows = [
        (name, row)
        for name, sheet in instruments(anchor).items()
        for row in sheet["corrections"]
        if row["line"] is not None
    ]
    significant = [(name, row) for name, row in rows if row["line"]["is_significant"]]
    assert {name for name, _ in significant} == {MILL}
    assert len(rows) > len(significant)  # others were asked for and are chance
    since = significant[0][1]["since"]
    read = [
        each
        for batch in batches(anchor).values()
        for line in batch["lines"]
        for each in line["weigh_ins"]
        if each["instrument"] is not None
    ]

    corrected = [each for each in read if each["trust"]["corrected"] is not None]
    expected = [
        each
        for each in read
        if each["instrument"] == "mill-scale" and each["happened_at"] >= since
    ]
    assert corrected == expected and len(corrected) >= 12
    for each in corrected:
        assert float(each["trust"]["corrected"] or "") < float(each["net"] or "")


@seven_weeks
def test_one_lot_is_short_one_is_not_decided_and_the_others_pass(anchor: date) -> None:
    fills = [(lot, fill) for lot in lots(anchor).values() for fill in lot["fills"]]
    verdicts = Counter(fill["verdict"] for _, fill in fills)
    short = [(lot, fill) for lot, fill in fills if fill["verdict"] == "fail"]
    open_ones = [(lot["material"], f) for lot, f in fills if f["verdict"] == "not_decided"]

    assert verdicts["fail"] == 1 and verdicts["not_decided"] == 1 and verdicts["pass"] >= 8
    assert {fill["rules"] for _, fill in fills} == {"eu"}
    [(lot, fill)] = short
    assert lot["material"] == "coconut-biscuits"
    assert fill["reasons"] == ["mean_short"] and fill["short"] == [6]
    assert [(name, f["reasons"]) for name, f in open_ones] == [
        ("dried-banana", ["scale_too_coarse"])
    ]


@seven_weeks
def test_every_lot_of_biscuits_was_weighed_pack_by_pack(anchor: date) -> None:
    made = [each for each in lots(anchor).values() if each["material"] == "coconut-biscuits"]

    assert len(made) >= 7
    for lot in made:
        [fill] = lot["fills"]
        assert str(fill["packs"]) == lot["made"]


@seven_weeks
def test_the_worked_batch_leans_on_nothing_that_failed_or_is_corrected(anchor: date) -> None:
    on = (first_day(anchor) + timedelta(days=B01_DAY)).isoformat()
    [worked] = [
        each
        for each in batches(anchor).values()
        if each["started_on"] == on and each["recipe"] == "mango-jam"
        and each["lines"][0]["in_base"] == "15000" and each["balance"]["kettle_out"] == "16700"
    ]  # fmt: skip

    assert worked["findings"] == []
    assert all(line["corrected"] is None for line in worked["lines"])


@seven_weeks
def test_what_is_read_three_times_stands_for_its_first_reading(anchor: date) -> None:
    weighed = [
        each
        for each in of_kind(anchor, "weigh_in")
        if "repeats" in each["body"].get("reading", {})
    ]
    nets = {
        each["entry"]: each["net"]
        for batch in batches(anchor).values()
        for line in batch["lines"]
        for each in line["weigh_ins"]
    }

    assert len(weighed) >= 12
    assert len({each["author"] for each in weighed}) == 4
    for each in weighed:
        reading = each["body"]["reading"]
        tare = float(reading.get("tare", "0"))
        assert float(nets[each["id"]] or "") == pytest.approx(float(reading["shown"]) - tare)
