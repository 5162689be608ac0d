"""The cursor phones hand back: which log, which epoch, whose view, up to which number."""

from __future__ import annotations

import base64
import binascii
import re
from dataclasses import dataclass
from uuid import UUID

_FORM = re.compile(r"1 ([0-9a-f]{32}) ([0-9a-z-]{1,40}) ([a-z]{1,12}) (0|[1-9][0-9]{0,17})")
CURSOR_CHARS = 200


@dataclass(frozen=True)
class Cursor:
    """A place in one log as seen by those of one view; another view makes it worthless."""

    cooperative: UUID
    epoch: str
    view: str
    seq: int


def written(cursor: Cursor) -> str:
    """The cursor as opaque text."""
    plain = f"1 {cursor.cooperative.hex} {cursor.epoch} {cursor.view} {cursor.seq}"
    return base64.urlsafe_b64encode(plain.encode()).decode().rstrip("=")


def parse_cursor(text: str) -> Cursor | None:
    """What a cursor says, None for anything this server could not have written."""
    if len(text) > CURSOR_CHARS:
        return None
    try:
        plain = base64.b64decode(
            text.encode() + b"=" * (-len(text) % 4), altchars=b"-_", validate=True
        ).decode()
    except (ValueError, binascii.Error):
        return None
    found = _FORM.fullmatch(plain)
    if found is None:
        return None
    cursor = Cursor(UUID(found[1]), found[2], found[3], int(found[4]))
    return cursor if written(cursor) == text else None
