"""Our figures beside those of others: the pint library, published tables, a plain integral."""

from __future__ import annotations

import csv
import math
from decimal import Decimal
from pathlib import Path

import pint
import pytest

import kitchenlog.calc
from kitchenlog.calc.balance import (
    edible_yield_percent,
    evaporated,
    implied_solids_percent,
    recovery_percent,
    rejects_percent,
    solids_in,
    spoilage_percent,
    theoretical_out,
    unaccounted,
)
from kitchenlog.calc.density_tables import DENSITY_ROWS, SPREAD_ROWS
from kitchenlog.calc.export_tables import main as export_tables
from kitchenlog.calc.numbers import parse_decimal, plain, written
from kitchenlog.calc.readings import ONE_SIDED_95, T_TABLE, coverage_factor
from kitchenlog.calc.temperature import celsius
from kitchenlog.calc.units import UNITS, in_base
from tests.calc.student import share_below

PINT = pint.UnitRegistry(non_int_type=Decimal)
# What the pint library (0.25) calls our units; labels, metric spoons and cups it does not know.
PINT_NAMES = {
    "mL": "milliliter", "L": "liter", "us_gal": "gallon", "us_qt": "quart", "us_pt": "pint",
    "us_cup": "cup", "us_floz": "fluid_ounce", "us_tbsp": "tablespoon", "us_tsp": "teaspoon",
    "us_gill": "gill", "us_fldr": "fluid_dram", "us_bu": "bushel", "us_pk": "peck",
    "us_dry_qt": "dry_quart", "us_dry_pt": "dry_pint", "imp_gal": "imperial_gallon",
    "imp_qt": "imperial_quart", "imp_pt": "imperial_pint", "imp_floz": "imperial_fluid_ounce",
    "imp_cup": "imperial_cup", "mg": "milligram", "g": "gram", "kg": "kilogram", "lb": "pound",
    "oz": "ounce", "gr": "grain",
}  # fmt: skip
ONLY_OURS = {
    "fda_cup", "fda_floz", "fda_tbsp", "fda_tsp", "fda_oz",
    "metric_cup", "metric_tbsp", "metric_tsp", "au_tbsp", "pc",
}  # fmt: skip


@pytest.mark.parametrize("code", PINT_NAMES)
def test_a_unit_is_worth_what_the_pint_library_says(code: str) -> None:
    base = "gram" if UNITS[code].dimension == "mass" else "milliliter"
    theirs = PINT.Quantity(Decimal(1), PINT_NAMES[code]).to(base).magnitude

    ours = in_base(Decimal(1), code)

    assert abs(theirs / ours - 1) < Decimal("1e-20")


def test_every_unit_of_amount_is_compared_or_known_to_us_only() -> None:
    amounts = {code for code, unit in UNITS.items() if unit.in_base is not None}

    assert amounts == set(PINT_NAMES) | ONLY_OURS


@pytest.mark.parametrize("reading", ["-40", "0", "32", "40", "165", "212"])
def test_fahrenheit_becomes_what_the_pint_library_says(reading: str) -> None:
    theirs = PINT.Quantity(Decimal(reading), "degF").to("degC").magnitude

    assert abs(celsius(Decimal(reading), "degF", 12) - theirs) < Decimal("1e-11")


def test_every_unit_names_its_source_and_how_it_was_read() -> None:
    bases = {"read", "read-secondary", "memory", "computed"}

    assert all(unit.source and unit.basis in bases for unit in UNITS.values())


def test_a_portion_has_the_density_that_was_printed_for_it() -> None:
    off = [
        row
        for row in DENSITY_ROWS
        if abs(
            float(row.mass_g) / float(in_base(Decimal(row.portion_amount), row.portion_unit))
            - float(row.density_g_per_mL)
        )
        > 0.0006  # a third of a cup is written as 0.333
    ]

    assert off == []
    assert len(DENSITY_ROWS) == 187
    assert len({row.ingredient for row in DENSITY_ROWS}) == 96
    assert all(row.source and row.basis == "read" for row in DENSITY_ROWS)


def test_a_published_range_names_ingredients_of_the_table() -> None:
    known = {row.ingredient for row in DENSITY_ROWS}
    named = {name for row in SPREAD_ROWS for name in row.of.split(";") if name}

    assert named <= known
    assert all(row.source and row.basis for row in SPREAD_ROWS)


def test_the_phone_has_the_same_tables() -> None:
    assert export_tables(["--check"]) == 0


def test_the_t_table_is_what_integration_gives() -> None:
    for degrees, t in enumerate(T_TABLE, start=1):
        assert share_below(t, degrees) == pytest.approx(0.95, abs=1e-5)
    for degrees in (40, 60, 120):
        assert share_below(coverage_factor(degrees), degrees) == pytest.approx(0.95, abs=1e-5)
    assert math.erf(ONE_SIDED_95 / math.sqrt(2)) / 2 + 0.5 == pytest.approx(0.95, abs=2e-5)


def test_one_batch_comes_out_digit_for_digit() -> None:
    """A mango jam batch: mango 15.00 kg, spoiled 0.60, peel and seed 4.25, pulp 10.00 at 14 %,
    sugar 10.00, pectin 0.060, acid 0.055; target 68 Brix; out of the kettle 16.70; 66 jars of
    0.250, residue 0.12, sample 0.05, 2 jars rejected. Expected figures worked out by hand."""
    kilograms = parse_decimal
    solids = solids_in(
        [
            (kilograms("10.00"), Decimal(14)),
            (kilograms("10.00"), Decimal(100)),
            (kilograms("0.060"), Decimal(100)),
            (kilograms("0.055"), Decimal(100)),
        ]
    )
    theory = theoretical_out(solids, Decimal(68), 20)
    good = kilograms("16.000")
    filled = [kilograms(x) for x in ("16.500", "0.12", "0.05")]
    prepared = [kilograms(x) for x in ("10.00", "0.60", "4.25")]

    figures = {
        "preparation unaccounted": unaccounted(kilograms("15.00"), prepared),
        "edible yield": edible_yield_percent(kilograms("10.00"), kilograms("15.00")),
        "spoilage": spoilage_percent(kilograms("0.60"), kilograms("15.00")),
        "solids": solids,
        "theoretical out": theoretical_out(solids, Decimal(68)),
        "implied Brix": implied_solids_percent(solids, kilograms("16.70")),
        "evaporated": evaporated(kilograms("20.115"), kilograms("16.70")),
        "filling unaccounted": unaccounted(kilograms("16.70"), filled),
        "rejects": rejects_percent(Decimal(2), Decimal(66)),
        "good out of kettle in": recovery_percent(good, kilograms("20.115")),
        "good out of theory": recovery_percent(good, theory),
    }

    assert {name: plain(figure) for name, figure in figures.items() if figure is not None} == {
        "preparation unaccounted": "0.15",
        "edible yield": "66.6667",
        "spoilage": "4",
        "solids": "11.515",
        "theoretical out": "16.9338",
        "implied Brix": "68.9521",
        "evaporated": "3.415",
        "filling unaccounted": "0.03",
        "rejects": "3.0303",
        "good out of kettle in": "79.5426",
        "good out of theory": "94.4855",
    }


def test_every_row_of_the_units_file_is_read() -> None:
    table = Path(kitchenlog.calc.__file__).with_name("tables") / "units.csv"
    with table.open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))

    assert [row["code"] for row in rows] == list(UNITS)
    assert all(
        row["value_in_base_unit"] == (written(unit.in_base) if unit.in_base is not None else "")
        for row, unit in zip(rows, UNITS.values(), strict=True)
    )
