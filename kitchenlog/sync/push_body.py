"""The body of a push: read once, exactly, and never spoilt as a whole by one entry in it."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any
from uuid import UUID

from django.conf import settings
from rest_framework.parsers import BaseParser

from kitchenlog.entries import forms
from kitchenlog.members.json_body import DUPLICATE_KEYS, bytes_within_limit, read_json
from kitchenlog.members.refusals import Refused

_SPACE = re.compile(r"[ \t\n\r]*")
# How JavaScript writes a time before the year 0 or after 9999.
_BEYOND_YEARS = re.compile(r"([+-])[0-9]{6}-[0-9]{2}-[0-9]{2}T[0-9:.]{12}Z")
_EARLIEST = datetime.min.replace(tzinfo=UTC)
_LATEST = datetime.max.replace(tzinfo=UTC)


@dataclass(frozen=True)
class PushBody:
    """A push as it came. `device_time` is the device's clock, right or wrong."""

    push: str
    device: UUID
    device_time: datetime
    entries: list[object]
    raw: bytes

    def raw_entries(self) -> list[str]:
        """The text of each entry as it was sent; for the few that are kept aside."""
        return _items_of(self.raw.decode(), "entries")


class PushParser(BaseParser):
    """Reads a push of at most DATA_UPLOAD_MAX_MEMORY_SIZE bytes."""

    media_type = "application/json"

    def parse(
        self,
        stream: Any,
        media_type: str | None = None,
        parser_context: Mapping[str, Any] | None = None,
    ) -> Any:
        """The push, or `Refused` for one too large or not to be read as a whole (R32)."""
        raw = bytes_within_limit(stream)
        return _parsed(read_json(raw), raw)


def _parsed(found: object, raw: bytes) -> PushBody:
    if not isinstance(found, dict) or DUPLICATE_KEYS in found:
        raise Refused("unreadable", 400, "The body must be one object with each key once.")
    if found.get("protocol") != 1 or isinstance(found["protocol"], bool):
        raise Refused("unreadable", 400, "This server speaks protocol 1.", "protocol")
    entries = found.get("entries")
    if not isinstance(entries, list):
        raise Refused("unreadable", 400, "entries must be a list.", "entries")
    if len(entries) > settings.PUSH_ENTRIES_MAX:
        most = settings.PUSH_ENTRIES_MAX
        raise Refused("too_large", 413, f"Send at most {most} entries at once.", "entries")
    if not isinstance(found.get("epoch"), str):
        raise Refused("unreadable", 400, "epoch must be a text.", "epoch")
    return PushBody(
        push=_uuid_text(found, "push"),
        device=UUID(_uuid_text(found, "device")),
        device_time=_clock(found, "device_time"),
        entries=entries,
        raw=raw,
    )


def _uuid_text(found: Mapping[str, object], name: str) -> str:
    value = found.get(name)
    if not isinstance(value, str) or not forms.UUID.fullmatch(value):
        raise Refused("unreadable", 400, f"{name} must be a UUID in lower case.", name)
    return value


def _clock(found: Mapping[str, object], name: str) -> datetime:
    """What the device's clock showed; beyond the years a time can hold, the nearest it can.

    However wrong a clock is, what its device hands over must come through (R33).
    """
    value = found.get(name)
    text = value if isinstance(value, str) else ""
    beyond = _BEYOND_YEARS.fullmatch(text)
    if beyond is not None:
        return _LATEST if beyond[1] == "+" else _EARLIEST
    if not forms.is_moment(text):
        raise Refused(
            "unreadable", 400, f"{name} must be a time as in 2026-11-10T08:15:00.000Z.", name
        )
    return datetime.fromisoformat(text)


def _items_of(text: str, name: str) -> list[str]:
    """The texts of the items of the list `name` in a JSON object that was read before."""
    decoder = json.JSONDecoder(parse_int=str, parse_float=str)
    at = _after_space(text, 0) + 1
    while True:
        at = _after_space(text, at)
        key, at = decoder.raw_decode(text, at)
        at = _after_space(text, _after_space(text, at) + 1)
        if key == name:
            return _sliced(decoder, text, at + 1)
        at = decoder.raw_decode(text, at)[1]
        at = _after_space(text, at) + 1


def _sliced(decoder: json.JSONDecoder, text: str, at: int) -> list[str]:
    items = []
    at = _after_space(text, at)
    while text[at] != "]":
        end = decoder.raw_decode(text, at)[1]
        items.append(text[at:end])
        at = _after_space(text, end)
        if text[at] == ",":
            at = _after_space(text, at + 1)
    return items


def _after_space(text: str, at: int) -> int:
    found = _SPACE.match(text, at)
    assert found is not None  # it matches nothing as well
    return found.end()
