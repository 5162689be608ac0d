"""A time-temperature log: whole seconds and thousandths of a degree, so that 10 000 rows are
sorted, judged and drawn at once and a limit that is met exactly is met."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise
from typing import Literal

from kitchenlog.calc.bodies import Body, text_in
from kitchenlog.calc.numbers import product
from kitchenlog.calc.temperature import fahrenheit

HeatUnit = Literal["degC", "degF"]

ROWS_MAX = 10_000
AT_S_MAX = 31_622_400  # a leap year: longer than anything is cooked or held
# A step longer than this is not believed to be straight; own proposal, a habit and no rule.
GAP_S = 600
_THOUSAND = Decimal(1000)
_GRAMMAR = re.compile(r"(-?)([0-9]{1,4})(?:\.([0-9]{1,3}))?")


@dataclass(frozen=True, kw_only=True)
class HeatLog:
    """Readings in order of time, one for each second that was read, in thousandths of `unit`.

    Where one second has several readings that differ, `low` has the coldest, `high` the warmest
    and `contradicted_s` the second: a judgement takes whichever is worse for it.
    """

    unit: HeatUnit
    at_s: tuple[int, ...]
    low: tuple[int, ...]
    high: tuple[int, ...]
    contradicted_s: tuple[int, ...]


@dataclass(frozen=True, kw_only=True)
class Gap:
    """Two readings that follow one another further apart than is believed."""

    from_s: int
    to_s: int


def heat_log(at_s: Sequence[int], temperatures: Sequence[str], unit: str) -> HeatLog:
    """The two arrays of an entry as a log: seconds since it began, and what was read then.

    Rows may come in any order; the same reading twice counts once. Raises ValueError for
    arrays of different length, no rows or more than 10 000, another unit, a time that is no
    whole second from 0 to a year, and a temperature with more than 4 digits or 3 places.
    """
    count = len(at_s)
    if unit not in ("degC", "degF"):
        raise ValueError(f"{unit!r} is not the unit of a log")
    if count != len(temperatures) or not 0 < count <= ROWS_MAX:
        raise ValueError("a log has 1 to 10 000 rows of a time and a temperature")
    for second in at_s:
        if type(second) is not int or not 0 <= second <= AT_S_MAX:
            raise ValueError(f"not a second of a log: {second!r}")
    read = [in_thousandths(text) for text in temperatures]
    return _in_order(at_s, read, "degF" if unit == "degF" else "degC")


def log_in(body: Body) -> HeatLog | None:
    """The log in the body of a `heat_log`; None where its rows cannot be read."""
    at_s, temperatures = body.get("at_s"), body.get("temperatures")
    if not isinstance(at_s, list | tuple) or not isinstance(temperatures, list | tuple):
        return None
    if not all(isinstance(each, str) for each in temperatures):
        return None
    try:
        return heat_log(at_s, temperatures, text_in(body, "unit") or "")
    except ValueError:
        return None


def in_thousandths(text: str) -> int:
    """A temperature as a whole number of thousandths. Raises ValueError for anything but up
    to 4 digits and 3 places."""
    found = _GRAMMAR.fullmatch(text)
    if found is None:
        raise ValueError(f"not a temperature of a log: {text!r}")
    sign, whole, places = found.groups(default="")
    size = int(whole) * 1000 + int(places.ljust(3, "0"))
    return -size if sign else size


def limit_in_thousandths(celsius: Decimal, unit: str) -> int:
    """A limit in degC as thousandths of the unit of a log: 57 degC are exactly 134.6 degF.

    Raises ValueError where that is no whole number.
    """
    exact = product(fahrenheit(celsius) if unit == "degF" else celsius, _THOUSAND)
    if exact != exact.to_integral_value():
        raise ValueError(f"not a limit of a log: {celsius}")
    return int(exact)


def gaps(log: HeatLog, longest_s: int = GAP_S) -> tuple[Gap, ...]:
    """Where readings that follow one another are more than so many seconds apart."""
    steps = pairwise(log.at_s)
    return tuple(Gap(from_s=a, to_s=b) for a, b in steps if b - a > longest_s)


def degrees_at(log: HeatLog, row: int) -> tuple[float, float]:
    """The coldest and the warmest reading of a row in degrees, as doubles."""
    return log.low[row] / 1000, log.high[row] / 1000


def outline(log: HeatLog, columns: int) -> tuple[int, ...]:
    """The rows a drawing of so many columns needs: of each column the first, coldest, warmest
    and last, so that no peak is lost. Raises ValueError without a column."""
    if columns < 1:
        raise ValueError("a drawing has at least one column")
    first_s, span_s = log.at_s[0], max(log.at_s[-1] - log.at_s[0], 1)
    by_column: dict[int, list[int]] = {}
    for row, second in enumerate(log.at_s):
        column = min((second - first_s) * columns // span_s, columns - 1)
        by_column.setdefault(column, []).append(row)
    shown: list[int] = []
    for rows in by_column.values():
        coldest = min(rows, key=lambda row: log.low[row])
        warmest = max(rows, key=lambda row: log.high[row])
        shown.extend(sorted({rows[0], coldest, warmest, rows[-1]}))
    return tuple(shown)


def _in_order(at_s: Sequence[int], read: Sequence[int], unit: HeatUnit) -> HeatLog:
    seconds: list[int] = []
    low: list[int] = []
    high: list[int] = []
    for row in sorted(range(len(at_s)), key=lambda row: at_s[row]):
        if seconds and seconds[-1] == at_s[row]:
            low[-1], high[-1] = min(low[-1], read[row]), max(high[-1], read[row])
        else:
            seconds.append(at_s[row])
            low.append(read[row])
            high.append(read[row])
    return HeatLog(
        unit=unit,
        at_s=tuple(seconds),
        low=tuple(low),
        high=tuple(high),
        contradicted_s=tuple(s for s, a, b in zip(seconds, low, high, strict=True) if a != b),
    )
