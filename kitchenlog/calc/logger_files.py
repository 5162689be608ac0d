"""A logger's CSV text read as a time-temperature log: columns, headings, times and readings.

What cannot be read is a refusal: the key of one sentence and its row. A row without a reading
is left out and named. Nothing is guessed where two answers fit: the person is asked.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from kitchenlog.calc.heat_logs import AT_S_MAX, ROWS_MAX
from kitchenlog.calc.logger_cells import cells_of, delimiter_of, heat_of, number_of
from kitchenlog.calc.logger_times import (
    Moment,
    fits,
    is_day_known,
    moment_of,
    together,
    written_time,
)
from kitchenlog.calc.numbers import parse_decimal, product, rounded

SECONDS_PER = {"s": "1", "min": "60", "h": "3600"}
GOT_CHARS_MAX = 80
TEXT_CHARS_MAX = 4_000_000  # ten times what 10 000 rows of a logger need
_FLAGS = re.ASCII | re.IGNORECASE
_NO_READING = re.compile(r"|-+|n/?a|nan|null|none|err(?:or)?|open", _FLAGS)
_TIME_LABEL = re.compile(r"time|min|sec|hour|elapsed|zeit|hora|heure|[(\[]s[)\]]", _FLAGS)
_HEAT_LABEL = re.compile(r"temp|[°º]|celsius|fahrenheit|probe|core|\bdeg", _FLAGS)
_OTHER_LABEL = re.compile(
    r"humid|\brh\b|%|dew|^(?:#|no\.?|nr\.?|n|id|row|index|record|sample|count)$", _FLAGS
)
_UNIT_LABELS = (
    ("degC", re.compile(r"[°º] ?c\b|\bc\b|celsius|deg ?c\b", _FLAGS)),
    ("degF", re.compile(r"[°º] ?f\b|\bf\b|fahrenheit|deg ?f\b", _FLAGS)),
)
_TIME_UNITS = (
    ("h", re.compile(r"\b(?:h|hrs?|hours?)\b", _FLAGS)),
    ("s", re.compile(r"\b(?:s|secs?|seconds?)\b", _FLAGS)),
    ("min", re.compile(r"\b(?:min|mins|minutes?)\b", _FLAGS)),
)


@dataclass(frozen=True, kw_only=True)
class Asked:
    """What a person said about a file where it does not say so itself; columns from 0."""

    time_column: int | None = None
    temperature_column: int | None = None
    time_unit: str | None = None


@dataclass(frozen=True, kw_only=True)
class Unread:
    """Why a file cannot be read: the key of a sentence, the line of the file, what stood there.

    Keys: empty, no_columns, no_rows, which_column, too_many_rows, cells_missing, time,
    date_order, temperature, unit_differs, too_long.
    """

    key: str
    row: int
    got: str


@dataclass(frozen=True, kw_only=True)
class LoggerLog:
    """The two arrays of an entry, in the order of the file, seconds from the earliest row on.

    `unit` is None where the file does not say it. `begins` is the time of the first reading,
    local unless `is_utc` (the file has offsets), None where the day is not certain. `time_unit`
    is "clock" for times of day, else the unit of the numbers, assumed where nothing said so.
    """

    at_s: tuple[int, ...]
    temperatures: tuple[str, ...]
    unit: str | None
    begins: str | None
    is_utc: bool
    time_unit: str
    is_time_unit_assumed: bool
    time_column: int
    temperature_column: int
    left_out: tuple[int, ...]


@dataclass(frozen=True)
class _Row:
    number: int
    cells: tuple[str, ...]


@dataclass(frozen=True)
class _Columns:
    """Where the log begins in the table, and which columns hold it; `date` stands before a
    clock of its own column."""

    first: int
    date: int | None
    time: int
    temperature: int
    labels: tuple[str, ...]


def logger_log(text: str, asked: Asked = Asked()) -> LoggerLog | Unread:
    """The log in a CSV text, or why there is none to be read.

    Delimiter: tabulator, semicolon, bar or comma, the first that half of the lines have. Lines
    before the first row of a time and a number are its heading. A row whose temperature is
    empty or dashes is left out; anything else that is no number is refused.
    """
    if len(text) > TEXT_CHARS_MAX:
        return _unread("too_many_rows", 1, str(len(text)))
    clean = text.removeprefix("\ufeff").replace("\u00a0", " ").replace("\u202f", " ")
    lines = re.split(r"\r\n|\n|\r", clean)
    filled = [(n, line) for n, line in enumerate(lines, start=1) if line.strip(" \t")]
    if not filled:
        return Unread(key="empty", row=1, got="")
    delimiter = delimiter_of([line for _, line in filled])
    if delimiter is None:
        return _unread("no_columns", filled[0][0], filled[0][1])
    table = [_Row(number, cells_of(line, delimiter)) for number, line in filled]
    columns = _columns(table, asked)
    if isinstance(columns, Unread):
        return columns
    rows = table[columns.first :]
    if len(rows) > ROWS_MAX:
        return _unread("too_many_rows", rows[ROWS_MAX].number, str(len(rows)))
    return _read(rows, columns, asked.time_unit)


def _read(rows: Sequence[_Row], columns: _Columns, time_unit: str | None) -> LoggerLog | Unread:
    label = columns.labels[columns.temperature]
    unit = _first_fitting(_UNIT_LABELS, label)
    temperatures: list[str] = []
    kept: list[_Row] = []
    left_out: list[int] = []
    for row in rows:
        if len(row.cells) <= max(columns.time, columns.temperature):
            return _unread("cells_missing", row.number, " ".join(row.cells))
        cell = row.cells[columns.temperature]
        if _NO_READING.fullmatch(cell):
            left_out.append(row.number)
            continue
        read = heat_of(cell)
        if read is None:
            return _unread("temperature", row.number, cell)
        if read.unit is not None and unit not in (None, read.unit):
            return _unread("unit_differs", row.number, cell)
        unit = read.unit or unit
        temperatures.append(read.text)
        kept.append(row)
    times = _times(kept, columns, time_unit)
    if isinstance(times, Unread):
        return times
    return LoggerLog(
        at_s=times.at_s,
        temperatures=tuple(temperatures),
        unit=unit,
        begins=times.begins,
        is_utc=times.is_utc,
        time_unit=times.unit,
        is_time_unit_assumed=times.is_assumed,
        time_column=columns.time,
        temperature_column=columns.temperature,
        left_out=tuple(left_out),
    )


@dataclass(frozen=True)
class _Times:
    at_s: tuple[int, ...]
    begins: str | None
    unit: str
    is_assumed: bool
    is_utc: bool = False


def _times(kept: Sequence[_Row], columns: _Columns, asked: str | None) -> _Times | Unread:
    if not kept:
        return Unread(key="no_rows", row=1, got="")
    texts = [_time_text(row, columns) for row in kept]
    if moment_of(texts[0]) is not None:
        return _moments(kept, texts)
    label = columns.labels[columns.time]
    said = asked or _first_fitting(_TIME_UNITS, label)
    seconds: list[int] = []
    for row, text in zip(kept, texts, strict=True):
        number = number_of(text)
        if number is None:
            return _unread("time", row.number, text)
        exact = product(parse_decimal(number), parse_decimal(SECONDS_PER[said or "min"]))
        seconds.append(int(rounded(exact, 0)))
    at_s = _from_first(kept, seconds)
    return at_s if isinstance(at_s, Unread) else _Times(at_s, None, said or "min", said is None)


def _moments(kept: Sequence[_Row], texts: Sequence[str]) -> _Times | Unread:
    moments: list[Moment] = []
    for row, text in zip(kept, texts, strict=True):
        moment = moment_of(text)
        if moment is None or not fits(moment, moments[0] if moments else moment):
            return _unread("time", row.number, text)
        moments.append(moment)
    seconds = together(moments)
    if seconds is None:
        return _unread("date_order", kept[0].number, texts[0])
    at_s = _from_first(kept, seconds)
    begins = written_time(min(seconds)) if is_day_known(moments) else None
    return (
        at_s
        if isinstance(at_s, Unread)
        else _Times(at_s, begins, "clock", False, moments[0].offset_min is not None)
    )


def _from_first(kept: Sequence[_Row], seconds: Sequence[int]) -> tuple[int, ...] | Unread:
    first = min(seconds)
    for row, second in zip(kept, seconds, strict=True):
        if second - first > AT_S_MAX:
            return _unread("too_long", row.number, " ".join(row.cells))
    return tuple(second - first for second in seconds)


def _time_text(row: _Row, columns: _Columns) -> str:
    clock = row.cells[columns.time]
    return clock if columns.date is None else f"{row.cells[columns.date]} {clock}"


def _columns(table: Sequence[_Row], asked: Asked) -> _Columns | Unread:
    begun = next((n for n in range(len(table)) if _begins_log(table, n)), None)
    if begun is None:
        return _unread("no_rows", table[0].number, " ".join(table[0].cells))
    cells = table[begun].cells
    first = _with_unread_rows(table, begun)
    head = table[first - 1].cells if first > 0 else ()
    labels = head if len(head) == len(cells) else ("",) * len(cells)
    numeric = [n for n, cell in enumerate(cells) if number_of(cell) is not None]
    date, time = _time_columns(cells, labels, numeric, asked.time_column)
    heat = _heat_column(labels, [n for n in numeric if n != time], asked.temperature_column)
    if time is None or heat is None or not 0 <= min(time, heat) <= max(time, heat) < len(cells):
        return _unread("which_column", table[max(first - 1, 0)].number, " | ".join(labels))
    return _Columns(first, date, time, heat, labels)


def _begins_log(table: Sequence[_Row], place: int) -> bool:
    """A row with a time and a number, and the row after it is as wide; so a line of settings
    with two numbers does not begin a log."""
    cells = table[place].cells
    numbers = sum(number_of(cell) is not None for cell in cells)
    moments = sum(moment_of(cell) is not None for cell in cells)
    after = table[place + 1].cells if place + 1 < len(table) else cells
    return numbers >= 1 and numbers + moments >= 2 and len(after) == len(cells)


def _with_unread_rows(table: Sequence[_Row], begun: int) -> int:
    """Rows just above that have a time but no number belong to the log and not to its heading:
    they are left out or refused by name, never passed over."""
    cells = table[begun].cells
    timed = next(n for n, cell in enumerate(cells) if _says_time(cell))
    first = begun
    while first > 0:
        above = table[first - 1].cells
        if len(above) != len(cells) or not _says_time(above[timed]):
            break
        first -= 1
    return first


def _says_time(cell: str) -> bool:
    return moment_of(cell) is not None or number_of(cell) is not None


def _time_columns(
    cells: Sequence[str], labels: Sequence[str], numeric: Sequence[int], asked: int | None
) -> tuple[int | None, int | None]:
    """The column of days, where clocks have one of their own, and the column of times."""
    moments = [(n, found) for n, cell in enumerate(cells) if (found := moment_of(cell))]
    if asked is not None:
        return None, asked
    if moments:
        number, moment = moments[0]
        after = moments[1] if len(moments) > 1 else None
        is_apart = moment.second is None and after is not None and after[1].day is None
        return (number, after[0]) if is_apart and after is not None else (None, number)
    named = [n for n in numeric if _TIME_LABEL.search(labels[n])]
    if len(named) == 1:
        return None, named[0]
    return None, numeric[0] if len(numeric) == 2 else None


def _heat_column(
    labels: Sequence[str], numeric: Sequence[int], asked: int | None
) -> int | None:
    if asked is not None:
        return asked
    named = [n for n in numeric if _HEAT_LABEL.search(labels[n])]
    others = [n for n in numeric if not _OTHER_LABEL.search(labels[n])]
    for fitting in (numeric, named, others):
        if len(fitting) == 1:
            return fitting[0]
    return None


def _first_fitting(patterns: Sequence[tuple[str, re.Pattern[str]]], label: str) -> str | None:
    return next((name for name, pattern in patterns if pattern.search(label)), None)


def _unread(key: str, row: int, got: str) -> Unread:
    return Unread(key=key, row=row, got=got[:GOT_CHARS_MAX])
