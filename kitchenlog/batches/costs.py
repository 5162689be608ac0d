"""What a batch cost, over the sheets of the log."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any
from uuid import UUID

from kitchenlog.calc.batch_costs import CostAnswer, cost_of_batch
from kitchenlog.logbook.selectors import states_of

ROUNDS_MAX = 40  # as many batches deep as goods may be reworked before a cost gives up

State = Mapping[str, Any]


def cost_in_log(cooperative: UUID, batch: str) -> CostAnswer | None:
    """The cost of a batch; None for one without a sheet.

    The walk is asked again with what it looked for and did not find, until it finds all there
    is: so the sheets are read in as many queries as the goods have levels.
    """
    sheets = _Sheets()
    for _ in range(ROUNDS_MAX):
        found = cost_of_batch(batch, cooperative=str(cooperative), sheets=sheets)
        wanted = sheets.asked_in_vain
        if not wanted:
            break
        sheets.take_in(states_of(cooperative, sorted(wanted)), wanted)
    return found if f"batch:{batch}" in sheets else None


class _Sheets(Mapping[str, State]):
    """States at hand, and which others were asked for."""

    def __init__(self) -> None:
        self._states: dict[str, State] = {}
        self._absent: set[str] = set()
        self.asked_in_vain: set[str] = set()

    def take_in(self, states: Mapping[str, State], wanted: set[str]) -> None:
        """What was found of what was asked for; the rest is not in the log."""
        self._states.update(states)
        self._absent |= wanted - set(states)
        self.asked_in_vain = set()

    def __getitem__(self, subject: str) -> State:
        if subject not in self._states and subject not in self._absent:
            self.asked_in_vain.add(subject)
        return self._states[subject]

    def __contains__(self, subject: object) -> bool:
        return subject in self._states

    def __iter__(self) -> Iterator[str]:
        return iter(self._states)

    def __len__(self) -> int:
        return len(self._states)
