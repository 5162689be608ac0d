"""Keeping the fields' own tables equal to the sheets they follow from."""

from __future__ import annotations

from uuid import UUID

from django.db.models import Model, QuerySet

from kitchenlog.calc.subjects import id_in
from kitchenlog.logbook.subjects import FieldTable, State, tables_of

Values = tuple[object, ...]


def write_rows(cooperative: UUID, subject: str, state: State) -> None:
    """Bring every table that follows from this sheet up to it; what is equal is not touched."""
    for table in tables_of(subject):
        wanted = table.rows(cooperative, id_in(subject), state)
        if _stored(table, cooperative, subject) != sorted(map(_values, wanted), key=repr):
            _owned(table, cooperative, subject).delete()
            table.model._default_manager.bulk_create(wanted)


def tables_that_differ(cooperative: UUID, subject: str, state: State) -> list[str]:
    """Names of the tables whose rows are not what this state asks for."""
    return [
        table.model._meta.label
        for table in tables_of(subject)
        if _stored(table, cooperative, subject)
        != sorted(map(_values, table.rows(cooperative, id_in(subject), state)), key=repr)
    ]


def _owned(table: FieldTable, cooperative: UUID, subject: str) -> QuerySet[Model]:
    return table.model._default_manager.filter(
        cooperative=cooperative, **table.owned(id_in(subject))
    )


def _stored(table: FieldTable, cooperative: UUID, subject: str) -> list[Values]:
    return sorted(map(_values, _owned(table, cooperative, subject)), key=repr)


def _values(row: Model) -> Values:
    """Every column but a number the database gave."""
    return tuple(
        getattr(row, field.attname)
        for field in row._meta.concrete_fields
        if not getattr(field, "primary_key", False)
    )
