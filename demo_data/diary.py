"""What the members' devices wrote: entries with ids that follow from seed and anchor day."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from hashlib import sha256
from typing import Any
from zoneinfo import ZoneInfo

from demo_data.story import SEED, STORY_NUMBER
from kitchenlog.calc.codes import lot_code
from kitchenlog.entries.envelope import uuid7
from kitchenlog.entries.links import subjects_of
from kitchenlog.entries.parse import Parsed, parse_entry

APP_VERSION = "demo"
CHANCE_BYTES = 10

Body = dict[str, Any]


@dataclass(frozen=True)
class Phone:
    """One member's device."""

    member: str
    device: str
    mark: str


@dataclass(frozen=True)
class House:
    """The cooperative as the server knows it; phones by the login of their member."""

    cooperative: str
    phones: Mapping[str, Phone]


@dataclass(frozen=True, kw_only=True)
class Written:
    """One entry before its place in its device's count is known."""

    id: str
    by: str
    kind: str
    body: Body
    happened_at: datetime
    recorded_at: datetime
    about: tuple[str, ...]


class Diary:
    """Collects entries in any order; each device numbers its own by the time of recording."""

    def __init__(self, house: House, *, anchor: date, zone: ZoneInfo) -> None:
        self.house = house
        self.zone = zone
        self._anchor = anchor
        self._written: list[Written] = []
        self._codes: Counter[str] = Counter()

    def write(self, by: str, kind: str, body: Body, at: datetime) -> Written:
        """What a member recorded at the moment it happened."""
        return self._keep(by, kind, body, (at, at), subjects_of(kind, body))

    def correct(
        self, by: str, wrong: Written, *, body: Body, reason: str, at: datetime
    ) -> Written:
        """The whole new body of an earlier entry, recorded later."""
        new = {"corrects": wrong.id, "of_kind": wrong.kind, "reason": reason, "body": body}
        about = (*wrong.about, *subjects_of("correction", new))
        return self._keep(by, "correction", new, (wrong.happened_at, at), about)

    def void(self, by: str, wrong: Written, *, reason: str, at: datetime) -> Written:
        """An earlier entry did not happen."""
        body = {"corrects": wrong.id, "of_kind": wrong.kind, "reason": reason}
        return self._keep(by, "void", body, (wrong.happened_at, at), wrong.about)

    def new_code(self, by: str, letters: str, at: datetime) -> str:
        """The next lot code of this member's device on this day."""
        on, mark = at.astimezone(self.zone).date().isoformat(), self.house.phones[by].mark
        self._codes[f"{letters} {on} {mark}"] += 1
        number = self._codes[f"{letters} {on} {mark}"]
        return lot_code(letters, on=on, mark=mark, number=number)

    def new_id(self, what: str, at: datetime) -> str:
        """An id for something that is not an entry, such as a batch."""
        return uuid7(_ms(at), chance=self._chance(what))

    def of_kind(self, kind: str) -> list[Written]:
        """What was written of one kind so far."""
        return [each for each in self._written if each.kind == kind]

    def entries(self) -> dict[str, list[dict[str, Any]]]:
        """By login, what each device has to hand over, in the order of its own count."""
        by_phone: dict[str, list[dict[str, Any]]] = {login: [] for login in self.house.phones}
        for written in sorted(self._written, key=lambda each: each.recorded_at):
            own = by_phone[written.by]
            own.append(self._entry(written, device_seq=len(own) + 1))
        return by_phone

    def _keep(
        self,
        by: str,
        kind: str,
        body: Body,
        times: tuple[datetime, datetime],
        about: Sequence[str],
    ) -> Written:
        happened_at, recorded_at = times
        written = Written(
            id=uuid7(_ms(recorded_at), chance=self._chance(f"entry {len(self._written)}")),
            by=by,
            kind=kind,
            body=body,
            happened_at=happened_at,
            recorded_at=recorded_at,
            about=tuple(sorted(set(about))),
        )
        self._written.append(written)
        return written

    def _entry(self, written: Written, *, device_seq: int) -> dict[str, Any]:
        phone = self.house.phones[written.by]
        local = written.happened_at.astimezone(self.zone)
        offset = local.utcoffset()
        assert offset is not None
        entry = {
            "id": written.id,
            "kind": written.kind,
            "version": 1,
            "subjects": list(written.about),
            "cooperative": self.house.cooperative,
            "author": phone.member,
            "device": phone.device,
            "device_seq": device_seq,
            "recorded_at": _wire(written.recorded_at),
            "tz": self.zone.key,
            "utc_offset_min": int(offset.total_seconds()) // 60,
            "local_date": local.date().isoformat(),
            "seen": "",
            "happened_at": _wire(written.happened_at),
            "app_version": APP_VERSION,
            "body": written.body,
        }
        parsed = parse_entry(entry)
        assert isinstance(parsed, Parsed), (parsed, written)  # the story itself would be wrong
        return entry

    def _chance(self, what: str) -> bytes:
        words = f"{SEED} {STORY_NUMBER} {self._anchor.isoformat()} {what}"
        return sha256(words.encode()).digest()[:CHANCE_BYTES]


def _ms(at: datetime) -> int:
    return int(at.timestamp() * 1000)


def _wire(at: datetime) -> str:
    return at.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
