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
BYS = (
    "lethality", "lethality", "two_stage_cooling", "ambient_cooling", "received_cooling",
    "hot_hold", "cold_hold", "time_4_h", "time_6_h",
)  # fmt: skip
UNITS = ("degC", "degF")
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


def judged(c: Random) -> Given:
    """Mostly whole; parts of other rules beside, as a careless phone would write them."""
    own = {"t_ref": number(c), "z": c.choice(("0", "10")), "reference_unit": c.choice(UNITS)}
    asked = {
        "by": c.choice((*BYS, "frozen")),
        "set_by": "the code",
        **({"reference": c.choice((*USES, "own", "own"))} if c.random() < 0.9 else {}),
        **(own if c.random() < 0.8 else {}),
        **({"wanted_min": number(c)} if c.random() < 0.6 else {}),
        **({"from_s": c.randrange(9) * 900} if c.random() < 0.8 else {}),
        **({"to_s": c.randrange(30) * 900} if c.random() < 0.8 else {}),
    }
    return {"judged": asked} if c.random() < 0.95 else {}


def heat_body(c: Random) -> Given:
    made = c.choice((log, falling))(c)
    at_s, temperatures = [row[0] for row in made["rows"]], [row[1] for row in made["rows"]]
    if c.random() < 0.03:
        temperatures = temperatures[1:]
    rows = {"unit": made["unit"], "at_s": at_s, "temperatures": temperatures}
    left_out = {"left_out": c.randrange(3)} if c.random() < 0.3 else {}
    return {**rows, **left_out, **judged(c)}


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


def moment(c: Random) -> str:
    day, month = c.randrange(33), c.randrange(14)
    days = (
        f"2026-{month:02}-{day:02}",
        f"{day}.{month}.26",
        f"{c.randrange(14)}/{month}/2026",
        f"{day}-{month}-99",
    )
    ending = c.choice(("", ":07", ":59.5", " PM", "am"))
    clock = f"{c.randrange(26)}:{c.randrange(62):02}{ending}"
    zone = c.choice(("", "", "", "Z", "+08:00", " -0330", "-00:00"))
    return c.choice((clock, c.choice(days), f"{c.choice(days)}{c.choice('T ,')}{clock}{zone}"))


def read_cell(c: Random) -> str:
    return c.choice((
        temperature(c, "degC"), temperature(c, "degC").replace(".", ","), "60 °C", "140F",
        "---", "", "NaN", "sixty", "+5", "\u22125.5", "12345", "1.23456", "\"60\"", "1,234.5",
    ))  # fmt: skip


def one_form(c: Random) -> Callable[[int], str]:
    """How one logger writes its times; now and then a row differs."""
    day = c.choice(("2026-11-1{} 0", "1{}.11.2026 0", "1{}/11/2026 0", "11/0{}/26 0", "0"))
    step = c.choice(("{}", "{}.5", "{day}{}:00", "{day}{}:0{}:30"))
    return lambda n: step.replace("{day}", day).replace("{}", str(n % 10))


def csv_text(c: Random) -> str:
    sign = c.choice(",;\t|;")
    form = one_form(c)
    rows = [[form(n), read_cell(c) if c.random() < 0.3 else f"{60 + n}"] for n in range(8)]
    rows = rows[: c.randint(0, 8)]
    if c.random() < 0.3:
        rows = [[str(n), *row] for n, row in enumerate(rows)]
    labels = c.choice((
        ["Time (min)", "Temp °C"], ["Time [s]", "Core F"], ["t", "T"], ["No.", "h", "probe"],
    ))  # fmt: skip
    if c.random() < 0.1:
        rows.append([moment(c), "61", "x"])
    head = c.choice(("", "\ufeff", "Logger 7\r\n\r\n", "Serial;12\n"))
    body = c.choice(("\n", "\r\n", "\r")).join(sign.join(r) for r in [labels, *rows])
    return head + body


def asked(c: Random) -> Given:
    if c.random() < 0.7:
        return {}
    return {"asked": {
        "time_column": c.choice((None, 0, 1, -1, 7)),
        "temperature_column": c.choice((None, 1, 2)),
        "time_unit": c.choice((None, "s", "h")),
    }}  # fmt: skip


def dated(c: Random) -> list[str]:
    first, second = (c.choice(("13", "5", "05", "11")) for _ in "ab")
    return [f"{first}/{c.choice((second, '12'))}/2026 0{c.randrange(9)}:00" for _ in "123"]


HEAT_GIVENS: dict[tuple[str, str], Callable[[Random], Given]] = {
    ("heat_logs", "heat_log"): log,
    ("heat_logs", "log_in"): lambda c: {"body": heat_body(c)},
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
    ("logger_cells", "delimiter_of"): lambda c: {
        "lines": [c.choice(("a;b", "a,b", "a\tb", "a|b", "a")) for _ in range(c.randint(1, 4))]
    },
    ("logger_cells", "cells_of"): lambda c: {
        "line": "".join(c.choice('a";, \t') for _ in range(c.randint(0, 14))),
        "delimiter": c.choice(",;\t"),
    },
    ("logger_cells", "number_of"): lambda c: {"cell": read_cell(c)},
    ("logger_cells", "heat_of"): lambda c: {"cell": read_cell(c)},
    ("logger_times", "moment_of"): lambda c: {"text": moment(c)},
    ("logger_times", "fits"): lambda c: {
        "texts": [c.choice(("08:00", "2026-11-10", "10/11/26 08:00", "10.11.26 08:00Z"))
                  for _ in "ab"]
    },
    ("logger_times", "together"): lambda c: {
        "texts": c.choice((dated(c), [moment(c) for _ in range(c.randint(0, 3))]))
    },
    ("logger_times", "is_day_known"): lambda c: {
        "texts": c.choice((dated(c), [moment(c) for _ in range(c.randint(0, 3))]))
    },
    ("logger_times", "written_time"): lambda c: {"second": c.randint(-(10**10), 10**11)},
    ("logger_files", "logger_log"): lambda c: {"text": csv_text(c), **asked(c)},
    ("heat_judged", "judged_log"): lambda c: {"body": heat_body(c)},
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
