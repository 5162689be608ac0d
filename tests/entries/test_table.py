"""The table of kinds itself, and its copy for the phone."""

from collections.abc import Iterable, Iterator

import pytest

from kitchenlog.calc.units import UNITS
from kitchenlog.entries import export
from kitchenlog.entries.kinds import KINDS, SUBJECT_TYPES, Field, Kind
from kitchenlog.entries.kinds.fields import MEASURES, NUMBER_MOST
from kitchenlog.entries.readable import DEPTH_MOST, TEXT_CHARS_MOST
from kitchenlog.entries.refusals import SENTENCES

SIGNED_64 = 2**63 - 1


def _all_fields(fields: Iterable[Field]) -> Iterator[Field]:
    for field in fields:
        yield field
        yield from _all_fields(field.fields)


def test_the_phones_copy_is_the_table() -> None:
    assert export.PHONE_COPY.read_text(encoding="utf-8") == export.phone_copy()


def test_the_list_of_kinds_stands_between_its_marks_and_nowhere_else() -> None:
    page = f"before\n{export.LIST_BEGIN}\nthe list of before\n{export.LIST_END}\nafter\n"

    written = export.with_list(page)

    assert written.startswith(f"before\n{export.LIST_BEGIN}\n")
    assert written.endswith(f"{export.LIST_END}\nafter\n")
    assert "the list of before" not in written
    assert all(f"`{name}` {kind.version}" in written for name, kind in KINDS.items())
    assert export.with_list(written) == written
    assert export.with_list("no marks\n") == "no marks\n"


def test_these_are_all_the_kinds() -> None:
    assert set(KINDS) == {
        "cooperative_defined", "cooperative_changed", "place_defined", "place_changed",
        "material_defined", "material_changed", "source_defined", "source_changed",
        "recipient_defined", "recipient_changed", "instrument_defined", "instrument_changed",
        "recipe_published", "receipt", "price_paid", "topped_up", "batch_started", "laid_out",
        "weigh_in", "step_done", "output", "loss", "batch_finished", "transfer", "dispatch",
        "sale", "return", "count", "correction", "void", "finding_settled", "note",
        "instrument_checked", "drill_done", "fill_checked", "labour", "expense", "rates_set",
        "heat_log", "held", "hold_decided", "cost_shared", "price_asked",
    }  # fmt: skip


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.name)
def test_no_field_is_named_twice_and_each_template_leads_somewhere(kind: Kind) -> None:
    names = [field.name for field in kind.fields]

    assert len(names) == len(set(names))
    for template in (*kind.subjects, *kind.mentions):
        kind_of_subject, _, holes = template.strip("{}").partition(":")
        assert kind_of_subject in (*SUBJECT_TYPES, "subject")
        for hole in holes.split("{")[1:]:
            assert hole.split("}")[0].split(".")[0].removesuffix("[]") in names


def test_what_is_in_a_field_has_a_limit() -> None:
    for kind in KINDS.values():
        for field in _all_fields(kind.fields):
            if field.type in ("text", "letters"):
                assert field.most_chars is not None, field.name
            if field.type in ("list", "decimals", "choices"):
                assert field.most_items is not None, field.name
            if field.type in ("decimal", "decimals", "quantity", "whole"):
                assert field.most is not None and field.least is not None, field.name


def test_what_fits_the_table_is_never_longer_or_deeper_than_can_be_read() -> None:
    """`parse_entry` walks only what is refused for such things."""
    for kind in KINDS.values():
        assert _depth(kind.fields) + ENTRY_DEPTH <= DEPTH_MOST, kind.name
        for field in _all_fields(kind.fields):
            assert (field.most_chars or 0) <= TEXT_CHARS_MOST, field.name
            assert (field.digits or 0) <= TEXT_CHARS_MOST, field.name


# The entry and a correction's body around a body; from, to and an amount's parts within one.
ENTRY_DEPTH = 5


def _depth(fields: Iterable[Field]) -> int:
    return 1 + max((_depth(field.fields) for field in fields if field.fields), default=0)


def test_the_largest_amount_in_any_unit_fits_a_databases_whole_number() -> None:
    """In mg, uL and thousandths of a piece."""
    factors = [unit.in_base for unit in UNITS.values() if unit.dimension in MEASURES]

    assert max(factor for factor in factors if factor) * 1000 * int(NUMBER_MOST) < SIGNED_64


def test_every_sentence_says_where_and_ends() -> None:
    for said in SENTENCES.values():
        assert said.startswith("{field}") and said.endswith(".")
        assert said.count("{field}") == 1
