"""Salt or sugar in percent of what was weighed into a batch, for the steps that ask for it."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from kitchenlog.calc.batch_lines import LineSum, LineWork, line_put_in
from kitchenlog.calc.batch_steps import StepWork
from kitchenlog.calc.bodies import decimal_in, items_in, text_in
from kitchenlog.calc.brine import Strength, Weighed, weighed_strength
from kitchenlog.calc.numbers import ZERO
from kitchenlog.calc.step_values import WEIGHED


def step_strength(step: StepWork, lines: Sequence[LineWork]) -> Strength | None:
    """Percent by mass of all lines by mass together; `counts` of the step says how much of a
    line is salt or sugar, of the others nothing is. None while a line is not weighed in, where
    one has no known doubt, and for a step that asks for something else."""
    if text_in(step.plan, "measures") not in WEIGHED:
        return None
    counts = {
        text_in(each, "line"): decimal_in(each, "percent") or ZERO
        for each in items_in(step.plan, "counts")
    }
    parts: list[Weighed] = []
    for line in lines:
        if line.unit != "g":
            continue
        part = _part(_mass(line), counts.get(line.line, ZERO))
        if part is None:
            return None
        parts.append(part)
    return weighed_strength(parts)


def _mass(line: LineWork) -> LineSum:
    """As it went into the kettle: prepared, where a step weighed that."""
    prepared = line.prepared
    if prepared is None:
        return line_put_in(line)
    return LineSum(amount=prepared.amount, doubt=prepared.doubt)


def _part(mass: LineSum, percent: Decimal) -> Weighed | None:
    if mass.amount is None or mass.doubt is None:
        return None
    return Weighed(amount=mass.amount.value, percent=percent, u=mass.doubt.u)
