"""Whether the links to an entry are those that follow from it, no fewer and no more."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from uuid import UUID

from kitchenlog.calc.record import family_roots
from kitchenlog.logbook.drafts import Draft
from kitchenlog.logbook.models import Entry, EntryMention, EntrySubject
from kitchenlog.logbook.stored_rows import rows_in_order
from kitchenlog.logbook.subjects import can_open

Links = Mapping[str, bool]  # subject -> what stands there of whether it can be open


@dataclass
class _Family:
    """Entries that correct one another: each is about what any of them is about."""

    subjects: set[str] = field(default_factory=set)
    members: list[tuple[int, str, Links]] = field(default_factory=list)


class LinkCheck:
    """Compares links with the entries they come from; give it the parts of the log in order."""

    def __init__(self, cooperative: UUID) -> None:
        self._cooperative = cooperative
        self._root_of = _roots(cooperative)
        self._families: dict[str, _Family] = defaultdict(_Family)

    def wrong_in(self, drafts: Mapping[int, Draft]) -> Iterator[tuple[int, str]]:
        """Number and sentence for each link that differs, of entries with these numbers."""
        subjects = self._subject_links(drafts)
        mentions = self._mentions(drafts)
        for seq, draft in drafts.items():
            for sentence in _differences(draft.mentions, mentions[seq], "mention"):
                yield seq, f"entry {draft.id}: {sentence}"
            root = self._root_of.get(draft.id)
            if root is not None:
                family = self._families[root]
                family.subjects.update(draft.subjects)
                family.members.append((seq, draft.id, subjects[seq]))
                continue
            yield from _wrong_subjects(seq, draft.id, draft.subjects, subjects[seq])

    def wrong_in_families(self) -> Iterator[tuple[int, str]]:
        """The same for entries that are corrected or correct; call it after all parts."""
        for family in self._families.values():
            for seq, entry, found in family.members:
                yield from _wrong_subjects(seq, entry, family.subjects, found)

    def without_entry(self) -> Iterator[tuple[int, str]]:
        """Links whose number is that of no entry."""
        numbers = Entry.objects.filter(cooperative=self._cooperative).values("seq")
        for model, word in ((EntrySubject, "link"), (EntryMention, "mention")):
            rows = model.objects.filter(cooperative=self._cooperative).exclude(seq__in=numbers)
            for seq, subject in rows.order_by("seq", "subject").values_list("seq", "subject"):
                yield seq, f"a {word} to {subject} is of no entry"

    def _subject_links(self, seqs: Iterable[int]) -> Mapping[int, dict[str, bool]]:
        rows = EntrySubject.objects.filter(cooperative=self._cooperative, seq__in=list(seqs))
        found: dict[int, dict[str, bool]] = defaultdict(dict)
        for seq, subject, opens in rows.values_list("seq", "subject", "can_open"):
            found[seq][subject] = opens
        return found

    def _mentions(self, seqs: Iterable[int]) -> Mapping[int, set[str]]:
        rows = EntryMention.objects.filter(cooperative=self._cooperative, seq__in=list(seqs))
        found: dict[int, set[str]] = defaultdict(set)
        for seq, subject in rows.values_list("seq", "subject"):
            found[seq].add(subject)
        return found


def _roots(cooperative: UUID) -> Mapping[str, str]:
    """The family of each entry that has one, by the entry at its root."""
    corrects: dict[str, str | None] = {}
    for part in rows_in_order(cooperative, corrects__isnull=False):
        for row in part:
            if isinstance(row, Entry):
                corrects[str(row.id)] = str(row.corrects)
    for named in [each for each in corrects.values() if each is not None]:
        corrects.setdefault(named, None)
    return family_roots(corrects)


def _wrong_subjects(
    seq: int, entry: str, wanted: Iterable[str], found: Links
) -> Iterator[tuple[int, str]]:
    for sentence in _differences(wanted, found, "link"):
        yield seq, f"entry {entry}: {sentence}"
    for subject in sorted(found.keys() & set(wanted)):
        if found[subject] != can_open(subject):
            yield seq, f"entry {entry}: its link to {subject} was changed"


def _differences(wanted: Iterable[str], found: Iterable[str], word: str) -> Iterator[str]:
    expected, stored = set(wanted), set(found)
    for subject in sorted(expected - stored):
        yield f"its {word} of {subject} is missing"
    for subject in sorted(stored - expected):
        yield f"it has a {word} of {subject} that does not follow from it"
