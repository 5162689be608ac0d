"""The published data sets beside the vectors, as tests read them."""

from __future__ import annotations

import csv
from decimal import Decimal
from pathlib import Path

from kitchenlog.calc.lines import Point

VECTORS = Path(__file__).parents[1] / "vectors"


def rows_of(name: str) -> list[dict[str, str]]:
    """The rows of tests/vectors/ex_<name>.csv; each names its source and basis."""
    with (VECTORS / f"ex_{name}.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


def column(name: str, field: str) -> list[Decimal]:
    return [Decimal(row[field]) for row in rows_of(name)]


def norris() -> list[Point]:
    pairs = zip(column("norris", "x"), column("norris", "y"), strict=True)
    return [Point(x=x, y=y) for x, y in pairs]


def gum_h3() -> list[Point]:
    readings = column("gum_h3", "reading_C")
    pairs = zip(readings, column("gum_h3", "correction_C"), strict=True)
    return [Point(x=x, y=y) for x, y in pairs]


def sirstv() -> list[list[Decimal]]:
    groups: dict[str, list[Decimal]] = {}
    for row in rows_of("sirstv"):
        groups.setdefault(row["instrument"], []).append(Decimal(row["value"]))
    return list(groups.values())


def people_study() -> list[list[list[Decimal]]]:
    people: dict[str, dict[str, list[Decimal]]] = {}
    for row in rows_of("grr"):
        items = people.setdefault(row["person"], {})
        items.setdefault(row["part"], []).append(Decimal(row["value"]))
    return [list(items.values()) for items in people.values()]


def subgroups() -> list[list[Decimal]]:
    return [[Decimal(row[f"x{i}"]) for i in range(1, 6)] for row in rows_of("xbar_r")]
