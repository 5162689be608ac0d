"""How folds and walks about money are called with what a vector gives; see registry.py."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from kitchenlog.calc import asked_prices, batch_costs, cost_views, lot_worth, money
from kitchenlog.calc.numbers import parse_decimal, written
from tests.calc.registry_folds import fold_adapter
from tests.calc.registry_heat import picked

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def _cost_of_batch(g: Given) -> Given:
    made = batch_costs.cost_of_batch(
        g["batch"], cooperative=g["cooperative"], sheets=g["sheets"]
    )
    return picked(dict(made), g)


def _viewed_cost(g: Given) -> Given:
    made = cost_views.viewed_cost(
        g["batch"],
        g["view"],
        cooperative=g["cooperative"],
        sheets=g["sheets"],
        lots=g["lots"],
    )
    return dict(made)


def _used_lot(g: Given) -> Given:
    price, of_amount = (
        None if g[name] is None else parse_decimal(g[name]) for name in ("price", "of_amount")
    )
    worth = lot_worth.Worth(price=price, of_amount=of_amount, unit="g", lacking=())
    used = lot_worth.used_lot(worth, g["lot"], parse_decimal(g["amount"]))
    numbers = {name: getattr(used, name) for name in ("amount", "price", "of_amount")}
    shown = {name: None if x is None else written(x) for name, x in numbers.items()}
    return {"part": used.part, "lot": used.lot, **shown}


MONEY: dict[str, dict[str, Adapter]] = {
    "asked_prices": {
        "asked_state": fold_adapter(asked_prices.asked_state),
        "asked_on": lambda g: asked_prices.asked_on(
            g["state"], g["on"], for_whom=g["for_whom"], pack_net=g["pack_net"]
        ),
    },
    "batch_costs": {"cost_of_batch": _cost_of_batch},
    "cost_views": {"viewed_cost": _viewed_cost},
    "lot_worth": {"used_lot": _used_lot},
    "money": {
        "cost_state": fold_adapter(money.cost_state),
        "rates_state": fold_adapter(money.rates_state),
        "rates_on": lambda g: dict(money.rates_on(g["state"], g["on"])),
    },
}
