"""What people do with a phone, act by act, by the words they read on it."""

from __future__ import annotations

import re

from tests.e2e.phones import Phone
from tests.e2e.set_up import STALL


def receive(phone: Phone, *, what: str, amount: str, where: str) -> str:
    """Receive goods from the orchard; answers the code of the new lot."""
    phone.go("/receive")
    page = phone.page
    phone.press("Orchard under the hill", among=page.get_by_role("group", name="From whom"))
    phone.press(what, among=page.get_by_role("group", name="What").first)
    phone.press("How much")
    phone.type_digits(amount)
    phone.press(where, among=page.get_by_role("group", name="Where it goes"))
    phone.press_main("Save as")
    phone.sees("Kept on this phone. Write the code")
    return page.locator("h1").inner_text()


def start_batch(phone: Phone) -> str:
    """Start the jelly as written in the lane kitchen; answers the batch's id."""
    phone.go("/start")
    phone.press("Quince jelly, clear")
    phone.press_main("Start, 10")
    phone.page.get_by_role("list", name="Lines").wait_for()
    return phone.page.evaluate("location.hash").rsplit("/", 1)[1]


def lay_out_everything(phone: Phone) -> None:
    """Tick every line, then go on to the first one to weigh."""
    lines = phone.page.get_by_role("list", name="Lines")
    for name in ("Quinces", "Sugar", "Pectin", "Jar with lid"):
        line = lines.get_by_role("button", name=name)
        line.click()
        line.and_(phone.page.locator("[aria-pressed=true]")).wait_for()
    phone.press_main("Weigh in the first")


def weigh_in(phone: Phone, name: str, digits: str, *, says: str) -> None:
    """Type the reading of the line on the screen and save it, when the key says what."""
    title_is(phone, name)
    phone.type_digits(digits)
    phone.press_main(says)


def read_step(phone: Phone, digits: str, *, says: str) -> None:
    """Read the check of the step on the screen."""
    phone.page.locator("h1", has_text="Step").wait_for()
    phone.type_digits(digits)
    phone.press_main(says)


def finish(phone: Phone, *, good: str, rejected: str, residue: str) -> str:
    """Say what came out and what was lost; answers the code of the lot that came out."""
    title_is(phone, "What came out")
    phone.type_digits(good)
    for label, digits in (("Rejected", rejected), ("Left in the pot", residue)):
        phone.press(label)
        phone.type_digits(digits)
    phone.press_main(f"Finish, {good} jars")
    phone.page.locator(".label").first.wait_for()
    return phone.page.evaluate("location.hash").rsplit("/", 1)[1]


def bring_to_stall(phone: Phone, lot: str, *, amount: str) -> None:
    """Move packs of a lot from the kitchen to the stall."""
    phone.go(f"/bring/{STALL}")
    page = phone.page
    phone.press("Lane kitchen", among=page.locator("#field-other"))
    phone.press(lot, among=page.locator("#field-lot"))
    phone.type_digits(amount)
    phone.press_main(f"Move {amount}")
    page.get_by_role("status").filter(has_text=lot).wait_for()


def sell(phone: Phone, product: str, count: int) -> None:
    """Two taps: the product, the number."""
    row = phone.page.locator(".goods").get_by_role("button", name=product)
    row.click()
    ruler = phone.page.locator(".ruler")
    ruler.get_by_role("button", name=re.compile(rf"^sold {count}\b")).click()
    phone.page.locator(".last-deed").get_by_text("kept on this phone").wait_for()


def open_stall(phone: Phone) -> None:
    """Stand behind the table of the bridge stall."""
    phone.go("/stall")
    choice = phone.cup("Bridge stall")
    ruler = phone.page.locator(".ruler")
    choice.or_(ruler).first.wait_for()
    if choice.count() > 0:  # asked the first time only
        choice.click()
    ruler.wait_for()


def title_is(phone: Phone, words: str) -> None:
    """Wait until the screen of this title is there."""
    phone.page.locator("h1", has_text=words).wait_for()


def count(phone: Phone, lot: str, digits: str) -> None:
    """Count a lot in the lane kitchen, where it stands."""
    phone.go(f"/lot/{lot}/count")
    phone.type_digits(digits)
    phone.press_main("Save the count")
    title_is(phone, "Kept on this phone")


def correct_weigh_in(phone: Phone, batch: str, entry: str, *, to: str, reason: str) -> None:
    """Say what the display really showed, and why."""
    phone.go(f"/correct/{batch}/{entry}")
    phone.cup("It showed").wait_for()
    phone.rub_out(len(to))
    phone.type_digits(to)
    phone.page.get_by_label("Why?").fill(reason)
    phone.press_main("Save the correction")
    phone.page.get_by_role("heading", name="Steps").wait_for()


def change_contact(phone: Phone, source: str, words: str) -> None:
    """Write another contact of a source."""
    phone.go(f"/set-up/sources/{source}")
    phone.page.get_by_label("Contact").fill(words)
    phone.press_main("Keep 1 change")
    phone.sees("Kept")


def change_person(phone: Phone, name: str) -> None:
    """Hand the phone to somebody who once signed in on it."""
    phone.go("/people")
    phone.press(name, among=phone.page.get_by_role("group", name="Known on this phone"))
    phone.page.locator(".where", has_text=name).wait_for()
