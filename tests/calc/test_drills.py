"""Questions of drills are chance, and yet the same for the same seed."""

from __future__ import annotations

import json
from collections import Counter
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from kitchenlog.calc.drills import DRAWN_BY, SEED_MOST, _Chance, drill_questions

seeds = st.integers(0, SEED_MOST)


def test_the_generator_draws_the_published_sequence() -> None:
    """From state 1: four numbers of xorshift32 13, 17, 5, worked out with a bit matrix."""
    chance = _Chance(0)
    chance._state = 1

    drawn = [chance.below(2**32) for _ in range(4)]

    assert drawn == [_matrix_power(n) for n in (1, 2, 3, 4)] == [270369, 67634689, 2647435461,
                                                                 307599695]  # fmt: skip


def _matrix_power(times: int) -> int:
    """The state after some steps from 1, each shift a product of matrices over two elements."""
    bits = [1] + [0] * 31  # the lowest first
    for _ in range(times):
        for shift in (13, -17, 5):
            moved = [bits[i - shift] if 0 <= i - shift < 32 else 0 for i in range(32)]
            bits = [(one + other) % 2 for one, other in zip(bits, moved, strict=True)]
    return sum(bit << place for place, bit in enumerate(bits))


def test_no_two_of_many_seeds_ask_the_same() -> None:
    asked = {json.dumps(drill_questions(seed, DRAWN_BY)) for seed in range(3_000)}

    assert len(asked) == 3_000


@given(seed=seeds)
def test_four_of_each_sort_and_no_scale_twice(seed: int) -> None:
    questions = drill_questions(seed, DRAWN_BY)

    assert Counter(each["sort"] for each in questions) == {"dial": 4, "surface": 4, "spoon": 4}
    scales = {(q["shape"], q["low"], q["high"], q["holds"]) for q in questions}
    assert len(scales) == 12


@given(seed=seeds)
def test_needles_and_surfaces_lie_between_marks_and_away_from_the_ends(seed: int) -> None:
    for question in drill_questions(seed, DRAWN_BY)[:8]:
        low, high, division, truth = (
            Decimal(question[name]) for name in ("low", "high", "division", "truth")
        )

        assert low + division < truth < high - division
        assert (truth - low) % division != 0
        assert (truth - low) * 10 % division == 0


@given(seed=seeds)
def test_a_spoon_is_level_short_or_heaped_as_far_as_a_mound_holds(seed: int) -> None:
    for question in drill_questions(seed, DRAWN_BY)[8:]:
        truth = int(question["truth"])

        assert truth == 100 or 60 <= truth <= 95 or 105 <= truth <= 128
