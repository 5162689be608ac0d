"""Writes the phone's tables: `python -m kitchenlog.calc.export_tables [--check]`."""

import json
import sys
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Any

from kitchenlog.calc import bench_tables, check_tables, heat_tables, net_tables
from kitchenlog.calc.chart_tables import CHART_ROWS
from kitchenlog.calc.density_tables import DENSITY_ROWS, SPREAD_ROWS
from kitchenlog.calc.gauge_tables import GAUGE_ROWS
from kitchenlog.calc.numbers import written
from kitchenlog.calc.units import UNITS
from kitchenlog.calc.yield_tables import YIELD_ROWS

PHONE_TABLES = Path(__file__).parents[2] / "frontend" / "src" / "calc" / "tables"

_LONG_CHARS = 30  # a text this long that comes again is worth a name
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


# Constant in TypeScript -> its rows: small tables, whose long sources are written once.
_CHECKS = {
    "HOT_WATER_ROWS": check_tables.HOT_WATER_ROWS,
    "SCALE_ERROR_ROWS": check_tables.SCALE_ERROR_ROWS,
    "SCALE_CLASS_ROWS": check_tables.SCALE_CLASS_ROWS,
    "WEIGHT_ROWS": check_tables.WEIGHT_ROWS,
    "CYLINDER_ROWS": check_tables.CYLINDER_ROWS,
    "MEASURE_ROWS": check_tables.MEASURE_ROWS,
    "BOILING_ROWS": check_tables.BOILING_ROWS,
}
_NET_CONTENT = {
    "MAV_ROWS": net_tables.MAV_ROWS,
    "CATEGORY_A_ROWS": net_tables.CATEGORY_A_ROWS,
    "SHORTAGE_ROWS": net_tables.SHORTAGE_ROWS,
    "BATCH_PLAN_ROWS": net_tables.BATCH_PLAN_ROWS,
    "PACK_DIVISION_ROWS": net_tables.PACK_DIVISION_ROWS,
}
_BENCH = {
    "BRIX_ROWS": bench_tables.BRIX_ROWS,
    "SALOMETER_ROWS": bench_tables.SALOMETER_ROWS,
    "ACID_ROWS": bench_tables.ACID_ROWS,
    "CURE_ROWS": bench_tables.CURE_ROWS,
    "CANNER_ROWS": bench_tables.CANNER_ROWS,
    "FIVE_LOG_ROWS": bench_tables.FIVE_LOG_ROWS,
}
_HEAT = {
    "LETHAL_ROWS": heat_tables.LETHAL_ROWS,
    "DECIMAL_REDUCTION_ROWS": heat_tables.DECIMAL_REDUCTION_ROWS,
    "COOLING_ROWS": heat_tables.COOLING_ROWS,
    "PROCESS_LIMIT_ROWS": heat_tables.PROCESS_LIMIT_ROWS,
}


def main(arguments: list[str]) -> int:
    """Write the files, or with --check say which differ; 1 if any does."""
    texts = {
        "units.ts": _units_text(),
        "density.ts": _density_text(),
        "charts.ts": _constants_text(_CHARTS_HEAD, map(asdict, CHART_ROWS)),
        "gauge.ts": _constants_text(_GAUGE_HEAD, map(asdict, GAUGE_ROWS)),
        "checks.ts": _small_tables_text(_CHECKS),
        "net_content.ts": _small_tables_text(_NET_CONTENT),
        "bench.ts": _small_tables_text(_BENCH),
        "yields.ts": _small_tables_text({"YIELD_ROWS": YIELD_ROWS}),
        "heat.ts": _small_tables_text(_HEAT),
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


def _small_tables_text(tables: Mapping[str, Sequence[Any]]) -> str:
    """Several TypeScript tables of dataclass rows; a text that comes again is a constant."""
    rows = [asdict(row) for table in tables.values() for row in table]
    counted = Counter(text for row in rows for text in row.values())
    shared = [text for text, count in counted.items() if count > 1 and len(text) > _LONG_CHARS]
    names = {text: f"TEXT_{number}" for number, text in enumerate(shared, start=1)}
    constants = "".join(
        f"const {name} =\n  {json.dumps(text, ensure_ascii=False)};\n"
        for text, name in names.items()
    )
    written_tables = "".join(_small_table(*table, names) for table in tables.items())
    return f"{_HEAD}\n{constants}{written_tables}"


def _small_table(name: str, rows: Sequence[Any], names: Mapping[str, str]) -> str:
    row_type = type(rows[0]).__name__
    fields = "".join(f"  readonly {field}: string;\n" for field in asdict(rows[0]))
    lines = "".join(
        "  {"
        + ", ".join(
            f"{field}: {names.get(text) or json.dumps(text, ensure_ascii=False)}"
            for field, text in asdict(row).items()
        )
        + "},\n"
        for row in rows
    )
    return (
        f"\nexport interface {row_type} {{\n{fields}}}\n"
        f"\nexport const {name}: readonly {row_type}[] = [\n{lines}];\n"
    )


def _lines(rows: Iterable[Mapping[str, float | str | None]]) -> str:
    return "".join(f"  {json.dumps(row, ensure_ascii=False)},\n" for row in rows)


def _stored(name: str) -> str:
    path = PHONE_TABLES / name
    return path.read_text(encoding="utf-8") if path.exists() else ""


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
