"""Days: how long goods keep, when they have expired, and which day it is at a place.

A day is text, YYYY-MM-DD, in the cooperative's zone; an instant is YYYY-MM-DDTHH:MM:SS.mmmZ.
Zone databases are the edge's business: what is needed from them, the offset, comes in.
A day was printed on a pack, so nothing here changes one that stands in an entry.
"""

import calendar
import re
from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta
from typing import Literal

LifeSort = Literal["use_by", "best_before", "expires_on"]
LifeState = Literal["keeps", "last_day", "past_best", "expired"]

_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_MONTH = re.compile(r"[0-9]{4}-[0-9]{2}")
_INSTANT = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\.[0-9]{3}Z")
_WALL = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}")
_MINUTE_MS = 60_000


def add_days(on: str, days: int) -> str:
    """The day this many days later. Raises ValueError for what is no day."""
    return (_date(on) + timedelta(days=days)).isoformat()


def add_months(on: str, months: int) -> str:
    """The same day of the month this many months later, or that month's last day.

    Always add from the original day: one month twice is not two months (31 January).
    """
    start = _date(on)
    month = start.year * 12 + start.month - 1 + months
    year, month = month // 12, month % 12 + 1
    day = min(start.day, calendar.monthrange(year, month)[1])
    return date(year, month, day).isoformat()


def month_end(month: str) -> str:
    """The last day of YYYY-MM, which is what "best before end" of that month means
    (EU Reg. 1169/2011 Annex X, from memory)."""
    if not _MONTH.fullmatch(month):
        raise ValueError(f"not a month: {month!r}")
    return add_days(add_months(f"{month}-01", 1), -1)


def last_day(
    made_on: str, *, sort: LifeSort, length: int, unit: Literal["days", "months"]
) -> str:
    """The last day of a life that was assigned to a product.

    Months are added to the day of making. Days of a use by or expires on date count the day of
    making as day 1 (US retail date marking, read); days of a best before date come after it.
    """
    if unit == "months":
        return add_months(made_on, length)
    if sort == "best_before":
        return add_days(made_on, length)
    return add_days(made_on, length - 1)


def earliest(days: Sequence[str | None]) -> str | None:
    """The earliest of the known days; None when none is known."""
    return min((day for day in days if day is not None), default=None)


def composite_last_day(
    assigned: str | None, inputs: Sequence[str | None], *, carries_through: bool
) -> str | None:
    """The life of what was mixed: never beyond the earliest input, unless a step resets what
    limits the inputs (a filled jar is not limited by its fresh fruit), which needs evidence."""
    return earliest([assigned, *inputs]) if carries_through else assigned


def opened_last_day(opened_on: str, *, days: int, makers_day: str | None) -> str:
    """The day of opening is day 1; never beyond the maker's day (Indiana 410 IAC 7-24-191)."""
    own = add_days(opened_on, days - 1)
    return own if makers_day is None else min(own, makers_day)


def thawed_last_day(thawed_on: str, *, limit_days: int, used_days: int) -> str:
    """Freezing pauses a limit and does not reset it: what was used before is gone
    (Minnesota Rules 4626.0400)."""
    return add_days(thawed_on, limit_days - used_days - 1)


def days_left(last: str, today: str) -> int:
    """Whole days until the last day: 0 on it, negative after it."""
    return (_date(last) - _date(today)).days


def has_expired(last: str, today: str) -> bool:
    """The last day itself is usable, the next is not."""
    return days_left(last, today) < 0


def life_state(last: str, today: str, *, sort: LifeSort) -> LifeState:
    """What a last day says today: a best before that has passed warns, the others block."""
    left = days_left(last, today)
    if left < 0:
        return "past_best" if sort == "best_before" else "expired"
    return "last_day" if left == 0 else "keeps"


def local_day(at: str, utc_offset_min: int) -> str:
    """The day on the wall at an instant, where clocks are this far ahead of UTC."""
    return (_datetime(at) + timedelta(minutes=utc_offset_min)).date().isoformat()


def instant_of(wall: str, utc_offset_min: int) -> str:
    """The instant of YYYY-MM-DDTHH:MM on a wall where clocks are this far ahead of UTC."""
    if not _WALL.fullmatch(wall):
        raise ValueError(f"not a time on the wall: {wall!r}")
    at = datetime.fromisoformat(f"{wall}:00+00:00") - timedelta(minutes=utc_offset_min)
    return _instant(at)


def later(at: str, minutes: int) -> str:
    """The instant this many minutes later."""
    return _instant(_datetime(at) + timedelta(minutes=minutes))


def elapsed_minutes(from_at: str, to_at: str) -> int:
    """Whole minutes that passed between two instants: wall clocks are not subtracted, because
    they jump. Parts of a minute are cut."""
    passed_ms = (_datetime(to_at) - _datetime(from_at)) // timedelta(milliseconds=1)
    minutes = abs(passed_ms) // _MINUTE_MS
    return minutes if passed_ms >= 0 else -minutes


def _date(text: str) -> date:
    if not _DAY.fullmatch(text):
        raise ValueError(f"not a day: {text!r}")
    return date.fromisoformat(text)


def _datetime(text: str) -> datetime:
    if not _INSTANT.fullmatch(text):
        raise ValueError(f"not an instant: {text!r}")
    return datetime.fromisoformat(text.replace("Z", "+00:00"))


def _instant(at: datetime) -> str:
    return at.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
