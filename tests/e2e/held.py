"""What people do with something on hold: make it, use it with a reason, decide about it."""

from __future__ import annotations

from tests.e2e.compare import stored_sheets
from tests.e2e.phones import Phone
from tests.e2e.set_up import STALL
from tests.e2e.work import open_stall, sell, title_is

WHY = "the coordinator said so on the telephone"
LOOKED_AT = "looked at and measured again at rest"


def count_in(phone: Phone, recipe: str) -> str:
    """Start a recipe of ten jars and nothing else, and count them in; answers the batch."""
    phone.go("/start")
    phone.press(recipe)
    phone.press_main("Start, 10")
    lines = phone.page.get_by_role("list", name="Lines")
    lines.get_by_role("button", name="Jar with lid").click()
    phone.press_main("Weigh in the first")
    batch: str = phone.page.evaluate("location.hash").split("/")[2]
    title_is(phone, "Jar with lid")
    phone.type_digits("10")
    phone.press_main("Save 10")
    return batch


def bring_with_a_reason(phone: Phone, lot: str) -> None:
    phone.go(f"/bring/{STALL}")
    phone.press("Lane kitchen", among=phone.page.locator("#field-other"))
    phone.press(lot, among=phone.page.locator("#field-lot"))
    phone.sees(f"{lot} is held.")
    phone.page.get_by_label("Why is it used or sold all the same?").fill(WHY)
    phone.type_digits("6")
    phone.press_main("Move 6")
    phone.page.get_by_role("status").filter(has_text=lot).first.wait_for()


def sell_with_a_reason(phone: Phone, lot: str) -> None:
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


def release(coordinator: Phone, batch: str, product: str, *, sees: str) -> None:
    """As a coordinator, from the list of what waits; the screen says what was done about it."""
    coordinator.go("/")
    coordinator.page.get_by_text("One thing is on hold").click()
    title_is(coordinator, product)
    coordinator.sees(sees)
    coordinator.press("release it")
    coordinator.page.get_by_label("In your own words").fill(LOOKED_AT)
    coordinator.press_main("Release it")
    coordinator.sees("Released")
    assert stored_sheets(coordinator)[f"batch:{batch}"]["state"]["code"]


def sold_as_ever(phone: Phone, lot: str) -> None:
    """It is proposed again, and nobody is asked why."""
    sheet = stored_sheets(phone)
    batch = sheet[f"lot:{lot}"]["state"]["batch"]
    hold = sheet[f"batch:{batch}"]["state"]["hold"]
    assert not hold["is_held"]
    assert hold["decisions"][0]["reason"] == LOOKED_AT
    open_stall(phone)
    sell(phone, "Quince jelly", 1)
