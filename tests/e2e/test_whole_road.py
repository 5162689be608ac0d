"""The whole road on a phone whose server is dead, and what the server knows afterwards."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from playwright.sync_api import expect

from tests.e2e.compare import read_alike, settled_alike, stored_sheets
from tests.e2e.hearth import DeskPhone, Hearth
from tests.e2e.phones import Phone
from tests.e2e.set_up import STALL
from tests.e2e.work import (
    bring_to_stall,
    finish,
    lay_out_everything,
    open_stall,
    read_step,
    receive,
    sell,
    start_batch,
    title_is,
    weigh_in,
)
from tests.people import PASSPHRASE

HANDED_OVER_MS_MAX = 120_000


def test_a_batch_goes_from_delivery_to_buyer_without_signal_and_nothing_is_lost_or_doubled(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = new_phone(hearth.url, "one").start()
    phone.sign_in("pim@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.put_away()  # a browser writes its cookies down after half a minute, or when it ends
    phone.start()
    quinces = receive(phone, what="Quinces", amount="3", where="Lane kitchen")
    batch = start_batch(phone)

    hearth.server.kill()
    lay_out_everything(phone)
    _weigh_in_with_a_dead_battery_in_between(phone)
    read_step(phone, "105.2", says="Save 105.2 °C")
    lot = finish(phone, good="9", rejected="1", residue="140")
    _label_says(phone, lot)
    bring_to_stall(phone, lot, amount="8")
    open_stall(phone)
    sell(phone, "Quince jelly", 3)
    sell(phone, "Quince jelly", 1)
    _traces_to(phone, lot, quinces)
    made = _written_on(phone)
    assert not hearth.server.answers()

    hearth.server.start()
    phone.page.get_by_role("link", name="none waiting").wait_for(timeout=HANDED_OVER_MS_MAX)
    assert phone.waiting() == 0
    _server_has_each_once(hearth.desk(), made)
    second = new_phone(hearth.url, "two").start()
    second.sign_in("ona@hearth", PASSPHRASE)
    settled_alike(hearth, phone, second)
    _shows_the_same(phone, second, lot=lot, batch=batch)
    assert "sheets equal the log" in hearth.server.manage("rebuild_sheets", "--check")
    assert "whole" in hearth.server.manage("verify_chain")
    assert phone.trouble == []
    assert second.trouble == []


def _weigh_in_with_a_dead_battery_in_between(phone: Phone) -> None:
    weigh_in(phone, "Quinces", "2003", says="Save 2 003 g")
    title_is(phone, "Sugar")
    phone.type_digits("120")
    phone.until_draft_holds("120")
    phone.kill()
    phone.start()
    phone.press_main("Weigh in sugar")
    phone.sees("120")
    weigh_in(phone, "Sugar", "1", says="Save 1 201 g")
    weigh_in(phone, "Pectin", "30.4", says="Save 30.4 g")
    weigh_in(phone, "Jar with lid", "10", says="Save 10")


def _label_says(phone: Phone, lot: str) -> None:
    label = phone.page.locator(".frame .label")
    for words in ("Quinces, Sugar, Pectin", "Contains: sulphites", lot):
        expect(label).to_contain_text(words, use_inner_text=True)
    expect(label.get_by_role("img", name=f"Code with the lot {lot}")).to_be_visible()


def _traces_to(phone: Phone, lot: str, quinces: str) -> None:
    """Back to where the fruit came from, on to the stall where it was sold."""
    phone.go(f"/trace/{lot}")
    title_is(phone, "Quince jelly")
    phone.sees("From what this phone holds")
    for words in ("Orchard under the hill", quinces, "Bridge stall"):
        expect(phone.page.locator("main")).to_contain_text(words, use_inner_text=True)


def _written_on(phone: Phone) -> dict[str, Any]:
    """Every entry this phone has made, by id; numbered without a gap."""
    [stores] = phone.devices().values()
    own = {row["id"]: row["entry"] for row in stores["entries"] if row["entry"]["device"]}
    device = stores["outbox"] and own[stores["outbox"][0]["id"]]["device"]
    made = {id: entry for id, entry in own.items() if entry["device"] == device}
    assert sorted(e["device_seq"] for e in made.values()) == list(range(1, len(made) + 1))
    return made


def _server_has_each_once(desk: DeskPhone, made: dict[str, Any]) -> None:
    for id, entry in made.items():
        assert desk.ask("GET", f"entries/{id}")["entry"] == entry
    told = [change for change in desk.everything() if change["type"] == "entry"]
    ids = [change["id"] for change in told]
    assert len(ids) == len(set(ids))
    device = next(iter(made.values()))["device"]
    own = {change["id"] for change in told if change["data"]["entry"]["device"] == device}
    assert own == set(made)
    assert desk.ask("GET", "quarantine")["items"] == []


def _shows_the_same(one: Phone, two: Phone, *, lot: str, batch: str) -> None:
    """Stock, lot, batch and the stall read alike, and say what was done."""
    for path in ("/stock", f"/stock/{STALL}", f"/lot/{lot}", f"/batch/{batch}"):
        read_alike(path, one, two)
    sheet = stored_sheets(two)[f"lot:{lot}"]["state"]
    assert sheet["made"] == "9"
    assert sheet["sold"] == "4"
    assert sheet["on_hand"] == "5"
    assert sheet["places"][STALL] == "4"
