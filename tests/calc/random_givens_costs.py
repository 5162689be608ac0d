"""Random questions about cost and price; see random_givens.py."""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import Any

Given = dict[str, Any]


def money(c: Random) -> str:
    return c.choice(("0", "0.01", f"{c.uniform(0, 500):.2f}", f"{c.randrange(9000)}"))


def amount(c: Random) -> str:
    return c.choice((f"{c.randint(1, 40)}", f"{c.uniform(0, 900):.{c.randint(0, 3)}f}", "0"))


def percent(c: Random) -> str:
    return c.choice(("0", "30", "50", "100", "-20", f"{c.uniform(0, 99):.2f}"))


def maybe(c: Random, make: Callable[[Random], Any]) -> Any:
    return None if c.random() < 0.1 else make(c)


def several(c: Random, make: Callable[[Random], Any], most: int = 6) -> list[Any]:
    return [make(c) for _ in range(c.randint(0, most))]


def places(c: Random) -> int:
    return c.choice((0, 2, 2, 3))


def ratio(c: Random) -> list[str]:
    sign = "-" if c.random() < 0.1 else ""
    under = c.choice(("1", "3", "7", "64", "0.5", "-3", "0" if c.random() < 0.1 else "9"))
    return [f"{sign}{money(c)}", under]


def used(c: Random) -> Given:
    return {
        "part": c.choice(("materials", "packs")),
        "lot": c.choice("abcdef"),
        "amount": amount(c),
        "price": maybe(c, money),
        "of_amount": maybe(c, amount),
    }


def labour(c: Random) -> Given:
    return {
        "member": c.choice(("ana", "ben")),
        "minutes": f"{c.randrange(600)}",
        "rate_per_hour": maybe(c, money),
        "is_paid": c.random() < 0.7,
    }


def expense(c: Random) -> Given:
    if c.random() < 0.2:
        of = c.choice(("materials", "labour", "materials_and_labour"))
        return {"percent": maybe(c, percent), "of": of}
    return {
        "part": c.choice(("fuel", "overhead", "by_products")),
        "name": c.choice(("gas", "kg")),
        "amount": maybe(c, money),
        "per": c.choice(("1", "60", "1000")),
    }


def batch(c: Random) -> Given:
    return {
        "used": several(c, used),
        "labour": several(c, labour, 3),
        "expenses": several(c, expense, 3),
        "good": maybe(c, lambda c: f"{c.randrange(70)}"),
        "filled": maybe(c, lambda c: f"{c.randrange(70)}"),
        "places": places(c),
    }


def priced(c: Random) -> Given:
    return {
        "cost": money(c),
        "packs": f"{c.randrange(70)}",
        "of": c.choice(("cost", "price")),
        "percent": percent(c),
        "commission_percent": c.choice(("0", "0", "20", percent(c))),
    }


def moves(c: Random) -> list[Given]:
    made: list[Given] = []
    for number in range(c.randint(0, 9)):
        outs = [each["id"] for each in made if each["sort"] == "out"]
        sort = c.choice(("in", "in", "out", "out", "back" if outs else "in"))
        move = {"sort": sort, "id": f"m{number}", "amount": f"{c.randint(1, 12)}"}
        if sort == "in":
            move["price"] = maybe(c, money)
        if sort == "back":
            move |= {"of": c.choice(outs), "amount": f"{c.randint(1, 4)}"}
        made.append(move)
    return made


COST_GIVENS: dict[tuple[str, str], Callable[[Random], Given]] = {
    ("coins", "as_decimal"): lambda c: {"amount": ratio(c), "places": places(c)},
    ("coins", "coin_parts"): lambda c: {"parts": several(c, ratio, 8), "places": places(c)},
    ("coins", "in_steps"): lambda c: {
        "amount": ratio(c),
        "step": c.choice(("0.05", "0.25", "1", "5", "0", money(c))),
        "rule": c.choice(("up", "nearest", "down")),
    },
    ("costs", "batch_cost"): batch,
    ("costs", "lot_cost"): lambda c: {"poured": several(c, used, 3)},
    ("costs", "planned_use"): lambda c: {
        "material": "m", "edible": amount(c), "yield_percent": percent(c),
        "price_each": maybe(c, money),
    },
    ("costs", "usable_price"): lambda c: {
        "price": money(c), "yield_percent": percent(c), "places": places(c)
    },
    ("costs", "overhead"): lambda c: {
        "by": c.choice(("batch", "labour_hour", "kg", "kettle_hour")),
        "rate": money(c), "quantity": maybe(c, amount),
    },
    ("product_shares", "joint_costs"): lambda c: {
        "cost": money(c),
        "products": several(c, lambda c: ["x", c.choice((amount(c), "5", "2"))], 4),
        "by": c.choice(("mass", "sales_value")),
        "places": places(c),
    },
    ("prices", "markup_percent"): lambda c: {"cost": money(c), "price": money(c)},
    ("prices", "margin_percent"): lambda c: {"cost": money(c), "price": money(c)},
    ("prices", "margin_of_markup"): lambda c: {"markup": c.choice(("-100", percent(c)))},
    ("prices", "markup_of_margin"): lambda c: {"margin": percent(c)},
    ("prices", "exact_price"): priced,
    ("prices", "price_proposal"): lambda c: {
        **priced(c), "coin": c.choice(("0", "0.05", "0.25", "1")),
        "rule": c.choice(("up", "nearest", "down")),
    },
    ("prices", "break_even"): lambda c: {
        "fixed": c.choice((money(c), "-1")), "price": money(c), "variable": money(c)
    },
    ("stock_costs", "stock_cost"): lambda c: {
        "moves": moves(c), "view": c.choice(("fifo", "moving_average")), "places": places(c),
        "is_period": c.random() < 0.2,
    },
    ("stock_costs", "in_period"): lambda c: {"moves": moves(c)},
    ("share_outs", "share_out"): lambda c: {
        "net": f"{c.choice(('', '-'))}{c.choice((money(c), '12', '10.001'))}",
        "uses": [[m, amount(c)] for m in c.sample("abcde", c.randint(0, 5))],
        "reserve_percent": percent(c),
        "loss": c.choice(("shared", "carried")),
        "places": places(c),
    },
}  # fmt: skip
