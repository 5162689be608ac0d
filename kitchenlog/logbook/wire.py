"""How the log's times and rows are written on the wire."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from uuid import UUID


@dataclass(frozen=True)
class EntryRow:
    """One entry as stored; `canonical` is the JSON text of the entry as made."""

    id: UUID
    seq: int
    canonical: str
    received_at: datetime
    skew_ms: int


@dataclass(frozen=True)
class SheetRow:
    """One sheet as stored; `state` is the JSON text of what its fold made."""

    subject: str
    seq: int
    state: str
    upto_seq: int
    entry_count: int
    fold: int
    is_open: bool


@dataclass(frozen=True)
class AsideRow:
    """One thing kept aside; `raw` is what was sent, byte for byte."""

    entry_id: UUID | None
    code: str
    detail: str
    is_readable: bool
    author: UUID
    device: UUID
    raw: bytes
    received_at: datetime


def wire_time(moment: datetime) -> str:
    """UTC to the millisecond: `2026-11-10T08:00:00.000Z`."""
    in_utc = moment.astimezone(UTC)
    return f"{in_utc:%Y-%m-%dT%H:%M:%S}.{in_utc.microsecond // 1000:03d}Z"


def to_the_millisecond(moment: datetime) -> datetime:
    """What the log stores: no finer than what the wire and the chain can say."""
    return moment.replace(microsecond=moment.microsecond // 1000 * 1000)


def entry_json(row: EntryRow) -> str:
    """The JSON text of one entry as phones are told of it; its own text is untouched."""
    received_at = wire_time(row.received_at)
    return f'{{"entry":{row.canonical},"received_at":"{received_at}","skew_ms":{row.skew_ms}}}'


def sheet_json(row: SheetRow) -> str:
    """The JSON text of one sheet as phones are told of it."""
    is_open = "true" if row.is_open else "false"
    return (
        f'{{"state":{row.state},"upto_seq":{row.upto_seq},"entry_count":{row.entry_count},'
        f'"fold":{row.fold},"is_open":{is_open}}}'
    )


def numbered_entry_json(row: EntryRow) -> str:
    """An entry with its number beside it, where no change around it holds the number."""
    return f'{entry_json(row)[:-1]},"seq":{row.seq}}}'


def numbered_sheet_json(row: SheetRow) -> str:
    """A sheet with its number beside it."""
    return f'{sheet_json(row)[:-1]},"seq":{row.seq}}}'
