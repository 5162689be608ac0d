"""Control charts and the class, read without a server."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

from tests.e2e.charted import SCALE, charted
from tests.e2e.hearth import RECIPE, Hearth
from tests.e2e.look import until_quiet
from tests.e2e.phones import LAPTOP, SMALL, Phone
from tests.e2e.work import title_is
from tests.people import PASSPHRASE
from tests.writing import made_id

SHOTS = os.environ.get("KL_SHOTS")


def test_charts_of_checks_fills_and_yields_and_the_class_stand_without_a_server(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    lot = charted(hearth)
    phone = new_phone(hearth.url, "ona").start()
    phone.sign_in("ona@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    hearth.server.kill()

    _the_class_skill_by_skill(phone)
    _checks_of_the_scale(phone)
    _yields_from_the_batch(phone)
    _fills_from_the_lot(phone, lot)
    assert phone.trouble == []


def _the_class_skill_by_skill(phone: Phone) -> None:
    phone.go("/skills")
    title_is(phone, "The class")
    phone.sees("people read differently")
    # Biases 0, 0.1 and 0.8, of one person 0.0816: s_L = sqrt(0.19 - 0.00667 / 4), by hand.
    for words in ("one person again", "0.082", "person to person", "0.43", "both together"):
        phone.sees(words)
    _keep_picture(phone, "class")


def _checks_of_the_scale(phone: Phone) -> None:
    phone.go(f"/instruments/{SCALE}")
    phone.press("Control chart")
    title_is(phone, "Bench scale")
    phone.sees("How far they lie apart")
    fired = phone.page.get_by_role("list", name="What fired")
    fired.get_by_text("above the upper limit").first.wait_for()
    phone.page.locator(".point-words", has_text="too high").first.wait_for()
    _keep_picture(phone, "checks")

    phone.press("Slow drift")
    phone.sees("Weighted means")
    phone.put_away()
    phone.start(f"/instruments/{SCALE}/chart")
    phone.sees("Weighted means")
    phone.press("As a list")
    phone.sees("11. ")
    _keep_picture(phone, "drift")


def _yields_from_the_batch(phone: Phone) -> None:
    phone.go(f"/batch/{made_id('batch 3')}")
    phone.press("The yields of this recipe")
    title_is(phone, "Quince jelly, clear")
    # 3 jars of 240 g out of 3230 g are 22.3 %, far below what ten or eleven jars are.
    phone.sees("below the lower limit")
    phone.until_said("22.3")
    _keep_picture(phone, "yields")
    phone.press("As a list")
    phone.press("22.3")
    phone.page.get_by_role("heading", name="Steps").wait_for()

    phone.go(f"/set-up/recipes/{RECIPE}")
    phone.press("The yields of this recipe")
    phone.sees("From the batches this phone holds")


def _fills_from_the_lot(phone: Phone, lot: str) -> None:
    phone.go(f"/lot/{lot}")
    phone.press("Charts of the fills")
    phone.sees("Means and ranges")
    _keep_picture(phone, "fills")
    phone.press("This lot, pack by pack")
    phone.sees("3 more packs are needed: a chart begins with 8.")
    _keep_picture(phone, "too_few")


def _keep_picture(phone: Phone, name: str) -> None:
    if SHOTS is None:
        return
    for size in (SMALL, LAPTOP):
        phone.page.set_viewport_size(size)
        for light in ("light", "dark"):
            phone.page.emulate_media(color_scheme=light)
            until_quiet(phone.page)
            path = Path(SHOTS) / f"{name}-{size['width']}-{light}.png"
            phone.page.screenshot(path=path, full_page=True)
    phone.page.set_viewport_size(SMALL)
    phone.page.emulate_media(color_scheme="light")
