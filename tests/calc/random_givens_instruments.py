"""Random questions about checks of instruments and readings that lean on them; see
random_givens.py. Values are near limits and often alike: there a verdict could part."""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import Any

from tests.calc.random_givens_heat import heat_body

Given = dict[str, Any]

SORTS = ("scale", "thermometer", "ph_meter", "refractometer", "spoon", "cup", "cylinder", None)
STEPS = (
    "zero", "tare", "rising", "falling", "off_centre", "return_to_zero", "repeats", "water",
    "ice", "boiling", "buffer", "comparison",
)  # fmt: skip
STEPS_OF = {
    "scale": STEPS[:7], "thermometer": ("ice", "boiling", "comparison"),
    "ph_meter": ("buffer",), "refractometer": ("comparison",),
}  # fmt: skip
LINES = (None, "none", "offset", "two_point", "least_squares")
TIMES = tuple(f"2026-06-0{day}T08:00:00.000Z" for day in range(1, 6))


def maybe(c: Random, value: Any, chance: float = 0.8) -> dict[str, Any]:
    return value if c.random() < chance else {}


def near(c: Random, value: float) -> str:
    """What an instrument shows that is a little off, or not."""
    return f"{value + c.choice((0, 0, 0.1, -0.3, c.uniform(-2, 2))):.{c.choice((0, 1, 2))}f}"


def step(c: Random, sort: str | None) -> Given:
    named = c.choice(STEPS_OF.get(sort or "", ("water",)) if c.random() < 0.9 else STEPS)
    true = c.choice((0.0, 4.01, 7.0, 100.0, 236.6, 500.0, 1000.0))
    shown = [near(c, true) for _ in range(c.choice((1, 1, 2, 5, 6)))]
    return {
        "sort": named,
        "readings": shown,
        **maybe(c, {"reference": f"{true:.2f}"}),
        **maybe(c, {"tolerance": c.choice(("0.03", "0.5", "0"))}, 0.5),
        **maybe(c, {"celsius": f"{c.uniform(-2, 45):.1f}"}),
        **maybe(c, {"division": c.choice(("0.1", "1"))}),
        **maybe(c, {"tare": near(c, 20)}, 0.3),
        **maybe(c, {"altitude_m": str(c.randrange(-400, 3500))}, 0.5),
        **maybe(c, {"pressure_hpa": str(c.randrange(650, 1090))}, 0.3),
        **maybe(c, {"millivolts": str(c.randrange(-200, 200))}, 0.3),
    }


def known(c: Random) -> Given:
    return {
        **maybe(c, {"division": c.choice(("0.1", "1", "2", "0"))}),
        **maybe(c, {"capacity": c.choice(("300", "5000", "30000"))}),
        **maybe(c, {"interval": c.choice(("1", "2"))}, 0.3),
        **maybe(c, {"accuracy_class": c.choice(("I", "II", "III", "IIII", "A", "B"))}, 0.5),
        **maybe(c, {"repeatability": c.choice(("0.2", "1"))}, 0.3),
        **maybe(
            c, {"judged_by": c.choice(("r76_in_service", "r76_initial", "hb133", "own"))}, 0.6
        ),
        **maybe(c, {"most_error": c.choice(("0.5", "2"))}, 0.6),
        **maybe(c, {"holds": {"amount": c.choice(("100", "1")), "unit": "mL"}}),
    }


def check(c: Random) -> Given:
    sort = c.choice(SORTS)
    line = c.choice(LINES)
    body = {
        "unit": c.choice(("g", "g", "kg", "degC", "degF", "pH")),
        "steps": [step(c, sort) for _ in range(c.randrange(7))],
        **({} if line is None else {"line": line}),
        **maybe(c, known(c), 0.3),
    }
    return {"sort": sort, "body": body, "fields": known(c), "unit": body["unit"]}


def line(c: Random) -> Given:
    centre = c.uniform(0, 600)
    spread = c.choice((0.0, 0.05, c.uniform(0, 2)))
    return {
        "unit": c.choice(("g",) * 9 + ("degC",)),
        "sort": "least_squares",
        "terms": 2,
        "count": c.randint(1, 6),
        "centre": f"{centre:.12f}",
        "height": f"{c.uniform(-3, 3):.12f}",
        "slope": c.choice(
            ("0", "1e30", f"{c.uniform(-0.01, 0.01):.15f}", "0.0000000000000000012")
        ),
        "sum_xx": c.choice(("0", f"{c.uniform(1, 90000):.9f}")),
        "sd": c.choice((None, f"{spread:.9f}")),
        "degrees": c.choice((None, 1, 4)),
        "low": f"{centre - 200:.3f}",
        "high": f"{centre + 200:.3f}",
        "is_significant": c.choice((True, True, True, False, None)),
    }


def sheet(c: Random) -> Given:
    corrections = [
        {
            "since": since,
            "check": f"c{number}",
            "unit": c.choice(("g", None)),
            "line": c.choice((None, *(line(c) for _ in "1234"))),
            "found_by": f"c{number}",
            "repeatability": c.choice((None, "0.5")),
        }
        for number, since in enumerate(sorted(c.sample(TIMES, c.randint(1, 3))))
    ]
    doubts = [
        {
            "check": f"f{number}",
            "failed_at": c.choice(TIMES),
            "after": c.choice((None, *TIMES)),
            "until": c.choice((None, *TIMES)),
            "line": c.choice((None, *(line(c) for _ in "1234"))),
        }
        for number in range(c.randrange(3))
    ]
    return {"corrections": corrections, "doubts": doubts}


def reading(c: Random) -> Given:
    return {
        "shown": f"{c.uniform(0, 900):.{c.choice((0, 1, 6))}f}",
        "unit": c.choice(("g",) * 8 + ("kg", "degC")),
        "instrument": c.choice(("i1", "i1", "i1", "i2")),
        **maybe(c, {"division": c.choice(("0.1", "1", "0"))}),
        **maybe(c, {"tare": f"{c.uniform(0, 200):.1f}"}, 0.5),
        **maybe(c, {"repeats": [near(c, 500) for _ in range(c.randrange(4))]}, 0.3),
        **maybe(c, {"repeatability": "0.3"}, 0.3),
    }


def leaning(c: Random) -> Given:
    counted = {"counted": {"amount": "3", "unit": "pc"}}
    body = c.choice(({"reading": reading(c)},) * 8 + (counted, {}))
    return {
        "body": body,
        "happened_at": c.choice(TIMES),
        "instruments": {"instrument:i1": sheet(c)},
        "is_moved": c.random() < 0.5,
    }


def heated(c: Random) -> Given:
    """A log, its thermometer named or not, beside a sheet whose lines are of degrees."""
    about = {
        **maybe(c, {"division": c.choice(("0.1", "1", "0", "0.01"))}, 0.8),
        **maybe(c, {"instrument": c.choice(("i1", "i1", "i2"))}, 0.9),
        **maybe(c, {"repeatability": "0.3"}, 0.3),
        **maybe(c, {"began_at": c.choice((*TIMES, "soon"))}, 0.5),
    }
    made = sheet(c)
    for row in (*made["corrections"], *made["doubts"]):
        if row["line"] is not None:
            row["line"] |= {"unit": c.choice(("degC", "degC", "degF", "g")), "centre": "40"}
    return {
        "body": {**heat_body(c), **about},
        "happened_at": c.choice(TIMES),
        "instruments": {"instrument:i1": made},
    }


RANDOM_INSTRUMENTS: dict[tuple[str, str], Callable[[Random], Given]] = {
    ("instrument_checks", "check_result"): check,
    ("instrument_checks", "checked_unit"): check,
    ("instrument_checks", "correction_found"): check,
    ("instrument_checks", "error_found"): check,
    ("instrument_checks", "written_points"): check,
    ("instrument_checks", "written_correction"): check,
    ("trusted", "trusted_reading"): leaning,
    ("trusted", "meant"): leaning,
    ("trusted", "written_trust"): leaning,
    ("heat_trust", "trusted_log"): heated,
}
