"""Writes the phone's tables: `python -m kitchenlog.calc.export_tables [--check]`."""

import json
import sys
from collections.abc import Iterable, Mapping
from dataclasses import asdict
from pathlib import Path

from kitchenlog.calc.chart_tables import CHART_ROWS
from kitchenlog.calc.density_tables import DENSITY_ROWS, SPREAD_ROWS
from kitchenlog.calc.gauge_tables import GAUGE_ROWS
from kitchenlog.calc.numbers import written
from kitchenlog.calc.units import UNITS

PHONE_TABLES = Path(__file__).parents[2] / "frontend" / "src" / "calc" / "tables"

_HEAD = "// Written by `python -m kitchenlog.calc.export_tables`; do not edit.\n"

_UNITS_HEAD = """
export type Dimension = "mass" | "volume" | "count" | "temperature";

export interface UnitRow {
  readonly code: string;
  readonly dimension: Dimension;
  /** Exact decimal; null for temperatures, which are not factors. Sources: units.csv. */
  readonly in_base: string | null;
}

export const UNIT_ROWS: readonly UnitRow[] = [
"""

_DENSITY_HEAD = """
import type { DensityRow, SpreadRow } from "../density.ts";

export const DENSITY_ROWS: readonly DensityRow[] = [
"""

_SPREAD_HEAD = """];

export const SPREAD_ROWS: readonly SpreadRow[] = [
"""

_CHARTS_HEAD = """
/** Constants for subgroups of n readings. Sources: control_chart_constants.csv. */
export interface ChartRow {
  readonly n: number;
  readonly d2: number;
  readonly a2: number;
  readonly d3_low: number;
  readonly d4_high: number;
  readonly e2: number;
}

export const CHART_ROWS: readonly ChartRow[] = [
"""

_GAUGE_HEAD = """
/** Constants for n trials, people and items. Sources: gauge_study_constants.csv. */
export interface GaugeRow {
  readonly n: number;
  readonly k1: number;
  readonly k2: number;
  readonly k3: number;
}

export const GAUGE_ROWS: readonly GaugeRow[] = [
"""


def main(arguments: list[str]) -> int:
    """Write the files, or with --check say which differ; 1 if any does."""
    texts = {
        "units.ts": _units_text(),
        "density.ts": _density_text(),
        "charts.ts": _constants_text(_CHARTS_HEAD, map(asdict, CHART_ROWS)),
        "gauge.ts": _constants_text(_GAUGE_HEAD, map(asdict, GAUGE_ROWS)),
    }
    if arguments == ["--check"]:
        stale = [name for name, text in texts.items() if _stored(name) != text]
        for name in stale:
            sys.stderr.write(f"{PHONE_TABLES.name}/{name} differs: run make kinds\n")
        return 1 if stale else 0
    for name, text in texts.items():
        (PHONE_TABLES / name).write_text(text, encoding="utf-8", newline="\n")
    return 0


def _units_text() -> str:
    """The TypeScript table of units."""
    rows = (
        {
            "code": unit.code,
            "dimension": unit.dimension,
            "in_base": None if unit.in_base is None else written(unit.in_base),
        }
        for unit in UNITS.values()
    )
    return f"{_HEAD}{_UNITS_HEAD}{_lines(rows)}];\n"


def _density_text() -> str:
    """The TypeScript table of densities and spreads, a chunk of its own on the phone."""
    rows, spreads = map(asdict, DENSITY_ROWS), map(asdict, SPREAD_ROWS)
    return f"{_HEAD}{_DENSITY_HEAD}{_lines(rows)}{_SPREAD_HEAD}{_lines(spreads)}];\n"


def _constants_text(head: str, rows: Iterable[Mapping[str, float]]) -> str:
    """A TypeScript table of numbers by size."""
    return f"{_HEAD}{head}{_lines(rows)}];\n"


def _lines(rows: Iterable[Mapping[str, float | str | None]]) -> str:
    return "".join(f"  {json.dumps(row, ensure_ascii=False)},\n" for row in rows)


def _stored(name: str) -> str:
    path = PHONE_TABLES / name
    return path.read_text(encoding="utf-8") if path.exists() else ""


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
