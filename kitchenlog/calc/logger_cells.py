"""Cells of a logger's CSV text: what parts them, and the numbers in them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from kitchenlog.calc.numbers import parse_decimal, rounded, written

PLACES_MAX = 3  # of a temperature; more are an artefact of the software and are rounded
_NUMBER = re.compile(
    r"([+\u2212-]?)([0-9]{1,9})(?:([.,])([0-9]{1,15}))? *[°º]? *([cf])?",
    re.ASCII | re.IGNORECASE,
)


@dataclass(frozen=True, kw_only=True)
class Heat:
    """A temperature as plain text with a point, and its unit where the cell says one."""

    text: str
    unit: str | None


def delimiter_of(lines: Sequence[str]) -> str | None:
    """Tabulator, semicolon, bar or comma: the first that half of the lines have."""
    for sign in ("\t", ";", "|", ","):
        if 2 * sum(sign in line for line in lines) >= len(lines):
            return sign
    return None


def cells_of(line: str, delimiter: str) -> tuple[str, ...]:
    """The cells of a line; in quotes a delimiter is a letter and two quotes are one."""
    cells: list[str] = []
    cell, is_quoted, was_closed = "", False, False
    for sign in line:
        if sign == '"':
            cell += '"' if was_closed else ""
            was_closed = is_quoted
            is_quoted = not is_quoted
            continue
        was_closed = False
        if sign == delimiter and not is_quoted:
            cells.append(cell)
            cell = ""
        else:
            cell += sign
    return tuple(each.strip(" \t") for each in (*cells, cell))


def number_of(cell: str) -> str | None:
    """A number with a decimal point or comma, with or without a unit of temperature, as plain
    text; None for what is none."""
    found = _NUMBER.fullmatch(cell)
    if found is None:
        return None
    sign, whole, _, places, _ = found.groups(default="")
    minus = "-" if sign in ("-", "\u2212") else ""
    return f"{minus}{whole}.{places}" if places else f"{minus}{whole}"


def heat_of(cell: str) -> Heat | None:
    """A temperature of up to four digits, with at most three places; None for what is none."""
    number, found = number_of(cell), _NUMBER.fullmatch(cell)
    if number is None or found is None or len(found.group(2)) > 4:
        return None
    has_more = len(found.group(4) or "") > PLACES_MAX
    unit = {"": None, "c": "degC", "f": "degF"}[(found.group(5) or "").lower()]
    exact = parse_decimal(number)
    return Heat(text=written(rounded(exact, PLACES_MAX) if has_more else exact), unit=unit)
