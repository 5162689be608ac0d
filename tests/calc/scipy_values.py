"""What scipy and numpy say where they do the same as we."""

from __future__ import annotations

import csv
from pathlib import Path
from typing import Any

import numpy as np
from scipy import stats

VECTORS = Path(__file__).parents[1] / "vectors"
# Nearer to one half scipy itself is only good to 1e-11 of so small a value.
LEVELS = (0.5, 0.52, 0.6, 0.75, 0.76, 0.9, 0.95, 0.975, 0.99, 0.995, 0.999, 0.9999)
DEGREES = (1, 1.5, 2, 3, 4, 5, 7, 9, 15, 19, 29.5, 30, 60, 120, 400, 1000, 100_000)
TS = (0.0, 0.01, 0.5, 1.0, 2.0, 3.0, 5.0, 12.0, 60.0)
FS = (0.0001, 0.1, 0.5, 0.99, 1.0, 1.01, 2.0, 5.0, 40.0)
F_DEGREES = ((1, 1), (1, 34), (2, 9), (3, 7.5), (9, 40), (18, 60), (40, 9), (200, 300))


def scipy_values() -> dict[str, Any]:
    """Figures by the name of their function: givens first, the answer last."""
    return {
        "normal_quantile": [
            [level, sides, float(stats.norm.isf((1 - level) / sides))]
            for level in LEVELS
            for sides in (1, 2)
        ],
        "t_quantile": [
            [level, degrees, sides, float(stats.t.isf((1 - level) / sides, degrees))]
            for level in LEVELS
            for degrees in DEGREES
            for sides in (1, 2)
        ],
        "t_beyond": [
            [t, degrees, float(2 * stats.t.sf(t, degrees))] for t in TS for degrees in DEGREES
        ],
        "f_shares": [
            [
                f,
                over,
                under,
                float(stats.f.cdf(f, over, under)),
                float(stats.f.sf(f, over, under)),
            ]
            for f in FS
            for over, under in F_DEGREES
        ],
        "linregress": {name: _line(*columns) for name, columns in _lines().items()},
        "f_oneway": _oneway(),
        "ttest_1samp": _interval(),
    }


def _rows(name: str) -> list[dict[str, str]]:
    with (VECTORS / f"ex_{name}.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


def _lines() -> dict[str, tuple[list[float], list[float]]]:
    def columns(name: str, x: str, y: str) -> tuple[list[float], list[float]]:
        rows = _rows(name)
        return [float(row[x]) for row in rows], [float(row[y]) for row in rows]

    return {
        "norris": columns("norris", "x", "y"),
        "gum_h3": columns("gum_h3", "reading_C", "correction_C"),
    }


def _line(xs: list[float], ys: list[float]) -> dict[str, float]:
    """The fit by linregress; the spread and the covariance by numpy's polyfit."""
    fit = stats.linregress(xs, ys)
    slope_and_intercept, covariance = np.polyfit(xs, ys, 1, cov=True)
    residuals = np.array(ys) - np.polyval(slope_and_intercept, xs)
    return {
        "slope": float(fit.slope),
        "intercept": float(fit.intercept),
        "slope_sd": float(fit.stderr),
        "intercept_sd": float(fit.intercept_stderr),
        "covariance": float(covariance[0][1]),
        "r_squared": float(fit.rvalue**2),
        "p": float(fit.pvalue),
        "sd": float(np.sqrt((residuals**2).sum() / (len(xs) - 2))),
    }


def _oneway() -> dict[str, float]:
    groups: dict[str, list[float]] = {}
    for row in _rows("sirstv"):
        # Taken off exactly, so that plain doubles keep ten digits.
        groups.setdefault(row["instrument"], []).append(round(float(row["value"]) - 196, 4))
    found: Any = stats.f_oneway(*groups.values())
    return {"f": float(found.statistic), "p": float(found.pvalue)}


def _interval() -> dict[str, float]:
    values = [float(row["temperature_C"]) for row in _rows("gum_t1")]
    found: Any = stats.ttest_1samp(values, 100)
    interval = found.confidence_interval(0.95)
    return {
        "t": float(found.statistic),
        "p": float(found.pvalue),
        "low": float(interval.low),
        "high": float(interval.high),
    }
