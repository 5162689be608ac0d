"""The demo's four weeks: the same from the same anchor, never late, and rich enough to show."""

from __future__ import annotations

from collections import defaultdict
from datetime import date, datetime, timedelta
from decimal import Decimal

import pytest

from demo_data.story import read_story
from demo_data.weeks import B01_DAY, anchor_of, first_day, four_weeks
from kitchenlog.calc.batch_costs import cost_of_batch
from kitchenlog.calc.prices import PackCost, Wanted, exact_price
from kitchenlog.calc.skills import skill_state
from tests.demo.told import (
    ANCHOR,
    ANCHORS,
    batches,
    entries,
    facts_by_subject,
    house,
    lots,
    of_kind,
    sheets,
)


def test_the_same_anchor_gives_the_sameentries() -> None:
    again = four_weeks(house(), anchor=ANCHOR)

    assert tuple(entry for own in again.values() for entry in own) == entries(ANCHOR)


def test_another_anchor_gives_other_ids() -> None:
    ids = [{entry["id"] for entry in entries(anchor)} for anchor in ANCHORS[:2]]

    assert not ids[0] & ids[1]


def test_the_first_day_leads_back_to_the_anchor() -> None:
    assert anchor_of(first_day(ANCHOR)) == ANCHOR


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_every_device_counts_without_a_gap_and_no_id_comes_twice(anchor: date) -> None:
    counts: dict[str, list[int]] = defaultdict(list)
    for entry in entries(anchor):
        counts[entry["device"]].append(entry["device_seq"])

    assert all(own == list(range(1, len(own) + 1)) for own in counts.values())
    assert len(counts) == 6
    assert len({entry["id"] for entry in entries(anchor)}) == len(entries(anchor))


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_everything_was_recorded_in_the_four_weeks_before_the_anchor(anchor: date) -> None:
    zone = read_story().zone
    days = [
        datetime.fromisoformat(entry["recorded_at"]).astimezone(zone).date()
        for entry in entries(anchor)
    ]

    assert min(days) == first_day(anchor)
    assert max(days) == anchor - timedelta(days=1)


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_everything_the_demo_is_to_show_happens_in_every_week_it_may_begin(
    anchor: date,
) -> None:
    materials = [entry["body"]["sort"] for entry in of_kind(anchor, "material_defined")]
    places = [entry["body"]["sort"] for entry in of_kind(anchor, "place_defined")]
    receipts = [entry["body"]["condition"] for entry in of_kind(anchor, "receipt")]

    assert materials.count("ingredient") >= 12
    assert (places.count("kitchen"), places.count("store"), places.count("stall")) == (3, 1, 2)
    published = [entry["body"] for entry in of_kind(anchor, "recipe_published")]
    assert [(each["recipe"], each["number"]) for each in published if each["number"] > 1] == [
        ("coconut-biscuits", 2)
    ]
    assert len({each["recipe"] for each in published}) == 4
    assert len(published) == 5
    assert receipts.count("refused") == 1
    corrected = [entry["body"]["of_kind"] for entry in of_kind(anchor, "correction")]
    assert sorted(corrected) == ["receipt", "weigh_in"]
    for kind in ("void", "topped_up", "return", "finding_settled", "material_changed"):
        assert len(of_kind(anchor, kind)) == 1, kind
    for kind in ("sale", "dispatch", "transfer", "loss", "count", "price_paid", "note"):
        assert len(of_kind(anchor, kind)) >= 2, kind


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_stock_goes_below_nothing_only_where_a_lot_is_oversold(anchor: date) -> None:
    sheets = lots(anchor).values()

    findings = [each for lot in sheets for each in lot["findings"]]
    assert sorted((each["key"], each["is_settled"]) for each in findings) == [
        ("negative:square-stall", False),
        ("negative:square-stall", True),
    ]
    variances = [count["variance"] for lot in sheets for count in lot["counts"]]
    assert "-1" in variances and "3" in variances


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_batches_show_every_verdict_and_one_is_under_way(anchor: date) -> None:
    sheets = batches(anchor).values()

    verdicts = {line["verdict"] for batch in sheets for line in batch["lines"]}
    whats = {each["what"] for batch in sheets for each in batch["findings"]}
    assert {"within", "outside", "cannot_tell"} <= verdicts
    assert whats == {"outside", "cannot_tell", "step_outside", "instrument_failed", "held"}
    under_way = [batch for batch in sheets if not batch["is_finished"]]
    assert under_way and all(
        date.fromisoformat(batch["started_on"] or "") == anchor - timedelta(days=1)
        for batch in under_way
    )


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_a_batch_cooled_and_jars_kept_cold_pass_by_their_thermometer(anchor: date) -> None:
    logs = [log for batch in batches(anchor).values() for log in batch["heat"]]

    assert sorted((log["by"], log["verdict"], log["instrument"]) for log in logs) == [
        ("cold_hold", "pass", "hill-probe"),
        ("two_stage_cooling", "pass", "hill-probe"),
    ]
    assert all(log["trust"] is not None and log["trust"]["u"] for log in logs)


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_the_worked_batch_comes_out_digit_for_digit(anchor: date) -> None:
    """Production pack 1.9 [B01]: masses and yields."""
    batch = batches(anchor)[f"batch:{worked_batch(anchor)}"]

    expected = {
        "prepared_in": "15000",
        "prepared_out": "10000",
        "preparation_losses": [
            {"reason": "spoiled", "amount": "600"},
            {"reason": "trim", "amount": "4250"},
        ],
        "preparation_unaccounted": "150",
        "edible_yield_percent": "66.6667",
        "spoilage_percent": "4.0000",
        "kettle_in": "20115",
        "kettle_out": "16700",
        "evaporated": "3415",
        "solids_in": "11515",
        "theoretical_out": "16933.8",
        "implied_solids_percent": "68.9521",
        "filled": "16500",
        "good_out": "16000",
        "residue": "120",
        "samples": "50",
        "filling_unaccounted": "30",
        "rejects_percent": "3.0303",
        "recovery_percent": "79.5426",
        "of_theory_percent": "94.4855",
    }
    balance = batch["balance"]
    assert {name: value for name, value in balance.items() if name in expected} == expected
    assert batch["is_finished"] and batch["findings"] == []


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_the_worked_batch_costs_what_its_example_says(anchor: date) -> None:
    """Production pack 1.9 [B01]: total, per good and per filled jar, prices at 30 %."""
    answer = cost_of_batch(
        worked_batch(anchor), cooperative=house().cooperative, sheets=sheets(anchor)
    )

    assert answer["parts"] == {
        "materials": "1426.20", "packs": "703.80", "labour": "406.25", "fuel": "85.00",
        "overhead": "120.00", "other": "0.00", "by_products": "0.00",
    }  # fmt: skip
    assert (answer["total"], answer["missing"]) == ("2741.25", [])
    assert (answer["good"], answer["filled"]) == ("64", "66")
    assert (answer["per_good_pack"], answer["per_filled_pack"]) == ("42.8320", "41.5341")
    cost = PackCost(cost=Decimal("2741.25"), packs=Decimal(64))
    assert exact_price(cost, Wanted(of="price", percent=Decimal(30))) == Decimal("61.1886")
    assert exact_price(cost, Wanted(of="cost", percent=Decimal(30))) == Decimal("55.6816")


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_every_finished_batch_has_a_whole_cost(anchor: date) -> None:
    finished = [batch for batch in batches(anchor).values() if batch["is_finished"]]
    costs = [
        cost_of_batch(each["batch"], cooperative=house().cooperative, sheets=sheets(anchor))
        for each in finished
    ]

    assert finished and all(each["missing"] == [] for each in costs)
    assert all(each["minutes"] is not None for each in costs)


def worked_batch(anchor: date) -> str:
    """The id of [B01]."""
    on = (first_day(anchor) + timedelta(days=B01_DAY)).isoformat()
    author = house().phones["devan"].member
    return next(
        str(entry["body"]["batch"])
        for entry in of_kind(anchor, "batch_started")
        if (entry["local_date"], entry["author"]) == (on, author)
    )


@pytest.mark.parametrize("anchor", ANCHORS, ids=str)
def test_four_members_practise_and_read_better_in_the_end(anchor: date) -> None:
    facts = facts_by_subject(anchor)
    states = [
        skill_state(subject, facts[subject]) for subject in facts if subject[:6] == "skill:"
    ]

    assert sorted(len(state["drills"]) for state in states) == [2, 2, 2, 4]
    for state in states:
        shares = [float(each["whole"]["within_half_percent"]) for each in state["drills"]]
        spreads = [float(each["whole"]["spread"]) for each in state["drills"]]
        assert shares[-1] > shares[0]
        assert spreads[-1] < spreads[0]
