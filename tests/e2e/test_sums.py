"""Sums at the bench without a server: the kettle's target, a cure over its limit, a mixture."""

from __future__ import annotations

from tests.e2e.look import axe_finds, cut_off, small_targets, small_text, until_quiet
from tests.e2e.phones import LAPTOP, SMALL, Phone
from tests.e2e.screens import SUMS
from tests.e2e.work import start_batch, title_is

NARROW = {"width": 320, "height": 800}


def _type(phone: Phone, label: str, digits: str) -> None:
    """Open the number of this label, unless it is, and type it."""
    field = phone.page.locator(".number-field", has_text=label).first
    if field.get_attribute("aria-pressed") != "true":
        field.click()
    phone.type_digits(digits)


def _cautions(phone: Phone) -> list[str]:
    """What the cautions on the screen are about."""
    notes = phone.page.get_by_role("note").all()
    return " ".join(each.get_attribute("data-about") or "" for each in notes).split()


def test_jam_is_cooked_to_the_gross_weight_of_its_kettle_and_noted_on_the_batch(
    without_signal: Phone,
) -> None:
    phone = without_signal
    batch = start_batch(phone)

    phone.go("/")
    phone.press("Sums", exact=True)
    phone.press("Jam in the kettle", among=phone.page.get_by_role("navigation"))
    title_is(phone, "Jam in the kettle")
    for label, digits in (("Empty kettle", "4.20"), ("Soluble solids wanted", "68")):
        _type(phone, label, digits)
    fruit = phone.page.get_by_role("group", name="Fruit", exact=True)
    fruit.get_by_role("button", name="Amount").click()
    phone.type_digits("10")
    fruit.get_by_role("button", name="Soluble solids of it").click()
    phone.type_digits("10")
    for name, digits in (("Sugar", "10"), ("Pectin", "0.06"), ("Acid", "0.055")):
        line = phone.page.get_by_role("group", name=name, exact=True)
        line.get_by_role("button", name="Amount").click()
        phone.type_digits(digits)

    # Practical Action, recipe 1: 16.3456 kg of jam, in a kettle of 4.20 kg.
    plate = phone.page.locator(".sum-answer")
    assert "Cook until the scale shows" in plate.inner_text()
    assert "20.55" in plate.inner_text()
    assert {"sugar", "ph"} <= set(_cautions(phone))
    _type(phone, "It shows now", "21.10")
    phone.sees("0.55\u00a0kg still to boil off.")
    phone.press_main("Note it on")
    phone.sees("Noted on the batch.")
    phone.go(f"/batch/{batch}")
    phone.sees("Jam in the kettle: Cook until the scale shows 20.55\u00a0kg.")
    assert phone.trouble == []

    phone.put_away()
    phone.start("/sums/kettle")
    phone.sees("0.55\u00a0kg still to boil off.")


def test_a_cure_over_its_limit_is_refused_with_the_limit_and_the_amount_that_would_meet_it(
    without_signal: Phone,
) -> None:
    phone = without_signal

    phone.go("/sums/curing")
    phone.press("bacon, dry cured")
    _type(phone, "Of it in the cure", "6.25")
    _type(phone, "Wanted", "300")
    _type(phone, "Meat, as weighed in", "1")

    phone.sees("300\u00a0ppm is over 200\u00a0ppm, set by 9 CFR 424.22(b)(3).")
    meets = phone.page.locator(".facts div", has_text="Cure that would meet it").first
    assert "3.2" in meets.inner_text()
    assert "4.8" not in phone.page.locator("body").inner_text()
    assert phone.main_key().inner_text() == "All sums"
    assert _cautions(phone) == ["curing"]
    phone.press("Wanted")
    phone.rub_out(3)
    phone.type_digits("200")
    phone.sees("Weigh in cure, at most")
    phone.sees("Within every limit that can be compared.")
    assert phone.trouble == []


def test_a_strength_outside_both_is_refused_in_one_sentence_and_stays_typed(
    without_signal: Phone,
) -> None:
    phone = without_signal

    phone.go("/sums/mixing")
    for label, digits in (("strong one", "10"), ("weak one", "4"), ("Wanted", "2.5")):
        _type(phone, label, digits)
    _type(phone, "Amount", "900")

    phone.sees(
        "2.5\u00a0% lies outside 4\u00a0% and 10\u00a0%: no mixture of these two makes it."
    )
    assert "2.5" in phone.page.locator(".number-field", has_text="Wanted").inner_text()
    assert "acidified" in _cautions(phone)


def test_a_mixture_says_how_far_it_may_be_off_by_what_it_was_measured_with(
    without_signal: Phone,
) -> None:
    phone = without_signal

    phone.go("/sums/mixing")
    for label, digits in (("strong one", "12"), ("weak one", "0"), ("Wanted", "3")):
        _type(phone, label, digits)
    _type(phone, "Amount", "500")
    plate = phone.page.locator(".sum-answer")
    assert "give or take" not in plate.inner_text()

    phone.press("Say how far each number may be off")
    _type(phone, "\u00b1 The strong one", "0.5")
    phone.sees("give or take at least 4.9\u00a0g: not every number has its doubt")
    _type(phone, "\u00b1 The weak one", "0")

    # 1.645 x half of what 500 g x 3 / (12 - 0.2887) and 500 g x 3 / (12 + 0.2887) lie apart.
    phone.page.locator(".sum-answer", has_text="give or take 4.9").wait_for()
    phone.page.locator(".facts .opens").first.click()
    phone.sees("From The strong one, u")
    assert phone.trouble == []


def test_every_sum_is_whole_and_legible_with_its_caution_on_every_width(
    without_signal: Phone,
) -> None:
    phone = without_signal

    found = []
    for named in SUMS:
        phone.page.set_viewport_size(SMALL)
        phone.go(f"/sums/{named}")
        if not _cautions(phone):
            found.append(f"{named} has no caution")
        for size in (SMALL, LAPTOP, NARROW):
            phone.page.set_viewport_size(size)
            until_quiet(phone.page)
            wrong = small_text(phone.page) + small_targets(phone.page) + cut_off(phone.page)
            found += [f"{named}: {each}" for each in wrong + axe_finds(phone.page)]

    assert not found, "\n".join(found)
