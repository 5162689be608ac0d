"""Which fold makes the sheet of which type of subject, under which number."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType
from typing import Any

from kitchenlog.calc.asked_prices import ASKED_FOLD, asked_state
from kitchenlog.calc.batches import BATCH_FOLD, batch_state
from kitchenlog.calc.bodies import text_in
from kitchenlog.calc.definitions import (
    DEFINITION_FOLD,
    RECIPE_FOLD,
    definition_state,
    recipe_state,
)
from kitchenlog.calc.instruments import INSTRUMENT_FOLD, instrument_state
from kitchenlog.calc.lot_prices import PRICE_FOLD, price_state
from kitchenlog.calc.market import DAY_FOLD, day_state
from kitchenlog.calc.money import COST_FOLD, RATES_FOLD, cost_state, rates_state
from kitchenlog.calc.record import Fact
from kitchenlog.calc.skills import SKILL_FOLD, skill_state
from kitchenlog.calc.stock import LOT_FOLD, lot_state
from kitchenlog.calc.subjects import type_in
from kitchenlog.calc.trusted import NOTHING_BESIDE

State = Mapping[str, Any]  # the TypedDict of the subject's own fold
Beside = Mapping[str, State]  # sheets of other subjects that its entries lean on, by subject
Fold = Callable[[str, Sequence[Fact], Beside], State]


def _alone(fold: Callable[[str, Sequence[Fact]], State]) -> Fold:
    return lambda subject, facts, _: fold(subject, facts)


DEFINITION_TYPES = (
    "cooperative", "place", "material", "source", "recipient",
)  # fmt: skip

# Sheets of these types are leaned on: by which types, and by which parts of their state.
LEANED_ON: Mapping[str, tuple[tuple[str, ...], tuple[str, ...]]] = MappingProxyType(
    {"instrument": (("batch", "lot"), ("corrections", "doubts"))}
)

# Of a lot only its fill checks lean: what was weighed in from it moves stock as it was read.
LEANING_KINDS: Mapping[str, tuple[str, ...]] = MappingProxyType({"lot": ("fill_checked",)})

# A number goes up when its fold gives another state for the same entries: older sheets are
# then stale by themselves.
FOLDS: Mapping[str, tuple[Fold, int]] = MappingProxyType(
    {
        **dict.fromkeys(DEFINITION_TYPES, (_alone(definition_state), DEFINITION_FOLD)),
        "instrument": (_alone(instrument_state), INSTRUMENT_FOLD),
        "recipe": (_alone(recipe_state), RECIPE_FOLD),
        "lot": (lot_state, LOT_FOLD),
        "price": (_alone(price_state), PRICE_FOLD),
        "batch": (batch_state, BATCH_FOLD),
        "day": (_alone(day_state), DAY_FOLD),
        "skill": (_alone(skill_state), SKILL_FOLD),
        "cost": (_alone(cost_state), COST_FOLD),
        "rates": (_alone(rates_state), RATES_FOLD),
        "asked": (_alone(asked_state), ASKED_FOLD),
    }
)


def fold_subject(subject: str, facts: Sequence[Fact], beside: Beside = NOTHING_BESIDE) -> State:
    """The state of any subject `type:id` from all entries about it, and from the sheets they
    lean on as far as there are any.

    Raises ValueError for a type that has no fold.
    """
    return _fold_of(subject)[0](subject, facts, beside)


def leaning_types(subject: str, before: State | None, after: State) -> tuple[str, ...]:
    """Types of the subjects to fold anew when this sheet becomes another; none if what they
    lean on stays as it was."""
    types, parts = LEANED_ON.get(type_in(subject), ((), ()))
    was: State = {} if before is None else before
    return types if any(was.get(part) != after.get(part) for part in parts) else ()


def fold_number(subject: str) -> int:
    """The number of the fold of a subject's type. Raises ValueError for a type without one."""
    return _fold_of(subject)[1]


def is_finished(subject: str, state: State) -> bool:
    """Whether nothing more is expected, as far as can be said without a clock: of a lot that
    was made and stands nowhere any more, of a finished batch; of a day, an instrument and a
    member's practice never, of another definition always."""
    named = type_in(subject)
    if named == "lot":
        return text_in(state, "maker") is not None and not state.get("places")
    if named == "batch":
        return state.get("is_finished") is True
    return named not in ("day", "instrument", "skill")


def _fold_of(subject: str) -> tuple[Fold, int]:
    known = FOLDS.get(type_in(subject))
    if known is None:
        raise ValueError(f"no fold for {subject}")
    return known
