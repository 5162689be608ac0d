"""What must hold for any check of an instrument and any lot of packs."""

from __future__ import annotations

from decimal import Decimal
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from kitchenlog.calc.checks import Measured, judged, summed_up
from kitchenlog.calc.limits import (
    Limit,
    division_tolerance,
    measure_limit,
    scale_class,
    scale_error_limit,
)
from kitchenlog.calc.minimum_weight import minimum_weight
from kitchenlog.calc.net_limits import (
    batch_plan,
    maximum_allowable_variation,
    pack_division,
    pack_plan,
    tolerable_shortage,
)
from kitchenlog.calc.net_packs import WeighedLot, category_a
from kitchenlog.calc.net_tables import MAV_ROWS
from kitchenlog.calc.readings import Doubt
from kitchenlog.calc.scale_checks import Scale, scale_check
from kitchenlog.calc.thermometer_checks import (
    boiling_point_at_altitude,
    boiling_point_at_pressure,
)
from kitchenlog.calc.water import held_volume, mass_of_water, water_density

LOADS = st.decimals(min_value=0, max_value=10_000, places=2)
READINGS = st.decimals(min_value=-500, max_value=500, places=2)
DOUBTS = st.floats(min_value=0, max_value=5).map(lambda u: Doubt(u=u, degrees=None))
LABELS = st.decimals(min_value=1, max_value=30_000, places=1)
CELSIUS = st.decimals(min_value=0, max_value=40, places=2)
ALTITUDES = st.decimals(min_value=-304, max_value=3048, places=1)
CLASS_III = Scale(
    division=Decimal(1),
    e=Decimal(1),
    accuracy_class="III",
    capacity=Decimal(5000),
    repeatability=None,
    rules="r76_in_service",
)


def point(value: Decimal, reference: Decimal, limit: Decimal, doubt: Doubt) -> object:
    measured = Measured(step=0, sort="rising", value=value, reference=reference, doubt=doubt)
    return judged(measured, Limit(amount=limit, cited=()))


@given(READINGS, READINGS, LOADS, DOUBTS)
def test_an_error_changes_its_sign_when_reading_and_reference_change_places(
    a: Decimal, b: Decimal, limit: Decimal, doubt: Doubt
) -> None:
    there, back = point(a, b, limit, doubt), point(b, a, limit, doubt)

    assert there.error == -back.error
    assert there.verdict == back.verdict


@given(READINGS, LOADS)
def test_a_reading_at_its_limit_is_within_where_there_is_no_doubt(
    reference: Decimal, limit: Decimal
) -> None:
    sure = Doubt(u=0.0, degrees=None)

    assert point(reference + limit, reference, limit, sure).verdict == "within"
    assert point(reference - limit, reference, limit, sure).verdict == "within"
    assert (
        point(reference + limit + Decimal("0.01"), reference, limit, sure).verdict == "outside"
    )


@given(st.lists(st.tuples(READINGS, DOUBTS), min_size=1, max_size=6), READINGS, DOUBTS)
def test_one_more_step_never_mends_a_failed_check(
    steps: list[tuple[Decimal, Doubt]], value: Decimal, doubt: Doubt
) -> None:
    points = [point(shown, Decimal(0), Decimal(100), d) for shown, d in steps]
    more = [*points, point(value, Decimal(0), Decimal(100), doubt)]

    before = summed_up(points, repeatability=None, hysteresis=None).verdict
    after = summed_up(more, repeatability=None, hysteresis=None).verdict

    assert after == "failed" or before != "failed"
    assert before == "fit" or after != "fit"


@given(LOADS, LOADS, st.sampled_from(["0.1", "1", "2"]))
def test_a_heavier_load_never_has_a_smaller_limit(a: Decimal, b: Decimal, e: str) -> None:
    assume(max(a, b) <= 10_000 * Decimal(e))
    light, heavy = sorted((a, b))
    step = {"e": Decimal(e), "accuracy_class": "III"}

    for when in ("initial", "in_service"):
        small = scale_error_limit(light, when=when, **step).amount
        assert small <= scale_error_limit(heavy, when=when, **step).amount
    in_divisions = {"division": Decimal(e), "accuracy_class": "III"}
    assert (
        division_tolerance(light, **in_divisions).amount
        <= division_tolerance(heavy, **in_divisions).amount
    )


@given(LOADS, st.sampled_from(["0.01", "0.1", "1", "5"]), st.sampled_from(["III", "II"]))
def test_in_service_a_scale_may_be_twice_as_far_off_as_new(
    load: Decimal, e: str, accuracy_class: str
) -> None:
    assume(load <= 10_000 * Decimal(e))
    step = {"e": Decimal(e), "accuracy_class": accuracy_class}

    new = scale_error_limit(load, when="initial", **step).amount

    assert scale_error_limit(load, when="in_service", **step).amount == 2 * new


@pytest.mark.parametrize(("end", "above"), [("500", "500.01"), ("2000", "2000.01")])
def test_the_end_of_a_band_belongs_to_the_lower_band(end: str, above: str) -> None:
    step = {"e": Decimal(1), "accuracy_class": "III", "when": "initial"}

    at_end = scale_error_limit(Decimal(end), **step).amount
    below = scale_error_limit(Decimal(end) - 1, **step).amount

    assert at_end == below
    assert scale_error_limit(Decimal(above), **step).amount == at_end + Decimal("0.5")


@given(LOADS, st.sampled_from(["0.1", "1", "5"]))
def test_a_scale_has_as_many_whole_divisions_as_fit(capacity: Decimal, division: str) -> None:
    step = Decimal(division)

    found = scale_class(capacity, step)

    assert found is None or found.divisions * step <= capacity < (found.divisions + 1) * step


@given(st.lists(st.integers(min_value=-3, max_value=3), min_size=1, max_size=8))
def test_what_a_scale_shows_too_much_or_too_little_gives_the_same_verdict(
    errors: list[int],
) -> None:
    def steps(sign: int) -> list[dict[str, object]]:
        return [
            {"sort": "rising", "reference": "400", "readings": [str(400 + sign * error)]}
            for error in errors
        ]

    over, under = scale_check(CLASS_III, steps(1)), scale_check(CLASS_III, steps(-1))

    assert over.verdict == under.verdict
    assert over.worst == under.worst
    assert over.bias is not None and under.bias == -over.bias


@given(CELSIUS, CELSIUS)
def test_water_is_lighter_the_warmer_it_is_above_four_degrees(a: Decimal, b: Decimal) -> None:
    cool, warm = sorted((a, b))
    assume(cool >= 4)

    assert water_density(warm).kg_per_m3 <= water_density(cool).kg_per_m3


@given(st.decimals(min_value=1, max_value=5000, places=1), CELSIUS)
def test_a_volume_weighed_in_air_comes_back_but_for_the_air(
    volume: Decimal, celsius: Decimal
) -> None:
    mass = mass_of_water(volume, celsius)

    held = held_volume([mass], celsius=celsius, celsius_u=0.0, division=Decimal("0.1"))

    assert float(held.volume / volume) == pytest.approx(1.00105, abs=0.0001)


@given(ALTITUDES, ALTITUDES)
def test_water_boils_cooler_the_higher_the_kitchen(a: Decimal, b: Decimal) -> None:
    low, high = sorted((a, b))

    cool = boiling_point_at_altitude(high).celsius

    assert cool <= boiling_point_at_altitude(low).celsius


@given(st.integers(min_value=712, max_value=1049))
def test_water_boils_hotter_the_more_the_air_presses(pressure: int) -> None:
    less, more = Decimal(pressure) - Decimal("0.5"), Decimal(pressure)

    assert boiling_point_at_pressure(less).celsius < boiling_point_at_pressure(more).celsius


@given(st.sampled_from(["0.1", "1", "5"]), st.integers(min_value=1, max_value=20))
def test_a_minimum_weight_never_falls_below_its_floor(division: str, percent: int) -> None:
    wanted = {"division": Decimal(division), "accuracy_percent": Decimal(percent)}

    floor = minimum_weight(repeatability=Decimal("0.41") * Decimal(division), **wanted)

    assert minimum_weight(repeatability=Decimal(0), **wanted) == floor
    assert minimum_weight(repeatability=Decimal(9), **wanted).amount > floor.amount


@given(LABELS, LABELS)
def test_a_larger_pack_may_be_short_by_as_much_or_more(a: Decimal, b: Decimal) -> None:
    small, large = sorted((a, b))

    assert tolerable_shortage(small).amount <= tolerable_shortage(large).amount
    assert (
        maximum_allowable_variation(small).amount <= maximum_allowable_variation(large).amount
    )
    assert measure_limit(small, "cup").amount <= measure_limit(large, "cup").amount


@given(LABELS)
def test_a_division_for_packs_is_a_sixth_of_the_mav_or_a_little_finer(label: Decimal) -> None:
    sixth = maximum_allowable_variation(label).amount / 6

    division = pack_division(label).amount

    assert division <= sixth < division * Decimal("2.5")


def test_no_label_falls_between_two_rows_of_the_mav_table() -> None:
    for before, after in pairwise(MAV_ROWS):
        assert before.label_up_to_g == after.label_over_g
        assert before.label_up_to_lb == after.label_over_lb


@given(st.integers(min_value=2, max_value=10_000))
def test_every_lot_has_a_plan_that_asks_for_no_more_packs_than_there_are(size: int) -> None:
    assert pack_plan(size).sample_size <= size
    assert batch_plan(size).sample_size <= size


@given(
    st.lists(st.decimals(min_value=500, max_value=540, places=1), min_size=12, max_size=12),
    st.decimals(min_value=0, max_value=20, places=1),
)
def test_more_in_every_pack_never_fails_a_lot_that_passed(
    gross: list[Decimal], more: Decimal
) -> None:
    def verdict(weights: list[Decimal]) -> str:
        lot = WeighedLot(
            label=Decimal(340),
            column="g",
            tares=(Decimal(182), Decimal(182)),
            gross=tuple(weights),
            lot_size=12,
            division=Decimal(1),
            moisture=None,
        )
        return category_a(lot).verdict

    assert verdict(gross) != "pass" or verdict([each + more for each in gross]) == "pass"
