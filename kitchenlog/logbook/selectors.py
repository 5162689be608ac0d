"""Reading the log. Every query names its cooperative and its order."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, TypeVar
from uuid import UUID

from django.db import connection
from django.db.models import BooleanField, Exists, OuterRef, Q, QuerySet
from django.db.models.expressions import RawSQL

from kitchenlog.entries.rights import (
    MONEY_TYPES,
    OWN_TYPES,
    SEES_ALL,
    Eyes,
    is_for_coordinators,
)
from kitchenlog.logbook.models import (
    Entry,
    EntryMention,
    EntrySubject,
    LogHead,
    Quarantined,
    Sheet,
    StaleSubject,
)
from kitchenlog.logbook.wire import AsideRow, EntryRow, SheetRow

VALUES_AT_ONCE = 500

Value = TypeVar("Value")


@dataclass(frozen=True)
class LogPlace:
    """Where a log stands: its epoch and the highest number it gave."""

    epoch: str
    last_seq: int


ROW_COLUMNS = ("id", "seq", "canonical", "received_at", "skew_ms")
_SHEET = ("subject", "seq", "state", "upto_seq", "entry_count", "fold", "is_open")


def log_place(cooperative: UUID) -> LogPlace:
    """Where the log stands, not locked. Read it before rows, and rows only up to it."""
    heads = LogHead.objects.filter(cooperative=cooperative)
    return LogPlace(*heads.values_list("epoch", "last_seq").get())


def highest_seq(cooperative: UUID) -> int:
    """The number of the newest entry; sheets have numbers beyond it. 0 where there is none."""
    rows = Entry.objects.filter(cooperative=cooperative).order_by("-seq")
    return rows.values_list("seq", flat=True).first() or 0


def heads_with_work() -> list[LogHead]:
    """Heads of all cooperatives whose work list is not empty."""
    heads = LogHead.objects.filter(has_stale=True).select_related("cooperative")
    return list(heads.order_by("cooperative_id"))


def stale_subjects(cooperative: UUID, *, most: int) -> list[str]:
    """What to do next, the oldest reason first."""
    rows = StaleSubject.objects.filter(cooperative=cooperative).order_by("mark", "subject")
    return list(rows.values_list("subject", flat=True)[:most])


def stale_marks(cooperative: UUID, subjects: Sequence[str]) -> dict[str, int]:
    """The latest reason why a sheet is behind, of those subjects whose sheet is."""
    rows = StaleSubject.objects.filter(cooperative=cooperative, subject__in=subjects)
    return dict(rows.values_list("subject", "mark"))


def entries_about(cooperative: UUID, subject: str, *, eyes: Eyes = SEES_ALL) -> list[EntryRow]:
    """Every entry about a subject, in order of number, that these eyes may see."""
    links = EntrySubject.objects.filter(cooperative=cooperative, subject=subject)
    rows = _seen_by(eyes, Entry.objects.filter(cooperative=cooperative)).filter(
        seq__in=links.values("seq")
    )
    return [EntryRow(*row) for row in rows.order_by("seq").values_list(*ROW_COLUMNS)]


def entry_row(cooperative: UUID, entry: UUID, *, eyes: Eyes) -> EntryRow | None:
    """One entry by its id, None if there is none for these eyes."""
    rows = _seen_by(eyes, Entry.objects.filter(cooperative=cooperative, id=entry))
    row = rows.values_list(*ROW_COLUMNS).first()
    return None if row is None else EntryRow(*row)


def fingerprints_by_id(cooperative: UUID, ids: Iterable[str]) -> dict[str, str]:
    """The fingerprints of those of these ids that the log holds."""
    rows = Entry.objects.filter(cooperative=cooperative, id__in=list(ids))
    return {str(id): fingerprint for id, fingerprint in rows.values_list("id", "fingerprint")}


@dataclass(frozen=True)
class Relative:
    """What one entry in the log has to do with others: who it is and whom it corrects."""

    id: str
    seq: int
    fingerprint: str
    corrects: str | None


def relatives_in_log(cooperative: UUID, ids: Iterable[str]) -> list[Relative]:
    """Entries with one of these ids and entries that correct one of them, in no order."""
    wanted = list(ids)
    if connection.vendor == "sqlite":
        wanted = [each.replace("-", "") for each in wanted]
    rows = Entry.objects.filter(cooperative=cooperative).values_list(
        "id", "seq", "fingerprint", "corrects"
    )
    # Not one condition with "or": SQLite would read the whole log of the cooperative for it.
    found = rows.filter(is_among("id", wanted, "uuid")).union(
        rows.filter(is_among("corrects", wanted, "uuid"))
    )
    return [
        Relative(str(id), seq, fingerprint, None if corrects is None else str(corrects))
        for id, seq, fingerprint, corrects in found
    ]


def is_among(column: str, values: Iterable[str], sort: str) -> RawSQL:
    """A condition: the column holds one of these values; `sort` is their type on PostgreSQL.

    They are bound as one JSON text: each alone takes longer to bind than to look for. As an
    array PostgreSQL looks them up; joined with a small table it would read all of that.
    """
    if connection.vendor == "postgresql":
        values_of = f"SELECT value::{sort} FROM json_array_elements_text(%s)"  # noqa: S608 our own words
        among = f"= ANY(ARRAY({values_of}))"
    else:
        among = "IN (SELECT value FROM json_each(%s))"
    name = connection.ops.quote_name(column)
    text = json.dumps(list(values))
    return RawSQL(f"{name} {among}", [text], output_field=BooleanField())  # noqa: S611 our own words


def entries_to_tell(
    cooperative: UUID, *, after: int, upto: int, most: int, eyes: Eyes
) -> list[EntryRow]:
    """Entries in a range of numbers about at least one open subject, in order.

    A subject without a sheet yet counts as open: the cursor will not come by here again.
    """
    closed = Sheet.objects.filter(
        cooperative=OuterRef("cooperative"), subject=OuterRef("subject"), is_open=False
    )
    about_open = EntrySubject.objects.filter(
        ~Exists(closed), cooperative=OuterRef("cooperative"), seq=OuterRef("seq"), can_open=True
    )
    rows = _seen_by(eyes, Entry.objects.filter(cooperative=cooperative)).filter(
        Exists(about_open), seq__gt=after, seq__lte=upto
    )
    return [EntryRow(*row) for row in rows.order_by("seq").values_list(*ROW_COLUMNS)[:most]]


def sheets_to_tell(
    cooperative: UUID, *, after: int, upto: int, most: int, eyes: Eyes
) -> list[SheetRow]:
    """Sheets in a range of numbers, in order."""
    rows = _sheets_seen_by(eyes, cooperative).filter(seq__gt=after, seq__lte=upto)
    return [SheetRow(*row) for row in rows.order_by("seq").values_list(*_SHEET)[:most]]


def sheet_about(cooperative: UUID, subject: str, *, eyes: Eyes) -> SheetRow | None:
    """The sheet of a subject, None if there is none for these eyes."""
    rows = _sheets_seen_by(eyes, cooperative).filter(subject=subject)
    row = rows.values_list(*_SHEET).first()
    return None if row is None else SheetRow(*row)


def states_of(cooperative: UUID, subjects: Sequence[str]) -> dict[str, dict[str, Any]]:
    """The states of those of these subjects that have a sheet."""
    states: dict[str, dict[str, Any]] = {}
    for some in in_parts(subjects):
        rows = Sheet.objects.filter(cooperative=cooperative, subject__in=some)
        states.update(
            {row[0]: json.loads(row[1]) for row in rows.values_list("subject", "state")}
        )
    return states


def subjects_mentioning(
    cooperative: UUID, named: str, sort: str, *, kinds: Sequence[str] | None = None
) -> list[str]:
    """Subjects of a type that have an entry which names this one, in order; of these kinds, or
    correcting something, where kinds are given."""
    mentions = EntryMention.objects.filter(cooperative=cooperative, subject=named)
    if kinds is not None:
        of_kind = Entry.objects.filter(
            cooperative=cooperative, seq=OuterRef("seq"), kind__in=(*kinds, "correction")
        )
        mentions = mentions.filter(Exists(of_kind))
    rows = EntrySubject.objects.filter(
        cooperative=cooperative,
        subject__startswith=f"{sort}:",
        seq__in=mentions.values("seq"),
    )
    return list(rows.order_by("subject").values_list("subject", flat=True).distinct())


def subjects_with_sheet(cooperative: UUID, subjects: Sequence[str]) -> set[str]:
    """Which of these subjects have a sheet."""
    found: set[str] = set()
    for some in in_parts(subjects):
        rows = Sheet.objects.filter(cooperative=cooperative, subject__in=some)
        found.update(rows.values_list("subject", flat=True))
    return found


def sheets_of_type(cooperative: UUID, sort: str) -> list[str]:
    """The subjects of a type that have a sheet, in order."""
    rows = Sheet.objects.filter(cooperative=cooperative, subject__startswith=f"{sort}:")
    return list(rows.order_by("subject").values_list("subject", flat=True))


def names_of(cooperative: UUID, subjects: Sequence[str]) -> dict[str, str]:
    """What people call these definitions; one nobody has defined yet has no name."""
    names: dict[str, str] = {}
    for some in in_parts(subjects):
        rows = Sheet.objects.filter(cooperative=cooperative, subject__in=some)
        for subject, state in rows.values_list("subject", "state"):
            name = json.loads(state).get("fields", {}).get("name")
            if isinstance(name, str):
                names[subject] = name
    return names


def in_parts(values: Sequence[Value]) -> Iterator[Sequence[Value]]:
    """Values in parts short enough for one statement of either database."""
    for at in range(0, len(values), VALUES_AT_ONCE):
        yield values[at : at + VALUES_AT_ONCE]


def subjects_in_log(cooperative: UUID) -> list[str]:
    """Every subject an entry is about, in order."""
    rows = EntrySubject.objects.filter(cooperative=cooperative)
    return list(rows.order_by("subject").values_list("subject", flat=True).distinct())


def kept_aside(cooperative: UUID, *, author: UUID | None) -> list[AsideRow]:
    """What stands outside the record, the latest first; of one author, or of all for None."""
    rows = Quarantined.objects.filter(cooperative=cooperative)
    if author is not None:
        rows = rows.filter(author=author)
    return [
        AsideRow(
            entry_id=row.entry_id,
            code=row.code,
            detail=row.detail,
            is_readable=row.is_readable,
            author=row.author,
            device=row.device,
            raw=bytes(row.raw),
            received_at=row.received_at,
        )
        for row in rows.order_by("-received_at", "digest", "code")
    ]


def entries_by_id(
    cooperative: UUID, ids: Sequence[UUID], *, eyes: Eyes
) -> dict[UUID, EntryRow]:
    """Entries by id, of those that these eyes may see."""
    rows = _seen_by(eyes, Entry.objects.filter(cooperative=cooperative, id__in=list(ids)))
    return {row[0]: EntryRow(*row) for row in rows.values_list(*ROW_COLUMNS)}


def own_subjects_of(cooperative: UUID, ids: Sequence[str]) -> dict[str, set[str]]:
    """For those of these entries that only one member and coordinators see: what they are
    about."""
    own = Entry.objects.filter(cooperative=cooperative, id__in=list(ids), audience="own")
    about = {seq: (str(entry), set[str]()) for entry, seq in own.values_list("id", "seq")}
    links = EntrySubject.objects.filter(cooperative=cooperative, seq__in=list(about))
    for seq, subject in links.values_list("seq", "subject"):
        about[seq][1].add(subject)
    return dict(about.values())


def coordinators_among(cooperative: UUID, ids: Sequence[str]) -> set[str]:
    """Those of these entries that only a coordinator may write, or correct."""
    rows = Entry.objects.filter(cooperative=cooperative, id__in=list(ids))
    return {
        str(entry)
        for entry, kind, made in rows.values_list("id", "kind", "canonical")
        if is_for_coordinators(kind, json.loads(made)["body"])
    }


def _seen_by(eyes: Eyes, rows: QuerySet[Entry]) -> QuerySet[Entry]:
    """What is a member's own is hidden from that member too once it stands on another's sheet:
    a correction may have moved it there, and nobody sees what is another's."""
    if eyes.member is None:
        return rows
    links = EntrySubject.objects.filter(
        cooperative=OuterRef("cooperative"), seq=OuterRef("seq")
    )
    own = links.filter(subject__in=eyes.own_subjects)
    owned = links.filter(_of_types(OWN_TYPES))
    anothers = owned.exclude(subject__in=eyes.own_subjects)
    seen = Q(audience="member") | Q(Exists(own), ~Exists(anothers), audience="own")
    if eyes.sees_money:
        money = links.filter(_of_types(MONEY_TYPES))
        seen |= Q(Exists(money), ~Exists(owned), audience="coordinator")
    return rows.filter(seen)


def _sheets_seen_by(eyes: Eyes, cooperative: UUID) -> QuerySet[Sheet]:
    rows = Sheet.objects.filter(cooperative=cooperative)
    if eyes.member is None:
        return rows
    seen = Q(audience="member") | Q(audience="own", subject__in=eyes.own_subjects)
    return rows.filter(seen | _of_types(MONEY_TYPES) if eyes.sees_money else seen)


def _of_types(types: Iterable[str]) -> Q:
    """A condition: the subject is of one of these types."""
    found = Q()
    for name in sorted(types):
        found |= Q(subject__startswith=f"{name}:")
    return found
