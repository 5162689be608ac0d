"""What money says is told to coordinators, and to all members where prices are shown."""

from __future__ import annotations

import json
from typing import Any

import pytest

from kitchenlog.logbook.verify import sheets_that_differ
from kitchenlog.members.scope import in_cooperative
from tests.people import Kitchen, Phone
from tests.writing import Pen, made_id, pulled, pushed, recompute_all

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("no_limits")]

SECRET = "77.12"  # stands in all that money says below and nowhere else
BATCH = made_id("batch")


def money(pen: Pen) -> list[dict[str, Any]]:
    """A price, work, fuel, rates, a correction and a note."""
    cooperative = str(pen.phone.member.cooperative_id)
    paid = pen.write("price_paid", {"lot": "J1", "price": SECRET, "currency": "EUR"})
    spent = {"batch": BATCH, "part": "fuel", "amount": SECRET, "currency": "EUR"}
    fuel = pen.write("expense", spent)
    worked = {"batch": BATCH, "name": "Neighbour", "minutes": SECRET}
    rates = {"cooperative": cooperative, "since": "2026-01-01", "pay_per_hour": SECRET}
    return [
        paid,
        fuel,
        pen.correction(fuel, {**spent, "says": "gas"}),
        pen.write("labour", worked),
        pen.write("rates_set", rates),
        pen.write("note", {"subject": f"cost:{BATCH}", "says": f"too dear, {SECRET}"}),
    ]


def defined(pen: Pen, *, is_shown: bool) -> dict[str, Any]:
    body = {
        "cooperative": str(pen.phone.member.cooperative_id), "name": "Hearth",
        "time_zone": "Europe/Dublin", "currency": "EUR", "currency_places": 2,
        "language": "en", "unit_habit": "metric", "rules": "eu", "prices_shown": is_shown,
    }  # fmt: skip
    return pen.write("cooperative_defined", body)


def made(pen: Pen) -> list[dict[str, Any]]:
    """A lot, and a batch that uses some of it."""
    used = {
        "batch": BATCH, "line": "l1", "material": made_id("jam"), "lot": "J1",
        "place": made_id("store"), "counted": {"amount": "5", "unit": "pc"},
    }  # fmt: skip
    return [pen.receipt("J1", "10"), pen.write("weigh_in", used)]


def everything_told(phone: Phone, entries: list[dict[str, Any]]) -> str:
    """All that a phone can be told by any address."""
    told = [json.dumps(pulled(phone)[0])]
    cooperative = phone.member.cooperative_id
    for subject in (f"cost:{BATCH}", "price:J1", f"rates:{cooperative}"):
        told.append(phone.get("entries", subject=subject).content.decode())
    told += [phone.get(f"entries/{entry['id']}").content.decode() for entry in entries]
    told.append(phone.get(f"batches/{BATCH}/cost").content.decode())
    return "".join(told)


def test_a_phone_of_a_member_who_may_not_see_costs_holds_none(kitchen: Kitchen) -> None:
    seller, coordinator = kitchen.phone("seller"), kitchen.phone("coordinator")
    pen = Pen(coordinator)
    written = money(pen)
    pushed(coordinator, [defined(pen, is_shown=False), *made(pen), *written])
    recompute_all()

    hidden = everything_told(seller, written)

    for secret in (SECRET, "cost:", "price:", "rates:", *(each["id"] for each in written)):
        assert secret not in hidden
    assert SECRET in everything_told(coordinator, written)
    with in_cooperative(kitchen.cooperative):
        assert list(sheets_that_differ(kitchen.cooperative.pk)) == []


def test_work_a_member_wrote_is_told_to_coordinators_and_not_to_others(
    kitchen: Kitchen,
) -> None:
    ana, other = kitchen.phone("processor"), kitchen.phone("seller")
    worked = {"batch": BATCH, "member": str(ana.member.pk), "minutes": SECRET}
    done = Pen(ana).write("labour", worked)
    pushed(ana, [done])
    recompute_all()

    assert SECRET not in everything_told(other, [done])
    assert SECRET in everything_told(kitchen.phone("coordinator"), [done])


def test_where_prices_are_shown_every_member_sees_costs(kitchen: Kitchen) -> None:
    seller, coordinator = kitchen.phone("seller"), kitchen.phone("coordinator")
    pen = Pen(coordinator)
    written = money(pen)
    pushed(coordinator, [defined(pen, is_shown=True), *made(pen), *written])
    recompute_all()

    changes, _ = pulled(seller)

    ids = {change["id"] for change in changes}
    rates = f"rates:{kitchen.cooperative.pk}"
    assert {"price:J1", f"cost:{BATCH}", rates} <= ids
    told = {each["id"] for each in written if each["kind"] != "rates_set"}
    assert told <= ids  # rates are a definition: the sheet alone is told
    cost = seller.get(f"batches/{BATCH}/cost").json()
    half = "38.56"  # of the price, for 5 of 10
    assert (cost["parts"]["materials"], cost["parts"]["fuel"]) == (half, SECRET)


def test_when_prices_are_no_longer_shown_phones_begin_anew_without_them(
    kitchen: Kitchen,
) -> None:
    seller, coordinator = kitchen.phone("seller"), kitchen.phone("coordinator")
    pen = Pen(coordinator)
    written = money(pen)
    pushed(coordinator, [defined(pen, is_shown=True), *made(pen), *written])
    recompute_all()
    _, cursor = pulled(seller)
    changes = {"prices_shown": {"from": True, "to": False}}
    cooperative = str(kitchen.cooperative.pk)
    hides = pen.write("cooperative_changed", {"cooperative": cooperative, "changes": changes})
    pushed(coordinator, [hides])
    recompute_all()

    answer = seller.get("sync/pull", cursor=cursor).json()

    assert answer["reset"] is True
    assert SECRET not in everything_told(seller, written)


def test_another_cooperative_sees_nothing(kitchen: Kitchen, other_kitchen: Kitchen) -> None:
    coordinator, stranger = kitchen.phone("coordinator"), other_kitchen.phone("coordinator")
    pen = Pen(coordinator)
    written = money(pen)
    pushed(coordinator, [*made(pen), *written])
    recompute_all()

    assert SECRET not in everything_told(stranger, written)


def test_only_a_coordinator_sets_rates(kitchen: Kitchen) -> None:
    phone = kitchen.phone("processor")
    body = {"cooperative": str(phone.member.cooperative_id), "since": "2026-01-01"}

    results = pushed(phone, [Pen(phone).write("rates_set", body)])

    assert (results[0]["status"], results[0]["code"]) == ("quarantined", "role")


def test_a_late_price_moves_the_cost_through_another_batch(kitchen: Kitchen) -> None:
    phone = kitchen.phone("coordinator")
    pen, second = Pen(phone), made_id("second")
    put = {"line": "l1", "material": made_id("jam"), "place": made_id("store")}
    out = {
        "batch": BATCH, "lot": "P1", "material": made_id("jam"), "place": made_id("store"),
        "amount": {"amount": "4", "unit": "pc"},
    }  # fmt: skip
    of_product = {"batch": second, "lot": "P1", "counted": {"amount": "1", "unit": "pc"}}
    goods = [*made(pen), pen.write("output", out), pen.write("weigh_in", {**put, **of_product})]
    pushed(phone, [defined(pen, is_shown=False), *goods])
    recompute_all()
    before = phone.get(f"batches/{second}/cost").json()

    pushed(phone, [pen.write("price_paid", {"lot": "J1", "price": "80", "currency": "EUR"})])
    recompute_all()
    after = phone.get(f"batches/{second}/cost").json()

    assert before["total"] is None
    assert before["missing"] == [{"what": "price", "of": "J1", "through": "P1"}]
    assert (after["total"], after["missing"]) == ("10.00", [])


def test_what_is_asked_for_a_product_is_told_to_sellers_and_set_by_coordinators(
    kitchen: Kitchen,
) -> None:
    phone, seller = kitchen.phone("coordinator"), kitchen.phone("seller")
    body = {
        "material": made_id("jam"), "for_whom": "stall", "since": "2026-01-01",
        "price": SECRET, "currency": "EUR",
    }  # fmt: skip
    pen = Pen(phone)
    results = pushed(phone, [defined(pen, is_shown=False), pen.write("price_asked", body)])
    recompute_all()

    told = json.dumps(pulled(seller)[0])
    refused = pushed(seller, [Pen(seller).write("price_asked", body)])

    assert [each["status"] for each in results] == ["created", "created"]
    assert SECRET in told
    assert (refused[0]["status"], refused[0]["code"]) == ("quarantined", "role")
