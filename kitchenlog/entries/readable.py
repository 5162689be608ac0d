"""What can be read at all: numbers kept exact, and how deep and long an entry may be."""

from __future__ import annotations

from collections.abc import Iterator

from kitchenlog.entries.refusals import Refusal

DEPTH_MOST = 20  # R32
TEXT_CHARS_MOST = 10_000  # R32


class Inexact(str):
    """A JSON number with a point, an exponent or too many digits, or NaN; as it was written.

    Whoever reads JSON from outside gives these, so that only the entry that has one is refused.
    """

    __slots__ = ()


def unreadable(value: object, *, depth: int = 1) -> Refusal | None:
    """Why nobody should look into this value further; `depth` is the level it stands on."""
    for part, level in _parts(value, depth):
        if isinstance(part, Inexact | float):
            return Refusal("entry.not_exact", "")
        if isinstance(part, str) and len(part) > TEXT_CHARS_MOST:
            return Refusal("entry.text_too_long", "", {"most": str(TEXT_CHARS_MOST)})
        if isinstance(part, dict | list) and level > DEPTH_MOST:
            return Refusal("entry.too_deep", "", {"most": str(DEPTH_MOST)})
    return None


def _parts(value: object, depth: int) -> Iterator[tuple[object, int]]:
    """Each value inside, keys too, with its level; by a stack, for no depth is known yet."""
    waiting = [(value, depth)]
    while waiting:
        part, level = waiting.pop()
        yield part, level
        if isinstance(part, dict):
            waiting.extend((key, level + 1) for key in part)
            waiting.extend((inner, level + 1) for inner in part.values())
        elif isinstance(part, list):
            waiting.extend((inner, level + 1) for inner in part)
