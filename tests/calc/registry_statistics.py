"""How the statistics of measurement in kitchenlog.calc are called with what a vector gives; see
registry.py. Doubles are written to the `digits` of the vector wherever they stand.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import asdict, is_dataclass
from decimal import Decimal
from typing import Any

from kitchenlog.calc import (
    calibration,
    charts,
    charts_of,
    elementary,
    groups,
    lines,
    people,
    quantiles,
    repeats,
)
from kitchenlog.calc.numbers import parse_decimal, significant, written

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def shown(answer: Any, digits: int) -> Any:
    """An answer as JSON: doubles and decimals as text, whole numbers and words as they are."""
    if is_dataclass(answer) and not isinstance(answer, type):
        return shown(asdict(answer), digits)
    if isinstance(answer, float):
        return significant(answer, digits)
    if isinstance(answer, Decimal):
        return written(answer)
    if isinstance(answer, dict):
        return {name: shown(value, digits) for name, value in answer.items()}
    if isinstance(answer, list | tuple):
        return [shown(value, digits) for value in answer]
    return answer


def _shown(adapter: Adapter) -> Adapter:
    """The adapter with its answer shown, and only the fields a vector asks for by `show`."""

    def showing(g: Given) -> Any:
        answer = shown(adapter(g), g.get("digits", 17))
        return {name: answer[name] for name in g["show"]} if "show" in g else answer

    return showing


def ds(texts: Sequence[str]) -> list[Decimal]:
    return [parse_decimal(text) for text in texts]


def _f(text: str | None) -> float | None:
    return None if text is None else float(text)


def points_of(pairs: Sequence[Sequence[str]]) -> list[lines.Point]:
    return [lines.Point(x=parse_decimal(x), y=parse_decimal(y)) for x, y in pairs]


def line_of(g: Given) -> lines.Line:
    """A least-squares line through the vector's points; two points, or one, leave no spread."""
    points = points_of(g["points"])
    if len(points) >= lines.FIT_POINTS_MIN and not g.get("is_level"):
        return lines.least_squares(points)
    is_level = g.get("is_level") or len(points) < 2
    return lines.level_through_mean(points) if is_level else lines.through_mean(points)


def checks_of(g: Given) -> list[calibration.CheckPoint]:
    return [
        calibration.CheckPoint(reading=parse_decimal(x), reference=parse_decimal(y))
        for x, y in g["checks"]
    ]


def correction_of(g: Given) -> calibration.Correction:
    return calibration.correction_of(checks_of(g), g["sort"], known_sd=_f(g.get("known_sd")))


def _calibrated(g: Given) -> lines.Estimate:
    doubles = {name: float(value) for name, value in g["coefficients"].items()}
    line = lines.Coefficients(**doubles, correlation=None)
    return lines.calibrated(float(g["y"]), line, y_sd=float(g["y_sd"]))


def _groups(g: Given) -> list[groups.Group]:
    return [
        groups.Group(count=count, mean=float(mean), squares=float(squares))
        for count, mean, squares in g["groups"]
    ]


def analysis_of(g: Given) -> groups.Analysis:
    """From single readings, or from the count, mean and sum of squares of each group."""
    if "readings" in g:
        return groups.analysis_of([ds(group) for group in g["readings"]])
    return groups.analysis_of_groups(_groups(g), parse_decimal(g["origin"]))


def study_of(g: Given) -> people.Study:
    return [[ds(cell) for cell in person] for person in g["study"]]


def _bias_of(g: Given) -> people.Bias:
    known = [
        people.Known(reading=parse_decimal(x), answer=parse_decimal(y))
        for x, y in g["readings"]
    ]
    return people.bias_of(known, float(g["level"]))


def _ewma(g: Given) -> charts.Chart:
    return charts.ewma(
        ds(g["values"]),
        start=float(g["start"]),
        sd=float(g["sd"]),
        weight=float(g["weight"]),
        width=float(g["width"]),
    )


def _doubles(texts: Sequence[str]) -> list[float]:
    return [float(text) for text in texts]


def _outside(g: Given) -> list[int]:
    limits = [charts.Limits(low=float(low), high=float(high)) for low, high in g["limits"]]
    return charts.points_outside(_doubles(g["points"]), limits)


ELEMENTARY: dict[str, Adapter] = {
    "added": lambda g: elementary.added(_doubles(g["values"])),
    "exponential": lambda g: elementary.exponential(float(g["x"])),
    "logarithm": lambda g: elementary.logarithm(float(g["x"])),
    "log_one_plus": lambda g: elementary.log_one_plus(float(g["x"])),
}

QUANTILES: dict[str, Adapter] = {
    "normal_cumulative": lambda g: quantiles.normal_cumulative(float(g["x"])),
    "normal_quantile": lambda g: quantiles.normal_quantile(float(g["level"]), sides=g["sides"]),
    "t_cumulative": lambda g: quantiles.t_cumulative(float(g["t"]), degrees=g["degrees"]),
    "t_beyond": lambda g: quantiles.t_beyond(float(g["t"]), degrees=g["degrees"]),
    "t_quantile": lambda g: quantiles.t_quantile(
        float(g["level"]), degrees=g["degrees"], sides=g["sides"]
    ),
    "f_cumulative": lambda g: quantiles.f_cumulative(
        float(g["f"]), over=g["over"], under=g["under"]
    ),
    "f_beyond": lambda g: quantiles.f_beyond(float(g["f"]), over=g["over"], under=g["under"]),
    "f_shares": lambda g: quantiles.f_shares(float(g["f"]), over=g["over"], under=g["under"]),
}

REPEATS: dict[str, Adapter] = {
    "repeats_of": lambda g: repeats.repeats_of(ds(g["values"])),
    "mean_interval": lambda g: repeats.mean_interval(
        repeats.repeats_of(ds(g["values"])), float(g["level"])
    ),
    "pooled_sd": lambda g: repeats.pooled_sd(
        [
            repeats.Spread(sum_of_squares=float(squares), degrees=degrees)
            for squares, degrees in g["spreads"]
        ]
    ),
    "repeatability_limit": lambda g: repeats.repeatability_limit(float(g["sd"])),
}

LINES: dict[str, Adapter] = {
    "least_squares": lambda g: lines.least_squares(points_of(g["points"])),
    "through_mean": lambda g: lines.through_mean(points_of(g["points"])),
    "level_through_mean": lambda g: lines.level_through_mean(points_of(g["points"])),
    "coefficients": lambda g: lines.coefficients(line_of(g), float(g["at"])),
    "fit_of": lambda g: lines.fit_of(line_of(g)),
    "predicted": lambda g: lines.predicted(line_of(g), float(g["x"])),
    "backwards": lambda g: lines.backwards(
        line_of(g), float(g["y"]), readings=g["readings"], level=float(g["level"])
    ),
    "calibrated": _calibrated,
    "is_extrapolated": lambda g: lines.is_extrapolated(line_of(g), float(g["x"])),
}

CALIBRATION: dict[str, Adapter] = {
    "correction_points": lambda g: calibration.correction_points(checks_of(g)),
    "correction_of": correction_of,
    "significance": lambda g: calibration.significance(correction_of(g), float(g["level"])),
    "significance_at": lambda g: calibration.significance_at(
        correction_of(g), float(g["reading"]), level=float(g["level"])
    ),
    "corrected": lambda g: calibration.corrected(
        correction_of(g), parse_decimal(g["reading"]), level=float(g["level"])
    ),
}

GROUPS: dict[str, Adapter] = {
    "group_of": lambda g: groups.group_of(ds(g["values"]), parse_decimal(g["origin"])),
    "analysis_of": analysis_of,
    "analysis_of_groups": analysis_of,
    "components_of": lambda g: groups.components_of(analysis_of(g)),
    "mean_u_with_groups": lambda g: groups.mean_u_with_groups(analysis_of(g)),
    "mean_u_without_groups": lambda g: groups.mean_u_without_groups(analysis_of(g)),
}

PEOPLE: dict[str, Adapter] = {
    "bias_of": _bias_of,
    "gauge_by_ranges": lambda g: people.gauge_by_ranges(study_of(g)),
    "two_way": lambda g: people.two_way(study_of(g)),
    "is_pooled": lambda g: people.is_pooled(people.two_way(study_of(g))),
    "gauge_by_variance": lambda g: people.gauge_by_variance(people.two_way(study_of(g))),
}

CHARTS: dict[str, Adapter] = {
    "xbar_range": lambda g: charts.xbar_range([ds(each) for each in g["subgroups"]]),
    "individuals": lambda g: charts.individuals(ds(g["values"])),
    "ewma": _ewma,
    "points_outside": _outside,
    "points_on_one_side": lambda g: charts.points_on_one_side(
        _doubles(g["points"]), float(g["centre"])
    ),
    "points_in_a_row": lambda g: charts.points_in_a_row(_doubles(g["points"])),
    "points_far": lambda g: charts.points_far(
        _doubles(g["points"]), centre=float(g["centre"]), sigma=float(g["sigma"])
    ),
}


def _series(g: Given) -> list[list[Decimal]]:
    return [ds(each) for each in g["series"]]


def _charted(g: Given) -> charts_of.Charted:
    return charts_of.charted(g["sort"], _series(g))


CHARTS_OF: dict[str, Adapter] = {
    "missing_points": lambda g: charts_of.missing_points(g["count"]),
    "even_subgroups": lambda g: charts_of.even_subgroups(_series(g)),
    "chart_sorts": lambda g: charts_of.chart_sorts(_series(g)),
    "charted": _charted,
    "firings": lambda g: charts_of.firings(_charted(g).places),
}

STATISTICS: dict[str, dict[str, Adapter]] = {
    file: {name: _shown(adapter) for name, adapter in adapters.items()}
    for file, adapters in {
        "elementary": ELEMENTARY,
        "quantiles": QUANTILES,
        "repeats": REPEATS,
        "lines": LINES,
        "calibration": CALIBRATION,
        "groups": GROUPS,
        "people": PEOPLE,
        "charts": CHARTS,
        "charts_of": CHARTS_OF,
    }.items()
}
