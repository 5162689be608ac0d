"""Checks worked out from what is read, or from what was weighed in, without a server."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from tests.e2e.hearth import DeskPhone, Hearth
from tests.e2e.look import cut_off
from tests.e2e.phones import Phone
from tests.e2e.set_up import KITCHEN
from tests.e2e.work import title_is, weigh_in
from tests.people import PASSPHRASE
from tests.writing import made_id

BATCH = made_id("brined batch")
DEFERS = "Where this differs from your local code"

_STEPS: tuple[dict[str, Any], ...] = (
    {"step": "sugar", "says": "Read the sugar.", "measures": "brix", "unit": "Brix",
     "low": "19", "high": "21"},
    {"step": "brine", "says": "Float the salometer.", "measures": "salometer", "unit": "%",
     "low": "8", "high": "12"},
    {"step": "acid", "says": "Run alkali in until it stays pink.", "measures": "acidity",
     "unit": "%", "low": "0.3", "acid": "citric"},
    {"step": "salt", "says": "Look at the salt.", "measures": "salt_weighed", "unit": "%",
     "low": "4.5", "high": "6", "counts": [{"line": "salt", "percent": "100"}]},
)  # fmt: skip
_PLAN: dict[str, Any] = {
    "product": made_id("Quince jelly"), "makes": {"amount": "10", "unit": "pc"},
    "lines": [
        {"line": "quinces", "material": made_id("Quinces"),
         "amount": {"amount": "950", "unit": "g"}, "below": "20", "above": "20"},
        {"line": "salt", "material": made_id("Salt"),
         "amount": {"amount": "50", "unit": "g"}, "below": "2", "above": "2"},
    ],
    "steps": [{**step, "set_by": "the tested recipe"} for step in _STEPS],
}  # fmt: skip


@dataclass(frozen=True)
class Bench:
    """A processor's phone whose server is dead, and the batch it works on."""

    phone: Phone

    def step(self, name: str) -> None:
        """Open a step."""
        self.phone.go(f"/step/{BATCH}/{name}")
        title_is(self.phone, "Step")

    def saves(self, words: str, *, then: str) -> None:
        """Save, and wait until the screen it goes on to is there."""
        self.phone.press_main(words)
        title_is(self.phone, then)

    def has_caution(self, about: str) -> None:
        """The caution stands there in full, with its deference."""
        self.phone.page.locator(f".caution[data-about~={about}]", has_text=DEFERS).wait_for()


@pytest.fixture
def bench(hearth: Hearth, new_phone: Callable[..., Phone]) -> Bench:
    """The batch is started and half weighed in; then there is no server any more."""
    _bring(hearth.desk())
    hearth.until_quiet()
    phone = new_phone(hearth.url).start()
    phone.sign_in("pim@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    hearth.server.kill()
    return Bench(phone)


def _bring(desk: DeskPhone) -> None:
    """A refractometer, salt and quinces, the recipe and a batch of it."""
    recipe = made_id("brine recipe")
    head = {"recipe": recipe, "number": 1, "name": "Brined quinces", "packs": 10}
    written = desk.pen.write("recipe_published", {**head, **_PLAN}, at=_ago(60))
    desk.push([
        desk.pen.write("instrument_defined", {
            "instrument": made_id("Lens"), "name": "Lens", "sort": "refractometer",
            "place": KITCHEN, "unit": "Brix", "division": "0.1",
        }, at=_ago(59)),
        desk.pen.write("instrument_defined", {
            "instrument": made_id("Float"), "name": "Float", "sort": "salometer",
            "place": KITCHEN, "unit": "salometer", "division": "1",
        }, at=_ago(59)),
        desk.pen.write("material_defined", {
            "material": made_id("Salt"), "name": "Salt", "sort": "ingredient",
            "measured_by": "mass", "letters": "SA",
        }, at=_ago(58)),
        written, *_received(desk),
        desk.pen.write("batch_started", {
            "batch": BATCH, "code": "BQ-1", "recipe": recipe, "place": KITCHEN,
            "recipe_version": written["id"], "scaled_by": "as_written", **_PLAN,
        }, at=_ago(50)),
        *(desk.pen.write("laid_out", {
            "batch": BATCH, "line": line, "lots": [{"lot": lot}],
        }, at=_ago(49)) for line, lot in (("quinces", "QU-1"), ("salt", "SA-1"))),
        desk.pen.write("weigh_in", {
            "batch": BATCH, "line": "quinces", "material": made_id("Quinces"), "lot": "QU-1",
            "place": KITCHEN, "reading": {"instrument": made_id("Bench scale"), "unit": "g",
                                          "shown": "950", "division": "1"},
        }, at=_ago(40)),
    ])  # fmt: skip


def _received(desk: DeskPhone) -> list[dict[str, Any]]:
    return [
        desk.pen.write("receipt", {
            "lot": lot, "material": made_id(name), "source": made_id("orchard"),
            "amount": {"amount": "9", "unit": "kg"}, "place": KITCHEN, "condition": "fit",
        }, at=_ago(55))
        for lot, name in (("QU-1", "Quinces"), ("SA-1", "Salt"))
    ]  # fmt: skip


def _ago(minutes: int) -> datetime:
    return datetime.now(UTC) - timedelta(minutes=minutes)


def test_salt_is_worked_out_once_every_line_is_weighed_in(bench: Bench) -> None:
    phone = bench.phone
    bench.step("salt")
    phone.sees("Weigh in every line first")
    phone.go(f"/weigh-in/{BATCH}/salt")
    weigh_in(phone, "Salt", "50.0", says="Save 50")
    title_is(phone, "Step 1")
    bench.step("salt")
    phone.until_said("by mass of what was weighed in")
    phone.until_said("5 %")  # 50 g of 1 000 g
    phone.sees("Within", exact=True)
    bench.has_caution("brine")
    bench.saves("Save 5 %", then="Step 1")
    bench.step("salt")
    phone.sees("of what was weighed in")
    assert phone.trouble == []


def test_sugar_is_corrected_to_20_degrees_by_the_temperature_of_the_sample(
    bench: Bench,
) -> None:
    """OIV-MA-AS2-02 Table I, 20 % at 16 degC: 0.28 to be taken off, as printed."""
    phone = bench.phone
    bench.step("sugar")
    phone.type_digits("20")
    phone.press("sample at")
    phone.type_digits("16")
    phone.press_main("Keep 16")
    phone.sees("19.72\u00a0\u00b0Bx")
    phone.sees("Within", exact=True)
    phone.press("sample at")
    phone.rub_out(2)
    phone.type_digits("95")
    phone.press_main("Keep 95")
    phone.sees("No figure that was read in print covers this temperature.")
    bench.has_caution("sugar")
    assert cut_off(phone.page) == []
    assert phone.trouble == []


def test_a_salometer_tells_its_salt_only_by_the_scale_it_has(bench: Bench) -> None:
    """Salometer sheet: 40 degrees are 40 x 26.395 / 100 = 10.558 % of salt."""
    phone = bench.phone
    bench.step("brine")
    phone.type_digits("40")
    phone.sees("Say which scale first")
    phone.press("100 is 26.395 % salt")
    phone.sees("10.558\u00a0%")
    phone.sees("Within", exact=True)
    bench.has_caution("brine")
    assert cut_off(phone.page) == []
    bench.saves("Save 10.558", then="Salt")
    assert phone.trouble == []


def test_an_acidity_asks_for_the_alkali_the_sample_and_the_blank(bench: Bench) -> None:
    """0.1 N x (7.2 - 0.2) mL x 64.04 / (10 x 10 g) = 0.448 28 % of citric acid."""
    phone = bench.phone
    bench.step("acid")
    phone.type_digits("7.2")
    phone.press("grams")
    for key, digits in (("strength", "0.1"), ("sample", "10"), ("step", "0.05")):
        phone.page.get_by_role("button", name=re.compile(f"^{key}")).click()
        phone.type_digits(digits)
        phone.press_main(f"Keep {digits}")
    phone.press("Blank: alkali run in without a sample")
    phone.type_digits("0.2")
    phone.press_main("Keep 0.2")
    phone.sees("0.448")
    phone.sees("Within", exact=True)
    bench.has_caution("acidified")
    assert cut_off(phone.page) == []
    bench.saves("Save 0.448", then="Salt")
    assert phone.trouble == []
