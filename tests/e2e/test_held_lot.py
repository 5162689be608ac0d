"""A check outside its limit holds a batch, without signal, until a coordinator lets it go."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

from tests.e2e.checks import bring_instruments
from tests.e2e.compare import settled_alike, stored_sheets
from tests.e2e.hearth import DeskPhone, Hearth
from tests.e2e.phones import Phone
from tests.e2e.set_up import STALL
from tests.e2e.work import finish, open_stall, sell, title_is
from tests.people import PASSPHRASE
from tests.writing import made_id

HANDED_OVER_MS_MAX = 120_000
CAUTION = "pH 4.6 is an edge, not a target. Follow your process authority."
WHY = "the coordinator said so on the telephone"


def _bring_recipe(desk: DeskPhone) -> None:
    """One line that is counted and one check of the pH."""
    body: dict[str, Any] = {
        "recipe": made_id("pickle recipe"), "number": 1, "name": "Pickled quinces",
        "product": made_id("Quince jelly"), "packs": 10,
        "makes": {"amount": "10", "unit": "pc"},
        "lines": [{"line": "jars", "material": made_id("Jar"),
                   "amount": {"amount": "10", "unit": "pc"}}],
        "steps": [{"step": "ph", "says": "Measure the pH.", "measures": "ph", "unit": "pH",
                   "high": "4.2", "set_by": "our process authority", "caution": CAUTION}],
    }  # fmt: skip
    at = datetime.now(UTC) - timedelta(hours=1)
    desk.push([desk.pen.write("recipe_published", body, at=at)])


def _make_with_a_high_ph(phone: Phone) -> tuple[str, str]:
    """Start, lay out, count in, measure, pack; answers the batch and its lot."""
    phone.go("/start")
    phone.press("Pickled quinces")
    phone.press_main("Start, 10")
    lines = phone.page.get_by_role("list", name="Lines")
    lines.get_by_role("button", name="Jar with lid").click()
    phone.press_main("Weigh in the first")
    batch = phone.page.evaluate("location.hash").split("/")[2]
    title_is(phone, "Jar with lid")
    phone.type_digits("10")
    phone.press_main("Save 10")
    title_is(phone, "Step")
    phone.sees("set by our process authority")
    phone.sees(CAUTION)
    phone.type_digits("4.60")
    phone.sees("Outside: too high")
    phone.main_key().click(force=True)  # it says what is asked first
    phone.press("set aside")
    phone.press_main("Save 4.6 pH")
    return batch, finish(phone, good="10", rejected="0", residue="0")


def test_a_ph_outside_holds_the_batch_offline_and_a_coordinator_releases_it_after_sync(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    desk = hearth.desk()
    bring_instruments(desk)
    _bring_recipe(desk)
    phone = new_phone(hearth.url, "bench").start()
    phone.sign_in("pim@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    hearth.server.kill()

    batch, lot = _make_with_a_high_ph(phone)
    phone.sees("Held since")  # the label says so
    phone.go(f"/batch/{batch}")
    phone.sees("Nobody has decided yet")
    phone.go(f"/batch/{batch}/hold")
    phone.sees("A check was outside its limit")
    phone.sees("Only a coordinator can release it")
    phone.go("/stock")
    phone.sees("Held. Do not use, sell or move it.")
    _bring_with_a_reason(phone, lot)
    _sell_with_a_reason(phone, lot)

    hearth.server.start()
    phone.page.get_by_role("link", name="none waiting").wait_for(timeout=HANDED_OVER_MS_MAX)
    coordinator = new_phone(hearth.url, "desk").start()
    coordinator.sign_in("ona@hearth", PASSPHRASE)
    settled_alike(hearth, phone, coordinator)
    _release(coordinator, batch)
    coordinator.page.get_by_role("link", name="none waiting").wait_for(
        timeout=HANDED_OVER_MS_MAX
    )
    settled_alike(hearth, phone, coordinator)
    _sold_as_ever(phone, lot)
    assert phone.trouble == []
    assert coordinator.trouble == []


def _bring_with_a_reason(phone: Phone, lot: str) -> None:
    phone.go(f"/bring/{STALL}")
    phone.press("Lane kitchen", among=phone.page.locator("#field-other"))
    phone.press(lot, among=phone.page.locator("#field-lot"))
    phone.sees(f"{lot} is held.")
    phone.page.get_by_label("Why is it used or sold all the same?").fill(WHY)
    phone.type_digits("6")
    phone.press_main("Move 6")
    phone.page.get_by_role("status").filter(has_text=lot).first.wait_for()


def _sell_with_a_reason(phone: Phone, lot: str) -> None:
    open_stall(phone)
    phone.sees("6 held")
    row = phone.page.locator(".goods").get_by_role("button", name="Quince jelly")
    row.click()
    ruler = phone.page.locator(".ruler").get_by_role("button", name="sold 2")
    ruler.first.click()
    phone.sees(f"{lot} is held.")
    phone.page.get_by_label("Why is it used or sold all the same?").fill(WHY)
    phone.press_main("all the same")
    phone.page.locator(".last-deed").get_by_text("kept on this phone").wait_for()
    [stores] = phone.devices().values()
    sales = [row["entry"] for row in stores["entries"] if row["entry"]["kind"] == "sale"]
    assert [sale["body"]["despite"] for sale in sales] == [{"what": ["held"], "reason": WHY}]


def _release(coordinator: Phone, batch: str) -> None:
    coordinator.go("/")
    coordinator.page.get_by_text("One thing is on hold").click()
    title_is(coordinator, "Pickled quinces")
    coordinator.sees("set aside")
    coordinator.press("release it")
    coordinator.page.get_by_label("In your own words").fill("measured again at rest: 4.02")
    coordinator.press_main("Release it")
    coordinator.sees("Released")
    hold = stored_sheets(coordinator)[f"batch:{batch}"]["state"]
    assert hold["code"]


def _sold_as_ever(phone: Phone, lot: str) -> None:
    """It is proposed again, and nobody is asked why."""
    sheet = stored_sheets(phone)
    batch = sheet[f"lot:{lot}"]["state"]["batch"]
    hold = sheet[f"batch:{batch}"]["state"]["hold"]
    assert not hold["is_held"]
    assert hold["decisions"][0]["reason"] == "measured again at rest: 4.02"
    open_stall(phone)
    sell(phone, "Quince jelly", 1)
