"""How each function of kitchenlog.calc is called with what a vector gives.

An adapter takes the vector's `given` and returns the answer as JSON, decimals as text; doubles
are written to the `digits` the vector gives. The twin of this file is
frontend/src/calc/vectors_registry.ts.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import asdict
from decimal import Decimal
from typing import Any

from kitchenlog.calc import (
    balance,
    codes,
    density,
    numbers,
    readings,
    recipes,
    shelf_life,
    temperature,
    units,
)
from kitchenlog.calc.density_tables import DENSITY_ROWS, SPREAD_ROWS
from kitchenlog.calc.numbers import parse_decimal, significant, written
from tests.calc.registry_bench import BENCH
from tests.calc.registry_checks import CHECKS
from tests.calc.registry_costs import COSTS
from tests.calc.registry_folds import FOLDS
from tests.calc.registry_heat import HEAT
from tests.calc.registry_holds import HOLDS, MORE
from tests.calc.registry_instruments import INSTRUMENT_FOLDS, INSTRUMENTS
from tests.calc.registry_money import MONEY
from tests.calc.registry_net import NET
from tests.calc.registry_recipes import RECIPES_WRITTEN
from tests.calc.registry_skills import SKILLS
from tests.calc.registry_statistics import STATISTICS

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def _d(text: str | None) -> Decimal | None:
    return None if text is None else parse_decimal(text)


def _ds(texts: Sequence[str]) -> list[Decimal]:
    return [parse_decimal(text) for text in texts]


def _w(x: Decimal | None) -> str | None:
    return None if x is None else written(x)


def _double(x: float | None, g: Given) -> str | None:
    return None if x is None else significant(x, g["digits"])


def _pairs(pairs: Sequence[Sequence[str | None]]) -> list[tuple[Any, Any]]:
    return [(_d(part), _d(whole)) for part, whole in pairs]


def _factor(g: Given) -> recipes.Factor:
    return recipes.Factor(wanted=_d(g["factor"]["wanted"]), base=_d(g["factor"]["base"]))


def _factor_json(factor: recipes.Factor) -> dict[str, str]:
    return {"wanted": written(factor.wanted), "base": written(factor.base)}


def _doubt(g: Given) -> readings.Doubt | None:
    given = g["doubt"]
    return (
        None if given is None else readings.Doubt(u=float(given["u"]), degrees=given["degrees"])
    )


def _doubt_of(g: Given) -> dict[str, Any]:
    doubt = readings.doubt_of(
        division=_d(g["division"]),
        readings=g["readings"],
        repeatability=_d(g.get("repeatability")),
        repeats=_ds(g.get("repeats", [])),
    )
    return {"u": _double(doubt.u, g), "degrees": doubt.degrees}


def _limiting(g: Given) -> dict[str, Any] | None:
    lines = [
        recipes.Stocked(
            line=line["line"],
            needed=_d(line["needed"]),
            available=_d(line["available"]),
            yield_percent=_d(line.get("yield_percent", "100")),
        )
        for line in g["lines"]
    ]
    limit = recipes.limiting(lines)
    return limit and {"line": limit.line, "factor": _factor_json(limit.factor)}


def _whole_count(g: Given) -> dict[str, Any]:
    made = recipes.whole_count(_d(g["amount"]), _factor(g), rule=g["rule"])
    return {"count": written(made.count), "factor": _factor_json(made.factor)}


def _group_percent(g: Given) -> dict[str, Any]:
    group = balance.group_percent(_pairs(g["pairs"]), g["places"])
    return {**asdict(group), "percent": _w(group.percent)}


def _best_density(g: Given) -> dict[str, Any] | None:
    row = density.best_density(DENSITY_ROWS, g["ingredient"], g["packing"])
    return row and asdict(row)


def _row_and_spread(g: Given) -> tuple[density.DensityRow, density.Spread | None]:
    row = density.best_density(DENSITY_ROWS, g["ingredient"], g["packing"])
    assert row is not None
    return row, density.spread_of(row, DENSITY_ROWS, SPREAD_ROWS)


def _spread_of(g: Given) -> dict[str, Any] | None:
    _, spread = _row_and_spread(g)
    return spread and {
        "low_g_per_mL": written(spread.low_g_per_mL),
        "high_g_per_mL": written(spread.high_g_per_mL),
        "sources": list(spread.sources),
    }


def _converted(change: Callable[..., density.Converted]) -> Adapter:
    def adapter(g: Given) -> dict[str, Any]:
        row, spread = _row_and_spread(g)
        made = change(_d(g["amount"]), g["unit"], row, spread, places=g["places"])
        numbers_as_text = {name: _w(getattr(made, name)) for name in ("amount", "low", "high")}
        sources = list(made.spread_sources)
        return {**asdict(made), **numbers_as_text, "spread_sources": sources}

    return adapter


NUMBERS: dict[str, Adapter] = {
    "parse_decimal": lambda g: written(parse_decimal(g["text"])),
    "written": lambda g: written(_d(g["x"])),
    "plain": lambda g: numbers.plain(_d(g["x"])),
    "total": lambda g: written(numbers.total(_ds(g["amounts"]))),
    "difference": lambda g: written(numbers.difference(_d(g["a"]), _d(g["b"]))),
    "product": lambda g: written(numbers.product(_d(g["a"]), _d(g["b"]))),
    "rounded": lambda g: written(numbers.rounded(_d(g["x"]), g["places"], rule=g["rule"])),
    "divided": lambda g: written(
        numbers.divided(_d(g["a"]), _d(g["b"]), g["places"], rule=g["rule"])
    ),
    "significant": lambda g: significant(
        float(g["double"]) if "double" in g else _d(g["x"]), g["digits"]
    ),
    "as_double": lambda g: _double(numbers.as_double(_d(g["x"])), g),
}

UNITS: dict[str, Adapter] = {
    "is_unit": lambda g: units.is_unit(g["code"]),
    "dimension_of": lambda g: units.dimension_of(g["code"]),
    "base_unit_of": lambda g: units.base_unit_of(g["code"]),
    "in_base": lambda g: written(units.in_base(_d(g["amount"]), g["code"])),
    "from_base": lambda g: written(units.from_base(_d(g["amount"]), g["code"], g["places"])),
    "converted": lambda g: written(
        units.converted(_d(g["amount"]), g["from_code"], g["to_code"], g["places"])
    ),
    "label_metric": lambda g: written(units.label_metric(_d(g["amount"]))),
}

TEMPERATURE: dict[str, Adapter] = {
    "celsius": lambda g: written(temperature.celsius(_d(g["reading"]), g["code"], g["places"])),
    "celsius_to_half": lambda g: written(
        temperature.celsius_to_half(_d(g["reading"]), g["code"])
    ),
    "celsius_interval": lambda g: written(
        temperature.celsius_interval(_d(g["change"]), g["code"], g["places"])
    ),
    "fahrenheit": lambda g: written(temperature.fahrenheit(_d(g["degrees_celsius"]))),
    "kelvin": lambda g: written(temperature.kelvin(_d(g["degrees_celsius"]))),
}

DENSITY: dict[str, Adapter] = {
    "best_density": _best_density,
    "spread_of": _spread_of,
    "mass_of_volume": _converted(density.mass_of_volume),
    "volume_of_mass": _converted(density.volume_of_mass),
}

READINGS: dict[str, Adapter] = {
    "net": lambda g: written(readings.net(_d(g["shown"]), _d(g["tare"]))),
    "mean": lambda g: written(readings.mean(_ds(g["values"]), g["places"])),
    "repeat_sd": lambda g: _double(readings.repeat_sd(_ds(g["values"])), g),
    "rectangular_u": lambda g: _double(readings.rectangular_u(_d(g["tolerance"])), g),
    "resolution_u": lambda g: _double(
        readings.resolution_u(_d(g["division"]), g["readings"]), g
    ),
    "combined_u": lambda g: _double(readings.combined_u([float(p) for p in g["parts"]]), g),
    "doubt_of": _doubt_of,
    "coverage_factor": lambda g: _double(
        readings.coverage_factor(g["degrees"], _d(g.get("level"))), g
    ),
    "guard_band": lambda g: _double(readings.guard_band(_doubt(g), _d(g.get("level"))), g),
    "verdict": lambda g: readings.verdict(
        _d(g["value"]),
        low=_d(g["low"]),
        high=_d(g["high"]),
        doubt=_doubt(g),
        level=_d(g.get("level")),
    ),
    "is_fine_enough": lambda g: readings.is_fine_enough(
        _d(g["division"]),
        below=_d(g["below"]),
        above=_d(g["above"]),
        readings=g["readings"],
        repeatability=_d(g.get("repeatability")),
    ),
}

RECIPES: dict[str, Adapter] = {
    "scale_factor": lambda g: _factor_json(
        recipes.scale_factor(_d(g["wanted"]), _d(g["base"]))
    ),
    "packs_factor": lambda g: _factor_json(
        recipes.packs_factor(_d(g["packs"]), pack_net=_d(g["pack_net"]), makes=_d(g["makes"]))
    ),
    "limiting": _limiting,
    "scaled": lambda g: written(recipes.scaled(_d(g["amount"]), _factor(g), g["places"])),
    "factor_shown": lambda g: written(recipes.factor_shown(_factor(g), g["places"])),
    "whole_count": _whole_count,
    "bakers_percents": lambda g: [
        written(x)
        for x in recipes.bakers_percents(
            _ds(g["amounts"]), is_flour=g["is_flour"], places=g["places"]
        )
    ],
    "formula_percents": lambda g: [
        written(x) for x in recipes.formula_percents(_ds(g["amounts"]), g["places"])
    ],
    "amounts_from_percents": lambda g: [
        written(x)
        for x in recipes.amounts_from_percents(_ds(g["percents"]), _d(g["wanted"]), g["places"])
    ],
    "shared_out": lambda g: [
        written(x) for x in recipes.shared_out(_d(g["whole"]), _ds(g["weights"]), g["places"])
    ],
    "as_purchased": lambda g: written(
        recipes.as_purchased(_d(g["edible"]), _d(g["yield_percent"]), g["places"])
    ),
    "edible_portion": lambda g: written(
        recipes.edible_portion(_d(g["bought"]), _d(g["yield_percent"]), g["places"])
    ),
}

BALANCE: dict[str, Adapter] = {
    "percent_of": lambda g: _w(balance.percent_of(_d(g["part"]), _d(g["whole"]), g["places"])),
    "edible_yield_percent": lambda g: _w(
        balance.edible_yield_percent(_d(g["prepared"]), _d(g["received"]))
    ),
    "spoilage_percent": lambda g: _w(
        balance.spoilage_percent(_d(g["spoiled"]), _d(g["received"]))
    ),
    "rejects_percent": lambda g: _w(
        balance.rejects_percent(_d(g["rejected"]), _d(g["filled"]))
    ),
    "recovery_percent": lambda g: _w(
        balance.recovery_percent(_d(g["good_out"]), _d(g["put_in"]))
    ),
    "group_percent": _group_percent,
    "solids_in": lambda g: written(balance.solids_in(_pairs(g["lines"]))),
    "theoretical_out": lambda g: _w(
        balance.theoretical_out(_d(g["solids"]), _d(g["target_percent"]), g["places"])
    ),
    "implied_solids_percent": lambda g: _w(
        balance.implied_solids_percent(_d(g["solids"]), _d(g["out"]))
    ),
    "evaporated": lambda g: _w(balance.evaporated(_d(g["kettle_in"]), _d(g["kettle_out"]))),
    "unaccounted": lambda g: _w(balance.unaccounted(_d(g["put_in"]), _ds(g["came_out"]))),
    "unaccounted_u": lambda g: _double(
        balance.unaccounted_u([(_d(d), count) for d, count in g["weighings"]]), g
    ),
    "needs_a_look": lambda g: balance.needs_a_look(
        _d(g["remainder"]), put_in=_d(g["put_in"]), u=float(g["u"])
    ),
}

SHELF_LIFE: dict[str, Adapter] = {
    "add_days": lambda g: shelf_life.add_days(g["on"], g["days"]),
    "add_months": lambda g: shelf_life.add_months(g["on"], g["months"]),
    "month_end": lambda g: shelf_life.month_end(g["month"]),
    "last_day": lambda g: shelf_life.last_day(
        g["made_on"], sort=g["sort"], length=g["length"], unit=g["unit"]
    ),
    "earliest": lambda g: shelf_life.earliest(g["days"]),
    "composite_last_day": lambda g: shelf_life.composite_last_day(
        g["assigned"], g["inputs"], carries_through=g["carries_through"]
    ),
    "opened_last_day": lambda g: shelf_life.opened_last_day(
        g["opened_on"], days=g["days"], makers_day=g["makers_day"]
    ),
    "thawed_last_day": lambda g: shelf_life.thawed_last_day(
        g["thawed_on"], limit_days=g["limit_days"], used_days=g["used_days"]
    ),
    "days_left": lambda g: shelf_life.days_left(g["last"], g["today"]),
    "has_expired": lambda g: shelf_life.has_expired(g["last"], g["today"]),
    "life_state": lambda g: shelf_life.life_state(g["last"], g["today"], sort=g["sort"]),
    "local_day": lambda g: shelf_life.local_day(g["at"], g["utc_offset_min"]),
    "instant_of": lambda g: shelf_life.instant_of(g["wall"], g["utc_offset_min"]),
    "later": lambda g: shelf_life.later(g["at"], g["minutes"]),
    "elapsed_minutes": lambda g: shelf_life.elapsed_minutes(g["from_at"], g["to_at"]),
}

CODES: dict[str, Adapter] = {
    "is_lot_code": lambda g: codes.is_lot_code(g["text"]),
    "lot_code": lambda g: codes.lot_code(
        g["letters"], on=g["on"], mark=g["mark"], number=g["number"]
    ),
    "next_number": lambda g: codes.next_number(
        g["codes"], g["letters"], on=g["on"], mark=g["mark"]
    ),
    "letters_of": lambda g: codes.letters_of(g["name"]),
}

SUMS: dict[str, dict[str, Adapter]] = {
    "numbers": NUMBERS,
    "units": UNITS,
    "temperature": TEMPERATURE,
    "density": DENSITY,
    "readings": READINGS,
    "recipes": RECIPES,
    "balance": BALANCE,
    "shelf_life": SHELF_LIFE,
    "codes": CODES,
    **STATISTICS,
    **BENCH,
    **CHECKS,
    **NET,
    **INSTRUMENTS,
    **SKILLS,
    **HEAT,
    **COSTS,
    **RECIPES_WRITTEN,
}

ADAPTERS: dict[str, dict[str, Adapter]] = {
    **SUMS, **FOLDS, **INSTRUMENT_FOLDS, **MONEY, **HOLDS,
}  # fmt: skip
for _file, _more in MORE.items():
    ADAPTERS[_file] = {**ADAPTERS[_file], **_more}


def answer_to(file: str, function: str, given: Given) -> dict[str, Any]:
    """What the function says, in the shape of a vector's `then`."""
    try:
        return {function: ADAPTERS[file][function](given)}
    except (ValueError, ZeroDivisionError):
        return {"is_refused": True}
