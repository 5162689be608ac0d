"""Any member puts a lot on hold; only a coordinator lets it go."""

from __future__ import annotations

from typing import Any

import pytest

from tests.people import Kitchen
from tests.writing import Pen, pulled, pushed, recompute_all, statuses

pytestmark = pytest.mark.django_db

LOT = "MJ-261110-K7-1"


def _hold_of(kitchen: Kitchen) -> dict[str, Any]:
    recompute_all()
    changes, _ = pulled(kitchen.phone("coordinator"))
    states = [
        each["data"]["state"]
        for each in changes
        if each["type"] == "sheet" and each["id"] == f"lot:{LOT}"
    ]
    hold: dict[str, Any] = states[-1]["hold"]
    return hold


def test_a_plain_member_holds_and_cannot_release_a_coordinator_can(kitchen: Kitchen) -> None:
    seller, coordinator = kitchen.phone("seller"), kitchen.phone("coordinator")
    pen = Pen(seller)
    held = pen.write("held", {"lot": LOT, "because": "complaint", "reason": "a lid came up"})
    release = {
        "lot": LOT, "decision": "release", "decides": [{"entry": held["id"]}], "reason": "fine",
    }  # fmt: skip

    by_seller = pushed(seller, [held, pen.write("hold_decided", release)])
    before = _hold_of(kitchen)
    by_coordinator = pushed(coordinator, [Pen(coordinator).write("hold_decided", release)])
    after = _hold_of(kitchen)

    assert statuses(by_seller) == ["created", "quarantined role"]
    assert before["is_held"]
    assert statuses(by_coordinator) == ["created"]
    assert not after["is_held"]


def test_taking_a_hold_back_does_not_let_the_lot_go(kitchen: Kitchen) -> None:
    seller = kitchen.phone("seller")
    pen = Pen(seller)
    held = pen.write("held", {"lot": LOT, "because": "other", "reason": "wrong lot"})
    void = pen.write(
        "void",
        {"corrects": held["id"], "of_kind": "held", "reason": "slip"},
        subjects=[f"lot:{LOT}"],
    )

    answer = pushed(seller, [held, void])

    assert statuses(answer) == ["created", "created"]
    assert _hold_of(kitchen)["is_held"]
