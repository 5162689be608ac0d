"""Entries and pushes as phones send them, made beforehand so that only the server is timed."""

from __future__ import annotations

import http.client
import json
import uuid
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any

ENTRIES_A_PUSH = 100
LOTS_A_PUSH = 10


@dataclass(frozen=True)
class Sender:
    """One device and what its requests need."""

    port: int
    cooperative: str
    author: str
    device: str
    token: str

    @property
    def headers(self) -> dict[str, str]:
        """As our own pages send them."""
        return {
            "Content-Type": "application/json",
            "Cookie": f"__Host-device-{self.device}={self.token}",
            "Kitchenlog-Device": self.device,
            "Sec-Fetch-Site": "same-origin",
        }


def pushes(sender: Sender, count: int, *, mark: str) -> list[bytes]:
    """`count` pushes of 100 entries each: ten receipts and nine sales of each lot."""
    return [_push(sender, number, mark) for number in range(count)]


def push_of_one_lot(sender: Sender, lot: str, length: int) -> list[bytes]:
    """Pushes that give one lot a history of `length` entries: a receipt, then sales."""
    bodies = []
    for begin in range(0, length, ENTRIES_A_PUSH):
        numbers = range(begin, min(length, begin + ENTRIES_A_PUSH))
        entries = [
            _entry(sender, *_body(lot, is_first=number == 0), number + 1) for number in numbers
        ]
        bodies.append(_push_body(sender, entries))
    return bodies


def _push(sender: Sender, number: int, mark: str) -> bytes:
    entries = []
    for place in range(ENTRIES_A_PUSH):
        kind, body = _body(
            f"{mark}-{number}-{place % LOTS_A_PUSH}", is_first=place < LOTS_A_PUSH
        )
        seq = number * ENTRIES_A_PUSH + place + 1
        entries.append(_entry(sender, kind, body, seq))
    return _push_body(sender, entries)


def _push_body(sender: Sender, entries: list[dict[str, Any]]) -> bytes:
    return json.dumps(
        {
            "protocol": 1,
            "device": sender.device,
            "device_time": _instant(datetime.now(UTC)),
            "epoch": "",
            "push": str(uuid.uuid4()),
            "entries": entries,
        }
    ).encode()


def _body(lot: str, *, is_first: bool) -> tuple[str, dict[str, Any]]:
    amount = {"amount": "90" if is_first else "1", "unit": "pc"}
    if is_first:
        return "receipt", {
            "lot": lot, "material": "jam", "source": "orchard", "amount": amount,
            "place": "store", "condition": "fit",
        }  # fmt: skip
    return "sale", {
        "lot": lot, "amount": amount, "place": "store", "on": "2026-06-06",
        "price_each": "6.50",
    }  # fmt: skip


def _entry(sender: Sender, kind: str, body: dict[str, Any], seq: int) -> dict[str, Any]:
    at = _instant(datetime(2026, 6, 6, 8, 0, tzinfo=UTC) + timedelta(seconds=seq))
    subjects = [f"lot:{body['lot']}"]
    if kind == "sale":
        subjects.append(f"day:{body['place']}:{body['on']}")
    return {
        "id": _uuid7(seq),
        "kind": kind, "version": 1, "subjects": subjects,
        "cooperative": sender.cooperative, "author": sender.author, "device": sender.device,
        "device_seq": seq, "recorded_at": at, "tz": "Europe/Dublin", "utc_offset_min": 60,
        "local_date": "2026-06-06", "seen": "", "happened_at": at, "app_version": "bench",
        "body": body,
    }  # fmt: skip


def _uuid7(seq: int) -> str:
    """Version and variant bits as RFC 9562 wants them; the rest by chance."""
    bits = uuid.uuid4().int
    bits = (bits & ~(0xFFFF << 112)) | ((seq & 0xFFFF) << 112)
    bits = (bits & ~(0xF << 76)) | (0x7 << 76)
    return str(uuid.UUID(int=bits))


def _instant(at: datetime) -> str:
    return at.strftime("%Y-%m-%dT%H:%M:%S.") + f"{at.microsecond // 1000:03d}Z"


class Line:
    """One kept-alive connection of one sender."""

    def __init__(self, sender: Sender) -> None:
        self.sender = sender
        self.connection = http.client.HTTPConnection("127.0.0.1", sender.port, timeout=60)

    def post(self, path: str, body: bytes) -> dict[str, Any]:
        """POST below /api/v1/; anything but 200 is a defect of the bench."""
        return self._ask("POST", path, body)

    def get(self, path: str) -> dict[str, Any]:
        """GET below /api/v1/."""
        return self._ask("GET", path, None)

    def _ask(self, method: str, path: str, body: bytes | None) -> dict[str, Any]:
        headers = {**self.sender.headers, "Host": f"localhost:{self.sender.port}"}
        self.connection.request(method, f"/api/v1/{path}", body, headers)
        answer = self.connection.getresponse()
        text = answer.read()
        assert answer.status == 200, (answer.status, text[:300])
        answered: dict[str, Any] = json.loads(text)
        return answered
