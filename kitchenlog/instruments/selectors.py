"""What phones are told of the uses of instruments."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from kitchenlog.instruments.models import UseCount


@dataclass(frozen=True)
class UsesRow:
    """One instrument: so many uses since this check, as of `counted_at`."""

    instrument: str
    seq: int
    check_entry: str
    count: int
    counted_at: datetime


def uses_to_tell(cooperative: UUID, *, after: int, upto: int, most: int) -> list[UsesRow]:
    """Counts in a range of numbers, in order."""
    rows = UseCount.objects.filter(cooperative=cooperative, seq__gt=after, seq__lte=upto)
    columns = ("instrument", "seq", "check_entry", "count", "counted_at")
    return [UsesRow(*row) for row in rows.order_by("seq").values_list(*columns)[:most]]
