"""What must hold for any numbers, not only for those somebody thought of."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenlog.calc.density import best_density, mass_of_volume, volume_of_mass
from kitchenlog.calc.density_tables import DENSITY_ROWS
from kitchenlog.calc.numbers import divided, parse_decimal, plain, significant, total, written
from kitchenlog.calc.readings import Doubt, doubt_of, is_fine_enough, verdict
from kitchenlog.calc.recipes import Factor, scaled, shared_out, whole_count
from kitchenlog.calc.shelf_life import add_months, days_left, instant_of, local_day
from kitchenlog.calc.units import UNITS, from_base, in_base

AMOUNTS = st.decimals(min_value=-(10**7), max_value=10**7, places=6)
MASSES = st.decimals(min_value=Decimal("0.001"), max_value=10**6, places=3)
AMOUNT_CODES = st.sampled_from([code for code, unit in UNITS.items() if unit.in_base])
DAYS = st.dates(min_value=date(2000, 1, 1), max_value=date(2099, 12, 31))


@given(AMOUNTS)
def test_what_was_written_is_read_again(amount: Decimal) -> None:
    assert written(parse_decimal(written(amount))) == written(amount)
    assert parse_decimal(plain(amount)) == amount


@given(st.lists(AMOUNTS))
def test_a_sum_does_not_depend_on_the_order(amounts: list[Decimal]) -> None:
    assert total(amounts) == total(reversed(amounts)) == total(sorted(amounts))


@given(AMOUNTS, MASSES, st.integers(min_value=0, max_value=8))
def test_a_quotient_is_never_more_than_half_a_step_off(
    a: Decimal, b: Decimal, places: int
) -> None:
    off = abs(Fraction(divided(a, b, places)) - Fraction(a) / Fraction(b))

    assert off <= Fraction(1, 2 * 10**places)


@given(st.floats(min_value=1e-12, max_value=1e12), st.integers(min_value=1, max_value=15))
def test_a_double_is_shown_as_near_as_its_digits_allow(x: float, digits: int) -> None:
    assert float(significant(x, digits)) == pytest.approx(x, rel=0.51 * 10 ** (1 - digits))


@given(AMOUNTS, AMOUNT_CODES)
def test_an_amount_comes_back_from_its_base_unit(amount: Decimal, code: str) -> None:
    assert from_base(in_base(amount, code), code, 6) == amount


@given(MASSES, st.sampled_from(["sugar, granulated", "salt, table", "cornstarch"]))
def test_a_mass_turned_into_a_volume_and_back_is_the_mass(mass: Decimal, name: str) -> None:
    row = best_density(DENSITY_ROWS, name, "as measured")
    assert row is not None

    volume = volume_of_mass(mass, "g", row, None, places=9)
    back = mass_of_volume(volume.amount, "mL", row, None, places=6)

    assert abs(back.amount - mass) <= Decimal("0.000001")


@given(st.lists(MASSES, min_size=1, max_size=20), st.integers(min_value=0, max_value=10**6))
def test_shares_add_up_and_none_is_a_whole_step_off(weights: list[Decimal], cents: int) -> None:
    whole = Decimal(cents).scaleb(-2)

    parts = shared_out(whole, weights, 2)

    assert total(parts) == whole
    for part, weight in zip(parts, weights, strict=True):
        exact = Fraction(whole) * Fraction(weight) / Fraction(total(weights))
        assert abs(Fraction(part) - exact) < Fraction(1, 100)


@given(MASSES, MASSES, MASSES)
def test_a_whole_count_gives_the_factor_that_makes_it(
    amount: Decimal, wanted: Decimal, base: Decimal
) -> None:
    made = whole_count(amount, Factor(wanted=wanted, base=base), rule="up")

    assert made.count == made.count.to_integral_value()
    assert scaled(amount, made.factor, 6) == made.count
    assert Fraction(made.count) >= Fraction(amount) * Fraction(wanted) / Fraction(base)


@given(AMOUNTS, MASSES, st.floats(min_value=0, max_value=1e4))
def test_more_doubt_never_turns_a_verdict_into_another_sure_one(
    value: Decimal, tolerance: Decimal, u: float
) -> None:
    limits = {"low": -tolerance, "high": tolerance}

    sure = verdict(value, **limits, doubt=Doubt(u=0.0, degrees=None))
    doubted = verdict(value, **limits, doubt=Doubt(u=u, degrees=None))

    assert doubted in (sure, "cannot_tell")


@given(st.sampled_from(["0.1", "0.5", "1", "2", "5"]), MASSES, MASSES)
def test_an_instrument_that_is_fine_enough_has_a_display_that_says_within(
    division: str, below: Decimal, above: Decimal
) -> None:
    step = Decimal(division)
    doubt = doubt_of(division=step, readings=2)

    shown = (-below / step).to_integral_value(rounding="ROUND_CEILING")
    verdicts = set()
    while shown * step <= above and len(verdicts) < 2:
        verdicts.add(verdict(shown * step, low=-below, high=above, doubt=doubt))
        shown += 1 + (above + below) // (1000 * step)
    if not is_fine_enough(step, below=below, above=above):
        return

    assert "within" in verdicts


@given(DAYS, st.integers(min_value=0, max_value=240))
def test_months_later_is_the_same_day_of_the_month_or_its_last(on: object, months: int) -> None:
    start = str(on)

    later = add_months(start, months)

    next_day = add_months(start[:8] + "01", months)
    assert later[:7] == next_day[:7]
    assert later[8:] == start[8:] or later[8:] in ("28", "29", "30")
    assert days_left(later, start) >= 28 * months


@given(DAYS, st.integers(min_value=-14 * 60, max_value=14 * 60))
def test_the_day_on_the_wall_is_the_day_of_its_instant(on: object, offset: int) -> None:
    assert local_day(instant_of(f"{on}T06:30", offset), offset) == str(on)
