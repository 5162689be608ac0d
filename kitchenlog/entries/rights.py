"""Who may write an entry and who may see it, also where it wraps another kind."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from kitchenlog.calc.subjects import id_in, type_in
from kitchenlog.entries.kinds import KINDS
from kitchenlog.entries.kinds.fields import Audience, Circle
from kitchenlog.entries.links import ABOUT_ENTRIES, effective_kind, subjects_of
from kitchenlog.entries.upcast import Body


def _types_for(audience: Audience) -> frozenset[str]:
    """Types of subject that only kinds with this audience are about."""
    return frozenset(
        type_in(template)
        for kind in KINDS.values()
        if kind.audience == audience
        for template in kind.subjects
    )


# A subject that only a kind for coordinators is about is for coordinators.
COORDINATOR_TYPES = _types_for("coordinator")
# A subject of these types is one member's own: the part after the colon says whose.
OWN_TYPES = _types_for("own")
# What these say is money: for all members where the cooperative shows prices.
MONEY_TYPES = frozenset({"price", "cost", "rates"})
_AUDIENCES: dict[str, Audience] = {
    **dict.fromkeys(OWN_TYPES, "own"),
    **dict.fromkeys(COORDINATOR_TYPES, "coordinator"),
}


@dataclass(frozen=True)
class Eyes:
    """Whose eyes the record is read with: those of one member, or (None) of a coordinator.

    `sees_money`: of a cooperative that shows prices to all its members.
    """

    member: str | None
    sees_money: bool = False

    @property
    def own_subjects(self) -> tuple[str, ...]:
        """The subjects that are this member's own."""
        return tuple(f"{name}:{self.member}" for name in sorted(OWN_TYPES))


SEES_ALL = Eyes(None)


def written_by(kind: str, body: Body) -> Circle:
    """Who may write this; correcting what only a coordinator writes is a coordinator's too."""
    return _narrower(KINDS[kind].written_by, KINDS[effective_kind(kind, body)].written_by)


def is_for_coordinators(kind: str, body: Mapping[str, object]) -> bool:
    """Whether only a coordinator may correct an entry of the log: `body` is as it was made."""
    of_kind = body.get("of_kind") if kind in ABOUT_ENTRIES else kind
    declared = KINDS.get(of_kind) if isinstance(of_kind, str) else None
    return declared is not None and declared.written_by == "coordinator"


def owners_of(subjects: Iterable[str]) -> frozenset[str]:
    """The members some of these subjects are the own of. Nobody else writes about them, but a
    coordinator."""
    return frozenset(id_in(subject) for subject in subjects if type_in(subject) in OWN_TYPES)


def audience_of(kind: str, body: Body) -> Audience:
    """Who may see this: as the kind says, but never more than may see a sheet it is about.

    So a correction of a price and a note on it stay with those who see the price.
    """
    circles = {audience_of_subject(subject) for subject in subjects_of(kind, body)}
    return _smallest({*circles, KINDS[effective_kind(kind, body)].audience})


def audience_about(kind: str, body: Body, subjects: Iterable[str]) -> Audience:
    """Who may see this as it stands in the log, about `subjects`: as above, and what is only
    about sheets of a small circle, such as a void that names nothing else, is theirs too.

    `subjects` are at least those of its body, so where all are everybody's it is as its kind
    says.
    """
    circles = {audience_of_subject(subject) for subject in subjects}
    if circles <= {"member"}:
        return KINDS[effective_kind(kind, body)].audience
    if "member" not in circles:
        return _smallest({*circles, audience_of(kind, body)})
    return audience_of(kind, body)


def audience_of_subject(subject: str) -> Audience:
    """Who may see the sheet of a subject."""
    return _AUDIENCES.get(type_in(subject), "member")


def _smallest(circles: set[Audience]) -> Audience:
    return next(each for each in _SMALLEST_FIRST if each in circles)


_SMALLEST_FIRST: tuple[Audience, ...] = ("coordinator", "own", "member")


def _narrower(one: Circle, other: Circle) -> Circle:
    return "coordinator" if "coordinator" in (one, other) else "member"
