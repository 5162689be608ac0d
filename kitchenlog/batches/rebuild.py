"""From a batch sheet to the row batches are found by."""

from __future__ import annotations

from datetime import date
from uuid import UUID

from kitchenlog.batches.models import BatchRow
from kitchenlog.calc.batches import BatchState
from kitchenlog.logbook.subjects import FieldTable


def _rows(cooperative: UUID, batch_id: str, batch: BatchState) -> list[BatchRow]:
    """None for a batch of which only later entries have come so far."""
    if batch["started_on"] is None:
        return []
    return [
        BatchRow(
            cooperative_id=cooperative,
            batch=batch_id,
            code=batch["code"] or "",
            recipe=batch["recipe"] or "",
            product=batch["product"] or "",
            place=batch["place"] or "",
            started_on=date.fromisoformat(batch["started_on"]),
            is_finished=batch["is_finished"],
        )
    ]


BATCH_TABLE = FieldTable(BatchRow, owner="batch", rows=_rows)
