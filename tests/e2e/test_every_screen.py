"""Every screen, one by one, loaded afresh without a server: there, whole, legible.

Where a phone is most likely to be found dead the browser itself is started anew; the other
screens are loaded whole, worker and database asked again, in a browser that already runs.

With KL_SHOTS=<folder> each is also kept as pictures, to be looked at.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Playwright

from tests.e2e.look import (
    axe_finds,
    broken_codes,
    cut_off,
    small_targets,
    small_text,
    until_drawn_anew,
    until_quiet,
)
from tests.e2e.phones import LAPTOP, SMALL, Phone
from tests.e2e.screens import Addresses, patterns
from tests.servers import KitchenlogServer

SHOTS = os.environ.get("KL_SHOTS")
NARROW = {"width": 320, "height": 800}
COLD = ("/", "/weigh-in/:batch/:line", "/stall", "/sign-in")
# What these show touches health: the caution must be drawn, not only written in the source.
CAUTIONS = {
    "/batch/:batch": "shelf_life", "/label/:lot": "shelf_life",
    "/lot/:lot": "shelf_life", "/lot/:lot/fill": "net_content", "/stock": "shelf_life",
    "/lay-out/:batch": "shelf_life", "/trace/:lot": "shelf_life",
    "/set-up/recipes/:recipe": "scaling", "/sums/:sum": "sugar", "/sums/:sum/:batch": "sugar",
}  # fmt: skip
NOT_THERE = re.compile(r"not on this phone|does not hold|Loading\.|is not here")


@dataclass
class LaidDown:
    """A phone that has fetched everything and was put away, and addresses it can show."""

    phone: Phone
    addresses: Addresses


def _check(phone: Phone, scale: str) -> None:
    """A scale's empty pan is read, so that there is a check to be corrected."""
    phone.go(f"/instruments/{scale}/check")
    phone.press("Quick")
    phone.press_main("Go on")
    phone.press("How much")
    phone.type_digits("100")
    phone.press_main("Keep")
    phone.press_main("Go on")
    phone.press_main("It stands level")
    phone.type_digits("0")
    phone.press_main("Keep 0")
    phone.press("Skip")
    phone.press_main("Save")
    phone.until_nothing_waits()


def _log(phone: Phone, batch: str) -> None:
    """Cold food is looked at once, so that there is a log to be seen."""
    phone.go(f"/heat/{batch}")
    phone.page.get_by_label("What it is judged by").select_option("cold_hold")
    phone.page.get_by_label("Who set the limit?").fill("the local code")
    phone.press("Timer here")
    phone.press("\N{DEGREE SIGN}C")
    phone.press_main("Start the timer")
    phone.type_digits("4.5")
    phone.press_main("Keep")
    # A log that names no thermometer proves nothing.
    phone.page.get_by_label("What was done about it?").fill("it went to the colder shelf")
    phone.press_main("Save 1 row")
    phone.until_nothing_waits()


@pytest.fixture(scope="module")
def laid_down(
    playwright: Playwright,
    browser_type_launch_args: dict[str, Any],
    tmp_path_factory: pytest.TempPathFactory,
) -> Iterator[LaidDown]:
    """A coordinator's phone with four weeks of the demo cooperative; its server is dead."""
    folder = tmp_path_factory.mktemp("demo")
    server = KitchenlogServer(folder)
    server.start()
    try:
        said = server.manage("demo", "--to", server.url)
        server.until_quiet()
        phone = Phone(playwright, folder / "phone", server.url, **browser_type_launch_args)
        passphrase = re.search(r"passphrase of each: (.+)", said)
        login = re.search(r"(\S+@\S+)\s+.*coordinator.*processor", said)
        assert passphrase is not None and login is not None, said
        phone.start()
        phone.sign_in(login[1], passphrase[1])
        phone.until_controlled()
        phone.until_whole()
        [stores] = phone.devices().values()
        _check(phone, Addresses(stores).scale())
        _log(phone, Addresses(stores).of("/lay-out/:batch").rsplit("/", 1)[1])
        [stores] = phone.devices().values()
    finally:
        server.kill()
    phone.put_away()
    yield LaidDown(phone, Addresses(stores))
    phone.put_away()


@pytest.mark.parametrize("pattern", patterns())
def test_a_screen_stands_without_a_server(laid_down: LaidDown, pattern: str) -> None:
    phone, address = laid_down.phone, laid_down.addresses.of(pattern)

    phone.trouble.clear()
    _open(phone, address, cold=pattern in COLD)
    until_quiet(phone.page)

    assert phone.page.evaluate("location.hash") in (f"#{address}", "")
    if pattern != "/parts":
        assert not NOT_THERE.search(phone.page.locator("main").inner_text())
    found: dict[str, list[str]] = {
        "trouble": phone.trouble,
        "cautions": _without_caution(phone, pattern),
    }
    for size in (SMALL, LAPTOP, NARROW):
        phone.page.set_viewport_size(size)
        until_drawn_anew(phone.page)
        found |= _found_at(phone, pattern, size["width"])
    said = [f"{where}: {each}" for where, what in found.items() for each in what]
    assert not said, "\n".join(said)


def _open(phone: Phone, address: str, *, cold: bool) -> None:
    """The app at an address, from nothing: no document of the screen before is left."""
    if cold or phone.context is None:
        phone.put_away()
        phone.start(address)
    else:
        phone.load(address)
    phone.page.emulate_media(color_scheme="light")


def _without_caution(phone: Phone, pattern: str) -> list[str]:
    """What the screen should warn of and does not."""
    about = CAUTIONS.get(pattern)
    if about is None:
        return []
    notes = phone.page.get_by_role("note").and_(phone.page.locator(f"[data-about~={about}]"))
    return [] if notes.count() else [f"no caution about {about}"]


def _found_at(phone: Phone, pattern: str, width: int) -> dict[str, list[str]]:
    """What is wrong at this width; what depends on the light alone is looked at in both."""
    page = phone.page
    found = {
        f"{width} wide, text": small_text(page),
        f"{width} wide, targets": small_targets(page),
        f"{width} wide, cut": cut_off(page),
        f"{width} wide, codes": broken_codes(page),
    }
    if width == NARROW["width"]:
        return found
    found[f"{width} wide, axe"] = axe_finds(page)
    _keep_picture(phone, pattern, f"kitchen-{width}")
    page.emulate_media(color_scheme="dark")
    found[f"{width} wide, axe in the evening"] = axe_finds(page, only=["color-contrast"])
    _keep_picture(phone, pattern, f"evening-{width}")
    page.emulate_media(color_scheme="light")
    return found


def _keep_picture(phone: Phone, pattern: str, look: str) -> None:
    if SHOTS is not None:
        name = pattern.strip("/").replace("/", "_").replace(":", "") or "today"
        phone.page.screenshot(path=Path(SHOTS) / f"{name}-{look}.png", full_page=True)
