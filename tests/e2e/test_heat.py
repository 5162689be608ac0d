"""Logs of temperature without a server: read, pasted, timed; judged, kept, seen elsewhere."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from tests.e2e.hearth import DeskPhone, Hearth, lived_in
from tests.e2e.phones import Phone
from tests.e2e.set_up import KITCHEN
from tests.e2e.work import title_is
from tests.people import PASSPHRASE
from tests.writing import made_id

# COOL-D of the process safety notes, as a logger with decimal commas writes it.
COOLED = (
    (0, "75"), (30, "60"), (45, "54"), (120, "25"), (150, "20"), (330, "6"), (360, "4"),
)  # fmt: skip


def _signed_in(hearth: Hearth, new_phone: Callable[..., Phone], login: str) -> Phone:
    phone = new_phone(hearth.url, login).start()
    phone.sign_in(f"{login}@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    phone.put_away()  # a browser writes its cookies down after half a minute, or when it ends
    return phone.start()


def _asks(phone: Phone, rule: str, *, how: str) -> None:
    phone.page.get_by_label("What it is judged by").select_option(rule)
    phone.page.get_by_label("Who set the limit?").fill("the local code")
    phone.press(how)
    phone.page.get_by_label("Thermometer or logger").select_option(label="Probe")


def _reads_a_file(phone: Phone, batch: str, folder: Path) -> None:
    """A logger's file with a row that failed: judged and drawn as soon as it is chosen."""
    rows = [f"{minute};{shown},0;41" for minute, shown in COOLED]
    rows.insert(2, "40;---;41")
    file = folder / "logger.csv"
    file.write_text("Time (min);Temp (\N{DEGREE SIGN}C);RH %\n" + "\n".join(rows))
    phone.go(f"/batch/{batch}")
    phone.press("Log times and temperatures")
    _asks(phone, "two_stage_cooling", how="A logger's file")
    phone.press_main("Go on")
    phone.page.set_input_files("input[type=file]", file)
    phone.page.locator(".heat-chart").wait_for()
    plate = phone.page.locator(".plate").inner_text().replace("\N{NO-BREAK SPACE}", " ")
    assert "Pass." in plate
    assert "106.5 min of 120 min" in plate
    phone.sees("1 left out, without a reading")
    phone.sees("follow them.")  # the caution, in full
    phone.press_main("Save 7 rows")
    phone.page.get_by_role("heading", name="Weighed in").wait_for()


def _pastes(phone: Phone, batch: str) -> None:
    """What was written by hand is outside: what was done about it is asked for."""
    phone.go(f"/heat/{batch}/set")
    _asks(phone, "hot_hold", how="Paste text")
    phone.press_main("Go on")
    phone.page.get_by_label("Paste the rows here").fill("08:00 62,5\n08:30 55\n09:00 60")
    phone.press("\N{DEGREE SIGN}C")
    phone.sees("Fail.")
    assert "Say what was done about it" in phone.main_key().inner_text()
    phone.page.get_by_label("What was done about it?").fill("Boiled again and kept hot")
    phone.press_main("Save 3 rows")
    phone.page.get_by_role("heading", name="Weighed in").wait_for()


def _times(phone: Phone, batch: str) -> None:
    """The timer goes on though the browser is killed in the middle of it."""
    phone.go(f"/heat/{batch}")
    _asks(phone, "cold_hold", how="Timer here")
    phone.press("\N{DEGREE SIGN}C")
    phone.press_main("Start the timer")
    phone.sees("Read the temperature now.")
    phone.type_digits("4.5")
    phone.press_main("Keep")
    phone.sees("Next reading at")
    phone.until_draft_holds("['4.5']")  # the row, not the digits
    phone.kill()
    phone.start(f"/heat/{batch}")
    phone.sees("Running since")
    phone.type_digits("4.9")
    phone.press_main("Keep")
    rows = phone.page.get_by_role("list", name="Rows kept so far").get_by_role("listitem")
    rows.filter(has_text="4.9").get_by_role("button", name="Change").click()
    phone.rub_out(len("4.9"))
    phone.type_digits("4.0")
    phone.press_main("Keep")
    phone.type_digits("7.5")
    phone.press_main("Keep")
    rows.filter(has_text="7.5").get_by_role("button", name="Take out").click()
    phone.press_main("Save 2 rows")
    phone.page.get_by_role("heading", name="Weighed in").wait_for()


def _corrects(phone: Phone, batch: str) -> None:
    """A row that was read wrongly: the corrected log counts, the old one stays readable."""
    phone.go(f"/batch/{batch}")
    logs = phone.page.get_by_role("list", name="Time and temperature")
    logs.get_by_role("listitem").filter(has_text="Fail.").get_by_role("link").first.click()
    phone.press("Correct it")
    rows = phone.page.get_by_role("list", name="Rows kept so far").get_by_role("listitem")
    rows.filter(has_text="62.5").get_by_role("button", name="Take out").click()
    assert "Say why it is corrected" in phone.main_key().inner_text()
    phone.page.get_by_label("Why is it corrected?").fill("Read before it was stirred")
    phone.press_main("Save 2 rows")
    phone.page.get_by_role("heading", name="Weighed in").wait_for()


def _says_all_three(phone: Phone, batch: str) -> None:
    phone.go(f"/batch/{batch}")
    said = phone.page.get_by_role("list", name="Time and temperature")
    said.get_by_text("106.5").wait_for()
    words = said.inner_text()
    assert words.count("Pass.") == 2
    assert "Fail." in words
    assert "Boiled again and kept hot" in words
    phone.sees("A log of temperature failed.")


def test_logs_without_signal_are_judged_on_the_phone_and_seen_on_another(
    hearth: Hearth, new_phone: Callable[..., Phone], tmp_path: Path
) -> None:
    hearth.until_quiet()
    batch = lived_in(hearth.desk()).batch
    hearth.until_quiet()
    pim = _signed_in(hearth, new_phone, "pim")
    ona = _signed_in(hearth, new_phone, "ona")
    hearth.server.kill()

    _reads_a_file(pim, batch, tmp_path)
    _pastes(pim, batch)
    _times(pim, batch)
    _corrects(pim, batch)
    _says_all_three(pim, batch)

    hearth.server.start()
    pim.hand_over_now()
    pim.until_nothing_waits()
    hearth.until_quiet()
    ona.hand_over_now()
    _says_all_three(ona, batch)
    ona.press("See the log")
    title_is(ona, "Time and temperature")
    ona.page.locator(".heat-chart").wait_for()
    assert pim.trouble == ona.trouble == []


DIAL = made_id("Dial probe")


def _logs_around_a_check(desk: DeskPhone, batch: str) -> tuple[str, str]:
    """A probe checked for two days, a log within them and one after; answers both."""
    now = datetime.now(UTC)
    probe = {
        "instrument": DIAL, "name": "Dial probe", "sort": "thermometer", "place": KITCHEN,
        "unit": "degC", "division": "0.1", "judged_by": "own", "most_error": "0.5",
        "check_days": 2,
    }  # fmt: skip
    ice = {"sort": "ice", "reference": "0", "readings": ["0.1"]}
    checked = {"instrument": DIAL, "unit": "degC", "division": "0.1", "steps": [ice]}
    rows = {"came_by": "typed", "at_s": [0, 600], "temperatures": ["64.0", "63.1"]}
    kept = {"batch": batch, "instrument": DIAL, "unit": "degC", "division": "0.1", **rows}

    def written(kind: str, body: dict[str, Any], *, days_ago: int) -> dict[str, Any]:
        at = now - timedelta(days=days_ago)
        began = {"began_at": at.strftime("%Y-%m-%dT%H:%M:%S.000Z")}
        return desk.pen.write(kind, body | (began if kind == "heat_log" else {}), at=at)

    early, late = (written("heat_log", kept, days_ago=days) for days in (3, 0))
    desk.push([
        written("instrument_defined", probe, days_ago=5),
        written("instrument_checked", checked, days_ago=4), early, late,
    ])  # fmt: skip
    return str(early["id"]), str(late["id"])


def test_a_kept_log_says_that_its_thermometer_was_due_for_a_check(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    was_due = "Dial probe was due for a check."
    batch = lived_in(hearth.desk()).batch
    early, late = _logs_around_a_check(hearth.desk(), batch)
    hearth.until_quiet()

    phone = _signed_in(hearth, new_phone, "pim")
    phone.go(f"/batch/{batch}")

    row = phone.page.get_by_role("list", name="Time and temperature").get_by_role("listitem")
    row.filter(has=phone.page.locator(f"a[href$='{late}']")).get_by_text(was_due).wait_for()
    assert was_due not in row.filter(has=phone.page.locator(f"a[href$='{early}']")).inner_text()
    phone.go(f"/heat-log/{batch}/{late}")
    phone.sees(was_due)
    phone.go(f"/heat-log/{batch}/{early}")
    phone.page.get_by_role("heading", name="Kept").wait_for()
    assert was_due not in phone.page.locator("main").inner_text()
    phone.go(f"/heat-log/{batch}/{late}/correct")
    phone.sees("Dial probe, check due")
    assert phone.trouble == []
