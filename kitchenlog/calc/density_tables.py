"""The shipped rows for density.py; the phone has the same constants in tables/density.ts."""

from kitchenlog.calc.density import DensityRow, SpreadRow
from kitchenlog.calc.table_rows import rows_of

DENSITY_ROWS = tuple(DensityRow(**row) for row in rows_of("density"))
SPREAD_ROWS = tuple(SpreadRow(**row) for row in rows_of("density_spread"))
