"""How the functions about instruments and what leans on them are called; see registry.py.

A check in a vector is the `sort` of its instrument, the `body` of its entry and the `fields` of
the definition. `instruments` are states by subject.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from kitchenlog.calc import (
    batch_doubts,
    deciding,
    heat_results,
    heat_trust,
    instrument_checks,
    instruments,
    trusted,
)
from kitchenlog.calc.calibration import Correction
from kitchenlog.calc.checks import CheckResult
from kitchenlog.calc.numbers import significant, written
from tests.calc.registry_folds import (
    doubt_json,
    entries_of,
    fold_adapter,
    lines_of,
    logs_of,
    steps_of,
    weighing_json,
)
from tests.calc.registry_heat import picked
from tests.calc.written import written_check

Given = dict[str, Any]
Adapter = Callable[[Given], Any]

_U_DIGITS = 4


def _result(g: Given) -> CheckResult:
    return instrument_checks.check_result(g["sort"], g["body"], g["fields"])


def _check_result(g: Given) -> dict[str, Any]:
    made = written_check(_result(g), _U_DIGITS)
    return {name: made[name] for name in g["show"]} if "show" in g else made


def _line(found: Correction | None, g: Given) -> dict[str, Any] | None:
    if found is None:
        return None
    made = dict(instrument_checks.written_correction(found, g.get("unit")))
    return {name: made[name] for name in g["show"]} if "show" in g else made


def _correction_found(g: Given) -> dict[str, Any] | None:
    return _line(instrument_checks.correction_found(g["body"], _result(g)), g)


def _error_found(g: Given) -> dict[str, Any] | None:
    return _line(instrument_checks.error_found(g["body"], _result(g)), g)


def _trusted(g: Given) -> trusted.TrustedReading | None:
    return trusted.trusted_reading(
        g["body"], happened_at=g["happened_at"], instruments=g["instruments"]
    )


def _trusted_log(g: Given) -> dict[str, Any]:
    made = heat_trust.trusted_log(
        g["body"], happened_at=g["happened_at"], instruments=g["instruments"]
    )
    return picked(dict(made), g)


def _trusted_reading(g: Given) -> dict[str, Any] | None:
    made = _trusted(g)
    if made is None:
        return None
    u = made.calibration_u
    return {
        "read": weighing_json(made.read),
        "value": written(made.value),
        "doubt": doubt_json(made.doubt),
        "calibration_u": None if u is None else significant(u, _U_DIGITS),
        "found_by": made.found_by,
        "is_extrapolated": made.is_extrapolated,
        "failed_by": made.failed_by,
        "moves": None if made.moves is None else written(made.moves),
    }


def _meant(g: Given) -> dict[str, Any] | None:
    made = _trusted(g)
    return None if made is None else weighing_json(trusted.meant(made, is_moved=g["is_moved"]))


def _deciding_check(g: Given) -> str | None:
    check = deciding.deciding_check(g["checks"], g["doubts"])
    return None if check is None else check["entry"]


# Sums: the twins are asked them at random, too.
INSTRUMENTS: dict[str, dict[str, Adapter]] = {
    "instrument_checks": {
        "check_result": _check_result,
        "checked_unit": lambda g: instrument_checks.checked_unit(g["sort"], g["body"]),
        "correction_found": _correction_found,
        "error_found": _error_found,
        "written_points": lambda g: instrument_checks.written_points(_result(g), g["body"]),
        "written_correction": _error_found,
    },
    "trusted": {
        "trusted_reading": _trusted_reading,
        "meant": _meant,
        "written_trust": lambda g: dict(trusted.written_trust(_trusted(g))),
    },
    "heat_trust": {"trusted_log": _trusted_log},
}

INSTRUMENT_FOLDS: dict[str, dict[str, Adapter]] = {
    "instruments": {"instrument_state": fold_adapter(instruments.instrument_state)},
    "deciding": {"deciding_check": _deciding_check},
    "batch_doubts": {
        "failed_instruments": lambda g: batch_doubts.failed_instruments(
            lines_of(g),
            steps_of(g),
            heat_results.heat_results(entries_of(g), logs_of(g))[0],
        )
    },
}
