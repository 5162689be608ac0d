"""The number of the table of kinds goes up with whatever an older app would not know."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from kitchenlog.entries.kinds import KINDS, TABLE_NUMBER, Kind
from kitchenlog.entries.kinds.fields import text
from kitchenlog.entries.kinds.released import fingerprint, number_trouble

RELEASED = {1: fingerprint(KINDS)}

COUNT = KINDS["count"]
CHANGED: dict[str, Mapping[str, Kind]] = {
    "a kind more": {**KINDS, "tasting": replace(COUNT, name="tasting")},
    "a kind less": {name: kind for name, kind in KINDS.items() if name != "count"},
    "a field more": {
        **KINDS,
        "count": replace(COUNT, fields=(*COUNT.fields, text("by", needed=False))),
    },
    "a later version": {**KINDS, "count": replace(COUNT, version=2)},
}


def test_the_table_of_today_may_go_by_its_number() -> None:
    assert number_trouble(TABLE_NUMBER, KINDS) is None


def test_a_released_table_goes_by_its_number_while_it_stays_as_it_is() -> None:
    assert number_trouble(1, KINDS, released=RELEASED) is None


@pytest.mark.parametrize("what", CHANGED)
def test_whatever_an_older_app_would_not_know_needs_a_higher_number(what: str) -> None:
    kinds = CHANGED[what]

    assert number_trouble(1, kinds, released=RELEASED) is not None
    assert number_trouble(2, kinds, released=RELEASED) is None


def test_no_table_takes_the_number_of_an_earlier_release() -> None:
    released = {**RELEASED, 2: fingerprint(CHANGED["a kind more"])}

    assert number_trouble(1, KINDS, released=released) is not None
