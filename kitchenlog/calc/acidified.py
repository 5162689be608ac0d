"""Which side of the acid line a food lies on, and how long acidified vegetables are held for a
5-log reduction, as published.

pH 4.1 to 4.6 is read from the table of Food Protection Trends 2014, for the whole degree
Fahrenheit at or below the reading. Below pH 4.1 only the model of 2018 is known. Both rest on a
pH that has come to equilibrium.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.bench_tables import FIVE_LOG_ROWS, FiveLogRow
from kitchenlog.calc.elementary import exponential
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import ONE, ZERO, as_double, parse_decimal
from kitchenlog.calc.temperature import fahrenheit

Unit = Literal["degC", "degF"]
Side = Literal["acid", "low_acid", "low_water"]
CautionKey = Literal["acidified"]

# 21 CFR 114.3 and 114.80(a)(2), read.
_ACID_PH_MAX = Decimal("4.6")
_WATER_ACTIVITY_MAX = Decimal("0.85")
_METER_ABOVE_PH = Decimal("4.0")
_PH_END = Decimal(14)
_ACID_LINE = Cited(
    what="acid_line",
    source="21 CFR 114.3: equilibrium pH 4.6 or below; low-acid only above water activity 0.85",
    basis="read",
)
_METER = Cited(
    what="ph_method",
    source="21 CFR 114.80(a)(2): above pH 4.0 a potentiometric method",
    basis="read",
)
_LN_10 = 2.302585092994046
_REFERENCE_F = 160.0
_TABLE_PH = (Decimal("4.1"), Decimal("4.6"))
# Minutes at 160 degF and degrees Fahrenheit for a tenth of them.
_TABLE_MODEL = (5.6, 16.7)  # Food Protection Trends 2014 Table 4, read
_LOW_PH_MODEL = (1.2, 19.5)  # Food Protection Trends 2018 p. 264, read
_LOW_PH = Cited(
    what="five_log_below_pH_4.1",
    source="Food Protection Trends 2018 p. 264: F160 = 1.2 min, z = 19.5 F",
    basis="read",
)


@dataclass(frozen=True, kw_only=True)
class AcidLine:
    """On which side an equilibrium pH and a water activity lie. 4.6 is the legal edge and not a
    target. `needs_meter`: no paper or dye counts at this pH."""

    side: Side
    needs_meter: bool
    cited: tuple[Cited, ...]
    caution: CautionKey = "acidified"


@dataclass(frozen=True, kw_only=True)
class FiveLogHold:
    """Minutes at the whole degree Fahrenheit below a temperature: as published, None below pH
    4.1, and by the model. Never shown without its caution."""

    temp_F: Decimal  # noqa: N815  the unit is degF
    published_min: Decimal | None
    model_min: float
    cited: tuple[Cited, ...]
    caution: CautionKey = "acidified"


def acid_line(ph: Decimal, *, water_activity: Decimal | None) -> AcidLine:
    """`acid` at pH 4.6 or below, else `low_acid`, or `low_water` at a water activity of 0.85 or
    below. An activity that nobody measured counts as above.

    Raises ValueError for a pH outside 0 to 14 and an activity outside 0 to 1.
    """
    activity = ONE if water_activity is None else water_activity
    if not (ZERO <= ph <= _PH_END and ZERO <= activity <= ONE):
        raise ValueError("no such pH or water activity")
    side: Side = "low_water" if activity <= _WATER_ACTIVITY_MAX else "low_acid"
    return AcidLine(
        side="acid" if ph <= _ACID_PH_MAX else side,
        needs_meter=ph > _METER_ABOVE_PH,
        cited=(_ACID_LINE, _METER),
    )


def five_log_hold(temperature: Decimal, unit: Unit, *, ph: Decimal) -> FiveLogHold:
    """The hold for a 5-log reduction at a temperature and an equilibrium pH.

    Raises ValueError below 141 and above 180 degF as printed, for a pH not above 0, and above
    pH 4.6, where it is no acidified food.
    """
    in_F = fahrenheit(temperature) if unit == "degC" else temperature  # noqa: N806
    if not ZERO < ph <= _TABLE_PH[1]:
        raise ValueError("an acidified food has a pH of at most 4.6")
    row = _row(in_F)
    is_printed = ph >= _TABLE_PH[0]
    printed = Cited(what="five_log", source=row.source, basis=row.basis, note=row.note)
    return FiveLogHold(
        temp_F=parse_decimal(row.temp_F),
        published_min=parse_decimal(row.published_5log_min) if is_printed else None,
        model_min=_model(row, _TABLE_MODEL if is_printed else _LOW_PH_MODEL),
        cited=(printed if is_printed else _LOW_PH,),
    )


def _row(in_F: Decimal) -> FiveLogRow:  # noqa: N803  the unit is degF
    """The printed degree at or below: the longer of the two times."""
    at_or_below = [row for row in FIVE_LOG_ROWS if parse_decimal(row.temp_F) <= in_F]
    if not at_or_below or in_F > parse_decimal(FIVE_LOG_ROWS[-1].temp_F):
        raise ValueError("no time is published for this temperature")
    return at_or_below[-1]


def _model(row: FiveLogRow, model: tuple[float, float]) -> float:
    """minutes x 10^((160 - temp_F) / z)."""
    minutes, z = model
    away = _REFERENCE_F - as_double(parse_decimal(row.temp_F))
    return minutes * exponential(_LN_10 * away / z)
