"""Coming in by passphrase or code, signing in again, going out, being shut out."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from random import Random
from typing import Any

import pytest
import time_machine
from django.test import Client

from kitchenlog.logbook.models import Sheet
from kitchenlog.members.marks import SIGNS, code_hash, free_mark
from kitchenlog.members.models import Device, JoinCode, Member
from kitchenlog.members.sessions import cookie_name
from kitchenlog.sync import people
from tests.people import PASSPHRASE, Kitchen, Phone

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("no_limits")]

OWN_PAGE = {"Sec-Fetch-Site": "same-origin"}


def test_signing_in_makes_a_device_and_tells_it_all_it_needs(kitchen: Kitchen) -> None:
    answer = _sign_in("seller@hearth", PASSPHRASE)

    assert answer.status_code == 201
    body = answer.json()
    device = Device.objects.get(id=body["device"])
    member = kitchen.members["seller"]
    assert body["protocol"] == 1
    assert body["mark"] == device.mark
    assert body["epoch"] == str(kitchen.cooperative.log_head.epoch)
    assert body["member"] == {
        "id": str(member.id),
        "name": "Seller",
        "login": "seller@hearth",
        "roles": ["seller"],
    }
    assert body["cooperative"] == {
        "id": str(kitchen.cooperative.id),
        "handle": "hearth",
        "name": "Hearth",
        "starts_with": {"time_zone": "Europe/Dublin", "currency": "EUR", "language": "en"},
    }


def test_the_cookie_is_named_for_the_device_and_out_of_reach_of_scripts(
    kitchen: Kitchen,
) -> None:
    answer = _sign_in("seller@hearth", PASSPHRASE)

    cookie = answer.cookies[f"__Host-device-{answer.json()['device']}"]
    assert cookie["secure"] is True
    assert cookie["httponly"] is True
    assert cookie["samesite"] == "Lax"
    assert cookie["path"] == "/"
    assert cookie["domain"] == ""
    assert cookie["max-age"] == 90 * 24 * 60 * 60


def test_the_token_is_kept_as_a_hash_only_and_stands_in_no_body(kitchen: Kitchen) -> None:
    answer = _sign_in("seller@hearth", PASSPHRASE)

    token = answer.cookies[f"__Host-device-{answer.json()['device']}"].value
    device = Device.objects.get(id=answer.json()["device"])
    assert token not in answer.content.decode()
    assert token not in str(vars(device))
    assert len(device.token_hash) == 64


@pytest.mark.parametrize(
    ("login", "passphrase"),
    [
        ("nobody@hearth", PASSPHRASE),
        ("seller@hearth", "another passphrase"),
        ("seller@orchard", PASSPHRASE),
        ("seller", PASSPHRASE),
        ("seller@", PASSPHRASE),
    ],
)
def test_every_way_to_fail_at_the_door_sounds_the_same(
    kitchen: Kitchen, login: str, passphrase: str
) -> None:
    answer = _sign_in(login, passphrase)

    assert answer.status_code == 401
    assert answer.json() == {
        "protocol": 1,
        "code": "not_authenticated",
        "detail": "This login and this passphrase do not go together.",
    }


def test_an_unknown_login_costs_a_hash_like_a_known_one(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    hashed: list[str] = []
    monkeypatch.setattr(people, "make_password", hashed.append)

    _sign_in("nobody@hearth", PASSPHRASE)

    assert hashed == [PASSPHRASE]


def test_a_code_lets_one_new_member_in_with_the_roles_it_names(kitchen: Kitchen) -> None:
    code = kitchen.phone("coordinator").post("join-codes", {"roles": ["seller"]}).json()["code"]

    answer = _join(code, name="Nuala", login="Nuala")

    assert answer.status_code == 201
    assert answer.json()["member"]["login"] == "nuala@hearth"
    assert answer.json()["member"]["roles"] == ["seller"]
    state = Sheet.objects.get(subject=f"member:{answer.json()['member']['id']}").state
    assert '"name":"Nuala"' in state
    assert '"has_left":false' in state


def test_a_code_is_copied_as_people_copy(kitchen: Kitchen) -> None:
    code = kitchen.phone("coordinator").post("join-codes", {"roles": ["seller"]}).json()["code"]

    answer = _join(f" {code[:5].lower()}-{code[5:]} ", name="Nuala", login="nuala")

    assert answer.status_code == 201


def test_a_code_works_once(kitchen: Kitchen) -> None:
    code = kitchen.phone("coordinator").post("join-codes", {"roles": ["seller"]}).json()["code"]
    _join(code, name="Nuala", login="nuala")

    answer = _join(code, name="Orla", login="orla")

    assert (answer.status_code, answer.json()["field"]) == (401, "join_code")
    assert not Member.objects.filter(login="orla").exists()


def test_a_code_is_over_after_thirty_minutes(kitchen: Kitchen) -> None:
    code = kitchen.phone("coordinator").post("join-codes", {"roles": ["seller"]}).json()["code"]

    with time_machine.travel(datetime.now(UTC) + timedelta(minutes=30, seconds=1)):
        late = _join(code, name="Nuala", login="nuala")

    assert late.status_code == 401


def test_a_refused_newcomer_may_use_the_code_again(kitchen: Kitchen) -> None:
    code = kitchen.phone("coordinator").post("join-codes", {"roles": ["seller"]}).json()["code"]

    taken = _join(code, name="Nuala", login="seller")
    weak = _join(code, name="Nuala", login="nuala", passphrase="short")
    nameless = _join(code, name=" ", login="nuala")
    good = _join(code, name="Nuala", login="nuala")

    assert [(a.status_code, a.json().get("field")) for a in (taken, weak, nameless, good)] == [
        (400, "login"),
        (400, "passphrase"),
        (400, "name"),
        (201, None),
    ]


def test_a_code_for_a_member_renews_the_passphrase_and_nothing_else(kitchen: Kitchen) -> None:
    seller = kitchen.members["seller"]
    asked = kitchen.phone("coordinator").post("join-codes", {"member": str(seller.id)})

    answer = _join(
        asked.json()["code"], name="Mallory", login="mallory", passphrase="new words 1"
    )

    assert answer.json()["member"]["login"] == "seller@hearth"
    assert answer.json()["member"]["name"] == "Seller"
    assert _sign_in("seller@hearth", "new words 1").status_code == 201
    assert _sign_in("seller@hearth", PASSPHRASE).status_code == 401


def test_codes_are_kept_as_hashes_of_ten_readable_signs(kitchen: Kitchen) -> None:
    code = kitchen.phone("coordinator").post("join-codes", {"roles": ["seller"]}).json()["code"]

    assert len(code) == 10
    assert set(code) <= set(SIGNS)
    assert JoinCode.objects.get().code_hash == code_hash(code) != code


@pytest.mark.parametrize("roles", [[], ["owner"], "seller", None, [["seller"]]])
def test_a_code_for_no_known_role_is_refused_by_field(kitchen: Kitchen, roles: Any) -> None:
    answer = kitchen.phone("coordinator").post("join-codes", {"roles": roles})

    assert (answer.status_code, answer.json()["field"]) == (400, "roles")


def test_another_cooperatives_member_gets_no_code_here(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    coordinator = kitchen.phone("coordinator")

    theirs = coordinator.post("join-codes", {"member": str(other_kitchen.members["seller"].id)})
    unknown = coordinator.post("join-codes", {"member": str(kitchen.cooperative.id)})

    assert theirs.status_code == 400
    assert theirs.content == unknown.content


def test_signing_in_again_gives_the_same_device_a_new_token(kitchen: Kitchen) -> None:
    phone = kitchen.phone("seller")

    answer = phone.post("session", {"login": "seller@hearth", "passphrase": PASSPHRASE})

    assert answer.status_code == 200
    assert answer.json()["device"] == str(phone.device.id)
    assert answer.json()["mark"] == phone.device.mark
    assert phone.get("sync/pull").status_code == 401
    phone.token = answer.cookies[cookie_name(phone.device.id)].value
    assert phone.get("sync/pull").status_code == 200


def test_nobody_signs_in_on_the_device_of_another_member(kitchen: Kitchen) -> None:
    phone = kitchen.phone("seller")

    answer = phone.post("session", {"login": "processor@hearth", "passphrase": PASSPHRASE})

    assert answer.status_code == 401


def test_signing_out_takes_this_cookie_and_the_cache_and_no_other(kitchen: Kitchen) -> None:
    phone = kitchen.phone("seller")

    answer = phone.delete("session")

    assert answer.status_code == 200
    assert answer.headers["Clear-Site-Data"] == '"cache"'
    assert list(answer.cookies) == [cookie_name(phone.device.id)]
    assert answer.cookies[cookie_name(phone.device.id)]["max-age"] == 0
    assert phone.get("sync/pull").status_code == 401


def test_a_revoked_device_is_told_so_at_its_next_request_and_others_go_on(
    kitchen: Kitchen,
) -> None:
    lost, kept = kitchen.phone("seller"), kitchen.phone("seller")

    kitchen.phone("coordinator").delete(f"devices/{lost.device.id}")

    for answer in (
        lost.get("sync/pull"),
        lost.post("sync/push", {}),
        lost.delete("session"),
        lost.post("session", {"login": "seller@hearth", "passphrase": PASSPHRASE}),
    ):
        assert (answer.status_code, answer.json()["code"]) == (403, "device_revoked")
    assert kept.get("sync/pull").status_code == 200


def test_a_revoked_device_is_not_told_to_whoever_merely_knows_its_id(kitchen: Kitchen) -> None:
    lost = kitchen.phone("seller")
    kitchen.phone("coordinator").delete(f"devices/{lost.device.id}")

    answer = Phone(lost.device, "a guess").get("sync/pull")

    assert answer.status_code == 401


def test_another_cooperatives_device_is_not_there(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    theirs = other_kitchen.phone("seller")
    coordinator = kitchen.phone("coordinator")

    answer = coordinator.delete(f"devices/{theirs.device.id}")
    unknown = coordinator.delete(f"devices/{kitchen.cooperative.id}")

    assert (answer.status_code, answer.content) == (404, unknown.content)
    assert theirs.get("sync/pull").status_code == 200


def test_the_coordinator_sees_every_device_of_the_cooperative(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    seller, coordinator = kitchen.phone("seller"), kitchen.phone("coordinator")
    other_kitchen.phone("seller")

    devices = coordinator.get("devices").json()["devices"]

    assert {one["device"] for one in devices} == {
        str(seller.device.id),
        str(coordinator.device.id),
    }


def test_a_session_ends_after_ninety_quiet_days(kitchen: Kitchen) -> None:
    phone = kitchen.phone("seller")

    with time_machine.travel(datetime.now(UTC) + timedelta(days=89)):
        before = phone.get("sync/pull").status_code
    with time_machine.travel(datetime.now(UTC) + timedelta(days=90, minutes=1)):
        after = phone.get("sync/pull").status_code

    assert (before, after) == (200, 401)


def test_a_session_rolls_on_with_what_is_handed_over_but_not_past_a_year(
    kitchen: Kitchen,
) -> None:
    phone = kitchen.phone("seller")
    begun = datetime.now(UTC)
    ages = []

    for day in (80, 160, 240, 320, 364):
        with time_machine.travel(begun + timedelta(days=day)):
            answer = phone.post("sync/have", {"ids": []})
            ages.append((day, answer.cookies[cookie_name(phone.device.id)]["max-age"]))
    with time_machine.travel(begun + timedelta(days=365, minutes=1)):
        after_a_year = phone.get("sync/pull").status_code

    day_s = 24 * 60 * 60
    assert [age // day_s for day, age in ages if day <= 240] == [90, 90, 90]
    assert [age // day_s for day, age in ages if day > 240] == [44, 0]
    assert after_a_year == 401


def test_reading_writes_nothing(kitchen: Kitchen, django_assert_max_num_queries: Any) -> None:
    phone = kitchen.phone("seller")
    later = datetime.now(UTC) + timedelta(days=30)

    with time_machine.travel(later), django_assert_max_num_queries(20) as asked:
        answer = phone.get("sync/pull")

    assert answer.status_code == 200
    words = {query["sql"].split()[0].upper() for query in asked.captured_queries}
    assert words <= {"SELECT", "SAVEPOINT", "RELEASE"}
    assert not answer.cookies


def test_device_marks_never_meet_and_run_out_in_the_open(kitchen: Kitchen) -> None:
    every = {a + b for a in SIGNS for b in SIGNS}

    assert len(every) == 576
    assert free_mark(every - {"K7"}, Random(1)) == "K7"
    assert free_mark(every, Random(1)) is None


@pytest.mark.parametrize("body", ["[]", "7", '"text"', "null", "{", '{"login":1,"login":2}'])
def test_a_body_that_is_not_one_object_is_unreadable(kitchen: Kitchen, body: str) -> None:
    answer = Client(raise_request_exception=False).generic(
        "POST", "/api/v1/devices", body, content_type="application/json", headers=OWN_PAGE
    )

    assert (answer.status_code, answer.json()["code"]) == (400, "unreadable")


@pytest.mark.parametrize("login", ["a\x00b@hearth", "\ud800@hearth", "x" * 500, 12, None, []])
def test_a_login_no_database_could_hold_is_refused_by_field(
    kitchen: Kitchen, login: Any
) -> None:
    answer = _sign_in(login, PASSPHRASE)

    assert answer.status_code in (400, 401)
    assert answer["Content-Type"] == "application/json"


def test_a_member_cannot_be_made_what_the_code_does_not_say(kitchen: Kitchen) -> None:
    code = kitchen.phone("coordinator").post("join-codes", {"roles": ["seller"]}).json()["code"]

    answer = _post(
        "devices",
        {
            "join_code": code,
            "name": "Nuala",
            "login": "nuala",
            "passphrase": PASSPHRASE,
            "roles": ["coordinator"],
            "cooperative": "orchard",
            "joined_at": "2001-01-01T00:00:00Z",
        },
    )

    member = Member.objects.get(id=answer.json()["member"]["id"])
    assert member.roles == ["seller"]
    assert member.cooperative_id == kitchen.cooperative.id
    assert member.joined_at.year > 2001


def test_a_code_says_whether_it_is_for_somebody_new(kitchen: Kitchen) -> None:
    coordinator = kitchen.phone("coordinator")
    seller = str(kitchen.members["seller"].id)

    for _ in range(20):
        fresh = coordinator.post("join-codes", {"roles": ["seller"]}).json()["code"]
        own = coordinator.post("join-codes", {"member": seller}).json()["code"]

        assert fresh[0].isalpha()
        assert own[0].isdigit()


def test_a_members_own_code_asks_for_no_name_and_no_login(kitchen: Kitchen) -> None:
    seller = kitchen.members["seller"]
    code = kitchen.phone("coordinator").post("join-codes", {"member": str(seller.id)}).json()

    answer = _join(code["code"], name="", login="", passphrase="another spoon of thyme")

    assert answer.status_code == 201
    assert answer.json()["member"]["id"] == str(seller.id)
    assert _sign_in("seller@hearth", "another spoon of thyme").status_code == 201


def test_who_has_left_gets_no_new_device(kitchen: Kitchen) -> None:
    Member.objects.filter(login="seller").update(left_at=datetime.now(UTC))

    answer = _sign_in("seller@hearth", PASSPHRASE)

    assert answer.status_code == 401


def _sign_in(login: Any, passphrase: str) -> Any:
    return _post("devices", {"login": login, "passphrase": passphrase, "app_version": "1"})


def _join(code: str, *, name: str, login: str, passphrase: str = PASSPHRASE) -> Any:
    return _post(
        "devices",
        {"join_code": code, "name": name, "login": login, "passphrase": passphrase},
    )


def _post(path: str, body: Any) -> Any:
    return Client(raise_request_exception=False).post(
        f"/api/v1/{path}", body, content_type="application/json", headers=OWN_PAGE
    )
