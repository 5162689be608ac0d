"""Versions: a table of our own in which `count` has come to its third version."""

from dataclasses import replace

import pytest

from kitchenlog.entries.kinds import EARLIER_KINDS, KINDS
from kitchenlog.entries.kinds.fields import choice, code, id_of, quantity
from kitchenlog.entries.parse import parse_body
from kitchenlog.entries.refusals import Refusal
from kitchenlog.entries.upcast import TABLE, Body, Newer, Table
from tests.entries.bodies import good_body

_FIRST = KINDS["count"]
_SECOND = replace(
    _FIRST, version=2, fields=(code(), quantity("seen"), id_of("place"))
)  # `amount` became `seen`
_THIRD = replace(_SECOND, version=3, fields=(*_SECOND.fields, choice("by", "eye", "weight")))


def _seen_for_amount(body: Body) -> Body:
    kept = {name: value for name, value in body.items() if name != "amount"}
    return {**kept, "seen": body["amount"]}


def _by_eye(body: Body) -> Body:
    return {**body, "by": "eye"}


LATER = Table(
    kinds={**KINDS, "count": _THIRD},
    earlier={("count", 1): _FIRST, ("count", 2): _SECOND},
    lifts={("count", 1): _seen_for_amount, ("count", 2): _by_eye},
)

_AMOUNT = {"amount": "12.0", "unit": "pc"}
_AS_FIRST = {"lot": "A", "amount": _AMOUNT, "place": "s2"}
_AS_SECOND = {"lot": "A", "seen": _AMOUNT, "place": "s2"}
_AS_THIRD = {"lot": "A", "seen": _AMOUNT, "place": "s2", "by": "eye"}


@pytest.mark.parametrize(("version", "made"), [(1, _AS_FIRST), (2, _AS_SECOND), (3, _AS_THIRD)])
def test_every_version_is_read_in_the_newest_form(version: int, made: Body) -> None:
    assert parse_body("count", version, made, table=LATER) == _AS_THIRD


def test_a_body_is_judged_by_the_version_it_was_made_in() -> None:
    assert parse_body("count", 1, _AS_SECOND, table=LATER) == Refusal("field.unknown", "seen")
    assert parse_body("count", 3, _AS_SECOND, table=LATER) == Refusal("field.missing", "by")


def test_a_newer_version_is_not_wrong_but_has_to_wait() -> None:
    assert parse_body("count", 4, {"whatever": 1}, table=LATER) == Newer("count", 4)


def test_a_version_that_never_was_is_refused() -> None:
    assert parse_body("count", 0, _AS_FIRST, table=LATER) == Refusal("version.wrong", "version")


def test_the_body_inside_a_correction_is_lifted_too() -> None:
    correction = {**good_body("correction"), "of_kind": "count", "body": _AS_SECOND}
    correction["of_version"] = 2

    parsed = parse_body("correction", 1, correction, table=LATER)

    assert parsed == {**correction, "body": _AS_THIRD, "of_version": 3}


def test_a_correction_without_a_version_holds_the_first() -> None:
    correction = {**good_body("correction"), "of_kind": "count", "body": _AS_FIRST}
    del correction["of_version"]

    parsed = parse_body("correction", 1, correction, table=LATER)

    assert parsed == {**correction, "body": _AS_THIRD, "of_version": 3}


def test_a_correction_with_a_newer_body_has_to_wait() -> None:
    correction = {**good_body("correction"), "of_kind": "count", "of_version": 4, "body": {}}

    assert parse_body("correction", 1, correction, table=LATER) == Newer("count", 4)


def test_reading_an_older_body_leaves_it_as_it_was_made() -> None:
    made = dict(_AS_FIRST)

    parse_body("count", 1, made, table=LATER)

    assert made == _AS_FIRST


def test_every_earlier_version_is_declared_and_has_its_lift() -> None:
    steps = {
        (kind.name, version) for kind in KINDS.values() for version in range(1, kind.version)
    }

    assert {(kind.name, kind.version) for kind in EARLIER_KINDS} == steps
    assert set(TABLE.lifts) == steps
