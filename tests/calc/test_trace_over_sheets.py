"""A trace walks the sheets that folds make of entries, whoever holds them."""

from __future__ import annotations

import itertools
import json
from pathlib import Path
from typing import Any

import pytest

from kitchenlog.calc.folds import fold_subject
from kitchenlog.calc.record import Fact
from kitchenlog.calc.trace import edges_at, trace
from tests.calc.registry_folds import fact_of

VECTORS = Path(__file__).parents[1] / "vectors"


def amount(number: str, unit: str) -> dict[str, str]:
    return {"amount": number, "unit": unit}


def road() -> list[Fact]:
    """Mango from a farm, a topped-up bin of sugar, one batch, a shop and a stall."""
    weighed = {"unit": "kg", "shown": "4", "division": "0.01"}
    bodies: list[tuple[str, dict[str, Any]]] = [
        ("receipt", {"lot": "MANGO", "source": "farm", "amount": amount("5", "kg")}),
        ("receipt", {"lot": "SU-1", "source": "mill", "amount": amount("20", "kg")}),
        ("receipt", {"lot": "SU-2", "source": "mill", "amount": amount("10", "kg")}),
        (
            "topped_up",
            {
                "lot": "BIN",
                "from": [
                    {"lot": "SU-1", "amount": amount("10", "kg")},
                    {"lot": "SU-2", "amount": amount("10", "kg")},
                ],
            },
        ),
        ("weigh_in", {"batch": "b1", "line": "mango", "lot": "MANGO", "reading": weighed}),
        ("weigh_in", {"batch": "b1", "line": "sugar", "lot": "BIN", "reading": weighed}),
        ("output", {"batch": "b1", "lot": "JAM", "amount": amount("30", "pc")}),
        ("dispatch", {"lot": "JAM", "amount": amount("12", "pc"), "recipient": "shop"}),
        ("sale", {"lot": "JAM", "amount": amount("3", "pc"), "on": "2026-06-06"}),
    ]
    return [
        fact_of(
            {
                "id": f"e{number}",
                "kind": kind,
                "device_seq": number,
                "happened_at": f"2026-06-06T{number:02}:00:00.000Z",
                "body": {"place": "store", **body},
            }
        )
        for number, (kind, body) in enumerate(bodies, start=1)
    ]


@pytest.fixture
def sheets() -> dict[str, Any]:
    subjects = ("lot:MANGO", "lot:SU-1", "lot:SU-2", "lot:BIN", "lot:JAM", "batch:b1")
    return {subject: fold_subject(subject, road()) for subject in subjects}


def test_a_jar_is_traced_back_through_batch_and_bin_to_every_source(
    sheets: dict[str, Any],
) -> None:
    back = trace("JAM", "back", sheets)

    assert [node["id"] for node in back["nodes"]] == [
        "batch:b1", "lot:BIN", "lot:JAM", "lot:MANGO", "lot:SU-1", "lot:SU-2",
        "source:farm", "source:mill",
    ]  # fmt: skip
    assert back["is_complete"]


def test_a_bag_of_sugar_is_traced_forward_to_the_shop_and_the_stall_day(
    sheets: dict[str, Any],
) -> None:
    forward = trace("SU-1", "forward", sheets)

    assert [(edge["from"], edge["to"], edge["amount"]) for edge in forward["edges"]] == [
        ("batch:b1", "lot:JAM", "30"),
        ("lot:BIN", "batch:b1", "4000"),
        ("lot:JAM", "day:store:2026-06-06", "3"),
        ("lot:JAM", "recipient:shop", "12"),
        ("lot:SU-1", "lot:BIN", "10000"),
    ]


def test_the_same_edge_is_known_from_both_its_ends(sheets: dict[str, Any]) -> None:
    def edges(direction: Any) -> set[tuple[str, str, str]]:
        return {
            (edge["from"], edge["to"], edge["amount"])
            for subject, state in sheets.items()
            for edge in edges_at(subject, state, direction)
            if edge["from"] in sheets and edge["to"] in sheets
        }

    assert edges("back") == edges("forward")


def scenario_ends() -> list[Any]:
    """The last vector of each ledger scenario."""
    file = json.loads((VECTORS / "stock/lot_state.json").read_text(encoding="utf-8"))
    named = [vector for vector in file["vectors"] if vector["why"][:2].rstrip().startswith("S")]
    ends = {vector["why"][:2]: vector for vector in named}
    return [pytest.param(vector, id=scenario) for scenario, vector in ends.items()]


@pytest.mark.parametrize("vector", scenario_ends())
def test_a_ledger_scenario_ends_alike_in_every_order_of_arrival(
    vector: dict[str, Any],
) -> None:
    facts = list({each["id"]: fact_of(each) for each in vector["given"]["facts"]}.values())
    subject = vector["given"]["subject"]

    # All orders of up to five entries; every tenth of the 5 040 of the longest scenario.
    step = 1 if len(facts) <= 5 else 10
    ends = [
        fold_subject(subject, order)
        for order in itertools.islice(itertools.permutations(facts), 0, None, step)
    ]

    assert all(end["places"] == vector["then"]["lot_state"]["places"] for end in ends)
    assert all(end == ends[0] for end in ends)
