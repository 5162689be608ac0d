"""Parse or refuse: the shared table of verdicts, and that digits survive."""

import copy
import json
import timeit
from collections import Counter
from collections.abc import Iterator
from decimal import Decimal
from functools import reduce
from operator import getitem
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenlog.entries.envelope import wire_entry
from kitchenlog.entries.kinds import KINDS, Field
from kitchenlog.entries.parse import Parsed, parse_body, parse_entry
from kitchenlog.entries.readable import Inexact
from kitchenlog.entries.refusals import Refusal, sentence
from tests.entries.bodies import Case, bad_bodies, good_bodies, good_body
from tests.entries.entries import made_entry

LOG_PARSED_S_MOST = 0.5  # a tenth of it on a machine that does nothing else


@pytest.mark.parametrize("case", good_bodies(), ids=str)
def test_a_good_body_is_parsed_as_it_is(case: Case) -> None:
    assert parse_body(case.kind, 1, case.body) == case.body


@pytest.mark.parametrize("case", bad_bodies(), ids=str)
def test_a_bad_body_is_refused_at_its_field(case: Case) -> None:
    refused = parse_body(case.kind, 1, case.body)

    assert isinstance(refused, Refusal)
    assert {"key": refused.key, "field": refused.field} == case.then


@pytest.mark.parametrize("case", bad_bodies(), ids=str)
def test_a_refusal_can_be_said_and_stored(case: Case) -> None:
    refused = parse_body(case.kind, 1, case.body)

    assert isinstance(refused, Refusal)
    said = sentence(refused)
    assert said.startswith(refused.field) and said.endswith(".") and "{" not in said
    assert "\0" not in said
    said.encode("utf-8")


def test_every_kind_stands_in_the_table_of_verdicts() -> None:
    good = {case.kind for case in good_bodies()}
    bad = Counter(case.kind for case in bad_bodies())

    assert good == set(KINDS)
    assert {kind for kind in KINDS if bad[kind] < 2} == set()


def test_a_log_of_ten_thousand_rows_stays_within_200_kib_and_is_parsed_at_once() -> None:
    longest = {
        **good_body("heat_log"),
        "at_s": [31_612_400 + row for row in range(10_000)],
        "temperatures": ["-99.999"] * 10_000,
        "action": "\N{SNOWMAN}" * 600,
    }
    made = made_entry("heat_log", longest)

    took_s = min(timeit.repeat(lambda: parse_entry(made), number=1, repeat=3))

    assert isinstance(parse_entry(made), Parsed)
    wire = json.dumps(made, ensure_ascii=False, separators=(",", ":")).encode()
    assert len(wire) <= 200 * 1024
    assert took_s < LOG_PARSED_S_MOST


def test_a_whole_entry_is_parsed_with_its_body() -> None:
    made = made_entry("sale", good_body("sale"))

    parsed = parse_entry(made)

    assert isinstance(parsed, Parsed)
    assert wire_entry(parsed.entry) == made
    assert parsed.body == good_body("sale")


def test_a_bad_body_refuses_the_whole_entry() -> None:
    body = {**good_body("sale"), "price_each": "much"}

    assert parse_entry(made_entry("sale", body)) == Refusal("decimal.wrong", "price_each")


def _texts_in(value: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """Where every text in a JSON value stands."""
    if isinstance(value, str):
        yield path
    elif isinstance(value, dict | list):
        steps = value.items() if isinstance(value, dict) else enumerate(value)
        for step, inner in steps:
            yield from _texts_in(inner, (*path, step))


@pytest.mark.parametrize("case", good_bodies(), ids=str)
def test_a_number_that_is_not_exact_passes_for_no_text_of_an_entry(case: Case) -> None:
    made = made_entry(case.kind, case.body)

    for *steps, last in _texts_in(made):
        spoiled = copy.deepcopy(made)
        holder = reduce(getitem, steps, spoiled)
        holder[last] = Inexact(holder[last])
        assert parse_entry(spoiled) == Refusal("entry.not_exact", ""), [*steps, last]


@pytest.mark.parametrize(
    ("spoiled", "key"),
    [
        ({"note": "a" * 10_001}, "entry.text_too_long"),
        ({"note": reduce(lambda inner, _: [inner], range(20), [])}, "entry.too_deep"),
        ({"amount": Inexact("1.5")}, "entry.not_exact"),
    ],
)
@pytest.mark.parametrize("version", [1, 2])
def test_what_nobody_can_read_is_said_before_all_else_also_of_a_newer_version(
    spoiled: dict[str, Any], key: str, version: int
) -> None:
    made = {**made_entry("sale", good_body("sale")), "version": version, "tz": 7}

    refused = parse_entry({**made, "body": {**made["body"], **spoiled}})

    assert isinstance(refused, Refusal)
    assert refused.key == key


def _digits(field: Field) -> st.SearchStrategy[str]:
    """Decimals as somebody types them: leading and trailing zeros, no exponent."""
    numbers = st.from_regex(r"\A-?[0-9]{1,8}(\.[0-9]{1,6})?\Z")
    least, most = Decimal(field.least or "-1e9"), Decimal(field.most or "1e9")
    return numbers.filter(lambda text: least <= Decimal(text) <= most)


_AMOUNT = next(field for field in KINDS["count"].fields if field.type == "quantity")
_SHOWN = next(
    inner
    for field in KINDS["weigh_in"].fields
    for inner in field.fields
    if inner.name == "shown"
)


@given(amount=_digits(_AMOUNT), unit=st.sampled_from(["mg", "g", "kg", "us_cup", "pc"]))
def test_an_amount_comes_back_from_the_wire_with_every_digit(amount: str, unit: str) -> None:
    body = {**good_body("count"), "amount": {"amount": amount, "unit": unit}}

    parsed = parse_body("count", 1, json.loads(json.dumps(body)))

    assert parsed == body


@given(shown=_digits(_SHOWN), tare=_digits(_SHOWN))
def test_a_reading_comes_back_from_the_wire_with_every_digit(shown: str, tare: str) -> None:
    body = good_body("weigh_in")
    body["reading"].update(shown=shown, tare=tare)

    assert parse_body("weigh_in", 1, json.loads(json.dumps(body))) == body


_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text() | st.floats(allow_nan=False),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=10,
)


@given(kind=st.sampled_from(sorted(KINDS)), junk=_JSON)
def test_nothing_that_comes_from_outside_makes_parsing_raise(kind: str, junk: Any) -> None:
    parse_body(kind, 1, junk)


@given(
    case=st.sampled_from(good_bodies()),
    junk=_JSON,
    name=st.sampled_from(["amount", "lot", "lines", "changes", "reading", "body", "of_kind"]),
)
def test_junk_in_any_field_is_refused_or_parsed(case: Case, junk: Any, name: str) -> None:
    parse_body(case.kind, 1, {**case.body, name: junk})
