"""Shared stock recorded offline: six scenarios through push, as listed and shuffled.

`tests/vectors/ledger_scenarios.csv` holds them with source and basis. A receipt is `receive`,
an output `produce`, a void `reverse`, its replacement a new entry, and a pair of transfer rows
one transfer, which arrives with the first of the two.
"""

from __future__ import annotations

import csv
import random
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from kitchenlog.stock.selectors import lots_of_material, stock_of_material, stock_of_place
from tests.people import Kitchen, Phone
from tests.writing import Pen, made_id, pushed, recompute_all, statuses

pytestmark = pytest.mark.django_db

ROWS = list(
    csv.DictReader((Path(__file__).parents[1] / "vectors" / "ledger_scenarios.csv").open())
)
SCENARIOS = sorted({row["scenario"] for row in ROWS})
SHUFFLES = 8


@dataclass(frozen=True)
class Arrival:
    """One row, the entry that comes with it (None for a transfer's second leg), its phone."""

    row: dict[str, str]
    entry: dict[str, Any] | None
    phone: Phone


class Story:
    """The entries of one scenario, written once, to be handed over in any order."""

    def __init__(self, kitchen: Kitchen, scenario: str) -> None:
        self.rows = [row for row in ROWS if row["scenario"] == scenario]
        self.lot = self.rows[0]["lot"]
        self.phones = {name: kitchen.phone() for name in ("HUB", "A", "B")}
        self.pens = {name: Pen(phone) for name, phone in self.phones.items()}
        self.names: dict[str, str] = {}  # id of an entry -> its name in the table
        self.written: dict[str, dict[str, Any]] = {}
        self.arrivals = list(self._arrivals())

    def _arrivals(self) -> Iterator[Arrival]:
        is_second_leg = False
        for number, row in enumerate(self.rows):
            phone = self.phones[row["device"]]
            if is_second_leg:
                is_second_leg = False
                yield Arrival(row, None, phone)
                continue
            if row["entry_id"] not in self.written:
                other = self.rows[number + 1] if row["kind"] == "transfer" else row
                entry = self._entry(row, other)
                self.written[row["entry_id"]] = entry
                self.names[entry["id"]] = row["entry_id"]
            is_second_leg = row["kind"] == "transfer"
            yield Arrival(row, self.written[row["entry_id"]], phone)

    def _entry(self, row: dict[str, str], other: dict[str, str]) -> dict[str, Any]:
        pen = self.pens[row["device"]]
        at = datetime.fromisoformat(row["effective_at"]).astimezone(UTC)
        amount = {"amount": row["qty_signed_or_counted"].lstrip("-"), "unit": "pc"}
        body: dict[str, Any] = {"lot": self.lot, "amount": amount, "place": _place(row)}
        match row["kind"]:
            case "receive":
                more = {"material": made_id("jam"), "source": made_id("farm")}
                return pen.write("receipt", {**body, **more, "condition": "fit"}, at=at)
            case "produce":
                more = {"material": made_id("jam"), "batch": made_id("batch")}
                return pen.write("output", {**body, **more}, at=at)
            case "sale":
                return pen.write("sale", {**body, "on": at.date().isoformat()}, at=at)
            case "count":
                return pen.write("count", body, at=at)
            case "transfer":
                del body["place"]
                legs = {"from_place": _place(row), "to_place": _place(other)}
                return pen.write("transfer", {**body, **legs}, at=at)
            case "reverse":
                return pen.void(self.written[row["refers_to"]], at=at)
        raise AssertionError(row["kind"])


def _place(row: dict[str, str]) -> str:
    return made_id(row["location"])


def _hand_over(arrival: Arrival) -> None:
    assert arrival.entry is not None
    result = statuses(pushed(arrival.phone, [arrival.entry]))
    assert result in (["created"], ["exists"])
    recompute_all()


def _balances(row: dict[str, str]) -> dict[str, str]:
    """`store/J1=4; stallA/J1=6` by place; nothing stands where it says 0."""
    pairs = [part.split("=") for part in row["balance_after_this_arrival"].split("; ")]
    return {made_id(place.split("/")[0]): amount for place, amount in pairs}


def _variances(row: dict[str, str]) -> dict[str, str]:
    pairs = [part.split(":") for part in row["count_variances_after_this_arrival"].split(";")]
    return {pair[0].strip(): pair[1].lstrip("+") for pair in pairs if len(pair) == 2}


def _check(story: Story, row: dict[str, str], *, is_half: bool = False) -> None:
    state = story.phones["HUB"].get(f"lots/{story.lot}").json()["state"]
    listed = _balances(row)
    if is_half:  # the table shows one leg alone, which cannot happen here
        listed = {_place(row): listed[_place(row)]}
    places = {place: state["places"].get(place, "0") for place in listed}
    assert places == listed
    if not is_half:
        assert state["places"] == {p: amount for p, amount in listed.items() if amount != "0"}
    counted = {story.names[each["entry"]]: each["variance"] for each in state["counts"]}
    assert counted == _variances(row)
    negative = [f for f in state["findings"] if f["what"] == "negative"]
    assert len(negative) == int(row["negative_places_after_this_arrival"])
    in_out = sum(int(state[name]) for name in ("made", "returned", "found"))
    gone = sum(int(state[name]) for name in ("sold", "dispatched", "used", "lost"))
    assert in_out == gone + int(state["on_hand"])


@pytest.mark.parametrize("scenario", SCENARIOS)
def test_the_balance_after_every_arrival_is_as_listed(
    scenario: str, kitchen: Kitchen, no_limits: None
) -> None:
    story = Story(kitchen, scenario)

    for arrival, following in zip(story.arrivals, [*story.arrivals[1:], None], strict=True):
        if arrival.entry is not None:
            _hand_over(arrival)
        is_half = following is not None and following.entry is None
        _check(story, arrival.row, is_half=is_half)


@pytest.mark.parametrize("seed", range(SHUFFLES))
@pytest.mark.parametrize("scenario", SCENARIOS)
def test_any_order_of_arrival_ends_alike(
    scenario: str, seed: int, kitchen: Kitchen, no_limits: None
) -> None:
    story = Story(kitchen, scenario)
    arrivals = [arrival for arrival in story.arrivals if arrival.entry is not None]
    random.Random(seed).shuffle(arrivals)

    for arrival in arrivals:
        _hand_over(arrival)

    _check(story, story.rows[-1])


def test_stock_of_a_place_and_of_a_material_are_sums_over_lots(
    kitchen: Kitchen, no_limits: None
) -> None:
    for scenario in ("S2", "S3"):
        for arrival in Story(kitchen, scenario).arrivals:
            if arrival.entry is not None:
                _hand_over(arrival)
    jam, here = made_id("jam"), kitchen.cooperative.pk

    assert stock_of_place(here, made_id("store")) == {jam: {"pc": 12}}
    assert stock_of_place(here, made_id("stallA")) == {jam: {"pc": 1}}
    assert stock_of_material(here, jam) == {
        made_id("store"): {"pc": 12},
        made_id("stallA"): {"pc": 1},
    }
    assert [(lot.code, lot.on_hand) for lot in lots_of_material(here, jam)] == [
        ("J1", 1),
        ("J2", 12),
    ]
