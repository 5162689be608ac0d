"""A drill without a server: what was typed stays, and only those it concerns see it."""

from __future__ import annotations

from collections.abc import Callable

from kitchenlog.calc.drills import drill_questions
from tests.e2e.hearth import Hearth
from tests.e2e.phones import Phone
from tests.e2e.work import title_is
from tests.people import PASSPHRASE

WEIGHED = ("250.1", "250.3", "249.9", "250.1", "250.1")
STEPS = 18


def _signed_in(hearth: Hearth, new_phone: Callable[..., Phone], login: str) -> Phone:
    phone = new_phone(hearth.url, login).start()
    phone.sign_in(f"{login}@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    return phone


def _seed(phone: Phone) -> int:
    """The seed of the drill that is half done on this phone."""
    [drafts] = [stores["drafts"] for stores in phone.devices().values()]
    return int(next(row["typed"]["seed"] for row in drafts if row["key"] == "drill"))


def _does_a_drill(pim: Phone) -> None:
    """Every reading true, the phone put away in the middle, one thing weighed five times."""
    pim.go("/skills")
    pim.sees("No drill yet.")
    pim.press_main("Start a drill")
    pim.press_main("Start the drill")
    title_is(pim, f"1 of {STEPS}")
    pim.until_draft_holds("seed")
    _reads_what_is_drawn(pim)
    pim.press("Small scale")
    for shown in WEIGHED:
        pim.type_digits(shown)
        pim.press_main("Keep")
    title_is(pim, f"{STEPS} of {STEPS}")
    pim.press("Read the lowest point")
    pim.press_main("Save the drill")


def _reads_what_is_drawn(pim: Phone) -> None:
    questions = drill_questions(_seed(pim), 1)
    for number, question in enumerate(questions, start=1):
        title_is(pim, f"{number} of {STEPS}")
        pim.type_digits(question["truth"].removeprefix("-"))
        if question["truth"].startswith("-"):
            pim.press("below zero")
        if number == 7:
            pim.until_draft_holds(question["truth"])
            pim.put_away()
            pim.start("/drill")
            pim.press_main("Go on with it")
            title_is(pim, f"7 of {STEPS}")
        pim.press_main("Keep")


def _its_sheet_says_how_it_went(pim: Phone) -> None:
    title_is(pim, "Pim Tarrow")
    pim.sees("True on average, and close together.")
    pim.until_said("0.14 g")
    assert pim.waiting() == 1


def _the_trainer_sees_it(ona: Phone) -> None:
    ona.hand_over_now()
    ona.go("/skills")
    ona.sees("1 drill", exact=True)
    ona.press("Pim Tarrow")
    title_is(ona, "Pim Tarrow")
    ona.sees("True on average, and close together.")


def _another_member_does_not(sela: Phone, hearth: Hearth, *, member: str) -> None:
    sela.hand_over_now()
    sela.go(f"/skills/{member}")
    sela.sees("This phone holds no drill of this member.")
    assert "drill_done" not in str(sela.stored())
    desk = hearth.desk("sela")
    assert "drawn_by" not in str(desk.everything())
    told = desk.ask("GET", f"entries?subject=skill:{member}")
    assert (told["entries"], told["sheet"]) == ([], None)


def test_a_drill_done_without_signal_reaches_the_trainer_and_nobody_else(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    pim = _signed_in(hearth, new_phone, "pim")
    ona = _signed_in(hearth, new_phone, "ona")
    sela = _signed_in(hearth, new_phone, "sela")
    hearth.server.kill()

    _does_a_drill(pim)
    _its_sheet_says_how_it_went(pim)

    hearth.server.start()
    pim.hand_over_now()
    pim.until_nothing_waits()
    hearth.until_quiet()
    _the_trainer_sees_it(ona)
    _another_member_does_not(sela, hearth, member=pim.members()["pim"])
    assert "drill_done" in str(ona.stored())
    assert pim.trouble == ona.trouble == sela.trouble == []
