"""Guided checks without a server: buffers, ice and boiling water, weighed water."""

from __future__ import annotations

from playwright.sync_api import expect

from tests.e2e.checks import CYLINDER, PH_METER, STEM, read
from tests.e2e.phones import Phone
from tests.e2e.work import title_is


def _sheet_says(phone: Phone, name: str, *sentences: str) -> None:
    title_is(phone, name)
    for words in sentences:
        phone.sees(words)


def test_a_ph_meter_is_checked_with_three_buffers_and_its_sheet_says_how_far_it_is_off(
    without_signal: Phone,
) -> None:
    phone = without_signal

    phone.go(f"/instruments/{PH_METER}/check")
    phone.press("How much")
    phone.type_digits("41")
    phone.sees("pH lies between 0 and 14. Read it again.")
    phone.rub_out(2)
    phone.type_digits("10.01")
    phone.press("True to")
    phone.type_digits("0.02")
    phone.press_main("Keep 10.01 pH")
    phone.press_main("Go on")
    read(phone, "Buffer of 4.01 pH", "4.03", unit="pH")
    read(phone, "Buffer of 7.00 pH", "7.02", unit="pH")
    read(phone, "Buffer of 10.01 pH", "10.02", unit="pH")
    title_is(phone, "What the check says")
    phone.press_main("Save the check")

    _sheet_says(
        phone,
        "pH meter",
        "In the buffer of 4.01 pH it is off by +0.02 pH, \u00b1 0.05 pH allowed.",
    )
    phone.press("Correct", exact=True)
    phone.press("In the buffer of 7.00 pH")
    phone.rub_out(2)
    phone.type_digits("11")
    phone.page.get_by_label("Why").fill("it was read upside down")
    phone.press_main("Save the correction")
    _sheet_says(
        phone,
        "pH meter",
        "In the buffer of 7 pH it is off by +0.11 pH, \u00b1 0.05 pH allowed.",
        "it was read upside down",
    )
    expect(phone.page.locator(".struck", has_text="Fit")).to_have_count(1)
    assert (phone.waiting(), phone.trouble) == (2, [])


def test_a_thermometer_is_checked_in_ice_and_at_the_boil_and_going_back_loses_nothing(
    without_signal: Phone,
) -> None:
    phone = without_signal

    phone.go(f"/instruments/{STEM}/check")
    phone.press("Ice and boiling water")
    phone.press_main("Go on")
    phone.press("Height above the sea")
    phone.type_digits("9000")
    phone.sees("Boiling points are printed from")
    phone.rub_out(4)
    phone.type_digits("1500")
    phone.sees("Water boils there at about 95.2")
    phone.press_main("Go on")
    title_is(phone, "In ice and water")
    phone.type_digits("0.5")
    phone.until_draft_holds("'ice': '0.5'")
    phone.press("Back", exact=True)
    title_is(phone, "How high is the kitchen?")
    phone.until_draft_holds("'at': 1")
    phone.press_main("Go on")
    title_is(phone, "In ice and water")
    phone.until_draft_holds("'at': 2")
    phone.kill()
    phone.start(f"/instruments/{STEM}/check")
    title_is(phone, "In ice and water")
    phone.press_main("Keep 0.5")
    read(phone, "In boiling water", "95.5", unit="\u00b0C")
    title_is(phone, "What the check says")
    phone.press_main("Save the check")

    _sheet_says(phone, "Stem", "In ice it is off by +0.5 \u00b0C, \u00b1 1 \u00b0C allowed.")
    phone.press("Correct", exact=True)
    phone.press("It did not happen")
    phone.page.get_by_label("Why").fill("it was another thermometer")
    phone.press_main("Void it")
    _sheet_says(phone, "Stem", "It was never checked.", "it was another thermometer")
    assert (phone.waiting(), phone.trouble) == (2, [])


def test_a_cylinder_is_checked_with_weighed_water_in_air(
    without_signal: Phone,
) -> None:
    phone = without_signal

    phone.go(f"/instruments/{CYLINDER}/check")
    phone.press("Temperature of the water")
    phone.type_digits("50")
    phone.sees("Let it cool or warm.")
    phone.rub_out(2)
    phone.type_digits("21.5")
    phone.press("Small scale")
    phone.press_main("Go on")
    read(phone, "The empty vessel", "180.0")
    read(phone, "Filled with water", "279.6", "279.7", "279.5")
    title_is(phone, "What the check says")
    phone.press_main("Save the check")

    _sheet_says(
        phone,
        "Cylinder",
        "Filled to 100 mL it is off by \u22120.08 mL, \u00b1 0.5 mL allowed.",
    )
    assert (phone.waiting(), phone.trouble) == (1, [])
