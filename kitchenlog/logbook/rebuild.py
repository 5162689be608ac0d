"""From the entries about a subject to its sheet: read, fold, save."""

from __future__ import annotations

import json
import logging
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from time import sleep
from typing import Any
from uuid import UUID

from kitchenlog.calc.folds import fold_number, fold_subject
from kitchenlog.calc.record import Fact
from kitchenlog.calc.subjects import id_in, type_in
from kitchenlog.entries.links import leans_on
from kitchenlog.entries.upcast import lifted
from kitchenlog.logbook.models import LogHead
from kitchenlog.logbook.selectors import (
    entries_about,
    highest_seq,
    stale_marks,
    stale_subjects,
    states_of,
)
from kitchenlog.logbook.services import NewSheet, save_sheets
from kitchenlog.logbook.subjects import can_open, follow_up_of, is_finished
from kitchenlog.logbook.turnstile import locked_head, settle
from kitchenlog.logbook.wire import EntryRow
from kitchenlog.members.models import Cooperative
from kitchenlog.members.scope import in_cooperative

logger = logging.getLogger(__name__)

QUIET_DAYS = 14  # R3: a finished subject stays open this long after its last arrival
TRIES_WITHOUT_LOCK = 2
SUBJECTS_AT_ONCE = 200
SHEETS_A_TURN = 10  # few enough that an upload waits no more than some milliseconds
QUIET_S = 0.1  # without a new entry for this long, an upload is over
RESTS_MOST = 5  # then a turn is taken whatever comes, or sheets would never catch up


@dataclass(frozen=True)
class Folded:
    """What the entries about a subject add up to."""

    subject: str
    state: Mapping[str, Any]
    upto_seq: int
    entry_count: int
    fold: int
    last_received_at: datetime


def folded(cooperative: UUID, subject: str, rows: Sequence[EntryRow]) -> Folded:
    """Fold all entries about one subject; `rows` in order of number, at least one.

    The sheets they lean on are read as they stand now. When one of those changes, saving it
    puts this subject on the work list again.
    """
    facts = [fact_of(row) for row in rows]
    named = {other for fact in facts for other in leans_on(fact.kind, fact.body)}
    return Folded(
        subject=subject,
        state=fold_subject(subject, facts, states_of(cooperative, sorted(named))),
        upto_seq=rows[-1].seq,
        entry_count=len(rows),
        fold=fold_number(subject),
        last_received_at=max(row.received_at for row in rows),
    )


def fact_of(row: EntryRow) -> Fact:
    """An entry as a fold is given it: its body in today's form, with its number."""
    entry = json.loads(row.canonical)
    return Fact(
        id=entry["id"],
        kind=entry["kind"],
        author=entry["author"],
        device=entry["device"],
        device_seq=entry["device_seq"],
        happened_at=entry["happened_at"],
        local_date=entry["local_date"],
        seq=row.seq,
        body=lifted(entry["kind"], entry["version"], entry["body"]),
    )


def rebuild_subjects(
    cooperative: Cooperative, subjects: Sequence[str], *, at: datetime
) -> None:
    """Rebuild several sheets in one turn: a commit costs more than folding a small lot."""
    for subject in _rebuilt_in_one_turn(cooperative, subjects, at=at):
        rebuild_subject(cooperative, subject, at=at)


def rebuild_subject(cooperative: Cooperative, subject: str, *, at: datetime) -> None:
    """Rebuild one sheet from every entry about it. Twice, late or out of turn: same sheet.

    Reading and folding hold no lock, so uploads go on. If something arrived meanwhile the
    sheet would be behind at once: try again, and the last time fold behind the turnstile.
    """
    for _ in range(TRIES_WITHOUT_LOCK):
        if not _rebuilt_in_one_turn(cooperative, [subject], at=at):
            return
    with in_cooperative(cooperative):
        head = locked_head(cooperative.pk)
        _save(head, {subject: _folded_now(cooperative, subject)}, at=at)
    _follow_up(cooperative, [subject], at=at)


def _rebuilt_in_one_turn(
    cooperative: Cooperative, subjects: Sequence[str], *, at: datetime
) -> list[str]:
    """Fold without a lock, save behind one; which subjects something arrived for meanwhile."""
    with in_cooperative(cooperative, writes=False):
        marks = stale_marks(cooperative.pk, subjects)
    sheets = {}
    for subject in subjects:
        with in_cooperative(cooperative, writes=False):
            sheets[subject] = _folded_now(cooperative, subject)
    with in_cooperative(cooperative):
        head = locked_head(cooperative.pk)
        marks_now = stale_marks(cooperative.pk, subjects)
        behind = [name for name in subjects if marks_now.get(name) != marks.get(name)]
        saved = [name for name in subjects if name not in behind]
        _save(head, {name: sheets[name] for name in saved}, at=at)
    _follow_up(cooperative, saved, at=at)
    return behind


def _follow_up(cooperative: Cooperative, saved: Sequence[str], *, at: datetime) -> None:
    """What fields do about their sheets after these were saved, while nothing is held."""
    by_type: dict[str, list[str]] = {}
    for subject in saved:
        by_type.setdefault(type_in(subject), []).append(id_in(subject))
    for sort, ids in by_type.items():
        follow_up = follow_up_of(sort)
        if follow_up is not None:
            follow_up(cooperative, ids, at=at)


def _folded_now(cooperative: Cooperative, subject: str) -> Folded | None:
    rows = entries_about(cooperative.pk, subject)
    return folded(cooperative.pk, subject, rows) if rows else None


def _save(head: LogHead, sheets: Mapping[str, Folded | None], *, at: datetime) -> None:
    """Cross off the list and save behind a locked head; no entries, no sheet.

    In this order: saving may put one of them on the list again, for another that it leans on.
    """
    settle(head, list(sheets))
    save_sheets(
        head,
        [
            NewSheet(
                subject=sheet.subject,
                state=sheet.state,
                upto_seq=sheet.upto_seq,
                entry_count=sheet.entry_count,
                fold=sheet.fold,
                is_open=should_be_open(sheet, at=at),
                last_received_at=sheet.last_received_at,
            )
            for sheet in sheets.values()
            if sheet is not None
        ],
    )


def should_be_open(sheet: Folded, *, at: datetime) -> bool:
    """Open (R3): not finished, or something arrived in the last days. A fold knows no clock."""
    if not can_open(sheet.subject):
        return False
    is_quiet = sheet.last_received_at < at - timedelta(days=QUIET_DAYS)
    return not (is_quiet and is_finished(sheet.subject, sheet.state))


def recompute(
    cooperative: Cooperative,
    *,
    clock: Callable[[], datetime],
    until: datetime,
    rest: Callable[[float], None] = sleep,
) -> bool:
    """Work through the list of one cooperative; True when nothing is left of it.

    A sheet that cannot be built stays on the list and does not hold back the others. While
    phones hand over entries it rests between turns: saving holds the head they wait for.
    """
    failed: set[str] = set()
    newest = _newest_entry(cooperative)
    while clock() < until:
        with in_cooperative(cooperative, writes=False):
            subjects = stale_subjects(cooperative.pk, most=SUBJECTS_AT_ONCE + len(failed))
        waiting = [subject for subject in subjects if subject not in failed]
        if not waiting:
            return not failed and _nothing_left(cooperative)
        for begin in range(0, len(waiting), SHEETS_A_TURN):
            some = waiting[begin : begin + SHEETS_A_TURN]
            failed |= _rebuilt_as_far_as_possible(cooperative, some, clock=clock)
            if clock() >= until:
                return False
            newest = _newest_once_quiet(cooperative, newest, rest=rest)
    return False


def _rebuilt_as_far_as_possible(
    cooperative: Cooperative, subjects: Sequence[str], *, clock: Callable[[], datetime]
) -> set[str]:
    """Rebuild together, or one by one if one of them is in the way; what could not be built."""
    failed = set()
    try:
        rebuild_subjects(cooperative, subjects, at=clock())
    except Exception:
        for subject in subjects:
            try:
                rebuild_subject(cooperative, subject, at=clock())
            except Exception:
                logger.exception("could not rebuild a %s", type_in(subject))
                failed.add(subject)
    return failed


def _newest_once_quiet(
    cooperative: Cooperative, newest: int, *, rest: Callable[[float], None]
) -> int:
    """The number of the newest entry; where entries keep coming, after a rest."""
    for _ in range(RESTS_MOST):
        before, newest = newest, _newest_entry(cooperative)
        if newest == before:
            break
        rest(QUIET_S)
    return newest


def _newest_entry(cooperative: Cooperative) -> int:
    with in_cooperative(cooperative, writes=False):
        return highest_seq(cooperative.pk)


def _nothing_left(cooperative: Cooperative) -> bool:
    """Take the flag off the head, unless something arrived since we looked."""
    with in_cooperative(cooperative):
        head = locked_head(cooperative.pk)
        if stale_subjects(cooperative.pk, most=1):
            return False
        head.has_stale = False
        head.save(update_fields=["has_stale"])
    return True
