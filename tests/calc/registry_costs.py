"""How the functions about cost and price are called with what a vector gives; see registry.py.

Exact fractions are pairs of decimals. `show` names fields of the result a vector is about; a
cited source is told as "what: basis".
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict
from decimal import Decimal
from fractions import Fraction
from typing import Any

from kitchenlog.calc import coins, costs, prices, product_shares, share_outs, stock_costs
from kitchenlog.calc.numbers import parse_decimal, plain, written
from tests.calc.registry_heat import picked

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def _d(text: str | None) -> Decimal | None:
    return None if text is None else parse_decimal(text)


def _w(x: Decimal | None) -> str | None:
    return None if x is None else written(x)


def _ratio(pair: list[str]) -> Fraction:
    over, under = map(parse_decimal, pair)
    return Fraction(over) / Fraction(under)


def _used(each: Given) -> costs.UsedLot:
    return costs.UsedLot(
        part=each.get("part", "materials"),
        lot=each["lot"],
        amount=_d(each["amount"]),
        price=_d(each["price"]),
        of_amount=_d(each["of_amount"]),
    )


def _used_json(used: costs.UsedLot) -> Given:
    numbers = {name: _w(getattr(used, name)) for name in ("amount", "price", "of_amount")}
    return {"part": used.part, "lot": used.lot, **numbers}


def _labour(each: Given) -> costs.Labour:
    return costs.Labour(
        member=each["member"],
        minutes=_d(each["minutes"]),
        rate_per_hour=_d(each["rate_per_hour"]),
        is_paid=each.get("is_paid", True),
    )


def _expense(each: Given) -> costs.Expense | costs.Surcharge:
    if "percent" in each:
        return costs.Surcharge(name=each["of"], percent=_d(each["percent"]), of=each["of"])
    per = _d(each.get("per", "1"))
    return costs.Expense(
        part=each["part"], name=each["name"], amount=_d(each["amount"]), per=per
    )


def _missing(missing: tuple[costs.Missing, ...]) -> list[str]:
    return [f"{each.what}: {each.of}" for each in missing]


def _batch_cost(g: Given) -> Given:
    made = costs.batch_cost(
        [_used(each) for each in g["used"]],
        labour=[_labour(each) for each in g.get("labour", [])],
        expenses=[_expense(each) for each in g.get("expenses", [])],
        packs=costs.Packs(good=_d(g.get("good")), filled=_d(g.get("filled"))),
        places=g["places"],
    )
    names = ("known", "unpaid", "total", "per_good_pack", "per_filled_pack")
    answer = {
        **{name: _w(getattr(made, name)) for name in (*names, "per_good_pack_paid")},
        "lines": [[x.part, x.of, written(x.cost), x.is_paid] for x in made.lines],
        "parts": {part: written(sum_) for part, sum_ in made.parts.items()},
        "missing": _missing(made.missing),
    }
    return picked(answer, g)


def _lot_cost(g: Given) -> Given:
    made = costs.lot_cost([_used(each) for each in g["poured"]])
    return {"cost": _w(made.cost), "missing": _missing(made.missing)}


def _overhead(g: Given) -> Given:
    made = costs.overhead(g["by"], _d(g["rate"]), _d(g["quantity"]))
    return {**asdict(made), "amount": _w(made.amount), "per": written(made.per)}


def _joint(g: Given) -> Given:
    products = [
        product_shares.JointProduct(lot=lot, weight=parse_decimal(weight))
        for lot, weight in g["products"]
    ]
    made = product_shares.joint_costs(_d(g["cost"]), products, g["by"], g["places"])
    cited = f"{made.cited.what}: {made.cited.basis}"
    return {"costs": [written(each) for each in made.costs], "cited": cited}


def _cost(g: Given) -> prices.PackCost:
    return prices.PackCost(cost=_d(g["cost"]), packs=_d(g.get("packs", "1")))


def _wanted(g: Given) -> prices.Wanted:
    kept = _d(g.get("commission_percent", "0"))
    return prices.Wanted(of=g["of"], percent=_d(g["percent"]), commission_percent=kept)


def _proposal(g: Given) -> Given:
    made = prices.price_proposal(
        _cost(g), _wanted(g), coin=_d(g["coin"]), rule=g.get("rule", "up")
    )
    return {name: _w(value) for name, value in asdict(made).items()}


def _break_even(g: Given) -> Given | None:
    found = prices.break_even(_d(g["fixed"]), price=_d(g["price"]), variable=_d(g["variable"]))
    return found and {"exact": written(found.exact), "packs": found.packs}


def _move(each: Given) -> stock_costs.Move:
    return stock_costs.Move(
        sort=each["sort"],
        id=each["id"],
        amount=_d(each["amount"]),
        price=_d(each.get("price")),
        of=each.get("of"),
    )


def _moves(g: Given) -> list[stock_costs.Move]:
    return [_move(each) for each in g["moves"]]


def _stock_cost(g: Given) -> Given:
    moves = stock_costs.in_period(_moves(g)) if g.get("is_period") else _moves(g)
    made = stock_costs.stock_cost(moves, g["view"], g["places"])
    return picked(
        {
            "view": made.view,
            "outs": [
                [each.id, plain(each.amount), _w(each.cost), each.is_provisional]
                for each in made.outs
            ],
            "cost_of_goods": _w(made.cost_of_goods),
            "closing_amount": plain(made.closing_amount),
            "closing": _w(made.closing),
            "closing_each": _w(made.closing_each),
            "missing": list(made.missing),
        },
        g,
    )


def _share_out(g: Given) -> Given:
    made = share_outs.share_out(
        _d(g["net"]),
        [share_outs.Use(member=m, amount=parse_decimal(amount)) for m, amount in g["uses"]],
        reserve_percent=_d(g["reserve_percent"]),
        loss=g.get("loss", "carried"),
        places=g["places"],
    )
    return {
        "reserve": written(made.reserve),
        "to_share": written(made.to_share),
        "shares": [[each.member, written(each.amount)] for each in made.shares],
        "carried": written(made.carried),
        "cited": f"{made.cited.what}: {made.cited.basis}",
    }


COSTS: dict[str, dict[str, Adapter]] = {
    "coins": {
        "as_decimal": lambda g: written(coins.as_decimal(_ratio(g["amount"]), g["places"])),
        "coin_parts": lambda g: [
            written(each)
            for each in coins.coin_parts([_ratio(each) for each in g["parts"]], g["places"])
        ],
        "in_steps": lambda g: written(
            coins.in_steps(_ratio(g["amount"]), _d(g["step"]), g["rule"])
        ),
    },
    "costs": {
        "batch_cost": _batch_cost,
        "lot_cost": _lot_cost,
        "planned_use": lambda g: _used_json(
            costs.planned_use(
                g["material"],
                _d(g["edible"]),
                yield_percent=_d(g["yield_percent"]),
                price_each=_d(g["price_each"]),
            )
        ),
        "usable_price": lambda g: written(
            costs.usable_price(_d(g["price"]), _d(g["yield_percent"]), g["places"])
        ),
        "overhead": _overhead,
    },
    "prices": {
        "markup_percent": lambda g: _w(prices.markup_percent(_d(g["cost"]), _d(g["price"]))),
        "margin_percent": lambda g: _w(prices.margin_percent(_d(g["cost"]), _d(g["price"]))),
        "margin_of_markup": lambda g: written(prices.margin_of_markup(_d(g["markup"]))),
        "markup_of_margin": lambda g: written(prices.markup_of_margin(_d(g["margin"]))),
        "exact_price": lambda g: written(
            prices.exact_price(_cost(g), _wanted(g), g.get("places", prices.PRICE_PLACES))
        ),
        "price_proposal": _proposal,
        "break_even": _break_even,
    },
    "product_shares": {"joint_costs": _joint},
    "stock_costs": {
        "stock_cost": _stock_cost,
        "in_period": lambda g: [each.id for each in stock_costs.in_period(_moves(g))],
    },
    "share_outs": {"share_out": _share_out},
}
