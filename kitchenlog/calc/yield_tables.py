"""The shipped rows for yields.py; the phone has the same constants in tables/yields.ts."""

import csv
from dataclasses import dataclass
from importlib.resources import files


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


def _rows() -> list[dict[str, str]]:
    table = files("kitchenlog.calc").joinpath("tables/yields_usda.csv")
    return list(csv.DictReader(table.read_text(encoding="utf-8").splitlines()))


YIELD_ROWS = tuple(YieldRow(**row) for row in _rows())
