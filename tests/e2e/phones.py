"""A phone as a test holds it: a browser on a profile folder, to be killed and started again."""

from __future__ import annotations

import contextlib
import os
import re
import signal
import time
from pathlib import Path
from typing import Any

from playwright.sync_api import (
    BrowserContext,
    ConsoleMessage,
    Error,
    Locator,
    Page,
    Playwright,
    expect,
)

from tests.e2e.databases import each_database

SMALL = {"width": 360, "height": 800}
LAPTOP = {"width": 1280, "height": 800}
WAIT_MS = 20_000
ZONE = "Europe/Dublin"  # of the cooperative, whatever the machine's clock is set to
TOUCH_MS = 60  # two touches within 50 ms are one touch of a wet finger
GONE_S_MAX = 20
DRAFT_S_MAX = 5
WHOLE_S_MAX = 60
HANDED_OVER_S_MAX = 120
LOOK_EVERY_S = 0.2

# What a browser says by itself about a server that is not there, or was killed in the middle of
# an answer; the app cannot keep it quiet.
SERVER_IS_AWAY = (
    "net::ERR_CONNECTION_REFUSED",
    "net::ERR_CONNECTION_RESET",
    "net::ERR_EMPTY_RESPONSE",
    "net::ERR_INCOMPLETE_CHUNKED_ENCODING",
)

_LISTEN_FOR_VIOLATIONS = """
document.addEventListener("securitypolicyviolation", (event) =>
  console.error(`content rules: ${event.violatedDirective} ${event.blockedURI}`));
"""
_UNTIL_CONTROLLED = """() => new Promise((resolve) => {
  if (navigator.serviceWorker.controller !== null) resolve();
  else navigator.serviceWorker.addEventListener("controllerchange", () => resolve());
})"""
_GO = """(wanted) => new Promise((resolve) => {
  if (location.hash === wanted) return resolve();
  const before = document.querySelector(".frame");
  const look = () => {
    const now = document.querySelector(".frame");
    if (now === null || now === before) return;
    watch.disconnect();
    resolve();
  };
  const watch = new MutationObserver(look);
  watch.observe(document.body, { subtree: true, childList: true });
  location.hash = wanted;
})"""


class Phone:
    """One browser on one profile. Everything it complains about is kept in `trouble`."""

    def __init__(self, playwright: Playwright, folder: Path, url: str, **launch: Any) -> None:
        self.playwright = playwright
        self.folder = folder
        self.url = url
        self.launch = {
            "viewport": SMALL, "device_scale_factor": 2, "is_mobile": True, "has_touch": True,
            "locale": "en-GB", "timezone_id": ZONE, **launch,
        }  # fmt: skip
        self.trouble: list[str] = []
        self.context: BrowserContext | None = None

    @property
    def page(self) -> Page:
        """The one page of the app."""
        assert self.context is not None, "the phone is off"
        return self.context.pages[0]

    def start(self, at: str = "/", *, slowed: int = 1, first: str = "") -> Phone:
        """A new browser process on the same profile, opened at a path of the app.

        `slowed` makes its processor that much slower; the script `first` runs before the app.
        """
        self.context = self.playwright.chromium.launch_persistent_context(
            self.folder, **self.launch
        )
        self.context.set_default_timeout(WAIT_MS)
        self.context.add_init_script(_LISTEN_FOR_VIOLATIONS + first)
        self.slow_down(slowed)
        self.page.on("console", self._hear)
        self.page.on("pageerror", lambda error: self.trouble.append(f"not caught: {error}"))
        self._open(at)
        return self

    def load(self, at: str) -> None:
        """The whole app anew at a path, in the browser that already runs."""
        self.page.goto("about:blank")
        self.page.set_viewport_size(SMALL)
        self._open(at)

    def _open(self, at: str) -> None:
        self.page.goto(f"{self.url}/#{at}" if at != "/" else self.url)
        self.page.locator("h1").wait_for()

    def slow_down(self, times: int) -> None:
        """Give the page a processor so many times slower than this machine's."""
        assert self.context is not None, "the phone is off"
        devtools = self.context.new_cdp_session(self.page)
        devtools.send("Emulation.setCPUThrottlingRate", {"rate": times})

    def _hear(self, message: ConsoleMessage) -> None:
        said = message.text
        if message.type == "error" and not any(words in said for words in SERVER_IS_AWAY):
            self.trouble.append(f"{said} ({message.location.get('url', '')})")

    def kill(self) -> None:
        """As a dead battery: the browser's processes end at once, none of them asked."""
        for pid in self._browser_pids():
            os.killpg(os.getpgid(pid), signal.SIGKILL)
        until = time.monotonic() + GONE_S_MAX
        while self._browser_pids():
            assert time.monotonic() < until, "the killed browser is still there"
            time.sleep(LOOK_EVERY_S)
        with contextlib.suppress(Error):  # what is dead cannot always be closed politely
            self.put_away()
        self.context = None

    def _browser_pids(self) -> list[int]:
        """The processes started on this phone's own profile folder."""
        own = f"--user-data-dir={self.folder}".encode()
        found = []
        for process in Path("/proc").iterdir():
            if not process.name.isdecimal():
                continue
            try:
                words = (process / "cmdline").read_bytes().split(b"\0")
            except OSError:  # it ended meanwhile
                continue
            if own in words and b"--type=" not in b" ".join(words):
                found.append(int(process.name))
        return found

    def put_away(self) -> None:
        """Close it as a person does."""
        if self.context is not None:
            self.context.close()
            self.context = None

    def go(self, path: str) -> None:
        """Go to a screen by its path, and wait until it has taken the old one's place."""
        self.page.evaluate(_GO, f"#{path}")
        self.page.locator("h1").wait_for()

    def until_controlled(self) -> None:
        """Wait until the service worker stands between this page and the network."""
        self.page.evaluate(_UNTIL_CONTROLLED)

    def stored(self) -> dict[str, Any]:
        """Every row of every device's database on this phone, by database and store."""
        return each_database(self.page, "rows")

    def devices(self) -> dict[str, Any]:
        """The stores of each member's database, by the member's login."""
        stored = self.stored()
        rows = stored["kitchenlog-phone"]["devices"]
        return {
            row["member"]["login"].split("@")[0]: stored[f"kitchenlog-{row['device']}"]
            for row in rows
            if f"kitchenlog-{row['device']}" in stored
        }

    def members(self) -> dict[str, str]:
        """The member's id of each login known on this phone."""
        rows = self.stored()["kitchenlog-phone"]["devices"]
        return {row["member"]["login"].split("@")[0]: row["member"]["id"] for row in rows}

    def waiting(self) -> int:
        """How many entries of everybody on this phone wait to be handed over."""
        return sum(count for _, count in self._standings())

    def _standings(self) -> list[tuple[bool, int]]:
        """Of each member here: whether the first pull came to its end, and how much waits."""
        told = each_database(self.page, "standing")
        return [(each[0], each[1]) for each in told.values() if each is not None]

    def shown(self) -> str:
        """The screen as one who hears it would be told; for reports of failures."""
        if self.context is None or not self.context.pages:
            return "off"
        try:
            return f"{self.page.url}\n{self.page.locator('body').aria_snapshot()}"
        except Error as trouble:
            return str(trouble)

    def until_draft_holds(self, digits: str) -> None:
        """Wait until what was typed is written down where a crash cannot reach it."""
        until = time.monotonic() + DRAFT_S_MAX
        while digits not in str([s["drafts"] for s in self.devices().values()]):
            assert time.monotonic() < until, f"no draft holds {digits}"
            time.sleep(LOOK_EVERY_S)

    def until_whole(self, *, most_s: float = WHOLE_S_MAX) -> None:
        """Wait until everything the server had to tell has been taken in."""
        until = time.monotonic() + most_s
        while not all(is_whole for is_whole, _ in self._standings()):
            assert time.monotonic() < until, "the first pull has not come to its end"
            time.sleep(LOOK_EVERY_S)

    def until_nothing_waits(self) -> None:
        """Wait until every outbox on this phone has emptied by itself."""
        until = time.monotonic() + HANDED_OVER_S_MAX
        while self.waiting():
            assert time.monotonic() < until, f"{self.waiting()} still wait"
            time.sleep(LOOK_EVERY_S)

    # What hands do

    def hand_over_now(self) -> None:
        """As a person who does not want to wait for the next time it goes by itself."""
        self.go("/outbox")
        self.press_main("Hand over now")

    def cup(self, name: str, *, exact: bool = False, among: Locator | None = None) -> Locator:
        """Whatever can be pressed and is named like this."""
        place = among or self.page.locator("body")
        button = place.get_by_role("button", name=name, exact=exact)
        return button.or_(place.get_by_role("link", name=name, exact=exact))

    def press(self, name: str, *, exact: bool = False, among: Locator | None = None) -> None:
        """Press it once it is there; the first one where several are named alike."""
        self.cup(name, exact=exact, among=among).first.click(delay=TOUCH_MS)

    def main_key(self) -> Locator:
        """The one main act of the screen."""
        return self.page.locator(".bench .cup.main")

    def press_main(self, words: str) -> None:
        """Press the main key once it says this and is ready."""
        main_key = self.page.locator(".bench .cup.main:not(.not-ready)", has_text=words)
        main_key.click(delay=TOUCH_MS)

    def type_digits(self, digits: str) -> None:
        """On the own keypad, key by key."""
        for digit in digits:
            self._press_key("point" if digit == "." else digit)

    def rub_out(self, count: int) -> None:
        """So many digits, from the last one."""
        for _ in range(count):
            self._press_key("rub out")

    def _press_key(self, name: str) -> None:
        keys = self.page.get_by_role("group", name="Digits")
        keys.get_by_role("button", name=name, exact=True).click(delay=TOUCH_MS)

    def sees(self, words: str | re.Pattern[str], *, exact: bool = False) -> None:
        """Wait until these words are on the screen."""
        self.page.get_by_text(words, exact=exact).first.wait_for()

    def said(self) -> str:
        """The words of the work on the screen, one space between them."""
        return " ".join(self.page.locator("main").inner_text().split())

    def until_said(self, words: str) -> None:
        """Wait until the work on the screen says this; any space is one space."""
        # Playwright takes every run of blanks for one, a narrow or unbreakable one too.
        main = self.page.locator("main")
        expect(main).to_contain_text(words, use_inner_text=True)

    def sign_in(self, login: str, passphrase: str) -> None:
        """With signal, as somebody who has an account."""
        self.page.get_by_label("Login", exact=True).fill(login)
        self.page.get_by_label("Passphrase", exact=True).fill(passphrase)
        self.press_main("Sign in")
        self.page.get_by_role("navigation", name="Start something").wait_for()
