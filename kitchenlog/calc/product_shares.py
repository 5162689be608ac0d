"""How the products of a batch share its cost: by mass, by sales value, or as by-products.

A by-product is credited at its value and lowers the cost of the others, which share what is
left (production 2.1, joint products: from memory of cost-accounting texts, and marked so).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Any, Literal, Self

from kitchenlog.calc.bodies import Body, amount_in, decimal_in, items_in, object_in, text_in
from kitchenlog.calc.coins import coin_parts
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import ONE, ZERO, parse_decimal, product, total

JointBy = Literal["mass", "sales_value"]
Sort = Literal["main", "by_product"]

_THOUSANDTH = parse_decimal("0.001")  # a value is of a pack, or of a kg or L
_BY: dict[str, JointBy] = {"mass": "mass", "sales_value": "sales_value"}


@dataclass(frozen=True, kw_only=True)
class JointProduct:
    """One of several products of one batch: its mass, or what it sells for where they part."""

    lot: str
    weight: Decimal


@dataclass(frozen=True, kw_only=True)
class JointCosts:
    """The cost of each product, in coins that add up, and who says how to share it."""

    costs: tuple[Decimal, ...]
    cited: Cited


@dataclass(frozen=True, kw_only=True)
class Product:
    """One lot that came out: `amount` in its base unit, None where outputs of it were measured
    unlike. `value` is of all of it, None while nobody said one in the currency of the cost."""

    lot: str
    sort: Sort
    rows: tuple[Body, ...]
    amount: Decimal | None
    unit: str | None
    value: Decimal | None


@dataclass(frozen=True, kw_only=True)
class Products:
    """All lots that came out of a batch, in the order in which they did."""

    rows: tuple[Product, ...]
    by: JointBy

    @classmethod
    def of(
        cls, batch: Mapping[str, Any], cost: Mapping[str, Any], currency: str | None
    ) -> Self:
        """From the sheets of a batch and of its cost; by mass where nobody said otherwise."""
        shared = object_in(cost, "shared") or {}
        is_known = currency is None or text_in(shared, "currency") == currency
        said = {text_in(each, "lot"): each for each in items_in(shared, "products")}
        lots: dict[str, list[Body]] = {}
        for each in items_in(batch, "outputs"):
            lots.setdefault(text_in(each, "lot") or "", []).append(each)
        return cls(
            rows=tuple(
                _product_of(lot, rows, said.get(lot, {}), is_known=is_known)
                for lot, rows in lots.items()
            ),
            by=_BY.get(text_in(shared, "by") or "", "mass"),
        )

    @property
    def main(self) -> tuple[Product, ...]:
        """Those that carry the cost."""
        return tuple(each for each in self.rows if each.sort == "main")

    @property
    def by_products(self) -> tuple[Product, ...]:
        """Those that lower it."""
        return tuple(each for each in self.rows if each.sort == "by_product")

    def shares(self, cost: Decimal, places: int) -> dict[str, Decimal] | None:
        """What each main product costs of a cost less all by-products, adding up to it; None
        while they cannot be shared by what is known."""
        main = self.main
        if len(main) == 1:
            return {main[0].lot: cost}
        weights = {each.lot: self._weight_of(each) for each in main}
        known = [JointProduct(lot=lot, weight=w) for lot, w in weights.items() if w is not None]
        if len(known) < len(weights) or not any(each.weight for each in known):
            return None
        costs = joint_costs(cost, known, self.by, places).costs
        return {each.lot: share for each, share in zip(known, costs, strict=True)}

    def _weight_of(self, each: Product) -> Decimal | None:
        return _mass_g(each.rows) if self.by == "mass" else each.value


def joint_costs(
    cost: Decimal, products: Sequence[JointProduct], by: JointBy, places: int
) -> JointCosts:
    """The cost of a batch with several products, shared by mass or by sales value at
    split-off. From memory of cost-accounting texts, and marked so.

    Raises ValueError for weights below zero or of nothing at all.
    """
    weights = [Fraction(each.weight) for each in products]
    whole = sum(weights, Fraction(0))
    if whole <= 0 or min(weights) < 0:
        raise ValueError("nothing to share a cost by")
    shares = [Fraction(cost) * weight / whole for weight in weights]
    cited = Cited(what=f"joint_{by}", source="cost-accounting texts", basis="memory")
    return JointCosts(costs=coin_parts(shares, places), cited=cited)


def _product_of(lot: str, rows: list[Body], said: Body, *, is_known: bool) -> Product:
    units = {text_in(each, "unit") for each in rows}
    unit = units.pop() if len(units) == 1 else None
    amount = None if unit is None else total(decimal_in(x, "amount") or ZERO for x in rows)
    value = decimal_in(said, "value_each") if is_known else None
    if value is not None and amount is not None:
        value = product(value, product(amount, ONE if unit == "pc" else _THOUSANDTH))
    return Product(
        lot=lot,
        sort="by_product" if text_in(said, "sort") == "by_product" else "main",
        rows=tuple(rows),
        amount=amount,
        unit=unit,
        value=None if amount is None else value,
    )


def _mass_g(rows: tuple[Body, ...]) -> Decimal | None:
    """The mass of a product lot; None where a pack has no net mass."""
    masses = [_row_mass_g(row) for row in rows]
    known = [mass for mass in masses if mass is not None]
    return total(known) if len(known) == len(masses) else None


def _row_mass_g(row: Body) -> Decimal | None:
    amount, unit = decimal_in(row, "amount"), text_in(row, "unit")
    if amount is None or unit == "g":
        return amount
    pack = object_in(row, "pack_net")
    net = None if pack is None else amount_in({"amount": pack}, "amount")
    if unit != "pc" or net is None or net.unit != "g":
        return None
    return product(amount, net.value)
