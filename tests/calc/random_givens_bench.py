"""Random questions for the twins about yields, kettle and curing; see random_givens.py."""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import Any

from kitchenlog.calc.yield_tables import YIELD_ROWS
from tests.calc.random_givens_checks import BITS, maybe, number, several, sized

Given = dict[str, Any]

WORDS = ("apple", "Raw", "beans dried", "watermelon", "", "  ", "zz", "peel, raw", "S")
USES = (
    "comminuted", "pumped", "immersed", "dry_cured", "bacon_pumped",
    "bacon_pumped_alternative", "bacon_immersed", "bacon_dry_cured",
)  # fmt: skip
SUBSTANCES = ("sodium_nitrite", "sodium_nitrite", "sodium_nitrate", "sodium_ascorbate",
              "ascorbic_acid")  # fmt: skip


def percent(c: Random) -> str:
    return c.choice(
        (number(c, 0, 100), number(c, 0, 100), "0", "100", "65", number(c, -1, 110))
    )


def doubt(c: Random) -> str:
    return repr(c.choice((0.0, c.random(), c.random() / 100)))


def preparations(c: Random) -> list[Any]:
    return several(c, lambda c: [maybe(c, sized), maybe(c, sized)], 9)


def charge(c: Random) -> Given:
    known = percent(c) if c.random() < 0.97 else None
    made = {"amount": sized(c), "solids_percent": known}
    return {**made, "u": doubt(c), "solids_u": doubt(c)} if c.random() < 0.8 else made


def measured(c: Random) -> Given:
    return {"value": c.choice((sized, percent))(c), "u": doubt(c)}


def life_model(c: Random) -> Given:
    kind = c.choice(("q10", "arrhenius_kJ", "arrhenius_kcal", "square_root"))
    ranges = {
        "q10": (1, 6), "arrhenius_kJ": (20, 180), "arrhenius_kcal": (5, 45),
        "square_root": (-15, 0),
    }  # fmt: skip
    return {
        "kind": kind, "parameter": number(c, *ranges[kind]), "life_days": number(c, 0, 400),
        "at": number(c, 0, 40),
    }  # fmt: skip


def moisture(c: Random) -> list[str]:
    return [c.choice((percent(c), number(c, 0, 500))), c.choice(("wet", "dry")), doubt(c)]


def square(c: Random) -> Given:
    low, high = sorted((number(c, 0, 30), number(c, 0, 60)), key=float)
    return {
        "strong": c.choice((high, high, low, percent(c))),
        "weak": c.choice((low, low, "0", high)),
        "target": c.choice((number(c, 0, 60), number(c, 0, 40), low, high)),
        "basis": c.choice(("by_mass", "of_water", "per_100_mL")),
        "solute": c.choice(("salt", "acid", "other")),
    }


def titration(c: Random) -> Given:
    return {
        "acid": c.choice(("citric", "tartaric", "lactic", "acetic", "malic", "formic")),
        "naoh_N": number(c, 0, 1, 4),
        "naoh_mL": number(c, 0, 40, 2),
        "sample": number(c, 0, 50),
        "sample_unit": c.choice(("mL", "g")),
        "blank_mL": c.choice(("0", "0.1", number(c, 0, 3))),
    }


def case(c: Random) -> Given:
    return {
        "use": c.choice(USES),
        "substance": c.choice(SUBSTANCES),
        "rules": c.choice(("us", "us", "canada")),
    }


def on_what(c: Random) -> Given:
    return {
        "substance_percent": c.choice(("6.25", "0.75", "100", percent(c))),
        "green": maybe(c, lambda c: number(c, 0, 50_000)),
        "pump_percent": maybe(c, lambda c: c.choice(("10", "12.5", percent(c)))),
    }


RANDOM_BENCH: dict[tuple[str, str], Callable[[Random], Given]] = {
    ("yields", "yields_named"): lambda c: {"words": c.choice(WORDS)},
    ("yields", "published_yield"): lambda c: {"item": c.choice(YIELD_ROWS).item},
    ("yields", "own_yield"): lambda c: {"preparations": preparations(c)},
    ("yields", "proposed_yield"): lambda c: {
        "in_use": maybe(c, percent), "preparations": preparations(c)
    },
    ("yields", "to_buy"): lambda c: {
        "edible": sized(c),
        "yield_percent": percent(c),
        "step": c.choice(("0.5", "1", "25", "0", "0.3")),
    },
    ("yields", "stage_yields"): lambda c: {
        "raw": sized(c),
        "stages": several(c, lambda c: [c.choice(("0", sized(c))), maybe(c, sized)]),
    },
    ("kettle", "kettle_target"): lambda c: {
        "charges": several(c, charge),
        "target_percent": percent(c),
        "tare": maybe(c, sized),
        "digits": BITS,
    },
    ("kettle", "kettle_evaporation"): lambda c: {
        "charges": several(c, charge),
        "out": maybe(c, measured),
        "brix": maybe(c, measured),
        "digits": BITS,
    },
    ("kettle", "formula_for"): lambda c: {
        "shares": several(c, lambda c: [sized(c), percent(c)]),
        "makes": sized(c),
        "target_percent": percent(c),
    },
    ("drying", "dry_basis_percent"): lambda c: {
        "wet_basis_percent": percent(c), "places": c.randint(0, 6)
    },
    ("drying", "wet_basis_percent"): lambda c: {
        "dry_basis_percent": number(c, -1, 500), "places": c.randint(0, 6)
    },
    ("drying", "dried"): lambda c: {
        "mass": sized(c),
        "mass_u": doubt(c),
        "before": moisture(c),
        "after": moisture(c),
        "digits": BITS,
    },
    ("drying", "concentrated"): lambda c: {
        "mass": sized(c),
        "solids_percent": percent(c),
        "to_percent": percent(c),
        "added_percent": c.choice(("0", "15", percent(c))),
    },
    ("mixing", "pearson_shares"): square,
    ("mixing", "mixed_to"): lambda c: {**square(c), "makes": sized(c)},
    ("mixing", "added_to_reach"): lambda c: {
        **square(c), "amount": sized(c), "at_hand": c.choice(("strong", "weak"))
    },
    ("mixing", "strength_of"): lambda c: {
        "parts": several(c, lambda c: [sized(c), percent(c)])
    },
    ("brine", "weighed_strength"): lambda c: {
        "parts": several(c, lambda c: [sized(c), percent(c), doubt(c)]), "digits": BITS
    },
    ("brine", "percent_by_mass"): lambda c: {
        "percent_of_water": percent(c), "places": c.randint(0, 6)
    },
    ("brine", "percent_of_water"): lambda c: {
        "percent_by_mass": percent(c), "places": c.randint(0, 6)
    },
    ("brine", "salometer_percent"): lambda c: {
        "degrees": number(c, -1, 110), "scale": c.choice(("standard", "canning", "other"))
    },
    ("brine", "salometer_degrees"): lambda c: {
        "percent": number(c, -1, 28), "scale": c.choice(("standard", "canning", "other"))
    },
    ("brix", "brix_correction"): lambda c: {
        "measured_percent": c.choice((number(c, 8, 80), "65", "20.0", "10")),
        "celsius": number(c, 8, 32),
        "table": c.choice((None, None, "oiv", "gost", "extrapolated", "other")),
    },
    ("acidity", "titratable_acidity"): titration,
    ("cure_limits", "cure_limits"): lambda c: {
        **case(c), "ppm": number(c, 0, 3000), "base": c.choice(("1", "3", "7"))
    },
    ("cure_limits", "worst_verdict"): lambda c: {**case(c), "ppm": number(c, 0, 3000)},
    ("curing", "ingoing"): lambda c: {
        **case(c),
        **on_what(c),
        "cure": c.choice(("0", number(c, 0, 90))),
        "others": several(c, lambda c: number(c, 0, 20_000)),
    },
    ("curing", "cure_needed"): lambda c: {
        **case(c),
        **on_what(c),
        "ppm": c.choice(("120", "200", number(c, 0, 1100))),
        "pickle": maybe(c, lambda c: number(c, 0, 40_000)),
    },
    ("altitude", "canner_adjustment"): lambda c: {
        "canner": c.choice(("dial_low_acid", "dial_fruit", "weighted", "boiling_water")),
        "altitude": c.choice((number(c, -5, 3100), "2000", "2001", "609.6", "610", "10000")),
        "unit": c.choice(("ft", "m")),
    },
    ("acidified", "acid_line"): lambda c: {
        "ph": c.choice(("4.6", "4.0", "4.61", number(c, -1, 15))),
        "water_activity": maybe(c, lambda c: c.choice(("0.85", number(c, 0, 1.1, 2)))),
    },
    ("keeping", "q10_of_lives"): lambda c: {
        "cold": [number(c, 0, 60), number(c, -5, 25)],
        "warm": [number(c, 0, 60), number(c, 0, 60)],
        "digits": BITS,
    },
    ("keeping", "life_at"): lambda c: {
        "model": life_model(c), "celsius": number(c, -15, 60), "digits": BITS,
    },
    ("keeping", "life_used"): lambda c: {
        "model": life_model(c),
        "history": several(c, lambda c: [number(c, 0, 200), number(c, -9, 45)], 6),
        "stored_at": number(c, 0, 30),
        "digits": BITS,
    },
    ("keeping", "out_of_chill"): lambda c: {
        "minutes": several(c, lambda c: c.choice((0, 119, 120, 240, c.randint(-1, 200))), 5),
    },
    ("acidified", "five_log_hold"): lambda c: {
        "temperature": c.choice((number(c, 60, 83), number(c, 140, 181))),
        "unit": c.choice(("degF", "degC")),
        "ph": c.choice(("4.1", "4.6", "4.61", number(c, 3, 5))),
        "digits": BITS,
    },
}  # fmt: skip
