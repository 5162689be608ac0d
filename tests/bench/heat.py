"""A logger's file on a phone: from choosing it to its verdict and its drawing."""

from __future__ import annotations

import statistics
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.bench.table import head, line
from tests.browsers import BROWSER_FLAGS, chromium
from tests.e2e.hearth import Hearth, begin, lived_in
from tests.e2e.phones import WAIT_MS, Phone
from tests.people import PASSPHRASE
from tests.servers import KitchenlogServer

SLOWED = 4
ROWS = 5_000
TIMES = 5
DRAWN_MS_MOST = 1_000

_TIME_FILES = """() => {
  let chosenAtMs = 0;
  let done = () => undefined;
  window.drawnAfterMs = [];
  window.untilDrawn = (mostMs) => new Promise((resolve, reject) => {
    setTimeout(() => reject(new Error("a file was not drawn")), mostMs);
    done = resolve;
  });
  addEventListener("change", (event) => {
    if (event.target.type === "file") chosenAtMs = performance.now();
  }, { capture: true });
  new MutationObserver(() => {
    const isWhole = document.querySelector(".heat-course") && document.querySelector(".plate");
    if (chosenAtMs === 0 || isWhole === null) return;
    // Drawn is what the next frame shows, and not what stands in the page.
    requestAnimationFrame(() => setTimeout(() => {
      if (chosenAtMs === 0) return;
      window.drawnAfterMs.push(performance.now() - chosenAtMs);
      chosenAtMs = 0;
      done();
    }));
  }).observe(document.body, { subtree: true, childList: true });
}"""


def measure() -> None:
    """Judged as a cooling, with all crossings to be found, on a phone whose server is dead."""
    head(f"a logger's file of {ROWS:,} rows, Chromium at {SLOWED}x CPU slowdown")
    with (
        tempfile.TemporaryDirectory(prefix="kl-bench-") as folder,
        sync_playwright() as playwright,
    ):
        server = KitchenlogServer(Path(folder))
        server.start()
        phone = Phone(
            playwright, Path(folder) / "phone", server.url,
            executable_path=chromium(), args=BROWSER_FLAGS,
        )  # fmt: skip
        try:
            batch = _ready(phone, begin(server))
            server.kill()
            taken_ms = _taken(phone, batch, Path(folder))
        finally:
            phone.put_away()
            server.stop()
    middle, worst = statistics.median(taken_ms), max(taken_ms)
    line(f"judged and drawn, worst of {TIMES} (median {middle:,.0f})", f"{worst:,.0f} ms",
         floor=f"<= {DRAWN_MS_MOST:,} ms", holds=worst <= DRAWN_MS_MOST)  # fmt: skip


def _ready(phone: Phone, hearth: Hearth) -> str:
    hearth.until_quiet()
    batch = lived_in(hearth.desk()).batch
    hearth.until_quiet()
    phone.start()
    phone.sign_in("pim@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    return batch


def _taken(phone: Phone, batch: str, folder: Path) -> list[float]:
    file = folder / "logger.csv"
    file.write_text(_csv())
    phone.slow_down(SLOWED)
    phone.page.evaluate(_TIME_FILES)
    for number in range(TIMES):
        phone.go(f"/heat/{batch}/{number}")
        page = phone.page
        page.get_by_label("What it is judged by").select_option("two_stage_cooling")
        page.get_by_label("Who set the limit?").fill("the local code")
        phone.press("A logger's file")
        phone.press_main("Go on")
        page.set_input_files("input[type=file]", file)
        page.evaluate("(mostMs) => window.untilDrawn(mostMs)", WAIT_MS)
    taken: list[float] = phone.page.evaluate("window.drawnAfterMs")
    assert len(taken) == TIMES
    return taken


def _csv() -> str:
    """Every four seconds from 75 degC down to 4, in five and a half hours."""
    rows = ["Date/Time;Temp (\N{DEGREE SIGN}C);RH %"]
    for row in range(ROWS):
        second = row * 4
        celsius = 2 + 73 * 0.1 ** (second / 12_000)
        clock = f"{8 + second // 3600:02}:{second // 60 % 60:02}:{second % 60:02}"
        rows.append(f"2026-11-10 {clock};{celsius:.2f};41".replace(".", ","))
    return "\n".join(rows)
