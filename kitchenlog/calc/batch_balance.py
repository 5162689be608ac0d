"""The mass balance of one batch: what went in, what came out, what is unaccounted, in g.

Rules of the production pack 1.4, 1.5, 1.8 and 1.9: a figure that was not recorded is None and
makes None of what rests on it, never 0.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.balance import (
    edible_yield_percent,
    evaporated,
    implied_solids_percent,
    needs_a_look,
    percent_of,
    recovery_percent,
    rejects_percent,
    solids_in,
    spoilage_percent,
    theoretical_out,
    unaccounted,
)
from kitchenlog.calc.batch_lines import LineWork, line_sum
from kitchenlog.calc.batch_output import lost_by_reason, packed_out
from kitchenlog.calc.batch_steps import U_DIGITS, StepWork, measured_mass
from kitchenlog.calc.bodies import decimal_in
from kitchenlog.calc.numbers import HUNDRED, plain, product, significant, total, written
from kitchenlog.calc.readings import Doubt
from kitchenlog.calc.record import Finding, Standing, finding
from kitchenlog.calc.weighing import sum_doubt

THEORY_PLACES = 1  # of g: the fourth place of a kg


class LostFor(TypedDict):
    """What was lost in preparation for one reason."""

    reason: str
    amount: str


class PreparationBalance(TypedDict):
    """Lines that are prepared before the kettle: as bought, as prepared, what was lost."""

    prepared_in: str | None
    prepared_out: str | None
    preparation_losses: list[LostFor]
    preparation_unaccounted: str | None
    preparation_unaccounted_u: str | None
    edible_yield_percent: str | None
    spoilage_percent: str | None


class KettleBalance(TypedDict):
    """All that was put together by mass, and what was weighed when it was done."""

    kettle_in: str | None
    kettle_out: str | None
    evaporated: str | None
    solids_in: str | None
    theoretical_out: str | None
    implied_solids_percent: str | None


class FillingBalance(TypedDict):
    """What was filled into packs, good and rejected, and what was left behind."""

    filled: str | None
    good_out: str | None
    residue: str | None
    samples: str | None
    filling_unaccounted: str | None
    unaccounted_u: str | None
    rejects_percent: str | None
    recovery_percent: str | None
    of_theory_percent: str | None


class Balance(PreparationBalance, KettleBalance, FillingBalance):
    """Masses in g, percentages to four places, ties to even; None where not computable."""


@dataclass(frozen=True, kw_only=True)
class _Mass:
    """A mass in g and its doubt; either may be unknown."""

    g: Decimal | None
    doubt: Doubt | None


@dataclass(frozen=True, kw_only=True)
class _Kettle:
    """The masses of the kettle that the filling is measured against."""

    put_in: _Mass
    out: _Mass
    solids: Decimal | None
    target_percent: Decimal | None


_UNKNOWN = _Mass(g=None, doubt=None)


def batch_balance(
    lines: Sequence[LineWork],
    steps: Sequence[StepWork],
    entries: Sequence[Standing],
    *,
    target_percent: Decimal | None,
) -> tuple[Balance, list[Finding]]:
    """Balance a batch from its lines, its weighed steps, its outputs and its losses.

    What is counted in pieces (packaging, mostly) is left out; a line by volume makes the kettle
    not computable, for mass and volume are never mixed without a density.
    """
    in_mass = [work for work in lines if work.unit is not None and work.unit != "pc"]
    kettle = _Kettle(
        put_in=_sum(_to_kettle(work) for work in in_mass),
        out=_weighed_out(steps),
        solids=_solids(in_mass),
        target_percent=target_percent,
    )
    preparation, prepared_too_much = _preparation(lines, entries)
    boiled, boiled_too_much = _boiled(kettle)
    filling, filled_too_much = _filling(kettle, entries)
    findings = [*prepared_too_much, *boiled_too_much, *filled_too_much]
    return {**preparation, **boiled, **filling}, findings[:1]


def _preparation(
    lines: Sequence[LineWork], entries: Sequence[Standing]
) -> tuple[PreparationBalance, list[Finding]]:
    prepared = [work for work in lines if work.is_prepared]
    put_in, out = _sum(map(_put_in, prepared)), _sum(map(_prepared, prepared))
    by_reason = lost_by_reason(entries, "preparation")
    rest = _rest(put_in.g, [out.g, *by_reason.values()])
    doubt = sum_doubt([put_in.doubt, out.doubt])
    balance = PreparationBalance(
        prepared_in=_text(put_in.g),
        prepared_out=_text(out.g),
        preparation_losses=[
            LostFor(reason=reason, amount=plain(amount)) for reason, amount in by_reason.items()
        ],
        preparation_unaccounted=_text(rest),
        preparation_unaccounted_u=_u(doubt),
        edible_yield_percent=_percent(edible_yield_percent(out.g, put_in.g)),
        spoilage_percent=_percent(spoilage_percent(by_reason.get("spoiled"), put_in.g)),
    )
    return balance, _too_much("preparation_unaccounted", rest, put_in.g, doubt)


def _boiled(kettle: _Kettle) -> tuple[KettleBalance, list[Finding]]:
    boiled_off = evaporated(kettle.put_in.g, kettle.out.g)
    solids = kettle.solids
    balance = KettleBalance(
        kettle_in=_text(kettle.put_in.g),
        kettle_out=_text(kettle.out.g),
        evaporated=_text(boiled_off),
        solids_in=_text(solids),
        theoretical_out=_text(_theory(kettle)),
        implied_solids_percent=_percent(
            None if solids is None else implied_solids_percent(solids, kettle.out.g)
        ),
    )
    doubt = sum_doubt([kettle.put_in.doubt, kettle.out.doubt])
    return balance, _too_much("evaporated", boiled_off, kettle.put_in.g, doubt)


def _filling(
    kettle: _Kettle, entries: Sequence[Standing]
) -> tuple[FillingBalance, list[Finding]]:
    packed = packed_out(entries)
    by_reason = lost_by_reason(entries, "filling")
    rest = _rest(kettle.out.g, [packed.filled, *by_reason.values()])
    balance = FillingBalance(
        filled=_text(packed.filled),
        good_out=_text(packed.good),
        residue=_text(by_reason.get("residue")),
        samples=_text(by_reason.get("sample")),
        filling_unaccounted=_text(rest),
        unaccounted_u=_u(kettle.out.doubt),
        rejects_percent=_percent(rejects_percent(packed.rejected, packed.packs)),
        recovery_percent=_percent(recovery_percent(packed.good, kettle.put_in.g)),
        of_theory_percent=_percent(_of_theory(packed.good, kettle)),
    )
    return balance, _too_much("filling_unaccounted", rest, kettle.out.g, kettle.out.doubt)


def _put_in(work: LineWork) -> _Mass:
    put_in = line_sum(work)
    if put_in.amount is None or put_in.amount.unit != "g":
        return _UNKNOWN
    return _Mass(g=put_in.amount.value, doubt=put_in.doubt)


def _prepared(work: LineWork) -> _Mass:
    if work.prepared is None:
        return _UNKNOWN
    return _Mass(g=work.prepared.amount.value, doubt=work.prepared.doubt)


def _to_kettle(work: LineWork) -> _Mass:
    """What is prepared goes in as prepared, the rest as weighed in."""
    return _prepared(work) if work.is_prepared else _put_in(work)


def _weighed_out(steps: Sequence[StepWork]) -> _Mass:
    mass = measured_mass(steps, "kettle_mass", None)
    return _UNKNOWN if mass is None else _Mass(g=mass.amount.value, doubt=mass.doubt)


def _sum(masses: Iterable[_Mass]) -> _Mass:
    """The sum of what is known as a whole: one missing mass makes the sum unknown."""
    every = list(masses)
    known = [mass.g for mass in every if mass.g is not None]
    if not every or len(known) < len(every):
        return _UNKNOWN
    return _Mass(g=total(known), doubt=sum_doubt([mass.doubt for mass in every]))


def _solids(lines: Sequence[LineWork]) -> Decimal | None:
    """Soluble solids of all that went in; a line of unknown share makes the sum unknown."""
    parts = [(_to_kettle(work).g, decimal_in(work.plan, "soluble_percent")) for work in lines]
    known = [(g, share) for g, share in parts if g is not None and share is not None]
    return solids_in(known) if parts and len(known) == len(parts) else None


def _theory(kettle: _Kettle) -> Decimal | None:
    if kettle.solids is None or kettle.target_percent is None:
        return None
    return theoretical_out(kettle.solids, kettle.target_percent, THEORY_PLACES)


def _of_theory(good: Decimal | None, kettle: _Kettle) -> Decimal | None:
    """Good mass of the theoretical one, from the exact solids: nothing is rounded before."""
    if good is None or kettle.solids is None or kettle.target_percent is None:
        return None
    return percent_of(product(good, kettle.target_percent), product(kettle.solids, HUNDRED))


def _rest(put_in: Decimal | None, came_out: Sequence[Decimal | None]) -> Decimal | None:
    known = [amount for amount in came_out if amount is not None]
    return unaccounted(put_in, known) if len(known) == len(came_out) else None


def _too_much(
    name: str, rest: Decimal | None, put_in: Decimal | None, doubt: Doubt | None
) -> list[Finding]:
    """More came out than went in, by more than the scales explain."""
    if rest is None or put_in is None or rest >= 0:
        return []
    if not needs_a_look(rest, put_in=put_in, u=0.0 if doubt is None else doubt.u):
        return []
    return [finding("more_out_than_in", "more_out_than_in", about=name)]


def _text(mass_g: Decimal | None) -> str | None:
    return None if mass_g is None else plain(mass_g)


def _percent(percent: Decimal | None) -> str | None:
    return None if percent is None else written(percent)


def _u(doubt: Doubt | None) -> str | None:
    return None if doubt is None else significant(doubt.u, U_DIGITS)
