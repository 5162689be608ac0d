"""The law of order: the same entries, in whatever order they arrive, give the same sheets.

Only what people set up folds in the order of arrival (R49), and so does what leans on it: the
verdict on an instrument's check, and what a batch or a fill check makes of that. All else is in
the order of happening, with ties of one instant decided by the device and its own number.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from random import Random
from typing import Any

import pytest
from django.db import transaction

from kitchenlog.calc.folds import DEFINITION_TYPES
from kitchenlog.calc.subjects import type_in
from kitchenlog.logbook.models import Sheet
from kitchenlog.logbook.verify import bad_places, sheets_that_differ
from tests.people import Kitchen
from tests.random_entries import DEFINING, HAPPENING, Entry, Hand
from tests.writing import Pen, pushed, recompute_all, statuses

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("no_limits")]

Sheets = dict[str, Any]

ORDERS = 8
FEW_ORDERS = 4
# Of what is set up; an instrument's sheet and those that lean on it are told apart below.
BY_ARRIVAL = (*DEFINITION_TYPES, "recipe")
LEAN_ON_INSTRUMENTS = ("instrument", "batch", "lot")


def written(
    kitchen: Kitchen,
    seed: int,
    *,
    set_up: Sequence[str] = DEFINING,
    happened: Sequence[str] = HAPPENING,
) -> list[Entry]:
    """What one coordinator wrote on four phones: many at one instant, some about others."""
    pens = [Pen(kitchen.phone("coordinator")) for _ in range(4)]
    hand = Hand(seed, pens)
    hand.history(10, of=set_up)
    return hand.history(40, of=happened)


def sheets_after(kitchen: Kitchen, arrival: list[Entry], chance: Random) -> Sheets:
    """Every sheet once these came, in a few pushes, some added up in between; then all of it is
    taken back, so that the next order meets the same empty log."""
    phone = kitchen.phone("coordinator")
    left = list(arrival)
    with transaction.atomic():
        while left:
            some = chance.randint(10, 40)
            results = pushed(phone, left[:some])
            assert set(statuses(results)) == {"created"}
            left = left[some:]
            if chance.random() < 0.4:
                recompute_all()
        recompute_all()
        assert list(bad_places(kitchen.cooperative.pk)) == []
        assert list(sheets_that_differ(kitchen.cooperative.pk)) == []
        rows = Sheet.objects.filter(cooperative=kitchen.cooperative.pk)
        sheets = {
            name: json.loads(state) for name, state in rows.values_list("subject", "state")
        }
        transaction.set_rollback(True)
    return sheets


def shuffled_but_definitions(entries: list[Entry], chance: Random) -> list[Entry]:
    """In any order, but what sets something up in its own."""
    order = list(entries)
    chance.shuffle(order)
    in_order = iter([each for each in entries if each["kind"] in DEFINING])
    return [next(in_order) if each["kind"] in DEFINING else each for each in order]


def shuffled(entries: list[Entry], chance: Random) -> list[Entry]:
    order = list(entries)
    chance.shuffle(order)
    return order


def differing(one: Sheets, other: Sheets) -> set[str]:
    return {name for name in {*one, *other} if one.get(name) != other.get(name)}


def test_the_same_entries_in_any_order_give_the_same_sheets(kitchen: Kitchen) -> None:
    entries, chance = written(kitchen, 1), Random(1)
    sheets = sheets_after(kitchen, entries, chance)

    for _ in range(ORDERS):
        arrival = shuffled_but_definitions(entries, chance)

        assert differing(sheets_after(kitchen, arrival, chance), sheets) == set()


def test_only_what_is_set_up_and_what_leans_on_it_goes_by_arrival(kitchen: Kitchen) -> None:
    entries = written(
        kitchen,
        8,
        set_up=("instrument_defined", "instrument_changed"),
        happened=("instrument_checked", "weigh_in", "step_done", "fill_checked", "heat_log"),
    )
    chance = Random(8)
    sheets = sheets_after(kitchen, entries, chance)
    seen: set[str] = set()

    for _ in range(FEW_ORDERS):
        other = sheets_after(kitchen, shuffled(entries, chance), chance)
        differ = differing(other, sheets)
        types = {type_in(name) for name in differ}

        seen |= types
        by_arrival = {*BY_ARRIVAL, *(LEAN_ON_INSTRUMENTS if "instrument" in types else ())}
        assert types <= by_arrival
    assert {"instrument", "batch"} <= seen
