"""What a batch cost, on a coordinator's phone: work and fuel without a server, a price late."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

from tests.e2e.hearth import DeskPhone, Hearth
from tests.e2e.phones import Phone
from tests.e2e.set_up import KITCHEN, RECIPE, STALL
from tests.people import PASSPHRASE
from tests.writing import made_id

# Production pack 1.9 [B01]: lot, material, amount, unit, and what was paid for all of it.
LOTS = (
    ("MG-B1", "Mango", "15000", "g", "825.00"), ("SU-B1", "Sugar", "10000", "g", "480.00"),
    ("CA-B1", "Citric acid", "55", "g", "13.20"), ("JA-B1", "Jar", "66", "pc", "627.00"),
    ("LB-B1", "Label", "64", "pc", "76.80"), ("PE-B1", "Pectin", "60", "g", "108.00"),
)  # fmt: skip
LATE = "PE-B1"
BATCH = made_id("B01")


def b01(desk: DeskPhone) -> list[dict[str, Any]]:
    """The batch, its lots and what was paid for them but for one; rates but no work."""
    began_at = datetime.now(UTC) - timedelta(hours=5)
    minutes = iter(range(1, 200))
    made: list[dict[str, Any]] = []

    def write(kind: str, **body: Any) -> None:
        made.append(desk.pen.write(kind, body, at=began_at + timedelta(minutes=next(minutes))))

    for name, sort in (("Mango", "ingredient"), ("Citric acid", "ingredient"),
                       ("Label", "packaging")):  # fmt: skip
        measured = "mass" if sort == "ingredient" else "count"
        write("material_defined", material=made_id(name), name=name, sort=sort,
              measured_by=measured, letters="XX")  # fmt: skip
    write(
        "rates_set", cooperative=desk.member.cooperative_id, since="2026-01-01",
        pay_per_hour="62.50", overhead={"by": "batch", "rate": "120.00"},
        proposal={"of": "price", "percent": "30", "coin": "0.50", "rule": "up"},
    )  # fmt: skip
    write(
        "batch_started", batch=BATCH, code="MJ-B01", recipe=RECIPE,
        recipe_version=made[0]["id"], product=made_id("Quince jelly"), place=KITCHEN,
        makes={"amount": "66", "unit": "pc"},
        scaled_by="as_written", steps=[],
        lines=[{"line": "mango", "material": made_id("Mango"),
                "amount": {"amount": "15000", "unit": "g"}}],
    )  # fmt: skip
    for lot, material, amount, unit, price in LOTS:
        quantity = {"amount": amount, "unit": unit}
        write("receipt", lot=lot, material=made_id(material), source=made_id("orchard"),
              amount=quantity, place=KITCHEN, condition="fit")  # fmt: skip
        counted = {"counted": quantity}
        used = counted if unit == "pc" else {
            "reading": {"unit": "g", "shown": amount}}  # fmt: skip
        write("weigh_in", batch=BATCH, line="mango", material=made_id(material), lot=lot,
              place=KITCHEN, **used)  # fmt: skip
        if lot != LATE:
            write("price_paid", lot=lot, price=price, currency="EUR")
    write(
        "output", batch=BATCH, lot="MJ-B1", material=made_id("Quince jelly"), place=KITCHEN,
        amount={"amount": "64", "unit": "pc"}, rejected={"amount": "2", "unit": "pc"},
        pack_net={"amount": "250", "unit": "g"},
    )  # fmt: skip
    write("batch_finished", batch=BATCH)
    write(
        "transfer", lot="MJ-B1", amount={"amount": "12", "unit": "pc"},
        from_place=KITCHEN, to_place=STALL,
    )  # fmt: skip
    return made


def _works(phone: Phone, minutes: str, who: str | None = None) -> None:
    """Write down the minutes of one member, by default of who did it last."""
    if who is not None:
        phone.press("change")
        phone.press(who)
    phone.type_digits(minutes)
    phone.press_main(f"Save {minutes}")
    phone.sees(f"{minutes}\u00a0min.")


def _what_is_known_is_written_and_the_cost_stays_incomplete(phone: Phone) -> None:
    phone.go(f"/batch/{BATCH}")
    phone.press("What it cost")
    phone.sees("Nobody wrote what was paid for Pectin PE-B1.")
    phone.sees("No work recorded.")
    phone.press_main("Add work")
    _works(phone, "240")
    phone.press("Add more")
    _works(phone, "150", "Pim Tarrow")
    phone.press_main("See what it cost")
    phone.press("Add a cost")
    phone.type_digits("85")
    phone.press_main("Save 85")
    phone.press_main("See what it cost")
    phone.sees("Cost incomplete")
    phone.sees("2\u202f633.25\u00a0EUR")
    assert "42.83" not in phone.page.locator("main").inner_text()


def _the_late_price_moves_it(phone: Phone) -> None:
    phone.go(f"/cost/{BATCH}")
    phone.press("42.83\u00a0EUR")
    phone.until_said("2 741.25 / 64 = 42.8320")
    phone.sees("41.53\u00a0EUR")
    phone.sees("2\u202f741.25\u00a0EUR")
    assert "Cost incomplete" not in phone.page.locator("main").inner_text()
    phone.press("Price and margin")
    phone.sees("61.19\u00a0EUR")
    phone.sees("61.50\u00a0EUR")
    phone.press("Markup, of cost")
    phone.sees("55.68\u00a0EUR")


def _the_proposal_is_asked_at_the_stall(phone: Phone) -> None:
    """One tap sets it; the stall, asking 6.50 so far, asks it at once, without signal."""
    phone.go(f"/cost/{BATCH}/price")
    phone.press("Margin, of price")
    phone.sees("61.50\u00a0EUR")
    phone.press_main("Set the price to 61.50")
    phone.sees("Kept on this phone: the price is 61.50\u00a0EUR.")
    phone.go("/stall")
    phone.press("Bridge stall")
    phone.until_said("Quince jelly 61.50")
    phone.press("Quince jelly")
    phone.sees("61.50")


def _less_work_costs_less(phone: Phone) -> None:
    phone.go(f"/cost/{BATCH}")
    phone.press("Correct Pim Tarrow")
    phone.type_digits("120")
    phone.page.get_by_role("textbox", name="Why").fill("half an hour was a break")
    phone.press_main("Save the correction")
    phone.sees("2\u202f710.00\u00a0EUR")


def test_b01_costs_what_its_example_says_and_a_late_price_moves_it(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    """Production pack 1.9 [B01]: cost, per good jar, prices at 30 %; digit for digit."""
    desk = hearth.desk()
    desk.push(b01(desk))
    hearth.until_quiet()
    phone = new_phone(hearth.url).start()
    phone.sign_in("ona@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    hearth.server.kill()

    _what_is_known_is_written_and_the_cost_stays_incomplete(phone)

    hearth.server.start()
    late = desk.pen.write("price_paid", {"lot": LATE, "price": "108.00", "currency": "EUR"})
    desk.push([late])
    phone.until_nothing_waits()
    hearth.until_quiet()
    phone.hand_over_now()
    _the_late_price_moves_it(phone)
    said = desk.ask("GET", f"batches/{BATCH}/cost")
    assert (said["total"], said["per_good_pack"]) == ("2741.25", "42.8320")

    hearth.server.kill()
    _the_proposal_is_asked_at_the_stall(phone)

    _less_work_costs_less(phone)
    assert phone.trouble == []
