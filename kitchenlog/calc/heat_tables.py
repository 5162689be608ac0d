"""The shipped rows for lethality.py, cooling.py, holding.py and process_limits.py.

The phone has the same constants in tables/heat.ts. Numbers are kept as printed; an empty text
means that the table says nothing, never zero.
"""

import csv
from dataclasses import dataclass
from importlib.resources import files
from typing import TypeVar


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


_Row = TypeVar("_Row", LethalRow, DecimalReductionRow, CoolingRow, ProcessLimitRow)


def _rows(name: str, row: type[_Row]) -> tuple[_Row, ...]:
    table = files("kitchenlog.calc").joinpath(f"tables/{name}.csv").read_text(encoding="utf-8")
    return tuple(row(**each) for each in csv.DictReader(table.splitlines()))


LETHAL_ROWS = _rows("lethal_references", LethalRow)
DECIMAL_REDUCTION_ROWS = _rows("d_z_values", DecimalReductionRow)
COOLING_ROWS = _rows("cooling_rule", CoolingRow)
PROCESS_LIMIT_ROWS = _rows("process_limits", ProcessLimitRow)
