"""The shipped rows for net_limits.py, each with source and basis.

The phone has the same constants in tables/net_content.ts. Numbers are kept as printed; an empty
text means that the table says nothing, never zero.
"""

from dataclasses import dataclass

from kitchenlog.calc.table_rows import rows_of, typed_rows


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


MAV_ROWS = typed_rows(MavRow, rows_of("mav_hb133"))
CATEGORY_A_ROWS = typed_rows(CategoryARow, rows_of("hb133_sampling_cat_a"))
SHORTAGE_ROWS = typed_rows(ShortageRow, rows_of("tne_oiml_r87"))
BATCH_PLAN_ROWS = typed_rows(BatchPlanRow, rows_of("eu_r87_sampling"))
PACK_DIVISION_ROWS = typed_rows(PackDivisionRow, rows_of("scale_interval_for_pack_eu"))
