"""Worked examples of measurement to the digits that were printed for them.

Each test names source and basis: `read` is from the source's own text, `read-secondary` from
somebody else's reproduction, `memory` recalled, `computed` by two scripts independent of ours.
"""

from __future__ import annotations

import json
import math
from decimal import Decimal
from typing import Any

import pytest

from kitchenlog.calc.calibration import CheckPoint, corrected, correction_of, significance
from kitchenlog.calc.charts import ewma, individuals, xbar_range
from kitchenlog.calc.gauge_tables import GAUGE_ROWS
from kitchenlog.calc.groups import Group, analysis_of, analysis_of_groups, components_of
from kitchenlog.calc.lines import backwards, coefficients, least_squares, predicted
from kitchenlog.calc.quantiles import f_cumulative, normal_quantile, t_quantile
from kitchenlog.calc.repeats import repeatability_limit
from tests.calc.measurement_examples import (
    VECTORS,
    column,
    gum_h3,
    norris,
    people_study,
    rows_of,
    sirstv,
    subgroups,
)

DATA = ("ewma", "grr", "gum_h3", "gum_h5", "gum_t1", "imr", "norris", "sirstv", "xbar_r")


def test_the_guard_band_of_jcgm_106_is_1_83_times_u_for_nine_degrees_read() -> None:
    assert t_quantile(0.95, degrees=9, sides=1) * 0.20 == pytest.approx(0.37, abs=0.005)
    assert 100 / (1 - 0.02 * normal_quantile(0.999, sides=1)) == pytest.approx(
        106.587, abs=2e-3
    )


def test_m17_the_thermometer_of_gum_h3_read_is_corrected_by_reference_less_reading() -> None:
    checks = [CheckPoint(reading=p.x, reference=p.x + p.y) for p in gum_h3()]
    correction = correction_of(checks, "least_squares", known_sd=None)

    inside = corrected(correction, Decimal("22"), level=0.95)
    outside = corrected(correction, Decimal("30"), level=0.95)

    assert inside.value == pytest.approx(22 - 0.1712 + 2 * 0.00218, abs=1e-4)
    assert (inside.is_applied, inside.is_extrapolated) == (True, False)
    assert outside.correction == pytest.approx(-0.1494, abs=5e-5)
    assert outside.u == pytest.approx(0.0041, abs=5e-5)
    assert outside.is_extrapolated


def test_m17_without_covariance_the_uncertainty_at_30_degrees_would_be_0_0073_computed() -> (
    None
):
    line = coefficients(least_squares(gum_h3()), 20.0)

    assert line is not None
    without = math.hypot(line.intercept_sd, 10 * line.slope_sd)
    assert without == pytest.approx(0.0073, abs=5e-5)
    assert line.correlation == pytest.approx(-0.930, abs=5e-4)


def test_m17_the_least_uncertainty_is_at_the_mean_of_the_readings_computed() -> None:
    line = least_squares(gum_h3())
    least = predicted(line, 24.0085).u
    assert least is not None

    beside = [predicted(line, 24.0085 + away).u for away in (-0.01, 0.01)]

    assert all(u is not None and u > least for u in beside)


def test_m18_the_exact_interval_of_norris_differs_by_less_than_0_0004_computed() -> None:
    """Fieller's interval: the x at which y lies on the edge of the prediction interval."""
    line = least_squares(norris())
    found = backwards(line, 500.0, readings=1, level=0.95)
    assert found is not None and line.sd is not None

    t = t_quantile(0.95, degrees=34, sides=2)
    g = (t * line.sd / line.slope) ** 2 / line.sum_xx
    away = (500.0 - line.height) / line.slope
    middle = line.centre + away / (1 - g)
    half = (t * line.sd / line.slope / (1 - g)) * math.sqrt(
        away * away / line.sum_xx + (1 - g) * (1 + 1 / line.count)
    )

    assert found.low == pytest.approx(middle - half, abs=4e-4)
    assert found.high == pytest.approx(middle + half, abs=4e-4)


def test_m20_the_days_of_gum_h5_read_lie_between_the_printed_quantiles_of_f() -> None:
    groups = [
        Group(
            count=int(row["observations_per_day"]),
            mean=float(row["daily_mean_minus_10V_uV"]),
            squares=4 * float(row["within_day_sd_uV"]) ** 2,
        )
        for row in rows_of("gum_h5")
    ]

    analysis = analysis_of_groups(groups, Decimal(0))

    assert analysis.f is not None and 2.12 < analysis.f < 2.45
    assert f_cumulative(2.12, over=9, under=40) == pytest.approx(0.95, abs=5e-4)
    assert f_cumulative(2.45, over=9, under=40) == pytest.approx(0.975, abs=5e-4)
    assert 5 * analysis.means_sd**2 == pytest.approx(127.656**2, rel=1e-5)


def test_m21_the_limits_of_sirstv_computed_rest_on_certified_sums_read() -> None:
    found = components_of(analysis_of(sirstv()))

    assert found.within_sd == pytest.approx(0.104076068334656, rel=1e-12)
    assert repeatability_limit(found.within_sd) == pytest.approx(0.291413, abs=5e-7)
    assert repeatability_limit(found.intermediate_sd) == pytest.approx(0.296625, abs=5e-7)


def test_m23_the_constants_of_a_study_read_secondary_are_in_the_table() -> None:
    rows = {row.n: row for row in GAUGE_ROWS}

    assert rows[3].k1 == 0.5908
    assert rows[3].k2 == 0.5231
    assert rows[10].k3 == 0.3146


def test_m27_montgomery_from_memory_is_met_to_the_rounding_of_its_constants() -> None:
    """The printed limits use A2 0.577 and D4 2.114; data are read-secondary."""
    found = xbar_range(subgroups())

    assert found.places.centre == pytest.approx(1.5056, abs=5e-5)
    assert found.ranges.centre == pytest.approx(0.32521, abs=5e-6)
    assert found.places.limits[0].low == pytest.approx(1.31795, abs=3e-4)
    assert found.places.limits[0].high == pytest.approx(1.69325, abs=3e-4)
    assert found.ranges.limits[0].low == 0
    assert found.ranges.limits[0].high == pytest.approx(0.68749, abs=3e-4)
    assert found.sigma == pytest.approx(0.1398, abs=5e-5)
    assert (found.places.fired, found.ranges.fired) == ((), ())


def test_m28_limits_of_individuals_read_do_not_come_from_the_overall_spread() -> None:
    found = individuals(column("imr", "value"))

    assert found.places.centre == pytest.approx(24.0083, abs=5e-5)
    assert found.ranges.centre == pytest.approx(0.056897, abs=5e-7)
    assert found.sigma == pytest.approx(0.050423, abs=1e-6)
    assert found.places.limits[0].low == pytest.approx(23.8571, abs=5e-5)
    assert found.places.limits[0].high == pytest.approx(24.1596, abs=5e-5)
    assert found.ranges.limits[0].high == pytest.approx(0.18585, abs=5e-6)


def test_m29_the_ewma_from_memory_ends_at_its_late_limits_and_stays_inside() -> None:
    found = ewma(column("ewma", "y"), start=50.0, sd=2.0539, weight=0.3, width=3.0)
    assert found.sigma is not None

    printed = [float(row["ewma_lambda_0.3"]) for row in rows_of("ewma")]

    assert found.points == pytest.approx(printed, abs=5e-5)
    assert [limits.high for limits in found.limits[:3]] == pytest.approx(
        [51.8485, 52.2564, 52.4314], abs=5e-5
    )
    # The page cuts 47.41157 to 47.4115.
    assert 50 + 3 * found.sigma == pytest.approx(52.5884, abs=5e-5)
    assert 50 - 3 * found.sigma == pytest.approx(47.4115, abs=1e-4)
    assert found.fired == ()


@pytest.mark.parametrize("name", DATA)
def test_every_row_of_published_data_names_its_source_and_basis(name: str) -> None:
    bases = {"read", "read-secondary", "memory"}

    assert all(row["source"] and row["basis"] in bases for row in rows_of(name))


@pytest.mark.parametrize(
    ("file", "field", "expected"),
    [
        ("repeats/repeats_of", "values", [row["temperature_C"] for row in rows_of("gum_t1")]),
        (
            "lines/predicted",
            "points",
            [[r["reading_C"], r["correction_C"]] for r in rows_of("gum_h3")],
        ),
        ("lines/backwards", "points", [[row["x"], row["y"]] for row in rows_of("norris")]),
        ("groups/analysis_of", "readings", [[f"{x}" for x in group] for group in sirstv()]),
        ("people/two_way", "study", [[[f"{x}" for x in c] for c in p] for p in people_study()]),
        ("charts/xbar_range", "subgroups", [[f"{x}" for x in each] for each in subgroups()]),
        ("charts/individuals", "values", [row["value"] for row in rows_of("imr")]),
        ("charts/ewma", "values", [row["y"] for row in rows_of("ewma")]),
    ],
)
def test_a_vector_has_the_data_that_were_published(
    file: str, field: str, expected: Any
) -> None:
    vectors = json.loads((VECTORS / f"{file}.json").read_text(encoding="utf-8"))["vectors"]

    assert vectors[0]["given"][field] == expected


def test_a_correction_of_norris_is_more_than_chance_although_it_is_small() -> None:
    checks = [CheckPoint(reading=point.x, reference=point.y) for point in norris()]

    found = significance(correction_of(checks, "least_squares", known_sd=None), 0.95)

    assert found.is_significant is True
