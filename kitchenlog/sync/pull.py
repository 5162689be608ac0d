"""A pull: what happened in the log after a cursor, as one member may see it."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import datetime

from kitchenlog.entries.rights import Eyes
from kitchenlog.instruments.selectors import UsesRow, uses_to_tell
from kitchenlog.logbook.eyes import eyes_of
from kitchenlog.logbook.selectors import (
    LogPlace,
    entries_to_tell,
    log_place,
    sheets_to_tell,
)
from kitchenlog.logbook.wire import EntryRow, SheetRow, entry_json, sheet_json, wire_time
from kitchenlog.members.models import Member
from kitchenlog.sync.cursor import Cursor, parse_cursor, written

PULL_CHANGES_MAX = 500
NOBODY = "nobody"


def view_of(member: Member, eyes: Eyes) -> str:
    """Whose eyes a member sees the log with. When it changes, the phone begins anew (R42)."""
    if member.has_left:
        return NOBODY
    if eyes.member is None:
        return "coordinator"
    return "prices" if eyes.sees_money else "member"


def where_we_are(member: Member, place: LogPlace) -> dict[str, str]:
    """The epoch, and as `through` the cursor past everything the log holds at this place."""
    view = view_of(member, eyes_of(member))
    cursor = Cursor(member.cooperative_id, place.epoch, view, place.last_seq)
    return {"epoch": place.epoch, "through": written(cursor)}


def pull_answer(member: Member, *, cursor: str, limit: int, at: datetime) -> str:
    """The JSON text of one page. A cursor that is not ours, or no longer, gives `reset`.

    The head is read first and rows only up to it, so that nothing numbered later slips
    between two pages; entries are spliced in as they are stored.
    """
    eyes = eyes_of(member)
    view = view_of(member, eyes)
    place = log_place(member.cooperative_id)
    about = f'"protocol":1,"epoch":"{place.epoch}","server_time":"{wire_time(at)}"'
    after = _after(cursor, Cursor(member.cooperative_id, place.epoch, view, place.last_seq))
    if after is None:
        return f'{{{about},"reset":true}}'
    page = _page(member, eyes, _Reach(after, place.last_seq, limit))
    following = written(Cursor(member.cooperative_id, place.epoch, view, page.upto))
    more = "true" if page.has_more else "false"
    changes = ",".join(page.changes)
    return f'{{{about},"changes":[{changes}],"next":"{following}","more":{more}}}'


def _after(text: str, now: Cursor) -> int | None:
    """The number to go on from; None where the phone must begin anew."""
    if text == "":
        return 0
    cursor = parse_cursor(text)
    if cursor is None or cursor.seq > now.seq:
        return None
    same = (cursor.cooperative, cursor.epoch, cursor.view)
    return cursor.seq if same == (now.cooperative, now.epoch, now.view) else None


@dataclass(frozen=True)
class _Page:
    changes: list[str]
    upto: int
    has_more: bool


@dataclass(frozen=True)
class _Reach:
    after: int
    upto: int
    limit: int


def _page(member: Member, eyes: Eyes, reach: _Reach) -> _Page:
    after, upto, limit = reach.after, reach.upto, reach.limit
    if member.has_left:
        return _Page([], upto, has_more=False)
    cooperative, most = member.cooperative_id, limit + 1
    entries = entries_to_tell(cooperative, after=after, upto=upto, most=most, eyes=eyes)
    sheets = sheets_to_tell(cooperative, after=after, upto=upto, most=most, eyes=eyes)
    uses = uses_to_tell(cooperative, after=after, upto=upto, most=most)
    changes = sorted(
        [*map(_entry_change, entries), *map(_sheet_change, sheets), *map(_uses_change, uses)]
    )
    has_more = len(changes) > limit
    told = changes[:limit]
    last = told[-1][0] if has_more else upto
    return _Page([text for _, text in told], last, has_more)


def _entry_change(row: EntryRow) -> tuple[int, str]:
    return row.seq, (
        f'{{"type":"entry","id":"{row.id}","seq":{row.seq},"data":{entry_json(row)}}}'
    )


def _sheet_change(row: SheetRow) -> tuple[int, str]:
    subject = json.dumps(row.subject)
    return row.seq, (
        f'{{"type":"sheet","id":{subject},"seq":{row.seq},"data":{sheet_json(row)}}}'
    )


def _uses_change(row: UsesRow) -> tuple[int, str]:
    """Beside the sheets: an instrument's own folds only its checks."""
    counted = {
        "check": row.check_entry,
        "count": row.count,
        "counted_at": wire_time(row.counted_at),
    }
    change = {"type": "uses", "id": row.instrument, "seq": row.seq, "data": counted}
    return row.seq, json.dumps(change)
