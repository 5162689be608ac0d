"""A recipe without a server: shares, as bought, two versions compared, out to a file and in."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

from tests.e2e.hearth import Hearth
from tests.e2e.look import axe_finds, cut_off, small_targets, small_text, until_quiet
from tests.e2e.phones import TOUCH_MS, Phone
from tests.people import PASSPHRASE

NAME = "Quince spread"


def test_a_recipe_is_written_scaled_changed_compared_and_goes_out_and_in_again(
    hearth: Hearth, new_phone: Callable[..., Phone], tmp_path: Path
) -> None:
    phone = new_phone(hearth.url).start()
    phone.sign_in("ona@hearth", PASSPHRASE)
    phone.until_whole()
    phone.until_controlled()
    hearth.server.kill()

    _write(phone)
    _start(phone)
    _publish_another(phone)
    _compare(phone)
    csv = _export(phone, tmp_path / "recipes.csv")
    _bring_in(phone, csv)
    assert phone.trouble == []


def _write(phone: Phone) -> None:
    phone.go("/set-up/recipes/new")
    phone.page.locator("#field-name input").fill(NAME)
    phone.press("Quince jelly", among=phone.page.locator("#field-product"))
    _number(phone, "makes", "8")
    phone.press("Add a line")
    phone.press("Quinces", among=phone.page.locator("#field-material"))
    phone.type_digits("6000")
    phone.press("Counts as the base")
    phone.press("as bought", exact=True)
    _number(phone, "yield_percent", "77")
    phone.sees("That leaves 4 620")
    _picture(phone, "line-as-bought")
    phone.press_main("Keep")
    phone.press("Add a line")
    phone.press("Sugar", among=phone.page.locator("#field-material"))
    phone.press("% of the base", exact=True)
    phone.type_digits("60")
    phone.sees("That is 2 772")
    _picture(phone, "line-share")
    phone.press_main("Keep")
    phone.press("Add a size")
    _number(phone, "net", "250")
    phone.press("Jar with lid", among=phone.page.locator("#field-packaging"))
    _picture(phone, "pack")
    phone.press_main("Keep the size")
    phone.sees("Counts as the base")
    _picture(phone, "recipe")
    phone.press_main("Publish version 1")
    phone.sees(NAME)


def _start(phone: Phone) -> None:
    """For 4 kg half of each line, the share from what is left of what was bought."""
    phone.go("/start")
    phone.press(NAME)
    phone.press("by amount", exact=True)
    phone.type_digits("4")
    phone.sees("1.386")
    phone.sees("leaves 2.31 kg prepared")
    phone.sees("Fills 16 of 250 g.")
    _picture(phone, "start")
    phone.press_main("Start")
    phone.sees("Quinces")
    phone.page.wait_for_url("**/#/lay-out/*")
    started = _last(phone, "batch_started")
    assert [line["amount"] for line in started["lines"]] == [
        {"amount": "3000", "unit": "g"},
        {"amount": "1386", "unit": "g"},
    ]
    assert started["lines"][0]["yields"] == {"percent": "77", "by": "typed"}
    assert started["lines"][1]["percent_of"] == "base"
    assert started["pack_net"] == {"amount": "250", "unit": "g"}


def _publish_another(phone: Phone) -> None:
    _open(phone)
    phone.press("Sugar")
    _number(phone, "percent", "50", rub_out=2)
    phone.press_main("Keep")
    phone.press_main("Publish version 2")
    phone.sees(NAME)


def _compare(phone: Phone) -> None:
    _open(phone)
    phone.press("Compare two versions")
    phone.sees("1 line, 0 steps and 0 other things differ.")
    phone.sees("percent: 60 % becomes 50 %")
    phone.sees("as before")
    _picture(phone, "compare")


def _export(phone: Phone, path: Path) -> str:
    _open(phone)
    phone.press("Export as a file")
    _picture(phone, "export")
    with phone.page.expect_download() as kept:
        phone.press_main("Keep as CSV")
    kept.value.save_as(path)
    text = path.read_bytes().decode()
    assert text.splitlines()[0].startswith("recipe,part,id,what,amount,unit")
    assert f"{NAME},line,2,Sugar,2310,g,,,50,base" in text
    with phone.page.expect_download() as kept:
        phone.press("Keep as JSON")
    assert kept.value.suggested_filename.endswith(".json")
    return text


def _bring_in(phone: Phone, csv: str) -> None:
    phone.go("/set-up/recipe-import")
    box = phone.page.locator("#field-text textarea")
    changed = csv.replace("Sugar,2310,g,,,50,base", "Honey,2310,g,,,5x,base")
    box.fill(changed)
    phone.sees('Row 5, percent: "5x" is no number; write it with a point, as 12.5')
    phone.sees('Row 5, what: "Honey" is not set up here')
    phone.cup("Set up Honey").wait_for()
    _picture(phone, "import-wrong")
    assert box.input_value() == changed.replace("\r\n", "\n")

    box.fill(csv.replace("2310,g,,,50,base", "2310,g,,,55,base"))
    phone.sees("becomes the next version of the recipe of this name")
    phone.press_main(f"Open {NAME} as a draft")
    phone.page.locator(".bench .cup.main", has_text="Publish version 3").wait_for()
    phone.sees("percent: 50 % becomes 55 %")
    assert _last(phone, "recipe_published")["number"] == 2
    _picture(phone, "imported-draft")


def _open(phone: Phone) -> None:
    phone.go("/set-up/recipes")
    phone.press(NAME)
    phone.page.locator("h1", has_text=NAME).wait_for()


def _number(phone: Phone, name: str, digits: str, *, rub_out: int = 0) -> None:
    field = phone.page.locator(f"#field-{name} button").first
    field.click(delay=TOUCH_MS)
    phone.page.get_by_role("group", name="Digits").wait_for()
    phone.rub_out(rub_out)
    phone.type_digits(digits)


def _last(phone: Phone, kind: str) -> dict[str, Any]:
    rows = phone.devices()["ona"]["entries"]
    entries = [row["entry"] for row in rows if row["entry"]["kind"] == kind]
    body: dict[str, Any] = max(entries, key=lambda entry: entry["device_seq"])["body"]
    return body


def _picture(phone: Phone, name: str) -> None:
    """Nothing on it is too small, cut off or unreadable; kept where somebody wants to look."""
    page = phone.page
    until_quiet(page)
    assert [axe_finds(page), small_text(page), small_targets(page), cut_off(page)] == [
        [], [], [], [],
    ], name  # fmt: skip
    folder = os.environ.get("KL_PICTURES")
    if folder is None:
        return
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        page.screenshot(path=Path(folder) / f"{name}-{scheme}.png", full_page=True)
    page.emulate_media(color_scheme="light")
