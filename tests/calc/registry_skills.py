"""How the calculations about readers are called with what a vector gives; see registry.py.

A drill in a vector is the body of its entry, or the part of it the vector is about.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from kitchenlog.calc import drills, skill_class, skill_steps, skills
from tests.calc.registry_folds import fact_of

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def folded_drills(member: str, bodies: Sequence[Mapping[str, Any]]) -> skills.SkillState:
    """The sheet of a member whose drills are those, one a day in June 2026."""
    facts = [
        fact_of(
            {
                "id": f"d{number}",
                "kind": "drill_done",
                "happened_at": f"2026-06-{number:02}T08:00:00.000Z",
                "body": {**body, "member": member},
            }
        )
        for number, body in enumerate(bodies, start=1)
    ]
    return skills.skill_state(f"skill:{member}", facts)


def _improved_between(g: Given) -> Any:
    before, now = folded_drills("ana", [g["before"], g["now"]])["drills"]
    return skill_steps.improved_between(before, now)


def _skill_state(g: Given) -> Any:
    state = skills.skill_state(g["subject"], [fact_of(each) for each in g["facts"]])
    return {name: state[name] for name in g["show"]} if "show" in g else state


def _class_figures(g: Given) -> Any:
    states = [folded_drills(member, bodies) for member, bodies in g["members"].items()]
    made = skill_class.class_figures(states)
    return {name: made[name] for name in g.get("show", made)}  # type: ignore[literal-required]


SKILLS: dict[str, dict[str, Adapter]] = {
    "skills": {
        "skill_state": _skill_state,
        "score_of": lambda g: skills.score_of(g["question"]),
        "reader_figures": lambda g: skills.reader_figures(
            [skills.score_of(each) for each in g["questions"]]
        ),
        "summed_drills": lambda g: skills.summed_drills(
            folded_drills("ana", g["drills"])["drills"]
        ),
    },
    "skill_class": {"class_figures": _class_figures},
    "drills": {
        "drill_questions": lambda g: drills.drill_questions(g["seed"], g["drawn_by"]),
    },
    "skill_steps": {"improved_between": _improved_between},
}
