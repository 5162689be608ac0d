"""Five preparations offer a yield, without a server; a version takes it, a batch uses it."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

from tests.e2e.hearth import DeskPhone, Hearth
from tests.e2e.look import axe_finds, cut_off, small_targets, small_text, until_quiet
from tests.e2e.phones import LAPTOP, SMALL, Phone
from tests.e2e.set_up import KITCHEN
from tests.e2e.work import read_step, title_is, weigh_in
from tests.people import PASSPHRASE
from tests.writing import made_id

NAME = "Quince paste"
RECIPE = made_id("quince paste recipe")
PAPER_YIELD = {"percent": "77", "by": "typed", "prepared_as": "pulp"}
UNSCALED = "More than 4 kg of pulp scorch in this pan."
BOUGHT_G = 2000
# With 1650 g of the fifth: 8200 of 10 000 g, single ones from 80 to 83 %.
FOUR_PREPARED_G = (1600, 1640, 1660, 1650)


def test_five_preparations_offer_a_yield_that_a_new_version_takes_and_a_batch_uses(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    _four_batches(hearth.desk())
    hearth.until_quiet()
    phone = new_phone(hearth.url).start()
    phone.sign_in("ona@hearth", PASSPHRASE)
    phone.until_whole()
    phone.until_controlled()
    hearth.server.kill()
    _open(phone)
    assert "Measured here" not in phone.said()

    _fifth_batch(phone)
    _open(phone)
    phone.until_said("Measured here: 82 % over 5 preparations, single ones from 80 % to 83 %.")
    phone.until_said("The recipe says 77 %.")
    assert _bodies(phone, "recipe_published") == []  # nothing is put in by itself
    _is_legible(phone)
    phone.press("Take 82 % into the next version")
    phone.until_said("82 % is left")
    phone.sees("yield: 77 %, pulp, As typed becomes 82 %, pulp, Measured here")
    assert "Take 82" not in phone.said()
    phone.press_main("Publish version 2")
    phone.sees("version 2")

    assert _bodies(phone, "recipe_published")[-1]["lines"][0]["yields"] == {
        "percent": "82",
        "by": "own",
        "source": "5 preparations, 80\u00a0% to 83\u00a0%",
        "prepared_as": "pulp",
    }
    _next_batch_uses_it(phone)
    assert phone.trouble == []


def _four_batches(desk: DeskPhone) -> None:
    """A version whose yield is from paper, and four batches that weighed it and its pulp."""
    began_at = datetime.now(UTC) - timedelta(hours=9)
    minutes = iter(range(1, 200))
    made: list[dict[str, Any]] = []

    def write(kind: str, **body: Any) -> str:
        made.append(desk.pen.write(kind, body, at=began_at + timedelta(minutes=next(minutes))))
        return str(made[-1]["id"])

    planned = _planned()
    version = write(
        "recipe_published", recipe=RECIPE, number=1, name=NAME, does_not_scale=UNSCALED,
        **planned,
    )  # fmt: skip
    write(
        "receipt", lot="QU-1", material=made_id("Quinces"), source=made_id("orchard"),
        amount={"amount": "30", "unit": "kg"}, place=KITCHEN, condition="fit",
    )  # fmt: skip
    for at, prepared_g in enumerate(FOUR_PREPARED_G, start=1):
        batch = {"batch": made_id(f"paste {at}")}
        write(
            "batch_started", **batch, code=f"QP-{at}", recipe=RECIPE, recipe_version=version,
            place=KITCHEN, scaled_by="as_written", **planned,
        )  # fmt: skip
        write(
            "weigh_in", **batch, line="quinces", material=made_id("Quinces"), lot="QU-1",
            place=KITCHEN, reading=_shown(BOUGHT_G),
        )  # fmt: skip
        write("step_done", **batch, step="pulp", reading=_shown(prepared_g))
        write("batch_finished", **batch)
    desk.push(made)


def _planned() -> dict[str, Any]:
    return {
        "product": made_id("Quince jelly"),
        "makes": {"amount": "2", "unit": "kg"},
        "lines": [
            {"line": "quinces", "material": made_id("Quinces"), "state": "as_bought",
             "amount": {"amount": str(BOUGHT_G), "unit": "g"}, "is_base": True,
             "yields": PAPER_YIELD},
            {"line": "sugar", "material": made_id("Sugar"), "percent": "50",
             "percent_of": "base", "amount": {"amount": "770", "unit": "g"}},
        ],
        "steps": [
            {"step": "pulp", "says": "Peel, core and weigh the pulp.",
             "measures": "prepared_mass", "line": "quinces", "unit": "g", "minutes": "40"},
        ],
    }  # fmt: skip


def _shown(grams: int) -> dict[str, str]:
    return {"instrument": made_id("Bench scale"), "unit": "g", "shown": str(grams),
            "division": "1"}  # fmt: skip


def _fifth_batch(phone: Phone) -> None:
    """Weighed in and prepared on the phone."""
    _start_for(phone, "2")
    lines = phone.page.get_by_role("list", name="Lines")
    for name in ("Quinces", "Sugar"):
        line = lines.get_by_role("button", name=name)
        line.click()
        line.and_(phone.page.locator("[aria-pressed=true]")).wait_for()
    phone.press_main("Weigh in the first")
    weigh_in(phone, "Quinces", "2000", says="Save 2")
    weigh_in(phone, "Sugar", "770", says="Save 770")
    phone.until_said("takes 40 min as the recipe says")
    phone.sees(UNSCALED)
    _is_legible(phone)
    read_step(phone, "1650", says="Save 1")
    title_is(phone, "What came out")


def _next_batch_uses_it(phone: Phone) -> None:
    """Half of what 82 % leaves of 2 kg: 820 g of sugar where it was 770 g."""
    _start_for(phone, "2")
    assert [line["amount"]["amount"] for line in _started(phone)["lines"]] == ["2000", "820"]
    lines = phone.page.get_by_role("list", name="Lines")
    assert "820" in lines.get_by_role("button", name="Sugar").inner_text()


def _start_for(phone: Phone, kilograms: str) -> None:
    phone.go("/start")
    phone.press(NAME)
    phone.press("by amount", exact=True)
    phone.type_digits(kilograms)
    phone.until_said("40 min as written")
    phone.until_said(UNSCALED)
    phone.press_main("Start")
    phone.page.get_by_role("list", name="Lines").wait_for()


def _open(phone: Phone) -> None:
    phone.go("/set-up/recipes")
    phone.press(NAME)
    title_is(phone, NAME)


def _started(phone: Phone) -> dict[str, Any]:
    return _bodies(phone, "batch_started")[-1]


def _bodies(phone: Phone, kind: str) -> list[dict[str, Any]]:
    """What this phone itself or a batch under way holds of a kind, in the order it was made."""
    entries = [row["entry"] for row in phone.devices()["ona"]["entries"]]
    found = [entry for entry in entries if entry["kind"] == kind]
    return [entry["body"] for entry in sorted(found, key=lambda each: each["happened_at"])]


def _is_legible(phone: Phone) -> None:
    page = phone.page
    for size in (LAPTOP, SMALL):
        page.set_viewport_size(size)
        until_quiet(page)
        assert axe_finds(page) + small_text(page) + small_targets(page) + cut_off(page) == []
