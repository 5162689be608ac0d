"""What came out of a batch: packs, rejects, losses by stage and reason, lots in and out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.bodies import (
    Amount,
    Body,
    Quantity,
    amount_in,
    object_in,
    quantity_in,
    sum_of,
    text_in,
)
from kitchenlog.calc.numbers import ZERO, plain, product, total
from kitchenlog.calc.record import Standing
from kitchenlog.calc.stock import Life
from kitchenlog.calc.weighing import weighed, weighing_of


class Output(TypedDict):
    """Good packs, or a good mass, that became a lot; `rejected` in the same unit."""

    entry: str
    lot: str | None
    material: str | None
    amount: str | None
    unit: str | None
    pack_net: Quantity | None
    rejected: str | None
    life: Life | None


class Loss(TypedDict):
    """What was lost from a batch; amount in a base unit."""

    entry: str
    reason: str | None
    stage: str | None
    line: str | None
    amount: str | None
    unit: str | None


class LotIn(TypedDict):
    """How much of a lot went into a batch."""

    lot: str
    material: str | None
    amount: str
    unit: str | None


class LotOut(TypedDict):
    """How much of a lot came out of a batch."""

    lot: str
    amount: str
    unit: str | None


@dataclass(frozen=True, kw_only=True)
class Packed:
    """What was filled and what of it was good, in g; packs and rejected ones in one unit."""

    filled: Decimal | None
    good: Decimal | None
    packs: Decimal | None
    rejected: Decimal | None


def packed_out(entries: Sequence[Standing]) -> Packed:
    """All outputs of a batch together. A blank number of rejects says nothing about rejects;
    the mass filled is that of the packs that were recorded."""
    outputs = [entry.body for entry in entries if entry.kind == "output"]
    rejected = [each for body in outputs if (each := amount_in(body, "rejected")) is not None]
    every = [amount_in(body, "amount") for body in outputs]
    packs, rejects = sum_of([*every, *rejected]), sum_of(rejected)
    return Packed(
        filled=_mass(outputs, ("amount", "rejected")),
        good=_mass(outputs, ("amount",)),
        packs=None if packs is None else packs.value,
        rejected=None if rejects is None else rejects.value,
    )


def lost_by_reason(entries: Sequence[Standing], stage: str) -> dict[str, Decimal]:
    """Sums in g of what was lost in one stage, by reason in alphabetical order.

    What was lost in pieces has no mass of its own; a loss without a stage is seen when the
    kettle is emptied.
    """
    sums: dict[str, Decimal] = {}
    for entry in entries:
        amount = amount_in(entry.body, "amount")
        is_here = entry.kind == "loss" and (text_in(entry.body, "stage") or "filling") == stage
        if not is_here or amount is None or amount.unit != "g":
            continue
        reason = text_in(entry.body, "reason") or "other"
        sums[reason] = total([sums.get(reason, ZERO), amount.value])
    return dict(sorted(sums.items()))


def written_output(entry: Standing) -> Output:
    """An output as the batch sheet shows it."""
    amount, rejected = amount_in(entry.body, "amount"), amount_in(entry.body, "rejected")
    life = object_in(entry.body, "life")
    return Output(
        entry=entry.id,
        lot=text_in(entry.body, "lot"),
        material=text_in(entry.body, "material"),
        amount=None if amount is None else plain(amount.value),
        unit=None if amount is None else amount.unit,
        pack_net=quantity_in(entry.body, "pack_net"),
        rejected=None if rejected is None else plain(rejected.value),
        life=None
        if life is None
        else Life(sort=text_in(life, "sort") or "", on=text_in(life, "on") or ""),
    )


def written_loss(entry: Standing) -> Loss:
    """A loss as the batch sheet shows it."""
    amount = amount_in(entry.body, "amount")
    return Loss(
        entry=entry.id,
        reason=text_in(entry.body, "reason"),
        stage=text_in(entry.body, "stage"),
        line=text_in(entry.body, "line"),
        amount=None if amount is None else plain(amount.value),
        unit=None if amount is None else amount.unit,
    )


def lots_in(entries: Sequence[Standing]) -> list[LotIn]:
    """Every lot weighed in, by code and unit. One whose unit measures no amount is named with
    what was read: a trace must not lose a way."""
    sums: dict[tuple[str, str], tuple[str | None, Decimal]] = {}
    for entry in entries:
        lot = text_in(entry.body, "lot")
        if entry.kind != "weigh_in" or lot is None:
            continue
        amount, weighing = weighed(entry.body), weighing_of(entry.body)
        if amount is None and weighing is not None:
            amount = Amount(value=weighing.net, unit=weighing.unit)
        key = (lot, "" if amount is None else amount.unit)
        material, before = sums.get(key, (text_in(entry.body, "material"), ZERO))
        sums[key] = (material, total([before, ZERO if amount is None else amount.value]))
    return [
        LotIn(lot=lot, material=material, amount=plain(value), unit=unit or None)
        for (lot, unit), (material, value) in sorted(sums.items())
    ]


def lots_out(entries: Sequence[Standing]) -> list[LotOut]:
    """Every lot that came out, by code and unit."""
    sums: dict[tuple[str, str], Decimal] = {}
    for entry in entries:
        lot, amount = text_in(entry.body, "lot"), amount_in(entry.body, "amount")
        if entry.kind == "output" and lot is not None:
            key = (lot, "" if amount is None else amount.unit)
            value = ZERO if amount is None else amount.value
            sums[key] = total([sums.get(key, ZERO), value])
    return [
        LotOut(lot=lot, amount=plain(value), unit=unit or None)
        for (lot, unit), value in sorted(sums.items())
    ]


def _mass(outputs: Sequence[Body], names: Sequence[str]) -> Decimal | None:
    """Mass in g of these amounts of all outputs; None where a pack has no net mass."""
    masses = [
        _mass_g(body, amount)
        for body in outputs
        for name in names
        if (amount := amount_in(body, name)) is not None or name == "amount"
    ]
    known = [mass for mass in masses if mass is not None]
    return total(known) if masses and len(known) == len(masses) else None


def _mass_g(body: Body, amount: Amount | None) -> Decimal | None:
    if amount is None or amount.unit == "g":
        return None if amount is None else amount.value
    pack_net = amount_in(body, "pack_net")
    if amount.unit != "pc" or pack_net is None or pack_net.unit != "g":
        return None
    return product(amount.value, pack_net.value)
