"""The front door of a running server, as a member's device uses it: push, and push again."""

from __future__ import annotations

import json
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from http.client import HTTPConnection, HTTPException
from typing import Any
from urllib.parse import urlsplit
from uuid import uuid4

PUSH_ENTRIES_MAX = 100  # R22
TRIES_MAX = 5
START_S_MAX = 60
ASK_EVERY_S = 0.3
ANSWER_S_MAX = 30
BUSY = (429, 503)


class Shut(Exception):  # noqa: N818 it may open later
    """The server did not answer, or not as a server of this log does; says so in a sentence."""


@dataclass(frozen=True)
class Key:
    """What lets one device in."""

    device: str
    token: str
    epoch: str


class Door:
    """A server at `http://name:port`."""

    def __init__(self, address: str) -> None:
        parts = urlsplit(address)
        if parts.scheme != "http" or parts.hostname is None:
            raise Shut(f"{address} is not an address like http://localhost:8000.")
        self._name, self._port = parts.hostname, parts.port or 80

    def wait_until_open(self) -> None:
        """Return once the server answers; it may have been started a moment ago."""
        until = time.monotonic() + START_S_MAX
        while True:
            try:
                if self._ask("GET", "/healthz", {}, None)[0] < BUSY[1]:
                    return
            except OSError:
                pass  # nobody listens there yet
            if time.monotonic() > until:
                raise Shut(f"Nothing answers at {self._name}:{self._port}; start the server.")
            time.sleep(ASK_EVERY_S)

    def push(self, key: Key, entries: Sequence[Any]) -> Counter[str]:
        """Hand all entries over; how many got which status. Sending them again is harmless."""
        statuses: Counter[str] = Counter()
        for first in range(0, len(entries), PUSH_ENTRIES_MAX):
            answer = self._pushed(key, entries[first : first + PUSH_ENTRIES_MAX])
            statuses.update(result["status"] for result in answer["results"])
        return statuses

    def _pushed(self, key: Key, entries: Sequence[Any]) -> Any:
        body = {
            "protocol": 1,
            "push": str(uuid4()),
            "device": key.device,
            "device_time": _now(),
            "epoch": key.epoch,
            "entries": entries,
        }
        headers = {
            "Content-Type": "application/json",
            "Cookie": f"__Host-device-{key.device}={key.token}",
            "Kitchenlog-Device": key.device,
            "Sec-Fetch-Site": "same-origin",
        }
        for wait_s in self._waits():
            status, after, text = self._ask("POST", "/api/v1/sync/push", headers, body)
            if status not in BUSY:
                break
            time.sleep(max(wait_s, after))
        if status != 200:
            raise Shut(f"{self._name}:{self._port} answered {status}: {text[:300]}")
        return json.loads(text)

    @staticmethod
    def _waits() -> Iterator[float]:
        yield from (2.0**number for number in range(TRIES_MAX))

    def _ask(
        self, method: str, path: str, headers: dict[str, str], body: Any
    ) -> tuple[int, float, str]:
        """Status, Retry-After in seconds, text."""
        connection = HTTPConnection(self._name, self._port, timeout=ANSWER_S_MAX)
        try:
            sent = None if body is None else json.dumps(body)
            connection.request(method, path, body=sent, headers=headers)
            answer = connection.getresponse()
            after = answer.headers.get("Retry-After", "")
            return answer.status, float(after) if after.isdecimal() else 0.0, _text(answer)
        except HTTPException as trouble:
            raise Shut(f"{self._name}:{self._port} does not speak HTTP.") from trouble
        finally:
            connection.close()


def _text(answer: Any) -> str:
    return str(answer.read().decode("utf-8", "replace"))


def _now() -> str:
    return datetime.now(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
