"""What the check of a step is about: what was read, or what is worked out from it.

A refractometer's degrees at 20 degC, the salt a salometer stands for, the acid of a titration,
the salt or sugar that was weighed in; anything else stands as it was read.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.acidity import SampleUnit, Titration, titratable_acidity
from kitchenlog.calc.bodies import Body, amount_in, decimal_in, object_in, text_in
from kitchenlog.calc.brine import Strength, salometer_percent
from kitchenlog.calc.brix import brix_correction
from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import ZERO, as_double, difference
from kitchenlog.calc.readings import Doubt, rectangular_u, resolution_u, verdict
from kitchenlog.calc.trusted import TrustedReading, meant
from kitchenlog.calc.weighing import Weighing, in_unit, scaled_doubt, sum_doubt

How = Literal["read", "corrected", "cannot_correct", "salometer", "titrated", "weighed"]

PERCENT = "%"
WEIGHED = ("salt_weighed", "sugar_weighed")
_READINGS_OF_A_BURETTE = 2  # where it stood before and after
_RATIO_U_MAX = 1e9  # beyond it a doubt says nothing


@dataclass(frozen=True, kw_only=True)
class StepValue:
    """What was read, and what the verdict is about; `value` is None where the two differ and
    it cannot be worked out. `table` names the printed one a correction is from."""

    how: How
    raw: Weighing | None
    value: Weighing | None
    table: str | None = None
    cited: tuple[Cited, ...] = ()


def step_value(
    plan: Body,
    body: Body,
    trusted: TrustedReading | None,
    *,
    strength: Strength | None = None,
    is_moved: bool = False,
) -> StepValue | None:
    """The value of a step that was done; None where nothing was measured.

    `trusted` is its reading, `strength` what was weighed in, for a step that asks for it;
    `is_moved` as if the error that a failed check of the instrument found counted.
    """
    measures = text_in(plan, "measures")
    if measures == "acidity":
        return _titrated(object_in(body, "titration"))
    if measures in WEIGHED:
        return None if strength is None else _weighed(strength)
    if trusted is None:
        return None
    stands = meant(trusted, is_moved=is_moved)
    if measures == "salometer":
        return _salometer(stands, trusted.read, text_in(body, "scale"))
    unit = text_in(plan, "unit")
    raw, value = in_unit(trusted.read, unit), in_unit(stands, unit)
    celsius = decimal_in(body, "celsius")
    if measures == "brix" and celsius is not None and value is not None:
        return _at_20(value, raw, celsius)
    return StepValue(how="read", raw=raw, value=value)


def value_verdict(plan: Body, value: StepValue | None) -> str | None:
    """Within the limits of the step or not; what was read and cannot be worked out tells
    nothing. None without a limit, and where the unit measures another thing."""
    low, high = decimal_in(plan, "low"), decimal_in(plan, "high")
    if value is None or (low is None and high is None):
        return None
    if value.value is None:
        return None if value.how == "read" else "cannot_tell"
    level = decimal_in(plan, "level")
    return verdict(value.value.net, low=low, high=high, doubt=value.value.doubt, level=level)


def _at_20(stands: Weighing, raw: Weighing | None, celsius: Decimal) -> StepValue:
    """u of the printed correction is its tolerance / sqrt(3); that of the temperature is not
    counted: the correction moves by less than 0.1 % a degree."""
    found = brix_correction(stands.net, celsius)
    if found.percent is None or found.tolerance is None:
        return StepValue(how="cannot_correct", raw=raw, value=None)
    printed = Doubt(u=rectangular_u(found.tolerance), degrees=None)
    doubt = sum_doubt([stands.doubt, printed])
    return StepValue(
        how="corrected",
        raw=raw,
        value=Weighing(net=found.percent, unit=stands.unit, doubt=doubt),
        table=found.table,
        cited=found.cited,
    )


def _salometer(stands: Weighing, raw: Weighing, scale: str | None) -> StepValue:
    try:
        found = salometer_percent(stands.net, scale or "")
    except ValueError:  # no scale was said, or no brine shows this
        return StepValue(how="salometer", raw=raw, value=None)
    degrees = as_double(found.degrees)
    factor = as_double(found.percent) / degrees if degrees > 0 else 0.0
    doubt = scaled_doubt(stands.doubt, factor) if factor > 0 else None
    value = Weighing(net=found.percent, unit=PERCENT, doubt=doubt)
    return StepValue(how="salometer", raw=raw, value=value, table=scale, cited=found.cited)


def _titrated(body: Body | None) -> StepValue | None:
    """u counts what can be read off the burette; the strength of the alkali and the size of
    the sample are taken as they are said."""
    asked = None if body is None else _titration(body)
    if body is None or asked is None:
        return None
    try:
        found = titratable_acidity(asked)
    except ValueError:
        return StepValue(how="titrated", raw=None, value=None)
    run_in = as_double(difference(asked.naoh_mL, asked.blank_mL))
    division = decimal_in(body, "division")
    readings = _READINGS_OF_A_BURETTE * (1 if asked.blank_mL == ZERO else 2)
    doubt = None
    if division is not None and division > ZERO and run_in > 0:
        u = as_double(found.percent) / run_in * resolution_u(division, readings)
        doubt = Doubt(u=u, degrees=None) if u < _RATIO_U_MAX else None
    value = Weighing(net=found.percent, unit=PERCENT, doubt=doubt)
    return StepValue(how="titrated", raw=None, value=value, cited=found.cited)


def _titration(body: Body) -> Titration | None:
    acid, normality = text_in(body, "acid"), decimal_in(body, "normality")
    titre, sample = decimal_in(body, "titre"), amount_in(body, "sample")
    if acid is None or normality is None or titre is None or sample is None:
        return None
    sample_unit: SampleUnit = "g" if sample.unit == "g" else "mL"
    return Titration(
        acid=acid,
        naoh_N=normality,
        naoh_mL=titre,
        sample=sample.value,
        sample_unit=sample_unit,
        blank_mL=decimal_in(body, "blank") or ZERO,
    )


def _weighed(strength: Strength) -> StepValue:
    doubt = Doubt(u=strength.u, degrees=None)
    value = Weighing(net=strength.percent, unit=PERCENT, doubt=doubt)
    return StepValue(how="weighed", raw=None, value=value)
