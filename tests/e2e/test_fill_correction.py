"""A fill check is corrected from the lot's history; two corrections disagree alike."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

from tests.e2e.hearth import Hearth, lived_in
from tests.e2e.phones import HANDED_OVER_S_MAX, LOOK_EVERY_S, Phone
from tests.people import PASSPHRASE
from tests.writing import made_id

FILL = {
    "lot": "QJ-1", "on": "2026-01-10", "rules": "us", "unit": "g", "lot_size": 9,
    "label": [{"amount": {"amount": "240", "unit": "g"}}],
    "tares": ["180.0", "180.2"], "gross": ["420.3", "420.6", "402.0"],
    "instrument": made_id("Small scale"), "division": "0.1",
}  # fmt: skip


def _with_a_short_pack(hearth: Hearth) -> None:
    desk = hearth.desk()
    lived_in(desk)
    desk.push([desk.pen.write("fill_checked", FILL)])
    hearth.until_quiet()


def _phone(hearth: Hearth, new_phone: Callable[..., Phone], login: str) -> Phone:
    phone = new_phone(hearth.url, login).start()
    phone.sign_in(f"{login}@hearth", PASSPHRASE)
    phone.until_whole()
    return phone


def _correct(phone: Phone, digits: str, why: str) -> None:
    """The third pack showed something else."""
    phone.go("/lot/QJ-1")
    row = phone.page.locator("li.entry", has_text="packs weighed")
    phone.press("Correct", exact=True, among=row)
    phone.press("Full pack 3")
    phone.rub_out(4)
    phone.type_digits(digits)
    phone.page.get_by_label("Why").fill(why)
    phone.press_main("Save the correction")


def _fills(phone: Phone) -> list[dict[str, Any]]:
    [stores] = phone.devices().values()
    sheet = next(row for row in stores["sheets"] if row["subject"] == "lot:QJ-1")
    fills: list[dict[str, Any]] = sheet["state"]["fills"]
    return fills


def _until_it_holds_the_short_pack(phone: Phone) -> None:
    """The server's sheet, once it has been fetched: neither correction counts."""
    end = time.monotonic() + HANDED_OVER_S_MAX
    while [fill["short"] for fill in _fills(phone)] != [[2]]:
        assert time.monotonic() < end, _fills(phone)
        phone.hand_over_now()
        time.sleep(LOOK_EVERY_S)


def test_two_corrections_of_a_fill_check_disagree_alike_on_every_phone(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    _with_a_short_pack(hearth)
    pim, ona = (_phone(hearth, new_phone, login) for login in ("pim", "ona"))
    hearth.server.kill()

    _correct(pim, "20.4", "one and two were changed about")
    pim.sees("one and two were changed about")
    pim.sees("3 packs of 240")
    _correct(ona, "19.9", "the display was read from the side")
    ona.sees("the display was read from the side")
    hearth.server.start()
    for phone in (pim, ona):
        phone.hand_over_now()
        phone.until_nothing_waits()
    hearth.until_quiet()

    for phone in (pim, ona):
        phone.hand_over_now()
        phone.go("/lot/QJ-1")
        phone.sees("Two corrections disagree. Until one is chosen 3 packs of 240")
        phone.until_nothing_waits()
        _until_it_holds_the_short_pack(phone)
        assert phone.trouble == []
