"""What stands around every body: who wrote the entry, where, when, about what (R8)."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields

from kitchenlog.entries import forms
from kitchenlog.entries.kinds import SUBJECT_TYPES
from kitchenlog.entries.readable import unreadable
from kitchenlog.entries.refusals import Refusal
from kitchenlog.entries.values import text_refusal

SUBJECTS_MOST = 100
SEEN_CHARS = 200
APP_VERSION_CHARS = 40
DEVICE_SEQ_MOST = 2**53 - 1  # what a phone counts exactly
OFFSET_MOST_MIN = 15 * 60


@dataclass(frozen=True, kw_only=True)
class Entry:
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
    trouble = unreadable(value)
    if trouble is not None:
        return trouble
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
    wire = {field.name: getattr(entry, field.name) for field in fields(entry)}
    return {**wire, "subjects": list(entry.subjects)}


def uuid7(at_ms: int, *, chance: bytes) -> str:
    """A UUID of version 7: 48 bits of Unix milliseconds, then 10 bytes of chance (RFC 9562)."""
    assert len(chance) == 10
    whole = bytearray(at_ms.to_bytes(6, "big") + chance)
    whole[6] = whole[6] & 0x0F | 0x70
    whole[8] = whole[8] & 0x3F | 0x80
    digits = whole.hex()
    return "-".join((digits[:8], digits[8:12], digits[12:16], digits[16:20], digits[20:]))


def _matching(
    is_right: Callable[[str], object], key: str
) -> Callable[[object, str], Refusal | None]:
    def check(value: object, at: str) -> Refusal | None:
        return None if isinstance(value, str) and is_right(value) else Refusal(key, at)

    return check


def _text(most: int) -> Callable[[object, str], Refusal | None]:
    return lambda value, at: text_refusal(value, most=most, at=at)


def _whole(least: int, most: int) -> Callable[[object, str], Refusal | None]:
    def check(value: object, at: str) -> Refusal | None:
        if not isinstance(value, int) or isinstance(value, bool):
            return Refusal("whole.wrong", at)
        if value < least:
            return Refusal("number.too_small", at, {"least": str(least)})
        return Refusal("number.too_large", at, {"most": str(most)}) if value > most else None

    return check


def _seen(value: object, at: str) -> Refusal | None:
    """A cursor, or nothing where the device had not pulled yet."""
    return None if value == "" else text_refusal(value, most=SEEN_CHARS, at=at)


def _subjects(value: object, at: str) -> Refusal | None:
    if not isinstance(value, list):
        return Refusal("list.wrong", at)
    if len(value) > SUBJECTS_MOST:
        return Refusal("list.too_long", at, {"most": str(SUBJECTS_MOST)})
    for number, subject in enumerate(value):
        if not isinstance(subject, str) or not forms.is_subject(subject, types=SUBJECT_TYPES):
            return Refusal("subject.wrong", f"{at}[{number}]")
    return None


def _body(value: object, at: str) -> Refusal | None:
    return None if isinstance(value, dict) else Refusal("group.wrong", at)


_uuid = _matching(forms.UUID.fullmatch, "uuid.wrong")
_moment = _matching(forms.is_moment, "moment.wrong")

_CHECKS: dict[str, Callable[[object, str], Refusal | None]] = {
    "id": _matching(forms.UUID7.fullmatch, "uuid.wrong"),
    "kind": _matching(forms.FIELD_NAME.fullmatch, "kind.unknown"),
    "version": _whole(1, 9_999),
    "subjects": _subjects,
    "cooperative": _uuid,
    "author": _uuid,
    "device": _uuid,
    "device_seq": _whole(1, DEVICE_SEQ_MOST),
    "recorded_at": _moment,
    "tz": _matching(forms.ZONE.fullmatch, "zone.unknown"),
    "utc_offset_min": _whole(-OFFSET_MOST_MIN, OFFSET_MOST_MIN),
    # A wrong clock may lie in any year (R33), so this day has no bounds.
    "local_date": _matching(forms.is_day, "day.wrong"),
    "seen": _seen,
    "happened_at": _moment,
    "app_version": _text(APP_VERSION_CHARS),
    "body": _body,
}
