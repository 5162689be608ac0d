"""One phone, several hands: people change without signal, sessions end, the app is renewed."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import expect

from tests.e2e.hearth import Hearth
from tests.e2e.phones import Phone
from tests.e2e.work import change_person, count
from tests.people import PASSPHRASE
from tests.servers import PROJECT

END_SESSION = """
from datetime import UTC, datetime
from kitchenlog.members.models import Device
Device.objects.filter(member__login="pim").update(expires_at=datetime.now(UTC))
"""
LOOK_FOR_UPDATE = "() => navigator.serviceWorker.ready.then((found) => found.update())"


def _signed_in(hearth: Hearth, new_phone: Callable[..., Phone], login: str) -> Phone:
    phone = new_phone(hearth.url, login).start()
    phone.sign_in(f"{login}@hearth", PASSPHRASE)
    phone.until_controlled()
    phone.until_whole()
    return phone


def test_two_members_change_on_one_phone_and_each_hands_over_as_themselves(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = _signed_in(hearth, new_phone, "pim")
    phone.go("/people")
    phone.press_main("Somebody else signs in")
    phone.sign_in("sela@hearth", PASSPHRASE)
    phone.until_whole()
    hearth.server.kill()
    change_person(phone, "Pim Tarrow")
    count(phone, "SU-1", "24")
    count(phone, "PE-1", "480")

    change_person(phone, "Sela Quince")
    count(phone, "JA-1", "118")
    phone.go("/outbox")

    others = phone.page.get_by_role("term").filter(has_text="Pim Tarrow")
    expect(others.locator("..")).to_have_text(re.compile(r"^Pim Tarrow\s*2\s*waiting$"))
    phone.sees("JA-1")
    assert "SU-1" not in phone.said()
    pim = phone.members()["pim"]
    held = phone.devices()["sela"]["entries"]
    assert not [row for row in held if row["entry"]["author"] == pim]

    hearth.server.start()
    phone.press_main("Hand over now")
    phone.until_nothing_waits()
    desk = hearth.desk()
    authors = {
        lot: {
            each["entry"]["author"]
            for each in desk.ask("GET", f"entries?subject=lot:{lot}")["entries"]
            if each["entry"]["kind"] == "count"
        }
        for lot in ("SU-1", "PE-1", "JA-1")
    }
    members = phone.members()
    assert authors == {
        "SU-1": {members["pim"]}, "PE-1": {members["pim"]}, "JA-1": {members["sela"]},
    }  # fmt: skip
    assert desk.ask("GET", "quarantine")["items"] == []
    assert phone.trouble == []


def test_a_session_that_ended_asks_to_sign_in_and_loses_nothing(
    hearth: Hearth, new_phone: Callable[..., Phone]
) -> None:
    phone = _signed_in(hearth, new_phone, "pim")
    hearth.server.kill()
    count(phone, "SU-1", "24")
    hearth.server.manage("shell", "-c", END_SESSION)
    hearth.server.start()
    phone.hand_over_now()
    phone.go("/")
    phone.sees("Sign in again to hand over")

    count(phone, "PE-1", "480")
    assert phone.waiting() == 2
    before = phone.devices()["pim"]["entries"]
    phone.go("/sign-in")
    phone.sign_in("pim@hearth", PASSPHRASE)

    phone.until_nothing_waits()
    assert len(phone.devices()) == 1
    for row in before:
        assert hearth.desk().ask("GET", f"entries/{row['id']}")["entry"] == row["entry"]


def test_a_new_version_waits_until_no_form_is_half_filled(
    hearth: Hearth, new_phone: Callable[..., Phone], tmp_path: Path
) -> None:
    built = tmp_path / "dist"
    shutil.copytree(
        PROJECT / hearth.server.environment.get("KITCHENLOG_DIST", "frontend/dist"), built
    )
    hearth.server.stop()
    hearth.server.environment["KITCHENLOG_DIST"] = str(built)
    hearth.server.start()
    phone = _signed_in(hearth, new_phone, "pim")
    phone.go("/receive")
    phone.page.get_by_label("Their lot mark").fill("half a mark")

    with (built / "sw.js").open("a") as worker:
        worker.write("\n// another version")
    phone.page.evaluate(LOOK_FOR_UPDATE)
    phone.go("/")
    phone.sees("A new version is here.")
    phone.sees("It comes in when no form is half filled.")
    assert phone.cup("Take it in now").count() == 0

    phone.go("/receive")
    phone.page.get_by_label("Their lot mark").fill("")
    phone.go("/")
    with phone.page.expect_event("load"):
        phone.press("Take it in now")
    phone.page.get_by_role("navigation", name="Start something").wait_for()
    waiting = "() => navigator.serviceWorker.ready.then((found) => found.waiting === null)"
    assert phone.page.evaluate(waiting)
