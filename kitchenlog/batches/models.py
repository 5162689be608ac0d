"""Batches as they are found by; all else about them stands in the batch sheets."""

from __future__ import annotations

from typing import ClassVar

from django.db import models

from kitchenlog.members.models import Cooperative

ID_CHARS = 40


class BatchRow(models.Model):
    """One batch that was started."""

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    batch = models.CharField(max_length=ID_CHARS)
    code = models.CharField(max_length=ID_CHARS)
    recipe = models.CharField(max_length=ID_CHARS)
    product = models.CharField(max_length=ID_CHARS)
    place = models.CharField(max_length=ID_CHARS)
    started_on = models.DateField()
    is_finished = models.BooleanField()

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["cooperative", "batch"], name="batch_row_once"),
        ]
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "started_on"], name="batch_by_day"),
            models.Index(fields=["cooperative", "code"], name="batch_by_code"),
        ]

    def __str__(self) -> str:
        return self.code
