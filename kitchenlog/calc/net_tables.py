"""The shipped rows for net_limits.py, each with source and basis.

The phone has the same constants in tables/net_content.ts. Numbers are kept as printed; an empty
text means that the table says nothing, never zero.
"""

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.resources import files


@dataclass(frozen=True, kw_only=True)
class MavRow:
    """HB 133: labels above `label_over_...` up to and with `label_up_to_...`."""

    label_over_g: str
    label_up_to_g: str
    label_over_lb: str
    label_up_to_lb: str
    percent_of_label: str
    mav_g: str
    mav_lb: str
    mav_oz: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class CategoryARow:
    """HB 133 category A: how many of a lot are weighed and with which factor."""

    lot_from: str
    lot_to: str
    sample_size: str
    sample_correction_factor: str
    packages_allowed_over_mav: str
    initial_tare_sample: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class ShortageRow:
    """Tolerable negative error T: contents above `over_g_or_mL` up to and with the other."""

    over_g_or_mL: str  # noqa: N815  the unit is mL
    up_to_g_or_mL: str  # noqa: N815
    percent_of_Qn: str  # noqa: N815  Qn is the nominal content
    fixed_g_or_mL: str  # noqa: N815
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class BatchPlanRow:
    """One line of a sampling plan under 76/211/EEC: for defectives, for the mean, or both."""

    batch_from: str
    batch_to: str
    sample_size: str
    accept_at_most: str
    reject_at_least: str
    second_cumulative_size: str
    second_accept_at_most: str
    second_reject_at_least: str
    mean_factor: str
    rule: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class PackDivisionRow:
    """The largest division of a scale for packs of this content or more."""

    scale_division_g: str
    allowed_from_nominal_g: str
    source: str
    basis: str
    note: str


def _rows(name: str) -> list[dict[str, str]]:
    table = files("kitchenlog.calc").joinpath(f"tables/{name}.csv").read_text(encoding="utf-8")
    return list(csv.DictReader(table.splitlines()))


def _picked(row: dict[str, str], columns: Mapping[str, object]) -> dict[str, str]:
    return {name: row[name] for name in columns}


MAV_ROWS = tuple(
    MavRow(**_picked(row, MavRow.__dataclass_fields__)) for row in _rows("mav_hb133")
)
CATEGORY_A_ROWS = tuple(
    CategoryARow(**_picked(row, CategoryARow.__dataclass_fields__))
    for row in _rows("hb133_sampling_cat_a")
)
SHORTAGE_ROWS = tuple(
    ShortageRow(**_picked(row, ShortageRow.__dataclass_fields__))
    for row in _rows("tne_oiml_r87")
)
BATCH_PLAN_ROWS = tuple(
    BatchPlanRow(**_picked(row, BatchPlanRow.__dataclass_fields__))
    for row in _rows("eu_r87_sampling")
)
PACK_DIVISION_ROWS = tuple(
    PackDivisionRow(**row) for row in _rows("scale_interval_for_pack_eu")
)
