"""How each function about net content is called; see registry.py and registry_checks.py."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from kitchenlog.calc import fill_trust, fills, net_batches, net_content, net_limits, net_packs
from kitchenlog.calc.numbers import parse_decimal, plain, significant, written
from tests.calc.registry_folds import entries_of
from tests.calc.vector_answers import (
    cited_json,
    decimal,
    decimals,
    limit_json,
    plain_all,
    shown,
    text,
)
from tests.calc.written import written_batch_result, written_pack_result

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def _trusted_fill(g: Given) -> Given:
    made = fill_trust.trusted_fill(
        g["body"], happened_at=g["happened_at"], instruments=g["instruments"]
    )
    return {"fill": shown({**made.fill}, g), "trust": {**made.trust}}


def _pack_plan(g: Given) -> Given:
    plan = net_limits.pack_plan(g["lot_size"])
    return {
        "sample_size": plan.sample_size,
        "factor": text(plan.factor),
        "allowed_over_mav": plan.allowed_over_mav,
        "tare_count": plan.tare_count,
        **cited_json(plan.cited),
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
        **cited_json(plan.cited),
    }


def _moisture(given: Given) -> net_packs.Moisture:
    return net_packs.Moisture(
        percent=decimal(given["percent"]), places=given["places"], taken=given["taken"]
    )


def _pack_result(g: Given) -> Given:
    moisture = g.get("moisture")
    result = net_packs.category_a(
        net_packs.WeighedLot(
            label=decimal(g["label"]),
            column=g.get("column", "g"),
            tares=decimals(g["tares"]),
            gross=decimals(g["gross"]),
            lot_size=g["lot_size"],
            division=decimal(g.get("division")),
            moisture=None if moisture is None else _moisture(moisture),
        )
    )
    return shown(written_pack_result(result, g["digits"]), g)


def _batch_result(g: Given) -> Given:
    result = net_batches.batch_check(
        net_batches.FilledBatch(
            nominal=decimal(g["nominal"]),
            contents=decimals(g["contents"]),
            batch_size=g["batch_size"],
            rules=g.get("rules", "arrete_1978"),
            is_destructive=g.get("is_destructive", False),
            division=decimal(g.get("division")),
        )
    )
    return shown(written_batch_result(result, g["digits"]), g)


def _larger(g: Given) -> Given:
    declared = net_content.larger_declaration(
        [(parse_decimal(amount), unit) for amount, unit in g["declarations"]]
    )
    return {"position": declared.position, "in_base": plain(declared.in_base)}


NET_LIMITS: dict[str, Adapter] = {
    "maximum_allowable_variation": lambda g: limit_json(
        net_limits.maximum_allowable_variation(decimal(g["label_g"]), g["column"])
    ),
    "pack_division": lambda g: limit_json(
        net_limits.pack_division(decimal(g["label_g"]), g["column"])
    ),
    "pack_division_eu": lambda g: limit_json(
        net_limits.pack_division_eu(decimal(g["nominal"]))
    ),
    "pack_plan": _pack_plan,
    "tolerable_shortage": lambda g: limit_json(
        net_limits.tolerable_shortage(decimal(g["nominal"]))
    ),
    "batch_plan": _batch_plan,
}

NET_CONTENT: dict[str, Adapter] = {
    "larger_declaration": _larger,
    "nominal_gross": lambda g: plain(
        net_content.nominal_gross(decimal(g["label"]), decimals(g["tares"]))
    ),
    "package_errors": lambda g: plain_all(
        net_content.package_errors(decimals(g["gross"]), decimal(g["nominal"]))
    ),
    "in_measure_units": lambda g: written(
        net_content.in_measure_units(
            decimal(g["error"]), decimal(g["unit_of_measure"]), g["places"]
        )
    ),
    "net_verdict": lambda g: net_content.net_verdict(g["reasons"]),
}

NET_PACKS: dict[str, Adapter] = {
    "moisture_allowance": lambda g: written(
        net_packs.moisture_allowance(decimal(g["label"]), _moisture(g["moisture"]))
    ),
    "sample_error_limit": lambda g: significant(
        net_packs.sample_error_limit(float(g["sd"]), decimal(g["factor"])), g["digits"]
    ),
    "category_a": _pack_result,
}

NET_BATCHES: dict[str, Adapter] = {
    "batch_check": _batch_result,
}

NET: dict[str, dict[str, Adapter]] = {
    "net_limits": NET_LIMITS,
    "net_content": NET_CONTENT,
    "net_packs": NET_PACKS,
    "net_batches": NET_BATCHES,
    "fills": {"fill_of": lambda g: shown(fills.fill_of(g["body"]), g)},
    "fill_trust": {
        "trusted_fill": _trusted_fill,
        "fill_checks": lambda g: fill_trust.fill_checks(
            entries_of(g), g["code"], g["instruments"]
        ),
        "failed_scales": lambda g: fill_trust.failed_scales(g["fills"]),
    },
}
