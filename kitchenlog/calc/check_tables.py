"""The shipped rows for limits.py, water.py and thermometer_checks.py, with source and basis.

The phone has the same constants in tables/checks.ts. Numbers are kept as printed; an empty text
means that the table says nothing, never zero.
"""

from dataclasses import dataclass

from kitchenlog.calc.table_rows import rows_of, typed_rows


@dataclass(frozen=True, kw_only=True)
class WaterRow:
    """IAPWS-95 density of hot water, where the formula for 0 to 40 degC does not hold."""

    temp_C: str  # noqa: N815  the unit is degC
    iapws95_kg_per_m3: str
    source: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class ScaleErrorRow:
    """One band of load, in e: above `load_over_e` up to and with `load_up_to_e`."""

    accuracy_class: str
    load_over_e: str
    load_up_to_e: str
    mpe_initial_in_e: str
    mpe_in_service_in_e: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class ScaleClassRow:
    """Between how many divisions of which size a class of scale lies."""

    accuracy_class: str
    e_from_g: str
    e_to_g: str
    n_min: str
    n_max: str
    source: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class WeightRow:
    """Plus or minus how many mg a weight of each class may be off."""

    nominal_g: str
    F1_mg: str
    F2_mg: str
    M1_mg: str
    M2_mg: str
    M3_mg: str
    source: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class CylinderRow:
    """Plus or minus how many mL a cylinder of class A or B may be off."""

    capacity_mL: str  # noqa: N815  the unit is mL
    class_A_pm_mL: str  # noqa: N815
    class_B_pm_mL: str  # noqa: N815
    source: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class MeasureRow:
    """Plus or minus how many percent of each graduation a household measure may be off."""

    device: str
    tolerance_percent_pm: str
    source: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class BoilingRow:
    """Where water boils at an altitude, and the air pressure that belongs to it."""

    altitude_ft: str
    boiling_point_C: str  # noqa: N815  the unit is degC
    pressure_hPa: str  # noqa: N815
    source: str
    basis: str


HOT_WATER_ROWS = typed_rows(
    WaterRow, (row for row in rows_of("water_density") if not row["tanaka_kg_per_m3"])
)
SCALE_ERROR_ROWS = typed_rows(ScaleErrorRow, rows_of("r76_mpe"))
SCALE_CLASS_ROWS = typed_rows(ScaleClassRow, rows_of("r76_class_limits"))
WEIGHT_ROWS = typed_rows(WeightRow, rows_of("r111_m1"))
CYLINDER_ROWS = typed_rows(CylinderRow, rows_of("graduated_cylinder_tolerance"))
# Rows without a figure say which codes do not hold for kitchen measures: for people to read.
MEASURE_ROWS = typed_rows(
    MeasureRow,
    (row for row in rows_of("household_measure_tolerance") if row["tolerance_percent_pm"]),
)
BOILING_ROWS = typed_rows(BoilingRow, rows_of("boiling_point"))
