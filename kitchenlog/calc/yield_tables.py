"""The shipped rows for yields.py; the phone has the same constants in tables/yields.ts."""

from dataclasses import dataclass

from kitchenlog.calc.table_rows import rows_of, typed_rows


@dataclass(frozen=True, kw_only=True)
class YieldRow:
    """Edible part of what was bought, as a fraction, from one state to another, as printed."""

    item: str
    state_in: str
    state_out: str
    yield_fraction: str
    loss_percent: str
    source: str
    source_year: str
    basis: str
    note: str


YIELD_ROWS = typed_rows(YieldRow, rows_of("yields_usda"))
