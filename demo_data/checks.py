"""The instruments are checked in the four weeks: which, when, by whom, and how they read then.

One reads more with the load and is corrected from then on, one fails in the third week, one
comes due on the day before the anchor, and the old hanging scale nobody has ever checked.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from random import Random

from demo_data.bench import Bench, Habit, bench_of
from demo_data.diary import Body, Diary
from demo_data.story import SEED, Row, Story

BEGINS = time(6, 10)  # before deliveries come
MINUTES_EACH = 12
# What the instrument was like at the time stands in its check.
COPIED = ("division", "interval", "accuracy_class", "judged_by", "most_error", "holds")


@dataclass(frozen=True, kw_only=True)
class Check:
    """One check; `known` are masses, buffers or values, true to `tolerance` where the class of
    a weight does not say it. Water for a measure is weighed on `scale`, in it or in a bowl
    that weighs `tare`."""

    day: int
    by: str
    instrument: str
    habit: Habit
    known: Sequence[str] = ()
    tolerance: str = "0"
    is_quick: bool = False
    line: str | None = None
    scale: str | None = None
    tare: str = "0"
    note: str | None = None


_BIG = ("1000", "2000", "5000", "10000")
_SMALL = ("20", "50", "100", "200")
_BUFFERS = ("4.01", "7.00")
_HILL = Habit(unsteady=0.6)
_HARBOUR = Habit(unsteady=0.3)
_MILL = Habit(slope=0.0004, unsteady=0.18)
_PINCH = Habit(unsteady=0.015)

CHECKS = (
    Check(day=1, by="devan", instrument="hill-scale", habit=_HILL, known=_BIG,
          line="least_squares"),
    Check(day=1, by="marisol", instrument="mill-scale", habit=_MILL, known=_BIG, is_quick=True),
    Check(day=2, by="noor", instrument="harbour-scale", habit=_HARBOUR, known=_BIG,
          line="least_squares"),
    Check(day=2, by="noor", instrument="pinch-scale", habit=_PINCH, known=_SMALL,
          line="least_squares"),
    Check(day=2, by="noor", instrument="tall-cylinder", habit=Habit(off=-4, unsteady=2),
          scale="harbour-scale", tare="612"),
    Check(day=2, by="marisol", instrument="dryer-dial", habit=Habit(off=2),
          known=("50.0", "60.0", "70.0"), tolerance="0.5"),
    Check(day=2, by="marisol", instrument="oven-probe", habit=Habit(off=0.4, unsteady=0.2)),
    Check(day=3, by="devan", instrument="hill-probe", habit=Habit(off=0.1, unsteady=0.1),
          line="two_point"),
    Check(day=3, by="devan", instrument="hand-refractometer", habit=Habit(off=0.2),
          known=("0", "50.0"), tolerance="0.1"),
    Check(day=3, by="noor", instrument="ph-meter", habit=Habit(off=0.01, unsteady=0.01),
          known=_BUFFERS, tolerance="0.02", line="two_point"),
    Check(day=4, by="ilsa", instrument="quarter-cup", habit=Habit(off=-3.5, unsteady=1.0),
          scale="pinch-scale", tare="96.4"),
    Check(day=4, by="marisol", instrument="teaspoon", habit=Habit(off=0.04, unsteady=0.05),
          scale="pinch-scale", tare="21.7"),
    Check(day=11, by="marisol", instrument="mill-scale", habit=_MILL, known=_BIG,
          line="least_squares"),
    Check(day=12, by="noor", instrument="ph-meter", habit=Habit(off=0.02, unsteady=0.01),
          known=_BUFFERS, tolerance="0.02", line="two_point"),
    Check(day=12, by="ilsa", instrument="pinch-scale", habit=_PINCH, known=_SMALL,
          line="least_squares"),
    Check(day=13, by="devan", instrument="hill-scale", habit=_HILL, known=_BIG, is_quick=True),
    Check(day=14, by="noor", instrument="harbour-scale", habit=_HARBOUR, known=_BIG,
          is_quick=True),
    Check(day=15, by="devan", instrument="hill-probe", habit=Habit(off=0.1, unsteady=0.1),
          line="two_point"),
    Check(day=15, by="devan", instrument="hand-refractometer", habit=Habit(off=0.3),
          known=("0", "50.0"), tolerance="0.1"),
    Check(day=16, by="marisol", instrument="dryer-dial", habit=Habit(off=7, slope=0.01),
          known=("50.0", "60.0", "70.0"), tolerance="0.5", note="dial_slipped"),
    Check(day=20, by="noor", instrument="ph-meter", habit=Habit(off=0.02, unsteady=0.01),
          known=("4.01", "7.00", "10.01"), tolerance="0.02", line="least_squares"),
    Check(day=22, by="marisol", instrument="oven-probe", habit=Habit(off=0.4, unsteady=0.2)),
    Check(day=23, by="marisol", instrument="mill-scale", habit=_MILL, known=_BIG,
          line="least_squares"),
    Check(day=24, by="ilsa", instrument="pinch-scale", habit=_PINCH, known=_SMALL,
          line="least_squares"),
    Check(day=25, by="devan", instrument="hill-scale", habit=_HILL, known=_BIG,
          line="least_squares"),
    Check(day=25, by="devan", instrument="hill-probe", habit=Habit(off=0.1, unsteady=0.1),
          line="two_point"),
    Check(day=26, by="noor", instrument="harbour-scale", habit=_HARBOUR, known=_BIG,
          line="least_squares"),
    Check(day=26, by="noor", instrument="ph-meter", habit=Habit(off=0.02, unsteady=0.01),
          known=_BUFFERS, tolerance="0.02", line="two_point"),
)  # fmt: skip


def check_instruments(diary: Diary, story: Story, *, begins_on: date) -> None:
    """Write the checks of the four weeks, each early on its day. Their chance is their own, so
    that the rest of the story stays as it is."""
    chance = Random(f"{SEED} checks {begins_on.weekday()}")  # noqa: S311 a story, not a secret
    for number, check in enumerate(CHECKS):
        before = sum(each.day == check.day for each in CHECKS[:number])
        on = begins_on + timedelta(days=check.day)
        at = datetime.combine(on, BEGINS, diary.zone) + before * timedelta(minutes=MINUTES_EACH)
        bench = bench_of(story, check.instrument, check.habit, chance)
        diary.write(check.by, "instrument_checked", _body(check, bench, story), at)


def _body(check: Check, bench: Bench, story: Story) -> Body:
    instrument = bench.instrument
    is_filled = check.scale is not None
    copied = [name for name in COPIED if name in instrument]
    body: Body = {
        "instrument": check.instrument,
        "unit": "g" if is_filled else instrument["unit"],
        "steps": _steps(check, bench, story),
        **{name: instrument[name] for name in copied if not (is_filled and name == "division")},
    }
    body |= {"place": instrument["place"]} if "place" in instrument else {}
    body |= {} if check.line is None else {"line": check.line}
    body |= {"check_scale": check.scale} if is_filled else {}
    return body if check.note is None else {**body, "note": story.says[check.note]}


def _steps(check: Check, bench: Bench, story: Story) -> list[Body]:
    instrument = bench.instrument
    if check.scale is not None:
        return bench.water(story.instruments[check.scale], check.tare)
    if instrument["sort"] == "scale":
        whole_or_quick = bench.scale_quick if check.is_quick else bench.scale_whole
        return whole_or_quick(check.known)
    if instrument["sort"] == "ph_meter":
        return bench.buffers(check.known, check.tolerance)
    if check.known:
        return bench.compared(check.known, check.tolerance)
    return bench.ice_and_boiling(_altitude(story, instrument))


def _altitude(story: Story, instrument: Row) -> str:
    places = {row["place"]: row for row in story.places}
    return str(places[instrument["place"]]["altitude_m"])
