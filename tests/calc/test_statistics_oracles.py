"""Our statistics beside those of others: scipy and numpy, the uncertainties library, and
Python's own statistics."""

from __future__ import annotations

import math
import statistics
from decimal import Decimal

import pytest
from uncertainties import ufloat
from uncertainties.core import AffineScalarFunc

from kitchenlog.calc.charts import CHART_ROWS
from kitchenlog.calc.elementary import exponential, log_one_plus, logarithm
from kitchenlog.calc.gauge_tables import GAUGE_ROWS
from kitchenlog.calc.groups import analysis_of
from kitchenlog.calc.lines import (
    Coefficients,
    calibrated,
    coefficients,
    fit_of,
    least_squares,
    predicted,
)
from kitchenlog.calc.quantiles import (
    f_shares,
    normal_cumulative,
    normal_quantile,
    t_beyond,
    t_cumulative,
    t_quantile,
)
from kitchenlog.calc.readings import T_TABLE
from kitchenlog.calc.repeats import mean_interval, repeats_of
from tests.calc.measurement_examples import column, gum_h3, norris, sirstv
from tests.calc.scipy_values import scipy_values

SCIPY = scipy_values()
LINES = {"norris": norris, "gum_h3": gum_h3}


def off(ours: float, theirs: float) -> float:
    """How far apart, as a share; two zeros agree."""
    return 0.0 if ours == theirs else abs(ours - theirs) / max(abs(theirs), 1e-300)


def test_normal_quantiles_are_those_of_scipy() -> None:
    wrong = [
        (level, sides)
        for level, sides, theirs in SCIPY["normal_quantile"]
        if off(normal_quantile(level, sides=sides), theirs) > 1e-12
    ]

    assert wrong == []


def test_quantiles_of_student_are_those_of_scipy() -> None:
    wrong = [
        (level, degrees, sides, theirs)
        for level, degrees, sides, theirs in SCIPY["t_quantile"]
        if off(t_quantile(level, degrees=degrees, sides=sides), theirs) > 1e-11
    ]

    assert wrong == []


def test_tails_of_student_are_those_of_scipy() -> None:
    wrong = [
        (t, degrees)
        for t, degrees, theirs in SCIPY["t_beyond"]
        if off(t_beyond(t, degrees=degrees), theirs) > 1e-11
    ]

    assert wrong == []


def test_shares_of_fisher_are_those_of_scipy() -> None:
    wrong = []
    for f, over, under, below, above in SCIPY["f_shares"]:
        shares = f_shares(f, over=over, under=under)
        if max(off(shares.below, below), off(shares.above, above)) > 1e-11:
            wrong.append((f, over, under))

    assert wrong == []


@pytest.mark.parametrize("name", LINES)
def test_a_line_is_that_of_linregress_and_polyfit(name: str) -> None:
    theirs, line = SCIPY["linregress"][name], least_squares(LINES[name]())
    ours, fit = coefficients(line, 0.0), fit_of(line)
    assert ours is not None

    assert ours.slope == pytest.approx(theirs["slope"], rel=1e-10)
    assert ours.intercept == pytest.approx(theirs["intercept"], rel=1e-10)
    assert ours.slope_sd == pytest.approx(theirs["slope_sd"], rel=1e-10)
    assert ours.intercept_sd == pytest.approx(theirs["intercept_sd"], rel=1e-10)
    assert ours.covariance == pytest.approx(theirs["covariance"], rel=1e-10)
    assert line.sd == pytest.approx(theirs["sd"], rel=1e-10)
    assert fit.r_squared == pytest.approx(theirs["r_squared"], rel=1e-10)
    assert fit.p == pytest.approx(theirs["p"], rel=1e-8)


def test_a_line_is_that_of_pythons_own_linear_regression() -> None:
    points = norris()
    xs, ys = [float(p.x) for p in points], [float(p.y) for p in points]

    theirs = statistics.linear_regression(xs, ys)

    assert least_squares(points).slope == pytest.approx(theirs.slope, rel=1e-12)


def test_groups_differ_as_f_oneway_says() -> None:
    ours = analysis_of(sirstv())

    assert ours.f == pytest.approx(SCIPY["f_oneway"]["f"], rel=1e-9)
    assert ours.p == pytest.approx(SCIPY["f_oneway"]["p"], rel=1e-9)


def test_an_interval_of_a_mean_is_that_of_ttest_1samp() -> None:
    repeats = repeats_of(column("gum_t1", "temperature_C"))
    interval = mean_interval(repeats, 0.95)
    assert interval is not None and repeats.standard_error is not None

    t = (repeats.mean - 100) / repeats.standard_error

    assert interval.low == pytest.approx(SCIPY["ttest_1samp"]["low"], rel=1e-12)
    assert interval.high == pytest.approx(SCIPY["ttest_1samp"]["high"], rel=1e-12)
    assert t_beyond(t, degrees=19) == pytest.approx(SCIPY["ttest_1samp"]["p"], rel=1e-9)


@pytest.mark.parametrize("x", [20.0, 24.0, 30.0, 100.0])
def test_a_prediction_has_the_doubt_that_the_uncertainties_library_propagates(x: float) -> None:
    """Every correction gets the residual spread; slope and intercept then share it, and the
    library keeps account of that by itself."""
    points = gum_h3()
    line = least_squares(points)
    ours = predicted(line, x)
    xs = [float(point.x) for point in points]
    ys: list[AffineScalarFunc] = [ufloat(float(point.y), line.sd) for point in points]

    mean_x, mean_y = sum(xs) / len(xs), sum(ys) / len(ys)
    slope = sum((a - mean_x) * (b - mean_y) for a, b in zip(xs, ys, strict=True)) / sum(
        (a - mean_x) ** 2 for a in xs
    )
    theirs = (mean_y - slope * mean_x) + slope * x

    assert ours.value == pytest.approx(theirs.nominal_value, rel=1e-10)
    assert ours.u == pytest.approx(theirs.std_dev, rel=1e-9)


@pytest.mark.parametrize("y", [0.0, 6.0, 12.0])
def test_a_calibrated_value_has_the_doubt_that_the_uncertainties_library_propagates(
    y: float,
) -> None:
    """M19: var a 2.29929e-4, var b 4.5966426e-6, covariance -2.9703502e-5. The two are built
    from independent parts so that they have this covariance."""
    variance_a, variance_b, covariance = 2.29929e-4, 4.5966426e-6, -2.9703502e-5
    b = ufloat(0.98839599, math.sqrt(variance_b))
    shared = covariance / variance_b
    own = ufloat(0, math.sqrt(variance_a - shared * shared * variance_b))
    a = 0.23723513 + shared * (b - b.nominal_value) + own

    theirs = (ufloat(y, 0.038654864) - a) / b
    ours = calibrated(
        y,
        Coefficients(
            intercept=0.23723513,
            slope=0.98839599,
            intercept_sd=math.sqrt(variance_a),
            slope_sd=math.sqrt(variance_b),
            covariance=covariance,
            correlation=None,
        ),
        y_sd=0.038654864,
    )

    assert ours.value == pytest.approx(theirs.nominal_value, rel=1e-12)
    assert ours.u == pytest.approx(theirs.std_dev, rel=1e-9)


@pytest.mark.parametrize("x", [-40.0, -2.9, -0.3, 0.0, 0.7, 2.999, 3.0, 5.5])
def test_the_normal_distribution_is_that_of_erfc(x: float) -> None:
    assert normal_cumulative(x) == pytest.approx(math.erfc(-x / math.sqrt(2)) / 2, rel=1e-13)


@pytest.mark.parametrize("x", [1e-300, 1e-9, 0.3, 0.9999, 1.0, 1.5, 7.0, 1e200])
def test_logarithms_and_exponentials_are_those_of_the_machine(x: float) -> None:
    assert logarithm(x) == pytest.approx(math.log(x), rel=1e-15, abs=1e-16)
    assert exponential(math.log(x)) == pytest.approx(math.exp(math.log(x)), rel=1e-15)
    assert log_one_plus(x) == pytest.approx(math.log1p(x), rel=1e-15)


def test_the_table_of_one_sided_factors_is_what_the_quantile_gives() -> None:
    for degrees, printed in enumerate(T_TABLE, start=1):
        assert t_quantile(0.95, degrees=degrees, sides=1) == pytest.approx(printed, abs=5.1e-5)


def test_student_with_one_degree_is_cauchy() -> None:
    for t in (-7.0, -0.5, 0.0, 0.1, 3.0):
        cauchy = 0.5 + math.atan(t) / math.pi
        assert t_cumulative(t, degrees=1) == pytest.approx(cauchy, rel=1e-13)


def test_chart_constants_follow_from_each_other() -> None:
    for row in CHART_ROWS:
        assert row.a2 == pytest.approx(3 / (row.d2 * math.sqrt(row.n)), abs=1e-4)
        assert row.e2 == pytest.approx(3 / row.d2, abs=2e-4)
        assert row.d3_low == pytest.approx(max(0.0, 2 - row.d4_high), abs=1e-4)
    assert [row.n for row in CHART_ROWS] == list(range(2, 11))


def test_constants_of_a_study_follow_from_those_of_charts() -> None:
    """K1 = 1 / d2; K2 and K3 = 1 / sqrt(d2^2 + d3^2), where D4 = 1 + 3 d3 / d2."""
    for gauge, chart in zip(GAUGE_ROWS, CHART_ROWS, strict=True):
        d3 = (chart.d4_high - 1) * chart.d2 / 3
        assert gauge.k1 == pytest.approx(1 / chart.d2, abs=6e-5)
        assert gauge.k2 == pytest.approx(1 / math.hypot(chart.d2, d3), abs=6e-5)
        assert gauge.k3 == gauge.k2


def test_repeats_are_those_of_pythons_own_statistics() -> None:
    values = [Decimal(text) for text in ("199.6", "200.2", "199.8", "200.4", "199.5")]

    ours = repeats_of(values)

    assert ours.mean == pytest.approx(float(statistics.fmean(values)), rel=1e-15)
    assert ours.sd == pytest.approx(float(statistics.stdev(values)), rel=1e-14)
