"""Four members practise reading: what they read of each question, better each time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from random import Random

from demo_data.diary import Body, Diary
from demo_data.shown import off_by
from demo_data.story import SEED
from kitchenlog.calc.drills import DRAWN_BY, SEED_MOST, Question, drill_questions
from kitchenlog.calc.numbers import plain

WEIGHINGS = 5


@dataclass(frozen=True, kw_only=True)
class Practice:
    """One drill: on which day, by whom, how far off on average and how unsteady, in divisions;
    the weighings in g around `mass`, as unsteady as `repeats`."""

    day: int
    by: str
    off: dict[str, float]
    unsteady: float
    scale: str
    division: str
    mass: str
    repeats: float
    techniques: Sequence[str]


# Noor reads the rim of the curve at first and stands to the side of dials; Joram takes a short
# spoon for a full one; Devan does not wait for the scale; Marisol heaps her spoons. All learn,
# and in the last week three of them weigh the same jar of salt on the pinch scale.
PRACTICES = (
    Practice(
        day=2, by="noor", off={"dial": 0.9, "surface": 1.3, "spoon": 0.4}, unsteady=0.7,
        scale="pinch-scale", division="0.1", mass="248.6", repeats=0.3,
        techniques=("level_surface",),
    ),
    Practice(
        day=9, by="noor", off={"dial": 0.6, "surface": 0.7, "spoon": 0.3}, unsteady=0.5,
        scale="pinch-scale", division="0.1", mass="251.3", repeats=0.2,
        techniques=("level_surface", "eye_level"),
    ),
    Practice(
        day=6, by="joram", off={"dial": -0.9, "surface": 0.6, "spoon": 1.6}, unsteady=1.0,
        scale="mill-scale", division="1", mass="1248", repeats=4.0,
        techniques=("wrote_it_at_once",),
    ),
    Practice(
        day=17, by="noor", off={"dial": 0.2, "surface": 0.1, "spoon": 0.3}, unsteady=0.35,
        scale="pinch-scale", division="0.1", mass="250.1", repeats=0.12,
        techniques=("level_surface", "eye_level", "lowest_point"),
    ),
    Practice(
        day=20, by="joram", off={"dial": -0.4, "surface": -0.3, "spoon": -0.3}, unsteady=0.3,
        scale="mill-scale", division="1", mass="1251", repeats=1.5,
        techniques=("levelled_with_a_straight_edge", "wrote_it_at_once"),
    ),
    Practice(
        day=26, by="noor", off={"dial": 0.05, "surface": 0.0, "spoon": 0.1}, unsteady=0.2,
        scale="pinch-scale", division="0.1", mass="249.8", repeats=0.06,
        techniques=(
            "level_surface", "eye_level", "lowest_point", "needle_on_zero",
            "waited_until_steady", "tared_the_bowl",
        ),
    ),
    Practice(
        day=10, by="devan", off={"dial": 0.3, "surface": 0.5, "spoon": -0.3}, unsteady=0.9,
        scale="pinch-scale", division="0.1", mass="249.9", repeats=0.4,
        techniques=("level_surface", "wrote_it_at_once"),
    ),
    Practice(
        day=12, by="marisol", off={"dial": 0.2, "surface": 0.4, "spoon": -1.4}, unsteady=0.8,
        scale="mill-scale", division="1", mass="1249", repeats=2.0,
        techniques=("eye_level",),
    ),
    Practice(
        day=24, by="devan", off={"dial": 0.1, "surface": 0.2, "spoon": -0.1}, unsteady=0.35,
        scale="pinch-scale", division="0.1", mass="250.0", repeats=0.15,
        techniques=("level_surface", "waited_until_steady", "wrote_it_at_once"),
    ),
    Practice(
        day=24, by="marisol", off={"dial": 0.3, "surface": 0.4, "spoon": 0.1}, unsteady=0.3,
        scale="pinch-scale", division="0.1", mass="249.7", repeats=0.1,
        techniques=("eye_level", "lowest_point", "levelled_with_a_straight_edge"),
    ),
)  # fmt: skip


def practise(diary: Diary, *, begins_on: date) -> None:
    """Write the drills of the four weeks, each in the evening of its day. Their chance is their
    own, so that the rest of the story stays as it is."""
    chance = Random(f"{SEED} drills {begins_on.weekday()}")  # noqa: S311 a story, not a secret
    for practice in PRACTICES:
        on = begins_on + timedelta(days=practice.day)
        at = datetime.combine(on, time(19, 20), diary.zone)
        member = diary.house.phones[practice.by].member
        diary.write(practice.by, "drill_done", _drill(practice, member, chance), at)


def _drill(practice: Practice, member: str, chance: Random) -> Body:
    seed = chance.randrange(SEED_MOST)
    return {
        "member": member,
        "seed": seed,
        "drawn_by": DRAWN_BY,
        "questions": [
            {
                "sort": question["sort"],
                "truth": question["truth"],
                "division": question["division"],
                "read": _read(question, practice, chance),
            }
            for question in drill_questions(seed, DRAWN_BY)
        ],
        "weighing": {
            "instrument": practice.scale,
            "unit": "g",
            "division": practice.division,
            "shown": [
                off_by(practice.mass, chance.gauss(0, practice.repeats), practice.division)
                for _ in range(WEIGHINGS)
            ],
        },
        "techniques": list(practice.techniques),
    }


def _read(question: Question, practice: Practice, chance: Random) -> str:
    """To a fifth of a division, as a practised eye says it; a spoon to a whole percent."""
    division = Decimal(question["division"])
    off = chance.gauss(practice.off[question["sort"]], practice.unsteady) * float(division)
    return off_by(question["truth"], off, plain(division / 5))
