"""Mass and volume: a density belongs to an ingredient, its packing and the portion weighed.

Rows come from tables/density.csv (USDA grams per household portion; that its cups and spoons
are the US customary ones is our assumption) and tables/density_spread.csv. They are passed
in, because a phone loads them only when they are needed.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.numbers import (
    difference,
    divided,
    parse_decimal,
    product,
    rounded,
    total,
)
from kitchenlog.calc.units import Dimension, dimension_of, in_base

# How USDA says that nobody wrote down whether it was sifted, packed or shaken.
UNSTATED = ("", "as measured", "as measured (method not stated)")
SPREAD_PLACES = 6  # densities in g/mL while low and high are compared
SD_COVERAGE = Decimal(2)  # two standard deviations, about 95 %: JCGM 100:2008 6.3.3


@dataclass(frozen=True, kw_only=True)
class DensityRow:
    """One published portion: what it weighed. Numbers are kept as printed."""

    ingredient: str
    packing: str
    portion: str
    portion_amount: str
    portion_unit: str
    mass_g: str
    density_g_per_mL: str  # noqa: N815  the unit is mL
    samples: str
    sd_g: str
    source: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class SpreadRow:
    """One published range; `of` names the ingredients of the density table it holds for."""

    ingredient: str
    of: str
    state_low: str
    low_g: str
    state_high: str
    high_g: str
    per_amount: str
    per_unit: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class Spread:
    """Between which densities the published figures lie, and who published them."""

    low_g_per_mL: Decimal  # noqa: N815  the unit is mL
    high_g_per_mL: Decimal  # noqa: N815
    sources: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class Converted:
    """An amount changed by a density; low and high are None when no spread is published."""

    amount: Decimal
    unit: str
    low: Decimal | None
    high: Decimal | None
    spread_sources: tuple[str, ...]
    source: str
    basis: str
    portion: str


def best_density(
    rows: Sequence[DensityRow], ingredient: str, packing: str
) -> DensityRow | None:
    """The row to convert with: of this ingredient and packing the largest published portion,
    since small ones are rounded hardest. None when nobody published one."""
    of_this = [r for r in rows if r.ingredient == ingredient and r.packing == packing]
    if not of_this:
        return None
    return max(of_this, key=_portion_volume)  # the first of equals


def spread_of(
    row: DensityRow, rows: Sequence[DensityRow], ranges: Sequence[SpreadRow]
) -> Spread | None:
    """How far published figures for this ingredient lie apart.

    With a stated packing only rows of that packing count; ranges given in g/mL count always,
    those between two packings only when the packing is unstated. None: only one is known.
    """
    alike = [r for r in rows if r.ingredient == row.ingredient and _counts_beside(r, row)]
    published = [r for r in ranges if _names(r, row) and _range_holds(r, row)]
    low_high = [_row_range(r) for r in alike] + [_published_range(r) for r in published]
    low = min(pair[0] for pair in low_high)
    high = max(pair[1] for pair in low_high)
    if low == high:
        return None
    sources = sorted({r.source for r in alike} | {r.source for r in published})
    return Spread(low_g_per_mL=low, high_g_per_mL=high, sources=tuple(sources))


def mass_of_volume(
    amount: Decimal, unit: str, row: DensityRow, spread: Spread | None, *, places: int
) -> Converted:
    """Grams of a volume: the portion's grams over the portion's exact millilitres.

    Raises ValueError when the unit is not one of volume; the caller asks dimension_of first.
    """
    volume = _amount_of("volume", amount, unit)
    mass = divided(product(volume, parse_decimal(row.mass_g)), _portion_volume(row), places)
    low_high = None
    if spread is not None:
        low_high = (
            rounded(product(volume, spread.low_g_per_mL), places),
            rounded(product(volume, spread.high_g_per_mL), places),
        )
    return _converted(mass, "g", low_high, row, spread)


def volume_of_mass(
    amount: Decimal, unit: str, row: DensityRow, spread: Spread | None, *, places: int
) -> Converted:
    """Millilitres of a mass; the denser it lies, the less room it takes.

    Raises ValueError when the unit is not one of mass.
    """
    mass = _amount_of("mass", amount, unit)
    room = divided(product(mass, _portion_volume(row)), parse_decimal(row.mass_g), places)
    low_high = None
    if spread is not None:
        low_high = (
            divided(mass, spread.high_g_per_mL, places),
            divided(mass, spread.low_g_per_mL, places),
        )
    return _converted(room, "mL", low_high, row, spread)


def _amount_of(dimension: Dimension, amount: Decimal, unit: str) -> Decimal:
    if dimension_of(unit) != dimension:
        raise ValueError(f"{unit} is no unit of {dimension}")
    return in_base(amount, unit)


def _portion_volume(row: DensityRow) -> Decimal:
    """Exact mL of the portion that was weighed."""
    return in_base(parse_decimal(row.portion_amount), row.portion_unit)


def _counts_beside(other: DensityRow, row: DensityRow) -> bool:
    return row.packing in UNSTATED or other.packing == row.packing


def _names(published: SpreadRow, row: DensityRow) -> bool:
    return row.ingredient in published.of.split(";")


def _range_holds(published: SpreadRow, row: DensityRow) -> bool:
    return published.per_unit == "mL" or row.packing in UNSTATED


def _row_range(row: DensityRow) -> tuple[Decimal, Decimal]:
    """g/mL from two standard deviations below to two above; without one, the figure itself."""
    mass, volume = parse_decimal(row.mass_g), _portion_volume(row)
    around = product(parse_decimal(row.sd_g), SD_COVERAGE) if row.sd_g else Decimal(0)
    return (
        divided(difference(mass, around), volume, SPREAD_PLACES),
        divided(total([mass, around]), volume, SPREAD_PLACES),
    )


def _published_range(published: SpreadRow) -> tuple[Decimal, Decimal]:
    volume = in_base(parse_decimal(published.per_amount), published.per_unit)
    return (
        divided(parse_decimal(published.low_g), volume, SPREAD_PLACES),
        divided(parse_decimal(published.high_g), volume, SPREAD_PLACES),
    )


def _converted(
    amount: Decimal,
    unit: str,
    low_high: tuple[Decimal, Decimal] | None,
    row: DensityRow,
    spread: Spread | None,
) -> Converted:
    return Converted(
        amount=amount,
        unit=unit,
        low=None if low_high is None else low_high[0],
        high=None if low_high is None else low_high[1],
        spread_sources=() if spread is None else spread.sources,
        source=row.source,
        basis=row.basis,
        portion=row.portion,
    )
