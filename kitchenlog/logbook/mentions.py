"""How many entries name a subject, as their corrections leave them."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from uuid import UUID

from django.db.models import Exists, OuterRef, Q, QuerySet

from kitchenlog.calc.record import as_it_stands
from kitchenlog.entries.links import ABOUT_ENTRIES, mentions_of
from kitchenlog.logbook.families import relatives_of
from kitchenlog.logbook.models import Entry, EntryMention
from kitchenlog.logbook.rebuild import fact_of
from kitchenlog.logbook.selectors import ROW_COLUMNS, in_parts
from kitchenlog.logbook.wire import EntryRow


def mention_count(cooperative: UUID, named: str, *, since: datetime) -> int:
    """Entries that stand, happened after `since` and name the subject.

    The database counts those that nobody corrected, whatever their number; only of the few
    others the bodies are read.
    """
    mentions = EntryMention.objects.filter(cooperative=cooperative, subject=named)
    rows = Entry.objects.filter(cooperative=cooperative, seq__in=mentions.values("seq"))
    by_others = Entry.objects.filter(
        cooperative=OuterRef("cooperative"), corrects=OuterRef("id")
    )
    alone = rows.filter(~Exists(by_others), happened_at__gt=since, corrects=None).count()
    return alone + _corrected_count(cooperative, named, _in_families(rows, by_others), since)


def _in_families(rows: QuerySet[Entry], by_others: QuerySet[Entry]) -> list[str]:
    """Those of the entries that correct something or are corrected."""
    found = rows.filter(Q(corrects__isnull=False) | Exists(by_others)).order_by("seq")
    return [str(entry) for entry in found.values_list("id", flat=True)]


def _corrected_count(cooperative: UUID, named: str, entries: list[str], since: datetime) -> int:
    """As a fold takes them: the body in force, at the time of the entry it stands for."""
    facts = [fact_of(row) for row in _whole_families(cooperative, entries)]
    return sum(
        named in mentions_of(each.kind, each.body)
        and datetime.fromisoformat(each.happened_at) > since
        for each in as_it_stands(facts).standing
        if each.kind not in ABOUT_ENTRIES
    )


def _whole_families(cooperative: UUID, entries: list[str]) -> Iterator[EntryRow]:
    seqs = {
        each.seq
        for some in in_parts(entries)
        for each in relatives_of(cooperative, some).values()
    }
    for part in in_parts(sorted(seqs)):
        rows = Entry.objects.filter(cooperative=cooperative, seq__in=part).order_by("seq")
        yield from (EntryRow(*row) for row in rows.values_list(*ROW_COLUMNS))
