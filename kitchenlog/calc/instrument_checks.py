"""What the body of a check says about an instrument of its sort, whoever made it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Literal, TypedDict, get_args

from kitchenlog.calc.bodies import Body, amount_in, decimal_in, items_in, text_in
from kitchenlog.calc.calibration import (
    CheckPoint,
    Correction,
    Sort,
    correction_of,
    significance,
)
from kitchenlog.calc.checks import (
    CheckResult,
    Measured,
    Point,
    judged,
    readings_in,
    summed_up,
)
from kitchenlog.calc.limits import Limit
from kitchenlog.calc.numbers import difference, plain, significant, total
from kitchenlog.calc.ph_checks import PhMeter, ph_check
from kitchenlog.calc.scale_checks import Rules, Scale, scale_check
from kitchenlog.calc.thermometer_checks import Thermometer, thermometer_check
from kitchenlog.calc.vessel_checks import Vessel, vessel_check

SIGNIFICANT_AT = 0.95  # a correction that chance explains is not applied
U_DIGITS = 3

VesselSort = Literal["spoon", "cup", "cylinder"]

_VESSELS: Mapping[str, VesselSort] = {sort: sort for sort in get_args(VesselSort)}
_RULES: Mapping[str, Rules] = {rules: rules for rules in get_args(Rules)}
_SORTS: Mapping[str, Sort] = {sort: sort for sort in get_args(Sort)}
# What says nothing about how the instrument reads along its range.
_NOT_ON_THE_LINE = ("tare", "return_to_zero", "off_centre", "water")
_LINE_DIGITS = 15  # as many as a double holds for certain


class CheckedPoint(TypedDict):
    """One step: error = reading - reference, in the check's unit. `repeats` are the errors of
    single readings, none where there was one or where water was weighed to tell a volume."""

    step: int
    sort: str
    reference: str
    error: str
    u: str | None
    limit: str | None
    verdict: str | None
    repeats: list[str]


class CorrectionLine(TypedDict):
    """A line of corrections over readings (calibration.Correction), doubles as text."""

    unit: str | None
    sort: str
    terms: int
    count: int
    centre: str
    height: str
    slope: str
    sum_xx: str
    sd: str | None
    degrees: int | None
    low: str
    high: str
    is_significant: bool | None


def check_result(sort: str | None, body: Body, fields: Body) -> CheckResult:
    """Errors and verdict of a check of an instrument of this `sort`.

    What the check's own body says of the instrument (division, class, limit) counts before the
    `fields` of its definition, which may have been edited since.
    """
    known = {**fields, **body}
    result = _result(sort, known, items_in(body, "steps"))
    own = decimal_in(known, "most_error")
    if text_in(known, "judged_by") == "own" and own is not None:
        return _by_own_limit(result, own)
    return result


def checked_unit(sort: str | None, body: Body) -> str | None:
    """The unit of the errors of a check: water is weighed, but tells what a vessel holds."""
    return "mL" if sort in _VESSELS else text_in(body, "unit")


def _result(sort: str | None, known: Body, steps: Sequence[Body]) -> CheckResult:
    if sort == "scale":
        return scale_check(_scale(known), steps)
    vessel = _VESSELS.get(sort or "")
    if vessel is not None:
        return _vessel_result(vessel, known, steps)
    if sort == "ph_meter":
        return ph_check(_ph_meter(known), steps).result
    return thermometer_check(_compared(known), steps)


def _by_own_limit(result: CheckResult, most_error: Decimal) -> CheckResult:
    """The same check judged by the limit the cooperative has set."""
    limit = Limit(amount=most_error, cited=())
    points = [judged(_measured(each), limit) for each in result.points]
    return summed_up(points, repeatability=result.repeatability, hysteresis=result.hysteresis)


def _measured(point: Point) -> Measured:
    return Measured(
        step=point.step,
        sort=point.sort,
        value=_reading(point),
        reference=point.reference,
        doubt=point.doubt,
    )


def _vessel_result(sort: VesselSort, known: Body, steps: Sequence[Body]) -> CheckResult:
    """Of a vessel of which nobody said what it holds nothing can be told."""
    holds = amount_in(known, "holds")
    if holds is None:
        return summed_up([], repeatability=None, hysteresis=None)
    vessel = Vessel(
        sort=sort, capacity_mL=holds.value, cylinder_class=text_in(known, "accuracy_class")
    )
    return vessel_check(vessel, steps)


def correction_found(body: Body, result: CheckResult) -> Correction | None:
    """The correction line the check asked for, None where it asked for none or the steps do not
    carry one."""
    asked = _SORTS.get(text_in(body, "line") or "")
    points = [each for each in result.points if each.sort not in _NOT_ON_THE_LINE]
    if asked is None or not points:
        return None
    pairs = [_pair(each) for each in points]
    if asked == "two_point":
        ends = sorted(pairs, key=lambda pair: pair.reading)
        pairs = [ends[0], ends[-1]]
    try:
        return correction_of(pairs, asked, known_sd=_known_sd(points))
    except ValueError:  # too few points, or all at one reading
        return None


def error_found(body: Body, result: CheckResult) -> Correction | None:
    """How far a check found it off, as a correction: the line it asked for, else through what
    it compared."""
    sorts = ("least_squares", "two_point", "offset")
    asked = correction_found(body, result)
    if asked is not None:
        return asked
    lines = (correction_found({**body, "line": sort}, result) for sort in sorts)
    return next((line for line in lines if line is not None), None)


def written_points(result: CheckResult, body: Body) -> list[CheckedPoint]:
    """The steps of a check as text for a sheet; `body` is that of its entry."""
    steps = items_in(body, "steps")
    return [_written_point(each, steps[each.step]) for each in result.points]


def written_correction(correction: Correction, unit: str | None) -> CorrectionLine:
    """A line as text for a sheet, in the unit of the readings it is for, with its judgement."""
    line = correction.line
    return CorrectionLine(
        unit=unit,
        sort=correction.sort,
        terms=correction.terms,
        count=line.count,
        centre=_double(line.centre),
        height=_double(line.height),
        slope=_double(line.slope),
        sum_xx=_double(line.sum_xx),
        sd=None if line.sd is None else _double(line.sd),
        degrees=line.degrees,
        low=_double(line.low),
        high=_double(line.high),
        is_significant=_is_significant(correction),
    )


def _is_significant(correction: Correction) -> bool | None:
    """Points that agree to the last digit of a display nobody knows prove nothing."""
    if correction.line.sd == 0:
        return None
    return significance(correction, SIGNIFICANT_AT).is_significant


def _double(x: float) -> str:
    return significant(x, _LINE_DIGITS)


def _scale(known: Body) -> Scale:
    return Scale(
        division=decimal_in(known, "division"),
        e=decimal_in(known, "interval"),
        accuracy_class=text_in(known, "accuracy_class"),
        capacity=decimal_in(known, "capacity"),
        repeatability=decimal_in(known, "repeatability"),
        rules=_rules(text_in(known, "judged_by")),
        unit=text_in(known, "unit") or "",
    )


def _rules(judged_by: str | None) -> Rules:
    """In service where nobody says: a scale at the bench is one."""
    return _RULES.get(judged_by or "", "r76_in_service")


def _compared(known: Body) -> Thermometer:
    return Thermometer(
        division=decimal_in(known, "division"),
        repeatability=decimal_in(known, "repeatability"),
        allowed_error=decimal_in(known, "most_error"),
        unit=text_in(known, "unit") or "",
    )


def _ph_meter(known: Body) -> PhMeter:
    return PhMeter(
        division=decimal_in(known, "division"),
        repeatability=decimal_in(known, "repeatability"),
        allowed_error=decimal_in(known, "most_error"),
    )


def _pair(point: Point) -> CheckPoint:
    return CheckPoint(reading=_reading(point), reference=point.reference)


def _reading(point: Point) -> Decimal:
    return total([point.reference, point.error])


def _known_sd(points: Sequence[Point]) -> float | None:
    """The largest doubt of a point; None where one is not known."""
    doubts = [each.doubt for each in points]
    known = [each.u for each in doubts if each is not None]
    return max(known) if len(known) == len(doubts) else None


def _written_point(point: Point, step: Body) -> CheckedPoint:
    readings = [] if point.sort == "water" else readings_in(step)
    errors = [plain(difference(each, point.reference)) for each in readings]
    return CheckedPoint(
        step=point.step,
        sort=point.sort,
        reference=plain(point.reference),
        error=plain(point.error),
        u=None if point.doubt is None else significant(point.doubt.u, U_DIGITS),
        limit=None if point.limit is None else plain(point.limit.amount),
        verdict=point.verdict,
        repeats=errors if len(errors) > 1 else [],
    )
