"""Titratable acidity from alkali of known strength.

Percent = N x mL x equivalent weight / (10 x sample), grams in 100 mL or 100 g. Which acid it is
reckoned as must be said; it is no measure of pH.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.bench_tables import ACID_ROWS, AcidRow
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import ZERO, difference, divided, parse_decimal, product

SampleUnit = Literal["mL", "g"]

PERCENT_PLACES = 4
PER_LITRE_PLACES = 3
_TEN = Decimal(10)


@dataclass(frozen=True, kw_only=True)
class Titration:
    """What was run in: alkali of normality naoh_N, mL of it less a blank, for a sample of mL
    or of g, reckoned as one acid."""

    acid: str
    naoh_N: Decimal  # noqa: N815  normality, equivalents in a litre
    naoh_mL: Decimal  # noqa: N815  the unit is mL
    sample: Decimal
    sample_unit: SampleUnit = "mL"
    blank_mL: Decimal = ZERO  # noqa: N815


@dataclass(frozen=True, kw_only=True)
class Acidity:
    """Grams of the acid in 100 mL (or 100 g) and in a litre; None by mass."""

    acid: str
    percent: Decimal
    per_100: SampleUnit
    per_litre: Decimal | None
    cited: tuple[Cited, ...]


def titratable_acidity(titration: Titration) -> Acidity:
    """The acidity, with source and basis of the acid's equivalent weight.

    Raises ValueError for an acid without a figure, a sample or normality not above 0, and a
    blank below 0 or above what was run in.
    """
    row = _acid(titration.acid)
    run_in = difference(titration.naoh_mL, titration.blank_mL)
    if titration.sample <= ZERO or titration.naoh_N <= ZERO:
        raise ValueError("a sample and a normality are more than nothing")
    if titration.blank_mL < ZERO or run_in < ZERO:
        raise ValueError("the blank takes no more than the sample did")
    equivalents = product(titration.naoh_N, run_in)
    over = product(equivalents, parse_decimal(row.equivalent_weight_g_per_eq))
    is_volume = titration.sample_unit == "mL"
    return Acidity(
        acid=row.acid,
        percent=divided(over, product(_TEN, titration.sample), PERCENT_PLACES),
        per_100=titration.sample_unit,
        per_litre=divided(over, titration.sample, PER_LITRE_PLACES) if is_volume else None,
        cited=(
            Cited(what="equivalent_weight", source=row.source, basis=row.basis, note=row.note),
        ),
    )


def _acid(acid: str) -> AcidRow:
    for row in ACID_ROWS:
        if row.acid == acid:
            return row
    raise ValueError(f"no equivalent weight for {acid!r}")
