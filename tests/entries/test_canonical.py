"""One way to write an entry, and its fingerprint."""

import json
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from kitchenlog.entries.canonical import canonical, fingerprint
from tests.entries.bodies import good_body
from tests.entries.entries import made_entry

_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(), inner, max_size=4),
)


def test_keys_are_sorted_and_nothing_is_escaped_that_need_not_be() -> None:
    written = canonical({"b": 1, "a": ["é", "\n", '"'], "A": None, "ä": True})

    assert written == '{"A":null,"a":["é","\\n","\\""],"b":1,"ä":true}'.encode()


def test_the_fingerprint_of_a_known_entry_is_as_written_here() -> None:
    # printf '{"amount":"12.50","kind":"count"}' | sha256sum
    expected = "40cbb175ea074606d6f0db954a5880cc38d3c725785b4927063517d1206f95d7"

    assert fingerprint({"kind": "count", "amount": "12.50"}) == expected


def test_trailing_zeros_make_another_entry() -> None:
    assert fingerprint({"amount": "12.50"}) != fingerprint({"amount": "12.5"})


def test_half_a_surrogate_pair_still_has_a_fingerprint() -> None:
    assert len(fingerprint({"says": "\ud83c"})) == 64


@given(value=_JSON)
def test_what_is_written_reads_back_the_same(value: Any) -> None:
    assert json.loads(canonical(value).decode("utf-8", "surrogatepass")) == value


def test_the_order_of_fields_does_not_matter() -> None:
    entry = made_entry("sale", good_body("sale"))
    turned = dict(reversed(entry.items()))

    assert fingerprint(entry) == fingerprint(turned)
