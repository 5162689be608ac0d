"""What an entry is about, what it names, and who may write and see it."""

import json
from typing import Any

import pytest

from kitchenlog.entries.links import (
    corrects,
    effective_kind,
    mentions_of,
    subjects_of,
)
from kitchenlog.entries.rights import audience_about, audience_of, owners_of, written_by
from tests.entries.bodies import VECTORS, good_body

_TABLE = json.loads((VECTORS / "links.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", _TABLE["links"], ids=lambda row: row["why"])
def test_subjects_and_mentions_follow_from_the_body(row: dict[str, Any]) -> None:
    assert list(subjects_of(row["kind"], row["body"])) == row["subjects"]
    assert list(mentions_of(row["kind"], row["body"])) == row["mentions"]


def test_a_correction_names_its_entry_and_is_of_that_kind() -> None:
    body = good_body("correction")

    assert corrects("correction", body) == body["corrects"]
    assert effective_kind("correction", body) == "weigh_in"
    assert corrects("sale", good_body("sale")) is None
    assert effective_kind("sale", good_body("sale")) == "sale"


def test_correcting_what_a_coordinator_writes_is_a_coordinators_work() -> None:
    renamed = {**good_body("correction"), "of_kind": "place_defined", "body": {}}

    assert written_by("correction", renamed) == "coordinator"
    assert written_by("correction", good_body("correction")) == "member"
    assert (
        written_by("void", {**good_body("void"), "of_kind": "recipe_published"})
        == "coordinator"
    )


def test_a_price_stays_with_those_who_see_prices_also_in_corrections_and_notes() -> None:
    price = good_body("price_paid")
    correction = {**good_body("correction"), "of_kind": "price_paid", "body": price}
    void = {**good_body("void"), "of_kind": "price_paid"}

    assert audience_of("price_paid", price) == "coordinator"
    assert audience_of("correction", correction) == "coordinator"
    assert audience_of("void", void) == "coordinator"
    assert audience_of("note", {"subject": "price:MG-1", "says": "dear"}) == "coordinator"
    assert audience_of("note", {"subject": "lot:MG-1", "says": "ripe"}) == "member"


def test_a_drill_stays_with_its_member_also_in_corrections_and_notes() -> None:
    drill = good_body("drill_done")
    correction = {**good_body("correction"), "of_kind": "drill_done", "body": drill}
    void = {**good_body("void"), "of_kind": "drill_done"}
    note = {"subject": f"skill:{drill['member']}", "says": "steady"}

    assert audience_of("drill_done", drill) == "own"
    assert audience_of("correction", correction) == "own"
    assert audience_of("void", void) == "own"
    assert audience_of("note", note) == "own"
    assert audience_about("drill_done", drill, ["lot:MG-1", note["subject"]]) == "own"


def test_a_void_that_hides_its_kind_stays_with_those_who_see_what_it_is_about() -> None:
    void = {**good_body("void"), "of_kind": "sale"}

    assert audience_about("void", void, ["skill:ana"]) == "own"
    assert audience_about("void", void, ["price:MG-1", "skill:ana"]) == "coordinator"
    assert audience_about("void", void, ["lot:MG-1"]) == "member"


def test_a_subject_of_skill_names_its_owner() -> None:
    assert owners_of(["skill:ana", "lot:MG-1", "skill:ben"]) == {"ana", "ben"}
    assert owners_of(["lot:MG-1"]) == frozenset()
