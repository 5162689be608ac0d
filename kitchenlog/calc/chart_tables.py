"""The shipped constants for charts.py; the phone has the same in tables/charts.ts."""

from dataclasses import dataclass

from kitchenlog.calc.table_rows import rows_of


@dataclass(frozen=True, kw_only=True)
class ChartRow:
    """Constants for subgroups of n readings: d2 (mean range over sigma), A2 (limits of means),
    D3 and D4 (limits of ranges) and E2 (limits of single values)."""

    n: int
    d2: float
    a2: float
    d3_low: float
    d4_high: float
    e2: float


def _rows() -> tuple[ChartRow, ...]:
    return tuple(
        ChartRow(
            n=int(row["n"]),
            d2=float(row["d2"]),
            a2=float(row["A2"]),
            d3_low=float(row["D3"]),
            d4_high=float(row["D4"]),
            e2=float(row["E2"]),
        )
        for row in rows_of("control_chart_constants")
    )


CHART_ROWS = _rows()
