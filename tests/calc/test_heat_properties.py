"""What must hold for any time-temperature log, whatever it says."""

from __future__ import annotations

import json
from decimal import Decimal
from pathlib import Path
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitchenlog.calc.cooling import two_stage_cooling
from kitchenlog.calc.heat_logs import ROWS_MAX, HeatLog, heat_log, outline
from kitchenlog.calc.heat_tables import DECIMAL_REDUCTION_ROWS
from kitchenlog.calc.holding import holding_of
from kitchenlog.calc.lethality import (
    Held,
    acidified_reference,
    lethality,
    log_reduction,
    minutes_at,
    own_reference,
    reference_of,
)
from kitchenlog.calc.logger_files import LoggerLog, logger_log
from kitchenlog.calc.numbers import parse_decimal

SECONDS = st.integers(0, 30_000)
TEMPERATURES = st.decimals(min_value=0, max_value=130, places=1).map(str)
ROWS = st.lists(st.tuples(SECONDS, TEMPERATURES), min_size=1, max_size=30)
FALLS = st.lists(
    st.tuples(st.integers(60, 4000), st.decimals(min_value=0, max_value=12, places=1)),
    min_size=2,
    max_size=30,
)
TABLE = Path(__file__).parents[1] / "vectors" / "lethality" / "minutes_at.json"


def log_of(rows: list[tuple[int, str]]) -> HeatLog:
    return heat_log([second for second, _ in rows], [read for _, read in rows], "degC")


@given(ROWS, st.randoms(use_true_random=False))
def test_shuffling_a_log_changes_nothing(rows: list[tuple[int, str]], chance: Random) -> None:
    shuffled = list(rows)
    chance.shuffle(shuffled)

    assert log_of(shuffled) == log_of(rows)
    assert lethality(log_of(shuffled), reference_of("f0")) == lethality(
        log_of(rows), reference_of("f0")
    )
    assert two_stage_cooling(log_of(shuffled)) == two_stage_cooling(log_of(rows))


@given(ROWS, st.data())
def test_more_heat_never_gives_less_lethality(
    rows: list[tuple[int, str]], data: st.DataObject
) -> None:
    more = data.draw(
        st.lists(
            st.decimals(min_value=0, max_value=20, places=1),
            min_size=len(rows),
            max_size=len(rows),
        )
    )
    hotter = [
        (at, str(Decimal(read) + add)) for (at, read), add in zip(rows, more, strict=True)
    ]

    cool = lethality(log_of(rows), reference_of("beer"))
    hot = lethality(log_of(hotter), reference_of("beer"))

    assert hot.minutes >= cool.minutes * (1 - 1e-12)
    assert hot.bridged_min >= cool.bridged_min * (1 - 1e-12)


@given(ROWS, st.integers(0, 4000), st.integers(0, 4000))
def test_what_a_gap_takes_from_the_sum_is_told_apart(
    rows: list[tuple[int, str]], shorter: int, more: int
) -> None:
    strict = lethality(log_of(rows), reference_of("tomato_beverages"), shorter)
    lenient = lethality(log_of(rows), reference_of("tomato_beverages"), shorter + more)

    assert strict.minutes <= lenient.minutes * (1 + 1e-12)
    assert strict.minutes + strict.bridged_min == pytest.approx(
        lenient.minutes + lenient.bridged_min, rel=1e-9
    )
    assert bool(strict.gaps) >= bool(lenient.gaps)


@given(FALLS)
def test_a_pass_is_within_the_limit_and_a_fail_beyond_it(
    falls: list[tuple[int, Decimal]],
) -> None:
    second, celsius, rows = 0, Decimal(60), [(0, "60")]
    for step, fall in falls:
        second, celsius = second + step, celsius - fall
        rows.append((second, str(celsius)))

    for stage in two_stage_cooling(log_of(rows)).stages:
        if stage.verdict == "pass":
            assert stage.minutes is not None and stage.minutes <= stage.limit_min
            assert stage.at_least_min is not None and stage.at_least_min <= stage.minutes
        if stage.verdict == "fail":
            worst = stage.at_least_min if stage.minutes is None else stage.minutes
            assert worst is not None and worst >= stage.limit_min
        if stage.at_most_min is not None and stage.at_most_min > stage.limit_min * 2:
            assert stage.verdict != "pass"


@given(ROWS)
def test_food_is_outside_as_long_as_its_spans_say_at_least(rows: list[tuple[int, str]]) -> None:
    found = holding_of(log_of(rows), "cold")

    spans_min = sum((each.to_s - each.from_s) / 60 for each in found.outside)

    assert found.outside_min >= spans_min - 1e-9
    assert (found.verdict == "fail") == bool(found.outside)


@given(ROWS, st.integers(1, 20))
def test_a_drawing_keeps_the_first_the_last_and_the_extremes(
    rows: list[tuple[int, str]], columns: int
) -> None:
    log = log_of(rows)

    shown = outline(log, columns)

    assert list(shown) == sorted(set(shown))
    assert {0, len(log.at_s) - 1} <= set(shown)
    assert min(log.low[row] for row in shown) == min(log.low)
    assert max(log.high[row] for row in shown) == max(log.high)
    assert len(shown) <= 4 * columns


def test_the_acidified_table_is_met_as_closely_as_it_was_printed() -> None:
    """Within 1.2 % up to 165 F and within 0.06 min above (FPT 2014 Table 4, read)."""
    printed = {
        vector["given"]["temperature"]: vector["why"].rsplit(" ", 1)[1]
        for vector in json.loads(TABLE.read_text(encoding="utf-8"))["vectors"]
        if vector["why"].startswith("5-log table")
    }
    reference = acidified_reference(Decimal("4.3"))
    assert reference is not None

    assert len(printed) == 40
    for temperature, minutes in printed.items():
        held = Held(temperature=Decimal(temperature), unit="degF")
        model = minutes_at(Decimal("5.6"), held, reference)
        if int(temperature) <= 165:
            assert model == pytest.approx(float(minutes), rel=0.012)
        else:
            assert model == pytest.approx(float(minutes), abs=0.06)


def test_each_published_d_value_is_one_decimal_reduction_at_its_own_temperature() -> None:
    for row in DECIMAL_REDUCTION_ROWS:
        own = own_reference(parse_decimal(row.t_ref_F), z=parse_decimal(row.z_F), unit="degF")
        seconds = int(parse_decimal(row.D_min) * 60 * 100)
        log = heat_log([0, seconds], [row.t_ref_F, row.t_ref_F], "degF")

        found = lethality(log, own, longest_s=seconds)

        hundred = log_reduction(found.minutes, parse_decimal(row.D_min))
        assert hundred == pytest.approx(100, rel=1e-3)
        assert row.basis == "read-secondary"


def test_ten_thousand_rows_are_a_log_and_one_more_is_not() -> None:
    seconds = list(range(ROWS_MAX + 1))
    reads = ["60"] * (ROWS_MAX + 1)

    assert len(heat_log(seconds[:-1], reads[:-1], "degC").at_s) == ROWS_MAX
    with pytest.raises(ValueError, match="10 000"):
        heat_log(seconds, reads, "degC")


def test_a_file_of_a_logger_is_read_and_judged_as_the_log_it_was_written_from() -> None:
    """5 000 rows, every 5 s: from 95 degC down by 0.02 a row, decimal commas, local time."""
    rows = [(5 * n, 95_000 - 20 * n if n < 4500 else 5_000) for n in range(5000)]
    lines = [
        f"10.11.2026 {8 + at // 3600:02}:{at // 60 % 60:02}:{at % 60:02};"
        f"{milli // 1000},{milli % 1000:03}"
        for at, milli in rows
    ]

    read = logger_log("\r\n".join(["Zeit;Temp °C", *lines]))

    assert isinstance(read, LoggerLog)
    assert read.begins == "2026-11-10T08:00:00"
    log = heat_log(read.at_s, read.temperatures, read.unit or "")
    assert log.at_s == tuple(at for at, _ in rows)
    assert log.low == tuple(milli for _, milli in rows)
    cooled = two_stage_cooling(log)
    # 57 degC at row 1900, 21 degC at row 3700, 5 degC at row 4500: 9000 s and 13 000 s.
    assert [str(stage.minutes) for stage in cooled.stages] == ["150.00", "216.67"]
    assert [stage.verdict for stage in cooled.stages] == ["fail", "pass"]
