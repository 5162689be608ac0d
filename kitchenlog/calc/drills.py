"""The questions of a drill: what is drawn for a member to read, with answers known exactly.

Chance: xorshift32 with the shifts 13, 17, 5 (G. Marsaglia, Xorshift RNGs, Journal of
Statistical Software 8 (14), 2003, section 3; the constants from memory), whole numbers only, so
that both languages draw the same. It goes through every state but 0: another seed, another
drill.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import TypedDict, TypeVar

from kitchenlog.calc.numbers import difference, divided, parse_decimal, plain, product, total

DRAWN_BY = 1  # goes up when the same seed gives other questions
SEED_MOST = 2**31 - 1
QUESTIONS_EACH = 4
TENTHS = 10  # what is drawn lies on a tenth of a division, never on a mark

_WORD = 2**32 - 1
# The fraction of the golden ratio in 32 bits. Its highest bit is set and no seed's is, so the
# state is never 0, from which the generator would not come away.
_START = 0x9E3779B9
_FIRST_DROPPED = 16  # seeds that lie near each other begin with draws that do


Each = TypeVar("Each")


class Question(TypedDict):
    """One thing to read. `low` to `high` is what the scale shows, numerals stand every
    `numbered`; `holds` says what a spoon or cup holds when it is level, in mL."""

    sort: str
    shape: str
    low: str
    high: str
    division: str
    numbered: str
    unit: str
    holds: str | None
    truth: str


@dataclass(frozen=True)
class _Scale:
    low: str
    high: str
    division: str
    numbered: str
    unit: str


# Own choice of everyday kitchen instruments; none is a copy of one that is sold.
_DIALS = (
    _Scale("0", "500", "5", "50", "g"),
    _Scale("0", "1000", "10", "100", "g"),
    _Scale("0", "2", "0.02", "0.2", "kg"),
    _Scale("0", "5", "0.05", "0.5", "kg"),
    _Scale("0", "120", "2", "20", "degC"),
    _Scale("-30", "30", "1", "10", "degC"),
)
_CYLINDERS = (
    _Scale("0", "10", "0.2", "1", "mL"),
    _Scale("0", "25", "0.5", "5", "mL"),
    _Scale("0", "50", "1", "10", "mL"),
    _Scale("0", "100", "1", "10", "mL"),
    _Scale("0", "250", "2", "20", "mL"),
    _Scale("0", "500", "5", "50", "mL"),
)
_MEASURES = (("spoon", "5"), ("cup", "250"), ("spoon", "15"), ("cup", "125"))
_FULLNESS = _Scale("0", "130", "5", "20", "%")
_LEVEL = 100
_HEAPED = (105, 24)  # from 105 to 128 percent: what a mound of the drawn slope can hold
_SHORT = (60, 36)  # from 60 to 95 percent


def drill_questions(seed: int, drawn_by: int) -> list[Question]:
    """Four dials, four curved surfaces, four spoons and cups, the same for the same seed.

    `seed` is a whole number from 0 to SEED_MOST, `drawn_by` the number of the maker of
    questions that the seed was made for. Raises ValueError for others.
    """
    if drawn_by != DRAWN_BY or not 0 <= seed <= SEED_MOST:
        raise ValueError(f"no questions for seed {seed} drawn by {drawn_by}")
    chance = _Chance(seed)
    dials = chance.below(len(_DIALS))
    cylinders = chance.below(len(_CYLINDERS))
    measures = chance.below(len(_MEASURES))
    turns = range(QUESTIONS_EACH)
    return [
        *(_between_marks("dial", "dial", _turned(_DIALS, dials + t), chance) for t in turns),
        *(
            _between_marks("surface", "cylinder", _turned(_CYLINDERS, cylinders + t), chance)
            for t in turns
        ),
        *(_measure(*_turned(_MEASURES, measures + t), chance) for t in turns),
    ]


class _Chance:
    """xorshift32, from a seed."""

    def __init__(self, seed: int) -> None:
        self._state = seed ^ _START
        for _ in range(_FIRST_DROPPED):
            self._next()

    def _next(self) -> int:
        state = self._state
        state ^= (state << 13) & _WORD
        state ^= state >> 17
        state ^= (state << 5) & _WORD
        self._state = state
        return state

    def below(self, most: int) -> int:
        """A whole number from 0 to most - 1. The remainder favours small ones by less than
        most / 2^32, which no reader can learn."""
        return self._next() % most


def _turned(table: Sequence[Each], at: int) -> Each:
    return table[at % len(table)]


def _between_marks(sort: str, shape: str, scale: _Scale, chance: _Chance) -> Question:
    """A place between two marks, not within a division of either end."""
    division = parse_decimal(scale.division)
    span = difference(parse_decimal(scale.high), parse_decimal(scale.low))
    divisions = int(divided(span, division, 0))
    mark = 1 + chance.below(divisions - 2)
    tenths = mark * TENTHS + 1 + chance.below(TENTHS - 1)
    off = product(division, Decimal(tenths).scaleb(-1))
    truth = total([parse_decimal(scale.low), off])
    return _question(sort, shape, scale, None, plain(truth))


def _measure(shape: str, holds: str, chance: _Chance) -> Question:
    """A spoon or cup: level once in four, heaped once, short twice, as chance has it."""
    way = chance.below(4)
    least, count = _HEAPED if way == 1 else _SHORT
    part = least + chance.below(count)
    return _question("spoon", shape, _FULLNESS, holds, str(_LEVEL if way == 0 else part))


def _question(sort: str, shape: str, scale: _Scale, holds: str | None, truth: str) -> Question:
    return {
        "sort": sort,
        "shape": shape,
        "low": scale.low,
        "high": scale.high,
        "division": scale.division,
        "numbered": scale.numbered,
        "unit": scale.unit,
        "holds": holds,
        "truth": truth,
    }
