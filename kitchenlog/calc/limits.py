"""How far an instrument may be off: published limits, each with its source and basis.

Limits are inclusive; a load exactly at the end of a band belongs to the lower band.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.check_tables import (
    CYLINDER_ROWS,
    MEASURE_ROWS,
    SCALE_CLASS_ROWS,
    SCALE_ERROR_ROWS,
    WEIGHT_ROWS,
    ScaleErrorRow,
)
from kitchenlog.calc.numbers import (
    ONE,
    ZERO,
    difference,
    divided,
    parse_decimal,
    product,
)

When = Literal["initial", "in_service"]
Measure = Literal["cup", "spoon"]

_PERCENT = Decimal("0.01")
_GRAMS_PER_MG = Decimal("0.001")
_HB133 = "HB133-"  # how the table names the classes of HB 133 Table 2-2
_MEASURES = {"cup": "household liquid measures", "spoon": "measuring spoons"}


@dataclass(frozen=True, kw_only=True)
class Cited:
    """A published figure an answer leans on; `what` names it: "scale_error", "mav"."""

    what: str
    source: str
    basis: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Limit:
    """Plus or minus how much, in the unit of what is measured, and who says so."""

    amount: Decimal
    cited: tuple[Cited, ...]


@dataclass(frozen=True, kw_only=True)
class ScaleClass:
    """The class of a scale and its number of divisions, cut to a whole number."""

    accuracy_class: str
    divisions: Decimal
    cited: tuple[Cited, ...]


def leans_on_memory(cited: Sequence[Cited]) -> bool:
    """Whether a figure was recalled and not read: what is shown must say so."""
    return any(each.basis == "memory" for each in cited)


def is_disputed(cited: Sequence[Cited]) -> bool:
    """Whether two recollections of a figure differ: such a figure decides nothing."""
    return any(each.basis == "disputed" for each in cited)


def scale_error_limit(
    load: Decimal, *, e: Decimal, accuracy_class: str, when: When = "in_service"
) -> Limit:
    """Maximum permissible error of a scale of class I to IIII at a load, in the load's unit.

    Bands are counted in verification intervals e; in service twice the initial error. OIML R
    76-1:2006 Table 6. Raises ValueError for another class, a load below zero or beyond the
    last band, and e not above zero.
    """
    if accuracy_class.startswith(_HB133):
        raise ValueError(f"{accuracy_class} has no limit in service; see division_tolerance")
    row = _error_row(load, e, accuracy_class)
    in_e = row.mpe_initial_in_e if when == "initial" else row.mpe_in_service_in_e
    cited = Cited(what="scale_error", source=row.source, basis=row.basis, note=row.note)
    return Limit(amount=product(parse_decimal(in_e), e), cited=(cited,))


def division_tolerance(load: Decimal, *, division: Decimal, accuracy_class: str) -> Limit:
    """Tolerance of a scale of class II or III before packs are checked on it, in divisions.

    NIST HB 133 (2026) Table 2-2, the acceptance tolerance of HB 44. Raises ValueError for
    another class, a load below zero, and a division not above zero.
    """
    row = _error_row(load, division, f"{_HB133}{accuracy_class}")
    cited = Cited(what="scale_error", source=row.source, basis=row.basis, note=row.note)
    amount = product(parse_decimal(row.mpe_initial_in_e), division)
    return Limit(amount=amount, cited=(cited,))


def scale_class(capacity: Decimal, division: Decimal) -> ScaleClass | None:
    """The class a scale belongs to by the number and size of its divisions, both in g.

    Where two classes fit, the coarser: a finer one must be marked on the scale. None where no
    class fits. OIML R 76-1:2006 Table 3. Raises ValueError for a division not above zero.
    """
    if division <= ZERO:
        raise ValueError("a scale has a division above zero")
    fitting = [
        row
        for row in SCALE_CLASS_ROWS
        if _lies_between(division, row.e_from_g, row.e_to_g)
        and product(parse_decimal(row.n_min), division) <= capacity
        and (not row.n_max or capacity <= product(parse_decimal(row.n_max), division))
    ]
    if not fitting:
        return None
    row = fitting[-1]  # the table goes from the finest class to the coarsest
    cited = Cited(what="scale_class", source=row.source, basis=row.basis)
    return ScaleClass(
        accuracy_class=row.accuracy_class,
        divisions=_whole_times(division, capacity),
        cited=(cited,),
    )


def mass_tolerance(nominal_g: Decimal, weight_class: str) -> Limit | None:
    """Plus or minus how many g a weight of class F1, F2, M1, M2 or M3 may be off.

    None where no single weight has this mass. OIML R 111-1:2004 Table 1. Raises ValueError
    for another class.
    """
    for row in WEIGHT_ROWS:
        by_class = {
            "F1": row.F1_mg,
            "F2": row.F2_mg,
            "M1": row.M1_mg,
            "M2": row.M2_mg,
            "M3": row.M3_mg,
        }
        if weight_class not in by_class:
            raise ValueError(f"no class of weights: {weight_class!r}")
        if parse_decimal(row.nominal_g) == nominal_g:
            cited = Cited(what="mass_tolerance", source=row.source, basis=row.basis)
            amount = product(parse_decimal(by_class[weight_class]), _GRAMS_PER_MG)
            return Limit(amount=amount, cited=(cited,))
    return None


def measure_limit(nominal: Decimal, sort: Measure) -> Limit:
    """Plus or minus 5 % of a graduation of a household cup or spoon, in its unit.

    Read in quotation for cups, from memory for spoons.
    """
    row = next(each for each in MEASURE_ROWS if each.device.startswith(_MEASURES[sort]))
    amount = product(product(nominal, parse_decimal(row.tolerance_percent_pm)), _PERCENT)
    cited = Cited(what="measure", source=row.source, basis=row.basis)
    return Limit(amount=amount, cited=(cited,))


def cylinder_limit(capacity_mL: Decimal, cylinder_class: str) -> Limit | None:  # noqa: N803
    """Plus or minus how many mL a graduated cylinder may be off at any of its marks.

    None for a capacity the table does not have. ASTM E1272-02 (2012) Table 1. Raises
    ValueError for another class than A and B.
    """
    if cylinder_class not in ("A", "B"):
        raise ValueError(f"no class of cylinders: {cylinder_class!r}")
    for row in CYLINDER_ROWS:
        if parse_decimal(row.capacity_mL) == capacity_mL:
            text = row.class_A_pm_mL if cylinder_class == "A" else row.class_B_pm_mL
            cited = Cited(what="cylinder", source=row.source, basis=row.basis)
            return Limit(amount=parse_decimal(text), cited=(cited,))
    return None


def _error_row(load: Decimal, step: Decimal, accuracy_class: str) -> ScaleErrorRow:
    if step <= ZERO or load < ZERO:
        raise ValueError("a load is not below zero and a division is above it")
    bands = [row for row in SCALE_ERROR_ROWS if row.accuracy_class == accuracy_class]
    for row in bands:
        end = row.load_up_to_e
        if not end or load <= product(parse_decimal(end), step):
            return row
    raise ValueError(f"no limit for class {accuracy_class!r} at this load")


def _lies_between(x: Decimal, low: str, high: str) -> bool:
    return parse_decimal(low) <= x and (not high or x <= parse_decimal(high))


def _whole_times(step: Decimal, whole: Decimal) -> Decimal:
    """How many whole steps there are in a whole."""
    nearest = divided(whole, step, 0)
    return nearest if product(nearest, step) <= whole else difference(nearest, ONE)
