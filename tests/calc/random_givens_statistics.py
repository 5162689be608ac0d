"""Random questions about the statistics of measurement; see random_givens.py.

Values are often alike, level, far from zero or too few: there the two languages could part.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import Any

Given = dict[str, Any]

LEVELS = ("0.5", "0.6", "0.75", "0.9", "0.95", "0.99", "0.9999", "0.49", "1")
DEGREES = (1, 2, 3, 4.5, 9, 29, 30, 120, 1000, 1_000_000, 0)


def near(c: Random) -> str:
    """A reading near one of few places, so that ties and level runs come up."""
    places = c.choice((0, 1, 3))
    return f"{c.choice((0, 10, 500, 100_000_000)) + c.uniform(-2, 2):.{places}f}"


def close(c: Random) -> str:
    return f"{c.uniform(-3, 3):.{c.choice((0, 1, 4))}f}"


def some(c: Random, make: Callable[[Random], Any], *, least: int, most: int) -> list[Any]:
    return [make(c) for _ in range(c.randint(least, most))]


def level(c: Random) -> str:
    return c.choice((*LEVELS, f"{c.uniform(0.5, 0.9999):.6f}"))


def degrees(c: Random) -> float:
    return c.choice((*DEGREES, c.randint(1, 400)))


def sides(c: Random) -> int:
    return c.choice((1, 2))


def ratio(c: Random) -> Given:
    return {
        "f": repr(c.choice((0.0, 1.0, 10 ** c.uniform(-6, 6), c.uniform(0, 5)))),
        "over": degrees(c),
        "under": degrees(c),
    }


def pair(c: Random) -> list[str]:
    """A reading and something near it, or a point of a line."""
    x = c.randint(0, 40)
    return [f"{x}", f"{x * c.choice((0, 1, 1, 1.02)) + c.uniform(-1, 1):.{c.randint(0, 3)}f}"]


def line(c: Random) -> Given:
    return {"points": some(c, pair, least=0, most=9), "is_level": c.random() < 0.2}


def correction(c: Random) -> Given:
    sort = c.choice(("offset", "two_point", "least_squares"))
    is_two = sort == "two_point"
    return {
        "checks": some(c, pair, least=2 if is_two else 0, most=2 if is_two else 6),
        "sort": sort,
        "known_sd": c.choice((None, "0", "0.3", f"{c.uniform(0, 2):.3f}", "-1")),
        "level": level(c),
        "reading": f"{c.uniform(-5, 50):.2f}",
    }


def grouped(c: Random) -> Given:
    group = c.choice((near, close))
    return {
        "readings": some(c, lambda c: some(c, group, least=0, most=5), least=0, most=5)
        if c.random() < 0.2
        else some(c, lambda c: some(c, group, least=1, most=5), least=1, most=6)
    }


def summarised(c: Random) -> Given:
    def group(c: Random) -> list[Any]:
        return [c.randint(1, 6), repr(c.uniform(-5, 5)), repr(c.choice((0.0, c.random())))]

    return {"groups": some(c, group, least=0, most=6), "origin": near(c)}


def study(c: Random) -> Given:
    people, items, trials = c.randint(1, 4), c.randint(1, 5), c.randint(1, 4)
    make = c.choice((near, close))
    cells = [[[make(c) for _ in range(trials)] for _ in range(items)] for _ in range(people)]
    if c.random() < 0.05:
        cells[0][0].pop()
    return {"study": cells}


def subgroups(c: Random) -> Given:
    size = c.randint(1, 11)
    return {"subgroups": [[near(c) for _ in range(size)] for _ in range(c.randint(0, 6))]}


def series(c: Random) -> Given:
    """Often long enough for every rule to fire, sometimes ragged or empty."""
    size, make = c.choice((1, 1, 2, 5, 12)), c.choice((near, close))
    drift = c.choice((0, 0, 1))
    ragged = c.random() < 0.2
    made = [
        [
            f"{float(make(c)) + drift * place:.4f}"
            for _ in range(c.randint(0, size) if ragged else size)
        ]
        for place in range(c.choice((0, 1, 7, 8, 20, 30)))
    ]
    return {"series": made, "sort": c.choice(("xbar_range", "individuals", "ewma"))}


def watched(c: Random) -> Given:
    return {
        "points": some(c, close, least=0, most=20),
        "centre": c.choice(("0", "0.5", "-1")),
        "sigma": c.choice(("0", "0.5", "1")),
    }


def outside(c: Random) -> Given:
    points = some(c, close, least=0, most=8)
    return {"points": points, "limits": [[close(c), close(c)] for _ in points]}


def averaged(c: Random) -> Given:
    return {
        "values": some(c, near, least=0, most=12),
        "start": near(c),
        "sd": f"{c.uniform(0, 3):.2f}",
        "weight": c.choice(("0", "0.3", "1", "0.05", f"{c.random():.3f}")),
        "width": c.choice(("3", "2.7", "0")),
    }


def repeated(c: Random) -> Given:
    return {"values": some(c, c.choice((near, close)), least=0, most=12), "level": level(c)}


def drilled(c: Random) -> Given:
    return {"readings": some(c, pair, least=0, most=8), "level": level(c)}


RANDOM_STATISTICS: dict[tuple[str, str], Callable[[Random], Given]] = {
    ("elementary", "added"): lambda c: {
        "values": [repr(c.uniform(-1, 1) * 10 ** c.randint(-9, 9)) for _ in range(9)]
    },
    ("elementary", "exponential"): lambda c: {"x": repr(c.uniform(-760, 720))},
    ("elementary", "logarithm"): lambda c: {
        "x": repr(c.choice((0.0, 1.0, c.random(), 10 ** c.uniform(-300, 300))))
    },
    ("elementary", "log_one_plus"): lambda c: {
        "x": repr(c.choice((0.0, -1.0, c.uniform(-1, 1), 10 ** c.uniform(-20, 20))))
    },
    ("quantiles", "normal_cumulative"): lambda c: {"x": repr(c.uniform(-9, 9))},
    ("quantiles", "normal_quantile"): lambda c: {"level": level(c), "sides": sides(c)},
    ("quantiles", "t_cumulative"): lambda c: {
        "t": repr(c.uniform(-9, 9)), "degrees": degrees(c)
    },
    ("quantiles", "t_beyond"): lambda c: {"t": repr(c.uniform(-9, 9)), "degrees": degrees(c)},
    ("quantiles", "t_quantile"): lambda c: {
        "level": level(c), "degrees": degrees(c), "sides": sides(c)
    },
    ("quantiles", "f_cumulative"): ratio,
    ("quantiles", "f_beyond"): ratio,
    ("quantiles", "f_shares"): ratio,
    ("repeats", "repeats_of"): repeated,
    ("repeats", "mean_interval"): repeated,
    ("repeats", "pooled_sd"): lambda c: {
        "spreads": some(c, lambda c: [repr(c.random()), c.randint(0, 60)], least=0, most=6)
    },
    ("repeats", "repeatability_limit"): lambda c: {"sd": repr(c.random())},
    ("lines", "least_squares"): line,
    ("lines", "through_mean"): line,
    ("lines", "level_through_mean"): line,
    ("lines", "coefficients"): lambda c: {**line(c), "at": close(c)},
    ("lines", "fit_of"): line,
    ("lines", "predicted"): lambda c: {**line(c), "x": near(c)},
    ("lines", "backwards"): lambda c: {
        **line(c), "y": near(c), "readings": c.randint(0, 5), "level": level(c)
    },
    ("lines", "calibrated"): lambda c: {
        "y": near(c),
        "coefficients": {
            "intercept": close(c),
            "slope": close(c),
            "intercept_sd": repr(c.random()),
            "slope_sd": repr(c.random()),
            "covariance": repr(c.uniform(-0.1, 0.1)),
        },
        "y_sd": repr(c.random()),
    },
    ("lines", "is_extrapolated"): lambda c: {**line(c), "x": f"{c.randint(-5, 45)}"},
    ("calibration", "correction_points"): correction,
    ("calibration", "correction_of"): correction,
    ("calibration", "significance"): correction,
    ("calibration", "significance_at"): correction,
    ("calibration", "corrected"): correction,
    ("groups", "group_of"): lambda c: {**repeated(c), "origin": near(c)},
    ("groups", "analysis_of"): grouped,
    ("groups", "analysis_of_groups"): summarised,
    ("groups", "components_of"): grouped,
    ("groups", "mean_u_with_groups"): grouped,
    ("groups", "mean_u_without_groups"): grouped,
    ("people", "bias_of"): drilled,
    ("people", "gauge_by_ranges"): study,
    ("people", "two_way"): study,
    ("people", "is_pooled"): study,
    ("people", "gauge_by_variance"): study,
    ("charts", "xbar_range"): subgroups,
    ("charts", "individuals"): repeated,
    ("charts", "ewma"): averaged,
    ("charts", "points_outside"): outside,
    ("charts", "points_on_one_side"): watched,
    ("charts", "points_in_a_row"): watched,
    ("charts", "points_far"): watched,
    ("charts_of", "missing_points"): lambda c: {"count": c.randint(0, 40)},
    ("charts_of", "even_subgroups"): series,
    ("charts_of", "chart_sorts"): series,
    ("charts_of", "charted"): series,
    ("charts_of", "firings"): series,
}  # fmt: skip
