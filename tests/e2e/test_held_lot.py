"""A check outside its limit holds a batch, without signal, until a coordinator lets it go."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

from tests.e2e.checks import bring_instruments
from tests.e2e.compare import settled_alike
from tests.e2e.hearth import DeskPhone, Hearth
from tests.e2e.held import (
    bring_with_a_reason,
    count_in,
    release,
    sell_with_a_reason,
    sold_as_ever,
)
from tests.e2e.phones import Phone
from tests.e2e.work import finish, title_is
from tests.people import PASSPHRASE
from tests.writing import made_id

HANDED_OVER_MS_MAX = 120_000
CAUTION = "pH 4.6 is an edge, not a target. Follow your process authority."


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
    batch = count_in(phone, "Pickled quinces")
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
    bring_with_a_reason(phone, lot)
    sell_with_a_reason(phone, lot)

    hearth.server.start()
    phone.page.get_by_role("link", name="none waiting").wait_for(timeout=HANDED_OVER_MS_MAX)
    coordinator = new_phone(hearth.url, "desk").start()
    coordinator.sign_in("ona@hearth", PASSPHRASE)
    settled_alike(hearth, phone, coordinator)
    release(coordinator, batch, "Pickled quinces", sees="set aside")
    coordinator.page.get_by_role("link", name="none waiting").wait_for(
        timeout=HANDED_OVER_MS_MAX
    )
    settled_alike(hearth, phone, coordinator)
    sold_as_ever(phone, lot)
    assert phone.trouble == []
    assert coordinator.trouble == []
