"""What must hold for any kettle, mixture and cure, not only for those somebody thought of."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from kitchenlog.calc.brine import percent_by_mass, percent_of_water
from kitchenlog.calc.cure_limits import CureCase
from kitchenlog.calc.curing import CureMade, CureWanted, cure_needed, ingoing
from kitchenlog.calc.drying import Moisture, concentrated, dried, dry_basis_percent
from kitchenlog.calc.drying import wet_basis_percent as wet_basis
from kitchenlog.calc.kettle import (
    Charge,
    Measured,
    Share,
    formula_for,
    kettle_evaporation,
    kettle_target,
)
from kitchenlog.calc.mixing import Square, added_to_reach, mixed_to, pearson_shares, strength_of
from kitchenlog.calc.numbers import total
from kitchenlog.calc.recipes import (
    Factor,
    amounts_from_percents,
    as_purchased,
    bakers_percents,
    edible_portion,
    formula_percents,
    scaled,
)
from kitchenlog.calc.yields import Stage, stage_yields, to_buy

MASSES = st.decimals(min_value=Decimal("0.001"), max_value=10**5, places=3)
PERCENTS = st.decimals(min_value=Decimal("0.1"), max_value=100, places=1)
WET = st.decimals(min_value=0, max_value=Decimal("99"), places=1)
STRENGTHS = st.decimals(min_value=0, max_value=100, places=2)
CHARGES = st.lists(
    st.builds(Charge, amount=MASSES, solids_percent=STRENGTHS),
    min_size=1,
    max_size=8,
)
STEP = Decimal("0.0001")


@given(CHARGES, PERCENTS, MASSES)
def test_what_goes_into_a_kettle_comes_out_or_boils_off(
    charges: list[Charge], target: Decimal, tare: Decimal
) -> None:
    found = kettle_target(charges, target_percent=target, tare=tare)
    assert found is not None

    assert found.makes + found.boil_off == total(charge.amount for charge in charges)
    assert found.gross == found.makes + tare
    assert abs(found.makes * target / 100 - found.solids) <= STEP


@given(CHARGES, PERCENTS, MASSES)
def test_steam_weighed_is_steam_calculated_and_the_remainder_whatever_its_sign(
    charges: list[Charge], brix: Decimal, out: Decimal
) -> None:
    found = kettle_evaporation(charges, out=Measured(value=out), brix=Measured(value=brix))

    assert found.weighed is not None and found.calculated is not None
    assert found.remainder == found.weighed - found.calculated


@given(CHARGES, PERCENTS, st.floats(min_value=1e-6, max_value=10))
def test_more_doubt_of_a_brix_is_never_less_doubt_of_the_steam(
    charges: list[Charge], brix: Decimal, u: float
) -> None:
    def doubt(brix_u: float) -> float:
        read = Measured(value=brix, u=brix_u)
        found = kettle_evaporation(charges, out=None, brix=read)
        assert found.calculated_u is not None
        return found.calculated_u

    assert doubt(0.0) <= doubt(u)


@given(st.lists(st.builds(Share, share=MASSES, solids_percent=STRENGTHS), min_size=1), MASSES)
def test_a_formula_makes_what_was_wanted_and_the_rest_boils_off(
    shares: list[Share], makes: Decimal
) -> None:
    assume(any(share.solids_percent for share in shares))

    found = formula_for(shares, makes=makes, target_percent=Decimal(65))

    assert total(found.amounts) == makes + found.boil_off


@given(MASSES, WET, WET)
def test_drying_keeps_the_mass_and_the_solids(
    mass: Decimal, before: Decimal, after: Decimal
) -> None:
    found = dried(
        mass,
        before=Moisture(percent=before, basis="wet"),
        after=Moisture(percent=after, basis="wet"),
    )

    assert found.makes + found.water_out == mass
    assert abs(found.makes * (100 - after) / 100 - found.solids) <= STEP


@given(MASSES, WET, WET)
def test_a_moisture_said_on_either_basis_dries_to_the_same(
    mass: Decimal, before: Decimal, after: Decimal
) -> None:
    dry = Moisture(percent=dry_basis_percent(before, 12), basis="dry")
    to = Moisture(percent=after, basis="wet")

    by_dry = dried(mass, before=dry, after=to).makes
    by_wet = dried(mass, before=Moisture(percent=before, basis="wet"), after=to).makes

    assert abs(by_dry - by_wet) <= STEP
    assert abs(wet_basis(dry.percent, 6) - before) <= Decimal("0.000001")


@given(MASSES, STRENGTHS, PERCENTS)
def test_what_is_concentrated_and_stirred_in_comes_out_or_leaves_as_water(
    mass: Decimal, solids: Decimal, to_percent: Decimal
) -> None:
    found = concentrated(
        mass,
        solids_percent=solids,
        to_percent=to_percent,
        added_percent=(100 - to_percent) / 2,
    )

    assert found.makes + found.water_out == mass + found.to_add


@given(STRENGTHS, STRENGTHS, STRENGTHS, MASSES)
def test_a_square_makes_its_target_and_a_target_outside_is_refused(
    strong: Decimal, weak: Decimal, target: Decimal, makes: Decimal
) -> None:
    square = Square(strong=strong, weak=weak, target=target)
    if not (weak < strong and weak <= target <= strong):
        with pytest.raises(ValueError, match="outside"):
            pearson_shares(square)
        return

    shares, parts = pearson_shares(square), mixed_to(makes, square)

    assert shares.strong_percent + shares.weak_percent == 100
    assert parts.strong + parts.weak == makes
    assert parts.strong >= 0 and parts.weak >= 0
    exact = Fraction(parts.strong) * Fraction(strong) + Fraction(parts.weak) * Fraction(weak)
    assert abs(exact - Fraction(makes) * Fraction(target)) <= Fraction(STEP) * 100


@given(STRENGTHS, STRENGTHS, STRENGTHS, MASSES)
def test_what_was_added_reaches_the_target(
    a: Decimal, b: Decimal, c: Decimal, amount: Decimal
) -> None:
    weak, target, strong = sorted((a, b, c))
    assume(strong - target >= 1 and target > weak)
    square = Square(strong=strong, weak=weak, target=target)

    found = added_to_reach(amount, square, at_hand="strong")
    made = strength_of([(amount, strong), (found.to_add, weak)])

    assert found.makes == amount + found.to_add
    assert made is not None
    # The amount is rounded to a ten-thousandth, which moves the strength of a small one most.
    assert abs(made - target) <= STEP * (1 + 100 / found.makes)


@given(
    st.decimals(min_value=1, max_value=80, places=1),
    st.decimals(min_value=1, max_value=80, places=1),
)
def test_a_square_of_percents_of_the_water_is_one_of_percents_by_mass(
    a: Decimal, b: Decimal
) -> None:
    weak, strong = sorted((a, b))
    assume(strong - weak >= 1)
    target = (weak + strong) / 2
    by_mass = [percent_by_mass(each, 12) for each in (strong, weak, target)]

    of_water = pearson_shares(Square(strong=strong, weak=weak, target=target, basis="of_water"))
    checked = pearson_shares(Square(strong=by_mass[0], weak=by_mass[1], target=by_mass[2]))

    assert abs(of_water.strong_percent - checked.strong_percent) <= STEP


@given(st.decimals(min_value=0, max_value=90, places=2))
def test_salt_of_the_whole_and_of_the_water_are_one_thing(percent: Decimal) -> None:
    assert abs(percent_by_mass(percent_of_water(percent, 12), 6) - percent) <= Decimal("1e-6")


@given(MASSES, st.integers(min_value=1, max_value=40), st.integers(min_value=1, max_value=40))
def test_scaling_there_and_back_is_the_identity(
    amount: Decimal, wanted: int, base: int
) -> None:
    there = scaled(amount, Factor(wanted=Decimal(wanted), base=Decimal(base)), 9)

    assert scaled(there, Factor(wanted=Decimal(base), base=Decimal(wanted)), 3) == amount


@given(st.lists(MASSES, min_size=2, max_size=10))
def test_bakers_percents_and_back_is_the_recipe(amounts: list[Decimal]) -> None:
    assume(amounts[0] >= 1)
    is_flour = [number == 0 for number in range(len(amounts))]

    percents = bakers_percents(amounts, is_flour=is_flour, places=12)
    back = amounts_from_percents(percents, total(amounts), 3)

    assert list(back) == amounts


@given(st.lists(MASSES, min_size=1, max_size=20))
def test_formula_percents_add_up_to_a_hundred(amounts: list[Decimal]) -> None:
    off = abs(total(formula_percents(amounts, 6)) - 100)

    assert off <= Decimal("0.000001") * len(amounts)


@given(MASSES, st.decimals(min_value=1, max_value=300, places=2))
def test_what_was_bought_for_an_edible_amount_gives_it(
    edible: Decimal, percent: Decimal
) -> None:
    bought = as_purchased(edible, percent, 9)

    assert edible_portion(bought, percent, 3) == edible
    step = Decimal("0.5")
    assert 0 <= to_buy(edible, yield_percent=percent, step=step) - bought < step + STEP


@given(MASSES, st.lists(st.decimals(min_value=1, max_value=100, places=0), max_size=9))
def test_where_nothing_is_added_stage_yields_multiply_to_the_whole(
    raw: Decimal, percents: list[Decimal]
) -> None:
    outs, before = [], raw
    for percent in percents:
        before = scaled(before, Factor(wanted=percent, base=Decimal(100)), 9)
        outs.append(Stage(added=Decimal(0), out=before))
    assume(before)

    found = stage_yields(raw, outs)

    assert found.per_raw == found.per_all_inputs == found.multiplied


@given(
    st.decimals(min_value=1, max_value=200, places=2),
    st.decimals(min_value=Decimal("0.5"), max_value=20, places=2),
    st.decimals(min_value=5, max_value=50, places=1),
)
def test_the_cure_that_is_needed_puts_in_what_was_wanted(
    ppm: Decimal, percent: Decimal, pump: Decimal
) -> None:
    case = CureCase(use="pumped", substance="sodium_nitrite", rules="us")
    wanted = CureWanted(
        ppm=ppm, substance_percent=percent, pickle=Decimal(10_000), pump_percent=pump
    )

    needed = cure_needed(case, wanted)

    assert needed.cure is not None
    assume(needed.cure < 10_000)
    made = CureMade(
        cure=needed.cure,
        substance_percent=percent,
        others=[10_000 - needed.cure],
        pump_percent=pump,
    )
    assert abs(ingoing(case, made).ppm - ppm) <= STEP
    assert needed.caution == "curing"


@given(st.decimals(min_value=Decimal("200.01"), max_value=1000, places=2))
def test_over_a_limit_no_amount_is_ever_worked_out(ppm: Decimal) -> None:
    case = CureCase(use="immersed", substance="sodium_nitrite", rules="us")
    wanted = CureWanted(
        ppm=ppm, substance_percent=Decimal("6.25"), green=Decimal(9), pickle=Decimal(4)
    )

    needed = cure_needed(case, wanted)

    assert (needed.cure, needed.substance, needed.verdict) == (None, None, "over")
