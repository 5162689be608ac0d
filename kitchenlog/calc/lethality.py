"""Lethality: minutes at a reference temperature that did as much as the minutes of a log.

L = 10^((T - Tref) / z), F = trapezoid sum of L over the real time steps (general method, read
in process safety notes); log reduction = F / D. Tref and z are kept with every result: 121.11
in place of 121.1 degC moves F0 by 0.2 %. A sum says what the probe felt, not that a batch is
fit.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass
from decimal import Decimal
from typing import Any

from kitchenlog.calc.elementary import exponential, logarithm
from kitchenlog.calc.heat_logs import GAP_S, Gap, HeatLog, gaps
from kitchenlog.calc.heat_tables import LETHAL_ROWS
from kitchenlog.calc.limits import Cited, leans_on_memory
from kitchenlog.calc.numbers import ZERO, as_double, parse_decimal, plain, significant

LN_10 = 2.302585092994046
ACID_PH_MAX = Decimal("4.6")  # 21 CFR 114.3, read: above it food is low-acid
MILD_PH = Decimal("4.1")  # from here on the longer of the two processes, FPT 2014 Table 4
FIVE_LOGS = 5
# A rate beyond e^100 means a wrong reference; one below e^-100 is nothing.
EXPONENT_MAX = 100.0


@dataclass(frozen=True, kw_only=True)
class Reference:
    """The temperature at which a minute counts as one, and how fast that changes: ten-fold per
    z degrees, or by the factor `base` each degree where a source says it so."""

    t_ref: Decimal
    z: Decimal
    unit: str
    base: Decimal | None
    needed_min: Decimal | None
    cited: tuple[Cited, ...]


@dataclass(frozen=True, kw_only=True)
class Held:
    """A steady temperature, in degC or degF."""

    temperature: Decimal
    unit: str


@dataclass(frozen=True, kw_only=True)
class Lethality:
    """Minutes at the reference, or pasteurization units, and what they rest on.

    What straight lines across gaps would add is kept apart in `bridged_min` and is not in
    `minutes`; of readings that contradict each other the colder counts.
    """

    minutes: float
    bridged_min: float
    gaps: tuple[Gap, ...]
    contradicted_count: int
    reference: Reference


@dataclass(frozen=True, kw_only=True)
class SterilizingValue:
    """F0 by the two reference temperatures in use: 121.1 degC and 250 degF = 121.11 degC."""

    at_121_1: Lethality
    at_250_f: Lethality


@dataclass(frozen=True, kw_only=True)
class FiveLog:
    """How much of a published 5-log process for acidified vegetables a log amounts to."""

    lethality: Lethality
    log_reduction: float


def reference_of(use: str) -> Reference:
    """A reference of tables/lethal_references.csv by its use: "f0", "beer", "tomato_beverages"
    and so on. Raises ValueError for another."""
    for row in LETHAL_ROWS:
        if row.use == use:
            cited = Cited(what=use, source=row.source, basis=row.basis, note=row.note)
            return Reference(
                t_ref=parse_decimal(row.t_ref),
                z=parse_decimal(row.z),
                unit=row.unit,
                base=parse_decimal(row.base) if row.base else None,
                needed_min=parse_decimal(row.needed_min) if row.needed_min else None,
                cited=(cited,),
            )
    raise ValueError(f"no reference of lethality is called {use!r}")


def own_reference(t_ref: Decimal, *, z: Decimal, unit: str) -> Reference:
    """A reference that a process authority or a recipe names. Raises ValueError unless z is
    above zero and the unit is degC or degF."""
    if z <= ZERO or unit not in ("degC", "degF"):
        raise ValueError("a reference has a z above zero, in degC or degF")
    return Reference(t_ref=t_ref, z=z, unit=unit, base=None, needed_min=None, cited=())


def acidified_reference(ph: Decimal) -> Reference | None:
    """The published 5-log process of acidified vegetables for this equilibrium pH, None above
    4.6, where food is low-acid. At 4.1 itself the longer one."""
    if ph > ACID_PH_MAX:
        return None
    return reference_of("acidified_from_4_1" if ph >= MILD_PH else "acidified_below_4_1")


def lethal_rate(held: Held, reference: Reference) -> float:
    """Minutes at the reference that one minute at this temperature is worth. Raises ValueError
    where it is so far from the reference that no number says so."""
    return _Rate(held.unit, reference).at(as_double(held.temperature))


def lethality(log: HeatLog, reference: Reference, longest_s: int = GAP_S) -> Lethality:
    """The sum of a log. Steps longer than `longest_s` are gaps: nobody knows what happened."""
    minutes = bridged_min = 0.0
    for step_s, step_min in _steps(log, reference):
        if step_s > longest_s:
            bridged_min = bridged_min + step_min
        else:
            minutes = minutes + step_min
    return Lethality(
        minutes=minutes,
        bridged_min=bridged_min,
        gaps=gaps(log, longest_s),
        contradicted_count=len(log.contradicted_s),
        reference=reference,
    )


def lethality_so_far(
    log: HeatLog, reference: Reference, longest_s: int = GAP_S
) -> tuple[float, ...]:
    """The sum up to each reading of a log, gaps left out, to be drawn beside it."""
    so_far = [0.0]
    for step_s, step_min in _steps(log, reference):
        so_far.append(so_far[-1] if step_s > longest_s else so_far[-1] + step_min)
    return tuple(so_far)


def sterilizing_value(log: HeatLog, longest_s: int = GAP_S) -> SterilizingValue:
    """F0 of a log by both reference temperatures, z 10 degC."""
    return SterilizingValue(
        at_121_1=lethality(log, reference_of("f0"), longest_s),
        at_250_f=lethality(log, reference_of("f0_250_f"), longest_s),
    )


def five_log(log: HeatLog, ph: Decimal, longest_s: int = GAP_S) -> FiveLog | None:
    """What a log amounts to of the 5-log process for this pH, in logs; None above pH 4.6."""
    reference = acidified_reference(ph)
    if reference is None or reference.needed_min is None:
        return None
    found = lethality(log, reference, longest_s)
    logs = FIVE_LOGS * found.minutes / as_double(reference.needed_min)
    return FiveLog(lethality=found, log_reduction=logs)


def equivalent_minutes(minutes: Decimal, held: Held, reference: Reference) -> float:
    """Minutes at the reference that so many at a steady temperature are worth."""
    return as_double(minutes) * lethal_rate(held, reference)


def minutes_at(reference_min: Decimal, held: Held, reference: Reference) -> float:
    """Minutes at a steady temperature that are worth so many at the reference. Raises
    ValueError where the temperature is worth nothing."""
    rate = lethal_rate(held, reference)
    if rate == 0:
        raise ValueError("this temperature is worth nothing")
    return as_double(reference_min) / rate


def log_reduction(minutes: float, d_min: Decimal) -> float:
    """Decimal reductions of an organism: F / D, both at one reference. Raises ValueError
    unless D is above zero."""
    if d_min <= ZERO:
        raise ValueError("a D value is above zero")
    return minutes / as_double(d_min)


def minutes_of_equal_steps(rate_sum: Decimal, *, step_min: Decimal) -> float:
    """The general method on paper: the sum of the rates, the end points by half, times the
    step between readings."""
    return as_double(rate_sum) * as_double(step_min)


def written_lethality(found: Lethality, digits: int) -> dict[str, Any]:
    """The result as JSON for a sheet: Tref and z beside the minutes they belong to."""
    reference = found.reference
    return {
        "minutes": significant(found.minutes, digits),
        "bridged_min": significant(found.bridged_min, digits),
        "gaps": [asdict(each) for each in found.gaps],
        "contradicted_count": found.contradicted_count,
        "t_ref": plain(reference.t_ref),
        "z": plain(reference.z),
        "unit": reference.unit,
        "base": None if reference.base is None else plain(reference.base),
        "cited": [asdict(each) for each in reference.cited],
        "leans_on_memory": leans_on_memory(reference.cited),
    }


class _Rate:
    """10^((T - Tref) / z) of readings in one unit, with everything worked out that is alike."""

    def __init__(self, unit: str, reference: Reference) -> None:
        self._is_turned = unit != reference.unit
        self._is_fahrenheit = reference.unit == "degF"
        self._t_ref = as_double(reference.t_ref)
        base = reference.base
        self._ln_per_degree = (
            LN_10 / as_double(reference.z) if base is None else logarithm(as_double(base))
        )

    def at(self, degrees: float) -> float:
        exponent = (self._turned(degrees) - self._t_ref) * self._ln_per_degree
        if exponent > EXPONENT_MAX:
            raise ValueError("too hot for this reference")
        return 0.0 if exponent < -EXPONENT_MAX else exponential(exponent)

    def _turned(self, degrees: float) -> float:
        """The temperature in the unit of the reference (NIST SP 811 (2008) App. B.8)."""
        if not self._is_turned:
            return degrees
        return degrees * 1.8 + 32 if self._is_fahrenheit else (degrees - 32) / 1.8


def _steps(log: HeatLog, reference: Reference) -> Iterator[tuple[int, float]]:
    """The length of each step in seconds and the minutes at the reference it is worth."""
    rate = _Rate(log.unit, reference)
    before = rate.at(log.low[0] / 1000)
    for row in range(1, len(log.at_s)):
        now = rate.at(log.low[row] / 1000)
        step_s = log.at_s[row] - log.at_s[row - 1]
        yield step_s, (before + now) * 0.5 * (step_s / 60)
        before = now
