"""How the functions about formulas and preparations are called; see registry.py.

A line of a formula is `{amount}` or `{percent, of}`, with `is_base` and `yield_percent`.
"""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import Any

from kitchenlog.calc import formulas, preparations
from kitchenlog.calc.numbers import parse_decimal, written
from kitchenlog.calc.recipes import Factor

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def _d(text: str | None) -> Decimal | None:
    return None if text is None else parse_decimal(text)


def _w(x: Decimal | None) -> str | None:
    return None if x is None else written(x)


def _lines(g: Given) -> list[formulas.FormulaLine]:
    return [
        formulas.FormulaLine(
            amount=_d(line.get("amount")),
            percent=_d(line.get("percent")),
            percent_of=line.get("of", "whole"),
            is_base=line.get("is_base", False),
            yield_percent=parse_decimal(line.get("yield_percent", "100")),
        )
        for line in g["lines"]
    ]


def _amounts(g: Given) -> list[str]:
    wanted, base = g.get("factor", ["1", "1"])
    made = formulas.formula_amounts(
        _lines(g),
        whole=_d(g.get("whole")),
        factor=Factor(wanted=parse_decimal(wanted), base=parse_decimal(base)),
        places=g["places"],
    )
    return [written(each) for each in made]


def _good_factor(g: Given) -> Given:
    made = formulas.good_factor(
        parse_decimal(g["wanted"]),
        makes=parse_decimal(g["makes"]),
        loss_percent=parse_decimal(g["loss_percent"]),
    )
    return {"wanted": written(made.wanted), "base": written(made.base)}


def _preparations(g: Given) -> list[list[str | None]]:
    made = preparations.preparations_of(
        g["batches"],
        material=g["material"],
        recipe=g["recipe"],
        prepared_as=g["prepared_as"],
    )
    return [[_w(edible), _w(bought)] for edible, bought in made]


RECIPES_WRITTEN: dict[str, dict[str, Adapter]] = {
    "formulas": {
        "formula_trouble": lambda g: formulas.formula_trouble(_lines(g), _d(g.get("whole"))),
        "formula_amounts": _amounts,
        "good_factor": _good_factor,
        "packs_of": lambda g: written(
            formulas.packs_of(
                parse_decimal(g["makes"]),
                net=parse_decimal(g["net"]),
                loss_percent=parse_decimal(g["loss_percent"]),
            )
        ),
    },
    "preparations": {"preparations_of": _preparations},
}
