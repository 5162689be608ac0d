"""How often each instrument was used since the check it is judged by."""

from __future__ import annotations

from typing import ClassVar

from django.db import models

from kitchenlog.members.models import Cooperative

ID_CHARS = 40


class UseCount(models.Model):
    """Uses of one instrument since its deciding check was made, as of `counted_at`.

    `seq` is from the head row, as that of a sheet: a pull tells the row to phones once.
    """

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    instrument = models.CharField(max_length=ID_CHARS)
    check_entry = models.CharField(max_length=ID_CHARS)
    since = models.DateTimeField()
    count = models.IntegerField()
    counted_at = models.DateTimeField()
    seq = models.BigIntegerField()

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(
                fields=["cooperative", "instrument"], name="use_count_once"
            ),
            models.UniqueConstraint(fields=["cooperative", "seq"], name="use_count_seq_once"),
        ]

    def __str__(self) -> str:
        return f"{self.count} uses of {self.instrument}"
