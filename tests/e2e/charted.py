"""Work enough for control charts: checks, batches with fills, drills of three people."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Any

from tests.e2e.hearth import KITCHEN, RECIPE, DeskPhone, Hearth
from tests.writing import made_id

SCALE = made_id("Bench scale")
# Eleven masses of 1000 g, five repeats each; the last check reads far too high.
BIASES = (0, 1, 0, -1, 0, 1, 0, 0, -1, 0, 9)
REPEATS = (0, 1, 0, -1, 0)
# Good jars of 240 g out of 3230 g in the kettle; the last batch lost most of them.
GOOD = (10, 11, 10, 10, 11, 10, 10, 11, 10, 3)
NETS = ("241.2", "240.4", "240.9", "241.6", "240.2")
TARE = 180


def charted(hearth: Hearth) -> str:
    """Push it all; answers the lot of the last batch."""
    desk = hearth.desk("ona")
    desk.push(_checks(desk))
    desk.push(_batches(desk))
    for login, off in (("ona", 0), ("pim", 1), ("sela", 8)):
        reader = hearth.desk(login)
        reader.push([_drill(reader, off)])
    hearth.until_quiet()
    return f"QJ-{len(GOOD)}"


def _day(days_ago: int, minute: int) -> datetime:
    return datetime.now(UTC) - timedelta(days=days_ago, minutes=-minute)


def _checks(desk: DeskPhone) -> list[dict[str, Any]]:
    return [
        desk.pen.write(
            "instrument_checked",
            {
                "instrument": SCALE, "place": KITCHEN, "unit": "g", "division": "1",
                "steps": [
                    {"sort": "zero", "readings": ["0"]},
                    {
                        "sort": "repeats", "reference": "1000", "tolerance": "0.05",
                        "readings": [str(1000 + bias + each) for each in REPEATS],
                    },
                ],
            },
            at=_day(len(BIASES) - number + 1, 1),
        )
        for number, bias in enumerate(BIASES)
    ]  # fmt: skip


def _batches(desk: DeskPhone) -> list[dict[str, Any]]:
    """As published, weighed in, packed, one jar after another weighed again."""
    recipe = next(
        change["data"]["state"]["versions"][-1]
        for change in desk.everything()
        if change["id"] == f"recipe:{RECIPE}"
    )
    planned = {name: recipe["body"][name] for name in ("product", "makes", "lines", "steps")}
    made: list[dict[str, Any]] = []
    for number, good in enumerate(GOOD, start=1):
        made += _batch(desk, planned | {"recipe_version": recipe["entry"]}, number, good)
    return made


def _batch(
    desk: DeskPhone, planned: dict[str, Any], number: int, good: int
) -> list[dict[str, Any]]:
    batch, lot = made_id(f"batch {number}"), f"QJ-{number}"
    minutes = iter(range(1, 60))

    def write(kind: str, **body: Any) -> dict[str, Any]:
        at = _day(len(GOOD) - number + 1, 60 + next(minutes))
        return desk.pen.write(kind, body, at=at)

    weighed = (("quinces", "Quinces", "QU-9", "2000"), ("sugar", "Sugar", "SU-1", "1200"),
               ("pectin", "Pectin", "PE-1", "30"))  # fmt: skip
    return [
        write(
            "batch_started", batch=batch, code=lot, recipe=RECIPE, place=KITCHEN,
            scaled_by="as_written", **planned,
        ),
        *(
            write(
                "weigh_in", batch=batch, line=line, material=made_id(name), lot=of,
                place=KITCHEN, reading={"instrument": SCALE, "unit": "g", "shown": shown,
                                        "division": "1"},
            )
            for line, name, of, shown in weighed
        ),
        write(
            "output", batch=batch, lot=lot, material=made_id("Quince jelly"), place=KITCHEN,
            amount={"amount": str(good), "unit": "pc"}, pack_net={"amount": "240", "unit": "g"},
        ),
        write("batch_finished", batch=batch),
        write(
            "fill_checked", lot=lot, on=_day(len(GOOD) - number + 1, 60).date().isoformat(),
            label=[{"amount": {"amount": "240", "unit": "g"}}], rules="eu", unit="g",
            tares=[str(TARE), str(TARE)], division="0.1", lot_size=120,
            gross=[f"{float(net) + TARE + number % 3 / 5:.1f}" for net in NETS],
        ),
    ]  # fmt: skip


def _drill(desk: DeskPhone, off: int) -> dict[str, Any]:
    """Four of each sort; `off` is how many tenths of a division this reader is high."""
    questions = [
        {"sort": sort, "truth": "100", "division": "10", "read": str(100 + off + jitter)}
        for sort in ("dial", "surface", "spoon")
        for jitter in (-1, 0, 1, 0)
    ]
    body = {
        "member": desk.member.id, "seed": 7, "drawn_by": 1, "questions": questions,
        "weighing": {"instrument": made_id("Small scale"), "unit": "g", "division": "0.1",
                     "shown": ["250.1", "250.3", "249.9", "250.1", "250.1"]},
        "techniques": [],
    }  # fmt: skip
    return desk.pen.write("drill_done", body, at=_day(1, 5))
