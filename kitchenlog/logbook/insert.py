"""Many rows into one table at once, without a model object for each.

A push is mostly inserting: Django's bulk_create spends several times as long on objects and SQL
text as the database does on the rows, and on SQLite it splits a push into many statements.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import lru_cache
from typing import Any
from uuid import UUID

from django.db import DEFAULT_DB_ALIAS, connection, connections, models


def insert_rows(
    model: type[models.Model],
    columns: tuple[str, ...],
    rows: Iterable[Sequence[Any]],
    *,
    same: Mapping[str, Any] | None = None,
    overwrite: tuple[str, ...] = (),
) -> None:
    """Insert rows of values, in the order of `columns`; `same` holds what all of them share.

    `overwrite` names columns to write anew where a row with this key is there already; without
    it that is an error. No two rows may then have the same key.
    """
    values = list(rows)
    if not values:
        return
    names, alike = tuple(same or ()), tuple((same or {}).values())
    statement = _statement(model, names, columns, overwrite)
    (shared,) = _as_stored(model, names, [alike])
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute(
                statement, [*shared, _as_json(_stored_names(model, columns), values)]
            )
        else:
            stored = _as_stored(model, columns, values)
            cursor.executemany(statement, [(*shared, *row) for row in stored])


def _as_json(names: Sequence[str], rows: Sequence[Sequence[Any]]) -> str:
    """All rows as one value: binding each alone takes longer than storing them all."""
    return json.dumps([dict(zip(names, row, strict=True)) for row in rows], default=str)


def _as_stored(
    model: type[models.Model], columns: tuple[str, ...], rows: Sequence[Sequence[Any]]
) -> Sequence[Sequence[Any]]:
    """SQLite keeps a UUID as 32 digits and a time as text; most columns need no look."""
    conversions = _conversions(model, columns)
    if not conversions:
        return rows
    stored = [list(row) for row in rows]
    for at, convert in conversions:
        for row in stored:
            if row[at] is not None:
                row[at] = convert(row[at])
    return stored


@lru_cache
def _conversions(
    model: type[models.Model], columns: tuple[str, ...]
) -> list[tuple[int, Callable[[Any], Any]]]:
    """Where among the columns a value is stored as another one, and as which."""
    if connection.vendor == "postgresql":
        return []
    by_type: dict[str, Callable[[Any], Any]] = {
        "DateTimeField": connections[DEFAULT_DB_ALIAS].ops.adapt_datetimefield_value,
        "UUIDField": _digits,
    }
    fields = {field.name: field for field in model._meta.concrete_fields}
    return [
        (at, by_type[sort])
        for at, name in enumerate(columns)
        if (sort := _stored_type(fields[name])) in by_type
    ]


def _digits(id: UUID | str) -> str:
    return str(id).replace("-", "")


def _stored_type(field: models.Field[Any, Any]) -> str:
    """A column that refers to another table is of the type of what it refers to."""
    target = field.target_field if isinstance(field, models.ForeignKey) else field
    return target.get_internal_type()


@lru_cache
def _statement(
    model: type[models.Model],
    same: tuple[str, ...],
    columns: tuple[str, ...],
    overwrite: tuple[str, ...],
) -> str:
    quoted = connection.ops.quote_name
    shared = ["%s"] * len(same)
    names = [quoted(name) for name in _stored_names(model, columns)]
    table = quoted(model._meta.db_table)
    if connection.vendor == "postgresql":
        chosen = ", ".join([*shared, *names])
        values = f"SELECT {chosen} FROM json_populate_recordset(NULL::{table}, %s)"  # noqa: S608 our own names
    else:
        values = f"VALUES ({', '.join([*shared, *['%s'] * len(names)])})"
    into = ", ".join([*map(quoted, _stored_names(model, same)), *names])
    statement = f"INSERT INTO {table} ({into}) {values}"
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
