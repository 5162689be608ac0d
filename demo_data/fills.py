"""Packs weighed against their labels: every lot of biscuits, and some others.

By the rules of the cooperative (EU): of fewer than 100 packs each one is weighed.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal
from random import Random

from demo_data.diary import Body, Diary, Written
from demo_data.shown import off_by
from demo_data.story import SEED, Row, Story

AFTER = timedelta(minutes=20)  # what is made stands in the kitchen for half an hour
TARES = 5
SECOND_WEEK_FROM, LAST_WEEK_FROM = 7, 21
LIGHT_PACK = 6  # the seventh
FAR_OFF = -10.0


@dataclass(frozen=True, kw_only=True)
class Filling:
    """Packs that are on average `over` g above their label and differ by `spread`; empty ones
    weigh `empty` g and differ by `empty_spread`."""

    scale: str
    over: float
    spread: float
    empty: str
    empty_spread: float
    is_one_light: bool = False
    note: str | None = None


_BISCUITS = Filling(scale="mill-scale", over=2.4, spread=1.9, empty="7", empty_spread=0.2)
# Baked too dry: the mean is short, and one bag by more than the rules put up with.
_DRIED_OUT = Filling(
    scale="mill-scale", over=-1.8, spread=1.4, empty="7", empty_spread=0.2,
    is_one_light=True, note="dried_out",
)  # fmt: skip
# A scale that shows 1 g is too coarse for 100 g: nothing is decided.
_TOO_COARSE = Filling(
    scale="mill-scale", over=1.5, spread=0.9, empty="6", empty_spread=0.2, note="too_coarse"
)
_BANANA = Filling(scale="pinch-scale", over=1.5, spread=0.9, empty="6.2", empty_spread=0.1)
_JAM = Filling(scale="pinch-scale", over=1.9, spread=1.1, empty="148.0", empty_spread=0.7)


def weigh_packs(diary: Diary, story: Story, *, begins_on: date) -> None:
    """Write the fill checks, each before its lot leaves the kitchen. Their chance is their own,
    so that the rest of the story stays as it is."""
    chance = Random(f"{SEED} fills {begins_on.weekday()}")  # noqa: S311 a story, not a secret
    outputs = sorted(diary.of_kind("output"), key=lambda each: each.happened_at)
    for output, filling in _chosen(outputs, begins_on):
        at = output.happened_at + AFTER
        on = at.astimezone(diary.zone).date().isoformat()
        body = _body(output.body, filling, story.instruments[filling.scale], chance)
        body |= {"on": on, "rules": story.cooperative["rules"]}
        body |= {} if filling.note is None else {"note": story.says[filling.note]}
        diary.write(output.by, "fill_checked", body, at)


def _chosen(outputs: list[Written], begins_on: date) -> list[tuple[Written, Filling]]:
    """Biscuits always; the first two lots of banana; Ilsa's first jam of the second week."""

    def made(product: str, *, from_day: int = 0) -> list[Written]:
        return [
            each
            for each in outputs
            if each.body["material"] == product and _day(each, begins_on) >= from_day
        ]

    dry = made("coconut-biscuits", from_day=LAST_WEEK_FROM)[0]
    biscuits = [
        (each, _DRIED_OUT if each is dry else _BISCUITS) for each in made("coconut-biscuits")
    ]
    bananas = zip(made("dried-banana"), (_TOO_COARSE, _BANANA), strict=False)
    jams = [each for each in made("mango-jam", from_day=SECOND_WEEK_FROM) if each.by == "ilsa"]
    return [*biscuits, *bananas, (jams[0], _JAM)]


def _day(output: Written, begins_on: date) -> int:
    first: datetime = output.happened_at
    return (first.date() - begins_on).days


def _body(output: Row, filling: Filling, scale: Row, chance: Random) -> Body:
    division, unit = scale["division"], scale["unit"]
    label, count = output["pack_net"], int(output["amount"]["amount"])
    full = f"{Decimal(label['amount']) + Decimal(filling.empty)}"
    offs = [chance.gauss(filling.over, filling.spread) for _ in range(count)]
    if filling.is_one_light:
        offs[LIGHT_PACK] = FAR_OFF
    empties = [chance.gauss(0, filling.empty_spread) for _ in range(TARES)]
    return {
        "lot": output["lot"],
        "label": [{"amount": label}],
        "unit": unit,
        "tares": [off_by(filling.empty, off, division) for off in empties],
        "gross": [off_by(full, off, division) for off in offs],
        "instrument": scale["instrument"],
        "division": division,
        "lot_size": count,
    }
