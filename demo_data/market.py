"""Work at the stalls and with businesses: carry out, sell, count, dispatch, take back."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from random import Random

from demo_data.diary import Body, Written
from demo_data.shelf import Lot
from demo_data.store import Store, quantity

PRODUCTS = ("mango-jam", "cucumber-pickle", "dried-banana", "coconut-biscuits")
ONE = Decimal(1)


@dataclass(frozen=True, kw_only=True)
class StallDay:
    """Who stands where on which day, with how many packs of each product at most."""

    seller: str
    place: str
    on: date
    packs: int
    busy: int  # sales in the whole morning


class Market:
    """What sellers write."""

    def __init__(self, store: Store, chance: Random) -> None:
        self.store = store
        self.chance = chance
        self.prices = {name: store.story.materials[name]["price"] for name in PRODUCTS}

    def open_stall(self, day: StallDay) -> None:
        """Packs go from the store to the stall, first expired first."""
        for number, product in enumerate(PRODUCTS):
            there = self.store.shelf.on_hand(product, day.place)
            wanted = max(Decimal(day.packs) - there, Decimal(0))
            for lot, amount in self.store.shelf.portions(product, "store", wanted):
                at = self.at(day, 7, 50 + number)
                self.store.transfer(day.seller, lot, amount, at, way=("store", day.place))

    def sell(self, day: StallDay) -> list[Written]:
        """The sales of a morning, one to three packs each, none of what is not there."""
        sales, minute = [], 0
        for _ in range(day.busy):
            minute += self.chance.randrange(3, 10)
            product = self.chance.choice(PRODUCTS)
            lots = self.store.shelf.lots(product, day.place)
            wanted = Decimal(self.chance.choice((1, 1, 1, 2, 2, 3)))
            if lots:
                lot, there = lots[0]
                at = self.at(day, 8, 30 + minute)
                sales.append(self.sale(day, lot, min(wanted, there), at))
        return sales

    def sale(self, day: StallDay, lot: Lot, amount: Decimal, at: datetime) -> Written:
        """One sale; three packs come a little cheaper."""
        body: Body = {
            "lot": lot.code,
            "amount": quantity(amount, "pc"),
            "place": day.place,
            "on": day.on.isoformat(),
            "price_each": self.prices[lot.material],
        }
        if amount == Decimal(3):
            body["discount"] = "15.00"
        self.store.shelf.take(lot.code, day.place, amount)
        return self.store.diary.write(day.seller, "sale", body, at)

    def count(self, by: str, place: str, at: datetime, *, is_short: bool = False) -> None:
        """What is seen of every product at a place; where it is short, of one a pack less."""
        for product in PRODUCTS:
            for lot, there in self.store.shelf.lots(product, place):
                seen = there - ONE if is_short else there
                is_short = False
                body = {"lot": lot.code, "amount": quantity(seen, "pc"), "place": place}
                self.store.diary.write(by, "count", body, at)
                self.store.shelf.take(lot.code, place, there - seen)

    def close_stall(self, day: StallDay) -> None:
        """What was not sold goes back to the store."""
        for number, product in enumerate(PRODUCTS):
            for lot, there in self.store.shelf.lots(product, day.place):
                at = self.at(day, 14, 20 + number)
                self.store.transfer(day.seller, lot, there, at, way=(day.place, "store"))

    def dispatch(
        self, product: str, packs: int, recipient: str, at: datetime, *, document: str
    ) -> None:
        """Packs go to a business, by name, at a tenth below the stall's price."""
        price = Decimal(self.prices[product]) * 9 / 10
        for lot, amount in self.store.shelf.portions(product, "store", Decimal(packs)):
            body = {
                "lot": lot.code,
                "amount": quantity(amount, "pc"),
                "place": "store",
                "recipient": recipient,
                "price_each": f"{price:.2f}",
                "document": document,
            }
            self.store.diary.write("bettina", "dispatch", body, at)
            self.store.shelf.take(lot.code, "store", amount)

    def at(self, day: StallDay, hour: int, minute: int) -> datetime:
        """A moment of the stall's day; minutes may run over the hour."""
        midnight = datetime.combine(day.on, time(), self.store.diary.zone)
        return midnight + timedelta(hours=hour, minutes=minute)
