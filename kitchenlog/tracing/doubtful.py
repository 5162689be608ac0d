"""The readings that a failed check puts in question, one by one and in pages."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, TypedDict
from uuid import UUID

from kitchenlog.calc.instruments import InDoubt
from kitchenlog.calc.numbers import plain
from kitchenlog.calc.subjects import type_in
from kitchenlog.calc.trusted import trusted_reading
from kitchenlog.entries.rights import OWN_TYPES, Eyes
from kitchenlog.tracing.models import ReadElsewhere, Touched

READINGS_A_PAGE = 2_000  # some 300 kB before they are compressed

_KINDS = {"skill": "drill_done", "instrument": "instrument_checked"}


class DoubtfulReading(TypedDict):
    """A reading made in the stretch of time that the failed check puts in question.

    `subject` is what it stands on, `place` the line or step there, with what that is about:
    a material, or what the step says. `u` is the standard uncertainty, `moves` what would be
    added if the error counted.
    """

    entry: str
    kind: str
    subject: str
    place: str | None
    material: str | None
    says: str | None
    happened_at: str
    author: str
    read: str | None
    corrected: str | None
    u: str | None
    unit: str | None
    moves: str | None


@dataclass(frozen=True, kw_only=True)
class ReadingsPage:
    """Readings by subject, as JSON of a list of DoubtfulReading; `more` is the last subject of
    the page where others follow it."""

    readings_json: str
    more: str | None


def readings_page(cooperative: UUID, check: str, *, after: str = "") -> ReadingsPage:
    """Readings on batches and lots whose subjects come after this one, whole subjects only.

    At least one subject a page, and no further one that would make it longer than
    READINGS_A_PAGE.
    """
    rows = Touched.objects.filter(cooperative=cooperative, check_entry=check)
    ahead = list(
        rows.filter(subject__gt=after)
        .order_by("subject")
        .values_list("subject", "readings")[: READINGS_A_PAGE + 1]
    )
    taken = _whole_subjects(ahead)
    if taken == 0:
        return ReadingsPage(readings_json="[]", more=None)
    last = ahead[taken - 1][0]
    page = rows.filter(subject__gt=after, subject__lte=last).order_by("subject")
    # Each row holds a list; taking thousands of readings apart only to write them again would
    # cost more than everything else.
    listed = ",".join(each[1:-1] for each in page.values_list("listed", flat=True))
    return ReadingsPage(readings_json=f"[{listed}]", more=last if taken < len(ahead) else None)


def _whole_subjects(ahead: Sequence[tuple[str, int]]) -> int:
    count = 0
    for taken, (_, readings) in enumerate(ahead):
        count += readings
        if taken > 0 and count > READINGS_A_PAGE:
            return taken
    return len(ahead)


def read_elsewhere(
    cooperative: UUID, sheet: Mapping[str, Any], doubt: InDoubt, *, eyes: Eyes
) -> list[DoubtfulReading]:
    """What was read on the instrument where nothing leans on it, as far as these eyes may see.

    `sheet` is the instrument's own; it says how far a mean weighed in a drill would move.
    """
    rows = ReadElsewhere.objects.filter(cooperative=cooperative, instrument=sheet["id"])
    if doubt["after"] is not None:
        rows = rows.filter(happened_at__gt=doubt["after"])
    if doubt["until"] is not None:
        rows = rows.filter(happened_at__lte=doubt["until"])
    return [
        _elsewhere(row, sheet)
        for row in rows.order_by("happened_at", "entry", "subject")
        if _is_seen(row.subject, eyes)
    ]


def _is_seen(subject: str, eyes: Eyes) -> bool:
    is_own = type_in(subject) in OWN_TYPES
    return eyes.member is None or not is_own or subject in eyes.own_subjects


def _elsewhere(row: ReadElsewhere, sheet: Mapping[str, Any]) -> DoubtfulReading:
    reading = {"instrument": row.instrument, "shown": row.read, "unit": row.unit}
    trusted = trusted_reading(
        {"reading": reading},
        happened_at=row.happened_at,
        instruments={f"instrument:{row.instrument}": sheet},
    )
    moves = None if trusted is None else trusted.moves
    is_corrected = trusted is not None and trusted.found_by is not None
    return DoubtfulReading(
        entry=row.entry,
        kind=_KINDS[type_in(row.subject)],
        subject=row.subject,
        place=None,
        material=None,
        says=None,
        happened_at=row.happened_at,
        author=row.author,
        read=row.read or None,
        corrected=plain(trusted.value) if trusted is not None and is_corrected else None,
        u=None,
        unit=row.unit or None,
        moves=None if moves is None else plain(moves),
    )
