"""Correction families: whoever corrects whom is linked to the subjects of all of them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple
from uuid import UUID

from kitchenlog.calc.record import family_roots
from kitchenlog.logbook.drafts import Draft
from kitchenlog.logbook.models import EntrySubject
from kitchenlog.logbook.selectors import Relative, relatives_in_log


class Link(NamedTuple):
    """An entry, by its number, is about a subject."""

    subject: str
    seq: int


def missing_links(cooperative: UUID, new: Sequence[Draft]) -> list[Link]:
    """Links that the arrival of `new` entries makes necessary, in either order of arrival.

    A correction may come before what it corrects; both then meet here at the second arrival.
    """
    ids = [draft.id for draft in new]
    named = [draft.corrects for draft in new if draft.corrects is not None]
    relatives = relatives_of(cooperative, [*ids, *named])
    subjects = _subjects_of(cooperative, [relative.seq for relative in relatives.values()])
    return [
        Link(subject, seq)
        for family in _families(relatives)
        for seq in family
        for subject in sorted(set().union(*(subjects[each] for each in family)) - subjects[seq])
    ]


def relatives_of(cooperative: UUID, ids: Iterable[str]) -> dict[str, Relative]:
    """Everything in the log that the ids correct or are corrected by, however far."""
    found: dict[str, Relative] = {}
    ahead, asked = set(ids), set[str]()
    while ahead:
        asked |= ahead
        reached = set[str]()
        for each in relatives_in_log(cooperative, ahead):
            found[each.id] = each
            reached |= {each.id} if each.corrects is None else {each.id, each.corrects}
        ahead = reached - asked
    return found


def _families(relatives: Mapping[str, Relative]) -> list[list[int]]:
    """The numbers of each family, in order."""
    roots = family_roots({entry: each.corrects for entry, each in relatives.items()})
    families: dict[str, list[int]] = defaultdict(list)
    for entry, each in relatives.items():
        families[roots[entry]].append(each.seq)
    return [sorted(family) for family in families.values()]


def _subjects_of(cooperative: UUID, seqs: Sequence[int]) -> dict[int, set[str]]:
    links = EntrySubject.objects.filter(cooperative=cooperative, seq__in=seqs)
    subjects: dict[int, set[str]] = defaultdict(set)
    for seq, subject in links.values_list("seq", "subject"):
        subjects[seq].add(subject)
    return subjects
