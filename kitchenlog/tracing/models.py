"""The graph of goods: from where to where, how much."""

from __future__ import annotations

from typing import ClassVar

from django.db import models

from kitchenlog.members.models import Cooperative

NODE_CHARS = 120


class Edge(models.Model):
    """Goods went from one node to another, always pointing the way they went.

    `told_by` is the subject whose sheet says so; with that sheet its edges are written anew.
    The amount is the sheet's own text, for it is shown and never added up here.
    """

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    told_by = models.CharField(max_length=NODE_CHARS)
    from_node = models.CharField(max_length=NODE_CHARS)
    to_node = models.CharField(max_length=NODE_CHARS)
    amount = models.CharField(max_length=40)
    unit = models.CharField(max_length=2, blank=True)

    class Meta:
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "told_by"], name="edge_told_by"),
            models.Index(fields=["cooperative", "from_node", "to_node"], name="edge_forward"),
            models.Index(fields=["cooperative", "to_node", "from_node"], name="edge_back"),
        ]

    def __str__(self) -> str:
        return f"{self.from_node} to {self.to_node}"
