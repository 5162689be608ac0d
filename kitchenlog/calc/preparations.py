"""Preparations: what was bought and what was left of it, from the sheets of batches."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from kitchenlog.calc.bodies import Body, decimal_in, items_in, object_in, text_in


def preparations_of(
    batches: Sequence[Body], *, material: str, recipe: str, prepared_as: str | None
) -> list[tuple[Decimal | None, Decimal | None]]:
    """(edible, bought) in g of every batch that weighed this material in and again prepared.

    `batches` are batch sheets. A yield belongs to its state out: counted are batches of this
    recipe, and of others those that prepare it as the same thing, in the same words. What went
    in as prepared already, or was never weighed again, says nothing of a yield.
    """
    return [
        (decimal_in(line, "prepared"), decimal_in(line, "in_base"))
        for batch in batches
        for line in items_in(batch, "lines")
        if text_in(line, "material") == material
        and _is_prepared_here(line)
        and (text_in(batch, "recipe") == recipe or _is_same_state(line, prepared_as))
    ]


def _is_prepared_here(line: Body) -> bool:
    return (
        text_in(line, "state") != "prepared"
        and text_in(line, "unit") == "g"
        and decimal_in(line, "prepared") is not None
    )


def _is_same_state(line: Body, prepared_as: str | None) -> bool:
    said = text_in(object_in(line, "yields") or {}, "prepared_as")
    return prepared_as is not None and said == prepared_as
