"""Times as loggers write them: 08:30, 1:02:03 PM, 2026-11-10T08:30Z, 10.11.2026, 11/10/26.

A clock is read to the second. Whether 10/11 is a day or a month first is decided by all rows of
a file together: by a number above 12, else by what makes the log shorter.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

DAY_S = 86_400
HALF_DAY_S = 43_200

_CLOCK = r"([0-9]{1,3}):([0-5][0-9])(?::([0-5][0-9])(?:[.,][0-9]{1,9})?)?(?: ?([ap])\.?m\.?)?"
_ZONE = r"(?: ?(z|[+-][0-9]{2}:?[0-9]{2}))?"
_DATE = (
    r"(?:([0-9]{4})([-/.])([0-9]{1,2})\2([0-9]{1,2})"
    r"|([0-9]{1,2})([-/.])([0-9]{1,2})\6([0-9]{4}|[0-9]{2}))"
)
_MOMENT = re.compile(
    rf"(?:{_DATE}(?:[t ,]+{_CLOCK}{_ZONE})?|{_CLOCK})", re.ASCII | re.IGNORECASE
)


@dataclass(frozen=True, kw_only=True)
class Moment:
    """A time as it was written: seconds of the day (or elapsed), the day where there is one,
    in days since 1970, and minutes ahead of UTC where that is said.

    `swapped_day` is the day with day and month the other way round, where the text leaves that
    open; `day` is then the one with the day first, and either is None where there is no such
    day.
    """

    second: int | None
    day: int | None
    swapped_day: int | None
    is_open: bool
    offset_min: int | None


def moment_of(text: str) -> Moment | None:
    """What a cell says of a time, None for what is none: a day, a clock, or both."""
    found = _MOMENT.fullmatch(text)
    if found is None:
        return None
    part = found.groups()
    if part[0] is None and part[4] is None:
        second = _second_of(part[13:17])
        no_day = Moment(
            second=second, day=None, swapped_day=None, is_open=False, offset_min=None
        )
        return None if second is None else no_day
    second = _second_of(part[8:12]) if part[8] is not None else None
    if part[8] is not None and (second is None or second >= DAY_S):
        return None
    dated = _dated(part)
    return dated and replace(dated, second=second, offset_min=_offset_of(part[12]))


def fits(moment: Moment, other: Moment) -> bool:
    """Whether two times say the same things, so that they can stand in one file: a day, a
    clock, a place on earth."""
    return _form(moment) == _form(other)


def together(moments: Sequence[Moment]) -> tuple[int, ...] | None:
    """Moments of one file, in its order, as seconds since 1970, or since midnight of the first
    where no day is said; None where they do not fit together.

    Clocks without a day that fall by more than 12 hours have passed midnight.
    """
    if not moments or not all(fits(each, moments[0]) for each in moments):
        return None
    if all(each.day is None and not each.is_open for each in moments):
        return _past_midnight([each.second or 0 for each in moments])
    readings = [_absolute(moments, is_swapped=False)]
    if any(each.is_open for each in moments):
        readings.append(_absolute(moments, is_swapped=True))
    fitting = [each for each in readings if each is not None]
    # Of equal lengths the day first.
    return min(fitting, key=lambda each: max(each) - min(each), default=None)


def is_day_known(moments: Sequence[Moment]) -> bool:
    """Whether it is certain on which days the moments were, and not only how far apart."""
    if not all(each.day is not None or each.is_open for each in moments):
        return False
    if all(each.day == each.swapped_day for each in moments):
        return True
    first, swapped = _absolute(moments, is_swapped=False), _absolute(moments, is_swapped=True)
    return (first is None) != (swapped is None)


def written_time(second: int) -> str:
    """Seconds since 1970 as YYYY-MM-DDTHH:MM:SS."""
    day, rest = divmod(second, DAY_S)
    year, month, of_month = _civil(day)
    clock = f"{rest // 3600:02}:{rest // 60 % 60:02}:{rest % 60:02}"
    return f"{year:04}-{month:02}-{of_month:02}T{clock}"


def _form(moment: Moment) -> tuple[bool, bool, bool]:
    """What a time says: whether a day, a clock and its place on earth."""
    is_dated = moment.day is not None or moment.is_open
    return is_dated, moment.second is not None, moment.offset_min is not None


def _second_of(part: Sequence[str | None]) -> int | None:
    hour, minute, second, half = part
    hours = int(hour or 0)
    if half is not None:
        if not 1 <= hours <= 12:
            return None
        hours = hours % 12 + (12 if half in "pP" else 0)
    return hours * 3600 + int(minute or 0) * 60 + int(second or 0)


def _dated(part: Sequence[str | None]) -> Moment | None:
    if part[0] is not None:
        day = _day_number(int(part[0]), int(part[2] or 0), int(part[3] or 0))
        plain = Moment(second=None, day=day, swapped_day=day, is_open=False, offset_min=None)
        return None if day is None else plain
    first, second, year = (int(each or 0) for each in (part[4], part[6], part[7]))
    full_year = year + 2000 if year < 100 else year
    day_first = _day_number(full_year, second, first)
    # Points are written where the day comes first.
    is_open = part[5] != "."
    swapped = _day_number(full_year, first, second) if is_open else day_first
    if day_first is None and swapped is None:
        return None
    return Moment(
        second=None, day=day_first, swapped_day=swapped, is_open=is_open, offset_min=None
    )


def _offset_of(zone: str | None) -> int | None:
    if zone is None:
        return None
    if zone in "zZ":
        return 0
    digits = zone[1:].replace(":", "")
    minutes = int(digits[:2]) * 60 + int(digits[2:])
    return -minutes if zone[0] == "-" else minutes


def _past_midnight(seconds: Sequence[int]) -> tuple[int, ...]:
    rolled: list[int] = []
    days = 0
    for place, second in enumerate(seconds):
        if place > 0 and seconds[place - 1] - second > HALF_DAY_S:
            days += 1
        rolled.append(second + days * DAY_S)
    return tuple(rolled)


def _absolute(moments: Sequence[Moment], *, is_swapped: bool) -> tuple[int, ...] | None:
    made: list[int] = []
    for each in moments:
        day = each.swapped_day if is_swapped else each.day
        if day is None:
            return None
        made.append(day * DAY_S + (each.second or 0) - (each.offset_min or 0) * 60)
    return tuple(made)


def _day_number(year: int, month: int, of_month: int) -> int | None:
    """Days since 1970-01-01 in the Gregorian calendar; None where there is no such day."""
    if not (1 <= month <= 12 and 1 <= of_month <= 31):
        return None
    # Years that begin in March have their leap day last.
    shifted = year - 1 if month <= 2 else year
    of_year = (153 * (month - 3 if month > 2 else month + 9) + 2) // 5 + of_month - 1
    number = 365 * shifted + shifted // 4 - shifted // 100 + shifted // 400 + of_year - 719_468
    return number if _civil(number) == (year, month, of_month) else None


def _civil(number: int) -> tuple[int, int, int]:
    """Year, month and day of a number of days since 1970."""
    days = number + 719_468
    era, of_era = divmod(days, 146_097)
    of_era_year = (of_era - of_era // 1460 + of_era // 36_524 - of_era // 146_096) // 365
    of_year = of_era - (365 * of_era_year + of_era_year // 4 - of_era_year // 100)
    march = (5 * of_year + 2) // 153
    month = march + 3 if march < 10 else march - 9
    year = of_era_year + era * 400 + (1 if month <= 2 else 0)
    return year, month, of_year - (153 * march + 2) // 5 + 1
