"""Lot codes that phones can make without asking anyone: letters, day, device mark, number."""

import re
import unicodedata
from collections.abc import Iterable

LETTERS_MAX = 3

_LOT_CODE = re.compile(r"[A-Z0-9][A-Z0-9-]{0,39}")
_LETTERS = re.compile(r"[A-Z]{1,3}")
_MARK = re.compile(r"[A-Z0-9]{2}")
_DAY = re.compile(r"([0-9]{2})([0-9]{2})-([0-9]{2})-([0-9]{2})")
_NO_LETTERS = "L"  # a name in another script still needs a code: L for lot


def is_lot_code(text: str) -> bool:
    """Whether a text may be a lot's code: capital letters, digits and hyphens, at most 40."""
    return _LOT_CODE.fullmatch(text) is not None


def lot_code(letters: str, *, on: str, mark: str, number: int) -> str:
    """MJ-261110-K7-1: letters of the material, day, mark of the device, number of that day.

    Two devices of a cooperative never share a mark, so codes made offline cannot meet. Raises
    ValueError for anything that would not make such a code.
    """
    day = _DAY.fullmatch(on)
    if not (day and _LETTERS.fullmatch(letters) and _MARK.fullmatch(mark) and number >= 1):
        raise ValueError(f"no lot code of {letters!r}, {on!r}, {mark!r}, {number}")
    return f"{letters}-{day[2]}{day[3]}{day[4]}-{mark}-{number}"


def next_number(codes: Iterable[str], letters: str, *, on: str, mark: str) -> int:
    """The number after the highest this device has given to these letters on this day."""
    stem = lot_code(letters, on=on, mark=mark, number=1)[:-1]
    numbers = [code.removeprefix(stem) for code in codes if code.startswith(stem)]
    return max((int(n) for n in numbers if re.fullmatch(r"[0-9]{1,9}", n)), default=0) + 1


def letters_of(name: str) -> str:
    """Letters for a code from a name: the first of up to three words, or the first two of a
    single word. Accents are dropped; without a Latin letter it is L."""
    bare = unicodedata.normalize("NFD", name).upper()
    words: list[str] = re.findall(r"[A-Z]+", re.sub(r"[\u0300-\u036f']", "", bare))
    if not words:
        return _NO_LETTERS
    if len(words) == 1:
        return words[0][:2]
    return "".join(word[0] for word in words[:LETTERS_MAX])
