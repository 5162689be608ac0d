"""A refractometer's degrees Brix at another temperature than 20 degC.

Between printed rows of one table a straight line, never between two tables, and never by a row
that was recalled and not read: then the answer is that it cannot be corrected. Cooling the
sample to 20 degC is better than any correction.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.bench_tables import BRIX_ROWS, BrixRow
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import (
    ONE,
    ZERO,
    difference,
    divided,
    parse_decimal,
    product,
    total,
)

Answer = Literal["corrected", "cannot_correct"]

CORRECTION_PLACES = 2  # as printed
TABLES = ("oiv", "gost", "extrapolated")  # of equal gaps the first counts
_EVERY_TABLE = "all"  # how the rows of the reference temperature are named


@dataclass(frozen=True, kw_only=True)
class BrixCorrection:
    """Percent at 20 degC and what was added for it, or that it cannot be told. `tolerance` is
    how far the correction may be off; `table` names the printed one."""

    answer: Answer
    percent: Decimal | None
    correction: Decimal | None
    tolerance: Decimal | None
    table: str | None
    cited: tuple[Cited, ...]


@dataclass(frozen=True, kw_only=True)
class _Weights:
    """The printed places around one: each with its weight, and what the weights add up to."""

    near: tuple[tuple[Decimal, Decimal], ...]
    span: Decimal


@dataclass(frozen=True, kw_only=True)
class _Weighted:
    """A correction summed up with weights, still to be divided by their sum."""

    over: Decimal
    under: Decimal
    used: tuple[BrixRow, ...]


_UNKNOWN = BrixCorrection(
    answer="cannot_correct",
    percent=None,
    correction=None,
    tolerance=None,
    table=None,
    cited=(),
)


def brix_correction(
    measured_percent: Decimal, celsius: Decimal, *, table: str | None = None
) -> BrixCorrection:
    """The percent a refractometer would show at 20 degC: measured plus correction.

    `table` keeps one instrument to one table (oiv, gost, extrapolated); without it the one
    whose rows lie nearest answers. OIV-MA-AS2-02 Table I and GOST annex A, read.
    """
    answers = [
        found
        for name in TABLES
        if table in (None, name)
        and (found := _by_table(name, measured_percent, celsius)) is not None
    ]
    if not answers:
        return _UNKNOWN
    return min(answers, key=lambda each: each[0])[1]


def _by_table(
    name: str, percent: Decimal, celsius: Decimal
) -> tuple[Decimal, BrixCorrection] | None:
    """The answer of one table and how far its temperatures lie apart around this one."""
    rows = [row for row in BRIX_ROWS if _counts(row, name)]
    across = _weights_at(celsius, [_celsius_of(row) for row in rows])
    if across is None:
        return None
    summed = _Weighted(over=ZERO, under=ONE, used=())
    for place, weight in across.near:
        along = _along_percents([row for row in rows if _celsius_of(row) == place], percent)
        if along is None:
            return None
        summed = _added(summed, along, weight)
    under = product(across.span, summed.under)
    correction = divided(summed.over, under, CORRECTION_PLACES)
    return across.span, _corrected(percent, correction, name, summed.used)


def _counts(row: BrixRow, name: str) -> bool:
    return row.scale in (name, _EVERY_TABLE) and row.basis != "memory"


def _celsius_of(row: BrixRow) -> Decimal:
    return parse_decimal(row.temp_C)


def _weights_at(at: Decimal, places: Sequence[Decimal]) -> _Weights | None:
    """The printed places around this one; None outside. At a place itself it stands alone."""
    below = max((place for place in places if place <= at), default=None)
    above = min((place for place in places if place >= at), default=None)
    if below is None or above is None:
        return None
    if below == above:
        return _Weights(near=((below, ONE),), span=ONE)
    near = ((below, difference(above, at)), (above, difference(at, below)))
    return _Weights(near=near, span=difference(above, below))


def _along_percents(rows: Sequence[BrixRow], percent: Decimal) -> _Weighted | None:
    """The correction of one temperature, on a straight line between its printed percents."""
    by_percent = {parse_decimal(row.measured_percent): row for row in rows}
    along = _weights_at(percent, list(by_percent))
    if along is None:
        return None
    used = tuple(by_percent[place] for place, _ in along.near)
    over = total(
        product(parse_decimal(by_percent[place].correction_percent), weight)
        for place, weight in along.near
    )
    return _Weighted(over=over, under=along.span, used=used)


def _added(a: _Weighted, b: _Weighted, weight: Decimal) -> _Weighted:
    """a + weight x b over one under: percents may lie further apart at one temperature."""
    return _Weighted(
        over=total([product(a.over, b.under), product(product(b.over, weight), a.under)]),
        under=product(a.under, b.under),
        used=(*a.used, *b.used),
    )


def _corrected(
    percent: Decimal, correction: Decimal, name: str, used: Sequence[BrixRow]
) -> BrixCorrection:
    cited = [
        Cited(what="brix", source=row.source, basis=row.basis, note=row.note) for row in used
    ]
    return BrixCorrection(
        answer="corrected",
        percent=total([percent, correction]),
        correction=correction,
        tolerance=max(parse_decimal(row.tolerance) for row in used),
        table=name,
        cited=tuple(dict.fromkeys(cited)),
    )
