"""Counting the uses of instruments since the check each is judged by."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from uuid import UUID

from kitchenlog.calc.deciding import deciding_check
from kitchenlog.calc.instruments import Check
from kitchenlog.calc.subjects import id_in
from kitchenlog.instruments.models import UseCount
from kitchenlog.logbook.mentions import mention_count
from kitchenlog.logbook.selectors import sheets_of_type, states_of
from kitchenlog.logbook.turnstile import all_heads, locked_head
from kitchenlog.logbook.wire import to_the_millisecond
from kitchenlog.members.models import Cooperative
from kitchenlog.members.scope import in_cooperative


def count_all_uses(*, at: datetime) -> None:
    """Count for every instrument of every cooperative."""
    for head in all_heads():
        with in_cooperative(head.cooperative, writes=False):
            subjects = sheets_of_type(head.cooperative_id, "instrument")
        count_uses(head.cooperative, [id_in(each) for each in subjects], at=at)


def count_uses(cooperative: Cooperative, ids: Sequence[str], *, at: datetime) -> None:
    """Count the uses of these instruments anew, and of the scales they were checked with; a row
    changes only where it says another thing.

    Counting holds nothing, so uploads go on; each row is then saved behind the turnstile.
    """
    with in_cooperative(cooperative, writes=False):
        used = _check_scales(cooperative.pk, ids)
    for instrument in dict.fromkeys([*ids, *used]):
        with in_cooperative(cooperative, writes=False):
            found = _found(cooperative.pk, instrument)
        with in_cooperative(cooperative):
            _save(cooperative.pk, instrument, found, at=at)


def _check_scales(cooperative: UUID, ids: Sequence[str]) -> list[str]:
    """The scales on which the water of these vessels was weighed."""
    states = states_of(cooperative, [f"instrument:{each}" for each in ids])
    checks = [check for state in states.values() for check in state.get("checks", ())]
    return sorted({scale for check in checks if (scale := check.get("check_scale"))})


@dataclass(frozen=True)
class _Found:
    """What was counted, from which check."""

    check: str
    since: datetime
    count: int


def _found(cooperative: UUID, instrument: str) -> _Found | None:
    """None for an instrument that nobody checked: nothing is due by use then."""
    subject = f"instrument:{instrument}"
    check = _decides(states_of(cooperative, [subject]).get(subject))
    if check is None:
        return None
    since = datetime.fromisoformat(check["happened_at"])
    count = mention_count(cooperative, subject, since=since)
    return _Found(check["entry"], since, count)


def _decides(state: dict[str, Any] | None) -> Check | None:
    """A sheet of an earlier fold has no checks; it is on the work list."""
    if state is None:
        return None
    return deciding_check(state.get("checks", ()), state.get("doubts", ()))


def _save(cooperative: UUID, instrument: str, found: _Found | None, *, at: datetime) -> None:
    rows = UseCount.objects.filter(cooperative=cooperative, instrument=instrument)
    if found is None:
        rows.delete()  # phones have it still, but count from no such check
        return
    same = {"check_entry": found.check, "since": found.since, "count": found.count}
    if rows.filter(**same).exists():
        return
    head = locked_head(cooperative)
    head.last_seq += 1
    head.save(update_fields=["last_seq"])
    told = {**same, "counted_at": to_the_millisecond(at), "seq": head.last_seq}
    UseCount.objects.update_or_create(
        cooperative_id=cooperative, instrument=instrument, defaults=told
    )
