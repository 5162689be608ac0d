"""Two views of what stock cost: first in first out, and moving average (production 2.4).

They are views: what a batch cost is the actual cost of its lots (costs.py), and the order of
cost is not the order of picking. Movements come in the order in which they took effect, so a
late receipt or price is put in its place and everything is worked out anew. Under both views
purchases = cost of goods + closing stock.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from kitchenlog.calc.coins import as_decimal, coin_parts
from kitchenlog.calc.numbers import ZERO, difference, total

View = Literal["fifo", "moving_average"]
Sort = Literal["in", "out", "back"]

EACH_PLACES = 4


@dataclass(frozen=True, kw_only=True)
class Move:
    """Stock that came `in` for a price, went `out`, or came `back` of an earlier out (`of`)."""

    sort: Sort
    id: str
    amount: Decimal
    price: Decimal | None = None
    of: str | None = None


@dataclass(frozen=True, kw_only=True)
class OutCost:
    """What went out, less what came back, and its cost in coins: None while a price is missing.

    Provisional: it went out of stock that was not booked yet, at the last known cost.
    """

    id: str
    amount: Decimal
    cost: Decimal | None
    is_provisional: bool


@dataclass(frozen=True, kw_only=True)
class StockCost:
    """Costs in coins that add up; `missing` names the receipts without a price and what went
    out before any cost was known. `closing_each` is the unit cost of what is left."""

    view: View
    outs: tuple[OutCost, ...]
    cost_of_goods: Decimal | None
    closing_amount: Decimal
    closing: Decimal | None
    closing_each: Decimal | None
    missing: tuple[str, ...]


def stock_cost(moves: Sequence[Move], view: View, places: int) -> StockCost:
    """Walk the movements in their order; `places` are those of a coin.

    Stock below nothing goes out at the last known cost, marked provisional, until the next
    receipts, which fill it at their cost. What comes back does so at the cost at which it left.
    Raises ValueError for an amount that is not above zero, a price below zero, and a return of
    what never went out or of more than that.
    """
    books = _Books(view)
    for move in moves:
        books.take(move)
    return books.closed(places)


def in_period(moves: Sequence[Move]) -> tuple[Move, ...]:
    """All receipts of a period before anything goes out: with a moving average over that, the
    weighted average of the period."""
    receipts = [move for move in moves if move.sort == "in"]
    return (*receipts, *(move for move in moves if move.sort != "in"))


@dataclass(frozen=True, kw_only=True)
class _Layer:
    """So much stock at one unit cost; None where one of `lacking` has no price."""

    amount: Decimal
    each: Fraction | None
    lacking: tuple[str, ...] = ()
    is_provisional: bool = False


class _Books:
    """Layers of stock, and for each out the layers that it took."""

    def __init__(self, view: View) -> None:
        self._view: View = view
        self._stock: list[_Layer] = []
        self._taken: dict[str, list[_Layer]] = {}
        self._last_known: Fraction | None = None

    def take(self, move: Move) -> None:
        if move.amount <= ZERO or (move.price is not None and move.price < ZERO):
            raise ValueError("a movement is of more than nothing")
        if move.sort == "in":
            self._come(_received(move))
        elif move.sort == "out":
            if move.id in self._taken:
                raise ValueError(f"{move.id!r} went out twice")
            self._taken[move.id] = self._drawn(move.amount, move.id)
        else:
            self._return(self._taken.get(move.of or "", []), move.amount)

    def closed(self, places: int) -> StockCost:
        """The books as they stand now."""
        taken = [layer for layers in self._taken.values() for layer in layers]
        shorts = [layer for layer in taken if layer.is_provisional]
        left = [*self._stock, *(replace(each, amount=-each.amount) for each in shorts)]
        values = [*map(_value, self._taken.values()), _value(left)]
        coins = iter(coin_parts([value for value in values if value is not None], places))
        shown = [None if value is None else next(coins) for value in values]
        outs = tuple(
            OutCost(
                id=name,
                amount=_amount(layers),
                cost=cost,
                is_provisional=any(layer.is_provisional for layer in layers),
            )
            for (name, layers), cost in zip(self._taken.items(), shown, strict=False)
        )
        costs = [out.cost for out in outs if out.cost is not None]
        lacking = {name for layer in [*left, *taken] for name in layer.lacking}
        return StockCost(
            view=self._view,
            outs=outs,
            cost_of_goods=total(costs) if len(costs) == len(outs) else None,
            closing_amount=_amount(left),
            closing=shown[-1],
            closing_each=_each_of(_amount(left), values[-1]),
            missing=tuple(sorted(lacking)),
        )

    def _come(self, receipt: _Layer) -> None:
        """A receipt first fills what went out before it was booked."""
        layer = receipt
        for name, taken in self._taken.items():
            filled_up: list[_Layer] = []
            for short in taken:
                if not short.is_provisional:
                    filled_up.append(short)
                    continue
                filled = min(short.amount, layer.amount)
                filled_up.append(replace(layer, amount=filled))
                filled_up.append(replace(short, amount=difference(short.amount, filled)))
                layer = replace(layer, amount=difference(layer.amount, filled))
            self._taken[name] = [each for each in filled_up if each.amount > ZERO]
        if layer.each is not None:
            self._last_known = layer.each
        self._put(layer, at_front=False)

    def _drawn(self, wanted: Decimal, name: str) -> list[_Layer]:
        amount = wanted
        drawn: list[_Layer] = []
        while amount > ZERO and self._stock:
            first = self._stock.pop(0)
            used = min(first.amount, amount)
            drawn.append(replace(first, amount=used))
            amount = difference(amount, used)
            rest = difference(first.amount, used)
            if rest > ZERO:
                self._stock.insert(0, replace(first, amount=rest))
        if amount > ZERO:
            known = self._last_known
            lacking = (name,) if known is None else ()
            drawn.append(
                _Layer(amount=amount, each=known, lacking=lacking, is_provisional=True)
            )
        return drawn

    def _return(self, taken: list[_Layer], wanted: Decimal) -> None:
        """What went out last comes back first; what was never in stock only ceases to be
        short."""
        amount = wanted
        if amount > _amount(taken):
            raise ValueError("more came back than went out")
        while amount > ZERO:
            last = taken.pop()
            back = min(last.amount, amount)
            rest = difference(last.amount, back)
            if rest > ZERO:
                taken.append(replace(last, amount=rest))
            if not last.is_provisional:
                self._put(replace(last, amount=back), at_front=True)
            amount = difference(amount, back)

    def _put(self, layer: _Layer, *, at_front: bool) -> None:
        if layer.amount <= ZERO:
            return
        self._stock.insert(0 if at_front else len(self._stock), layer)
        if self._view == "moving_average":
            self._stock = [_merged(self._stock)]


def _received(move: Move) -> _Layer:
    if move.price is None:
        return _Layer(amount=move.amount, each=None, lacking=(move.id,))
    return _Layer(amount=move.amount, each=Fraction(move.price) / Fraction(move.amount))


def _merged(stock: Sequence[_Layer]) -> _Layer:
    """One layer at the average of all: unknown while one of them is."""
    amount, value = _amount(stock), _value(stock)
    return _Layer(
        amount=amount,
        each=None if value is None else value / Fraction(amount),
        lacking=tuple(dict.fromkeys(name for layer in stock for name in layer.lacking)),
    )


def _amount(layers: Sequence[_Layer]) -> Decimal:
    return total(layer.amount for layer in layers)


def _value(layers: Sequence[_Layer]) -> Fraction | None:
    value = Fraction(0)
    for layer in layers:
        if layer.each is None:
            return None
        value += layer.each * Fraction(layer.amount)
    return value


def _each_of(amount: Decimal, value: Fraction | None) -> Decimal | None:
    """The unit cost of what is left; None of nothing."""
    if value is None or not amount:
        return None
    return as_decimal(value / Fraction(amount), EACH_PLACES)
