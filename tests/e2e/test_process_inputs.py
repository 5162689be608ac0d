"""A check worked out from what was weighed in, without a server."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from tests.e2e.hearth import DeskPhone, Hearth
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
