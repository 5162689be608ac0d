"""A member's skill sheet: how far readings lie from what was drawn, and how they repeat.

Sources: bias as in VIM 2.18, spread of single readings as in JCGM 100:2008 4.2.2 (n - 1). The
unit of reading is one division of the scale that was read, so that dials, surfaces and spoons
compare. What several members say together is in skill_class.py.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.bodies import Body, decimal_in, items_in, object_in, text_in, texts_in
from kitchenlog.calc.numbers import (
    HUNDRED,
    difference,
    divided,
    parse_decimal,
    product,
    significant,
    written,
)
from kitchenlog.calc.readings import mean, repeat_sd
from kitchenlog.calc.record import (
    Fact,
    Finding,
    Note,
    Standing,
    Was,
    as_it_stands,
    notes_about,
    settled,
)
from kitchenlog.calc.skill_steps import Improved, improved_between
from kitchenlog.calc.subjects import id_in

SKILL_FOLD = 1

SORTS = ("dial", "surface", "spoon")
ERROR_PLACES = 4  # of a division: a hundred times finer than anybody reads
SHOWN_PLACES = 2
SPREAD_DIGITS = 3
HALF_DIVISION = Decimal("0.5")  # a scale is read to half a division
MOST_OFF = Decimal(1_000_000)  # so far off, in divisions or percent, nothing was read


class Score(TypedDict):
    """How far one reading lies from the truth: in divisions (None: no division) and in percent
    of the truth (None: the truth is 0); None also for what is far beyond any scale."""

    sort: str
    error: str | None
    percent: str | None


class Figures(TypedDict):
    """What some readings add up to; `bias` and `spread` in divisions, None where too few."""

    count: int
    bias: str | None
    bias_percent: str | None
    spread: str | None
    within_half_percent: str | None


class Weighed(TypedDict):
    """One thing weighed several times: `s` is the repeatability, None for a single reading."""

    instrument: str | None
    unit: str
    division: str | None
    count: int
    mean: str
    s: str | None


class Drill(TypedDict):
    """One drill as a point in time."""

    entry: str
    on: str
    happened_at: str
    author: str
    scores: list[Score]
    whole: Figures
    sorts: dict[str, Figures]
    weighing: Weighed | None
    techniques: list[str]
    note: str | None
    was: list[Was]


class Skill(TypedDict):
    """What the drills of one member say together."""

    whole: Figures
    sorts: dict[str, Figures]
    weighing: Weighed | None
    techniques: list[str]
    improved: list[Improved]


class SkillState(Skill):
    """All drills of one member."""

    member: str
    drills: list[Drill]
    findings: list[Finding]
    notes: list[Note]


def skill_state(subject: str, facts: Sequence[Fact]) -> SkillState:
    """Fold all entries about `skill:<member>`; only drills of that member count."""
    member = id_in(subject)
    record = as_it_stands(facts)
    drills = [
        _drill(each)
        for each in record.standing
        if each.kind == "drill_done" and text_in(each.body, "member") == member
    ]
    return {
        "member": member,
        "drills": drills,
        **summed_drills(drills),
        "findings": settled(record.findings, record.standing, subject),
        "notes": notes_about(record.standing, subject),
    }


def summed_drills(drills: Sequence[Drill]) -> Skill:
    """What drills in order of time say together: figures over all their readings, the last
    weighing and the techniques ticked last, what became better from the last but one to the
    last."""
    scores = [score for drill in drills for score in drill["scores"]]
    last = drills[-1] if drills else None
    return {
        "whole": reader_figures(scores),
        "sorts": _by_sort(scores),
        "weighing": _last_weighing(drills),
        "techniques": last["techniques"] if last else [],
        "improved": improved_between(drills[-2], drills[-1]) if len(drills) > 1 else [],
    }


def score_of(question: Body) -> Score:
    """The error of one reading. In divisions it is exact to ERROR_PLACES, in percent of the
    truth rounded to SHOWN_PLACES."""
    truth, read = decimal_in(question, "truth"), decimal_in(question, "read")
    division = decimal_in(question, "division")
    off = None if truth is None or read is None else difference(read, truth)
    return {
        "sort": text_in(question, "sort") or "",
        "error": None if off is None else _ratio(off, division, ERROR_PLACES),
        "percent": None if off is None else _ratio(product(off, HUNDRED), truth, SHOWN_PLACES),
    }


def reader_figures(scores: Iterable[Score]) -> Figures:
    """Bias, spread and the share of readings within half a division, limits included."""
    known = list(scores)
    errors = [parse_decimal(each["error"]) for each in known if each["error"] is not None]
    percents = [parse_decimal(each["percent"]) for each in known if each["percent"] is not None]
    near = [error for error in errors if abs(error) <= HALF_DIVISION]
    return {
        "count": len(errors),
        "bias": _mean(errors, SHOWN_PLACES),
        "bias_percent": _mean(percents, SHOWN_PLACES),
        "spread": _spread(errors),
        "within_half_percent": _ratio(
            product(Decimal(len(near)), HUNDRED), Decimal(len(errors)), 1
        ),
    }


def _last_weighing(drills: Sequence[Drill]) -> Weighed | None:
    weighings = [drill["weighing"] for drill in drills if drill["weighing"] is not None]
    return weighings[-1] if weighings else None


def _drill(entry: Standing) -> Drill:
    scores = [score_of(each) for each in items_in(entry.body, "questions")]
    return {
        "entry": entry.id,
        "on": entry.local_date,
        "happened_at": entry.happened_at,
        "author": entry.author,
        "scores": scores,
        "whole": reader_figures(scores),
        "sorts": _by_sort(scores),
        "weighing": _weighed(object_in(entry.body, "weighing") or {}),
        "techniques": texts_in(entry.body, "techniques"),
        "note": text_in(entry.body, "note"),
        "was": list(entry.was),
    }


def _by_sort(scores: Iterable[Score]) -> dict[str, Figures]:
    known = list(scores)
    groups = {sort: [each for each in known if each["sort"] == sort] for sort in SORTS}
    return {sort: reader_figures(group) for sort, group in groups.items() if group}


def _weighed(body: Body) -> Weighed | None:
    """The mean has one place more than the finest reading."""
    texts = texts_in(body, "shown")
    shown = [each for text in texts if (each := decimal_in({"x": text}, "x")) is not None]
    if not shown:
        return None
    places = max(len(written(each).partition(".")[2]) for each in shown)
    return {
        "instrument": text_in(body, "instrument"),
        "unit": text_in(body, "unit") or "",
        "division": text_in(body, "division"),
        "count": len(shown),
        "mean": written(mean(shown, places + 1)),
        "s": _spread(shown),
    }


def _mean(values: Sequence[Decimal], places: int) -> str | None:
    return written(mean(values, places)) if values else None


def _spread(values: Sequence[Decimal]) -> str | None:
    return significant(repeat_sd(values), SPREAD_DIGITS) if len(values) > 1 else None


def _ratio(part: Decimal, whole: Decimal | None, places: int) -> str | None:
    if whole is None or whole == 0:
        return None
    ratio = divided(part, whole, places)
    return written(ratio) if abs(ratio) < MOST_OFF else None
