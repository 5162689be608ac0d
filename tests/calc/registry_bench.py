"""How each function for yields, the kettle, mixing, curing and checks at the bench is called;
see registry.py.

What an answer leans on is told by `bases` ("yield: read") and the `source` of the first figure;
a limit of curing is one line. `show` names the fields of an answer a vector is about.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import asdict, fields
from decimal import Decimal
from typing import Any

from kitchenlog.calc import (
    acidified,
    acidity,
    altitude,
    brine,
    brix,
    cure_limits,
    curing,
    drying,
    keeping,
    kettle,
    mixing,
    yields,
)
from kitchenlog.calc.numbers import parse_decimal, plain, written
from kitchenlog.calc.recipes import Factor
from kitchenlog.calc.yield_tables import YIELD_ROWS, YieldRow
from tests.calc.registry_statistics import shown

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def _d(text: str | None) -> Decimal | None:
    return None if text is None else parse_decimal(text)


def _ds(texts: Sequence[str]) -> list[Decimal]:
    return [parse_decimal(text) for text in texts]


def _w(x: Decimal | None) -> str | None:
    return None if x is None else written(x)


def _limit_line(limit: cure_limits.CureLimit) -> str:
    most = "nothing" if limit.limit_ppm is None else plain(limit.limit_ppm)
    on = limit.basis_weight or "anything"
    return f"{limit.kind} {most} on {on}: {limit.verdict} ({limit.cited.basis})"


def _answer(found: Any, g: Given) -> Given | None:
    """An answer as JSON, the fields a vector asks for."""
    if found is None:
        return None
    made = {each.name: getattr(found, each.name) for each in fields(found)}
    if "cited" in made:
        cited = made.pop("cited")
        made["bases"] = [f"{each.what}: {each.basis}" for each in cited]
        made["source"] = cited[0].source if cited else None
    if "limits" in made:
        made["limits"] = [_limit_line(limit) for limit in made["limits"]]
    whole: Given = shown(made, g.get("digits", 17))
    return {name: whole[name] for name in g["show"]} if "show" in g else whole


def _answering(function: Callable[[Given], Any]) -> Adapter:
    return lambda g: _answer(function(g), g)


def _row(g: Given) -> YieldRow:
    found = [
        row
        for row in YIELD_ROWS
        if row.item == g["item"] and row.source.startswith(g.get("source", ""))
    ]
    return found[0]


def _pairs(g: Given) -> list[tuple[Decimal | None, Decimal | None]]:
    return [(_d(edible), _d(bought)) for edible, bought in g["preparations"]]


def _stage_yields(g: Given) -> yields.StageYields:
    stages = [
        yields.Stage(added=parse_decimal(added), out=_d(out)) for added, out in g["stages"]
    ]
    return yields.stage_yields(parse_decimal(g["raw"]), stages)


def _charges(g: Given) -> list[kettle.Charge]:
    return [
        kettle.Charge(
            amount=parse_decimal(each["amount"]),
            solids_percent=_d(each["solids_percent"]),
            u=float(each.get("u", "0")),
            solids_u=float(each.get("solids_u", "0")),
        )
        for each in g["charges"]
    ]


def _measured(given: Given | None) -> kettle.Measured | None:
    if given is None:
        return None
    return kettle.Measured(value=parse_decimal(given["value"]), u=float(given.get("u", "0")))


def _shares(g: Given) -> list[kettle.Share]:
    return [
        kettle.Share(share=parse_decimal(share), solids_percent=parse_decimal(percent))
        for share, percent in g["shares"]
    ]


def _moisture(given: Sequence[Any]) -> drying.Moisture:
    percent, basis, *u = given
    return drying.Moisture(
        percent=parse_decimal(percent), basis=basis, u=float(u[0]) if u else 0.0
    )


def _square(g: Given) -> mixing.Square:
    return mixing.Square(
        strong=parse_decimal(g["strong"]),
        weak=parse_decimal(g["weak"]),
        target=parse_decimal(g["target"]),
        basis=g.get("basis", "by_mass"),
        solute=g.get("solute", "other"),
    )


def _weighed(g: Given) -> list[brine.Weighed]:
    return [
        brine.Weighed(amount=parse_decimal(amount), percent=parse_decimal(percent), u=float(u))
        for amount, percent, u in g["parts"]
    ]


def _titration(g: Given) -> acidity.Titration:
    return acidity.Titration(
        acid=g["acid"],
        naoh_N=parse_decimal(g["naoh_N"]),
        naoh_mL=parse_decimal(g["naoh_mL"]),
        sample=parse_decimal(g["sample"]),
        sample_unit=g.get("sample_unit", "mL"),
        blank_mL=parse_decimal(g.get("blank_mL", "0")),
    )


def _case(g: Given) -> cure_limits.CureCase:
    return cure_limits.CureCase(
        use=g["use"],
        substance=g.get("substance", "sodium_nitrite"),
        rules=g.get("rules", "us"),
    )


def _made(g: Given) -> curing.CureMade:
    return curing.CureMade(
        cure=parse_decimal(g["cure"]),
        substance_percent=parse_decimal(g["substance_percent"]),
        green=_d(g.get("green")),
        others=_ds(g.get("others", [])),
        pump_percent=_d(g.get("pump_percent")),
    )


def _wanted(g: Given) -> curing.CureWanted:
    return curing.CureWanted(
        ppm=parse_decimal(g["ppm"]),
        substance_percent=parse_decimal(g["substance_percent"]),
        green=_d(g.get("green")),
        pickle=_d(g.get("pickle")),
        pump_percent=_d(g.get("pump_percent")),
    )


def _limits(g: Given) -> list[cure_limits.CureLimit]:
    ppm = Factor(wanted=parse_decimal(g["ppm"]), base=parse_decimal(g.get("base", "1")))
    return list(cure_limits.cure_limits(_case(g), ppm))


YIELDS: dict[str, Adapter] = {
    "yields_named": lambda g: [
        f"{row.item}: {row.yield_fraction}, {row.basis}"
        for row in yields.yields_named(YIELD_ROWS, g["words"])
    ],
    "published_yield": _answering(lambda g: yields.published_yield(_row(g))),
    "own_yield": lambda g: shown(asdict(yields.own_yield(_pairs(g))), 17),
    "proposed_yield": lambda g: _w(
        yields.proposed_yield(_d(g["in_use"]), yields.own_yield(_pairs(g)))
    ),
    "to_buy": lambda g: written(
        yields.to_buy(
            parse_decimal(g["edible"]),
            yield_percent=parse_decimal(g["yield_percent"]),
            step=parse_decimal(g["step"]),
        )
    ),
    "stage_yields": _answering(_stage_yields),
}

KETTLE: dict[str, Adapter] = {
    "kettle_target": _answering(
        lambda g: kettle.kettle_target(
            _charges(g), target_percent=parse_decimal(g["target_percent"]), tare=_d(g["tare"])
        )
    ),
    "kettle_evaporation": _answering(
        lambda g: kettle.kettle_evaporation(
            _charges(g), out=_measured(g["out"]), brix=_measured(g["brix"])
        )
    ),
    "formula_for": _answering(
        lambda g: kettle.formula_for(
            _shares(g),
            makes=parse_decimal(g["makes"]),
            target_percent=parse_decimal(g["target_percent"]),
        )
    ),
}

DRYING: dict[str, Adapter] = {
    "dry_basis_percent": lambda g: written(
        drying.dry_basis_percent(parse_decimal(g["wet_basis_percent"]), g["places"])
    ),
    "wet_basis_percent": lambda g: written(
        drying.wet_basis_percent(parse_decimal(g["dry_basis_percent"]), g["places"])
    ),
    "dried": _answering(
        lambda g: drying.dried(
            parse_decimal(g["mass"]),
            before=_moisture(g["before"]),
            after=_moisture(g["after"]),
            mass_u=float(g.get("mass_u", "0")),
        )
    ),
    "concentrated": _answering(
        lambda g: drying.concentrated(
            parse_decimal(g["mass"]),
            solids_percent=parse_decimal(g["solids_percent"]),
            to_percent=parse_decimal(g["to_percent"]),
            added_percent=parse_decimal(g.get("added_percent", "0")),
        )
    ),
}

MIXING: dict[str, Adapter] = {
    "pearson_shares": _answering(lambda g: mixing.pearson_shares(_square(g))),
    "mixed_to": _answering(lambda g: mixing.mixed_to(parse_decimal(g["makes"]), _square(g))),
    "added_to_reach": _answering(
        lambda g: mixing.added_to_reach(
            parse_decimal(g["amount"]), _square(g), at_hand=g["at_hand"]
        )
    ),
    "strength_of": lambda g: _w(
        mixing.strength_of([(parse_decimal(m), parse_decimal(p)) for m, p in g["parts"]])
    ),
}

BRINE: dict[str, Adapter] = {
    "weighed_strength": _answering(lambda g: brine.weighed_strength(_weighed(g))),
    "percent_by_mass": lambda g: written(
        brine.percent_by_mass(parse_decimal(g["percent_of_water"]), g["places"])
    ),
    "percent_of_water": lambda g: written(
        brine.percent_of_water(parse_decimal(g["percent_by_mass"]), g["places"])
    ),
    "salometer_percent": _answering(
        lambda g: brine.salometer_percent(parse_decimal(g["degrees"]), g["scale"])
    ),
    "salometer_degrees": _answering(
        lambda g: brine.salometer_degrees(parse_decimal(g["percent"]), g["scale"])
    ),
}


def _life_model(g: Given) -> keeping.LifeModel:
    numbers = {name: parse_decimal(g[name]) for name in ("parameter", "life_days", "at")}
    return keeping.LifeModel(kind=g["kind"], **numbers)


def _pair(texts: Sequence[str]) -> tuple[Decimal, Decimal]:
    first, second = texts
    return parse_decimal(first), parse_decimal(second)


KEEPING: dict[str, Adapter] = {
    "q10_of_lives": lambda g: shown(
        keeping.q10_of_lives(_pair(g["cold"]), _pair(g["warm"])), g.get("digits", 17)
    ),
    "life_at": lambda g: shown(
        keeping.life_at(_life_model(g["model"]), parse_decimal(g["celsius"])),
        g.get("digits", 17),
    ),
    "life_used": _answering(
        lambda g: keeping.life_used(
            _life_model(g["model"]),
            [_pair(each) for each in g["history"]],
            stored_at=parse_decimal(g["stored_at"]),
        )
    ),
    "out_of_chill": _answering(lambda g: keeping.out_of_chill(g["minutes"])),
}

BENCH: dict[str, dict[str, Adapter]] = {
    "keeping": KEEPING,
    "yields": YIELDS,
    "kettle": KETTLE,
    "drying": DRYING,
    "mixing": MIXING,
    "brine": BRINE,
    "brix": {
        "brix_correction": _answering(
            lambda g: brix.brix_correction(
                parse_decimal(g["measured_percent"]),
                parse_decimal(g["celsius"]),
                table=g.get("table"),
            )
        ),
    },
    "acidity": {
        "titratable_acidity": _answering(lambda g: acidity.titratable_acidity(_titration(g))),
    },
    "cure_limits": {
        "cure_limits": lambda g: [_limit_line(limit) for limit in _limits(g)],
        "worst_verdict": lambda g: cure_limits.worst_verdict(_limits(g)),
    },
    "curing": {
        "ingoing": _answering(lambda g: curing.ingoing(_case(g), _made(g))),
        "cure_needed": _answering(lambda g: curing.cure_needed(_case(g), _wanted(g))),
    },
    "altitude": {
        "canner_adjustment": _answering(
            lambda g: altitude.canner_adjustment(
                g["canner"], parse_decimal(g["altitude"]), g["unit"]
            )
        ),
    },
    "acidified": {
        "acid_line": _answering(
            lambda g: acidified.acid_line(
                parse_decimal(g["ph"]), water_activity=_d(g["water_activity"])
            )
        ),
        "five_log_hold": _answering(
            lambda g: acidified.five_log_hold(
                parse_decimal(g["temperature"]), g["unit"], ph=parse_decimal(g["ph"])
            )
        ),
    },
}
