"""Checks of instruments on a phone, act by act, by the words people read on it."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from tests.e2e.hearth import DeskPhone
from tests.e2e.phones import ZONE, Phone
from tests.e2e.set_up import KITCHEN
from tests.e2e.work import title_is
from tests.writing import made_id

SCALE = made_id("Bench scale")
PH_METER, STEM, CYLINDER = (made_id(name) for name in ("pH meter", "Stem", "Cylinder"))


def bring_instruments(desk: DeskPhone) -> None:
    """Set up what is compared with buffers, with ice and with weighed water."""
    began_at = datetime.now(UTC) - timedelta(days=1)
    for minute, fields in enumerate(_BROUGHT):
        at = began_at + timedelta(minutes=minute)
        desk.push([desk.pen.write("instrument_defined", {**fields, "place": KITCHEN}, at=at)])


_BROUGHT: tuple[dict[str, Any], ...] = (
    {"instrument": PH_METER, "name": "pH meter", "sort": "ph_meter", "unit": "pH",
     "division": "0.01", "judged_by": "own", "most_error": "0.05"},
    {"instrument": STEM, "name": "Stem", "sort": "thermometer", "unit": "degC",
     "division": "0.5", "judged_by": "own", "most_error": "1"},
    {"instrument": CYLINDER, "name": "Cylinder", "sort": "cylinder", "unit": "mL",
     "division": "1", "holds": {"amount": "100", "unit": "mL"}, "judged_by": "cylinder",
     "accuracy_class": "A"},
)  # fmt: skip


def begin_check(phone: Phone, *, depth: str, masses: list[str]) -> None:
    """Open the guided check of the bench scale and say which masses are at hand."""
    phone.go(f"/instruments/{SCALE}/check")
    phone.press(depth)
    phone.press_main("Go on")
    title_is(phone, "Which check weights?")
    for mass in masses:
        if phone.page.get_by_role("group", name="Digits").count() == 0:
            phone.press("How much")
        phone.type_digits(mass)
        phone.press_main("Keep")
    phone.press_main("Go on")
    title_is(phone, "Set it level")
    phone.press_main("It stands level")


def read(phone: Phone, title: str, *shown: str, unit: str = "g") -> None:
    """Type what the instrument shows on the page of this title, reading by reading."""
    for digits in shown:
        title_is(phone, title)
        phone.type_digits(digits)
        phone.press_main(f"Keep {_spaced(digits)} {unit}")


def full_check(phone: Phone) -> None:
    """Three masses up and down, off centre, five repeats: it reads about 0.4 % high."""
    begin_check(phone, depth="Full", masses=["500", "1000", "2000"])
    read(phone, "Empty pan", "0")
    read(phone, "Put on 500 g", "502")
    read(phone, "Put on 1 000 g", "1004")
    title_is(phone, "Put on 2 000 g")
    phone.type_digits("20")
    phone.until_draft_holds("'rising:2000': '20'")
    phone.kill()
    phone.start(f"/instruments/{SCALE}/check")
    title_is(phone, "Put on 2 000 g")
    phone.sees("20", exact=True)
    phone.type_digits("08")
    phone.press_main("Keep 2 008 g")
    read(phone, "Back down to 1 000 g", "1004")
    read(phone, "Back down to 500 g", "502")
    read(phone, "Empty again", "0")
    read(phone, "1 000 g off centre", "1004", "1004", "1005", "1004")
    read(phone, "1 000 g, five times", "1004", "1005", "1004", "1004", "1003")
    title_is(phone, "What the check says")


def quick_check(phone: Phone, *, shown: str) -> None:
    """Zero and the one mass of 1000 g."""
    begin_check(phone, depth="Quick", masses=["1000"])
    read(phone, "Empty pan", "0")
    read(phone, "Put on 1 000 g", shown)
    title_is(phone, "What the check says")


def days_before(count: int) -> str:
    """The day so many days ago, where the phone is."""
    return (datetime.now(ZoneInfo(ZONE)) - timedelta(days=count)).date().isoformat()


def made_earlier(phone: Phone, day: str, clock: str) -> None:
    """It was not made now but on this day."""
    phone.page.get_by_label("On the day").fill(day)
    phone.page.get_by_label("At the hour").fill(clock)


def _spaced(digits: str) -> str:
    """As the app writes it: a narrow space before the last three of four digits."""
    is_long = len(digits) > 3 and "." not in digits
    return f"{digits[:-3]}\u202f{digits[-3:]}" if is_long else digits
