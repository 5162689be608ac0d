"""Bad input: what was typed stays, one sentence says what is right, markup is only text."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from tests.e2e.hearth import DeskPhone, Hearth, lived_in
from tests.e2e.look import until_quiet
from tests.e2e.phones import Phone
from tests.e2e.screens import Addresses, patterns
from tests.e2e.set_up import KITCHEN, RECIPE, STALL, STORE
from tests.people import PASSPHRASE
from tests.writing import made_id

MARKUP = "<img src=x onerror=\"document.body.id='struck'\"><b>Quince</b>"
TYPE = """(field, words) => {
  field.value = words;
  field.dispatchEvent(new InputEvent("input", { bubbles: true }));
}"""


def test_a_wrong_passphrase_says_so_and_keeps_what_was_typed(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = new_phone(hearth.url).start()
    login = phone.page.get_by_label("Login", exact=True)
    login.fill("pim@hearth")
    phone.page.get_by_label("Passphrase", exact=True).fill("not the right one")

    phone.press_main("Sign in")

    assert _only_sentence(phone) == "Login and passphrase do not go together. Type both again."
    assert login.input_value() == "pim@hearth"
    hearth.server.kill()
    phone.press_main("Sign in")
    phone.sees("No signal reaches the server. Find signal and press again.")
    assert login.input_value() == "pim@hearth"


def test_what_the_server_could_not_store_is_refused_in_one_sentence_beside_its_field(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = _signed_in(hearth, new_phone, "pim")
    phone.go("/receive")
    page = phone.page
    phone.press("Orchard under the hill", among=page.get_by_role("group", name="From whom"))
    phone.press("Quinces", among=page.get_by_role("group", name="What").first)
    phone.press("How much")
    phone.type_digits("3.5")
    phone.press("Lane kitchen", among=page.get_by_role("group", name="Where it goes"))
    mark = page.get_by_label("Their lot mark")
    day = page.get_by_label("Day on the pack")

    mark.evaluate(TYPE, "L7\0 9")
    phone.press_main("Save as")

    assert "Their lot mark" in _only_sentence(phone)
    assert mark.get_attribute("aria-invalid") == "true"
    assert mark.input_value() == "L7\0 9"
    assert phone.waiting() == 0
    mark.fill("L7 9")
    day.fill("1726-01-01")
    phone.press_main("Save as")
    page.locator("input[type=date][aria-invalid=true]").wait_for()
    page.get_by_role("alert").filter(has_text="The date").wait_for()
    phone.until_draft_holds("1726-01-01")
    page.reload()
    page.get_by_role("button", name="How much").get_by_text("3.5").wait_for()
    assert mark.input_value() == "L7 9"
    assert day.input_value() == "1726-01-01"
    day.fill("2031-01-01")
    phone.press_main("Save as")
    phone.sees("Kept on this phone. Write the code")


def test_names_with_markup_are_only_text_on_every_screen(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    desk = hearth.desk()
    lived_in(desk)
    desk.push(list(_renamed(desk)))
    hearth.until_quiet()
    phone = _signed_in(hearth, new_phone, "ona")
    [stores] = phone.devices().values()
    addresses = Addresses(stores)
    shown = 0

    for pattern in patterns():
        phone.go(addresses.of(pattern))
        until_quiet(phone.page)
        assert phone.page.locator("img, main b > b").count() == 0, pattern
        assert phone.page.locator("body").get_attribute("id") is None, pattern
        shown += phone.page.locator("body").inner_text().count("<img src=x")

    assert shown > len(patterns())
    assert phone.trouble == []


def _renamed(desk: DeskPhone) -> Any:
    """Every name there is, changed to markup; and a recipe version full of it."""
    named = {
        "place": {KITCHEN: "Lane kitchen", STORE: "Cool store", STALL: "Bridge stall"},
        "material": {
            made_id(name): name for name in ("Quinces", "Sugar", "Pectin", "Quince jelly")
        },
        "source": {made_id("orchard"): "Orchard under the hill"},
        "recipient": {made_id("inn"): "Inn at the ford"},
        "instrument": {made_id("Bench scale"): "Bench scale", made_id("Probe"): "Probe"},
    }
    for type, names in named.items():
        for id, name in names.items():
            changes = {"name": {"from": name, "to": MARKUP}}
            yield desk.pen.write(f"{type}_changed", {type: id, "changes": changes})
    first = next(
        change["data"]["state"]["versions"][0]["body"]
        for change in desk.everything()
        if change["id"] == f"recipe:{RECIPE}"
    )
    steps = [{**step, "says": MARKUP, "caution": MARKUP} for step in first["steps"]]
    version = {**first, "number": 2, "name": MARKUP, "steps": steps, "note": MARKUP}
    yield desk.pen.write("recipe_published", version)


def _signed_in(hearth: Hearth, new_phone: Callable[..., Phone], login: str) -> Phone:
    phone = new_phone(hearth.url).start()
    phone.sign_in(f"{login}@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    return phone


def _only_sentence(phone: Phone) -> str:
    """The one refusal on the screen."""
    alert = phone.page.get_by_role("alert")
    alert.first.wait_for()
    assert alert.count() == 1
    return alert.inner_text()
