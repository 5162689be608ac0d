"""The graph of goods: from each lot and batch, where to and where from, how much."""

from __future__ import annotations

from typing import ClassVar

from django.db import models

from kitchenlog.members.models import Cooperative

NODE_CHARS = 120
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
