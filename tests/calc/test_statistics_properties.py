"""What must hold for any readings, whatever they are."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from kitchenlog.calc.calibration import CheckPoint, corrected, correction_of, significance
from kitchenlog.calc.charts import ewma, individuals, points_in_a_row, points_on_one_side
from kitchenlog.calc.groups import analysis_of, components_of
from kitchenlog.calc.lines import Line, Point, backwards, least_squares, predicted
from kitchenlog.calc.people import gauge_by_ranges, gauge_by_variance, two_way
from kitchenlog.calc.quantiles import (
    f_beyond,
    f_cumulative,
    normal_cumulative,
    normal_quantile,
    t_beyond,
    t_cumulative,
    t_quantile,
)
from kitchenlog.calc.repeats import mean_interval, repeats_of

READINGS = st.decimals(min_value=-1000, max_value=1000, places=2)
SEVERAL = st.lists(READINGS, min_size=2, max_size=12)
SHIFTS = st.decimals(min_value=-(10**6), max_value=10**6, places=2)
LEVELS = st.floats(min_value=0.5, max_value=0.9999)
DEGREES = st.one_of(st.integers(1, 10**6), st.floats(min_value=1, max_value=1e5))
XS = st.lists(READINGS, min_size=3, max_size=10, unique=True)
STUDIES = st.tuples(st.integers(2, 3), st.integers(2, 4), st.integers(2, 3)).flatmap(
    lambda size: st.lists(
        st.lists(
            st.lists(READINGS, min_size=size[2], max_size=size[2]),
            min_size=size[1],
            max_size=size[1],
        ),
        min_size=size[0],
        max_size=size[0],
    )
)


def points_over(xs: list[Decimal], ys: list[Decimal]) -> list[Point]:
    return [Point(x=x, y=y) for x, y in zip(xs, ys, strict=False)]


@given(LEVELS, DEGREES, st.sampled_from([1, 2]))
def test_as_much_lies_below_a_quantile_as_was_asked(
    level: float, degrees: float, sides: int
) -> None:
    t = t_quantile(level, degrees=degrees, sides=sides)

    below = t_cumulative(t, degrees=degrees) if sides == 1 else 1 - t_beyond(t, degrees=degrees)

    assert below == pytest.approx(level, abs=1e-13)


@given(LEVELS, DEGREES)
def test_student_reaches_further_than_the_normal(level: float, degrees: float) -> None:
    z = normal_quantile(level, sides=1)

    assert t_quantile(level, degrees=degrees, sides=1) >= z * (1 - 1e-13)
    assert normal_cumulative(z) == pytest.approx(level, abs=1e-14)


@given(st.floats(min_value=1e-6, max_value=1e6), DEGREES, DEGREES)
def test_the_two_shares_of_f_change_places_when_the_ratio_is_turned_over(
    f: float, over: float, under: float
) -> None:
    below = f_cumulative(f, over=over, under=under)

    assert below == pytest.approx(f_beyond(1 / f, over=under, under=over), rel=1e-9, abs=1e-12)


@given(SEVERAL, SHIFTS)
def test_adding_a_constant_moves_the_mean_only(values: list[Decimal], shift: Decimal) -> None:
    ours, moved = repeats_of(values), repeats_of([value + shift for value in values])

    assert moved.mean == pytest.approx(ours.mean + float(shift), rel=1e-12, abs=1e-9)
    assert moved.sd == ours.sd
    assert moved.standard_error == ours.standard_error


@given(SEVERAL, LEVELS, LEVELS)
def test_a_higher_level_gives_a_wider_interval(
    values: list[Decimal], one: float, other: float
) -> None:
    low, high = sorted((one, other))
    narrow, wide = (mean_interval(repeats_of(values), level) for level in (low, high))
    assert narrow is not None and wide is not None

    assert wide.low <= narrow.low <= narrow.high <= wide.high


@given(XS, st.lists(READINGS, min_size=10, max_size=10), SHIFTS, SHIFTS)
def test_a_line_is_the_same_wherever_zero_is(
    xs: list[Decimal], ys: list[Decimal], right: Decimal, up: Decimal
) -> None:
    line = least_squares(points_over(xs, ys))
    moved = least_squares(points_over([x + right for x in xs], [y + up for y in ys]))

    assert moved.slope == line.slope
    assert moved.sd == line.sd
    assert moved.sum_xx == line.sum_xx


@given(XS, st.lists(READINGS, min_size=10, max_size=10))
def test_a_line_does_not_depend_on_the_order_of_its_points(
    xs: list[Decimal], ys: list[Decimal]
) -> None:
    points = points_over(xs, ys)
    line, turned = least_squares(points), least_squares(points[::-1])

    assert predicted(turned, 5.0).value == pytest.approx(
        predicted(line, 5.0).value, rel=1e-8, abs=1e-6
    )


@given(XS, st.lists(READINGS, min_size=10, max_size=10), READINGS)
def test_what_a_line_says_backwards_it_says_forwards(
    xs: list[Decimal], ys: list[Decimal], x: Decimal
) -> None:
    line = least_squares(points_over(xs, ys))
    assume(abs(line.slope) > 1e-3)

    y = predicted(line, float(x)).value
    one, many = (backwards(line, y, readings=m, level=0.95) for m in (1, 9))
    assert one is not None and many is not None

    assert one.x == pytest.approx(float(x), rel=1e-9, abs=1e-6)
    assert many.u <= one.u


@given(XS, READINGS)
def test_points_that_need_no_correction_get_none(xs: list[Decimal], reading: Decimal) -> None:
    checks = [CheckPoint(reading=x, reference=x) for x in xs]

    for sort in ("offset", "least_squares"):
        correction = correction_of(checks, sort, known_sd=0.1)
        assert significance(correction, 0.95).is_significant is False
        assert corrected(correction, reading, level=0.95).value == float(reading)


@given(XS, st.floats(min_value=0.001, max_value=10), st.floats(min_value=1, max_value=100))
def test_more_known_spread_never_makes_a_correction_surer(
    xs: list[Decimal], sd: float, times: float
) -> None:
    checks = [CheckPoint(reading=x, reference=x - 1) for x in xs]

    sure = significance(correction_of(checks, "offset", known_sd=sd), 0.95)
    doubted = significance(correction_of(checks, "offset", known_sd=sd * times), 0.95)

    assert sure.p is not None and doubted.p is not None
    assert doubted.p >= sure.p * (1 - 1e-9)


@given(st.lists(st.lists(READINGS, min_size=2, max_size=5), min_size=2, max_size=5), SHIFTS)
def test_groups_differ_alike_wherever_zero_is(
    groups: list[list[Decimal]], shift: Decimal
) -> None:
    found = analysis_of(groups)
    moved = analysis_of([[value + shift for value in group] for group in groups])

    assert moved.squares_between == found.squares_between
    assert moved.squares_within == found.squares_within
    assert components_of(moved) == components_of(found)


@given(st.lists(st.lists(READINGS, min_size=2, max_size=5), min_size=2, max_size=5))
def test_no_component_is_below_zero_and_parts_add_up(groups: list[list[Decimal]]) -> None:
    found = components_of(analysis_of(groups))

    assert found.between_sd >= 0
    assert found.is_set_to_zero is False or found.between_sd == 0
    assert found.intermediate_sd**2 == pytest.approx(
        found.within_sd**2 + found.between_sd**2, rel=1e-12, abs=1e-300
    )


@given(STUDIES)
def test_the_sums_of_squares_of_a_study_add_up_to_the_whole(
    study: list[list[list[Decimal]]],
) -> None:
    found = two_way(study)
    readings = [x for person in study for cell in person for x in cell]
    sd = repeats_of(readings).sd
    assert sd is not None

    parts = (
        found.squares_people
        + found.squares_items
        + found.squares_interaction
        + found.squares_error
    )

    assert parts == pytest.approx(sd * sd * (len(readings) - 1), rel=1e-9, abs=1e-9)


@given(STUDIES)
def test_a_study_by_either_way_has_parts_that_add_up_and_none_below_zero(
    study: list[list[list[Decimal]]],
) -> None:
    for gauge in (gauge_by_ranges(study), gauge_by_variance(two_way(study))):
        parts = (gauge.within_person_sd, gauge.between_people_sd, gauge.interaction_sd)

        assert min(*parts, gauge.items_sd) >= 0
        assert gauge.measuring_sd**2 == pytest.approx(sum(p * p for p in parts), rel=1e-12)
        if gauge.percent_of_total_sd is not None and gauge.percent_of_variance is not None:
            assert gauge.percent_of_variance == pytest.approx(
                gauge.percent_of_total_sd**2 / 100, rel=1e-9
            )


@given(SEVERAL)
def test_a_chart_of_readings_has_as_much_above_as_below(values: list[Decimal]) -> None:
    places = individuals(values).places
    limits = places.limits[0]

    assert limits.high - places.centre == pytest.approx(places.centre - limits.low, abs=1e-9)
    assert all(0 <= i < len(values) for fired in places.fired for i in fired.points)


@given(SEVERAL, st.floats(min_value=0.01, max_value=1))
def test_early_limits_widen_and_never_pass_the_late_ones(
    values: list[Decimal], weight: float
) -> None:
    chart = ewma(values, start=0.0, sd=1.0, weight=weight, width=3.0)
    assert chart.sigma is not None

    widths = [limits.high for limits in chart.limits]

    assert widths == sorted(widths)
    assert widths[-1] <= 3 * chart.sigma * (1 + 1e-12)


@given(st.lists(st.integers(-3, 3), max_size=30))
def test_runs_are_the_same_upside_down(points: list[int]) -> None:
    up, down = [float(x) for x in points], [float(-x) for x in points]

    assert points_on_one_side(up, 0.0) == points_on_one_side(down, 0.0)
    assert points_in_a_row(up) == points_in_a_row(down)


def test_a_line_far_from_zero_has_not_lost_its_spread() -> None:
    near = [Point(x=Decimal(i), y=Decimal(i * i) / 100) for i in range(6)]
    far = [Point(x=p.x + 10**12, y=p.y + 10**12) for p in near]

    lines: list[Line] = [least_squares(near), least_squares(far)]

    assert lines[0].sd == lines[1].sd
    assert lines[0].slope == lines[1].slope
