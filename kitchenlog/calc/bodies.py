"""Reading a body without trusting it: what is missing or unreadable is None, nothing raises.

Bodies were parsed before they were kept, but a fold may meet those of a version it does not
know.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, TypedDict

from kitchenlog.calc.numbers import parse_decimal, total
from kitchenlog.calc.units import base_unit_of, dimension_of, in_base, is_unit

Body = Mapping[str, Any]  # parsed JSON of any kind: its fields are told apart here

NUMBER_DIGITS_MAX = 14  # as many as a body may hold; products of three still fit the precision


class Quantity(TypedDict):
    """An amount as it was recorded, with the digits and the unit of the person."""

    amount: str
    unit: str


@dataclass(frozen=True, kw_only=True)
class Amount:
    """An amount in a base unit: g, mL or pc."""

    value: Decimal
    unit: str


def text_in(body: Body, name: str) -> str | None:
    """The text of a field."""
    value = body.get(name)
    return value if isinstance(value, str) else None


def object_in(body: Body, name: str) -> Body | None:
    """The object of a field."""
    value = body.get(name)
    return value if isinstance(value, Mapping) else None


def items_in(body: Body, name: str) -> list[Body]:
    """The objects of a list; none where there is no list."""
    return [each for each in _list_in(body, name) if isinstance(each, Mapping)]


def texts_in(body: Body, name: str) -> list[str]:
    """The texts of a list; none where there is no list."""
    return [each for each in _list_in(body, name) if isinstance(each, str)]


def decimal_in(body: Body, name: str) -> Decimal | None:
    """The number of a field, with the digits that were read."""
    text = text_in(body, name) or ""
    if sum(each.isdigit() for each in text) > NUMBER_DIGITS_MAX:
        return None
    try:
        return parse_decimal(text)
    except ValueError:
        return None


def quantity_in(body: Body, name: str) -> Quantity | None:
    """An amount with its unit, as recorded."""
    found = object_in(body, name) or {}
    amount, unit = text_in(found, "amount"), text_in(found, "unit")
    if amount is None or unit is None or decimal_in(found, "amount") is None:
        return None
    return Quantity(amount=amount, unit=unit)


def amount_in(body: Body, name: str) -> Amount | None:
    """An amount in its base unit; None also for a unit that measures no amount."""
    found = object_in(body, name) or {}
    return in_base_unit(decimal_in(found, "amount"), text_in(found, "unit"))


def in_base_unit(value: Decimal | None, unit: str | None) -> Amount | None:
    """A number and its unit as an amount; None where one is missing or measures no amount."""
    if value is None or unit is None or not is_unit(unit):
        return None
    if dimension_of(unit) == "temperature":
        return None
    return Amount(value=in_base(value, unit), unit=base_unit_of(unit))


def sum_of(amounts: Iterable[Amount | None]) -> Amount | None:
    """The exact sum; None for none, for a missing one among them, and for unlike units."""
    known = list(amounts)
    units = {None if each is None else each.unit for each in known}
    unit = units.pop() if len(units) == 1 else None
    if unit is None:
        return None
    return Amount(value=total(each.value for each in known if each is not None), unit=unit)


def _list_in(body: Body, name: str) -> Sequence[object]:
    value = body.get(name)
    return value if isinstance(value, list | tuple) else ()
