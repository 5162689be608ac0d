"""Many rows into one table at once, without a model object for each.

A push is mostly inserting: Django's bulk_create spends several times as long on objects and SQL
text as the database does on the rows, and on SQLite it splits a push into many statements.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from datetime import datetime
from functools import lru_cache
from typing import Any
from uuid import UUID

from django.db import DEFAULT_DB_ALIAS, connection, connections, models


def insert_rows(
    model: type[models.Model],
    columns: tuple[str, ...],
    rows: Iterable[Sequence[Any]],
    *,
    overwrite: tuple[str, ...] = (),
) -> None:
    """Insert rows of values, in the order of `columns`.

    `overwrite` names columns to write anew where a row with this key is there already; without
    it that is an error.
    """
    values = _as_stored(rows)
    if values:
        with connection.cursor() as cursor:
            cursor.executemany(_statement(model, columns, overwrite), values)


def _as_stored(rows: Iterable[Sequence[Any]]) -> list[Sequence[Any]]:
    """SQLite keeps a UUID as 32 digits and a time as text; PostgreSQL knows both."""
    database = connections[DEFAULT_DB_ALIAS]
    if database.features.has_native_uuid_field:
        return list(rows)
    time_text = database.ops.adapt_datetimefield_value
    return [
        [
            value.hex
            if isinstance(value, UUID)
            else time_text(value)
            if isinstance(value, datetime)
            else value
            for value in row
        ]
        for row in rows
    ]


@lru_cache
def _statement(
    model: type[models.Model], columns: tuple[str, ...], overwrite: tuple[str, ...]
) -> str:
    names = ", ".join(map(_column(model), columns))
    marks = ", ".join(["%s"] * len(columns))
    table = connection.ops.quote_name(model._meta.db_table)
    statement = f"INSERT INTO {table} ({names}) VALUES ({marks})"  # noqa: S608 our own names
    if not overwrite:
        return statement
    key = ", ".join(connection.ops.quote_name(f.column) for f in model._meta.pk_fields)
    changes = ", ".join(f"{name} = excluded.{name}" for name in map(_column(model), overwrite))
    return f"{statement} ON CONFLICT ({key}) DO UPDATE SET {changes}"


def _column(model: type[models.Model]) -> Callable[[str], str]:
    """Quoted column names by field names."""
    columns = {field.name: field.column for field in model._meta.concrete_fields}
    return lambda name: connection.ops.quote_name(columns[name])
