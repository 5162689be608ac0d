"""Where the mass of a batch went: yields, solids, evaporation and what is unaccounted.

Common practice, named in DEVELOPERS.md 4; doubt by JCGM 100:2008 F.2.2.1. A figure
that was not recorded is None and makes None of what rests on it: missing is never zero.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from kitchenlog.calc.numbers import HUNDRED, as_double, difference, divided, product, total
from kitchenlog.calc.readings import combined_u, resolution_u

PERCENT_PLACES = 4
MASS_PLACES = 4
FLAG_PERCENT = Decimal(1)  # of what went in; own proposal
FLAG_U = 2  # times the standard uncertainty, about 95 %


@dataclass(frozen=True, kw_only=True)
class GroupPercent:
    """A percentage over several batches and how many of them could be counted."""

    percent: Decimal | None
    counted: int
    left_out: int


def percent_of(
    part: Decimal | None, whole: Decimal | None, places: int = PERCENT_PLACES
) -> Decimal | None:
    """100 x part / whole, rounded once; None when either is missing or the whole is nothing."""
    if part is None or not whole:
        return None
    return divided(product(part, HUNDRED), whole, places)


def edible_yield_percent(prepared: Decimal | None, received: Decimal | None) -> Decimal | None:
    """Edible mass after preparation, of the mass as purchased, what was spoiled included."""
    return percent_of(prepared, received)


def spoilage_percent(spoiled: Decimal | None, received: Decimal | None) -> Decimal | None:
    """Spoiled raw mass of the raw mass received; without a record None, not 0."""
    return percent_of(spoiled, received)


def rejects_percent(rejected: Decimal | None, filled: Decimal | None) -> Decimal | None:
    """Rejected packs of the packs filled, good and bad together."""
    return percent_of(rejected, filled)


def recovery_percent(good_out: Decimal | None, put_in: Decimal | None) -> Decimal | None:
    """Good finished mass of what was put in; above 100 where only the raw material counts as
    in and sugar was added, so say what the whole is."""
    return percent_of(good_out, put_in)


def group_percent(
    pairs: Sequence[tuple[Decimal | None, Decimal | None]], places: int = PERCENT_PLACES
) -> GroupPercent:
    """Sum of parts over sum of wholes, never the mean of percentages; a pair with a missing
    figure is left out of both sums and counted as such."""
    whole_pairs = [(p, w) for p, w in pairs if p is not None and w is not None]
    percent = percent_of(
        total(p for p, _ in whole_pairs), total(w for _, w in whole_pairs), places
    )
    left_out = len(pairs) - len(whole_pairs)
    return GroupPercent(percent=percent, counted=len(whole_pairs), left_out=left_out)


def solids_in(lines: Sequence[tuple[Decimal, Decimal]]) -> Decimal:
    """Soluble solids of (amount, percent) pairs, exact, in the unit of the amounts.

    Whether pectin and acid count is the recipe's choice: sources disagree.
    """
    return total(product(product(a, percent), Decimal("0.01")) for a, percent in lines)


def theoretical_out(
    solids: Decimal, target_percent: Decimal, places: int = MASS_PLACES
) -> Decimal | None:
    """Mass at which these solids are target_percent of it; None for a target of 0."""
    return percent_of(solids, target_percent, places)


def implied_solids_percent(solids: Decimal, out: Decimal | None) -> Decimal | None:
    """Degrees Brix that the weighed mass implies: 100 x solids / mass."""
    return percent_of(solids, out)


def evaporated(kettle_in: Decimal | None, kettle_out: Decimal | None) -> Decimal | None:
    """What boiled off, from two weighings: never the plug that makes a balance close."""
    if kettle_in is None or kettle_out is None:
        return None
    return difference(kettle_in, kettle_out)


def unaccounted(put_in: Decimal | None, came_out: Sequence[Decimal]) -> Decimal | None:
    """Put in less all that was recorded as coming out, signed: below zero means that a tare is
    wrong or an input is missing, so it is shown, not cut to 0."""
    if put_in is None:
        return None
    return difference(put_in, total(came_out))


def unaccounted_u(weighings: Sequence[tuple[Decimal, int]]) -> float:
    """Standard uncertainty of the remainder, from each weighing's (division, readings): every
    reading adds d squared / 12, a net mass has two (JCGM 100 F.2.2.1)."""
    return combined_u([resolution_u(division, readings) for division, readings in weighings])


def needs_a_look(remainder: Decimal, *, put_in: Decimal, u: float) -> bool:
    """Whether the remainder is more than 1 % of what went in and more than the scales explain
    (2 u)."""
    size = as_double(remainder.copy_abs())
    one_percent = as_double(product(put_in.copy_abs(), product(FLAG_PERCENT, Decimal("0.01"))))
    return size > one_percent and size > FLAG_U * u
