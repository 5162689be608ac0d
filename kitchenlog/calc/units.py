"""Units: what each code measures, how much it is in its base unit, and how to change units.

Base units are g, mL and pc. Mass is never changed into volume here: that takes a density.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from types import MappingProxyType
from typing import Literal, cast

from kitchenlog.calc.numbers import divided, parse_decimal, product, rounded
from kitchenlog.calc.table_rows import rows_of

Dimension = Literal["mass", "volume", "count", "temperature"]

BASE_UNITS: Mapping[str, str] = MappingProxyType({"mass": "g", "volume": "mL", "count": "pc"})


@dataclass(frozen=True, kw_only=True)
class Unit:
    """One row of tables/units.csv; `in_base` is None for temperatures: they are no factors."""

    code: str
    name: str
    dimension: Dimension
    system: str
    in_base: Decimal | None
    source: str
    basis: str


def _units() -> Mapping[str, Unit]:
    return MappingProxyType({row["code"]: _unit(row) for row in rows_of("units")})


def _unit(row: dict[str, str]) -> Unit:
    factor = row["value_in_base_unit"]
    return Unit(
        code=row["code"],
        name=row["name"],
        dimension=cast(Dimension, row["quantity"]),  # the table holds these four words only
        system=row["system"],
        in_base=parse_decimal(factor) if factor else None,
        source=row["source"],
        basis=row["basis"],
    )


UNITS = _units()


def is_unit(code: str) -> bool:
    """Whether the table knows this code; "cup", "oz." and "ML" are not codes."""
    return code in UNITS


def dimension_of(code: str) -> Dimension:
    """mass, volume, count or temperature. Raises ValueError for an unknown code."""
    return _known(code).dimension


def base_unit_of(code: str) -> str:
    """The unit in which sheets keep amounts of this dimension: g, mL or pc.

    Raises ValueError for a temperature, of which there are no amounts.
    """
    dimension = dimension_of(code)
    if dimension not in BASE_UNITS:
        raise ValueError(f"{code} is not an amount")
    return BASE_UNITS[dimension]


def in_base(amount: Decimal, code: str) -> Decimal:
    """The exact amount in g, mL or pc. Raises ValueError for a temperature or unknown code."""
    return product(amount, _factor(code))


def from_base(amount: Decimal, code: str, places: int) -> Decimal:
    """An amount of g, mL or pc in this unit, rounded once, ties to even."""
    return divided(amount, _factor(code), places)


def converted(amount: Decimal, from_code: str, to_code: str, places: int) -> Decimal:
    """An amount in another unit of the same dimension, rounded once, ties to even.

    Raises ValueError when the dimensions differ: see density.py for mass and volume.
    """
    if dimension_of(from_code) != dimension_of(to_code):
        raise ValueError(f"{from_code} and {to_code} measure different things")
    return from_base(in_base(amount, from_code), to_code, places)


def label_metric(amount: Decimal) -> Decimal:
    """g or mL as a US nutrition label prints them: from 5 whole, from 2 to 5 by halves, below
    2 by tenths. 21 CFR 101.9(b)(7)(ii), read; where a tie goes it does not say: to even."""
    if amount >= 5:
        return rounded(amount, 0)
    if amount >= 2:
        return product(rounded(product(amount, Decimal(2)), 0), Decimal("0.5"))
    return rounded(amount, 1)


def _known(code: str) -> Unit:
    if code not in UNITS:
        raise ValueError(f"unknown unit: {code!r}")
    return UNITS[code]


def _factor(code: str) -> Decimal:
    factor = _known(code).in_base
    if factor is None:
        raise ValueError(f"{code} is not an amount")
    return factor
