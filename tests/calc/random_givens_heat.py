"""Random questions about heat and cold; see random_givens.py.

Logs are short and near the limits, with seconds that come twice: there the two could part.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import Any

Given = dict[str, Any]

BITS = 17
USES = (
    "f0", "f0_250_f", "acidified_from_4_1", "acidified_below_4_1", "beer", "beer_1_393",
    "acid_foods", "tomato_beverages", "pickle_quality",
)  # fmt: skip
RULES = ("stage_1", "whole", "ambient", "received", "hot", "cold", "time_4_h", "time_6_h", "")
MARKS = (5, 21, 57, 74)


def temperature(c: Random, unit: str) -> str:
    celsius = c.choice((c.choice(MARKS), c.uniform(-5, 125), c.uniform(2, 60)))
    degrees = celsius * 1.8 + 32 if unit == "degF" else celsius
    return f"{degrees:.{c.randint(0, 3)}f}"


def log(c: Random) -> Given:
    unit = c.choice(("degC", "degC", "degF", "K" if c.random() < 0.1 else "degC"))
    step = c.choice((60, 300, 1800, 5000))
    rows = [
        [c.randrange(9) * step + c.choice((0, 0, 7)), temperature(c, unit)]
        for _ in range(c.randint(0, 9))
    ]
    return {"unit": unit, "rows": rows, "digits": BITS}


def falling(c: Random) -> Given:
    """A log that mostly cools, so that crossings come up."""
    unit = c.choice(("degC", "degF"))
    second, celsius, rows = 0, c.choice((57.0, 61.5, 90.0)), []
    while celsius > 2 and len(rows) < 14:
        degrees = celsius * 1.8 + 32 if unit == "degF" else celsius
        rows.append([second, f"{degrees:.{c.randint(0, 2)}f}"])
        second += c.choice((300, 600, 1500, 3600))
        celsius = c.choice((celsius - c.choice((1, 4, 12)), celsius * 0.8, celsius + 2, 21, 5))
        celsius = 76.0 if c.random() < 0.03 else celsius
    c.shuffle(rows)
    return {"unit": unit, "rows": rows, "digits": BITS}


def reference(c: Random) -> Given:
    if c.random() < 0.6:
        return {"use": c.choice(USES)}
    own = {"t_ref": f"{c.uniform(50, 250):.1f}", "z": c.choice(("0", "5", "8.9", "18"))}
    return {"own": {**own, "unit": c.choice(("degC", "degF"))}}


def maybe_longest(c: Random) -> Given:
    return {"longest_s": c.choice((0, 300, 1800))} if c.random() < 0.5 else {}


def held(c: Random) -> Given:
    unit = c.choice(("degC", "degF"))
    return {"temperature": temperature(c, unit), "unit": unit, **reference(c), "digits": BITS}


def number(c: Random) -> str:
    return f"{c.uniform(0, 90):.{c.randint(0, 3)}f}"


def ph(c: Random) -> str:
    return c.choice(("4.1", "4.6", "4.0", f"{c.uniform(3, 6):.2f}"))


def control(c: Random) -> Given:
    out = c.randrange(6) * 900
    used = out + c.choice((-1, 0, 1800, 14399, 14400, 21600, c.randrange(22000)))
    return {**log(c), "sort": c.choice(("time_4_h", "time_6_h")), "out_s": out, "used_s": used}


HEAT_GIVENS: dict[tuple[str, str], Callable[[Random], Given]] = {
    ("heat_logs", "heat_log"): log,
    ("heat_logs", "in_thousandths"): lambda c: {
        "text": c.choice((temperature(c, "degC"), "-0.0", "1e3", "1.2345", ".5", "12345", "٣"))
    },
    ("heat_logs", "limit_in_thousandths"): lambda c: {
        "celsius": temperature(c, "degC"), "unit": c.choice(("degC", "degF"))
    },
    ("heat_logs", "gaps"): lambda c: {**log(c), "longest_s": c.choice((0, 300, 1800))},
    ("heat_logs", "degrees_at"): lambda c: {
        "unit": "degC", "rows": [[9, temperature(c, "degC")] for _ in range(3)], "row": 0,
        "digits": BITS,
    },
    ("heat_logs", "outline"): lambda c: {**falling(c), "columns": c.randint(0, 5)},
    ("process_limits", "process_limit"): lambda c: {
        "key": c.choice(("acid_ph", "juice_log", "low_acid_f0", "constructor"))
    },
    ("lethality", "reference_of"): lambda c: {"use": c.choice((*USES, "toString"))},
    ("lethality", "own_reference"): lambda c: {"own": {
        "t_ref": number(c), "z": c.choice(("0", number(c))), "unit": c.choice(("degC", "K"))
    }},
    ("lethality", "acidified_reference"): lambda c: {"ph": ph(c)},
    ("lethality", "lethal_rate"): held,
    ("lethality", "lethality"): lambda c: {**log(c), **reference(c), **maybe_longest(c)},
    ("lethality", "lethality_so_far"): lambda c: {**log(c), **reference(c), **maybe_longest(c)},
    ("lethality", "sterilizing_value"): log,
    ("lethality", "five_log"): lambda c: {**log(c), "ph": ph(c)},
    ("lethality", "equivalent_minutes"): lambda c: {**held(c), "minutes": number(c)},
    ("lethality", "minutes_at"): lambda c: {**held(c), "reference_min": number(c)},
    ("lethality", "log_reduction"): lambda c: {
        "minutes": repr(c.random() * 40), "d_min": c.choice(("0", number(c))), "digits": BITS
    },
    ("lethality", "minutes_of_equal_steps"): lambda c: {
        "rate_sum": number(c), "step_min": number(c), "digits": BITS
    },
    ("lethality", "written_lethality"): lambda c: {**log(c), **reference(c)},
    ("cooling", "two_stage_cooling"): lambda c: c.choice((log, falling, falling))(c),
    ("cooling", "one_stage_cooling"): lambda c: {
        **c.choice((log, falling))(c),
        "rule": c.choice(("ambient", "received", "hope")),
        "begin_s": c.choice((0, 1, 3600, 99999)),
    },
    ("cooling", "cooling_row"): lambda c: {"rule": c.choice(RULES)},
    ("holding", "holding_of"): lambda c: {
        **c.choice((log, falling))(c), "sort": c.choice(("hot", "cold")), **maybe_longest(c)
    },
    ("holding", "time_control"): control,
}  # fmt: skip
