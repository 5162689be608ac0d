"""The shipped constants for people.py; the phone has the same in tables/gauge.ts."""

from dataclasses import dataclass

from kitchenlog.calc.table_rows import rows_of


@dataclass(frozen=True, kw_only=True)
class GaugeRow:
    """Constants for n trials (k1), n people (k2) and n items (k3) of a study."""

    n: int
    k1: float
    k2: float
    k3: float


def _rows() -> tuple[GaugeRow, ...]:
    return tuple(
        GaugeRow(n=int(row["n"]), k1=float(row["K1"]), k2=float(row["K2"]), k3=float(row["K3"]))
        for row in rows_of("gauge_study_constants")
    )


GAUGE_ROWS = _rows()
