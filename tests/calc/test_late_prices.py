"""A price that comes late, is corrected or void moves every cost that leans on it."""

from __future__ import annotations

from itertools import permutations
from typing import Any

import pytest

from kitchenlog.calc.batch_costs import cost_of_batch
from kitchenlog.calc.folds import fold_subject
from tests.calc.registry_folds import fact_of
from tests.calc.test_money_properties import output, price, receipt, sheets_of, weigh_in


def _numbered(about: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return [
        {"id": f"e{n:02}", "device_seq": n, "happened_at": f"2026-06-06T08:{n:02}:00.000Z"}
        | each
        for n, each in enumerate(about)
    ]


def _two_levels() -> list[dict[str, Any]]:
    """1000 g are bought, poured together with 500 g of another delivery, cooked into P1 of
    600 g, of which half goes into another batch."""
    poured = [
        {"lot": "A1", "amount": {"amount": "1000", "unit": "g"}},
        {"lot": "B1", "amount": {"amount": "500", "unit": "g"}},
    ]
    top = {"lot": "T1", "material": "m", "place": "st", "from": poured}
    return _numbered(
        [
            {"kind": "cooperative_defined", "body": {"cooperative": "c1", "currency": "PHP",
                                                     "currency_places": 2}},
            receipt("A1", "1000"), receipt("B1", "500"), price("B1", "40.00"),
            {"kind": "topped_up", "body": top},
            weigh_in("b1", "T1", "750"), output("b1", "P1", "600"),
            weigh_in("b2", "P1", "300"),
        ]
    )  # fmt: skip


def _late(kind: str, at: int, body: dict[str, Any]) -> dict[str, Any]:
    moment = f"2026-06-06T09:{at:02}:00.000Z"
    return {"id": f"l{at}", "kind": kind, "device_seq": 90 + at, "happened_at": moment,
            "body": body}  # fmt: skip


def _totals(history: list[dict[str, Any]]) -> tuple[str | None, str | None]:
    sheets = sheets_of(history)
    # A void says of no subject by itself: the log links it to those of what it names.
    family = [
        each for each in history if each["id"].startswith("l") or each["kind"] == "price_paid"
    ]
    own = [each for each in family if each["body"].get("lot", "A1") == "A1"]
    sheets["price:A1"] = fold_subject("price:A1", [fact_of(each) for each in own])
    first, second = (
        cost_of_batch(batch, cooperative="c1", sheets=sheets)["total"] for batch in ("b1", "b2")
    )
    return first, second


def test_a_price_missing_two_levels_down_is_named_and_makes_both_costs_incomplete() -> None:
    cost = cost_of_batch("b2", cooperative="c1", sheets=sheets_of(_two_levels()))

    assert cost["total"] is None
    assert cost["missing"] == [{"what": "price", "of": "A1", "through": "P1"}]


def test_a_late_price_its_correction_and_its_void_reach_the_second_batch_in_any_order() -> None:
    paid = _late("price_paid", 1, {"lot": "A1", "price": "80.00", "currency": "PHP"})
    rather = {"lot": "A1", "price": "110.00", "currency": "PHP"}
    named = {"corrects": "l1", "of_kind": "price_paid", "reason": "typed wrong"}
    corrected = {**_late("correction", 1, {**named, "body": rather}), "id": "l2"}
    undone = {"corrects": "l2", "of_kind": "correction", "reason": "it was right"}
    void = {**_late("void", 1, undone), "id": "l3"}
    base = _two_levels()

    # 120.00 for 1500 g; 750 g are 60.00, and half of what came of them 30.00.
    assert _totals([*base, paid]) == ("60.00", "30.00")
    assert _totals([*base, paid, corrected]) == ("75.00", "37.50")
    for arrived in permutations([paid, corrected, void]):
        assert _totals([*arrived, *base]) == ("60.00", "30.00")


@pytest.mark.parametrize("is_fit", [True, False])
def test_what_comes_back_from_a_stall_changes_no_cost_of_what_was_made(is_fit: bool) -> None:
    paid = _late("price_paid", 1, {"lot": "A1", "price": "80.00", "currency": "PHP"})
    amount = {"amount": "100", "unit": "g"}
    about = {"lot": "P1", "amount": amount, "place": "st", "on": "2026-06-06"}
    sold = _late("sale", 2, about)
    back = _late(
        "return", 3, {**about, "condition": "fit" if is_fit else "unfit", "reason": "x"}
    )

    assert _totals([*_two_levels(), paid, sold, back]) == ("60.00", "30.00")


def test_a_corrected_weigh_in_moves_the_cost_of_both_batches() -> None:
    paid = _late("price_paid", 1, {"lot": "A1", "price": "80.00", "currency": "PHP"})
    base = _two_levels()
    wrong = next(each for each in base if each["kind"] == "weigh_in")
    rather = weigh_in("b1", "T1", "375")["body"]
    body = {"corrects": wrong["id"], "of_kind": "weigh_in", "reason": "tare", "body": rather}
    corrected = {
        "id": "k1", "kind": "correction", "device_seq": 99,
        "happened_at": wrong["happened_at"], "body": body,
    }  # fmt: skip

    assert _totals([corrected, *base, paid]) == ("30.00", "15.00")
