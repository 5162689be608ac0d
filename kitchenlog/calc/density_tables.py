"""The shipped rows for density.py; the phone has the same constants in tables/density.ts."""

from kitchenlog.calc.density import DensityRow, SpreadRow
from kitchenlog.calc.table_rows import rows_of, typed_rows

DENSITY_ROWS = typed_rows(DensityRow, rows_of("density"))
SPREAD_ROWS = typed_rows(SpreadRow, rows_of("density_spread"))
