"""Each worked example of recipes, cost, keeping and curing is a vector that names it.

Published answers that are wrong are named where the right one stands: M05 (a misprint), CURE-4
(by the water instead of the pickle), P05 and CURE-11 (refused).
"""

from __future__ import annotations

import re

import pytest

from tests.calc.measurement_examples import VECTORS

# What each is and where its figures come from; basis and digits stand in the vectors.
EXAMPLES = {
    "M01": "baker's percent to 1400 g: baker's percentage tutorial, exercise 1, read",
    "M02": "the milk limits: baker's percentage tutorial, exercise 2, read",
    "M03": "baker's and formula percent: own, computed",
    "M04": "watermelon to buy: USDA Food Buying Guide App. B, read",
    "M05": "asparagus, printed ounces are a misprint: culinary-mathematics notes, read",
    "M06": "cabbage to buy: as-purchased excerpt, read",
    "M07": "pears to buy: Bakery and Business Math ch. 25, read",
    "M08": "strawberries: Bakery and Business Math ch. 25, read",
    "M09": "price of the usable kg goes up: own, computed",
    "M10": "striploin: trade calculations page, computed",
    "M11": "three yields of fish: food-technology slides, read",
    "M12": "marinade that adds up: food-technology slides, read",
    "J01": "jam by soluble solids: Practical Action recipe 1, read",
    "J02": "a formula for 100 kg: standard-of-identity problem, computed",
    "X01": "drying from the dry basis: food-engineering assignment, read",
    "X02": "drying to half water: food-engineering problem, computed",
    "X03": "wet and dry basis: mass-and-energy-balance slides, read",
    "X04": "potatoes: Earle, Unit Operations, Ex. 2.8, memory",
    "X05": "concentrated with sugar: food-engineering problem, computed",
    "P01": "cream and milk: mass-balance slides, computed",
    "P02": "syrup and juice: mass-balance slides, computed",
    "P03": "brine diluted: own, computed",
    "P04": "two brines: own, computed",
    "P05": "a target outside is refused: own, computed",
    "P06": "acid by mass: own, computed",
    "C01": "markup is of cost, margin of price: cookery module, read",
    "C02": "recipe to price: slides, turon problem, computed",
    "C03": "break-even, rounded up: break-even page, read",
    "C04": "break-even at two prices: textbook problem page, computed",
    "C05": "first in first out and average of a period: accounting handout, read",
    "C06": "the same as it happens: accounting textbook excerpt, read and computed",
    "C07": "patronage refund to the coin: Texas A&M AFPC 2023, computed",
    "B01": "one whole batch: own, computed",
    "YIELD-1": "rice dried: IRRI Rice Knowledge Bank, read",
    "YIELD-2": "wet to dry basis: drying-calculation page, read",
    "YIELD-3": "fruit dried: own, computed",
    "YIELD-4": "the same after trimming: own, computed",
    "S01": "day 1 is the day of preparing: 6 CCR 1010-2, read",
    "S02": "freezing pauses: North Carolina date marking, read",
    "S03": "frozen without a date: St Paul poster, read",
    "S04": "the earliest ingredient: North Carolina date marking, computed",
    "S05": "opened, capped by the maker: 410 IAC 7-24-191, computed",
    "S06": "a preserving step resets: own, computed",
    "S07": "dry mixing takes the earliest: own, computed",
    "Q01": "Q10 of two tests: shelf-life chapter, read",
    "Q02": "a week at 100 F at 70 F: computed",
    "Q03": "Q10 projection: food-storage note, read",
    "A01": "Arrhenius: DTU Aqua page, read",
    "A02": "square root: DTU Aqua page, read",
    "A03": "both at 15 C: computed",
    "A04": "energy and its doubt: Labuza 1984, computed",
    "T01": "a history by Q10: own, computed",
    "T02": "the same by square root: own, computed",
    "T03": "the clock stands above the model: 2-hour/4-hour rule, read-secondary",
    "T04": "times out of chill add up: computed",
    **{
        f"D{number:02d}": "calendar arithmetic: computed, D12 memory" for number in range(1, 13)
    },
    **{
        f"CURE-{number}": "curing: 9 CFR 424, FSIS handbook, formula page, own"
        for number in (*range(1, 5), "4b", *range(5, 12))
    },
}


@pytest.fixture(scope="module")
def words() -> str:
    return "\n".join(
        path.read_text(encoding="utf-8") for path in sorted(VECTORS.glob("*/*.json"))
    )


@pytest.mark.parametrize("example", EXAMPLES)
def test_a_worked_example_is_named_by_a_vector(words: str, example: str) -> None:
    assert re.search(rf"\b{example}\b", words)


def test_the_wrong_answer_for_a_pumped_cure_is_nowhere_a_result(words: str) -> None:
    assert not re.search(r'"ppm": "14[01]\.', words)
    assert '"1428.27' not in words


def test_wrong_answers_about_money_are_nowhere_a_result(words: str) -> None:
    assert (
        '"85.20"' not in words
    )  # M09: price times yield; the cost of what can be used goes up
    assert '"usable_price": "85.2' not in words
    assert not re.search(r'"C", "174.11"|"378.92"', words)  # C07: plain rounding gives 850.01
