"""Versions of bodies: what is newer than this table, how an older one is lifted when read."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from kitchenlog.entries.kinds import EARLIER_KINDS, KINDS, Kind
from kitchenlog.entries.refusals import Refusal

Body = Mapping[str, object]
Lift = Callable[[Body], Body]


@dataclass(frozen=True)
class Newer:
    """Not wrong, only unknown yet: above this table's version. A push answers `retry` (R35)."""

    kind: str
    version: int


@dataclass(frozen=True, eq=False)
class Table:
    """The kinds of today, those of before, and the step from each version to the next.

    A table is equal to itself alone, so what is made of it once can be kept by it.
    """

    kinds: Mapping[str, Kind]
    earlier: Mapping[tuple[str, int], Kind] = field(default_factory=dict)
    lifts: Mapping[tuple[str, int], Lift] = field(default_factory=dict)


TABLE = Table(
    kinds=KINDS,
    earlier={(kind.name, kind.version): kind for kind in EARLIER_KINDS},
)


def declaration(kind: str, version: int, *, table: Table) -> Kind | Newer | Refusal:
    """How the table declares this version of a kind."""
    newest = table.kinds.get(kind)
    if newest is None:
        return Refusal("kind.unknown", "kind")
    if version == newest.version:
        return newest
    if version > newest.version:
        return Newer(kind, version)
    return table.earlier.get((kind, version), Refusal("version.wrong", "version"))


def lifted(kind: str, version: int, body: Body, *, table: Table = TABLE) -> Body:
    """A parsed body in the form its kind has today; what is stored and sent stays as made."""
    for step in range(version, table.kinds[kind].version):
        body = table.lifts[(kind, step)](body)
    inner, of_kind, of_version = (
        body.get("body"),
        body.get("of_kind"),
        body.get("of_version", 1),
    )
    if not isinstance(inner, dict):
        return body
    assert isinstance(of_kind, str) and isinstance(of_version, int)
    newest = table.kinds[of_kind].version
    if of_version == newest:
        return body
    return {
        **body,
        "body": lifted(of_kind, of_version, inner, table=table),
        "of_version": newest,
    }
