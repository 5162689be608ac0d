"""A log of temperature that failed holds the batch, without signal, until a coordinator lets it
go."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

from tests.e2e.compare import settled_alike, stored_sheets
from tests.e2e.hearth import DeskPhone, Hearth
from tests.e2e.held import (
    bring_with_a_reason,
    count_in,
    release,
    sell_with_a_reason,
    sold_as_ever,
)
from tests.e2e.phones import Phone
from tests.e2e.work import finish
from tests.people import PASSPHRASE
from tests.writing import made_id

HANDED_OVER_MS_MAX = 120_000
DONE = "Thrown out what stood by the door"
HELD_AT_5 = "Cold holding, 5 \N{DEGREE SIGN}C or less"
CAUTION = "a clock that does not start again when it is cooled"


def _bring_recipe(desk: DeskPhone) -> None:
    """One line that is counted, and no check."""
    body: dict[str, Any] = {
        "recipe": made_id("curd recipe"), "number": 1, "name": "Quince curd",
        "product": made_id("Quince jelly"), "packs": 10,
        "makes": {"amount": "10", "unit": "pc"},
        "lines": [{"line": "jars", "material": made_id("Jar"),
                   "amount": {"amount": "10", "unit": "pc"}}],
        "steps": [],
    }  # fmt: skip
    at = datetime.now(UTC) - timedelta(hours=1)
    desk.push([desk.pen.write("recipe_published", body, at=at)])


def _logs_warm_jars(phone: Phone, batch: str) -> None:
    """Kept in the cold box, which stood open: what was done about it is asked for."""
    phone.go(f"/heat/{batch}/set")
    phone.page.get_by_label("What it is judged by").select_option("cold_hold")
    phone.page.get_by_label("Who set the limit?").fill("the local code")
    phone.press("Paste text")
    phone.page.get_by_label("Thermometer or logger").select_option(label="Probe")
    phone.press_main("Go on")
    phone.page.get_by_label("Paste the rows here").fill("08:00 4\n08:10 9\n08:20 4")
    phone.press("\N{DEGREE SIGN}C")
    phone.sees("Fail.")
    phone.page.get_by_label("What was done about it?").fill(DONE)
    phone.press_main("Save 3 rows")
    phone.page.get_by_role("heading", name="Weighed in").wait_for()


def _says_why(phone: Phone, batch: str) -> None:
    """On the batch and on its hold: what was logged, the rule, the verdict, the caution."""
    phone.sees("Nobody has decided yet")
    phone.sees("A log of temperature failed.")
    phone.go(f"/batch/{batch}/hold")
    phone.sees(f"A log of temperature failed: {HELD_AT_5}")
    logged = phone.page.get_by_role("list", name="What was logged")
    logged.get_by_text("at worst").wait_for()
    assert "Fail." in logged.inner_text()
    phone.sees(DONE)
    phone.sees(CAUTION)
    phone.sees("Only a coordinator can release it")


def test_a_log_that_failed_holds_the_batch_offline_and_a_coordinator_releases_it_after_sync(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    _bring_recipe(hearth.desk())
    phone = new_phone(hearth.url, "bench").start()
    phone.sign_in("pim@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    phone.put_away()  # a browser writes its cookies down after half a minute, or when it ends
    phone.start()
    hearth.server.kill()

    batch = count_in(phone, "Quince curd")
    lot = finish(phone, good="10", rejected="0", residue="0")
    _logs_warm_jars(phone, batch)
    _says_why(phone, batch)
    bring_with_a_reason(phone, lot)
    sell_with_a_reason(phone, lot)

    hearth.server.start()
    phone.page.get_by_role("link", name="none waiting").wait_for(timeout=HANDED_OVER_MS_MAX)
    coordinator = new_phone(hearth.url, "desk").start()
    coordinator.sign_in("ona@hearth", PASSPHRASE)
    settled_alike(hearth, phone, coordinator)
    release(coordinator, batch, "Quince curd", sees=DONE)
    coordinator.page.get_by_role("link", name="none waiting").wait_for(
        timeout=HANDED_OVER_MS_MAX
    )
    settled_alike(hearth, phone, coordinator)
    found = stored_sheets(phone)[f"batch:{batch}"]["state"]["findings"]
    assert [(each["what"], each["is_settled"]) for each in found] == [("heat_failed", True)]
    sold_as_ever(phone, lot)
    assert phone.trouble == []
    assert coordinator.trouble == []
