"""The written form of single values: ids, lot codes, days, moments, subjects."""

from __future__ import annotations

import re
from datetime import date, datetime

UUID = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}")
UUID7 = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")
LOT_CODE = re.compile(r"[A-Z0-9][A-Z0-9-]{0,39}")
ID = re.compile(r"[A-Za-z0-9_-]{1,40}")
CAPITALS = re.compile(r"[A-Z]+")
DECIMAL = re.compile(r"-?[0-9]+(\.[0-9]+)?")
ZONE = re.compile(r"[A-Z][A-Za-z0-9_+-]{0,31}(/[A-Za-z0-9_+-]{1,32}){0,2}")
FIELD_NAME = re.compile(r"[a-z][a-z0-9_]{0,39}")

_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_MOMENT = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\.[0-9]{3}Z")
_SUBJECT = re.compile(r"([a-z]{1,20}):(.{1,80})")
_BLANK = re.compile(r"[ \t\r\n\u00a0]*")
_UNSTORABLE = re.compile(r"[\u0000\ud800-\udfff]")  # PostgreSQL takes neither (R10)

DAY_YEARS = range(2000, 2101)

_TYPES_WITH_CODE = ("lot", "price")


def is_blank(text: str) -> bool:
    """Nothing but spaces."""
    return _BLANK.fullmatch(text) is not None


def is_storable(text: str) -> bool:
    """Free of U+0000 and of halves of surrogate pairs."""
    return _UNSTORABLE.search(text) is None


def is_day(text: str) -> bool:
    """A day of the calendar, `2026-11-10`, of any year."""
    if _DAY.fullmatch(text) is None:
        return False
    try:
        date.fromisoformat(text)
    except ValueError:
        return False
    return True


def is_moment(text: str) -> bool:
    """A time in UTC to the millisecond, `2026-11-10T08:15:00.000Z`.

    Of any year that can be written so: a wrong clock is never a reason to refuse (R33).
    """
    if _MOMENT.fullmatch(text) is None:
        return False
    try:
        datetime.fromisoformat(text)
    except ValueError:
        return False
    return True


def is_subject(text: str, *, types: tuple[str, ...]) -> bool:
    """`type:id` with a type of `types` and an id in the form that type has."""
    found = _SUBJECT.fullmatch(text)
    if found is None or found[1] not in types:
        return False
    if found[1] in _TYPES_WITH_CODE:
        return LOT_CODE.fullmatch(found[2]) is not None
    if found[1] == "day":
        place, _, on = found[2].rpartition(":")
        return ID.fullmatch(place) is not None and is_day(on)
    return ID.fullmatch(found[2]) is not None
