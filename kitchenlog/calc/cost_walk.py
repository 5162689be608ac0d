"""What costs in a batch, item by item, followed over sheets; what is not known is named."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import Literal

from kitchenlog.calc.bodies import Body, decimal_in, items_in, object_in, text_in
from kitchenlog.calc.costs import (
    LOT_PLACES,
    BatchCost,
    Expense,
    Labour,
    OverheadBy,
    Packs,
    PercentOf,
    Surcharge,
    UsedLot,
    batch_cost,
    overhead,
)
from kitchenlog.calc.lot_worth import Lacking, OfBatch, Sheets, Worths, used_lot
from kitchenlog.calc.money import rates_on
from kitchenlog.calc.numbers import ONE, ZERO, total
from kitchenlog.calc.product_shares import Product, Products

COIN_PLACES = 2  # until the cooperative says otherwise
_EXPENSE_PART: dict[str, Literal["fuel", "overhead"]] = {
    "fuel": "fuel",
    "overhead": "overhead",
}
_OVERHEAD_BY: dict[str, OverheadBy] = {
    "batch": "batch",
    "labour_hour": "labour_hour",
    "kg": "kg",
}
_PERCENT_OF: dict[str, PercentOf] = {
    "materials": "materials",
    "labour": "labour",
    "materials_and_labour": "materials_and_labour",
}


@dataclass(frozen=True, kw_only=True)
class Item:
    """One thing that costs, what it is of, and what is not known of it."""

    what: UsedLot | Labour | Expense | Surcharge
    of: str
    lacking: tuple[Lacking, ...] = ()
    material: str | None = None
    amount: Decimal | None = None
    unit: str | None = None
    minutes: Decimal | None = None
    entries: tuple[str, ...] = ()


@dataclass(kw_only=True)
class CostWalk:
    """Works out batches over sheets, each once."""

    cooperative: str
    sheets: Sheets
    currency: str | None = None
    places: int = COIN_PLACES
    _known: dict[str, OfBatch] = field(default_factory=dict)

    def __post_init__(self) -> None:
        defined = self.sheets.get(f"cooperative:{self.cooperative}", {})
        fields = object_in(defined, "fields") or {}
        self.currency = text_in(fields, "currency")
        places = fields.get("currency_places")
        self.places = places if isinstance(places, int) else COIN_PLACES

    def items_of(
        self, batch: str, way: tuple[str, ...], seen: Mapping[str, Decimal] | None = None
    ) -> list[Item]:
        """All that costs in a batch, in the order of its parts."""
        state = self.sheets.get(f"batch:{batch}", {})
        sheet = self.sheets.get(f"cost:{batch}", {})
        rates = self._rates(text_in(state, "started_on"))
        labour = _labour_items(items_in(sheet, "labour"), rates)
        lots = (
            [self._lot_item(each, way) for each in items_in(state, "lots_in")]
            if seen is None
            else [self._seen_item(material, cost) for material, cost in seen.items()]
        )
        return [
            *lots,
            *labour,
            *(self._expense_item(each) for each in items_in(sheet, "expenses")),
            *_overhead_items(rates, state, labour),
            *_surcharge_items(rates, lots, labour),
            *map(_by_product_item, self.products_of(batch).by_products),
        ]

    def products_of(self, batch: str) -> Products:
        """The lots that came out, and how they share its cost."""
        made, cost = (self.sheets.get(f"{name}:{batch}", {}) for name in ("batch", "cost"))
        return Products.of(made, cost, self.currency)

    def cost_of(self, batch: str, way: tuple[str, ...]) -> OfBatch:
        """The cost of a batch whose product is used in another, less its by-products, to 8
        places."""
        subject = f"batch:{batch}"
        if subject in way:
            return OfBatch(cost=None, lacking=(_lacks("circle", batch),))
        if batch not in self._known:
            items = self.items_of(batch, (*way, subject))
            made = self.sum_of(items, Packs(good=None, filled=None), LOT_PLACES)
            lacking = tuple(each for item in items for each in item.lacking)
            self._known[batch] = OfBatch(cost=made.total, lacking=lacking)
        return self._known[batch]

    @staticmethod
    def sum_of(items: Sequence[Item], packs: Packs, places: int) -> BatchCost:
        """Their cost by line, part and pack; lines of what is known, in the order of items."""
        return batch_cost(
            [item.what for item in items if isinstance(item.what, UsedLot)],
            labour=[item.what for item in items if isinstance(item.what, Labour)],
            expenses=[i.what for i in items if isinstance(i.what, Expense | Surcharge)],
            packs=packs,
            places=places,
        )

    def _rates(self, on: str | None) -> Body:
        sheet = self.sheets.get(f"rates:{self.cooperative}", {})
        return {} if on is None else rates_on(sheet, on)

    def _lot_item(self, lot_in: Body, way: tuple[str, ...]) -> Item:
        code, unit = text_in(lot_in, "lot") or "", text_in(lot_in, "unit")
        material = text_in(lot_in, "material")
        amount = decimal_in(lot_in, "amount") or ZERO
        worths = Worths(sheets=self.sheets, currency=self.currency, cost_of=self.cost_of)
        worth = worths.worth_of(code, way)
        lacking = tuple(
            Lacking(what=each["what"], of=each["of"], through=code) for each in worth.lacking
        )
        if not lacking and worth.unit != unit:
            lacking = (Lacking(what="unit", of=code, through=code),)
        used = used_lot(worth, code, amount)
        if self._is_packaging(material):
            used = replace(used, part="packs")
        if lacking:
            used = replace(used, price=None)
        return Item(
            what=used, of=code, lacking=lacking, material=material, amount=amount, unit=unit
        )

    def _seen_item(self, material: str, cost: Decimal) -> Item:
        used = UsedLot(
            part="packs" if self._is_packaging(material) else "materials",
            lot=material,
            amount=ONE,
            price=cost,
            of_amount=ONE,
        )
        return Item(what=used, of=material, material=material)

    def _is_packaging(self, material: str | None) -> bool:
        fields = object_in(self.sheets.get(f"material:{material}", {}), "fields") or {}
        return text_in(fields, "sort") == "packaging"

    def _expense_item(self, row: Body) -> Item:
        entry, part = text_in(row, "entry") or "", text_in(row, "part")
        amount = decimal_in(row, "amount")
        lacking: tuple[Lacking, ...] = ()
        if amount is None:
            lacking = (_lacks("amount", entry),)
        elif self.currency is not None and text_in(row, "currency") != self.currency:
            amount, lacking = None, (_lacks("currency", entry),)
        return Item(
            what=Expense(
                part=_EXPENSE_PART.get(part or "", "other"),
                name=entry,
                amount=amount,
            ),
            of=text_in(row, "says") or part or "other",
            lacking=lacking,
            entries=(entry,),
        )


def _labour_items(rows: Sequence[Body], rates: Body) -> list[Item]:
    """Minutes by who worked and at which pay, the first first."""
    groups: dict[tuple[str, str | None, bool], list[Body]] = {}
    for row in rows:
        who = text_in(row, "member") or text_in(row, "name") or ""
        pay = text_in(row, "pay_per_hour") or text_in(rates, "pay_per_hour")
        groups.setdefault((who, pay, row.get("is_paid") is not False), []).append(row)
    items = []
    for (who, pay, is_paid), group in groups.items():
        minutes = total(decimal_in(row, "minutes") or ZERO for row in group)
        rate = None if pay is None else decimal_in({"pay": pay}, "pay")
        items.append(
            Item(
                what=Labour(member=who, minutes=minutes, rate_per_hour=rate, is_paid=is_paid),
                of=who,
                lacking=() if rate is not None else (_lacks("rate", who),),
                minutes=minutes,
                entries=tuple(text_in(row, "entry") or "" for row in group),
            )
        )
    return items


def _overhead_items(rates: Body, state: Body, labour: Sequence[Item]) -> list[Item]:
    """The overhead in force; by the hour or kg it is not known before those are."""
    row = object_in(rates, "overhead") or {}
    by, rate = _OVERHEAD_BY.get(text_in(row, "by") or ""), decimal_in(row, "rate")
    if by is None or rate is None:
        return []
    minutes = [item.minutes for item in labour if item.minutes is not None]
    quantity: Decimal | None = ONE
    if by == "labour_hour":
        quantity = total(minutes) if minutes else None
    elif by == "kg":
        quantity = decimal_in(object_in(state, "balance") or {}, "good_out")
    lacking = () if quantity is not None else (_lacks("amount", f"overhead:{by}"),)
    return [Item(what=overhead(by, rate, quantity), of=by, lacking=lacking)]


def _surcharge_items(rates: Body, lots: Sequence[Item], labour: Sequence[Item]) -> list[Item]:
    """An overhead in percent of what else costs; not known before all of that is."""
    row = object_in(rates, "overhead") or {}
    of, percent = _PERCENT_OF.get(text_in(row, "percent_of") or ""), decimal_in(row, "rate")
    if text_in(row, "by") != "percent" or of is None or percent is None:
        return []
    base = [*(lots if of != "labour" else ()), *(labour if of != "materials" else ())]
    is_open = any(item.lacking for item in base)
    return [
        Item(
            what=Surcharge(name=of, percent=None if is_open else percent, of=of),
            of=of,
            lacking=(_lacks("amount", f"overhead:{of}"),) if is_open else (),
        )
    ]


def _by_product_item(each: Product) -> Item:
    """What a by-product is worth lowers the cost; unknown, the cost is not."""
    return Item(
        what=Expense(part="by_products", name=each.lot, amount=each.value),
        of=each.lot,
        lacking=() if each.value is not None else (_lacks("value", each.lot),),
        material=text_in(each.rows[0], "material"),
        amount=each.amount,
        unit=each.unit,
    )


def _lacks(what: str, of: str) -> Lacking:
    return Lacking(what=what, of=of, through=None)
