"""Lots as stock is found and added up by; the exact figures stand in the lot sheets."""

from __future__ import annotations

from typing import ClassVar

from django.db import models

from kitchenlog.members.models import Cooperative

LOT_CHARS = 40
ID_CHARS = 40
UNITS = [("mg", "milligrams"), ("uL", "microlitres"), ("pc", "pieces")]


class LotRow(models.Model):
    """One lot: of what, how much of it is left over all places, and its date.

    Amounts are whole numbers of the smallest unit; `unit` is empty for a lot nothing was
    measured of.
    """

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    code = models.CharField(max_length=LOT_CHARS)
    material = models.CharField(max_length=ID_CHARS, blank=True)
    unit = models.CharField(max_length=2, choices=UNITS, blank=True)
    on_hand = models.BigIntegerField()
    life_on = models.DateField(null=True)
    is_refused = models.BooleanField()

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["cooperative", "code"], name="lot_row_once"),
        ]
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "material", "life_on"], name="lot_of_material"),
        ]

    def __str__(self) -> str:
        return self.code


class LotAtPlace(models.Model):
    """How much of one lot stands at one place; below zero where more left than came."""

    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    lot = models.CharField(max_length=LOT_CHARS)
    place = models.CharField(max_length=ID_CHARS)
    material = models.CharField(max_length=ID_CHARS, blank=True)
    unit = models.CharField(max_length=2, choices=UNITS, blank=True)
    amount = models.BigIntegerField()

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(
                fields=["cooperative", "lot", "place"], name="lot_at_place_once"
            ),
        ]
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "place", "material"], name="stock_of_place"),
            models.Index(fields=["cooperative", "material"], name="stock_of_material"),
        ]

    def __str__(self) -> str:
        return f"{self.lot} at {self.place}"
