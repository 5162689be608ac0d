"""The shipped tables of the bench: what they say, how near it is, and that memory decides
nothing unmarked."""

from __future__ import annotations

import math
from decimal import Decimal
from itertools import pairwise
from typing import Any, get_args

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
    CannerRow,
    CureRow,
    FiveLogRow,
)
from kitchenlog.calc.brix import brix_correction
from kitchenlog.calc.check_tables import BOILING_ROWS, BoilingRow
from kitchenlog.calc.cure_limits import CureCase, CureRules, CureUse, Substance, cure_limits
from kitchenlog.calc.curing import CureWanted, cure_needed
from kitchenlog.calc.recipes import Factor
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


@pytest.mark.parametrize("row", CANNER_ROWS, ids=lambda row: f"{row.canner} {row.from_ft}")
def test_every_band_of_a_canner_is_told_as_printed_at_both_its_ends(row: CannerRow) -> None:
    for edge in (row.from_ft, row.to_ft):
        found = canner_adjustment(row.canner, Decimal(edge), "ft")

        told = (found.gauge_lb_per_in2, found.added_min)
        assert told == tuple(
            Decimal(text) if text else None for text in (row.gauge_lb_per_in2, row.added_min)
        )
        assert (found.cited[0].source, found.cited[0].basis) == (row.source, row.basis)
        assert found.caution == "altitude"


@pytest.mark.parametrize("canner", get_args(Canner))
@pytest.mark.parametrize("unit", ["ft", "m"])
def test_beyond_the_bands_of_a_canner_nothing_is_told(canner: Canner, unit: Any) -> None:
    last = max(Decimal(row.to_ft) for row in CANNER_ROWS if row.canner == canner)
    end = last * Decimal("0.3048") if unit == "m" else last

    assert canner_adjustment(canner, end, unit).to_ft == last
    for beyond in (end + STEP, -STEP):
        with pytest.raises(ValueError):
            canner_adjustment(canner, beyond, unit)


@pytest.mark.parametrize("row", BOILING_ROWS, ids=lambda row: row.altitude_ft)
def test_water_boils_as_printed_at_every_altitude_of_the_table(row: BoilingRow) -> None:
    altitude_m = Decimal(row.altitude_ft) * Decimal("0.3048")

    assert boiling_point_at_altitude(altitude_m).celsius == Decimal(row.boiling_point_C)


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


def test_no_printed_row_of_curing_or_altitude_is_missing() -> None:
    assert (len(CURE_ROWS), len(CANNER_ROWS), len(BOILING_ROWS)) == (19, 16, 12)


LIMITED = [row for row in CURE_ROWS if row.limit_ppm]


@pytest.mark.parametrize("row", LIMITED, ids=lambda row: f"{row.rules} {row.product_or_method}")
def test_every_limit_of_curing_is_met_at_itself_and_told_a_hair_beside_it(row: CureRow) -> None:
    limit = Decimal(row.limit_ppm)
    a_hair = 1 if row.kind == "required_ingoing" else STEP  # of whole ppm

    assert _said(row, limit - a_hair) == _BELOW.get(row.kind, "within")
    assert _said(row, limit) == _AT.get(row.kind, "within")
    assert _said(row, limit + a_hair) == _ABOVE.get(row.kind, "within")


_AT = {"most_in_product": "other_basis"}
_BELOW = {**_AT, "least_ingoing": "below", "required_ingoing": "below"}
_ABOVE = {**_AT, "most_ingoing": "over", "required_ingoing": "over"}


def _said(row: CureRow, ppm: Decimal) -> str:
    """What this very row says of an amount; each use it holds for says the same."""
    said = set()
    for use in row.holds_for.split(";"):
        case = CureCase(use=use, substance=row.substance, rules=row.rules)
        limits = cure_limits(case, Factor(wanted=ppm, base=Decimal(1)))
        own = [each for each in limits if (each.cited.source, each.kind, each.limit_ppm)
               == (row.source, row.kind, Decimal(row.limit_ppm))]  # fmt: skip
        said |= {each.verdict for each in own}
    (only,) = said
    return only


@pytest.mark.parametrize("use", get_args(CureUse))
@pytest.mark.parametrize("rules", get_args(CureRules))
@pytest.mark.parametrize("substance", get_args(Substance))
@given(ppm=st.decimals(min_value="0.0001", max_value=10_000, places=4))
def test_no_amount_of_cure_is_worked_out_over_a_limit(
    use: Any, rules: Any, substance: Any, ppm: Decimal
) -> None:
    case = CureCase(use=use, substance=substance, rules=rules)
    wanted = CureWanted(
        ppm=ppm,
        substance_percent=Decimal("6.25"),
        green=Decimal(1000),
        pickle=Decimal(2000),
        pump_percent=Decimal(10),
    )
    most = [
        Decimal(row.limit_ppm or 0)
        for row in CURE_ROWS
        if (row.rules, row.substance) == (rules, substance)
        and use in row.holds_for.split(";")
        and row.kind in ("most_ingoing", "required_ingoing", "not_permitted")
    ]
    try:
        found = cure_needed(case, wanted)
    except ValueError:
        assert substance == "sodium_nitrite" and ppm > 1000
        return

    assert found.caution == "curing"
    if most and ppm >= min(most) + 1:
        assert (found.cure, found.substance) == (None, None)
    elif most and ppm < min(most):
        assert found.cure is not None
    assert found.verdict != "no_limit_known" or not most


def test_every_limit_of_curing_holds_for_uses_that_can_be_asked() -> None:
    asked = {use for row in CURE_ROWS for use in row.holds_for.split(";")}

    assert asked == set(get_args(CureUse))
