"""Counts of uses, one cooperative at a time."""

from __future__ import annotations

import pytest
from django.db import connection

from kitchenlog.instruments.models import UseCount
from kitchenlog.instruments.services import count_all_uses
from kitchenlog.members.scope import in_cooperative
from tests.instruments.test_uses import NIGHT, kept, step, told
from tests.people import Kitchen
from tests.tracing.test_impact import SCALE, at, check
from tests.writing import Pen

pytestmark = pytest.mark.usefixtures("no_limits")

DEFINED = {
    "instrument": SCALE, "name": "Bench scale", "sort": "scale", "unit": "g",
    "division": "1", "accuracy_class": "III", "interval": "1",
}  # fmt: skip


def test_another_cooperative_sees_nothing_of_it(
    walled_db: None, kitchen: Kitchen, other_kitchen: Kitchen
) -> None:
    phones = [one.phone("coordinator") for one in (kitchen, other_kitchen)]
    for number, one in enumerate(phones):
        own = Pen(one)
        steps = [step(own, 5) for _ in range(number + 1)]
        scale = own.write("instrument_defined", DEFINED, at=at(1))
        kept(one, [scale, check(own, 3, "500"), *steps])

    count_all_uses(at=NIGHT)

    assert [[each["data"]["count"] for each in told(one)[0]] for one in phones] == [[1], [2]]
    with in_cooperative(kitchen.cooperative):
        seen = UseCount.objects.count()
    assert seen == (1 if connection.vendor == "postgresql" else 2)
