"""What can be read at all: numbers kept exact, and how deep and long an entry may be."""

from __future__ import annotations

from kitchenlog.entries.refusals import Refusal

DEPTH_MOST = 20  # R32
TEXT_CHARS_MOST = 10_000  # R32


class Inexact(str):
    """A JSON number with a point, an exponent or too many digits, or NaN; as it was written.

    Whoever reads JSON from outside gives these, so that only the entry that has one is refused.
    """

    __slots__ = ()


def unreadable(value: object, *, depth: int = 1) -> Refusal | None:
    """Why nobody should look into this value further; `depth` is the level it stands on.

    Level by level, for no depth is known yet; every entry of a push is walked, so it is quick.
    """
    parts, level = [value], depth
    while parts:
        inner: list[object] = []
        for part in parts:
            if isinstance(part, str):
                if len(part) > TEXT_CHARS_MOST or isinstance(part, Inexact):
                    return _text_refusal(part)
            elif isinstance(part, float):
                return Refusal("entry.not_exact", "")
            elif isinstance(part, dict | list):
                if level > DEPTH_MOST:
                    return Refusal("entry.too_deep", "", {"most": str(DEPTH_MOST)})
                inner += part
                inner += part.values() if isinstance(part, dict) else ()
        parts, level = inner, level + 1
    return None


def _text_refusal(part: str) -> Refusal:
    if isinstance(part, Inexact):
        return Refusal("entry.not_exact", "")
    return Refusal("entry.text_too_long", "", {"most": str(TEXT_CHARS_MOST)})
