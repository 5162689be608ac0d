"""A class of readers: bias, repeatability and the spread from person to person, skill by skill.

One-way analysis of variance with people as the groups: JCGM 100:2008 H.5, whose H.5.3.1 puts
operators in the place of days (read). Pooled repeatability: e-Handbook of Statistical Methods
2.4.4.4 (read). The last drill of each member counts. Errors are in divisions of what was read.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, TypedDict

from kitchenlog.calc.groups import (
    analysis_of,
    components_of,
    mean_u_with_groups,
    mean_u_without_groups,
)
from kitchenlog.calc.numbers import (
    as_double,
    divided,
    parse_decimal,
    product,
    significant,
    total,
    written,
)
from kitchenlog.calc.readings import mean, repeat_sd
from kitchenlog.calc.repeats import Spread, pooled_sd
from kitchenlog.calc.skills import SHOWN_PLACES, SORTS, SPREAD_DIGITS, Weighed

DIFFER_BELOW = 0.05  # JCGM 100 H.5.2.3 puts F to its 5 % point: with less, people differ
P_DIGITS = 2
# Errors are counted in the last place they are kept to: then all that are alike sum exactly.
_FINEST = Decimal(10_000)


class InClass(TypedDict):
    """One member's last drill, as the trainer sees it."""

    member: str
    on: str
    drills_count: int
    bias: str | None
    spread: str | None
    within_half_percent: str | None
    weighing: Weighed | None


class OneReader(TypedDict):
    """One member in one skill: mean error and its spread, None for a single reading."""

    member: str
    count: int
    bias: str | None
    spread: str | None


class _Told(TypedDict):
    """What several people's readings add up to, in divisions; None where too few tell.

    `bias_u` is the standard uncertainty of the bias, `repeatability` the spread of one person
    reading again, `person_to_person` what is added by another person reading (zero where it
    came out negative: `is_set_to_zero`), `intermediate` both together: intermediate precision,
    VIM 2.23. `p` is that of the F test, `differ` whether people differ by it.
    """

    bias: str | None
    bias_u: str | None
    repeatability: str | None
    person_to_person: str | None
    is_set_to_zero: bool | None
    intermediate: str | None
    p: str | None
    differ: bool | None


class ClassSkill(_Told):
    """What a class says of one skill: all readings, each member, and both together."""

    sort: str
    count: int
    readers: list[OneReader]


class ClassWeighing(TypedDict):
    """Repeatability of a class on one instrument. What each weighed nobody knows, so neither
    bias nor person to person can be told."""

    instrument: str | None
    unit: str
    division: str | None
    people: int
    count: int
    repeatability: str


class Class(TypedDict):
    """Members in order, skills in the order of SORTS, weighings by instrument."""

    members: list[InClass]
    skills: list[ClassSkill]
    weighings: list[ClassWeighing]


_NOTHING_TOLD: _Told = {
    "bias": None,
    "bias_u": None,
    "repeatability": None,
    "person_to_person": None,
    "is_set_to_zero": None,
    "intermediate": None,
    "p": None,
    "differ": None,
}


@dataclass(frozen=True, kw_only=True)
class _Last:
    """A member with all drills, of which the last one counts."""

    member: str
    drills: Sequence[Mapping[str, Any]]

    def errors(self, sort: str) -> list[Decimal]:
        scores = self.drills[-1]["scores"]
        texts = [each["error"] for each in scores if each["sort"] == sort]
        return [parse_decimal(text) for text in texts if text is not None]

    def weighing(self) -> Weighed | None:
        known = [each["weighing"] for each in self.drills if each["weighing"] is not None]
        return known[-1] if known else None


def class_figures(states: Iterable[Mapping[str, Any]]) -> Class:
    """The last drill of each member who did one, and what they say together, skill by skill."""
    last = sorted(
        (_Last(member=state["member"], drills=state["drills"]) for state in states),
        key=lambda each: each.member,
    )
    known = [each for each in last if each.drills]
    skills = [_skill(sort, known) for sort in SORTS]
    return {
        "members": [_in_class(each) for each in known],
        "skills": [each for each in skills if each is not None],
        "weighings": _weighings(known),
    }


def _in_class(last: _Last) -> InClass:
    drill = last.drills[-1]
    return {
        "member": last.member,
        "on": drill["on"],
        "drills_count": len(last.drills),
        "bias": drill["whole"]["bias"],
        "spread": drill["whole"]["spread"],
        "within_half_percent": drill["whole"]["within_half_percent"],
        "weighing": last.weighing(),
    }


def _skill(sort: str, people: Sequence[_Last]) -> ClassSkill | None:
    known = [each for each in people if each.errors(sort)]
    if not known:
        return None
    groups = [each.errors(sort) for each in known]
    errors = [error for group in groups for error in group]
    told = _alone(errors) if len(groups) < 2 else _together(groups, errors)
    return {
        "sort": sort,
        "count": len(errors),
        "readers": [_reader(each, sort) for each in known],
        **told,
    }


def _reader(last: _Last, sort: str) -> OneReader:
    figures = last.drills[-1]["sorts"][sort]
    return {
        "member": last.member,
        "count": figures["count"],
        "bias": figures["bias"],
        "spread": figures["spread"],
    }


def _alone(errors: Sequence[Decimal]) -> _Told:
    """One person has nobody to differ from."""
    spread = repeat_sd(errors) if len(errors) > 1 else None
    return {
        **_NOTHING_TOLD,
        "bias": written(mean(errors, SHOWN_PLACES)),
        "bias_u": None if spread is None else _shown(spread / math.sqrt(len(errors))),
        "repeatability": None if spread is None else _shown(spread),
    }


def _together(groups: Sequence[Sequence[Decimal]], errors: Sequence[Decimal]) -> _Told:
    """Where people differ each counts as one observation, else all readings as one sample
    (H.5.2.4). Where nothing varies within a person, any step between two is a difference."""
    if len(errors) == len(groups):  # nobody read twice: people and repeats cannot be told apart
        return {**_NOTHING_TOLD, "bias": written(mean(errors, SHOWN_PLACES))}
    analysis = analysis_of([[product(error, _FINEST) for error in group] for group in groups])
    found, p = components_of(analysis), analysis.p
    differ = analysis.squares_between > 0 if p is None else p < DIFFER_BELOW
    doubt = mean_u_with_groups(analysis) if differ else mean_u_without_groups(analysis)
    return {
        "bias": written(_mean_of_means(groups) if differ else mean(errors, SHOWN_PLACES)),
        "bias_u": _divisions(doubt.u),
        "repeatability": _divisions(found.within_sd),
        "person_to_person": _divisions(found.between_sd),
        "is_set_to_zero": found.is_set_to_zero,
        "intermediate": _divisions(found.intermediate_sd),
        "p": None if p is None else significant(p, P_DIGITS),
        "differ": differ,
    }


def _mean_of_means(groups: Sequence[Sequence[Decimal]]) -> Decimal:
    """Each group counts once; over one denominator, so that nothing is rounded before."""
    all_counts = math.prod(len(group) for group in groups)
    sums = [product(total(group), Decimal(all_counts // len(group))) for group in groups]
    return divided(total(sums), Decimal(all_counts * len(groups)), SHOWN_PLACES)


def _divisions(finest: float) -> str:
    return _shown(finest / as_double(_FINEST))


def _shown(spread: float) -> str:
    return significant(spread, SPREAD_DIGITS)


def _weighings(people: Sequence[_Last]) -> list[ClassWeighing]:
    found: dict[tuple[str, ...], list[Weighed]] = {}
    for each in people:
        weighing = each.weighing()
        if weighing is not None and weighing["s"] is not None:
            key = (weighing["instrument"] or "", weighing["unit"], weighing["division"] or "")
            found.setdefault(key, []).append(weighing)
    return [_weighing(found[key]) for key in sorted(found)]


def _weighing(alike: Sequence[Weighed]) -> ClassWeighing:
    spreads = []
    for each in alike:
        s = as_double(parse_decimal(each["s"] or "0"))
        degrees = each["count"] - 1
        spreads.append(Spread(sum_of_squares=degrees * (s * s), degrees=degrees))
    first = alike[0]
    return {
        "instrument": first["instrument"],
        "unit": first["unit"],
        "division": first["division"],
        "people": len(alike),
        "count": sum(each["count"] for each in alike),
        "repeatability": significant(pooled_sd(spreads).sd, SPREAD_DIGITS),
    }
