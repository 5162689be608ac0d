"""What each field says of its subjects: who may see a sheet, when it ends, its tables."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any
from uuid import UUID

from django.db import models

from kitchenlog.calc import folds
from kitchenlog.entries.kinds import KINDS

State = Mapping[str, Any]  # the JSON object a fold makes


@dataclass(frozen=True)
class FieldTable:
    """A field's own rows about one subject, derived from its sheet and from nothing else.

    `owned` finds the rows of a subject by its id part, `rows` makes those a state asks for.
    """

    model: type[models.Model]
    owned: Callable[[str], Mapping[str, Any]]
    rows: Callable[[UUID, str, State], Sequence[models.Model]]


@dataclass
class SubjectType:
    """`opens` is False where a sheet's state alone is enough on a phone, as for definitions.

    `ends_by_itself` is True where time ends a subject and nobody says so: a day at the stall.
    """

    name: str
    opens: bool
    ends_by_itself: bool
    tables: list[FieldTable] = field(default_factory=list)


_TYPES: dict[str, SubjectType] = {}

# A subject that only a kind for coordinators is about is for coordinators.
_FOR_COORDINATORS = {
    template.partition(":")[0]
    for kind in KINDS.values()
    if kind.audience == "coordinator"
    for template in kind.subjects
}


def register_subjects(*names: str, opens: bool = False, ends_by_itself: bool = False) -> None:
    """Say, once at start, which subject types a field has and how they end."""
    for name in names:
        _TYPES[name] = SubjectType(name, opens, ends_by_itself)


def register_table(name: str, table: FieldTable) -> None:
    """Keep a field's own rows whenever a sheet of this type is saved."""
    _TYPES[name].tables.append(table)


def type_of(subject: str) -> str:
    """The part before the first colon."""
    return subject.partition(":")[0]


def id_part(subject: str) -> str:
    """The part after the first colon."""
    return subject.partition(":")[2]


def can_open(subject: str) -> bool:
    """True where phones are sent entries about such a subject, not only its sheet."""
    return _TYPES[type_of(subject)].opens


def is_finished(subject: str, state: State) -> bool:
    """True when nothing more is expected of the subject."""
    known = _TYPES[type_of(subject)]
    return not known.opens or known.ends_by_itself or folds.is_finished(subject, state)


def audience_of(subject: str) -> str:
    """Who may see this subject's sheet: `member` or `coordinator`."""
    return "coordinator" if type_of(subject) in _FOR_COORDINATORS else "member"


def tables_of(subject: str) -> Sequence[FieldTable]:
    """The fields' own tables that follow from such a sheet."""
    return _TYPES[type_of(subject)].tables
