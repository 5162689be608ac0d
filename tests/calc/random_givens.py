"""Random questions for the twins: shapes as in the vectors, values from the edges inwards."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta
from random import Random
from typing import Any

from kitchenlog.calc.density_tables import DENSITY_ROWS
from kitchenlog.calc.units import UNITS
from tests.calc.random_givens_bench import RANDOM_BENCH
from tests.calc.random_givens_checks import CHECK_GIVENS
from tests.calc.random_givens_costs import COST_GIVENS
from tests.calc.random_givens_heat import HEAT_GIVENS
from tests.calc.random_givens_instruments import RANDOM_INSTRUMENTS
from tests.calc.random_givens_recipes import RANDOM_RECIPES
from tests.calc.random_givens_statistics import RANDOM_STATISTICS

Given = dict[str, Any]

BITS = 17  # significant digits that tell any two doubles apart
RULES = ("half_even", "half_up")
EDGES = ("0", "0.00", "-0.0", "1", "0.5", "2.5", "-2.5", "0.000001", "99999999999999")
CODES = (*UNITS, "cup", "", "constructor")


def decimal(c: Random) -> str:
    """A number as an entry may hold it, often one that is near a border."""
    if c.random() < 0.2:
        return c.choice(EDGES)
    whole = str(c.randrange(10 ** c.randint(1, 8)))
    places = c.randint(0, 6)
    fraction = "".join(c.choice("0123456789") for _ in range(places))
    sign = "-" if c.random() < 0.2 else ""
    return f"{sign}{whole}.{fraction}" if places else f"{sign}{whole}"


def above_zero(c: Random) -> str:
    """A mass or division: no sign, rarely zero."""
    return decimal(c).lstrip("-")


def maybe(c: Random, make: Callable[[Random], Any]) -> Any:
    return None if c.random() < 0.15 else make(c)


def several(c: Random, make: Callable[[Random], Any], most: int = 6) -> list[Any]:
    return [make(c) for _ in range(c.randint(0, most))]


def places(c: Random) -> int:
    return c.randint(0, 8)


def double(c: Random) -> str:
    return repr(c.choice((c.random(), c.random() * 10 ** c.randint(-9, 9))))


def factor(c: Random) -> dict[str, str]:
    return {"wanted": above_zero(c), "base": decimal(c)}


def text(c: Random) -> str:
    signs = "MJK7-19 .eé'ß\n漬"
    return "".join(c.choice(signs) for _ in range(c.randint(0, 12)))


def day(c: Random) -> str:
    if c.random() < 0.05:
        return c.choice(("2026-02-29", "2026-13-01", "2026-1-1", "", "2026-04-31"))
    return (date(2000, 1, 1) + timedelta(days=c.randrange(36_000))).isoformat()


def instant(c: Random) -> str:
    clock = (
        f"{c.randrange(24):02}:{c.randrange(60):02}:{c.randrange(60):02}.{c.randrange(1000):03}"
    )
    return f"{day(c)}T{clock}Z"


def offset(c: Random) -> int:
    return c.randrange(-14 * 4, 14 * 4 + 1) * 15


def doubt(c: Random) -> dict[str, Any]:
    return {"u": double(c), "degrees": c.choice((None, c.randrange(1300)))}


def level(c: Random) -> str | None:
    """How sure a verdict is to be, in percent; often nobody says."""
    return c.choice((None, None, "95", "80", "99.9", f"{c.uniform(80, 99.9):.1f}"))


def reading(c: Random) -> str:
    return f"{c.randrange(190, 210)}.{c.randrange(10)}"


def stocked(c: Random) -> dict[str, str]:
    line = {"line": c.choice("abc"), "needed": above_zero(c), "available": above_zero(c)}
    return {**line, "yield_percent": above_zero(c)} if c.random() < 0.5 else line


def published(c: Random) -> dict[str, str]:
    row = c.choice(DENSITY_ROWS)
    return {"ingredient": row.ingredient, "packing": row.packing}


def weighed(c: Random) -> Given:
    unit = c.choice(CODES)
    return {**published(c), "amount": decimal(c), "unit": unit, "places": places(c)}


def flours(c: Random) -> Given:
    amounts = several(c, above_zero)
    return {
        "amounts": amounts,
        "is_flour": [c.random() < 0.5 for _ in amounts],
        "places": places(c),
    }


def limits(c: Random) -> Given:
    value = c.randrange(10_000)
    low, high = value - c.randrange(50), value + c.randrange(50)
    return {
        "value": f"{value / 10}",
        "low": maybe(c, lambda _: f"{low / 10}"),
        "high": maybe(c, lambda _: f"{high / 10}"),
        "doubt": maybe(c, lambda c: {**doubt(c), "u": repr(c.random() * 2)}),
        "level": level(c),
    }


def same_day_codes(c: Random) -> Given:
    stem = {"letters": c.choice(("MJ", "S", "")), "on": "2026-11-10", "mark": "K7"}
    made = [
        f"{c.choice(('MJ', 'S'))}-261110-K{c.choice('78')}-{c.randrange(200)}" for _ in "123"
    ]
    return {**stem, "codes": made}


def ab(c: Random) -> Given:
    return {"a": decimal(c), "b": decimal(c)}


def percent_pair(part: str, whole: str) -> Callable[[Random], Given]:
    return lambda c: {part: maybe(c, decimal), whole: maybe(c, decimal)}


def drawn_question(c: Random) -> Given:
    """Mostly a reading near its mark, sometimes nonsense."""
    truth = f"{c.randrange(100)}.{c.randrange(10)}"
    near = f"{float(truth) + c.choice((-2, -1, -0.5, 0, 0, 0.5, 1)):.1f}"
    made = {
        "sort": c.choice(("dial", "surface", "spoon", "other")),
        "truth": truth,
        "division": c.choice(("1", "2", "0.5", "5", "0")),
        "read": c.choice((near, near, near, decimal(c), "about 3")),
    }
    return {name: value for name, value in made.items() if c.random() < 0.97}


def drill(c: Random) -> Given:
    weighing = {
        "instrument": c.choice(("scale", "other")),
        "unit": "g",
        "division": "1",
        "shown": several(c, reading),
    }
    return {
        "questions": several(c, drawn_question, 12),
        **({"weighing": weighing} if c.random() < 0.8 else {}),
        "techniques": [each for each in ("eye_level", "needle_on_zero") if c.random() < 0.5],
    }


def drill_fact(c: Random) -> Given:
    body = {**drill(c), "member": c.choice(("ana", "ana", "ben"))}
    name = f"d{c.randrange(9)}"
    wrong = {"corrects": f"d{c.randrange(9)}", "of_kind": "drill_done", "reason": "slip"}
    kind = c.choice(("drill_done", "drill_done", "correction", "void", "note"))
    bodies = {
        "drill_done": body,
        "correction": {**wrong, "body": body},
        "void": wrong,
        "note": {"subject": "skill:ana", "says": "steady"},
    }
    return {"id": name, "kind": kind, "body": bodies[kind], "device_seq": c.randrange(99)}


RANDOM_GIVENS: dict[tuple[str, str], Callable[[Random], Given]] = {
    ("numbers", "parse_decimal"): lambda c: {"text": c.choice((text, decimal))(c)},
    ("numbers", "written"): lambda c: {"x": decimal(c)},
    ("numbers", "plain"): lambda c: {"x": decimal(c)},
    ("numbers", "total"): lambda c: {"amounts": several(c, decimal)},
    ("numbers", "difference"): ab,
    ("numbers", "product"): ab,
    ("numbers", "rounded"): lambda c: {
        "x": decimal(c), "places": places(c), "rule": c.choice(RULES)
    },
    ("numbers", "divided"): lambda c: {
        **ab(c), "places": places(c), "rule": c.choice(RULES)
    },
    ("numbers", "significant"): lambda c: {
        **c.choice(({"x": decimal(c)}, {"double": double(c)})), "digits": c.randint(1, 20)
    },
    ("numbers", "as_double"): lambda c: {"x": decimal(c), "digits": BITS},
    ("units", "is_unit"): lambda c: {"code": c.choice(CODES)},
    ("units", "dimension_of"): lambda c: {"code": c.choice(CODES)},
    ("units", "base_unit_of"): lambda c: {"code": c.choice(CODES)},
    ("units", "in_base"): lambda c: {"amount": decimal(c), "code": c.choice(CODES)},
    ("units", "from_base"): lambda c: {
        "amount": decimal(c), "code": c.choice(CODES), "places": places(c)
    },
    ("units", "converted"): lambda c: {
        "amount": decimal(c),
        "from_code": c.choice(CODES),
        "to_code": c.choice(CODES),
        "places": places(c),
    },
    ("units", "label_metric"): lambda c: {"amount": f"{c.uniform(-1, 9):.3f}"},
    ("temperature", "celsius"): lambda c: {
        "reading": decimal(c), "code": c.choice(("degF", "K", "degC", "g")), "places": places(c)
    },
    ("temperature", "celsius_to_half"): lambda c: {
        "reading": decimal(c), "code": c.choice(("degF", "K", "degC", "delta_degC"))
    },
    ("temperature", "celsius_interval"): lambda c: {
        "change": decimal(c),
        "code": c.choice(("delta_degF", "delta_degC", "degF")),
        "places": places(c),
    },
    ("temperature", "fahrenheit"): lambda c: {"degrees_celsius": decimal(c)},
    ("temperature", "kelvin"): lambda c: {"degrees_celsius": decimal(c)},
    ("density", "best_density"): published,
    ("density", "spread_of"): published,
    ("density", "mass_of_volume"): weighed,
    ("density", "volume_of_mass"): weighed,
    ("readings", "net"): lambda c: {"shown": decimal(c), "tare": maybe(c, decimal)},
    ("readings", "mean"): lambda c: {"values": several(c, decimal), "places": places(c)},
    ("readings", "repeat_sd"): lambda c: {"values": several(c, decimal), "digits": BITS},
    ("readings", "resolution_u"): lambda c: {
        "division": above_zero(c), "readings": c.randint(0, 60), "digits": BITS
    },
    ("readings", "combined_u"): lambda c: {"parts": several(c, double), "digits": BITS},
    ("readings", "doubt_of"): lambda c: {
        "division": c.choice(("0", "0.1", "1", "5", above_zero(c))),
        "readings": c.randint(1, 2),
        "repeatability": maybe(c, above_zero),
        "repeats": several(c, reading, 10),
        "digits": BITS,
    },
    ("readings", "coverage_factor"): lambda c: {
        "degrees": maybe(c, lambda c: c.randrange(1300)), "level": level(c), "digits": BITS
    },
    ("readings", "guard_band"): lambda c: {
        "doubt": doubt(c), "level": level(c), "digits": BITS
    },
    ("readings", "verdict"): limits,
    ("readings", "is_fine_enough"): lambda c: {
        "division": c.choice(("0.1", "1", "2", "5")),
        "below": maybe(c, lambda c: f"{c.uniform(0, 9):.2f}"),
        "above": maybe(c, lambda c: f"{c.uniform(0, 9):.2f}"),
        "readings": c.randint(1, 2),
        "repeatability": maybe(c, lambda c: f"{c.random():.3f}"),
    },
    ("recipes", "scale_factor"): lambda c: {"wanted": decimal(c), "base": decimal(c)},
    ("recipes", "packs_factor"): lambda c: {
        "packs": decimal(c), "pack_net": decimal(c), "makes": decimal(c)
    },
    ("recipes", "limiting"): lambda c: {"lines": several(c, stocked)},
    ("recipes", "scaled"): lambda c: {
        "amount": decimal(c), "factor": factor(c), "places": places(c)
    },
    ("recipes", "factor_shown"): lambda c: {"factor": factor(c), "places": places(c)},
    ("recipes", "whole_count"): lambda c: {
        "amount": decimal(c),
        "factor": {"wanted": above_zero(c), "base": f"{c.randint(1, 40)}"},
        "rule": c.choice(("up", "down", "nearest")),
    },
    ("recipes", "bakers_percents"): flours,
    ("recipes", "formula_percents"): lambda c: {
        "amounts": several(c, above_zero), "places": places(c)
    },
    ("recipes", "amounts_from_percents"): lambda c: {
        "percents": several(c, above_zero), "wanted": decimal(c), "places": places(c)
    },
    ("recipes", "shared_out"): lambda c: {
        "whole": above_zero(c), "weights": several(c, decimal), "places": places(c)
    },
    ("recipes", "as_purchased"): lambda c: {
        "edible": decimal(c), "yield_percent": decimal(c), "places": places(c)
    },
    ("recipes", "edible_portion"): lambda c: {
        "bought": decimal(c), "yield_percent": decimal(c), "places": places(c)
    },
    ("balance", "percent_of"): lambda c: {
        **percent_pair("part", "whole")(c), "places": places(c)
    },
    ("balance", "edible_yield_percent"): percent_pair("prepared", "received"),
    ("balance", "spoilage_percent"): percent_pair("spoiled", "received"),
    ("balance", "rejects_percent"): percent_pair("rejected", "filled"),
    ("balance", "recovery_percent"): percent_pair("good_out", "put_in"),
    ("balance", "group_percent"): lambda c: {
        "pairs": several(c, lambda c: [maybe(c, decimal), maybe(c, decimal)]),
        "places": places(c),
    },
    ("balance", "solids_in"): lambda c: {
        "lines": several(c, lambda c: [decimal(c), decimal(c)])
    },
    ("balance", "theoretical_out"): lambda c: {
        "solids": decimal(c), "target_percent": decimal(c), "places": places(c)
    },
    ("balance", "implied_solids_percent"): lambda c: {
        "solids": decimal(c), "out": maybe(c, decimal)
    },
    ("balance", "evaporated"): percent_pair("kettle_in", "kettle_out"),
    ("balance", "unaccounted"): lambda c: {
        "put_in": maybe(c, decimal), "came_out": several(c, decimal)
    },
    ("balance", "unaccounted_u"): lambda c: {
        "weighings": several(c, lambda c: [above_zero(c), c.randint(1, 66)]), "digits": BITS
    },
    ("balance", "needs_a_look"): lambda c: {
        "remainder": decimal(c), "put_in": decimal(c), "u": double(c)
    },
    ("shelf_life", "add_days"): lambda c: {"on": day(c), "days": c.randint(-4000, 4000)},
    ("shelf_life", "add_months"): lambda c: {"on": day(c), "months": c.randint(-240, 240)},
    ("shelf_life", "month_end"): lambda c: {"month": day(c)[:7]},
    ("shelf_life", "last_day"): lambda c: {
        "made_on": day(c),
        "sort": c.choice(("use_by", "best_before", "expires_on")),
        "length": c.randint(1, 3650),
        "unit": c.choice(("days", "months")) if c.random() < 0.5 else "days",
    },
    ("shelf_life", "earliest"): lambda c: {"days": several(c, lambda c: maybe(c, day))},
    ("shelf_life", "composite_last_day"): lambda c: {
        "assigned": maybe(c, day),
        "inputs": several(c, lambda c: maybe(c, day)),
        "carries_through": c.random() < 0.5,
    },
    ("shelf_life", "opened_last_day"): lambda c: {
        "opened_on": day(c), "days": c.randint(1, 60), "makers_day": maybe(c, day)
    },
    ("shelf_life", "thawed_last_day"): lambda c: {
        "thawed_on": day(c), "limit_days": c.randint(1, 30), "used_days": c.randint(0, 30)
    },
    ("shelf_life", "days_left"): lambda c: {"last": day(c), "today": day(c)},
    ("shelf_life", "has_expired"): lambda c: {"last": day(c), "today": day(c)},
    ("shelf_life", "life_state"): lambda c: {
        "last": day(c), "today": day(c), "sort": c.choice(("use_by", "best_before"))
    },
    ("shelf_life", "local_day"): lambda c: {"at": instant(c), "utc_offset_min": offset(c)},
    ("shelf_life", "instant_of"): lambda c: {
        "wall": instant(c)[:16], "utc_offset_min": offset(c)
    },
    ("shelf_life", "later"): lambda c: {"at": instant(c), "minutes": c.randint(-9999, 99_999)},
    ("shelf_life", "elapsed_minutes"): lambda c: {"from_at": instant(c), "to_at": instant(c)},
    ("codes", "is_lot_code"): lambda c: {"text": text(c)},
    ("codes", "lot_code"): lambda c: {
        "letters": c.choice(("MJ", "S", "ABC", "mj", "ABCD", "")),
        "on": day(c),
        "mark": c.choice(("K7", "00", "k7", "K")),
        "number": c.randint(0, 2000),
    },
    ("codes", "next_number"): same_day_codes,
    ("codes", "letters_of"): lambda c: {"name": text(c)},
    **RANDOM_STATISTICS,
    **CHECK_GIVENS,
    **RANDOM_BENCH,
    **RANDOM_INSTRUMENTS,
    **HEAT_GIVENS,
    **COST_GIVENS,
    **RANDOM_RECIPES,
    ("skills", "skill_state"): lambda c: {
        "subject": "skill:ana", "facts": several(c, drill_fact, 8)
    },
    ("skills", "summed_drills"): lambda c: {"drills": several(c, drill, 4)},
    ("skills", "score_of"): lambda c: {"question": drawn_question(c)},
    ("skills", "reader_figures"): lambda c: {"questions": several(c, drawn_question, 12)},
    ("skill_class", "class_figures"): lambda c: {
        "members": {name: several(c, drill, 3) for name in ("mo", "ana", "ben")}
    },
    ("drills", "drill_questions"): lambda c: {
        "seed": c.choice((0, 2**31 - 1, 2**31, c.randrange(2**31), c.randrange(2**31))),
        "drawn_by": c.choice((1, 1, 1, 2)),
    },
    ("skill_steps", "improved_between"): lambda c: {"before": drill(c), "now": drill(c)},
}  # fmt: skip
