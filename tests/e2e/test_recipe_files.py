"""Recipes out of several files, without a server: each file and each recipe its own draft."""

from __future__ import annotations

from collections.abc import Callable

from tests.e2e.hearth import Hearth
from tests.e2e.look import axe_finds, cut_off, small_targets, small_text, until_quiet
from tests.e2e.phones import LAPTOP, SMALL, Phone
from tests.e2e.work import title_is
from tests.people import PASSPHRASE

# As a spreadsheet of another country writes it: semicolons, a mark of the encoding in front.
TWO = (
    "\ufeffrecipe;part;id;what;amount;unit\r\n"
    "Quince drops;recipe;;Quince jelly;4;kg\r\n"
    "Quince drops;line;1;Quinces;5;kg\r\n"
    "Quince syrup;recipe;;Quince jelly;3;kg\r\n"
    "Quince syrup;line;1;Quinces;2,5;kg\r\n"
)
OTHER = "recipe,part,id,what,amount,unit\nQuince tea,recipe,,Quince jelly,1,kg\n"


def test_every_recipe_of_every_file_is_a_draft_of_its_own_and_nothing_is_lost(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = new_phone(hearth.url).start()
    phone.sign_in("ona@hearth", PASSPHRASE)
    phone.until_whole()
    phone.until_controlled()
    hearth.server.kill()
    phone.go("/set-up/recipe-import")
    box = phone.page.locator("#field-text textarea")
    box.fill("my own words")

    _choose(phone, ("jams.csv", TWO.encode()), ("tea.csv", OTHER.encode()))
    phone.sees('jams.csv, row 5, amount: "2,5" is no number; write it with a point, as 12.5')
    _choose(phone, ("old.csv", "recipe,part\nCrème,recipe\n".encode("latin-1")))
    phone.sees("old.csv is not written in UTF-8.")
    phone.press("pasted text", exact=True)
    assert box.input_value() == "my own words"
    phone.press("jams.csv", exact=True)
    _is_legible(phone)
    for name in ("Quince drops", "Quince syrup"):
        phone.press(f"Open {name} as a draft")
        title_is(phone, "New recipe")
        phone.go("/set-up/recipe-import")
        phone.press("jams.csv", exact=True)
    phone.press("Open Quince drops as a draft")
    phone.sees("There is a draft of Quince drops on this phone already.")

    phone.go("/set-up/recipes")
    drafts = phone.page.get_by_role("group", name="Half written on this phone")
    drafts.get_by_role("button", name="Quince syrup").wait_for()
    _is_legible(phone)
    phone.press("Quince drops", among=drafts)
    assert phone.page.get_by_label("Name").first.input_value() == "Quince drops"
    phone.press_main("Publish version 1")
    phone.cup("Quince drops").first.wait_for()
    phone.press("Quince syrup", among=drafts)
    phone.press("Rub out what I typed")
    phone.page.wait_for_url("**/#/set-up/recipes")
    title_is(phone, "Recipes")
    assert drafts.count() == 0
    assert phone.trouble == []


def _choose(phone: Phone, *files: tuple[str, bytes]) -> None:
    phone.page.locator("#recipe-file").set_input_files(
        [{"name": name, "mimeType": "text/csv", "buffer": text} for name, text in files]
    )


def _is_legible(phone: Phone) -> None:
    page = phone.page
    for size in (LAPTOP, SMALL):
        page.set_viewport_size(size)
        until_quiet(page)
        assert axe_finds(page) + small_text(page) + small_targets(page) + cut_off(page) == []
