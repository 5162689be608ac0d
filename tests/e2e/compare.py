"""Whether phones and server hold the same sheets."""

from __future__ import annotations

import time
from typing import Any

from tests.e2e.hearth import Hearth
from tests.e2e.phones import Phone

ALIKE_S_MAX = 90
DRAWN_S_MAX = 20
LOOK_EVERY_S = 0.5


def stored_sheets(phone: Phone, login: str | None = None) -> dict[str, Any]:
    """Sheets as the server sent them to a member on this phone (else its only one)."""
    devices = phone.devices()
    stores = devices[login] if login is not None else next(iter(devices.values()))
    return {row["subject"]: row for row in stores["sheets"]}


def settled_alike(hearth: Hearth, *phones: Phone) -> None:
    """Hand over and fetch until every phone holds each sheet as the server tells it."""
    desk = hearth.desk()
    for phone in phones:
        phone.hand_over_now()
    for phone in phones:
        phone.until_nothing_waits()
    hearth.until_quiet()
    told = _last_told(desk.everything())
    for phone in phones:
        phone.hand_over_now()
    until = time.monotonic() + ALIKE_S_MAX
    while apart := [each for phone in phones for each in _apart(phone, told)]:
        assert time.monotonic() < until, f"still apart: {apart}"
        time.sleep(LOOK_EVERY_S)


def _apart(phone: Phone, told: dict[str, int]) -> list[tuple[str, str, int]]:
    """What this phone holds in another state than the server told it."""
    held = stored_sheets(phone)
    return [
        (phone.folder.name, subject, seq)
        for subject, seq in told.items()
        if held.get(subject, {}).get("seq") != seq
    ]


def read_alike(path: str, one: Phone, two: Phone) -> None:
    """The screen of this path says the same on both, once each has drawn it whole.

    What hangs on single entries is read after the sheet, and at midnight a day begins on one
    phone before the other: both are read until they agree.
    """
    for phone in (one, two):
        phone.go(path)
    until = time.monotonic() + DRAWN_S_MAX
    while (said := [_read(phone) for phone in (one, two)])[0] != said[1]:
        assert time.monotonic() < until, f"they read apart: {said}"
        time.sleep(LOOK_EVERY_S)


def _read(phone: Phone) -> tuple[str, str]:
    page = phone.page
    return page.locator("h1").inner_text(), page.locator("main").inner_text()


def _last_told(changes: list[dict[str, Any]]) -> dict[str, int]:
    sheets = (each for each in changes if each["type"] == "sheet")
    # What a lot cost is told to coordinators only.
    return {each["id"]: each["seq"] for each in sheets if not each["id"].startswith("price:")}
