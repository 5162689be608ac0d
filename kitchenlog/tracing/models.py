"""The graph of goods: from each lot and batch, where to and where from, how much; and which
readings a failed check puts in question."""

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


class Touched(models.Model):
    """A batch with readings, or a lot with fill checks, that a failed check puts in question.

    `listed` holds these readings as JSON, for they are shown together and never looked for one
    by one: ten thousand rows cost several times what their five hundred batches do.
    """

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    subject = models.CharField(max_length=NODE_CHARS)
    check_entry = models.CharField(max_length=ID_CHARS)
    code = models.CharField(max_length=ID_CHARS, blank=True)
    material = models.CharField(max_length=ID_CHARS, blank=True)
    readings = models.IntegerField()
    would_change = models.TextField(blank=True)
    listed = models.TextField()

    class Meta:
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "subject"], name="touched_subject"),
            models.Index(
                fields=["cooperative", "check_entry", "subject"], name="touched_by_check"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.subject} by {self.check_entry}"


class ReadElsewhere(models.Model):
    """Something read on an instrument that no batch and no lot leans on: a drill's weighing, or
    the water in a vessel that was checked with it."""

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    subject = models.CharField(max_length=NODE_CHARS)
    instrument = models.CharField(max_length=ID_CHARS)
    entry = models.CharField(max_length=ID_CHARS)
    happened_at = models.CharField(max_length=30)
    author = models.CharField(max_length=ID_CHARS)
    read = models.CharField(max_length=40, blank=True)
    unit = models.CharField(max_length=12, blank=True)

    class Meta:
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "subject"], name="elsewhere_of_subject"),
            models.Index(
                fields=["cooperative", "instrument", "happened_at"], name="elsewhere_read_on"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.entry} on {self.instrument}"
