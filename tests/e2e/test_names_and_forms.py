"""Small things of the road: a login kept, a code that says who, two of one name, no place."""

from __future__ import annotations

from collections.abc import Callable

from tests.e2e.hearth import Hearth
from tests.e2e.phones import Phone
from tests.people import PASSPHRASE
from tests.writing import made_id


def test_the_sign_in_form_keeps_the_login_over_a_reload_and_never_the_passphrase(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = new_phone(hearth.url).start()
    page = phone.page
    page.get_by_label("Login", exact=True).fill("pim@hearth")
    page.get_by_label("Passphrase", exact=True).fill(PASSPHRASE)

    page.wait_for_timeout(300)  # a person does not type and reload in one breath
    page.reload()

    login = page.get_by_label("Login", exact=True)
    login.wait_for()
    assert login.input_value() == "pim@hearth"
    assert page.get_by_label("Passphrase", exact=True).input_value() == ""
    assert PASSPHRASE not in str(phone.devices())


def test_a_members_own_code_lets_in_on_a_new_phone_by_a_passphrase_alone(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    desk = hearth.desk()
    pim = next(
        change["data"]["state"]["member"]
        for change in desk.everything()
        if change["id"].startswith("member:") and "Pim" in change["data"]["state"]["name"]
    )
    code = desk.ask("POST", "join-codes", {"member": pim})["code"]
    phone = new_phone(hearth.url).start()
    phone.go(f"/sign-in/join/{code}")
    page = phone.page

    phone.sees("This code is yours")
    assert page.get_by_label("Your name, as others know you").count() == 0
    assert page.get_by_label("Login you choose").count() == 0
    page.get_by_label("Passphrase you choose").fill("another spoon of thyme")
    phone.press_main("Join by code")

    page.get_by_role("navigation", name="Start something").wait_for()


def test_a_name_that_is_taken_is_refused_and_two_that_met_are_shown(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = new_phone(hearth.url).start()
    phone.sign_in("ona@hearth", PASSPHRASE)
    phone.until_whole()
    hearth.server.kill()
    page = phone.page
    phone.go("/set-up/places/new")
    name = page.locator("#field-name input")
    name.fill(" lane  KITCHEN")

    phone.press_main("Keep")

    phone.sees("Lane kitchen is set up already. Choose it, or write another name.")
    assert name.input_value() == " lane  KITCHEN"
    assert phone.waiting() == 0
    name.fill("Loft")
    phone.press_main("Keep Loft")
    phone.sees("set up")
    hearth.server.start()
    desk = hearth.desk()
    loft = {"place": made_id("other loft"), "name": "loft", "sort": "store"}
    desk.push([desk.pen.write("place_defined", loft)])
    hearth.until_quiet()
    phone.until_nothing_waits()
    phone.hand_over_now()
    phone.go("/set-up/places")
    page.get_by_text("two of one name").nth(1).wait_for()
    phone.press("Loft", exact=False)
    phone.sees("Two are called")


def test_a_place_that_is_not_on_the_phone_says_so_with_a_way_back(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = new_phone(hearth.url).start()
    phone.sign_in("pim@hearth", PASSPHRASE)

    phone.go("/bring/xx")

    phone.sees("This place is not on this phone. Choose your stall again.")
    phone.press_main("Which stall?")
    phone.page.locator("h1", has_text="Which stall?").wait_for()
