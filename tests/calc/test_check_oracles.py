"""Checks and net content beside others: `uncertainties`, pint, IAPWS-95, plain integrals."""

from __future__ import annotations

import csv
import math
from decimal import Decimal
from importlib.resources import files

import pint
import pytest
from uncertainties import ufloat, umath

from kitchenlog.calc.check_tables import BOILING_ROWS, CYLINDER_ROWS, WEIGHT_ROWS
from kitchenlog.calc.checks import reading_doubt
from kitchenlog.calc.limits import mass_tolerance
from kitchenlog.calc.net_content import larger_declaration
from kitchenlog.calc.net_limits import batch_plan, maximum_allowable_variation, pack_plan
from kitchenlog.calc.net_packs import Moisture, moisture_allowance
from kitchenlog.calc.net_tables import BATCH_PLAN_ROWS, CATEGORY_A_ROWS, MAV_ROWS
from kitchenlog.calc.numbers import total
from kitchenlog.calc.ph_checks import THEORY_MV
from kitchenlog.calc.readings import (
    ONE_SIDED_95,
    Doubt,
    combined_u,
    coverage_factor,
    guard_band,
    rectangular_u,
    verdict,
)
from kitchenlog.calc.thermometer_checks import boiling_point_at_altitude
from kitchenlog.calc.water import held_volume, water_density
from tests.calc.student import share_below

PINT = pint.UnitRegistry(non_int_type=Decimal)


def rows(name: str) -> list[dict[str, str]]:
    table = files("kitchenlog.calc").joinpath(f"tables/{name}.csv").read_text(encoding="utf-8")
    return list(csv.DictReader(table.splitlines()))


@pytest.mark.parametrize(
    "row",
    [row for row in rows("water_density") if row["tanaka_kg_per_m3"]],
    ids=lambda row: row["temp_C"],
)
def test_the_density_formula_is_as_near_iapws_95_as_published(row: dict[str, str]) -> None:
    ours = water_density(Decimal(row["temp_C"])).kg_per_m3

    assert abs(ours - Decimal(row["iapws95_kg_per_m3"])) <= Decimal("0.0012")
    assert abs(ours - Decimal(row["tanaka_kg_per_m3"])) <= Decimal("0.0001")


@pytest.mark.parametrize("celsius", [2, 12, 20, 25, 33, 39])
def test_the_budget_of_a_weighed_volume_is_that_of_uncertainties(celsius: int) -> None:
    mass, at = ufloat(234.8, 0.1 / math.sqrt(6)), ufloat(celsius, 0.5)
    lost = (at - 3.983035) ** 2 * (at + 301.797) / (522528.9 * (at + 69.34881))
    density = 0.99997495 * (1 - lost)
    theirs = mass * (1 - 0.0012 / 8.0) / (density - 0.0012)

    ours = held_volume(
        [Decimal("234.8")], celsius=Decimal(celsius), celsius_u=0.5, division=Decimal("0.1")
    )

    assert float(ours.volume) == pytest.approx(theirs.nominal_value, rel=1e-7)
    assert ours.doubt.u == pytest.approx(theirs.std_dev, rel=1e-6)


def test_the_doubt_of_a_reading_is_that_of_uncertainties() -> None:
    shown = ufloat(0, 1 / math.sqrt(12)) + ufloat(500, 0.4)
    theirs = shown - ufloat(500, 0.025 / math.sqrt(3))

    ours = reading_doubt(
        [Decimal(500)],
        division=Decimal(1),
        spread=Doubt(u=0.4, degrees=None),
        tolerance=Decimal("0.025"),
    )

    assert ours is not None
    assert ours.u == pytest.approx(theirs.std_dev, rel=1e-12)


def test_a_declaration_is_compared_in_the_grams_of_pint() -> None:
    for amount, unit, name in (("1", "lb", "pound"), ("12", "oz", "ounce")):
        theirs = PINT.Quantity(Decimal(amount), name).to("gram").magnitude

        ours = larger_declaration([(Decimal(amount), unit)]).in_base

        assert abs(ours / theirs - 1) < Decimal("1e-20")


def test_a_declaration_is_not_rounded_before_it_is_compared() -> None:
    """HB 133 (2026) 2.3.3.1, read: "1 lb (454 g)" is verified as 454 g, 1 lb is 453.592 g."""
    pound = larger_declaration([(Decimal(1), "lb")]).in_base

    assert pound == Decimal("453.59237")
    assert larger_declaration([(Decimal(1), "lb"), (Decimal(454), "g")]).position == 1


def test_a_limit_with_two_percent_doubt_is_met_from_106_587_on() -> None:
    """JCGM 106:2012 8.3.3, read: limit 100, u 2 % of the reading, 99.9 %: 100/(1 - 0.02 x 3.09)
    = 106.587. Ours is the 95 % level, by the same equation 100/(1 - 0.02 x 1.645) = 103.402."""
    strict, ours = 100 / (1 - 0.02 * 3.09), 100 / (1 - 0.02 * ONE_SIDED_95)
    assert strict == pytest.approx(106.587, abs=0.0005)
    low = {"low": Decimal(100), "high": None}

    def said(text: str) -> str | None:
        return verdict(Decimal(text), **low, doubt=Doubt(u=0.02 * float(text), degrees=None))

    assert ours == pytest.approx(103.402, abs=0.0005)
    assert said("103.403") == "within"
    assert said("103.400") == "cannot_tell"


def test_nine_degrees_and_s_of_a_fifth_need_a_guard_of_0_37() -> None:
    """JCGM 106:2012 8.3.3, read: s 0.20, nu 9, one-sided 95 %: 1.83 x 0.20 = 0.37."""
    assert coverage_factor(9) == pytest.approx(1.83, abs=0.005)
    assert guard_band(Doubt(u=0.20, degrees=9)) == pytest.approx(0.37, abs=0.005)


def test_flour_after_the_test_has_its_allowance_on_both_limits() -> None:
    """HB 133 (2026) 2.3.8, read: MAV 31.7 + 27 = 58.7 g; SEL 0.023 + 0.06 = 0.083 lb."""
    mav = maximum_allowable_variation(Decimal(907))
    in_g = Moisture(percent=Decimal(3), places=0, taken="added_after")
    in_lb = Moisture(percent=Decimal(3), places=2, taken="added_after")

    allowed_g = moisture_allowance(Decimal(907), in_g)
    allowed_lb = moisture_allowance(Decimal(2), in_lb)

    assert total([mav.amount, allowed_g]) == Decimal("58.7")
    assert total([Decimal("0.023"), allowed_lb]) == Decimal("0.083")


def test_the_factors_from_memory_are_those_of_student() -> None:
    """HB 133 App. A Table 2-1 is from memory; t(0.975, n - 1) / sqrt(n) within 0.0007."""
    for row in CATEGORY_A_ROWS:
        if row.sample_correction_factor:
            size = int(row.sample_size)
            bound = float(row.sample_correction_factor) * math.sqrt(size)
            slack = 0.0007 * math.sqrt(size)

            assert (
                share_below(bound - slack, size - 1)
                < 0.975
                < share_below(bound + slack, size - 1)
            )
            assert row.basis == "memory"


def test_the_factors_of_the_mean_are_those_of_student() -> None:
    """t(0.995, n - 1) / sqrt(n), three places printed."""
    for row in BATCH_PLAN_ROWS:
        if row.mean_factor and row.sample_size:
            size = int(row.sample_size)
            bound = float(row.mean_factor) * math.sqrt(size)
            slack = 0.0006 * math.sqrt(size)

            assert (
                share_below(bound - slack, size - 1)
                < 0.995
                < share_below(bound + slack, size - 1)
            )


def test_a_gram_figure_of_the_mav_table_is_its_pound_figure_cut() -> None:
    """Read at two rows, recalled at the others; the two disputed rows follow it too."""
    for row in MAV_ROWS:
        if row.mav_g:
            exact = Decimal(row.mav_lb) * Decimal("453.59237")
            step = Decimal(1).scaleb(-len(row.mav_g.partition(".")[2]))

            assert Decimal(row.mav_g) == exact // step * step


def test_what_is_from_memory_or_disputed_keeps_its_mark() -> None:
    bases = [row.basis for row in MAV_ROWS]

    assert bases.count("read") == 2
    assert bases.count("disputed") == 2
    assert bases.count("memory") == len(bases) - 4
    assert {each.basis for each in pack_plan(12).cited} == {"memory"}
    assert {each.basis for each in batch_plan(300, rules="r87_2004").cited} == {"memory"}


def test_the_slope_of_a_perfect_electrode_follows_from_the_constants() -> None:
    """CODATA 2018, exact: R = 8.31446261815324 J/(mol K), F = 96485.33212331 C/mol."""
    millivolts = 1000 * math.log(10) * 8.31446261815324 * 298.15 / 96485.33212331

    assert float(THEORY_MV) == pytest.approx(millivolts, abs=0.005)


@pytest.mark.parametrize("row", BOILING_ROWS, ids=lambda row: row.altitude_ft)
def test_a_boiling_point_is_near_that_of_the_antoine_equation(row: object) -> None:
    """8.07131, 1730.63, 233.426 (mmHg): 0.01 C lower at the sea, 0.02 C higher at 10 000 ft."""
    metres = float(row.altitude_ft) * 0.3048
    pressure = 1013 * math.exp(-0.000116 * metres)
    antoine = 1730.63 / (8.07131 - math.log10(pressure / 1.33322368)) - 233.426

    assert float(row.pressure_hPa) == pytest.approx(pressure, abs=0.006)
    assert float(row.boiling_point_C) == pytest.approx(antoine, abs=0.03)


def test_a_straight_line_between_two_rows_is_within_a_hundredth() -> None:
    for metres in range(0, 3000, 100):
        pressure = 1013 * math.exp(-0.000116 * metres)
        antoine = 1730.63 / (8.07131 - math.log10(pressure / 1.33322368)) - 233.426

        ours = float(boiling_point_at_altitude(Decimal(metres)).celsius)

        assert ours == pytest.approx(antoine, abs=0.035)


def test_class_b_is_twice_class_a_and_each_weight_class_coarser_than_the_last() -> None:
    assert all(
        Decimal(row.class_B_pm_mL) == 2 * Decimal(row.class_A_pm_mL) for row in CYLINDER_ROWS
    )
    for row in WEIGHT_ROWS:
        nominal = Decimal(row.nominal_g)
        steps = [mass_tolerance(nominal, name) for name in ("F1", "F2", "M1", "M2", "M3")]
        amounts = [each.amount for each in steps if each is not None]
        assert amounts == sorted(set(amounts))


def test_a_tolerance_spreads_like_a_flat_distribution() -> None:
    """The variance of the flat distribution on -a to a is a^2 / 3: an integral by hand."""
    parts = 10_000
    middles = [(-1 + (2 * i + 1) / parts) for i in range(parts)]
    variance = sum(x * x for x in middles) / parts

    assert rectangular_u(Decimal(1)) == pytest.approx(math.sqrt(variance), rel=1e-6)
    assert combined_u([3.0, 4.0]) == pytest.approx(umath.hypot(3, 4))


def test_every_row_names_its_source_and_how_it_was_read() -> None:
    known = {"read", "read-secondary", "memory", "computed", "disputed", "common-practice"}
    tables = (
        "water_density", "r76_mpe", "r76_class_limits", "r111_m1", "boiling_point", "mav_hb133",
        "graduated_cylinder_tolerance", "household_measure_tolerance", "hb133_sampling_cat_a",
        "scale_interval_for_pack_eu", "tne_oiml_r87", "eu_r87_sampling",
    )  # fmt: skip

    for name in tables:
        assert all(row["source"] and row["basis"] in known for row in rows(name)), name
