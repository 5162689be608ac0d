"""What holds for every formula: shares and amounts are one thing, scaled there and back."""

from __future__ import annotations

from decimal import Decimal

from hypothesis import assume, given
from hypothesis import strategies as st

from kitchenlog.calc.formulas import (
    FormulaLine,
    formula_amounts,
    formula_trouble,
    good_factor,
    packs_of,
)
from kitchenlog.calc.numbers import total
from kitchenlog.calc.recipes import Factor, bakers_percents, formula_percents

MASSES = st.decimals(min_value=Decimal("0.001"), max_value=100_000, places=3)
LOSSES = st.decimals(min_value=0, max_value=Decimal("99.9"), places=1)
AS_WRITTEN = Factor(wanted=Decimal(1), base=Decimal(1))


@given(st.lists(MASSES, min_size=2, max_size=10))
def test_bakers_percents_of_a_recipe_with_its_flour_give_the_recipe_back(
    amounts: list[Decimal],
) -> None:
    assume(amounts[0] >= 1)
    is_flour = [number == 0 for number in range(len(amounts))]
    percents = bakers_percents(amounts, is_flour=is_flour, places=12)

    flour = FormulaLine(amount=amounts[0], is_base=True)
    rest = [FormulaLine(percent=percent, percent_of="base") for percent in percents[1:]]
    made = formula_amounts([flour, *rest], whole=None, factor=AS_WRITTEN, places=3)

    assert list(made) == amounts


@given(st.lists(MASSES, min_size=1, max_size=10))
def test_percents_of_the_whole_and_the_whole_give_the_recipe_back(
    amounts: list[Decimal],
) -> None:
    whole = total(amounts)
    lines = [FormulaLine(percent=each) for each in formula_percents(amounts, 20)]

    made = formula_amounts(lines, whole=whole, factor=AS_WRITTEN, places=3)

    assert list(made) == amounts


@given(MASSES, LOSSES, st.integers(1, 400), st.integers(1, 40), st.integers(1, 40))
def test_a_formula_scaled_there_and_back_is_the_formula(
    flour: Decimal, water: Decimal, yield_percent: int, wanted: int, base: int
) -> None:
    lines = [
        FormulaLine(amount=flour, is_base=True, yield_percent=Decimal(yield_percent)),
        FormulaLine(percent=water, percent_of="base"),
    ]
    there = Factor(wanted=Decimal(wanted), base=Decimal(base))
    back = Factor(wanted=Decimal(base), base=Decimal(wanted))

    as_written = formula_amounts(lines, whole=None, factor=AS_WRITTEN, places=15)
    larger = formula_amounts(lines, whole=None, factor=there, places=15)
    again = [FormulaLine(amount=larger[0], is_base=True, yield_percent=Decimal(yield_percent))]
    made = formula_amounts([*again, lines[1]], whole=None, factor=back, places=15)

    assert round(made[0], 3) == flour
    assert abs(made[1] - as_written[1]) < Decimal("1e-12")


@given(st.lists(st.decimals(min_value=0, max_value=90, places=2), min_size=1, max_size=6))
def test_shares_of_the_whole_beside_an_amount_are_those_shares_of_the_sum(
    percents: list[Decimal],
) -> None:
    assume(total(percents) < 95)
    lines = [FormulaLine(amount=Decimal(1000)), *(FormulaLine(percent=p) for p in percents)]

    assert formula_trouble(lines, None) is None
    made = formula_amounts(lines, whole=None, factor=AS_WRITTEN, places=9)
    whole = total(made)
    for percent, amount in zip(percents, made[1:], strict=True):
        assert abs(amount * 100 - percent * whole) < Decimal("0.0001")


@given(MASSES, MASSES, LOSSES)
def test_what_is_wanted_is_left_after_the_loss(
    wanted: Decimal, makes: Decimal, loss: Decimal
) -> None:
    factor = good_factor(wanted, makes=makes, loss_percent=loss)

    left = makes * factor.wanted / factor.base * (100 - loss) / 100

    assert abs(left - wanted) <= wanted * Decimal("1e-20")


@given(MASSES, MASSES, LOSSES)
def test_packs_never_hold_more_than_is_left(
    makes: Decimal, net: Decimal, loss: Decimal
) -> None:
    packs = packs_of(makes, net=net, loss_percent=loss)
    left = makes * (100 - loss) / 100

    assert packs * net <= left < (packs + 1) * net
