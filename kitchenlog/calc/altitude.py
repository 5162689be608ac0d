"""What altitude changes at a canner: bands as printed, ends included; above an end the next.

2000 ft and 2001 ft differ by a pound: an altitude in metres is compared exactly and counts up,
never down. The time itself comes from the tested recipe.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.bench_tables import CANNER_ROWS, CannerRow
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import ONE, ZERO, parse_decimal, product
from kitchenlog.calc.thermometer_checks import METRES_IN_FOOT

Canner = Literal["dial_low_acid", "dial_fruit", "weighted", "boiling_water"]
AltitudeUnit = Literal["ft", "m"]
CautionKey = Literal["altitude"]


@dataclass(frozen=True, kw_only=True)
class CannerAdjustment:
    """Gauge pressure or minutes to add for one band of altitude in feet; None is what the table
    does not say. Shown with its caution."""

    canner: Canner
    from_ft: Decimal
    to_ft: Decimal
    gauge_lb_per_in2: Decimal | None
    added_min: Decimal | None
    cited: tuple[Cited, ...]
    caution: CautionKey = "altitude"


def canner_adjustment(
    canner: Canner, altitude: Decimal, unit: AltitudeUnit
) -> CannerAdjustment:
    """The band an altitude lies in. Raises ValueError below 0 and above the last band."""
    in_foot = METRES_IN_FOOT if unit == "m" else ONE
    for row in CANNER_ROWS:
        ends_at = product(parse_decimal(row.to_ft), in_foot)
        if row.canner == canner and ZERO <= altitude <= ends_at:
            return _adjustment(canner, row)
    raise ValueError("no adjustment is known for this altitude")


def _adjustment(canner: Canner, row: CannerRow) -> CannerAdjustment:
    return CannerAdjustment(
        canner=canner,
        from_ft=parse_decimal(row.from_ft),
        to_ft=parse_decimal(row.to_ft),
        gauge_lb_per_in2=_number(row.gauge_lb_per_in2),
        added_min=_number(row.added_min),
        cited=(Cited(what=canner, source=row.source, basis=row.basis, note=row.note),),
    )


def _number(text: str) -> Decimal | None:
    return parse_decimal(text) if text else None
