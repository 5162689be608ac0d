"""The kettle: what solids allow it to give, its gross weight as the target, and where its water
went.

Soluble solids are conserved: mass out x degrees Brix / 100 = sum of mass in x solids / 100.
Whether pectin and acid count is each line's own choice, for sources disagree. Doubt by JCGM
100:2008 5.1.2, each term its own partial derivative. Source of the balance: Practical Action,
Jams, jellies and marmalade, read.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.balance import MASS_PLACES, solids_in
from kitchenlog.calc.numbers import (
    HUNDRED,
    ZERO,
    as_double,
    difference,
    divided,
    product,
    total,
)
from kitchenlog.calc.readings import combined_u


@dataclass(frozen=True, kw_only=True)
class Charge:
    """One line in the kettle: its mass, its soluble solids in percent (0 where they are not
    counted, None where nobody knows) and the standard uncertainties of both."""

    amount: Decimal
    solids_percent: Decimal | None
    u: float = 0.0
    solids_u: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Measured:
    """A figure that was read and its standard uncertainty."""

    value: Decimal
    u: float = 0.0


@dataclass(frozen=True, kw_only=True)
class KettleTarget:
    """What to cook down to, in the unit of the charges. `boil_off` below zero: water is
    missing. `gross` is what the scale shows with the kettle; None without its tare."""

    solids: Decimal
    put_in: Decimal
    makes: Decimal
    makes_u: float
    boil_off: Decimal
    gross: Decimal | None


@dataclass(frozen=True, kw_only=True)
class Evaporation:
    """What left as steam: by two weighings, by the solids, and what is left between the two.

    `remainder` is what solids say there must be less what was weighed out: below zero means a
    wrong tare, a missing input or a wrong Brix, so it is shown and never cut to 0.
    """

    weighed: Decimal | None
    weighed_u: float | None
    calculated: Decimal | None
    calculated_u: float | None
    remainder: Decimal | None
    remainder_u: float | None


@dataclass(frozen=True, kw_only=True)
class Share:
    """A part of a formula and its soluble solids in percent; 0 where they are not counted."""

    share: Decimal
    solids_percent: Decimal


@dataclass(frozen=True, kw_only=True)
class Formula:
    """How much of each part makes a product of a wanted strength."""

    amounts: tuple[Decimal, ...]
    boil_off: Decimal


def kettle_target(
    charges: Sequence[Charge], *, target_percent: Decimal, tare: Decimal | None
) -> KettleTarget | None:
    """The mass at which the solids are target_percent of it, and what the scale shows then.

    None where the solids of a line are unknown. Raises ValueError unless the target is above 0
    and at most 100.
    """
    _refuse_percent(target_percent)
    lines = _known(charges)
    if lines is None:
        return None
    put_in = total(charge.amount for charge in charges)
    solids = _solids(lines)
    makes = _makes(lines, target_percent)
    return KettleTarget(
        solids=solids,
        put_in=put_in,
        makes=makes,
        makes_u=_makes_u(lines, Measured(value=target_percent)),
        boil_off=difference(put_in, makes),
        gross=None if tare is None else total([makes, tare]),
    )


def kettle_evaporation(
    charges: Sequence[Charge], *, out: Measured | None, brix: Measured | None
) -> Evaporation:
    """Where the kettle's water went, from its weight out and its degrees Brix.

    What was not read, or solids that nobody knows, make None of what rests on them. Raises
    ValueError for a Brix that is not above 0 and at most 100.
    """
    if brix is not None:
        _refuse_percent(brix.value)
    put_in = total(charge.amount for charge in charges)
    makes = _by_solids(charges, brix)
    both = None if out is None or makes is None else (makes, out)
    return Evaporation(
        weighed=None if out is None else difference(put_in, out.value),
        weighed_u=None if out is None else combined_u([*(c.u for c in charges), out.u]),
        calculated=None if makes is None else difference(put_in, makes.value),
        calculated_u=None if makes is None else makes.steam_u,
        remainder=None if both is None else difference(both[0].value, both[1].value),
        remainder_u=None if both is None else combined_u([both[0].u, both[1].u]),
    )


def formula_for(shares: Sequence[Share], *, makes: Decimal, target_percent: Decimal) -> Formula:
    """How much of each part gives `makes` of a product with target_percent of solids.

    Shares are of one another: fruit 45, sugar 55. Raises ValueError without solids, and for
    a target that is not above 0 and at most 100.
    """
    _refuse_percent(target_percent)
    solids = solids_in([(s.share, s.solids_percent) for s in shares])
    if solids <= ZERO:
        raise ValueError("nothing in the formula has solids")
    wanted = product(makes, target_percent)
    base = product(solids, HUNDRED)
    amounts = tuple(divided(product(s.share, wanted), base, MASS_PLACES) for s in shares)
    return Formula(amounts=amounts, boil_off=difference(total(amounts), makes))


def _refuse_percent(percent: Decimal) -> None:
    if not ZERO < percent <= HUNDRED:
        raise ValueError("solids are more than 0 % and at most 100 %")


@dataclass(frozen=True, kw_only=True)
class _Line:
    """A charge whose solids are known."""

    charge: Charge
    solids_percent: Decimal


@dataclass(frozen=True, kw_only=True)
class _Made:
    """What solids and Brix say there is, its doubt, and the doubt of the steam."""

    value: Decimal
    u: float
    steam_u: float


def _known(charges: Sequence[Charge]) -> list[_Line] | None:
    lines = [
        _Line(charge=charge, solids_percent=charge.solids_percent)
        for charge in charges
        if charge.solids_percent is not None
    ]
    return lines if len(lines) == len(charges) else None


def _by_solids(charges: Sequence[Charge], brix: Measured | None) -> _Made | None:
    lines = _known(charges)
    if lines is None or brix is None:
        return None
    return _Made(
        value=_makes(lines, brix.value), u=_makes_u(lines, brix), steam_u=_steam_u(lines, brix)
    )


def _solids(lines: Sequence[_Line]) -> Decimal:
    return solids_in([(line.charge.amount, line.solids_percent) for line in lines])


def _makes(lines: Sequence[_Line], brix: Decimal) -> Decimal:
    return divided(product(_solids(lines), HUNDRED), brix, MASS_PLACES)


def _makes_u(lines: Sequence[_Line], brix: Measured) -> float:
    """Of solids / Brix: each mass by its percent, each percent by its mass, and the Brix."""
    percent = as_double(brix.value)
    parts = [as_double(line.solids_percent) / percent * line.charge.u for line in lines]
    return combined_u([*parts, *_percent_parts(lines, brix)])


def _steam_u(lines: Sequence[_Line], brix: Measured) -> float:
    """Of mass in - solids / Brix: a line that has the strength of the product adds nothing."""
    percent = as_double(brix.value)
    parts = [(1.0 - as_double(line.solids_percent) / percent) * line.charge.u for line in lines]
    return combined_u([*parts, *_percent_parts(lines, brix)])


def _percent_parts(lines: Sequence[_Line], brix: Measured) -> list[float]:
    percent = as_double(brix.value)
    parts = [as_double(line.charge.amount) / percent * line.charge.solids_u for line in lines]
    makes = as_double(_solids(lines)) / percent * 100.0
    return [*parts, makes / percent * brix.u]
