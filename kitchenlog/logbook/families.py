"""Correction families: whoever corrects whom is linked to the subjects of all of them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from uuid import UUID

from django.db.models import Q

from kitchenlog.calc.record import family_roots
from kitchenlog.logbook.drafts import Draft
from kitchenlog.logbook.models import Entry, EntrySubject


@dataclass(frozen=True)
class Link:
    """An entry, by its number, is about a subject."""

    subject: str
    seq: int


@dataclass(frozen=True)
class _Relative:
    seq: int
    corrects: UUID | None


def missing_links(cooperative: UUID, new: Sequence[Draft]) -> list[Link]:
    """Links that the arrival of `new` entries makes necessary, in either order of arrival.

    A correction may come before what it corrects; both then meet here at the second arrival.
    """
    ids = [draft.id for draft in new]
    named = [draft.corrects for draft in new if draft.corrects is not None]
    relatives = _relatives(cooperative, [*ids, *named])
    subjects = _subjects_of(cooperative, [relative.seq for relative in relatives.values()])
    return [
        Link(subject, seq)
        for family in _families(relatives)
        for seq in family
        for subject in sorted(set().union(*(subjects[each] for each in family)) - subjects[seq])
    ]


def _relatives(cooperative: UUID, ids: Iterable[UUID]) -> dict[UUID, _Relative]:
    """Everything in the log that the ids correct or are corrected by, however far."""
    found: dict[UUID, _Relative] = {}
    ahead, asked = set(ids), set[UUID]()
    while ahead:
        asked |= ahead
        rows = Entry.objects.filter(cooperative=cooperative).filter(
            Q(id__in=ahead) | Q(corrects__in=ahead)
        )
        reached = set[UUID]()
        for entry, seq, corrects in rows.values_list("id", "seq", "corrects"):
            found[entry] = _Relative(seq, corrects)
            reached |= {entry} if corrects is None else {entry, corrects}
        ahead = reached - asked
    return found


def _families(relatives: Mapping[UUID, _Relative]) -> list[list[int]]:
    """The numbers of each family, in order."""
    roots = family_roots(
        {
            str(entry): None if each.corrects is None else str(each.corrects)
            for entry, each in relatives.items()
        }
    )
    families: dict[str, list[int]] = defaultdict(list)
    for entry, each in relatives.items():
        families[roots[str(entry)]].append(each.seq)
    return [sorted(family) for family in families.values()]


def _subjects_of(cooperative: UUID, seqs: Sequence[int]) -> dict[int, set[str]]:
    links = EntrySubject.objects.filter(cooperative=cooperative, seq__in=seqs)
    subjects: dict[int, set[str]] = defaultdict(set)
    for seq, subject in links.values_list("seq", "subject"):
        subjects[seq].add(subject)
    return subjects
