"""The shipped rows for density.py; the phone has the same constants in tables/density.ts."""

import csv
from importlib.resources import files

from kitchenlog.calc.density import DensityRow, SpreadRow


def _rows(name: str) -> list[dict[str, str]]:
    table = files("kitchenlog.calc").joinpath(f"tables/{name}").read_text(encoding="utf-8")
    return list(csv.DictReader(table.splitlines()))


DENSITY_ROWS = tuple(DensityRow(**row) for row in _rows("density.csv"))
SPREAD_ROWS = tuple(SpreadRow(**row) for row in _rows("density_spread.csv"))
