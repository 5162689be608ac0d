"""What each field says of its subjects: who may see a sheet, when it ends, its tables."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import TYPE_CHECKING, Any, Protocol
from uuid import UUID

from django.db import models

from kitchenlog.calc import folds
from kitchenlog.calc.subjects import type_in

if TYPE_CHECKING:
    from kitchenlog.members.models import Cooperative  # at run time tables load after this

State = Mapping[str, Any]  # the JSON object a fold makes


@dataclass(frozen=True)
class FieldTable:
    """A field's own rows about subjects, derived from their sheets and from nothing else.

    The column `owner` says whose a row is: `owner_of` the id part of a subject. `index` is what
    else a query needs to be quick. `rows` makes those a state asks for; it reads the state as
    the TypedDict of its own fold.
    """

    model: type[models.Model]
    owner: str
    rows: Callable[[UUID, str, Any], Sequence[models.Model]]
    owner_of: Callable[[str], str] = str
    index: Mapping[str, Any] = field(default_factory=dict)


class FollowUp(Protocol):
    """What a field does once sheets of a type were saved, in a transaction of its own: it may
    take longer than the head can be held. `ids` are the id parts of their subjects."""

    def __call__(self, cooperative: Cooperative, ids: Sequence[str], *, at: datetime) -> None:
        """Do it twice, or late: the same comes of it."""


@dataclass
class SubjectType:
    """`opens` is False where a sheet's state alone is enough on a phone, as for definitions.

    `ends_by_itself` is True where time ends a subject and nobody says so: a day at the stall.
    """

    name: str
    opens: bool
    ends_by_itself: bool
    tables: list[FieldTable] = field(default_factory=list)
    follow_up: FollowUp | None = None


_TYPES: dict[str, SubjectType] = {}


def register_subjects(*names: str, opens: bool = False, ends_by_itself: bool = False) -> None:
    """Say, once at start, which subject types a field has and how they end."""
    for name in names:
        _TYPES[name] = SubjectType(name, opens, ends_by_itself)


def register_table(name: str, table: FieldTable) -> None:
    """Keep a field's own rows whenever a sheet of this type is saved."""
    _TYPES[name].tables.append(table)


def register_follow_up(name: str, follow_up: FollowUp) -> None:
    """Have this done after sheets of this type were saved."""
    _TYPES[name].follow_up = follow_up


def follow_up_of(sort: str) -> FollowUp | None:
    """What a field does after sheets of this type were saved."""
    return _TYPES[sort].follow_up


def can_open(subject: str) -> bool:
    """True where phones are sent entries about such a subject, not only its sheet."""
    return _TYPES[type_in(subject)].opens


def is_finished(subject: str, state: State) -> bool:
    """True when nothing more is expected of the subject."""
    known = _TYPES[type_in(subject)]
    return not known.opens or known.ends_by_itself or folds.is_finished(subject, state)


def tables_of(subject: str) -> Sequence[FieldTable]:
    """The fields' own tables that follow from such a sheet."""
    return _TYPES[type_in(subject)].tables
