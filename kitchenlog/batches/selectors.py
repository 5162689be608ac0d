"""Finding batches."""

from __future__ import annotations

from collections.abc import Sequence
from uuid import UUID

from kitchenlog.batches.models import BatchRow
from kitchenlog.logbook.selectors import in_parts


def codes_of_batches(cooperative: UUID, batches: Sequence[str]) -> dict[str, str]:
    """What people call these batches, by id; one whose start has not come has no code."""
    codes: dict[str, str] = {}
    for some in in_parts(batches):
        rows = BatchRow.objects.filter(cooperative=cooperative, batch__in=some)
        codes.update(rows.values_list("batch", "code"))
    return codes
