"""What can be read at all: JSON kept exact, and how deep and long an entry may be."""

from __future__ import annotations

import json
from collections.abc import Iterator

from kitchenlog.entries.refusals import Refusal

DEPTH_MOST = 20  # R32
TEXT_CHARS_MOST = 10_000  # R32
WHOLE_DIGITS_MOST = 15  # below 2^53: what a phone holds exactly


class Inexact(str):
    """A JSON number with a point, an exponent or too many digits, or NaN; as it was written."""

    __slots__ = ()


class DoubledFields(dict[str, object]):
    """A JSON object that named a field twice; the last one is held."""


def read_json(raw: str | bytes) -> object:
    """JSON whose flaws stay inside the entry that has them (R32): see `unreadable`.

    Raises ValueError where the text as a whole is no JSON, is not UTF-8 or nests too deep.
    """
    try:
        return json.loads(
            raw,
            parse_int=_whole,
            parse_float=Inexact,
            parse_constant=Inexact,
            object_pairs_hook=_fields,
        )
    except RecursionError:
        raise ValueError("nested too deep") from None


def unreadable(value: object, *, depth: int = 1) -> Refusal | None:
    """Why nobody should look into this value further; `depth` is the level it stands on."""
    for part, level in _parts(value, depth):
        if isinstance(part, Inexact):
            return Refusal("entry.not_exact", "")
        if isinstance(part, str) and len(part) > TEXT_CHARS_MOST:
            return Refusal("entry.text_too_long", "", {"most": str(TEXT_CHARS_MOST)})
        if isinstance(part, DoubledFields):
            return Refusal("entry.field_twice", "")
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


def _whole(text: str) -> int | Inexact:
    return int(text) if len(text.lstrip("-")) <= WHOLE_DIGITS_MOST else Inexact(text)


def _fields(pairs: list[tuple[str, object]]) -> dict[str, object]:
    fields = dict(pairs)
    return fields if len(fields) == len(pairs) else DoubledFields(fields)
