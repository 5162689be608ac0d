"""Limits of curing agents, each with the basis it counts on, and what an amount is beside them.

A limit on the finished product cannot be judged from what went in: it is told, not compared.
Amounts are compared as exact fractions: exactly at a limit passes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.bench_tables import CURE_ROWS, CureRow
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import ZERO, divided, parse_decimal, product
from kitchenlog.calc.recipes import Factor

CureUse = Literal[
    "comminuted",
    "pumped",
    "immersed",
    "dry_cured",
    "bacon_pumped",
    "bacon_pumped_alternative",
    "bacon_immersed",
    "bacon_dry_cured",
]
Substance = Literal["sodium_nitrite", "sodium_nitrate", "sodium_ascorbate", "ascorbic_acid"]
CureRules = Literal["us", "canada"]
CureVerdict = Literal[
    "not_permitted", "over", "below", "within", "other_basis", "no_limit_known"
]

# What counts when limits differ: the worst of what they say.
_WORST_FIRST: tuple[CureVerdict, ...] = ("not_permitted", "over", "below", "within")


@dataclass(frozen=True, kw_only=True)
class CureCase:
    """What is cured, with what, and whose rules are asked."""

    use: CureUse
    substance: Substance
    rules: CureRules


@dataclass(frozen=True, kw_only=True)
class CureLimit:
    """One published limit and what an amount is beside it; `basis_weight` is the mass it counts
    on. `limit_ppm` is None where nothing is permitted."""

    kind: str
    limit_ppm: Decimal | None
    basis_weight: str
    verdict: CureVerdict
    cited: Cited


def cure_limits(case: CureCase, ppm: Factor) -> tuple[CureLimit, ...]:
    """What each limit for a case says of an amount in parts per million, an exact fraction."""
    return tuple(
        _limit(row, ppm)
        for row in CURE_ROWS
        if row.rules == case.rules
        and row.substance == case.substance
        and case.use in row.holds_for.split(";")
    )


def worst_verdict(limits: Sequence[CureLimit]) -> CureVerdict:
    """The worst that any limit says; without one that can be compared `no_limit_known`."""
    said = {limit.verdict for limit in limits}
    return next((each for each in _WORST_FIRST if each in said), "no_limit_known")


def _limit(row: CureRow, ppm: Factor) -> CureLimit:
    return CureLimit(
        kind=row.kind,
        limit_ppm=parse_decimal(row.limit_ppm) if row.limit_ppm else None,
        basis_weight=row.basis_weight,
        verdict=_verdict(row, ppm),
        cited=Cited(what="cure_limit", source=row.source, basis=row.basis, note=row.note),
    )


def _verdict(row: CureRow, ppm: Factor) -> CureVerdict:
    if row.kind == "not_permitted":
        return "not_permitted" if ppm.wanted > ZERO else "within"
    if row.kind == "most_in_product":
        return "other_basis"
    # What is required is a whole number of ppm: an amount that rounds to it has it.
    is_required = row.kind == "required_ingoing"
    amount = Factor(wanted=divided(ppm.wanted, ppm.base, 0), base=Decimal(1))
    way = _compared(amount if is_required else ppm, parse_decimal(row.limit_ppm))
    if way > 0 and row.kind != "least_ingoing":
        return "over"
    return "below" if way < 0 and row.kind != "most_ingoing" else "within"


def _compared(ppm: Factor, limit: Decimal) -> int:
    """Above 0 for more than the limit, below 0 for less."""
    at_limit = product(limit, ppm.base)
    return int(ppm.wanted > at_limit) - int(ppm.wanted < at_limit)
