"""Yields: what is left of what was bought, published, measured here, and stage by stage.

A yield belongs to a state in, a state out and a source: figures for one item differ by far more
than a scale's error. Published rows are passed in, for a phone loads them only when needed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from kitchenlog.calc.balance import PERCENT_PLACES, group_percent, percent_of
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import HUNDRED, ZERO, divided, parse_decimal, product, total
from kitchenlog.calc.yield_tables import YieldRow

OWN_PREPARATIONS_MIN = 5  # from so many on the group's own yield is proposed; own proposal


@dataclass(frozen=True, kw_only=True)
class PublishedYield:
    """A printed yield in percent of the mass as bought; above 100 for what swells."""

    percent: Decimal
    state_in: str
    state_out: str
    cited: tuple[Cited, ...]


@dataclass(frozen=True, kw_only=True)
class OwnYield:
    """What this kitchen got: sum of edible over sum of bought, and the single preparations
    furthest apart. None while nothing can be counted."""

    percent: Decimal | None
    lowest: Decimal | None
    highest: Decimal | None
    counted: int
    left_out: int
    is_enough: bool


@dataclass(frozen=True, kw_only=True)
class Stage:
    """One stage of work: what was added before it and what came out of it, in one unit."""

    added: Decimal
    out: Decimal | None


@dataclass(frozen=True, kw_only=True)
class StageYields:
    """Three figures that are all called yield: name the whole. `multiplied` is the product of
    the stages and a yield of nothing where something was added on the way."""

    stages: tuple[Decimal | None, ...]
    per_raw: Decimal | None
    per_all_inputs: Decimal | None
    multiplied: Decimal | None
    has_additions: bool


def yields_named(rows: Sequence[YieldRow], words: str) -> tuple[YieldRow, ...]:
    """The rows whose item has all these words, in the order of the table; of no word none."""
    wanted = words.lower().split()
    if not wanted:
        return ()
    return tuple(row for row in rows if all(word in row.item.lower() for word in wanted))


def published_yield(row: YieldRow) -> PublishedYield:
    """A row of the table in percent, with its states, source and basis."""
    cited = Cited(what="yield", source=row.source, basis=row.basis, note=row.note)
    return PublishedYield(
        percent=product(parse_decimal(row.yield_fraction), HUNDRED),
        state_in=row.state_in,
        state_out=row.state_out,
        cited=(cited,),
    )


def own_yield(preparations: Sequence[tuple[Decimal | None, Decimal | None]]) -> OwnYield:
    """The kitchen's own yield from (edible, bought) pairs of one state in and out.

    A pair with a missing figure is left out and counted as such; never the mean of percents.
    """
    group = group_percent(preparations, PERCENT_PLACES)
    singles = [
        percent
        for edible, bought in preparations
        if (percent := percent_of(edible, bought)) is not None
    ]
    return OwnYield(
        percent=group.percent,
        lowest=min(singles, default=None),
        highest=max(singles, default=None),
        counted=group.counted,
        left_out=group.left_out,
        is_enough=group.counted >= OWN_PREPARATIONS_MIN,
    )


def proposed_yield(in_use: Decimal | None, own: OwnYield) -> Decimal | None:
    """The own yield to offer in place of the one in use; None before five preparations and
    where both agree. Somebody accepts it: nothing changes by itself."""
    if not own.is_enough or own.percent is None or own.percent == in_use:
        return None
    return own.percent


def to_buy(edible: Decimal, *, yield_percent: Decimal, step: Decimal) -> Decimal:
    """What to buy, rounded up to whole steps of how it is sold: 2 lb at 61 % in half pounds is
    3.5 lb. Raises ValueError unless yield and step are above 0 and edible is not below it."""
    if yield_percent <= 0 or step <= 0 or edible < 0:
        raise ValueError("a yield and a step are more than nothing")
    exact = Fraction(product(edible, HUNDRED)) / Fraction(product(yield_percent, step))
    return product(Decimal(math.ceil(exact)), step)


def stage_yields(raw: Decimal, stages: Sequence[Stage]) -> StageYields:
    """The yield of each stage with all that went into it, and the whole road's in three ways.

    Each stage takes what the one before gave. After an outcome that was not weighed the rest
    is None, not 0.
    """
    before: Decimal | None = raw
    each: list[Decimal | None] = []
    ratio: Fraction | None = Fraction(1)
    for stage in stages:
        put_in = None if before is None else total([before, stage.added])
        each.append(percent_of(stage.out, put_in))
        ratio = _times(ratio, stage.out, put_in)
        before = stage.out if put_in is not None else None
    added = total(stage.added for stage in stages)
    return StageYields(
        stages=tuple(each),
        per_raw=percent_of(before, raw),
        per_all_inputs=percent_of(before, total([raw, added])),
        multiplied=_percent(ratio),
        has_additions=any(stage.added != ZERO for stage in stages),
    )


def _times(
    ratio: Fraction | None, out: Decimal | None, put_in: Decimal | None
) -> Fraction | None:
    if ratio is None or out is None or not put_in:
        return None
    return ratio * Fraction(out) / Fraction(put_in)


def _percent(ratio: Fraction | None) -> Decimal | None:
    if ratio is None:
        return None
    over, under = Decimal(ratio.numerator * 100), Decimal(ratio.denominator)
    return divided(over, under, PERCENT_PLACES)
