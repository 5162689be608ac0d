"""What a batch costs, over the sheets of random histories: to the coin, in any order, twice."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import Any

import hypothesis.strategies as st
from hypothesis import HealthCheck, given, settings

from kitchenlog.calc.batch_costs import CostAnswer, cost_of_batch
from kitchenlog.calc.cost_views import viewed_cost
from kitchenlog.calc.folds import State, fold_subject
from kitchenlog.calc.record import Fact
from kitchenlog.entries.links import subjects_of
from tests.calc.registry import answer_to
from tests.calc.registry_folds import fact_of
from tests.calc.test_twins_agree import twin_answers

QUIET = settings(
    max_examples=60,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
COINS = st.decimals("0", "900", places=2).map(str)
GRAMS = st.integers(1, 5000).map(str)
BATCHES = ("b1", "b2")
WAYS = ("batch", "labour_hour", "kg", "percent")
BASES = ("materials", "labour", "materials_and_labour")


def receipt(lot: str, grams: str) -> dict[str, Any]:
    amount = {"amount": grams, "unit": "g"}
    return {
        "kind": "receipt",
        "body": {"lot": lot, "material": "m", "source": "s", "amount": amount, "place": "st",
                 "condition": "fit"},
    }  # fmt: skip


def weigh_in(batch: str, lot: str, grams: str) -> dict[str, Any]:
    reading = {"unit": "g", "shown": grams}
    return {
        "kind": "weigh_in",
        "body": {"batch": batch, "line": "l1", "material": "m", "lot": lot, "place": "st",
                 "reading": reading},
    }  # fmt: skip


def output(batch: str, lot: str, grams: str) -> dict[str, Any]:
    body = {"batch": batch, "lot": lot, "material": "m", "place": "st"}
    return {"kind": "output", "body": {**body, "amount": {"amount": grams, "unit": "g"}}}


def price(lot: str, coins: str) -> dict[str, Any]:
    return {"kind": "price_paid", "body": {"lot": lot, "price": coins, "currency": "PHP"}}


@st.composite
def shared(draw: st.DrawFn) -> dict[str, Any]:
    """How the products of b1 share its cost: P2, if there is one, perhaps as a by-product."""
    sorts = {"P1": "main", "P2": draw(st.sampled_from(("main", "by_product")))}
    products: list[dict[str, Any]] = [{"lot": lot, "sort": sort} for lot, sort in sorts.items()]
    for each in products:
        if draw(st.integers(0, 4)):
            each["value_each"] = draw(COINS)
    by = draw(st.sampled_from(("mass", "sales_value")))
    body = {"batch": "b1", "by": by, "currency": "PHP", "products": products}
    return {"kind": "cost_shared", "body": body}


@st.composite
def histories(draw: st.DrawFn) -> list[dict[str, Any]]:
    """Two deliveries, poured together or not, into a batch whose product goes into another."""
    bought = {lot: draw(GRAMS) for lot in ("A1", "B1")}
    about: list[dict[str, Any]] = [
        {"kind": "cooperative_defined",
         "body": {"cooperative": "c1", "currency": "PHP", "currency_places": 2}},
        {"kind": "rates_set",
         "body": {"cooperative": "c1", "since": "2026-01-01", "pay_per_hour": draw(COINS),
                  "overhead": {"by": draw(st.sampled_from(WAYS)), "rate": draw(COINS),
                               "percent_of": draw(st.sampled_from(BASES))}}},
        *(receipt(lot, grams) for lot, grams in bought.items()),
        *(price(lot, draw(COINS)) for lot in bought if draw(st.integers(0, 4))),
        *({"kind": "batch_started", "body": {"batch": each, "lines": [], "steps": []}}
          for each in BATCHES),
    ]  # fmt: skip
    lots = ["A1", "B1"]
    if draw(st.booleans()):
        poured = [{"lot": lot, "amount": {"amount": "1", "unit": "g"}} for lot in bought]
        body = {"lot": "T1", "material": "m", "place": "st", "from": poured}
        about.append({"kind": "topped_up", "body": body})
        lots.append("T1")
    used = draw(st.lists(st.sampled_from(lots), min_size=1, max_size=4))
    about += [weigh_in("b1", lot, draw(GRAMS)) for lot in used]
    about += [
        output("b1", lot, draw(GRAMS)) for lot in draw(st.sampled_from((("P1",), ("P1", "P2"))))
    ]
    about += [weigh_in("b2", "P1", draw(GRAMS)), output("b2", "Q1", draw(GRAMS))]
    if draw(st.integers(0, 7)) == 0:
        about.append(weigh_in("b1", "Q1", "5"))  # a slip: goods in a circle
    if draw(st.booleans()):
        about.append(draw(shared()))
    for batch in BATCHES:
        members = draw(st.lists(st.sampled_from(("ana", "ben")), max_size=3))
        about += [
            {"kind": "labour",
             "body": {"batch": batch, "member": each, "minutes": draw(GRAMS),
                      "is_paid": draw(st.booleans())}}
            for each in members
        ]  # fmt: skip
        body = {"batch": batch, "part": "fuel", "amount": draw(COINS), "currency": "PHP"}
        about.append({"kind": "expense", "body": body})
    minutes = [f"2026-06-06T08:{number:02}:00.000Z" for number in range(len(about))]
    return [
        {"id": f"e{number:02}", "device_seq": number, "happened_at": minutes[number], **each}
        for number, each in enumerate(about)
    ]


def sheets_of(history: Sequence[dict[str, Any]]) -> dict[str, State]:
    facts: dict[str, list[Fact]] = {}
    for each in history:
        for subject in subjects_of(each["kind"], each["body"]):
            facts.setdefault(subject, []).append(fact_of(each))
    return {subject: fold_subject(subject, about) for subject, about in facts.items()}


def costs_of(history: Sequence[dict[str, Any]]) -> list[CostAnswer]:
    sheets = sheets_of(history)
    return [cost_of_batch(each, cooperative="c1", sheets=sheets) for each in BATCHES]


@given(history=histories())
@QUIET
def test_lines_and_parts_add_up_to_the_coin(history: list[dict[str, Any]]) -> None:
    for cost in costs_of(history):
        known = Decimal(cost["known"])

        assert sum(Decimal(line["cost"]) for line in cost["lines"]) == known
        assert sum(map(Decimal, cost["parts"].values())) == known
        assert cost["total"] == (None if cost["missing"] else cost["known"])
        assert (cost["per_good_pack"] is None) == bool(cost["missing"])


@given(history=histories())
@QUIET
def test_main_products_add_up_to_the_total_and_with_by_products_to_all_that_was_spent(
    history: list[dict[str, Any]],
) -> None:
    for cost in costs_of(history):
        if cost["total"] is None:
            continue
        parts = {part: Decimal(value) for part, value in cost["parts"].items()}
        main = [each for each in cost["products"] if each["sort"] == "main"]
        by_products = [each for each in cost["products"] if each["sort"] == "by_product"]
        credit = sum((Decimal(each["cost"] or 0) for each in by_products), Decimal(0))

        assert credit == -parts["by_products"]
        if all(each["cost"] is not None for each in main):
            shares = sum((Decimal(each["cost"] or 0) for each in main), Decimal(0))
            assert shares == Decimal(cost["total"])
            assert shares + credit == sum(parts.values()) - parts["by_products"]


@given(data=st.data(), history=histories())
@QUIET
def test_in_whatever_order_entries_arrive_the_cost_is_the_same(
    data: st.DataObject, history: list[dict[str, Any]]
) -> None:
    arrived = data.draw(st.permutations(history))

    assert costs_of(arrived) == costs_of(history)


@given(history=histories(), late=COINS)
@QUIET
def test_a_price_that_comes_late_moves_every_cost_that_rests_on_it(
    history: list[dict[str, Any]], late: str
) -> None:
    without = [
        each
        for each in history
        if each["body"].get("lot") != "A1" or "price" not in each["body"]
    ]
    paid = {"id": "late", "device_seq": 99, **price("A1", late)}

    before, after = costs_of(without), costs_of([*without, paid])

    rests_on_it = [
        any((each["what"], each["of"]) == ("price", "A1") for each in cost["missing"])
        for cost in before
    ]
    for rests, was, cost in zip(rests_on_it, before, after, strict=True):
        assert all(each["of"] != "A1" for each in cost["missing"])
        assert rests or was == cost
    assert costs_of([paid, *without]) == after


lost_days = st.lists(st.tuples(st.integers(1, 9), st.integers(-40, 40)), max_size=4)


@given(history=histories(), days=lost_days)
@QUIET
def test_in_a_view_all_that_was_paid_is_here_elsewhere_lost_or_left_to_the_coin(
    history: list[dict[str, Any]], days: list[tuple[int, int]]
) -> None:
    sheets = sheets_of(history)
    lots = {code: sheets[f"lot:{code}"] for code in ("A1", "B1")}
    lost_on = [
        {"on": f"2026-06-0{day}", "amount": str(x)} for day, x in sorted(dict(days).items())
    ]
    sheets["lot:A1"] = {**lots["A1"], "lost_on": lost_on}

    for view in ("fifo", "moving_average"):
        seen = viewed_cost("b1", view, cooperative="c1", sheets=sheets, lots=lots)
        if seen["parts"] is None:
            continue
        parts = {name: Decimal(value) for name, value in seen["parts"].items()}
        prices = (sheets.get(f"price:{code}", {}).get("price") for code in lots)

        assert parts.pop("bought") == sum(parts.values())
        assert sum(parts.values()) == sum(Decimal(price or 0) for price in prices)
        assert seen["lots"] == str(parts["here"])


def test_the_phone_works_out_the_same_costs() -> None:
    questions: list[dict[str, Any]] = []

    @given(history=histories())
    @QUIET
    def collect(history: list[dict[str, Any]]) -> None:
        questions.extend(
            {"file": "batch_costs", "function": "cost_of_batch",
             "given": {"batch": each, "cooperative": "c1", "sheets": sheets_of(history)}}
            for each in BATCHES
        )  # fmt: skip

    collect()
    theirs = twin_answers(questions)
    ours = [answer_to(each["file"], each["function"], each["given"]) for each in questions]

    assert [pair for pair in zip(ours, theirs, strict=True) if pair[0] != pair[1]][:1] == []
    assert any(answer["cost_of_batch"]["total"] for answer in ours)
    assert any(answer["cost_of_batch"]["missing"] for answer in ours)
