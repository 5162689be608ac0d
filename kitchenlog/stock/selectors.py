"""Stock, added up from lots when asked."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from uuid import UUID

from django.db.models import Sum

from kitchenlog.logbook.selectors import in_parts
from kitchenlog.stock.models import LotAtPlace, LotRow

Sums = dict[str, dict[str, int]]  # what -> smallest unit -> amount


def stock_of_place(cooperative: UUID, place: str) -> Sums:
    """How much of each material stands at a place; a lot below zero counts as it is."""
    rows = LotAtPlace.objects.filter(cooperative=cooperative, place=place)
    return _summed(rows.values_list("material", "unit").annotate(Sum("amount")))


def stock_of_material(cooperative: UUID, material: str) -> Sums:
    """How much of a material stands at each place."""
    rows = LotAtPlace.objects.filter(cooperative=cooperative, material=material)
    return _summed(rows.values_list("place", "unit").annotate(Sum("amount")))


def lots_of_material(cooperative: UUID, material: str) -> list[LotRow]:
    """Lots with something left, the one that expires first before all others."""
    rows = LotRow.objects.filter(cooperative=cooperative, material=material, on_hand__gt=0)
    dated = rows.filter(life_on__isnull=False).order_by("life_on", "code")
    return [*dated, *rows.filter(life_on__isnull=True).order_by("code")]


def materials_of_lots(cooperative: UUID, codes: Sequence[str]) -> dict[str, str]:
    """Of what each of these lots is, by code; a lot nobody made yet is of nothing known."""
    materials: dict[str, str] = {}
    for some in in_parts(codes):
        rows = LotRow.objects.filter(cooperative=cooperative, code__in=some)
        materials.update(rows.exclude(material="").values_list("code", "material"))
    return materials


def _summed(rows: Iterable[tuple[str, str, int]]) -> Sums:
    sums: Sums = {}
    for what, unit, amount in rows:
        sums.setdefault(what, {})[unit] = amount
    return sums
