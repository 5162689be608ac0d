"""The shipped rows for lethality.py, cooling.py, holding.py and process_limits.py.

The phone has the same constants in tables/heat.ts. Numbers are kept as printed; an empty text
means that the table says nothing, never zero.
"""

from dataclasses import dataclass

from kitchenlog.calc.table_rows import rows_of, typed_rows


@dataclass(frozen=True, kw_only=True)
class LethalRow:
    """What a sum of lethality is referred to: a rate of 1 at `t_ref`, ten-fold per `z`.

    `base` stands where the source gives the rate of one degree instead of z; `needed_min` are
    the minutes at t_ref that the source asks for.
    """

    use: str
    t_ref: str
    z: str
    unit: str
    base: str
    needed_min: str
    source: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class DecimalReductionRow:
    """Minutes at t_ref that leave a tenth of an organism in a product: examples only."""

    organism: str
    product: str
    t_ref_F: str  # noqa: N815  the unit is degF
    z_F: str  # noqa: N815
    D_min: str
    original_study: str
    source: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class CoolingRow:
    """A rule of time and temperature: from `start_C` to `end_C` within `limit_h` hours."""

    rule: str
    start: str
    start_C: str  # noqa: N815  the unit is degC
    end_C: str  # noqa: N815
    limit_h: str
    clock: str
    if_missed: str
    source: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class ProcessLimitRow:
    """A limit that is one number, or only words, and who set it."""

    key: str
    item: str
    limit: str
    unit: str
    detail: str
    rule: str
    note: str
    source: str
    basis: str


LETHAL_ROWS = typed_rows(LethalRow, rows_of("lethal_references"))
DECIMAL_REDUCTION_ROWS = typed_rows(DecimalReductionRow, rows_of("d_z_values"))
COOLING_ROWS = typed_rows(CoolingRow, rows_of("cooling_rule"))
PROCESS_LIMIT_ROWS = typed_rows(ProcessLimitRow, rows_of("process_limits"))
