"""How each function about checking instruments is called; see registry.py.

What an answer leans on is told by `bases` ("mav: memory") and the `source` of the first figure.
`show` names the fields of a result a vector is about.
"""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import Any

from kitchenlog.calc import (
    checks,
    limits,
    minimum_weight,
    ph_checks,
    scale_checks,
    thermometer_checks,
    vessel_checks,
    water,
)
from kitchenlog.calc.numbers import plain, significant, written
from kitchenlog.calc.readings import Doubt
from tests.calc.vector_answers import (
    cited_json,
    decimal,
    decimals,
    limit_json,
    plain_all,
    shown,
    text,
)
from tests.calc.written import written_check

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def _doubt(given: Given | None) -> Doubt | None:
    return None if given is None else Doubt(u=float(given["u"]), degrees=given["degrees"])


def _doubt_json(doubt: Doubt | None, g: Given) -> Given | None:
    return doubt and {"u": significant(doubt.u, g["digits"]), "degrees": doubt.degrees}


def _cited(g: Given) -> list[limits.Cited]:
    return [limits.Cited(what="figure", source="a book", basis=each) for each in g["bases"]]


def _scale_class(g: Given) -> Given | None:
    found = limits.scale_class(decimal(g["capacity"]), decimal(g["division"]))
    return found and {
        "accuracy_class": found.accuracy_class,
        "divisions": written(found.divisions),
        **cited_json(found.cited),
    }


def _water_density(g: Given) -> Given:
    density = water.water_density(decimal(g["celsius"]))
    return {"kg_per_m3": written(density.kg_per_m3), **cited_json(density.cited)}


def _held_volume(g: Given) -> Given:
    held = water.held_volume(
        decimals(g["masses"]),
        celsius=decimal(g["celsius"]),
        celsius_u=float(g["celsius_u"]),
        division=decimal(g["division"]),
        readings=g["readings"],
        repeatability=decimal(g.get("repeatability")),
    )
    return {"volume": written(held.volume), **(_doubt_json(held.doubt, g) or {})}


def _minimum_weight(g: Given) -> Given:
    least = minimum_weight.minimum_weight(
        division=decimal(g["division"]),
        repeatability=decimal(g["repeatability"]),
        accuracy_percent=decimal(g["accuracy_percent"]),
    )
    return {"amount": plain(least.amount), **cited_json(least.cited)}


def _line(g: Given) -> minimum_weight.LineToWeigh:
    names = ("target", "below", "above", "tare", "accuracy_percent")
    return minimum_weight.LineToWeigh(**{name: decimal(g["line"].get(name)) for name in names})


def _weigher(given: Given) -> minimum_weight.Weigher:
    names = ("division", "capacity", "repeatability")
    return minimum_weight.Weigher(
        instrument=given["instrument"],
        state=given.get("state", "fit"),
        **{name: decimal(given.get(name)) for name in names},
    )


def _weighs(g: Given) -> Given:
    said = minimum_weight.weighs(_line(g), _weigher(g["weigher"]))
    band = said.guard_band
    return {
        "answer": said.answer,
        "guard_band": None if band is None else significant(band, g["digits"]),
        "minimum_weight": None if said.minimum_weight is None else plain(said.minimum_weight),
    }


def _point(given: Given) -> checks.Point:
    measured = checks.Measured(
        step=given.get("step", 0),
        sort=given.get("sort", "rising"),
        value=decimal(given["value"]),
        reference=decimal(given["reference"]),
        doubt=_doubt(given["doubt"]),
    )
    amount = decimal(given["limit"])
    return checks.judged(
        measured, None if amount is None else limits.Limit(amount=amount, cited=())
    )


def _judged(g: Given) -> Given:
    point = _point(g)
    return {"error": written(point.error), "verdict": point.verdict}


def _summed_up(g: Given) -> Given:
    result = checks.summed_up(
        [_point({**each, "step": number}) for number, each in enumerate(g["points"])],
        repeatability=None,
        hysteresis=None,
    )
    return shown(written_check(result, g["digits"]), g)


def _scale(g: Given) -> scale_checks.Scale:
    names = ("division", "e", "capacity", "repeatability")
    return scale_checks.Scale(
        accuracy_class=g["scale"].get("accuracy_class"),
        rules=g["scale"].get("rules", "r76_in_service"),
        **{name: decimal(g["scale"].get(name)) for name in names},
    )


def _scale_result(g: Given) -> checks.CheckResult:
    return scale_checks.scale_check(_scale(g), g["steps"])


def _vessel(g: Given) -> vessel_checks.Vessel:
    return vessel_checks.Vessel(
        sort=g["vessel"]["sort"],
        capacity_mL=decimal(g["vessel"]["capacity_mL"]),
        cylinder_class=g["vessel"].get("cylinder_class"),
    )


def _boiling(point: thermometer_checks.BoilingPoint) -> Given:
    return {
        "celsius": written(point.celsius),
        "tolerance": written(point.tolerance),
        **cited_json(point.cited),
    }


def _meter(given: Given) -> dict[str, Decimal | None]:
    names = ("division", "repeatability", "allowed_error")
    return {name: decimal(given.get(name)) for name in names}


def _thermometer_check(g: Given) -> Given:
    thermometer = thermometer_checks.Thermometer(**_meter(g["thermometer"]))
    result = thermometer_checks.thermometer_check(thermometer, g["steps"])
    return shown(written_check(result, g["digits"]), g)


def _ph_check(g: Given) -> Given:
    said = ph_checks.ph_check(ph_checks.PhMeter(**_meter(g["meter"])), g["steps"])
    figures = {
        "offset": said.offset,
        "span_percent": said.span_percent,
        "slope_percent": said.slope_percent,
    }
    texts = {name: None if x is None else plain(x) for name, x in figures.items()}
    return shown({**written_check(said.result, g["digits"]), **texts}, g)


LIMITS: dict[str, Adapter] = {
    "leans_on_memory": lambda g: limits.leans_on_memory(_cited(g)),
    "is_disputed": lambda g: limits.is_disputed(_cited(g)),
    "scale_error_limit": lambda g: limit_json(
        limits.scale_error_limit(
            decimal(g["load"]),
            e=decimal(g["e"]),
            accuracy_class=g["accuracy_class"],
            when=g["when"],
        )
    ),
    "division_tolerance": lambda g: limit_json(
        limits.division_tolerance(
            decimal(g["load"]),
            division=decimal(g["division"]),
            accuracy_class=g["accuracy_class"],
        )
    ),
    "scale_class": _scale_class,
    "mass_tolerance": lambda g: limit_json(
        limits.mass_tolerance(decimal(g["nominal_g"]), g["weight_class"])
    ),
    "measure_limit": lambda g: limit_json(
        limits.measure_limit(decimal(g["nominal"]), g["sort"])
    ),
    "cylinder_limit": lambda g: limit_json(
        limits.cylinder_limit(decimal(g["capacity_mL"]), g["cylinder_class"])
    ),
}

WATER: dict[str, Adapter] = {
    "water_density": _water_density,
    "mass_of_water": lambda g: written(
        water.mass_of_water(decimal(g["volume_mL"]), decimal(g["celsius"]))
    ),
    "millilitres_per_gram": lambda g: written(
        water.millilitres_per_gram(decimal(g["celsius"]), g["places"])
    ),
    "held_volume": _held_volume,
    "error_percent": lambda g: written(
        water.error_percent(decimal(g["value"]), decimal(g["nominal"]), g["places"])
    ),
}

MINIMUM_WEIGHT: dict[str, Adapter] = {
    "minimum_weight": _minimum_weight,
    "weighs": _weighs,
    "proposed": lambda g: minimum_weight.proposed(
        _line(g), [_weigher(each) for each in g["weighers"]]
    ),
}

COMMON_CHECKS: dict[str, Adapter] = {
    "readings_in": lambda g: plain_all(checks.readings_in(g["step"])),
    "reading_doubt": lambda g: _doubt_json(
        checks.reading_doubt(
            decimals(g["readings"]),
            division=decimal(g["division"]),
            spread=_doubt(g["spread"]),
            tolerance=decimal(g["tolerance"]),
        ),
        g,
    ),
    "judged": _judged,
    "summed_up": _summed_up,
    "cited_in": lambda g: cited_json(checks.cited_in(_scale_result(g))),
}

SCALE_CHECKS: dict[str, Adapter] = {
    "scale_limit": lambda g: limit_json(
        scale_checks.scale_limit(_scale(g), decimal(g["load"]))
    ),
    "scale_check": lambda g: shown(written_check(_scale_result(g), g["digits"]), g),
}

VESSEL_CHECKS: dict[str, Adapter] = {
    "vessel_limit": lambda g: limit_json(
        vessel_checks.vessel_limit(_vessel(g), decimal(g["graduation"]))
    ),
    "vessel_check": lambda g: shown(
        written_check(vessel_checks.vessel_check(_vessel(g), g["steps"]), g["digits"]), g
    ),
}

THERMOMETER_CHECKS: dict[str, Adapter] = {
    "boiling_point_at_altitude": lambda g: _boiling(
        thermometer_checks.boiling_point_at_altitude(decimal(g["altitude_m"]))
    ),
    "boiling_point_at_pressure": lambda g: _boiling(
        thermometer_checks.boiling_point_at_pressure(decimal(g["pressure_hPa"]))
    ),
    "thermometer_check": _thermometer_check,
}

PH_CHECKS: dict[str, Adapter] = {
    "ph_check": _ph_check,
    "slope_percent": lambda g: text(ph_checks.slope_percent(g["steps"])),
}

CHECKS: dict[str, dict[str, Adapter]] = {
    "limits": LIMITS,
    "water": WATER,
    "minimum_weight": MINIMUM_WEIGHT,
    "checks": COMMON_CHECKS,
    "scale_checks": SCALE_CHECKS,
    "vessel_checks": VESSEL_CHECKS,
    "thermometer_checks": THERMOMETER_CHECKS,
    "ph_checks": PH_CHECKS,
}
