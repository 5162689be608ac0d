"""A scale is checked at the bench without signal; what it says is kept, used and followed."""

from __future__ import annotations

import re
from collections.abc import Callable

from playwright.sync_api import expect

from tests.e2e.checks import SCALE, days_before, full_check, made_earlier, quick_check
from tests.e2e.hearth import Hearth
from tests.e2e.phones import Phone
from tests.e2e.set_up import KITCHEN
from tests.e2e.work import (
    finish,
    lay_out_everything,
    read_step,
    receive,
    start_batch,
    title_is,
    weigh_in,
)
from tests.people import PASSPHRASE

HANDED_OVER_MS_MAX = 120_000


def test_a_scale_is_checked_offline_its_correction_used_and_a_late_failure_names_who_got_it(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = new_phone(hearth.url, "one").start()
    phone.sign_in("pim@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.put_away()  # a browser writes its cookies down after half a minute, or when it ends
    phone.start()
    phone.until_whole()

    hearth.server.kill()
    full_check(phone)
    phone.sees("It is put to every reading from now on")
    made_earlier(phone, days_before(3), "09:00")
    phone.press_main("Save")
    _the_sheet_says_the_correction(phone)
    batch, lot = _make_and_dispatch(phone)
    assert not hearth.server.answers()

    hearth.server.start()
    phone.page.get_by_role("link", name="none waiting").wait_for(timeout=HANDED_OVER_MS_MAX)
    second = new_phone(hearth.url, "two").start()
    second.sign_in("ona@hearth", PASSPHRASE)
    second.until_whole()
    quick_check(second, shown="1009")
    made_earlier(second, days_before(1), "18:00")
    second.press_main("Save: failed")
    _what_leaned_on_it(second, lot)
    second.until_nothing_waits()
    _the_server_tells_the_whole_of_it(second, lot)
    hearth.until_quiet()
    phone.hand_over_now()
    for each in (phone, second):
        _the_batch_names_the_check(each, batch)
    _today_leads_the_coordinator_to_what_leaned(second, lot)
    _what_is_held_is_seen_without_signal(hearth, second, lot)
    assert phone.trouble == []
    assert second.trouble == []


def _the_sheet_says_the_correction(phone: Phone) -> None:
    title_is(phone, "What leaned on it")
    phone.sees("No reading on this phone leaned on it.")
    phone.press_main("Its sheet")
    title_is(phone, "Bench scale")
    phone.sees("Correction in force")
    phone.sees(re.compile(r"Take off \d"))
    phone.sees("Checked from")


def _make_and_dispatch(phone: Phone) -> tuple[str, str]:
    receive(phone, what="Quinces", amount="3", where="Lane kitchen")
    batch = start_batch(phone)
    lay_out_everything(phone)
    title_is(phone, "Quinces")
    phone.type_digits("2003")
    phone.sees("corrected")
    figures = phone.page.locator(".figures")
    figures.get_by_text(re.compile("2.003.g")).first.wait_for()
    figures.get_by_text(re.compile("1.995\\.0")).first.wait_for()
    figures.get_by_role("button").click()
    for words in (
        "From the display, u",
        "From the spread of readings, u",
        "From the correction",
    ):
        figures.get_by_text(words).first.wait_for()
    phone.press_main("Save 1 995.0 g")
    weigh_in(phone, "Sugar", "1205", says="Save 1 200")
    weigh_in(phone, "Pectin", "30.4", says="Save 30.4 g")
    weigh_in(phone, "Jar with lid", "10", says="Save 10")
    read_step(phone, "105.2", says="Save 105.2 °C")
    lot = finish(phone, good="9", rejected="1", residue="140")
    phone.go(f"/dispatch/{KITCHEN}")
    phone.press("Inn at the ford", among=phone.page.locator("#field-recipient"))
    phone.press(lot, among=phone.page.locator("#field-lot"))
    phone.press("How much")
    phone.type_digits("4")
    phone.press_main("Send 4")
    phone.sees(f"of {lot} for Inn at the ford")
    return batch, lot


def _what_leaned_on_it(phone: Phone, lot: str) -> None:
    title_is(phone, "What leaned on it")
    for words in ("Quinces", lot, "Inn at the ford", "would move by"):
        phone.sees(words)


def _the_server_tells_the_whole_of_it(phone: Phone, lot: str) -> None:
    """The check has been handed over; the screen asks again by itself."""
    origin = phone.page.get_by_role("status").filter(has_text=re.compile(r"Whole record\."))
    origin.wait_for(timeout=HANDED_OVER_MS_MAX)
    for words in ("Quinces", lot, "Inn at the ford", "would move by"):
        phone.sees(words)
    called = phone.page.locator(".to-call").filter(has_text="Inn at the ford")
    called.get_by_text(re.compile(f"4.* of {lot}")).wait_for()
    phone.page.get_by_role("link", name=f"trace {lot}").wait_for()
    expect(phone.page.get_by_role("button", name="Print this list")).to_have_count(1)


def _what_is_held_is_seen_without_signal(hearth: Hearth, phone: Phone, lot: str) -> None:
    phone.go(f"/instruments/{SCALE}")
    hearth.server.kill()
    phone.press("What leaned on it")
    title_is(phone, "What leaned on it")
    phone.sees("Held here")
    phone.sees("The server did not answer.")
    for words in ("Quinces", lot, "Inn at the ford"):
        phone.sees(words)


def _the_batch_names_the_check(phone: Phone, batch: str) -> None:
    phone.go(f"/batch/{batch}")
    phone.sees("Its instrument failed a check.")
    phone.sees("Bench scale failed its check of")


def _today_leads_the_coordinator_to_what_leaned(phone: Phone, lot: str) -> None:
    phone.go("/")
    phone.press("1 batch leaned on an instrument that failed")
    _what_leaned_on_it(phone, lot)
