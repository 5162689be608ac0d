"""What stands around every body: who wrote the entry, where, when, about what (R8)."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from kitchenlog.entries import forms
from kitchenlog.entries.kinds import SUBJECT_TYPES
from kitchenlog.entries.readable import unreadable
from kitchenlog.entries.refusals import Refusal
from kitchenlog.entries.values import (
    Check,
    matching,
    subject_check,
    text_check,
    whole_check,
)

SUBJECTS_MOST = 100
SEEN_CHARS = 200
APP_VERSION_CHARS = 40
DEVICE_SEQ_MOST = 2**53 - 1  # what a phone counts exactly
OFFSET_MOST_MIN = 15 * 60


class Entry(NamedTuple):
    """One entry as made on a device: exactly the fields its fingerprint is taken of."""

    id: str
    kind: str
    version: int
    subjects: tuple[str, ...]
    cooperative: str
    author: str
    device: str
    device_seq: int
    recorded_at: str
    tz: str
    utc_offset_min: int
    local_date: str
    seen: str
    happened_at: str
    app_version: str
    body: Mapping[str, object]


def parse_envelope(value: object) -> Entry | Refusal:
    """An entry whose envelope is right; its kind and body are not looked into."""
    return unreadable(value) or entry_in(value)


def entry_in(value: object) -> Entry | Refusal:
    """As above, for a body that will be looked into: nothing unreadable passes that."""
    if not isinstance(value, dict):
        return Refusal("group.wrong", "")
    if not value.keys() <= _CHECKS.keys():
        name = min(value.keys() - _CHECKS.keys())
        return Refusal("field.unknown", name if forms.FIELD_NAME.fullmatch(name) else "?")
    for name, check in _CHECKS.items():
        refusal = check(value[name], name) if name in value else Refusal("field.missing", name)
        if refusal is not None:
            return refusal
    return Entry(**{**value, "subjects": tuple(value["subjects"])})


def wire_entry(entry: Entry) -> dict[str, object]:
    """The entry as it travels and as its fingerprint is taken."""
    return {**entry._asdict(), "subjects": list(entry.subjects)}


def uuid7(at_ms: int, *, chance: bytes) -> str:
    """A UUID of version 7: 48 bits of Unix milliseconds, then 10 bytes of chance (RFC 9562)."""
    assert len(chance) == 10
    whole = bytearray(at_ms.to_bytes(6, "big") + chance)
    whole[6] = whole[6] & 0x0F | 0x70
    whole[8] = whole[8] & 0x3F | 0x80
    digits = whole.hex()
    return "-".join((digits[:8], digits[8:12], digits[12:16], digits[16:20], digits[20:]))


def _seen(value: object, at: str) -> Refusal | None:
    """A cursor, or nothing where the device had not pulled yet."""
    return None if type(value) is str and not value else _cursor(value, at)


_cursor = text_check(SEEN_CHARS)


def _subjects(value: object, at: str) -> Refusal | None:
    if not isinstance(value, list):
        return Refusal("list.wrong", at)
    if len(value) > SUBJECTS_MOST:
        return Refusal("list.too_long", at, {"most": str(SUBJECTS_MOST)})
    for number, subject in enumerate(value):
        refusal = _subject(subject, f"{at}[{number}]")
        if refusal is not None:
            return refusal
    return None


_subject = subject_check(SUBJECT_TYPES)


def _body(value: object, at: str) -> Refusal | None:
    return None if isinstance(value, dict) else Refusal("group.wrong", at)


_uuid = matching(forms.UUID.fullmatch, "uuid.wrong")
_moment = matching(forms.is_moment, "moment.wrong")

_CHECKS: dict[str, Check] = {
    "id": matching(forms.UUID7.fullmatch, "uuid.wrong"),
    "kind": matching(forms.FIELD_NAME.fullmatch, "kind.unknown"),
    "version": whole_check(1, 9_999),
    "subjects": _subjects,
    "cooperative": _uuid,
    "author": _uuid,
    "device": _uuid,
    "device_seq": whole_check(1, DEVICE_SEQ_MOST),
    "recorded_at": _moment,
    "tz": matching(forms.ZONE.fullmatch, "zone.unknown"),
    "utc_offset_min": whole_check(-OFFSET_MOST_MIN, OFFSET_MOST_MIN),
    # A wrong clock may lie in any year (R33), so this day has no bounds.
    "local_date": matching(forms.is_day, "day.wrong"),
    "seen": _seen,
    "happened_at": _moment,
    "app_version": text_check(APP_VERSION_CHARS),
    "body": _body,
}
