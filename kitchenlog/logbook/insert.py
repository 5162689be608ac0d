"""Many rows into one table at once, without a model object for each.

A push is mostly inserting: Django's bulk_create spends several times as long on objects and SQL
text as the database does on the rows, and on SQLite it splits a push into many statements.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
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
    it that is an error. No two rows may then have the same key.
    """
    values = list(rows)
    if not values:
        return
    statement = _statement(model, columns, overwrite)
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute(statement, [_as_json(_stored_names(model, columns), values)])
        else:
            cursor.executemany(statement, _as_stored(values))


def _as_json(names: Sequence[str], rows: Sequence[Sequence[Any]]) -> str:
    """All rows as one value: binding each alone takes longer than storing them all."""
    return json.dumps([dict(zip(names, row, strict=True)) for row in rows], default=str)


def _as_stored(rows: Iterable[Sequence[Any]]) -> list[Sequence[Any]]:
    """SQLite keeps a UUID as 32 digits and a time as text."""
    time_text = connections[DEFAULT_DB_ALIAS].ops.adapt_datetimefield_value
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
    quoted = connection.ops.quote_name
    names = ", ".join(map(quoted, _stored_names(model, columns)))
    table = quoted(model._meta.db_table)
    if connection.vendor == "postgresql":
        values = f"SELECT {names} FROM json_populate_recordset(NULL::{table}, %s)"  # noqa: S608 our own names
    else:
        values = f"VALUES ({', '.join(['%s'] * len(columns))})"
    statement = f"INSERT INTO {table} ({names}) {values}"
    if not overwrite:
        return statement
    key = ", ".join(quoted(field.column) for field in model._meta.pk_fields)
    changes = ", ".join(
        f"{name} = excluded.{name}" for name in map(quoted, _stored_names(model, overwrite))
    )
    return f"{statement} ON CONFLICT ({key}) DO UPDATE SET {changes}"


def _stored_names(model: type[models.Model], fields: Iterable[str]) -> list[str]:
    """What the database calls the columns of these fields."""
    columns = {field.name: field.column for field in model._meta.concrete_fields}
    return [columns[name] for name in fields]
