"""What the body of a check says about an instrument of its sort, whoever made it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Literal, get_args

from kitchenlog.calc.bodies import Body, amount_in, decimal_in, items_in, text_in
from kitchenlog.calc.calibration import CheckPoint, Correction, Sort, correction_of
from kitchenlog.calc.checks import CheckResult, Point, summed_up
from kitchenlog.calc.numbers import total
from kitchenlog.calc.ph_checks import PhMeter, ph_check
from kitchenlog.calc.scale_checks import Rules, Scale, scale_check
from kitchenlog.calc.thermometer_checks import Thermometer, thermometer_check
from kitchenlog.calc.vessel_checks import Vessel, vessel_check

VesselSort = Literal["spoon", "cup", "cylinder"]

_VESSELS: Mapping[str, VesselSort] = {sort: sort for sort in get_args(VesselSort)}
_RULES: Mapping[str, Rules] = {rules: rules for rules in get_args(Rules)}
# What says nothing about how the instrument reads along its range.
_SORTS: Mapping[str, Sort] = {sort: sort for sort in get_args(Sort)}
_NOT_ON_THE_LINE = ("tare", "return_to_zero", "off_centre", "water")


def check_result(sort: str | None, body: Body, fields: Body) -> CheckResult:
    """Errors and verdict of a check of an instrument of this `sort`.

    What the check's own body says of the instrument (division, class, limit) counts before the
    `fields` of its definition, which may have been edited since.
    """
    steps = items_in(body, "steps")
    known = {**fields, **body}
    if sort == "scale":
        return scale_check(_scale(known), steps)
    vessel = _VESSELS.get(sort or "")
    if vessel is not None:
        return _vessel_result(vessel, known, steps)
    if sort == "ph_meter":
        return ph_check(_ph_meter(known), steps).result
    return thermometer_check(_compared(known), steps)


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


def _scale(known: Body) -> Scale:
    return Scale(
        division=decimal_in(known, "division"),
        e=decimal_in(known, "interval"),
        accuracy_class=text_in(known, "accuracy_class"),
        capacity=decimal_in(known, "capacity"),
        repeatability=decimal_in(known, "repeatability"),
        rules=_rules(text_in(known, "judged_by")),
    )


def _rules(judged_by: str | None) -> Rules:
    """In service where nobody says: a scale at the bench is one."""
    return _RULES.get(judged_by or "", "r76_in_service")


def _compared(known: Body) -> Thermometer:
    return Thermometer(
        division=decimal_in(known, "division"),
        repeatability=decimal_in(known, "repeatability"),
        allowed_error=decimal_in(known, "most_error"),
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
