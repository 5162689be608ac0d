"""Random questions for the twins about checking instruments and packs; see random_givens.py."""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import Any

from tests.calc.random_givens_instruments import TIMES, sheet

Given = dict[str, Any]

BITS = 17  # significant digits that tell any two doubles apart
BASES = ("read", "read-secondary", "memory", "computed", "disputed")
CLASSES = ("I", "II", "III", "IIII", "HB133-II", "")
WEIGHTS = ("1", "5", "50", "200", "500.0", "1000", "2000", "5000", "3")
COLUMNS = ("g", "lb", "oz")
NO_NUMBER = "a little"


def number(c: Random, low: float, high: float, places: int | None = None) -> str:
    """A plain decimal, as a rule with few places, and often on a round figure."""
    if c.random() < 0.2:
        return str(c.randint(int(low), int(high)))
    return f"{c.uniform(low, high):.{c.randint(0, 4) if places is None else places}f}"


def sized(c: Random) -> str:
    """Above zero, of any size a kitchen meets."""
    return number(c, 0, 10 ** c.randint(0, 5))


def step_size(c: Random) -> str:
    return c.choice(("0", "0.01", "0.1", "0.5", "1", "2", "5"))


def maybe(c: Random, make: Callable[[Random], Any]) -> Any:
    return None if c.random() < 0.15 else make(c)


def several(c: Random, make: Callable[[Random], Any], most: int = 6) -> list[Any]:
    return [make(c) for _ in range(c.randint(0, most))]


def near(c: Random, value: float, spread: float) -> str:
    return f"{c.gauss(value, spread):.{c.randint(0, 2)}f}"


def doubt(c: Random) -> Given:
    return {"u": repr(c.random() * 2), "degrees": c.choice((None, c.randrange(1, 1300)))}


def without_some(c: Random, body: Given) -> Given:
    """As a body of a strange version may come: fields missing, a reading that is none."""
    kept = {name: value for name, value in body.items() if c.random() > 0.03}
    if "readings" in kept and c.random() < 0.05:
        kept["readings"] = [*kept["readings"], NO_NUMBER]
    return kept


def scale(c: Random) -> Given:
    return {
        "division": maybe(c, step_size),
        "e": c.choice((None, "1", "0.1", "5")),
        "accuracy_class": c.choice((None, None, *CLASSES)),
        "capacity": maybe(c, lambda c: c.choice(("200", "1500", "5000", "30000"))),
        "repeatability": maybe(c, lambda c: number(c, 0, 1, 3)),
        "rules": c.choice(("r76_initial", "r76_in_service", "hb133")),
    }


def scale_step(c: Random) -> Given:
    sort = c.choice(("zero", "tare", "return_to_zero", "rising", "falling", "off_centre",
                     "repeats", "dropped"))  # fmt: skip
    reference = c.choice(WEIGHTS)
    at = 0 if sort in ("zero", "tare", "return_to_zero") else float(reference)
    count = c.randint(0, 3) if sort != "repeats" else c.randint(3, 8)
    return without_some(
        c,
        {
            "sort": sort,
            "reference": reference,
            "tolerance": number(c, 0, 1, 3),
            "readings": [near(c, at, 1) for _ in range(count)],
        },
    )


def scale_check(c: Random) -> Given:
    return {"scale": scale(c), "steps": several(c, scale_step, 12), "digits": BITS}


def vessel(c: Random) -> Given:
    return {
        "sort": c.choice(("spoon", "cup", "cylinder")),
        "capacity_mL": c.choice(("5", "15", "236.5882365", "250", "500", "1000")),
        "cylinder_class": c.choice((None, "A", "B", "C")),
    }


def water_step(c: Random) -> Given:
    tare = maybe(c, lambda c: number(c, 0, 60, 1))
    body = {
        "sort": "water",
        "readings": [near(c, 240, 3) for _ in range(c.randint(0, 6))],
        "celsius": number(c, -2, 45, 1),
        "celsius_tolerance": number(c, 0, 2, 1),
        "division": step_size(c),
        "repeatability": number(c, 0, 1, 2),
        "reference": c.choice(("236.5882365", "250", "5")),
    }
    return without_some(c, body if tare is None else {**body, "tare": tare})


def heat_step(c: Random) -> Given:
    sort = c.choice(("ice", "boiling", "boiling", "comparison", "hand"))
    at = {"ice": 0, "boiling": 98}.get(sort, 63)
    body = {
        "sort": sort,
        "readings": [near(c, at, 1) for _ in range(c.randint(0, 4))],
        "reference": number(c, 60, 65, 1),
    }
    more = {
        "altitude_m": number(c, -400, 3200),
        "pressure_hpa": number(c, 700, 1060),
        "tolerance": number(c, 0, 1, 2),
    }
    return without_some(c, {**body, **{k: v for k, v in more.items() if c.random() < 0.4}})


def buffer_step(c: Random) -> Given:
    ph = c.choice(("4.00", "4.01", "7.00", "6.86", "9.18", "10.01"))
    return without_some(
        c,
        {
            "sort": "buffer",
            "reference": ph,
            "tolerance": "0.02",
            "readings": [near(c, float(ph), 0.1) for _ in range(c.randint(0, 3))],
            "millivolts": near(c, (7 - float(ph)) * 57, 4),
            "celsius": number(c, 15, 30, 1),
        },
    )


def meter(c: Random) -> Given:
    return {
        "division": maybe(c, lambda c: c.choice(("0.01", "0.1", "1"))),
        "repeatability": maybe(c, lambda c: number(c, 0, 1, 3)),
        "allowed_error": maybe(c, lambda c: number(c, 0, 2, 1)),
    }


def weigher(c: Random) -> Given:
    return {
        "instrument": c.choice("abcd"),
        "state": c.choice(("fit", "due", "not_checked", "failed", "lent")),
        "division": maybe(c, step_size),
        "capacity": maybe(c, lambda c: c.choice(("200", "5000", "30000"))),
        "repeatability": maybe(c, lambda c: number(c, 0, 1, 2)),
    }


def line(c: Random) -> Given:
    return {
        "target": sized(c),
        "below": maybe(c, lambda c: number(c, 0, 9)),
        "above": maybe(c, lambda c: number(c, 0, 9)),
        "tare": maybe(c, lambda c: number(c, 0, 300)),
        "accuracy_percent": maybe(c, lambda c: c.choice(("0.1", "0.10", "1", "10", "0"))),
    }


def point(c: Random) -> Given:
    limit = maybe(c, lambda c: number(c, 0, 3, 1))
    return {"value": near(c, 100, 1), "reference": "100", "doubt": maybe(c, doubt),
            "limit": limit}  # fmt: skip


def moisture(c: Random) -> Given:
    return {
        "percent": c.choice(("3", "2.5", "0")),
        "places": c.randint(0, 2),
        "taken": c.choice(("off_nominal", "added_after")),
    }


def lot(c: Random) -> Given:
    label = c.choice(("30", "113", "340", "907", "3600", "5000", "25000"))
    size = c.choice((0, 1, 2, 5, 11, 12, 250, 251, 4000))
    count = c.choice((min(size, 12), 24, 48, c.randint(0, 50)))
    spread = c.choice((0.5, 2, 20))
    return {
        "label": label,
        "column": c.choice(COLUMNS),
        "tares": several(c, lambda c: near(c, 20, 0.5), 3),
        "gross": [near(c, float(label) + 20, spread) for _ in range(count)],
        "lot_size": size,
        "division": maybe(c, step_size),
        "moisture": maybe(c, moisture),
        "digits": BITS,
    }


def batch(c: Random) -> Given:
    nominal = c.choice(("35", "250", "330", "1500", "0"))
    size = c.choice((1, 20, 99, 100, 500, 501, 4000))
    count = c.choice((20, 30, 50, 60, 80, 100, 160, size % 101, c.randint(0, 170)))
    spread = c.choice((0.01, 0.02, 0.04)) * float(nominal)
    return {
        "nominal": nominal,
        "contents": [near(c, float(nominal) * 1.01, spread) for _ in range(count)],
        "batch_size": size,
        "rules": c.choice(("arrete_1978", "r87_2004")),
        "is_destructive": c.random() < 0.2,
        "division": maybe(c, step_size),
        "digits": BITS,
    }


def leaning_fill(c: Random) -> Given:
    """A fill check on a scale whose sheet corrects it, doubts it, or both."""
    given = fill(c)
    body = given["body"]
    return {
        "body": {**body, "instrument": c.choice(("i1", "i1", "i1", "i2"))},
        "happened_at": c.choice(TIMES),
        "instruments": {"instrument:i1": sheet(c)},
    }


def lot_fills(c: Random) -> Given:
    """Entries of two lots, most of them fill checks, some on a scale with a sheet."""
    entries = []
    for number in range(c.randint(0, 3)):
        given = leaning_fill(c)
        entries.append(
            {
                "id": f"e{number}",
                "kind": c.choice(("fill_checked", "fill_checked", "count")),
                "happened_at": given["happened_at"],
                "body": {**given["body"], "lot": c.choice(("J1", "J1", "J2"))},
            }
        )
    return {"code": "J1", "entries": entries, "instruments": {"instrument:i1": sheet(c)}}


def doubted_fills(c: Random) -> Given:
    """Verdicts as they are and as they would be, by none, one or several failed checks."""
    verdicts = ("pass", "fail", "not_decided")
    return {
        "fills": [
            {
                "entry": f"e{number}",
                "verdict": c.choice(verdicts),
                "trust": {
                    "failed_by": c.choice((None, "k1", "k2", "k10")),
                    "would_be": c.choice((None, *verdicts)),
                },
            }
            for number in range(c.randint(0, 6))
        ]
    }


def fill(c: Random) -> Given:
    """Mostly of mass and of a size the plans know; every field may be strange or missing."""
    label = c.choice(("30", "113", "340", "907", "5000", "0"))
    unit = c.choice(("g", "g", "g", "kg", "oz", "lb", "mL"))
    spread = c.choice((0.5, 2, 20))
    body = {
        "label": [
            {"amount": {"amount": label, "unit": unit}}
            for unit in (c.choice(("g", "g", "g", "mL", "oz")), c.choice(("g", "mL", "mg")))
            if c.random() < 0.8
        ],
        "rules": c.choice(("us", "us", "eu", "eu", "own")),
        "unit": unit,
        "tares": several(c, lambda c: near(c, 20, 0.5), 3),
        "gross": [near(c, float(label) + 20, spread) for _ in range(c.choice((0, 5, 12, 80)))],
        "division": step_size(c),
        "lot_size": c.choice((0, 5, 12, 12, 150, 4000, 90_000)),
        "density": c.choice(("0", "0.9", "1.05", "1.32")),
        "loses_moisture": c.random() < 0.2,
    }
    return {"body": without_some(c, body)}


CHECK_GIVENS: dict[tuple[str, str], Callable[[Random], Given]] = {
    ("limits", "leans_on_memory"): lambda c: {"bases": several(c, lambda c: c.choice(BASES))},
    ("limits", "is_disputed"): lambda c: {"bases": several(c, lambda c: c.choice(BASES))},
    ("limits", "scale_error_limit"): lambda c: {
        "load": number(c, -1, 30_000), "e": step_size(c), "accuracy_class": c.choice(CLASSES),
        "when": c.choice(("initial", "in_service")),
    },
    ("limits", "division_tolerance"): lambda c: {
        "load": number(c, -1, 30_000), "division": step_size(c),
        "accuracy_class": c.choice(CLASSES),
    },
    ("limits", "scale_class"): lambda c: {"capacity": sized(c), "division": step_size(c)},
    ("limits", "mass_tolerance"): lambda c: {
        "nominal_g": c.choice(WEIGHTS),
        "weight_class": c.choice(("F1", "F2", "M1", "M2", "M3", "m1")),
    },
    ("limits", "measure_limit"): lambda c: {
        "nominal": sized(c), "sort": c.choice(("cup", "spoon"))
    },
    ("limits", "cylinder_limit"): lambda c: {
        "capacity_mL": c.choice(("5", "10", "25.0", "100", "1000", "7")),
        "cylinder_class": c.choice("ABC"),
    },
    ("readings", "rectangular_u"): lambda c: {"tolerance": sized(c), "digits": BITS},
    ("water", "water_density"): lambda c: {"celsius": number(c, -3, 99)},
    ("water", "mass_of_water"): lambda c: {
        "volume_mL": sized(c), "celsius": number(c, -1, 45)
    },
    ("water", "millilitres_per_gram"): lambda c: {
        "celsius": number(c, -1, 45), "places": c.randint(0, 8)
    },
    ("water", "held_volume"): lambda c: {
        "masses": several(c, lambda c: near(c, 235, 2)), "celsius": number(c, -1, 42),
        "celsius_u": repr(c.random()), "division": step_size(c),
        "readings": c.randint(1, 2), "repeatability": maybe(c, lambda c: number(c, 0, 1)),
        "digits": BITS,
    },
    ("water", "error_percent"): lambda c: {
        "value": sized(c), "nominal": sized(c), "places": c.randint(0, 6)
    },
    ("minimum_weight", "minimum_weight"): lambda c: {
        "division": step_size(c), "repeatability": maybe(c, lambda c: number(c, 0, 1)),
        "accuracy_percent": c.choice(("0.1", "0.10", "1", "3", "10", "0", "-1")),
    },
    ("minimum_weight", "weighs"): lambda c: {
        "line": line(c), "weigher": weigher(c), "digits": BITS
    },
    ("minimum_weight", "proposed"): lambda c: {
        "line": line(c), "weighers": several(c, weigher)
    },
    ("checks", "readings_in"): lambda c: {"step": scale_step(c)},
    ("checks", "reading_doubt"): lambda c: {
        "readings": several(c, lambda c: near(c, 100, 1)), "division": maybe(c, step_size),
        "spread": maybe(c, doubt), "tolerance": maybe(c, sized), "digits": BITS,
    },
    ("checks", "judged"): point,
    ("checks", "summed_up"): lambda c: {"points": several(c, point), "digits": BITS},
    ("checks", "cited_in"): scale_check,
    ("scale_checks", "scale_limit"): lambda c: {
        "scale": scale(c), "load": number(c, -1, 30_000)
    },
    ("scale_checks", "scale_check"): scale_check,
    ("vessel_checks", "vessel_limit"): lambda c: {
        "vessel": vessel(c), "graduation": sized(c)
    },
    ("vessel_checks", "vessel_check"): lambda c: {
        "vessel": vessel(c), "steps": several(c, water_step), "digits": BITS
    },
    ("thermometer_checks", "boiling_point_at_altitude"): lambda c: {
        "altitude_m": number(c, -400, 3200)
    },
    ("thermometer_checks", "boiling_point_at_pressure"): lambda c: {
        "pressure_hPa": number(c, 700, 1060)
    },
    ("thermometer_checks", "thermometer_check"): lambda c: {
        "thermometer": meter(c), "steps": several(c, heat_step), "digits": BITS
    },
    ("ph_checks", "ph_check"): lambda c: {
        "meter": meter(c), "steps": several(c, buffer_step), "digits": BITS
    },
    ("ph_checks", "slope_percent"): lambda c: {"steps": several(c, buffer_step)},
    ("net_limits", "maximum_allowable_variation"): lambda c: {
        "label_g": sized(c), "column": c.choice(COLUMNS)
    },
    ("net_limits", "pack_division"): lambda c: {
        "label_g": sized(c), "column": c.choice(COLUMNS)
    },
    ("net_limits", "pack_division_eu"): lambda c: {"nominal": number(c, -1, 60_000)},
    ("net_limits", "pack_plan"): lambda c: {
        "lot_size": c.choice((c.randint(0, 14), c.randint(0, 5000)))
    },
    ("net_limits", "tolerable_shortage"): lambda c: {"nominal": sized(c)},
    ("net_limits", "batch_plan"): lambda c: {
        "batch_size": c.choice((c.randint(0, 120), c.randint(0, 5000))),
        "rules": c.choice(("arrete_1978", "r87_2004")), "is_destructive": c.random() < 0.3,
    },
    ("net_content", "larger_declaration"): lambda c: {
        "declarations": several(
            c, lambda c: [sized(c), c.choice(("g", "oz", "lb", "kg", "g", "oz", "mL"))], 3
        )
    },
    ("net_content", "nominal_gross"): lambda c: {
        "label": sized(c), "tares": several(c, sized)
    },
    ("net_content", "package_errors"): lambda c: {
        "gross": several(c, sized), "nominal": sized(c)
    },
    ("net_content", "in_measure_units"): lambda c: {
        "error": near(c, 0, 3), "unit_of_measure": step_size(c), "places": c.randint(0, 3)
    },
    ("net_content", "net_verdict"): lambda c: {
        "reasons": several(
            c, lambda c: c.choice(("mean_short", "over_mav", "mav_disputed", "below_t2",
                                   "sample_unfinished", "mean_not_known")), 3
        )
    },
    ("net_packs", "moisture_allowance"): lambda c: {"label": sized(c), "moisture": moisture(c)},
    ("net_packs", "sample_error_limit"): lambda c: {
        "sd": repr(c.random() * 5), "factor": c.choice(("0.635", "0.422", "8.984")),
        "digits": BITS,
    },
    ("net_packs", "category_a"): lot,
    ("net_batches", "batch_check"): batch,
    ("fills", "fill_of"): fill,
    ("fill_trust", "trusted_fill"): leaning_fill,
    ("fill_trust", "fill_checks"): lot_fills,
    ("fill_trust", "failed_scales"): doubted_fills,
}  # fmt: skip
