"""How each function about checking instruments and packs is called; see registry.py.

What an answer leans on is told by `bases` ("mav: memory") and the `source` of the first figure.
`show` names the fields of a result a vector is about.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from decimal import Decimal
from typing import Any

from kitchenlog.calc import (
    checks,
    fill_trust,
    fills,
    limits,
    minimum_weight,
    net_batches,
    net_content,
    net_limits,
    net_packs,
    ph_checks,
    scale_checks,
    thermometer_checks,
    vessel_checks,
    water,
)
from kitchenlog.calc.numbers import parse_decimal, plain, significant, written
from kitchenlog.calc.readings import Doubt
from tests.calc.registry_folds import entries_of

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def _d(text: str | None) -> Decimal | None:
    return None if text is None else parse_decimal(text)


def _ds(texts: Sequence[str]) -> tuple[Decimal, ...]:
    return tuple(parse_decimal(text) for text in texts)


def _w(x: Decimal | None) -> str | None:
    return None if x is None else written(x)


def _doubt(given: Given | None) -> Doubt | None:
    return None if given is None else Doubt(u=float(given["u"]), degrees=given["degrees"])


def _doubt_json(doubt: Doubt | None, g: Given) -> Given | None:
    return doubt and {"u": significant(doubt.u, g["digits"]), "degrees": doubt.degrees}


def _cited_json(cited: Sequence[limits.Cited]) -> Given:
    bases = [f"{each.what}: {each.basis}" for each in cited]
    return {"bases": bases, "source": cited[0].source if cited else None}


def _limit_json(limit: limits.Limit | None) -> Given | None:
    return limit and {"amount": plain(limit.amount), **_cited_json(limit.cited)}


def _cited(g: Given) -> list[limits.Cited]:
    return [limits.Cited(what="figure", source="a book", basis=each) for each in g["bases"]]


def _shown(result: Given, g: Given) -> Given:
    return {name: result[name] for name in g["show"]} if "show" in g else result


def _trusted_fill(g: Given) -> Given:
    made = fill_trust.trusted_fill(
        g["body"], happened_at=g["happened_at"], instruments=g["instruments"]
    )
    return {"fill": _shown({**made.fill}, g), "trust": {**made.trust}}


def _scale_class(g: Given) -> Given | None:
    found = limits.scale_class(_d(g["capacity"]), _d(g["division"]))
    return found and {
        "accuracy_class": found.accuracy_class,
        "divisions": written(found.divisions),
        **_cited_json(found.cited),
    }


def _water_density(g: Given) -> Given:
    density = water.water_density(_d(g["celsius"]))
    return {"kg_per_m3": written(density.kg_per_m3), **_cited_json(density.cited)}


def _held_volume(g: Given) -> Given:
    held = water.held_volume(
        _ds(g["masses"]),
        celsius=_d(g["celsius"]),
        celsius_u=float(g["celsius_u"]),
        division=_d(g["division"]),
        readings=g["readings"],
        repeatability=_d(g.get("repeatability")),
    )
    return {"volume": written(held.volume), **(_doubt_json(held.doubt, g) or {})}


def _minimum_weight(g: Given) -> Given:
    least = minimum_weight.minimum_weight(
        division=_d(g["division"]),
        repeatability=_d(g["repeatability"]),
        accuracy_percent=_d(g["accuracy_percent"]),
    )
    return {"amount": plain(least.amount), **_cited_json(least.cited)}


def _line(g: Given) -> minimum_weight.LineToWeigh:
    names = ("target", "below", "above", "tare", "accuracy_percent")
    return minimum_weight.LineToWeigh(**{name: _d(g["line"].get(name)) for name in names})


def _weigher(given: Given) -> minimum_weight.Weigher:
    names = ("division", "capacity", "repeatability")
    return minimum_weight.Weigher(
        instrument=given["instrument"],
        state=given.get("state", "fit"),
        **{name: _d(given.get(name)) for name in names},
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
        value=_d(given["value"]),
        reference=_d(given["reference"]),
        doubt=_doubt(given["doubt"]),
    )
    amount = _d(given["limit"])
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
    return _shown(checks.written_check(result, g["digits"]), g)


def _scale(g: Given) -> scale_checks.Scale:
    names = ("division", "e", "capacity", "repeatability")
    return scale_checks.Scale(
        accuracy_class=g["scale"].get("accuracy_class"),
        rules=g["scale"].get("rules", "r76_in_service"),
        **{name: _d(g["scale"].get(name)) for name in names},
    )


def _scale_result(g: Given) -> checks.CheckResult:
    return scale_checks.scale_check(_scale(g), g["steps"])


def _vessel(g: Given) -> vessel_checks.Vessel:
    return vessel_checks.Vessel(
        sort=g["vessel"]["sort"],
        capacity_mL=_d(g["vessel"]["capacity_mL"]),
        cylinder_class=g["vessel"].get("cylinder_class"),
    )


def _boiling(point: thermometer_checks.BoilingPoint) -> Given:
    return {
        "celsius": written(point.celsius),
        "tolerance": written(point.tolerance),
        **_cited_json(point.cited),
    }


def _meter(given: Given) -> dict[str, Decimal | None]:
    names = ("division", "repeatability", "allowed_error")
    return {name: _d(given.get(name)) for name in names}


def _thermometer_check(g: Given) -> Given:
    thermometer = thermometer_checks.Thermometer(**_meter(g["thermometer"]))
    result = thermometer_checks.thermometer_check(thermometer, g["steps"])
    return _shown(checks.written_check(result, g["digits"]), g)


def _ph_check(g: Given) -> Given:
    said = ph_checks.ph_check(ph_checks.PhMeter(**_meter(g["meter"])), g["steps"])
    figures = {
        "offset": said.offset,
        "span_percent": said.span_percent,
        "slope_percent": said.slope_percent,
    }
    texts = {name: None if x is None else plain(x) for name, x in figures.items()}
    return _shown({**checks.written_check(said.result, g["digits"]), **texts}, g)


def _pack_plan(g: Given) -> Given:
    plan = net_limits.pack_plan(g["lot_size"])
    return {
        "sample_size": plan.sample_size,
        "factor": _w(plan.factor),
        "allowed_over_mav": plan.allowed_over_mav,
        "tare_count": plan.tare_count,
        **_cited_json(plan.cited),
    }


def _batch_plan(g: Given) -> Given:
    plan = net_limits.batch_plan(
        g["batch_size"], rules=g["rules"], is_destructive=g["is_destructive"]
    )
    return {
        "first": [plan.sample_size, plan.accept_at_most, plan.reject_at_least],
        "second": [
            plan.second_cumulative_size,
            plan.second_accept_at_most,
            plan.second_reject_at_least,
        ],
        "mean": [plan.mean_sample_size, written(plan.mean_factor)],
        **_cited_json(plan.cited),
    }


def _moisture(given: Given) -> net_packs.Moisture:
    return net_packs.Moisture(
        percent=_d(given["percent"]), places=given["places"], taken=given["taken"]
    )


def _pack_result(g: Given) -> Given:
    moisture = g.get("moisture")
    result = net_packs.category_a(
        net_packs.WeighedLot(
            label=_d(g["label"]),
            column=g.get("column", "g"),
            tares=_ds(g["tares"]),
            gross=_ds(g["gross"]),
            lot_size=g["lot_size"],
            division=_d(g.get("division")),
            moisture=None if moisture is None else _moisture(moisture),
        )
    )
    return _shown(net_packs.written_pack_result(result, g["digits"]), g)


def _batch_result(g: Given) -> Given:
    result = net_batches.batch_check(
        net_batches.FilledBatch(
            nominal=_d(g["nominal"]),
            contents=_ds(g["contents"]),
            batch_size=g["batch_size"],
            rules=g.get("rules", "arrete_1978"),
            is_destructive=g.get("is_destructive", False),
            division=_d(g.get("division")),
        )
    )
    return _shown(net_batches.written_batch_result(result, g["digits"]), g)


def _larger(g: Given) -> Given:
    declared = net_content.larger_declaration(
        [(parse_decimal(amount), unit) for amount, unit in g["declarations"]]
    )
    return {"position": declared.position, "in_base": plain(declared.in_base)}


def _plain_all(amounts: Iterable[Decimal]) -> list[str]:
    return [plain(each) for each in amounts]


LIMITS: dict[str, Adapter] = {
    "leans_on_memory": lambda g: limits.leans_on_memory(_cited(g)),
    "is_disputed": lambda g: limits.is_disputed(_cited(g)),
    "scale_error_limit": lambda g: _limit_json(
        limits.scale_error_limit(
            _d(g["load"]), e=_d(g["e"]), accuracy_class=g["accuracy_class"], when=g["when"]
        )
    ),
    "division_tolerance": lambda g: _limit_json(
        limits.division_tolerance(
            _d(g["load"]), division=_d(g["division"]), accuracy_class=g["accuracy_class"]
        )
    ),
    "scale_class": _scale_class,
    "mass_tolerance": lambda g: _limit_json(
        limits.mass_tolerance(_d(g["nominal_g"]), g["weight_class"])
    ),
    "measure_limit": lambda g: _limit_json(limits.measure_limit(_d(g["nominal"]), g["sort"])),
    "cylinder_limit": lambda g: _limit_json(
        limits.cylinder_limit(_d(g["capacity_mL"]), g["cylinder_class"])
    ),
    "rectangular_u": lambda g: significant(
        limits.rectangular_u(_d(g["tolerance"])), g["digits"]
    ),
}

WATER: dict[str, Adapter] = {
    "water_density": _water_density,
    "mass_of_water": lambda g: written(
        water.mass_of_water(_d(g["volume_mL"]), _d(g["celsius"]))
    ),
    "millilitres_per_gram": lambda g: written(
        water.millilitres_per_gram(_d(g["celsius"]), g["places"])
    ),
    "held_volume": _held_volume,
    "error_percent": lambda g: written(
        water.error_percent(_d(g["value"]), _d(g["nominal"]), g["places"])
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
    "readings_in": lambda g: _plain_all(checks.readings_in(g["step"])),
    "reading_doubt": lambda g: _doubt_json(
        checks.reading_doubt(
            _ds(g["readings"]),
            division=_d(g["division"]),
            spread=_doubt(g["spread"]),
            tolerance=_d(g["tolerance"]),
        ),
        g,
    ),
    "judged": _judged,
    "summed_up": _summed_up,
    "cited_in": lambda g: _cited_json(checks.cited_in(_scale_result(g))),
    "written_check": lambda g: checks.written_check(_scale_result(g), g["digits"]),
}

SCALE_CHECKS: dict[str, Adapter] = {
    "scale_limit": lambda g: _limit_json(scale_checks.scale_limit(_scale(g), _d(g["load"]))),
    "scale_check": lambda g: _shown(checks.written_check(_scale_result(g), g["digits"]), g),
}

VESSEL_CHECKS: dict[str, Adapter] = {
    "vessel_limit": lambda g: _limit_json(
        vessel_checks.vessel_limit(_vessel(g), _d(g["graduation"]))
    ),
    "vessel_check": lambda g: _shown(
        checks.written_check(vessel_checks.vessel_check(_vessel(g), g["steps"]), g["digits"]), g
    ),
}

THERMOMETER_CHECKS: dict[str, Adapter] = {
    "boiling_point_at_altitude": lambda g: _boiling(
        thermometer_checks.boiling_point_at_altitude(_d(g["altitude_m"]))
    ),
    "boiling_point_at_pressure": lambda g: _boiling(
        thermometer_checks.boiling_point_at_pressure(_d(g["pressure_hPa"]))
    ),
    "thermometer_check": _thermometer_check,
}

PH_CHECKS: dict[str, Adapter] = {
    "ph_check": _ph_check,
    "slope_percent": lambda g: _w(ph_checks.slope_percent(g["steps"])),
}

NET_LIMITS: dict[str, Adapter] = {
    "maximum_allowable_variation": lambda g: _limit_json(
        net_limits.maximum_allowable_variation(_d(g["label_g"]), g["column"])
    ),
    "pack_division": lambda g: _limit_json(
        net_limits.pack_division(_d(g["label_g"]), g["column"])
    ),
    "pack_division_eu": lambda g: _limit_json(net_limits.pack_division_eu(_d(g["nominal"]))),
    "pack_plan": _pack_plan,
    "tolerable_shortage": lambda g: _limit_json(
        net_limits.tolerable_shortage(_d(g["nominal"]))
    ),
    "batch_plan": _batch_plan,
}

NET_CONTENT: dict[str, Adapter] = {
    "larger_declaration": _larger,
    "nominal_gross": lambda g: plain(
        net_content.nominal_gross(_d(g["label"]), _ds(g["tares"]))
    ),
    "package_errors": lambda g: _plain_all(
        net_content.package_errors(_ds(g["gross"]), _d(g["nominal"]))
    ),
    "in_measure_units": lambda g: written(
        net_content.in_measure_units(_d(g["error"]), _d(g["unit_of_measure"]), g["places"])
    ),
    "net_verdict": lambda g: net_content.net_verdict(g["reasons"]),
}

NET_PACKS: dict[str, Adapter] = {
    "moisture_allowance": lambda g: written(
        net_packs.moisture_allowance(_d(g["label"]), _moisture(g["moisture"]))
    ),
    "sample_error_limit": lambda g: significant(
        net_packs.sample_error_limit(float(g["sd"]), _d(g["factor"])), g["digits"]
    ),
    "category_a": _pack_result,
    "written_pack_result": _pack_result,
}

NET_BATCHES: dict[str, Adapter] = {
    "batch_check": _batch_result,
    "written_batch_result": _batch_result,
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
    "net_limits": NET_LIMITS,
    "net_content": NET_CONTENT,
    "net_packs": NET_PACKS,
    "net_batches": NET_BATCHES,
    "fills": {"fill_of": lambda g: _shown(fills.fill_of(g["body"]), g)},
    "fill_trust": {
        "trusted_fill": _trusted_fill,
        "fill_checks": lambda g: fill_trust.fill_checks(
            entries_of(g), g["code"], g["instruments"]
        ),
        "failed_scales": lambda g: fill_trust.failed_scales(g["fills"]),
    },
}
