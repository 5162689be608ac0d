"""Net content: how short a pack may be, how many are looked at, how fine a scale must be.

US: NIST HB 133, category A. EU: 76/211/EEC with OIML R 87. Many figures of the US tables were
recalled and not read; each answer carries the basis of its rows.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.limits import Cited, Limit
from kitchenlog.calc.net_tables import (
    BATCH_PLAN_ROWS,
    CATEGORY_A_ROWS,
    MAV_ROWS,
    PACK_DIVISION_ROWS,
    SHORTAGE_ROWS,
    BatchPlanRow,
    MavRow,
)
from kitchenlog.calc.numbers import (
    ONE,
    ZERO,
    divided,
    parse_decimal,
    product,
    rounded,
    total,
)
from kitchenlog.calc.units import from_base, in_base

MavColumn = Literal["g", "lb", "oz"]
BatchRules = Literal["arrete_1978", "r87_2004"]

MASS_PLACES = 6
_PERCENT = Decimal("0.01")
_SIXTH = Decimal(6)  # a division is at most a sixth of the MAV: NIST HB 133 (2026) 2.2.1, read
_MAV_SIXTH = Cited(
    what="mav_sixth",
    source="NIST HB 133 (2026) 2.2.1: division no more than MAV/6",
    basis="read",
)
# Labels whose MAV the examples of HB 133 (2026) 2.2.1 and 2.3.8 print; for others in the same
# two bands the figure was read and the ends of the band recalled.
_READ_ANCHORS = (Decimal(113), Decimal(907))
_MAV_BAND = Cited(
    what="mav_band",
    source="NIST Handbook 133, App. A Table 2-5: ends of the band, and lb and oz figures",
    basis="memory",
)
_ROUNDED_UP = Cited(
    what="t_rounded_up",
    source="OIML R 87; 76/211/EEC sec. 2.5: T in percent is rounded up",
    basis="memory",
    note="up to 1000 g or mL to 0.1, above to 1",
)
_FINE_UP_TO = Decimal(1000)  # g or mL, up to which T is rounded to 0.1
_LARGEST_PACK = Decimal(50_000)  # g or mL, the end of the last band: memory
_R87_2004 = "OIML R 87:2004"  # how the table names the plan that was recalled
_STEPS = (Decimal(5), Decimal(2), Decimal(1))  # of the 1-2-5 series


@dataclass(frozen=True, kw_only=True)
class PackPlan:
    """HB 133 category A for a lot: `factor` None for a single pack, of which there is no mean;
    `tare_count` None where it was not read."""

    sample_size: int
    factor: Decimal | None
    allowed_over_mav: int
    tare_count: int | None
    cited: tuple[Cited, ...]


@dataclass(frozen=True, kw_only=True)
class BatchPlan:
    """A plan for packs short by more than T: accept or reject by their number in the first
    sample or in both together. Without numbers only the mean decides."""

    sample_size: int
    accept_at_most: int | None
    reject_at_least: int | None
    second_cumulative_size: int | None
    second_accept_at_most: int | None
    second_reject_at_least: int | None
    mean_sample_size: int
    mean_factor: Decimal
    cited: tuple[Cited, ...]


def maximum_allowable_variation(label_g: Decimal, column: MavColumn = "g") -> Limit:
    """MAV in g of a pack labelled by weight, from the column of the unit that is declared.

    The gram figures are the pound figures cut, the ounce ones are coarser. HB 133 App. A Table
    2-5: two rows read, two disputed, the others memory. Raises ValueError for a label of 0.
    """
    row = _mav_row(label_g, column)
    cited = Cited(what="mav", source=row.source, basis=row.basis, note=row.note)
    if row.percent_of_label:
        amount = product(product(label_g, parse_decimal(row.percent_of_label)), _PERCENT)
    elif column == "g":
        amount = parse_decimal(row.mav_g)
    else:
        amount = in_base(parse_decimal(row.mav_lb if column == "lb" else row.mav_oz), column)
    is_anchor = column == "g" and label_g in _READ_ANCHORS
    in_band = () if is_anchor or row.basis != "read" else (_MAV_BAND,)
    return Limit(amount=amount, cited=(cited, *in_band))


def pack_division(label_g: Decimal, column: MavColumn = "g") -> Limit:
    """The largest division, in g, of a scale for packs under HB 133: a sixth of the MAV, down
    to 1, 2 or 5 times a power of ten.

    Raises ValueError for a label of 0 or of so little that no sixth of a MAV is left.
    """
    mav = maximum_allowable_variation(label_g, column)
    sixth = divided(mav.amount, _SIXTH, MASS_PLACES)
    if sixth <= ZERO:
        raise ValueError("no scale is fine enough for so little")
    return Limit(amount=_step_below(sixth), cited=(_MAV_SIXTH, *mav.cited))


def pack_division_eu(nominal: Decimal) -> Limit:
    """The largest division, in g, of a scale for packs of this nominal content.

    French arrete of 20 Oct 1978, art. 3.1, read. Raises ValueError for a content below 0.
    """
    fitting = [
        row
        for row in PACK_DIVISION_ROWS
        if parse_decimal(row.allowed_from_nominal_g) <= nominal
    ]
    if not fitting:
        raise ValueError("a content is not below 0")
    row = fitting[-1]
    cited = Cited(what="pack_division", source=row.source, basis=row.basis, note=row.note)
    return Limit(amount=parse_decimal(row.scale_division_g), cited=(cited,))


def pack_plan(lot_size: int) -> PackPlan:
    """How many packs of a lot are weighed under HB 133 category A, and the factor of the mean.

    From memory; the factors agree with t(0.975, n - 1) / sqrt(n). Raises ValueError for none.
    """
    for row in CATEGORY_A_ROWS:
        if _holds(lot_size, row.lot_from, row.lot_to):
            factor, tares = row.sample_correction_factor, row.initial_tare_sample
            cited = Cited(what="pack_plan", source=row.source, basis=row.basis, note=row.note)
            return PackPlan(
                sample_size=int(row.sample_size),
                factor=parse_decimal(factor) if factor else None,
                allowed_over_mav=int(row.packages_allowed_over_mav),
                tare_count=_whole(tares),
                cited=(cited,),
            )
    raise ValueError("a lot has at least one pack")


def tolerable_shortage(nominal: Decimal) -> Limit:
    """T, the tolerable negative error of a nominal content in g or mL.

    A percentage is rounded up, to 0.1 up to 1000 and to 1 above: that rule is from memory.
    Raises ValueError for a content of 0 and above 50 000.
    """
    if not ZERO < nominal <= _LARGEST_PACK:
        raise ValueError("T is known above 0 and up to 50 000 g or mL")
    row = next(each for each in SHORTAGE_ROWS if nominal <= parse_decimal(each.up_to_g_or_mL))
    cited = Cited(what="t", source=row.source, basis=row.basis, note=row.note)
    if row.fixed_g_or_mL:
        return Limit(amount=parse_decimal(row.fixed_g_or_mL), cited=(cited,))
    exact = product(product(nominal, parse_decimal(row.percent_of_Qn)), _PERCENT)
    shortage = _rounded_up(exact, 1 if nominal <= _FINE_UP_TO else 0)
    is_exact = shortage == exact
    return Limit(amount=shortage, cited=(cited,) if is_exact else (cited, _ROUNDED_UP))


def batch_plan(
    batch_size: int, *, rules: BatchRules = "arrete_1978", is_destructive: bool = False
) -> BatchPlan:
    """The sampling plan for a batch under 76/211/EEC.

    `arrete_1978`: French arrete, read; a batch under 100 is checked whole. `r87_2004`: OIML R
    87:2004, from memory. Raises ValueError where the rules have no plan for such a batch.
    """
    rows = [
        row
        for row in BATCH_PLAN_ROWS
        if row.source.startswith(_R87_2004) == (rules == "r87_2004")
        and row.rule.startswith("destructive") == is_destructive
        and _holds(batch_size, row.batch_from, row.batch_to)
    ]
    if not rows:
        raise ValueError("these rules have no plan for such a batch")
    defective = rows[0]
    for_mean = next(row for row in rows if row.mean_factor)
    size = _whole(defective.sample_size)
    mean_size = _whole(for_mean.sample_size)
    return BatchPlan(
        sample_size=batch_size if size is None else size,
        accept_at_most=_whole(defective.accept_at_most),
        reject_at_least=_whole(defective.reject_at_least),
        second_cumulative_size=_whole(defective.second_cumulative_size),
        second_accept_at_most=_whole(defective.second_accept_at_most),
        second_reject_at_least=_whole(defective.second_reject_at_least),
        mean_sample_size=batch_size if mean_size is None else mean_size,
        mean_factor=parse_decimal(for_mean.mean_factor),
        cited=tuple(dict.fromkeys([_plan_cited(defective), _plan_cited(for_mean)])),
    )


def _mav_row(label_g: Decimal, column: MavColumn) -> MavRow:
    if label_g <= ZERO:
        raise ValueError("a label says more than 0")
    label = label_g if column == "g" else from_base(label_g, "lb", MASS_PLACES)
    for row in MAV_ROWS:
        end = row.label_up_to_g if column == "g" else row.label_up_to_lb
        if not end or label <= parse_decimal(end):
            return row
    raise AssertionError("the last band has no end")


def _step_below(x: Decimal) -> Decimal:
    """The largest of 1, 2, 5 times a power of ten that is not above x; x is above 0."""
    power = ONE
    while power > x:
        power = product(power, Decimal("0.1"))
    while product(power, Decimal(10)) <= x:
        power = product(power, Decimal(10))
    return next(step for each in _STEPS if (step := product(each, power)) <= x)


def _rounded_up(x: Decimal, places: int) -> Decimal:
    near = rounded(x, places)
    return near if near >= x else total([near, Decimal(1).scaleb(-places)])


def _plan_cited(row: BatchPlanRow) -> Cited:
    return Cited(what="batch_plan", source=row.source, basis=row.basis, note=row.note)


def _holds(size: int, first: str, last: str) -> bool:
    return int(first) <= size and (not last or size <= int(last))


def _whole(text: str) -> int | None:
    return int(text) if text else None
