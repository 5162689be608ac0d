"""The shipped tables of the bench: what they say, how near it is, and that memory decides
nothing unmarked."""

from __future__ import annotations

import math
from decimal import Decimal
from itertools import pairwise
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenlog.calc.acidified import five_log_hold
from kitchenlog.calc.altitude import Canner, canner_adjustment
from kitchenlog.calc.bench_tables import (
    ACID_ROWS,
    BRIX_ROWS,
    CANNER_ROWS,
    CURE_ROWS,
    FIVE_LOG_ROWS,
    SALOMETER_ROWS,
    FiveLogRow,
)
from kitchenlog.calc.brix import brix_correction
from kitchenlog.calc.cure_limits import CureUse
from kitchenlog.calc.thermometer_checks import boiling_point_at_altitude
from kitchenlog.calc.yield_tables import YIELD_ROWS

STEP = Decimal("0.0001")


@given(
    st.decimals(min_value=10, max_value=30, places=1),
    st.decimals(min_value=10, max_value=75, places=1),
)
def test_no_correction_of_a_refractometer_rests_on_memory(
    celsius: Decimal, percent: Decimal
) -> None:
    found = brix_correction(percent, celsius)

    assert "memory" not in {cited.basis for cited in found.cited}
    assert (found.answer == "cannot_correct") == (found.percent is None)


def test_rows_from_memory_are_told_apart_from_those_that_count() -> None:
    remembered = [row for row in BRIX_ROWS if row.basis == "memory"]

    answers = {
        brix_correction(Decimal(row.measured_percent), Decimal(row.temp_C)).answer
        for row in remembered
    }
    assert len(remembered) == 8
    assert answers == {"cannot_correct"}


@pytest.mark.parametrize("row", FIVE_LOG_ROWS, ids=lambda row: row.temp_F)
def test_the_model_meets_the_published_hold_as_near_as_it_says(row: FiveLogRow) -> None:
    """Within 1.2 % up to 165 F and within 0.06 min above."""
    in_F, published = Decimal(row.temp_F), float(row.published_5log_min)  # noqa: N806

    found = five_log_hold(in_F, "degF", ph=Decimal("4.3"))

    near = {"rel": 0.012} if in_F <= 165 else {"abs": 0.06}
    assert found.model_min == pytest.approx(published, **near)
    assert str(found.published_min) == row.published_5log_min


@pytest.mark.parametrize("canner", get_args(Canner))
def test_bands_of_altitude_leave_no_gap(canner: Canner) -> None:
    bands = [row for row in CANNER_ROWS if row.canner == canner]

    for low, high in pairwise(bands):
        edge = Decimal(low.to_ft)
        at = canner_adjustment(canner, edge, "ft")
        above = canner_adjustment(canner, edge + STEP, "ft")
        assert Decimal(high.from_ft) == edge + 1
        assert (at.to_ft, above.from_ft) == (edge, edge + 1)


@given(st.decimals(min_value=0, max_value=3048, places=1))
def test_water_boils_within_0_05_degrees_of_the_antoine_equation(altitude_m: Decimal) -> None:
    """8.07131, 1730.63, 233.426 in mmHg at p = 101300 exp(-0.000116 y) Pa, read."""
    mmHg = 101300 * math.exp(-0.000116 * float(altitude_m)) / 133.322387415  # noqa: N806
    antoine = 1730.63 / (8.07131 - math.log10(mmHg)) - 233.426

    found = float(boiling_point_at_altitude(altitude_m).celsius)

    assert found == pytest.approx(antoine, abs=0.05)


def test_every_row_names_its_source_and_basis() -> None:
    bases = {"read", "read-secondary", "memory", "computed"}
    at_the_bench = (*BRIX_ROWS, *CURE_ROWS, *CANNER_ROWS, *FIVE_LOG_ROWS, *ACID_ROWS)
    rows = (*YIELD_ROWS, *SALOMETER_ROWS, *at_the_bench)

    assert len(YIELD_ROWS) == 121
    assert all(row.source and row.basis in bases for row in rows)


def test_every_limit_of_curing_holds_for_uses_that_can_be_asked() -> None:
    asked = {use for row in CURE_ROWS for use in row.holds_for.split(";")}

    assert asked == set(get_args(CureUse))
