"""How the functions about what is held back, and what a step's check is worked out from, are
called; see registry.py."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from kitchenlog.calc import (
    against,
    batch_holds,
    batch_lines,
    batch_steps,
    batch_strength,
    heat_holds,
    holds,
    record,
    step_values,
    trusted,
)
from kitchenlog.calc.brine import Strength
from kitchenlog.calc.numbers import parse_decimal, significant, written
from tests.calc.registry_folds import (
    doubt_json,
    entries_of,
    fact_of,
    lines_of,
    logs_of,
    steps_of,
    weighing_json,
)

Given = dict[str, Any]
Adapter = Callable[[Given], Any]

_U_DIGITS = 4
_AT = "2026-06-01T08:00:00.000Z"


def _facts(g: Given) -> list[record.Fact]:
    return [fact_of(each) for each in g["facts"]]


def _hold_state(g: Given) -> dict[str, Any]:
    facts = _facts(g)
    standing = record.as_it_stands(facts).standing
    made = dict(holds.hold_state(g["subject"], facts, standing))
    return {name: made[name] for name in g["show"]} if "show" in g else made


def _hold_of(g: Given) -> holds.Hold:
    return holds.hold_of(g["causes"], g["decisions"])


def _decided_findings(g: Given) -> list[str]:
    """The keys of those that are settled; a key ends with a step, of a log with its entry."""
    parts = [(key, *key.split(":")) for key in g["keys"]]
    findings = [
        record.finding(key, what, entry=about, detail={"step": about})
        for key, what, about in parts
    ]
    made = holds.decided_findings(findings, _hold_of(g))
    return [f"{each['key']} {each.get('settled_by')}" for each in made if each["is_settled"]]


def _strength_from(given: dict[str, Any] | None) -> Strength | None:
    if given is None:
        return None
    return Strength(percent=parse_decimal(given["percent"]), u=float(given["u"]))


def _value(g: Given) -> step_values.StepValue | None:
    return step_values.step_value(
        g["plan"],
        g["body"],
        trusted.trusted_reading(g["body"], happened_at=_AT, instruments={}),
        strength=_strength_from(g.get("strength")),
    )


def _step_value(g: Given) -> dict[str, Any] | None:
    made = _value(g)
    if made is None:
        return None
    return {
        "how": made.how,
        "raw": weighing_json(made.raw),
        "value": weighing_json(made.value),
        "table": made.table,
        "bases": [each.basis for each in made.cited],
    }


def _step_strength(g: Given) -> dict[str, Any] | None:
    made = batch_strength.step_strength(steps_of(g)[0], lines_of(g))
    return made and {"percent": written(made.percent), "u": significant(made.u, _U_DIGITS)}


def _put_in(g: Given) -> dict[str, Any]:
    made = batch_lines.line_put_in(lines_of(g)[0], is_moved=g.get("is_moved", False))
    amount = made.amount
    return {
        "amount": None if amount is None else [written(amount.value), amount.unit],
        "doubt": doubt_json(made.doubt),
    }


def _failed_checks(g: Given) -> list[dict[str, Any]]:
    facts = _facts(g)
    entries = list(record.as_it_stands(facts).standing)
    steps = batch_steps.gathered_steps(g["steps"], entries, {})
    made = batch_holds.failed_checks(steps, facts, g["batch"], {})
    return [
        {name: each[name] for name in ("entry", "what", "step", "reason", "stands")}
        for each in made
    ]


def _causes_json(causes: list[holds.Cause]) -> list[dict[str, Any]]:
    shown = ("entry", "what", "step", "judged_by", "reason", "stands")
    return [{name: each[name] for name in shown} for each in causes]


def _batch_heat(g: Given) -> dict[str, Any]:
    made = heat_holds.batch_heat(_facts(g), entries_of(g), "b1", g.get("instruments", {}))
    return {
        "verdicts": [[each["entry"], each["verdict"]] for each in made.results],
        "finding_keys": [each["key"] for each in made.findings],
        "causes": _causes_json(made.causes),
    }


HOLDS: dict[str, dict[str, Adapter]] = {
    "holds": {
        "hold_state": _hold_state,
        "hold_of": _hold_of,
        "held_findings": lambda g: holds.held_findings(_hold_of(g)),
        "decided_findings": _decided_findings,
        "ever_written": lambda g: [
            [each.root, each.fact.id, each.body]
            for each in holds.ever_written(_facts(g), g["kind"])
        ],
    },
    "batch_holds": {"failed_checks": _failed_checks},
    "heat_holds": {
        "batch_heat": _batch_heat,
        "failed_logs": lambda g: _causes_json(heat_holds.failed_logs(logs_of(g))),
    },
    "batch_strength": {"step_strength": _step_strength},
    "against": {
        "reasons_against": lambda g: against.reasons_against(g["lot"], g["batch"], g["on"])
    },
    "step_values": {
        "step_value": _step_value,
        "value_verdict": lambda g: step_values.value_verdict(g["plan"], _value(g)),
    },
}

# What stands in files whose other functions are called by registry_folds.py.
MORE: dict[str, dict[str, Adapter]] = {
    "batch_lines": {"line_put_in": _put_in},
    "batch_steps": {
        "step_verdict": lambda g: batch_steps.step_verdict(
            steps_of(g)[0], g["body"], happened_at=_AT, instruments={}
        )
    },
}
