"""What goes wrong in the four weeks, each once, and how the members put it right."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from decimal import Decimal

from demo_data.diary import Body, Written
from demo_data.market import Market, StallDay
from demo_data.runs import Run
from demo_data.shelf import Lot
from demo_data.store import Store, quantity

REFUSED_DAY, SPOILED_DAY, CHANGED_DAY, RETURNED_DAY = 8, 11, 16, 20
THIRD_WEEK_FROM, LAST_WEEK_FROM = 14, 21
OVERSOLD = Decimal(3)


class Mishaps:
    """Keeps in mind what has happened already."""

    def __init__(self, store: Store, market: Market, *, begins_on: date) -> None:
        self.store = store
        self.market = market
        self.says = store.story.says
        self._begins_on = begins_on
        self._made: set[str] = set()

    def morning(self, number: int) -> None:
        """What happens in the store, on fixed days."""
        if number == REFUSED_DAY:
            self._refused(self._at(number, 6, 40))
        if number == SPOILED_DAY:
            loss = {"place": "store", "reason": "spoiled", "stage": "store"}
            loss |= {"note": self.says["spoiled_mango"]}
            self.store.lose("ilsa", "mango", Decimal(700), self._at(number, 16), loss=loss)
        if number == CHANGED_DAY:
            self._price_goes_up(self._at(number, 18))
        if number == RETURNED_DAY:
            self._came_back(self._at(number, 15))

    def in_jam(self, run: Run) -> Run:
        """In the first jam the tare of the sugar is forgotten."""
        return replace(run, forgets_tare_of="sugar") if self._is_first("tare") else run

    def in_pickle(self, run: Run) -> Run:
        """In the second pickle the salt is weighed on a scale too coarse for it."""
        if self._is_first("first pickle") or not self._is_first("coarse scale"):
            return run
        nets = {**run.nets, "salt": Decimal(200)}
        return replace(run, nets=nets, on_scale={"salt": "hanging-scale"})

    def in_biscuits(self, run: Run) -> Run:
        """In the second biscuits there is too little flour."""
        if self._is_first("first biscuits") or not self._is_first("short of flour"):
            return run
        return replace(run, nets={**run.nets, "flour": Decimal(1942)})

    def in_banana(self, run: Run) -> Run:
        """In the first dried banana the dryer is too cool at first."""
        if not self._is_first("cool dryer"):
            return run
        read = {**run.read, "dryer": Decimal(52)}
        return replace(run, read=read, action={"dryer": self.says["dryer_low"]})

    def at_the_stall(self, number: int, stall: StallDay, sales: Sequence[Written]) -> None:
        """A broken pack and a sample; later a sale tapped twice and lots sold below nothing.

        In the third week the oversold lot is explained, in the last one it waits for somebody.
        """
        self._broken_and_tasted(stall)
        at = self.market.at(stall, 14, 0)
        if number >= THIRD_WEEK_FROM:
            if self._is_first("sold twice"):
                self._sold_twice(stall, sales[-2])
            lot = self._oversold(stall, sales)
            if number < LAST_WEEK_FROM:
                self._explained(stall, lot, at)
        is_short = bool(sales) and self._is_first("a pack is missing")
        self.market.count(stall.seller, stall.place, at, is_short=is_short)

    def _refused(self, at: datetime) -> None:
        why = self.says["refused_mango"]
        self.store.refuse("devan", "mango", "18.0", at, why=why)
        receipt = self.store.receive("devan", "citric-acid", "0.5", at, their_lot="CA08-7")
        body = {**receipt.body, "their_lot": "CA08-1"}
        reason, later = self.says["wrong_mark"], at + timedelta(hours=5)
        self.store.diary.correct("ilsa", receipt, body=body, reason=reason, at=later)

    def _price_goes_up(self, at: datetime) -> None:
        price = {"from": self.market.prices["dried-banana"], "to": "65.00"}
        body: Body = {"material": "dried-banana", "changes": {"price": price}}
        self.store.diary.write("bettina", "material_changed", body, at)
        self.market.prices["dried-banana"] = "65.00"

    def _came_back(self, at: datetime) -> None:
        """Two jars that a shop had are returned unfit; they never stand in stock again."""
        lots = self.dispatched("corner-shop")
        for code in lots[:1]:
            body = {
                "lot": code,
                "amount": quantity(Decimal(2), "pc"),
                "place": "store",
                "on": at.date().isoformat(),
                "recipient": "corner-shop",
                "condition": "unfit",
                "reason": self.says["lid"],
            }
            self.store.diary.write("bettina", "return", body, at)

    def dispatched(self, recipient: str) -> list[str]:
        """Codes of the lots a business has had so far."""
        return [
            each.body["lot"]
            for each in self.store.diary.of_kind("dispatch")
            if each.body["recipient"] == recipient
        ]

    def _broken_and_tasted(self, stall: StallDay) -> None:
        for reason, word, minute in (("breakage", "broken", 35), ("sample", "sample", 41)):
            product = "mango-jam" if reason == "breakage" else "coconut-biscuits"
            loss = {"place": stall.place, "reason": reason, "stage": "stall"}
            loss |= {"note": self.says[word]}
            at = self.market.at(stall, 8, minute)
            self.store.lose(stall.seller, product, Decimal(1), at, loss=loss)

    def _sold_twice(self, stall: StallDay, sale: Written) -> None:
        lot = self.store.shelf.lot(sale.body["lot"])
        amount = Decimal(sale.body["amount"]["amount"])
        again = self.market.sale(stall, lot, amount, sale.happened_at + timedelta(seconds=2))
        reason, later = self.says["sold_twice"], sale.happened_at + timedelta(minutes=4)
        self.store.diary.void(stall.seller, again, reason=reason, at=later)
        self.store.shelf.put(lot, stall.place, amount)

    def _oversold(self, stall: StallDay, sales: Sequence[Written]) -> Lot:
        """More is sold of a lot than the record has at the stall; each time of another one."""
        sold = [sale.body["lot"] for sale in sales if sale.body["lot"] not in self._made]
        lot = self.store.shelf.lot(sold[-1])
        self._made.add(lot.code)
        there = self.store.shelf.amount(lot.code, stall.place)
        at = self.market.at(stall, 13, 40)
        self.market.sale(stall, lot, there + OVERSOLD, at)
        note = {"subject": f"lot:{lot.code}", "says": self.says["from_the_box"]}
        self.store.diary.write(stall.seller, "note", note, at + timedelta(minutes=2))
        return lot

    def _explained(self, stall: StallDay, lot: Lot, at: datetime) -> None:
        """The stall is counted empty of that lot, and a coordinator settles the finding."""
        body = {"lot": lot.code, "amount": quantity(Decimal(0), "pc"), "place": stall.place}
        self.store.diary.write(stall.seller, "count", body, at)
        self.store.shelf.put(lot, stall.place, OVERSOLD)
        settled = {
            "subject": f"lot:{lot.code}",
            "finding": f"negative:{stall.place}",
            "decision": "explained",
            "reason": self.says["explained"],
        }
        self.store.diary.write("bettina", "finding_settled", settled, at + timedelta(hours=5))

    def _is_first(self, what: str) -> bool:
        is_first = what not in self._made
        self._made.add(what)
        return is_first

    def _at(self, number: int, hour: int, minute: int = 0) -> datetime:
        on = self._begins_on + timedelta(days=number)
        return datetime.combine(on, time(hour, minute), self.store.diary.zone)
