"""The envelope: every field is needed, checked and known; a wrong clock is never a reason."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenlog.entries import forms
from kitchenlog.entries.envelope import Entry, parse_envelope, uuid7, wire_entry
from kitchenlog.entries.readable import Inexact
from kitchenlog.entries.refusals import Refusal, quarantine_code, sentence
from tests.entries.bodies import good_body
from tests.entries.entries import MADE_AT_MS, made_entry


def _sale(**changed: Any) -> dict[str, Any]:
    return {**made_entry("sale", good_body("sale")), **changed}


def test_an_entry_travels_there_and_back_unchanged() -> None:
    entry = parse_envelope(_sale())

    assert isinstance(entry, Entry)
    assert wire_entry(entry) == _sale()


@pytest.mark.parametrize("name", sorted(_sale()))
def test_a_missing_field_is_named(name: str) -> None:
    wire = _sale()
    del wire[name]

    assert parse_envelope(wire) == Refusal("field.missing", name)


@pytest.mark.parametrize("name", ["received_at", "seq", "role"])
def test_a_field_the_server_sets_is_refused(name: str) -> None:
    assert parse_envelope(_sale(**{name: 1})) == Refusal("field.unknown", name)


@pytest.mark.parametrize(
    ("changed", "key", "field"),
    [
        ({"id": "0192f0c4-0a11-4a3b-8c5d-1234567890ab"}, "uuid.wrong", "id"),
        ({"kind": "Sale"}, "kind.unknown", "kind"),
        ({"version": 0}, "number.too_small", "version"),
        ({"version": True}, "whole.wrong", "version"),
        ({"subjects": "lot:A"}, "list.wrong", "subjects"),
        ({"subjects": ["lot:A"] * 101}, "list.too_long", "subjects"),
        ({"subjects": ["lot:A", "lot:a"]}, "subject.wrong", "subjects[1]"),
        ({"cooperative": "ours"}, "uuid.wrong", "cooperative"),
        ({"device_seq": 0}, "number.too_small", "device_seq"),
        ({"device_seq": 2**53}, "number.too_large", "device_seq"),
        ({"device_seq": "17"}, "whole.wrong", "device_seq"),
        ({"recorded_at": "2026-11-10T08:00:00Z"}, "moment.wrong", "recorded_at"),
        ({"recorded_at": "2026-11-10T24:00:00.000Z"}, "moment.wrong", "recorded_at"),
        ({"recorded_at": "2026-02-29T08:00:00.000Z"}, "moment.wrong", "recorded_at"),
        ({"happened_at": "2026-11-10 08:00:00.000Z"}, "moment.wrong", "happened_at"),
        ({"tz": "../etc"}, "zone.unknown", "tz"),
        ({"utc_offset_min": 901}, "number.too_large", "utc_offset_min"),
        ({"local_date": "2026-11-31"}, "day.wrong", "local_date"),
        ({"seen": 7}, "text.wrong", "seen"),
        ({"seen": "a\0"}, "text.unstorable", "seen"),
        ({"app_version": ""}, "text.blank", "app_version"),
        ({"body": []}, "group.wrong", "body"),
    ],
)
def test_a_wrong_field_is_named(changed: dict[str, Any], key: str, field: str) -> None:
    refused = parse_envelope(_sale(**changed))

    assert isinstance(refused, Refusal)
    assert (refused.key, refused.field) == (key, field)
    assert sentence(refused).startswith(field)


@pytest.mark.parametrize("year", ["1970", "1999", "2101", "9998"])
def test_a_wrong_clock_is_never_a_reason(year: str) -> None:
    at, on = f"{year}-11-10T08:00:00.000Z", f"{year}-11-10"

    entry = parse_envelope(_sale(recorded_at=at, happened_at=at, local_date=on))

    assert isinstance(entry, Entry)


def test_a_kind_nobody_knows_is_kept_aside_as_such_and_all_else_as_unreadable() -> None:
    assert quarantine_code(Refusal("kind.unknown", "kind")) == "unknown_kind"
    assert quarantine_code(Refusal("day.wrong", "on")) == "unreadable"


def test_an_entry_twenty_levels_deep_can_be_read_and_one_deeper_cannot() -> None:
    deep: Any = "bottom"
    for _ in range(18):
        deep = [deep]

    assert isinstance(parse_envelope(_sale(body={"note": deep})), Entry)
    refused = parse_envelope(_sale(body={"note": [deep]}))
    assert isinstance(refused, Refusal) and refused.key == "entry.too_deep"


def test_a_hundred_thousand_levels_are_refused_without_a_fall() -> None:
    deep: Any = []
    for _ in range(100_000):
        deep = [deep]

    refused = parse_envelope(_sale(body={"note": deep}))

    assert isinstance(refused, Refusal) and refused.key == "entry.too_deep"


def test_a_text_of_ten_thousand_can_be_read_and_one_more_cannot() -> None:
    assert isinstance(parse_envelope(_sale(body={"note": "a" * 10_000})), Entry)
    refused = parse_envelope(_sale(body={"note": "a" * 10_001}))
    assert isinstance(refused, Refusal) and refused.key == "entry.text_too_long"


@pytest.mark.parametrize("number", [Inexact("1.5"), Inexact("NaN"), Inexact("1e999"), 1.5])
def test_a_number_that_is_not_exact_refuses_its_entry(number: Any) -> None:
    refused = parse_envelope(_sale(body={"says": number}))

    assert isinstance(refused, Refusal) and refused.key == "entry.not_exact"


@given(at_ms=st.integers(0, 2**48 - 1), chance=st.binary(min_size=10, max_size=10))
def test_an_id_is_a_uuid_of_version_7_that_begins_with_its_time(
    at_ms: int, chance: bytes
) -> None:
    made = uuid7(at_ms, chance=chance)

    assert forms.UUID7.fullmatch(made)
    assert int(made.replace("-", "")[:12], 16) == at_ms


def test_the_id_of_a_known_moment_is_as_written_here() -> None:
    assert uuid7(MADE_AT_MS, chance=bytes(range(10))) == "01a1c478-9800-7001-8203-040506070809"
