"""How the functions about heat and cold are called with what a vector gives; see registry.py.

A log in a vector is its `unit` and `rows` of a second and a temperature. `show` names fields
of the result a vector is about; a cited row is told as "rule: basis".
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict
from decimal import Decimal
from typing import Any

from kitchenlog.calc import (
    cooling,
    heat_judged,
    heat_logs,
    holding,
    lethality,
    logger_cells,
    logger_files,
    logger_times,
    process_limits,
)
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import parse_decimal, significant, written

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def _d(text: str | None) -> Decimal | None:
    return None if text is None else parse_decimal(text)


def _w(x: Decimal | None) -> str | None:
    return None if x is None else written(x)


def log_of(g: Given) -> heat_logs.HeatLog:
    rows = g["rows"]
    return heat_logs.heat_log([row[0] for row in rows], [row[1] for row in rows], g["unit"])


def picked(made: Given, g: Given) -> Given:
    return {name: made[name] for name in g["show"]} if "show" in g else made


def _cited(cited: Cited) -> str:
    return f"{cited.what}: {cited.basis}"


def _log_json(log: heat_logs.HeatLog) -> Given:
    return {name: list(v) if isinstance(v, tuple) else v for name, v in asdict(log).items()}


def _maybe_log(log: heat_logs.HeatLog | None) -> Given | None:
    return None if log is None else _log_json(log)


def _gaps_json(found: tuple[heat_logs.Gap, ...]) -> list[list[int]]:
    return [[gap.from_s, gap.to_s] for gap in found]


def _reference(g: Given) -> lethality.Reference:
    if "use" in g:
        return lethality.reference_of(g["use"])
    own = g["own"]
    return lethality.own_reference(_d(own["t_ref"]), z=_d(own["z"]), unit=own["unit"])


def _reference_json(reference: lethality.Reference | None) -> Given | None:
    return reference and {
        "t_ref": written(reference.t_ref),
        "z": written(reference.z),
        "unit": reference.unit,
        "base": _w(reference.base),
        "needed_min": _w(reference.needed_min),
        "cited": [_cited(each) for each in reference.cited],
    }


def _lethality_json(found: lethality.Lethality, g: Given) -> Given:
    return {
        "minutes": significant(found.minutes, g["digits"]),
        "bridged_min": significant(found.bridged_min, g["digits"]),
        "gaps": _gaps_json(found.gaps),
        "contradicted_count": found.contradicted_count,
        "reference": _reference_json(found.reference),
    }


def _lethality(g: Given) -> lethality.Lethality:
    return lethality.lethality(log_of(g), _reference(g), g.get("longest_s", heat_logs.GAP_S))


def _sterilizing(g: Given) -> Given:
    found = lethality.sterilizing_value(log_of(g))
    return {
        name: picked(_lethality_json(each, g), g)
        for name, each in (("at_121_1", found.at_121_1), ("at_250_f", found.at_250_f))
    }


def _five_log(g: Given) -> Given | None:
    found = lethality.five_log(log_of(g), _d(g["ph"]))
    return found and {
        "lethality": picked(_lethality_json(found.lethality, g), g),
        "log_reduction": significant(found.log_reduction, g["digits"]),
    }


def _held(g: Given) -> lethality.Held:
    return lethality.Held(temperature=_d(g["temperature"]), unit=g["unit"])


def _stage_json(stage: cooling.Stage) -> Given:
    return {
        "rule": stage.rule,
        "end_celsius": written(stage.end_celsius),
        "limit_min": written(stage.limit_min),
        "verdict": stage.verdict,
        "reason": stage.reason,
        "minutes": _w(stage.minutes),
        "at_least_min": _w(stage.at_least_min),
        "at_most_min": _w(stage.at_most_min),
        "cited": _cited(stage.cited),
    }


def _cooling_json(found: cooling.Cooling, g: Given) -> Given:
    return {
        "verdict": found.verdict,
        "stages": [picked(_stage_json(stage), g) for stage in found.stages],
        "reheated_count": found.reheated_count,
        "contradicted_count": found.contradicted_count,
    }


def _holding(g: Given) -> Given:
    found = holding.holding_of(log_of(g), g["sort"], g.get("longest_s", holding.HOLD_GAP_S))
    return {
        "verdict": found.verdict,
        "outside": [
            [each.from_s, each.to_s, significant(each.worst, g["digits"])]
            for each in found.outside
        ],
        "outside_min": significant(found.outside_min, g["digits"]),
        "gaps": _gaps_json(found.gaps),
        "cited": _cited(found.cited),
    }


def _time_control(g: Given) -> Given:
    found = holding.time_control(log_of(g), g["sort"], out_s=g["out_s"], used_s=g["used_s"])
    return {
        "verdict": found.verdict,
        "reasons": list(found.reasons),
        "discard_s": found.discard_s,
        "cited": _cited(found.cited),
    }


def _logger_log(g: Given) -> Given:
    asked = logger_files.Asked(**g.get("asked", {}))
    made = asdict(logger_files.logger_log(g["text"], asked))
    lists = {name: list(v) if isinstance(v, tuple) else v for name, v in made.items()}
    return lists if "key" in lists else picked(lists, g)


def _moments(g: Given) -> list[logger_times.Moment]:
    found = [logger_times.moment_of(text) for text in g["texts"]]
    return [moment for moment in found if moment is not None]


def _together(g: Given) -> list[int] | None:
    found = logger_times.together(_moments(g))
    return None if found is None else list(found)


def _moment_json(g: Given) -> Given | None:
    found = logger_times.moment_of(g["text"])
    return found and asdict(found)


def _heat_json(g: Given) -> Given | None:
    found = logger_cells.heat_of(g["cell"])
    return found and asdict(found)


HEAT: dict[str, dict[str, Adapter]] = {
    "logger_cells": {
        "delimiter_of": lambda g: logger_cells.delimiter_of(g["lines"]),
        "cells_of": lambda g: list(logger_cells.cells_of(g["line"], g["delimiter"])),
        "number_of": lambda g: logger_cells.number_of(g["cell"]),
        "heat_of": _heat_json,
    },
    "logger_times": {
        "moment_of": _moment_json,
        "fits": lambda g: logger_times.fits(*_moments(g)),
        "together": _together,
        "is_day_known": lambda g: logger_times.is_day_known(_moments(g)),
        "written_time": lambda g: logger_times.written_time(g["second"]),
    },
    "logger_files": {"logger_log": _logger_log},
    "heat_logs": {
        "heat_log": lambda g: _log_json(log_of(g)),
        "log_in": lambda g: _maybe_log(heat_logs.log_in(g["body"])),
        "in_thousandths": lambda g: heat_logs.in_thousandths(g["text"]),
        "limit_in_thousandths": lambda g: heat_logs.limit_in_thousandths(
            _d(g["celsius"]), g["unit"]
        ),
        "gaps": lambda g: _gaps_json(heat_logs.gaps(log_of(g), g["longest_s"])),
        "degrees_at": lambda g: [
            significant(each, g["digits"]) for each in heat_logs.degrees_at(log_of(g), g["row"])
        ],
        "outline": lambda g: list(heat_logs.outline(log_of(g), g["columns"])),
    },
    "heat_judged": {
        "judged_log": lambda g: picked(dict(heat_judged.judged_log(g["body"])), g),
    },
    "process_limits": {
        "process_limit": lambda g: asdict(process_limits.process_limit(g["key"])),
    },
    "lethality": {
        "reference_of": lambda g: _reference_json(lethality.reference_of(g["use"])),
        "own_reference": lambda g: _reference_json(_reference(g)),
        "acidified_reference": lambda g: _reference_json(
            lethality.acidified_reference(_d(g["ph"]))
        ),
        "lethal_rate": lambda g: significant(
            lethality.lethal_rate(_held(g), _reference(g)), g["digits"]
        ),
        "lethality": lambda g: picked(_lethality_json(_lethality(g), g), g),
        "lethality_so_far": lambda g: [
            significant(each, g["digits"])
            for each in lethality.lethality_so_far(
                log_of(g), _reference(g), g.get("longest_s", heat_logs.GAP_S)
            )
        ],
        "sterilizing_value": _sterilizing,
        "five_log": _five_log,
        "equivalent_minutes": lambda g: significant(
            lethality.equivalent_minutes(_d(g["minutes"]), _held(g), _reference(g)), g["digits"]
        ),
        "minutes_at": lambda g: significant(
            lethality.minutes_at(_d(g["reference_min"]), _held(g), _reference(g)), g["digits"]
        ),
        "log_reduction": lambda g: significant(
            lethality.log_reduction(float(g["minutes"]), _d(g["d_min"])), g["digits"]
        ),
        "minutes_of_equal_steps": lambda g: significant(
            lethality.minutes_of_equal_steps(_d(g["rate_sum"]), step_min=_d(g["step_min"])),
            g["digits"],
        ),
        "written_lethality": lambda g: lethality.written_lethality(_lethality(g), g["digits"]),
    },
    "cooling": {
        "two_stage_cooling": lambda g: _cooling_json(cooling.two_stage_cooling(log_of(g)), g),
        "one_stage_cooling": lambda g: _cooling_json(
            cooling.one_stage_cooling(log_of(g), g["rule"], g["begin_s"]), g
        ),
        "cooling_row": lambda g: asdict(cooling.cooling_row(g["rule"])),
    },
    "holding": {"holding_of": _holding, "time_control": _time_control},
}
