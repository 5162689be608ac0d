"""How little an instrument can weigh well, and which of several to take for a line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.limits import Cited
from kitchenlog.calc.numbers import HUNDRED, ZERO, divided, product, total
from kitchenlog.calc.readings import doubt_of, guard_band, is_fine_enough

Answer = Literal["can_weigh", "too_coarse", "too_small", "unknown"]

WEIGHT_PLACES = 6
# USP <41> (2019): the least spread a display of this division can have, and 2 standard
# deviations over the smallest net weight.
_FLOOR_DIVISIONS = Decimal("0.41")
_SPREADS = Decimal(2)
USUAL_PERCENT = Decimal("0.10")  # the only accuracy the standard itself names
_CITED = Cited(
    what="minimum_weight",
    source="USP <41> (2019) text as posted; instrument-maker summary",
    basis="read-secondary",
)
_OUR_PERCENT = Cited(
    what="accuracy",
    source="own use of the same rule for another accuracy than 0.10 %",
    basis="common-practice",
)
# Work goes on with an instrument that failed or is due, but another is proposed first.
_STATES = ("fit", "due", "not_checked", "failed")


@dataclass(frozen=True, kw_only=True)
class MinimumWeight:
    """The smallest net weight for a wanted relative accuracy, in the division's unit."""

    amount: Decimal
    cited: tuple[Cited, ...]


@dataclass(frozen=True, kw_only=True)
class Weigher:
    """An instrument that may weigh a line; amounts in the unit of the line.

    `state` is fit, due, not_checked or failed.
    """

    instrument: str
    division: Decimal | None
    capacity: Decimal | None
    repeatability: Decimal | None
    state: str


@dataclass(frozen=True, kw_only=True)
class LineToWeigh:
    """A target, how much it may be below and above, what stands under it on the scale, and
    the relative accuracy that is wanted where a line has no limits of its own."""

    target: Decimal
    below: Decimal | None
    above: Decimal | None
    tare: Decimal | None
    accuracy_percent: Decimal | None


@dataclass(frozen=True, kw_only=True)
class Weighs:
    """What one instrument can do for a line."""

    instrument: str
    answer: Answer
    guard_band: float | None
    minimum_weight: Decimal | None


def minimum_weight(
    *, division: Decimal, repeatability: Decimal | None, accuracy_percent: Decimal
) -> MinimumWeight:
    """The smallest net weight: 2 s / accuracy, with s at least 0.41 d (USP <41>, 2019).

    Without a repeatability the floor stands for it. Raises ValueError for an accuracy not
    above zero.
    """
    if accuracy_percent <= ZERO:
        raise ValueError("an accuracy is more than 0 %")
    floor = product(_FLOOR_DIVISIONS, division)
    spread = floor if repeatability is None else max(floor, repeatability)
    over = product(product(_SPREADS, spread), HUNDRED)
    is_usual = accuracy_percent == USUAL_PERCENT
    return MinimumWeight(
        amount=divided(over, accuracy_percent, WEIGHT_PLACES),
        cited=(_CITED,) if is_usual else (_CITED, _OUR_PERCENT),
    )


def weighs(line: LineToWeigh, weigher: Weigher) -> Weighs:
    """Whether an instrument can weigh a line, or why not; `unknown` without a division.

    Raises ValueError for a wanted accuracy not above zero.
    """
    if weigher.division is None:
        return Weighs(
            instrument=weigher.instrument,
            answer="unknown",
            guard_band=None,
            minimum_weight=None,
        )
    readings = 1 if line.tare is None else 2
    doubt = doubt_of(
        division=weigher.division, readings=readings, repeatability=weigher.repeatability
    )
    least = _least(line, weigher.division, weigher.repeatability)
    is_fine = (least is None or line.target >= least) and is_fine_enough(
        weigher.division,
        below=line.below,
        above=line.above,
        readings=readings,
        repeatability=weigher.repeatability,
    )
    return Weighs(
        instrument=weigher.instrument,
        answer=_answer(is_fine=is_fine, is_over=_is_over(line, weigher.capacity)),
        guard_band=guard_band(doubt),
        minimum_weight=least,
    )


def proposed(line: LineToWeigh, weighers: Sequence[Weigher]) -> str | None:
    """The instrument to take: one that can weigh the line; a fit one before a due, unchecked
    or failed one, then the smallest guard band. None where none can. Raises as weighs does."""
    best: tuple[int, float, str] | None = None
    for weigher in weighers:
        said = weighs(line, weigher)
        if said.answer != "can_weigh" or said.guard_band is None:
            continue
        rank = (_state_rank(weigher.state), said.guard_band, weigher.instrument)
        best = rank if best is None else min(best, rank)
    return None if best is None else best[2]


def _least(
    line: LineToWeigh, division: Decimal, repeatability: Decimal | None
) -> Decimal | None:
    if line.accuracy_percent is None:
        return None
    return minimum_weight(
        division=division,
        repeatability=repeatability,
        accuracy_percent=line.accuracy_percent,
    ).amount


def _is_over(line: LineToWeigh, capacity: Decimal | None) -> bool:
    load = total([line.target, ZERO if line.tare is None else line.tare])
    return capacity is not None and load > capacity


def _answer(*, is_fine: bool, is_over: bool) -> Answer:
    if is_over:
        return "too_small"
    return "can_weigh" if is_fine else "too_coarse"


def _state_rank(state: str) -> int:
    return _STATES.index(state) if state in _STATES else len(_STATES)
