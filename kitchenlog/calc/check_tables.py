"""The shipped rows for limits.py, water.py and thermometer_checks.py, with source and basis.

The phone has the same constants in tables/checks.ts. Numbers are kept as printed; an empty text
means that the table says nothing, never zero.
"""

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.resources import files


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


def _rows(name: str) -> list[dict[str, str]]:
    table = files("kitchenlog.calc").joinpath(f"tables/{name}.csv").read_text(encoding="utf-8")
    return list(csv.DictReader(table.splitlines()))


def _picked(row: dict[str, str], columns: Mapping[str, object]) -> dict[str, str]:
    """The columns a type of row has; "class" is no name in Python or TypeScript."""
    named = {**row, "accuracy_class": row.get("class", "")}
    return {name: named[name] for name in columns}


HOT_WATER_ROWS = tuple(
    WaterRow(**_picked(row, WaterRow.__dataclass_fields__))
    for row in _rows("water_density")
    if not row["tanaka_kg_per_m3"]
)
SCALE_ERROR_ROWS = tuple(
    ScaleErrorRow(**_picked(row, ScaleErrorRow.__dataclass_fields__))
    for row in _rows("r76_mpe")
)
SCALE_CLASS_ROWS = tuple(
    ScaleClassRow(**_picked(row, ScaleClassRow.__dataclass_fields__))
    for row in _rows("r76_class_limits")
)
WEIGHT_ROWS = tuple(
    WeightRow(**_picked(row, WeightRow.__dataclass_fields__)) for row in _rows("r111_m1")
)
CYLINDER_ROWS = tuple(
    CylinderRow(**_picked(row, CylinderRow.__dataclass_fields__))
    for row in _rows("graduated_cylinder_tolerance")
)
# Rows without a figure say which codes do not hold for kitchen measures: for people to read.
MEASURE_ROWS = tuple(
    MeasureRow(**_picked(row, MeasureRow.__dataclass_fields__))
    for row in _rows("household_measure_tolerance")
    if row["tolerance_percent_pm"]
)
BOILING_ROWS = tuple(
    BoilingRow(**_picked(row, BoilingRow.__dataclass_fields__))
    for row in _rows("boiling_point")
)
