"""Who may write an entry and who may see it, also where it wraps another kind."""

from __future__ import annotations

from kitchenlog.calc.subjects import type_in
from kitchenlog.entries.kinds import KINDS
from kitchenlog.entries.kinds.fields import Audience, Circle
from kitchenlog.entries.links import effective_kind, subjects_of
from kitchenlog.entries.upcast import Body

# A subject that only a kind for coordinators is about is for coordinators.
COORDINATOR_TYPES = frozenset(
    type_in(template)
    for kind in KINDS.values()
    if kind.audience == "coordinator"
    for template in kind.subjects
)


def written_by(kind: str, body: Body) -> Circle:
    """Who may write this; correcting what only a coordinator writes is a coordinator's too."""
    return _narrower(KINDS[kind].written_by, KINDS[effective_kind(kind, body)].written_by)


def audience_of(kind: str, body: Body) -> Audience:
    """Who may see this: as the kind says, but never more than may see a sheet it is about.

    So a correction of a price and a note on it stay with those who see the price.
    """
    types = {type_in(subject) for subject in subjects_of(kind, body)}
    own = KINDS[effective_kind(kind, body)].audience
    return "coordinator" if types & COORDINATOR_TYPES else own


def _narrower(one: Circle, other: Circle) -> Circle:
    return "coordinator" if "coordinator" in (one, other) else "member"
