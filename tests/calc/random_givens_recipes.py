"""Random questions about formulas and preparations; see random_givens.py."""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import Any

from tests.calc.random_givens_checks import maybe, number, several, sized

Given = dict[str, Any]


def share(c: Random) -> str:
    return c.choice(("100", "50", "60", "40", "2", "0", number(c, 0, 100), number(c, 0, 30)))


def line(c: Random) -> Given:
    made: Given = (
        {"amount": c.choice((sized(c), "0"))}
        if c.random() < 0.4
        else {"percent": share(c), "of": c.choice(("base", "whole"))}
    )
    bought = {"yield_percent": c.choice(("71", "247.5", "0", number(c, 1, 100)))}
    return {**made, "is_base": c.random() < 0.4, **(bought if c.random() < 0.3 else {})}


def formula(c: Random) -> Given:
    """Often one that can be solved: shares of the whole that add up, flours that are 100."""
    whole = {"whole": maybe(c, sized)}
    if c.random() < 0.2:
        first = c.randint(1, 99)
        lines = [{"percent": str(first)}, {"percent": str(100 - first)}]
        return {"lines": lines, **whole}
    if c.random() < 0.3:
        flour = {"percent": "100", "of": "base", "is_base": True}
        rest = several(c, lambda c: {"percent": share(c), "of": "base"})
        return {"lines": [flour, *rest], **whole}
    return {"lines": several(c, line), **whole}


def loss(c: Random) -> str:
    return c.choice(("0", "3", "12.5", "99.9", "100", "-1", number(c, 0, 99)))


def batch(c: Random) -> Given:
    def weighed(c: Random) -> Given:
        return {
            "line": c.choice("12"),
            "material": c.choice(("mango", "sugar")),
            "unit": c.choice(("g", "g", "mL", None)),
            "in_base": maybe(c, sized),
            "prepared": maybe(c, sized),
            "state": c.choice(("as_bought", "prepared", None)),
            "yields": maybe(c, lambda c: {"percent": "71", "prepared_as": c.choice("ab")}),
        }

    return {"recipe": c.choice(("jam", "chutney", None)), "lines": several(c, weighed)}


RANDOM_RECIPES: dict[tuple[str, str], Callable[[Random], Given]] = {
    ("formulas", "formula_trouble"): formula,
    ("formulas", "formula_amounts"): lambda c: {
        **formula(c),
        "factor": [sized(c), c.choice(("1", "3", "0.7"))],
        "places": c.randint(0, 6),
    },
    ("formulas", "good_factor"): lambda c: {
        "wanted": c.choice((sized(c), "0", "-1")),
        "makes": c.choice((sized(c), "0")),
        "loss_percent": loss(c),
    },
    ("formulas", "packs_of"): lambda c: {
        "makes": c.choice((sized(c), "0", "-1")),
        "net": c.choice((sized(c), "0.25", "0")),
        "loss_percent": loss(c),
    },
    ("preparations", "preparations_of"): lambda c: {
        "batches": several(c, batch),
        "material": "mango",
        "recipe": "jam",
        "prepared_as": maybe(c, lambda c: c.choice("ab")),
    },
}
