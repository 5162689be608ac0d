"""Sharing out what was earned among members, to the coin (production 2.5).

refund = (net margin - reserve) x use / all use, rounded by largest remainder, ties by member
id. Definition: Texas A&M AFPC 2023, read.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from kitchenlog.calc.coins import coin_parts
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import HUNDRED, ONE, ZERO, difference, divided, product

Loss = Literal["shared", "carried"]

_CITED = Cited(
    what="patronage_refund",
    source="Texas A&M AFPC 2023, patronage refunds in proportion to use",
    basis="read",
)


@dataclass(frozen=True, kw_only=True)
class Use:
    """How much a member used the cooperative in the period, voids taken off: money, kilograms,
    hours, or 1 for each where all get the same."""

    member: str
    amount: Decimal


@dataclass(frozen=True, kw_only=True)
class Share:
    """What one member gets; below zero, what a member bears of a loss."""

    member: str
    amount: Decimal


@dataclass(frozen=True, kw_only=True)
class ShareOut:
    """Reserve, shares and what is carried forward add up to the net margin, to the coin."""

    reserve: Decimal
    to_share: Decimal
    shares: tuple[Share, ...]
    carried: Decimal
    cited: Cited


def share_out(
    net: Decimal, uses: Sequence[Use], *, reserve_percent: Decimal, loss: Loss, places: int
) -> ShareOut:
    """What is earned, less the reserve, by use, members in the order of their id.

    A loss lays nothing aside: it is shared by the same rule or carried forward, as was decided,
    never left out. Raises ValueError for a net margin with parts of a coin, a reserve that is
    not 0 to 100 %, a member named twice, a use below zero, and no use at all.
    """
    whole = sum((Fraction(use.amount) for use in uses), Fraction(0))
    members = [use.member for use in uses]
    if whole <= 0 or any(use.amount < ZERO for use in uses) or len(set(members)) < len(members):
        raise ValueError("nothing to share by")
    if not ZERO <= reserve_percent <= HUNDRED or divided(net, ONE, places) != net:
        raise ValueError("not an amount to share")
    is_loss = net < ZERO
    reserve = divided(ZERO if is_loss else product(net, reserve_percent), HUNDRED, places)
    is_carried = is_loss and loss == "carried"
    to_share = divided(ZERO if is_carried else difference(net, reserve), ONE, places)
    in_order = sorted(uses, key=lambda use: use.member)
    exact = [Fraction(to_share) * Fraction(use.amount) / whole for use in in_order]
    coins = coin_parts(exact, places)
    return ShareOut(
        reserve=reserve,
        to_share=to_share,
        shares=tuple(
            Share(member=use.member, amount=coin)
            for use, coin in zip(in_order, coins, strict=True)
        ),
        carried=divided(net if is_carried else ZERO, ONE, places),
        cited=_CITED,
    )
