"""Which fold makes the sheet of which type of subject, under which number."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType
from typing import Any

from kitchenlog.calc.batches import BATCH_FOLD, batch_state
from kitchenlog.calc.bodies import text_in
from kitchenlog.calc.definitions import (
    DEFINITION_FOLD,
    RECIPE_FOLD,
    definition_state,
    recipe_state,
)
from kitchenlog.calc.market import DAY_FOLD, day_state
from kitchenlog.calc.record import Fact
from kitchenlog.calc.skills import SKILL_FOLD, skill_state
from kitchenlog.calc.stock import LOT_FOLD, PRICE_FOLD, lot_state, price_state
from kitchenlog.calc.subjects import type_in

State = Mapping[str, Any]  # the TypedDict of the subject's own fold
Fold = Callable[[str, Sequence[Fact]], State]

DEFINITION_TYPES = (
    "cooperative", "place", "material", "source", "recipient", "instrument",
)  # fmt: skip

# A number goes up when its fold gives another state for the same entries: older sheets are
# then stale by themselves.
FOLDS: Mapping[str, tuple[Fold, int]] = MappingProxyType(
    {
        **dict.fromkeys(DEFINITION_TYPES, (definition_state, DEFINITION_FOLD)),
        "recipe": (recipe_state, RECIPE_FOLD),
        "lot": (lot_state, LOT_FOLD),
        "price": (price_state, PRICE_FOLD),
        "batch": (batch_state, BATCH_FOLD),
        "day": (day_state, DAY_FOLD),
        "skill": (skill_state, SKILL_FOLD),
    }
)


def fold_subject(subject: str, facts: Sequence[Fact]) -> State:
    """The state of any subject `type:id` from all entries about it.

    Raises ValueError for a type that has no fold.
    """
    return _fold_of(subject)[0](subject, facts)


def fold_number(subject: str) -> int:
    """The number of the fold of a subject's type. Raises ValueError for a type without one."""
    return _fold_of(subject)[1]


def is_finished(subject: str, state: State) -> bool:
    """Whether nothing more is expected, as far as can be said without a clock: of a lot that
    was made and stands nowhere any more, of a finished batch; of a day and of a
    member's practice never, of a definition always."""
    named = type_in(subject)
    if named == "lot":
        return text_in(state, "maker") is not None and not state.get("places")
    if named == "batch":
        return state.get("is_finished") is True
    return named not in ("day", "skill")


def _fold_of(subject: str) -> tuple[Fold, int]:
    known = FOLDS.get(type_in(subject))
    if known is None:
        raise ValueError(f"no fold for {subject}")
    return known
