"""Keeping the fields' own tables equal to the sheets they follow from."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from uuid import UUID

from django.db.models import Model, QuerySet

from kitchenlog.calc.subjects import id_in, type_in
from kitchenlog.logbook.subjects import FieldTable, State, tables_of

Values = tuple[object, ...]


def write_rows(cooperative: UUID, states: Mapping[str, State]) -> None:
    """Bring every table that follows from these sheets up to them; what is equal stays."""
    by_type: dict[str, dict[str, State]] = defaultdict(dict)
    for subject, state in states.items():
        by_type[type_in(subject)][subject] = state
    for some in by_type.values():
        for table in tables_of(next(iter(some))):
            _write(table, cooperative, some)


def tables_that_differ(cooperative: UUID, subject: str, state: State) -> list[str]:
    """Names of the tables whose rows are not what this state asks for."""
    return [
        table.model._meta.label
        for table in tables_of(subject)
        if _differing(table, cooperative, _wanted(table, cooperative, {subject: state}))
    ]


def _write(table: FieldTable, cooperative: UUID, states: Mapping[str, State]) -> None:
    wanted = _wanted(table, cooperative, states)
    differing = _differing(table, cooperative, wanted)
    if differing:
        _owned(table, cooperative, differing).delete()
        table.model._default_manager.bulk_create(
            row for owner in differing for row in wanted[owner]
        )


def _wanted(
    table: FieldTable, cooperative: UUID, states: Mapping[str, State]
) -> dict[str, list[Model]]:
    """The rows these states ask for, by owner."""
    return {
        table.owner_of(id_in(subject)): list(table.rows(cooperative, id_in(subject), state))
        for subject, state in states.items()
    }


def _differing(
    table: FieldTable, cooperative: UUID, wanted: Mapping[str, list[Model]]
) -> list[str]:
    """Owners whose stored rows are not those."""
    stored: dict[str, list[Model]] = {owner: [] for owner in wanted}
    for row in _owned(table, cooperative, wanted):
        stored[getattr(row, table.owner)].append(row)
    return [owner for owner in wanted if _values(stored[owner]) != _values(wanted[owner])]


def _owned(table: FieldTable, cooperative: UUID, owners: Iterable[str]) -> QuerySet[Model]:
    return table.model._default_manager.filter(
        cooperative=cooperative, **{f"{table.owner}__in": list(owners)}, **table.index
    )


def _values(rows: Iterable[Model]) -> list[Values]:
    """Every column but a number the database gave, in an order of their own."""
    return sorted(
        (
            tuple(
                getattr(row, field.attname)
                for field in row._meta.concrete_fields
                if not getattr(field, "primary_key", False)
            )
            for row in rows
        ),
        key=repr,
    )
