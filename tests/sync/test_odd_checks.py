"""Checks, fills and drills with odd numbers: kept, or kept aside alone; always added up."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

import pytest

from kitchenlog.logbook.selectors import states_of
from kitchenlog.logbook.verify import sheets_that_differ
from kitchenlog.members.scope import in_cooperative
from tests.people import Kitchen, Phone
from tests.writing import Pen, made_id, pulled, pushed, recompute_all, statuses

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("no_limits")]

SCALE = made_id("bench scale")
HUGE, TINY = "100000000", "0.000001"


def check(**other: Any) -> dict[str, Any]:
    """A check with one known mass; `step` changes that step."""
    step = {"sort": "rising", "reference": "500", "readings": ["500"], **other.pop("step", {})}
    return {"instrument": SCALE, "unit": "g", "division": "1", "steps": [step], **other}


def fill(**other: Any) -> dict[str, Any]:
    """Two packs of 340 g."""
    return {
        "lot": "J1", "on": "2026-06-05", "rules": "us", "unit": "g",
        "label": [{"amount": {"amount": "340", "unit": "g"}}],
        "tares": ["182"], "gross": ["522", "523"], **other,
    }  # fmt: skip


def drill(phone: Phone, **other: Any) -> dict[str, Any]:
    """One dial, read well."""
    question = {"sort": "dial", "truth": "77", "division": "1", "read": "77"}
    body = {"member": str(phone.member.pk), "seed": 7, "drawn_by": 1, "questions": [question]}
    return {**body, **other}


def set_up(kitchen: Kitchen) -> None:
    """A scale that may be off by 1 g."""
    coordinator = kitchen.phone("coordinator")
    body = {
        "instrument": SCALE, "name": "Bench scale", "sort": "scale", "unit": "g",
        "division": "1", "judged_by": "own", "most_error": "1",
    }  # fmt: skip
    pushed(coordinator, [Pen(coordinator).write("instrument_defined", body)])


def label(amount: str, unit: str) -> list[Any]:
    return [{"amount": {"amount": amount, "unit": unit}}]


KEPT: dict[str, tuple[str, dict[str, Any]]] = {
    "the largest readings": ("check", {"step": {"readings": [HUGE, "-" + HUGE]}}),
    "a known mass of nothing": ("check", {"step": {"reference": "0", "readings": ["0"]}}),
    "repeats without spread": (
        "check", {"step": {"sort": "repeats", "readings": [HUGE] * 30}},
    ),
    "one repeat": ("check", {"step": {"sort": "repeats", "readings": ["500"]}}),
    "a division of nothing": ("check", {"division": "0"}),
    "a division beyond the load": ("check", {"division": HUGE}),
    "a unit nobody knows": ("check", {"unit": "pinch"}),
    "a mass in degrees": ("check", {"unit": "degC"}),
    "a line through one point": ("check", {"line": "least_squares"}),
    "a scale checked by itself": ("check", {"check_scale": SCALE}),
    "forty steps": ("check", {"steps": [check()["steps"][0]] * 40}),
    "a label of nothing": ("fill", {"label": label("0", "g")}),
    "a label too small to weigh": ("fill", {"label": label(TINY, "oz"), "division": "50"}),
    "the largest label": ("fill", {"label": label(HUGE, "lb"), "lot_size": 1_000_000}),
    "labels of mass and volume": (
        "fill", {"label": [*label("340", "g"), *label("340", "mL")]},
    ),
    "packs weighed in degrees": ("fill", {"unit": "degC"}),
    "packs without spread": ("fill", {"gross": ["522"] * 250}),
    "packs lighter than empty": ("fill", {"gross": ["-5", "-" + HUGE]}),
    "a density of nothing": (
        "fill", {"rules": "eu", "label": label("340", "mL"), "density": "0"},
    ),
    "a dial without divisions": (
        "drill",
        {"questions": [{"sort": "dial", "truth": "0", "division": "0", "read": HUGE}]},
    ),
    "a thing weighed without spread": (
        "drill", {"weighing": {"unit": "pinch", "shown": ["5"] * 30, "division": "0"}},
    ),
}  # fmt: skip

ASIDE: dict[str, tuple[str, dict[str, Any]]] = {
    "no reading": ("check", {"step": {"readings": []}}),
    "ten thousand repeats": ("check", {"step": {"readings": ["500"] * 10_000}}),
    "forty-one steps": ("check", {"steps": [check()["steps"][0]] * 41}),
    "no step": ("check", {"steps": []}),
    "a negative division": ("check", {"division": "-1"}),
    "a reading beyond all": ("check", {"step": {"readings": [HUGE + "0"]}}),
    "a reading that is no number": ("check", {"step": {"readings": ["5e2"]}}),
    "a check nobody knows": ("check", {"step": {"sort": "licked"}}),
    "limits nobody knows": ("check", {"judged_by": "feeling"}),
    "an instrument that is no id": ("check", {"instrument": "a b"}),
    "a lot of no packs": ("fill", {"lot_size": 0}),
    "no pack": ("fill", {"gross": []}),
    "more packs than a check holds": ("fill", {"gross": ["522"] * 251}),
    "a label of negative": ("fill", {"label": label("-340", "g")}),
    "rules nobody knows": ("fill", {"rules": "moon"}),
    "a negative density": ("fill", {"density": "-1"}),
    "a seed beyond all": ("drill", {"seed": 2**31}),
    "no question": ("drill", {"questions": []}),
}


def written(pen: Pen, sort: str, change: dict[str, Any]) -> dict[str, Any]:
    if sort == "check":
        return pen.write("instrument_checked", check(**change), subjects=[])
    if sort == "fill":
        return pen.write("fill_checked", fill(**change), subjects=[])
    return pen.write("drill_done", drill(pen.phone, **change), subjects=[])


def test_an_odd_check_fill_or_drill_is_kept_and_every_sheet_is_added_up(
    kitchen: Kitchen,
) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    entries = [written(pen, *odd) for odd in KEPT.values()]

    results = pushed(phone, [*entries, pen.receipt("J1")])
    recompute_all()

    named = dict(zip(KEPT, statuses(results), strict=False))
    assert named == dict.fromkeys(KEPT, "created")
    state = states_of(kitchen.cooperative.pk, ["lot:J1", f"instrument:{SCALE}"])
    assert len(state["lot:J1"]["fills"]) == sum(sort == "fill" for sort, _ in KEPT.values())
    assert len(state[f"instrument:{SCALE}"]["checks"]) == sum(
        sort == "check" for sort, _ in KEPT.values()
    )
    with in_cooperative(kitchen.cooperative):
        assert list(sheets_that_differ(kitchen.cooperative.pk)) == []


def test_what_cannot_be_read_is_kept_aside_alone(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    entries = [written(pen, *odd) for odd in ASIDE.values()]

    results = pushed(phone, [*entries, pen.receipt("J1")])

    named = dict(zip(ASIDE, statuses(results), strict=False))
    assert named == dict.fromkeys(ASIDE, "quarantined unreadable")
    assert statuses(results)[-1] == "created"
    assert all(each["detail"].endswith(".") for each in results[:-1])


def test_another_cooperatives_instrument_is_like_one_nobody_knows(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    theirs, ours = other_kitchen.phone("coordinator"), kitchen.phone()
    failed = check(step={"readings": ["509"]})
    wrong = Pen(theirs).write("instrument_checked", failed)
    pushed(theirs, [wrong])
    pen = Pen(ours)
    mine = pen.write("instrument_checked", check())
    weighed = pen.write("fill_checked", fill(instrument=SCALE))

    results = pushed(ours, [mine, weighed])
    recompute_all()

    assert statuses(results) == ["created", "created"]
    assert wrong["id"] not in str(pulled(ours))
    state = states_of(kitchen.cooperative.pk, [f"instrument:{SCALE}"])
    assert [each["entry"] for each in state[f"instrument:{SCALE}"]["checks"]] == [mine["id"]]
    assert ours.get(f"entries/{wrong['id']}").status_code == 404


def test_impact_is_told_to_its_own_cooperative_alone(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    set_up(kitchen)
    ours, theirs = kitchen.phone(), other_kitchen.phone()
    failed = Pen(ours).write("instrument_checked", check(step={"readings": ["509"]}))
    passed = Pen(kitchen.phone()).write("instrument_checked", check())
    pushed(ours, [failed])
    recompute_all()
    path = f"instruments/{SCALE}/impact"

    told = ours.get(path, check=failed["id"])
    foreign = theirs.get(path, check=failed["id"])
    unknown = theirs.get(path, check=passed["id"])

    assert told.status_code == 200
    assert told.json()["check"] == failed["id"]
    assert foreign.status_code == unknown.status_code == 404
    assert foreign.json() == unknown.json()


ODD_IDS = ["nobody", "a:b", "%00", "%20", "x" * 5_000, "%F0%9F%8D%93", "..%2F..", "'--", "%ff"]


@pytest.mark.parametrize("odd", ODD_IDS)
@pytest.mark.parametrize("path", ["instruments/{}/impact", "lots/{}", "lots/{}/trace"])
def test_an_odd_id_in_an_address_is_not_found(path: str, odd: str, kitchen: Kitchen) -> None:
    phone = kitchen.phone()

    answer = phone.get(path.format(odd), check=made_id("check"), direction="back")

    assert answer.status_code == 404
    assert answer.json()["code"] == "not_found"


@pytest.mark.parametrize("odd", [None, "", "7", "\x00", "x" * 5_000, "*"])
def test_an_odd_check_is_answered_with_400(odd: str | None, kitchen: Kitchen) -> None:
    phone = kitchen.phone()

    answer = phone.get(f"instruments/{SCALE}/impact", **({} if odd is None else {"check": odd}))

    assert answer.status_code == 400
    assert answer.json()["code"] == "unreadable"


def test_two_phones_that_check_one_instrument_offline_give_one_sheet_in_either_order(
    kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    sheets = []
    for where, is_turned in ((kitchen, False), (other_kitchen, True)):
        set_up(where)
        first, second = where.phone("processor"), where.phone("seller")
        one = Pen(first).write("instrument_checked", check(), at=_on(3))
        other = Pen(second).write(
            "instrument_checked", check(step={"readings": ["509"]}), at=_on(2)
        )
        for phone, entry in [(first, one), (second, other)][:: -1 if is_turned else 1]:
            assert statuses(pushed(phone, [entry])) == ["created"]
        recompute_all()
        state = states_of(where.cooperative.pk, [f"instrument:{SCALE}"])[f"instrument:{SCALE}"]
        sheets.append(
            [(each["on"], each["verdict"], len(each["points"])) for each in state["checks"]]
        )
        assert [doubt["check"] for doubt in state["doubts"]] == [other["id"]]
        assert state["doubts"][0]["until"] == one["happened_at"]

    assert sheets[0] == sheets[1]
    assert len(sheets[0]) == 2


def _on(day: int) -> datetime:
    return datetime(2026, 6, day, 9, tzinfo=UTC)
