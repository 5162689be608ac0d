"""The graph of goods: from each lot and batch, where to and where from, how much; and which
readings in batches a failed check puts in question."""

from __future__ import annotations

from typing import ClassVar

from django.db import models

from kitchenlog.members.models import Cooperative

NODE_CHARS = 120
ID_CHARS = 40
WAYS = [("back", "came from"), ("forward", "went to")]


class Edge(models.Model):
    """What the sheet of one node says of one of its neighbours, on one of the two ways.

    Between a lot and a batch both sheets speak, each of its own way: a walk asks the sheet it
    stands on, so that the server and a phone that walks over its sheets say the same. The
    amount is the sheet's own text, for it is shown and never added up here.
    """

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    node = models.CharField(max_length=NODE_CHARS)
    way = models.CharField(max_length=8, choices=WAYS)
    neighbour = models.CharField(max_length=NODE_CHARS)
    amount = models.CharField(max_length=40)
    unit = models.CharField(max_length=12, blank=True)

    class Meta:
        indexes: ClassVar = [
            models.Index(
                fields=["cooperative", "way", "node", "neighbour"], name="edge_to_walk"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.node} {self.way} {self.neighbour}"


class DoubtfulReading(models.Model):
    """A reading in a batch that a failed check of its instrument puts in question.

    `moves` is the sheet's own text: what would be added if the error the check found counted.
    """

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    batch = models.CharField(max_length=ID_CHARS)
    check_entry = models.CharField(max_length=ID_CHARS)
    entry = models.CharField(max_length=ID_CHARS)
    happened_at = models.CharField(max_length=30)
    author = models.CharField(max_length=ID_CHARS)
    place = models.CharField(max_length=ID_CHARS)
    moves = models.CharField(max_length=40, blank=True)

    class Meta:
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "batch"], name="doubtful_of_batch"),
            models.Index(fields=["cooperative", "check_entry"], name="doubtful_by_check"),
        ]

    def __str__(self) -> str:
        return f"{self.entry} by {self.check_entry}"


class TouchedBatch(models.Model):
    """A batch with such readings: what its finding says would change."""

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    batch = models.CharField(max_length=ID_CHARS)
    check_entry = models.CharField(max_length=ID_CHARS)
    code = models.CharField(max_length=ID_CHARS, blank=True)
    product = models.CharField(max_length=ID_CHARS, blank=True)
    readings = models.IntegerField()
    would_change = models.TextField(blank=True)

    class Meta:
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "batch"], name="touched_batch"),
            models.Index(fields=["cooperative", "check_entry"], name="touched_by_check"),
        ]

    def __str__(self) -> str:
        return f"{self.batch} by {self.check_entry}"
