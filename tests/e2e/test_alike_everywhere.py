"""What two phones do without hearing of each other ends alike on both and on the server."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime
from typing import Any

import pytest
from playwright.sync_api import expect

from tests.e2e.compare import read_alike, settled_alike, stored_sheets
from tests.e2e.hearth import Hearth, lived_in
from tests.e2e.phones import Phone
from tests.e2e.set_up import KITCHEN, STALL
from tests.e2e.work import change_contact, correct_weigh_in, open_stall, sell
from tests.people import PASSPHRASE
from tests.writing import made_id

CLOSE_AS_IF_WEEKS_LATER = """
from datetime import UTC, datetime, timedelta
from kitchenlog.logbook.work import close_quiet
close_quiet(at=datetime.now(UTC) + timedelta(days=15))
"""


@pytest.fixture
def two(hearth: Hearth, new_phone: Callable[..., Phone]) -> tuple[Phone, Phone]:
    """A coordinator's phone and a seller's, both with all there is."""
    phones = new_phone(hearth.url, "ona"), new_phone(hearth.url, "pim")
    for phone in phones:
        phone.start().sign_in(f"{phone.folder.name.rstrip('01')}@hearth", PASSPHRASE)
        phone.until_controlled()
        phone.until_whole()
    return phones


def test_a_lot_sold_from_again_after_it_was_closed_is_whole_on_every_phone(
    hearth: Hearth, two: tuple[Phone, Phone]
) -> None:
    desk = hearth.desk()
    lot = lived_in(desk).lot
    pen = desk.pen
    desk.push([
        pen.sale(lot, "1", at=datetime.now(UTC), place=STALL),
        pen.sale(lot, "3", at=datetime.now(UTC), place=KITCHEN),
    ])  # fmt: skip
    settled_alike(hearth, *two)
    hearth.server.manage("shell", "-c", CLOSE_AS_IF_WEEKS_LATER)
    settled_alike(hearth, *two)
    assert not any(stored_sheets(phone)[f"lot:{lot}"]["is_open"] for phone in two)

    hearth.server.kill()
    open_stall(two[1])
    sell(two[1], "Quince jelly", 2)
    hearth.server.start()

    settled_alike(hearth, *two)
    for phone in two:
        sheet = stored_sheets(phone)[f"lot:{lot}"]
        assert sheet["is_open"]
        assert sheet["state"]["on_hand"] == "-2"
        assert [each["what"] for each in sheet["state"]["findings"]] == ["negative"]
        assert len(_held_about(phone, f"lot:{lot}")) == sheet["entry_count"]
    read_alike(f"/lot/{lot}", *two)
    _nothing_to_report(two)


def test_one_contact_changed_on_two_phones_is_a_disagreement_on_both(
    hearth: Hearth, two: tuple[Phone, Phone]
) -> None:
    source = made_id("orchard")
    hearth.server.kill()
    change_contact(two[0], source, "at the gate")
    change_contact(two[1], source, "by the van")
    hearth.server.start()

    settled_alike(hearth, *two)

    states = [stored_sheets(phone)[f"source:{source}"]["state"] for phone in two]
    assert states[0] == states[1]
    found = [(each["what"], each["field"]) for each in states[0]["findings"]]
    assert found == [("conflict", "contact")]
    for phone in two:
        phone.go(f"/set-up/sources/{source}")
        phone.sees("Two people disagree")
        for words in ("at the gate", "by the van"):
            expect(phone.page.locator(".conflict dl")).to_contain_text(words)
    _nothing_to_report(two)


def test_two_corrections_of_one_weigh_in_are_shown_as_two_and_neither_counts(
    hearth: Hearth, two: tuple[Phone, Phone]
) -> None:
    work = lived_in(hearth.desk())
    settled_alike(hearth, *two)
    hearth.server.kill()
    correct_weigh_in(two[0], work.batch, work.weigh_in, to="2013", reason="misread the 0")
    correct_weigh_in(two[1], work.batch, work.weigh_in, to="2030", reason="turned two digits")
    hearth.server.start()

    settled_alike(hearth, *two)

    for phone in two:
        state = stored_sheets(phone)[f"batch:{work.batch}"]["state"]
        assert state["lines"][0]["in_base"] == "2003"
        keys = [each["key"] for each in state["findings"]]
        assert f"two_corrections:{work.weigh_in}" in keys
        phone.go(f"/batch/{work.batch}")
        phone.sees("Two corrections of one entry disagree.")
        phone.sees("2 003 g counts until one is chosen.")
        for words in ("2 013 g Ona Bramhill", "2 030 g Pim Tarrow"):
            phone.until_said(words)
    _nothing_to_report(two)


def _held_about(phone: Phone, subject: str) -> list[Any]:
    [stores] = phone.devices().values()
    return [row for row in stores["entries"] if subject in row["linked"]]


def _nothing_to_report(phones: tuple[Phone, Phone]) -> None:
    assert [phone.trouble for phone in phones] == [[], []]
