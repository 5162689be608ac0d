"""Reads the tables shipped in calc/tables, each row as the type that names its columns."""

import csv
from collections.abc import Iterable
from importlib.resources import files
from typing import TypeVar

Row = TypeVar("Row")


def rows_of(table: str) -> list[dict[str, str]]:
    """The rows of `tables/<table>.csv`, numbers as they are printed."""
    path = files("kitchenlog.calc").joinpath(f"tables/{table}.csv")
    return list(csv.DictReader(path.read_text(encoding="utf-8").splitlines()))


def typed_rows(row_type: type[Row], rows: Iterable[dict[str, str]]) -> tuple[Row, ...]:
    """Rows of a dataclass of texts; a column it does not name is for people to read.

    The column "class" is `accuracy_class` here: it is no name in Python or TypeScript.
    """
    columns = row_type.__dataclass_fields__  # type: ignore[attr-defined] # a dataclass
    named = ({**row, "accuracy_class": row.get("class", "")} for row in rows)
    return tuple(row_type(**{name: row[name] for name in columns}) for row in named)
