"""The shipped rows for checks at the bench, each with source and basis: refractometer,
salometer, titration, curing, altitude and the hold of acidified food.

The phone has the same constants in tables/bench.ts. Numbers are kept as printed; an empty text
means that the table says nothing, never zero.
"""

from dataclasses import dataclass

from kitchenlog.calc.table_rows import rows_of, typed_rows


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


BRIX_ROWS = typed_rows(BrixRow, rows_of("brix_temp_correction"))
SALOMETER_ROWS = typed_rows(SalometerRow, rows_of("salometer_scales"))
ACID_ROWS = typed_rows(AcidRow, rows_of("acids"))
CURE_ROWS = typed_rows(CureRow, rows_of("cure_limits"))
CANNER_ROWS = typed_rows(CannerRow, rows_of("canner_altitude"))
FIVE_LOG_ROWS = typed_rows(FiveLogRow, rows_of("acidified_5log"))
