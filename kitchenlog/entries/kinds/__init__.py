"""The one table of kinds; `make kinds` writes the phone's copy and a list in DEVELOPERS.md."""

from __future__ import annotations

from kitchenlog.entries.kinds.about import ABOUT_KINDS
from kitchenlog.entries.kinds.definitions import DEFINITION_KINDS
from kitchenlog.entries.kinds.facts import MAKING_KINDS, MOVING_KINDS, RECEIVING_KINDS
from kitchenlog.entries.kinds.fields import Field, Kind
from kitchenlog.entries.kinds.holds import HOLDING_KINDS
from kitchenlog.entries.kinds.money import MONEY_KINDS
from kitchenlog.entries.kinds.process import PROCESS_KINDS
from kitchenlog.entries.kinds.trust import TRUST_KINDS

# Goes up with any change of a released table, see `released`; a phone with an older one stops
# pulling (R91).
TABLE_NUMBER = 1

KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        *DEFINITION_KINDS,
        *RECEIVING_KINDS,
        *MAKING_KINDS,
        *MOVING_KINDS,
        *TRUST_KINDS,
        *MONEY_KINDS,
        *PROCESS_KINDS,
        *HOLDING_KINDS,
        *ABOUT_KINDS,
    )
}

# Bodies of earlier versions as they were declared, so that a late phone is still understood.
EARLIER_KINDS: tuple[Kind, ...] = ()

SUBJECT_TYPES = (
    "cooperative", "place", "material", "source", "recipient", "instrument", "recipe",
    "lot", "price", "batch", "day", "skill", "cost", "rates", "asked",
)  # fmt: skip

__all__ = ["EARLIER_KINDS", "KINDS", "SUBJECT_TYPES", "TABLE_NUMBER", "Field", "Kind"]
