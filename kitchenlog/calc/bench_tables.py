"""The shipped rows for checks at the bench, each with source and basis: refractometer,
salometer, titration, curing, altitude and the hold of acidified food.

The phone has the same constants in tables/bench.ts. Numbers are kept as printed; an empty text
means that the table says nothing, never zero.
"""

import csv
from dataclasses import dataclass
from importlib.resources import files


@dataclass(frozen=True, kw_only=True)
class BrixRow:
    """What to add to a refractometer's percent at one temperature, and within how much that
    holds. `scale` names the printed table; 20 degC is `all`."""

    scale: str
    temp_C: str  # noqa: N815  the unit is degC
    measured_percent: str
    correction_percent: str
    tolerance: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class SalometerRow:
    """Percent of salt by mass at 100 degrees of one scale."""

    scale: str
    percent_at_100: str
    temp_C: str  # noqa: N815  the unit is degC
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class AcidRow:
    """Grams of an acid that one equivalent of alkali takes up."""

    acid: str
    equivalent_weight_g_per_eq: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class CureRow:
    """One limit of a curing agent; `holds_for` lists the uses, parted by semicolons."""

    rules: str
    substance: str
    holds_for: str
    kind: str
    limit_ppm: str
    basis_weight: str
    product_or_method: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class CannerRow:
    """One band of altitude, ends included, and what a canner needs in it."""

    canner: str
    from_ft: str
    to_ft: str
    gauge_lb_per_in2: str
    gauge_kind: str
    added_min: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class FiveLogRow:
    """Minutes at one temperature for acidified food between two pH, as published."""

    temp_F: str  # noqa: N815  the unit is degF
    temp_C: str  # noqa: N815  the unit is degC
    published_5log_min: str
    model_min: str
    pH_min: str  # noqa: N815
    pH_max: str  # noqa: N815
    source: str
    basis: str
    note: str


def _rows(name: str) -> list[dict[str, str]]:
    table = files("kitchenlog.calc").joinpath(f"tables/{name}.csv").read_text(encoding="utf-8")
    return list(csv.DictReader(table.splitlines()))


BRIX_ROWS = tuple(BrixRow(**row) for row in _rows("brix_temp_correction"))
SALOMETER_ROWS = tuple(SalometerRow(**row) for row in _rows("salometer_scales"))
ACID_ROWS = tuple(AcidRow(**row) for row in _rows("acids"))
CURE_ROWS = tuple(CureRow(**row) for row in _rows("cure_limits"))
CANNER_ROWS = tuple(CannerRow(**row) for row in _rows("canner_altitude"))
FIVE_LOG_ROWS = tuple(FiveLogRow(**row) for row in _rows("acidified_5log"))
