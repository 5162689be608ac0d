"""The four weeks: what is set up, and who does what on which day of the week."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from random import Random
from typing import Any

from demo_data import runs
from demo_data.checks import check_instruments
from demo_data.costs import write_costs
from demo_data.diary import Body, Diary, House
from demo_data.drills import practise
from demo_data.fills import weigh_packs
from demo_data.kitchens import Kitchens
from demo_data.logs import log_temperatures
from demo_data.market import Market, StallDay
from demo_data.mishaps import Mishaps
from demo_data.shelf import Shelf
from demo_data.store import Store
from demo_data.story import SEED, Row, Story, read_story

DAYS = 28
LAST = DAYS - 1  # the day before the anchor: a demo loaded early in the morning knows no future
B01_DAY = 18
MONDAY, TUESDAY, WEDNESDAY, THURSDAY, FRIDAY, SATURDAY, SUNDAY = range(7)


def first_day(anchor: date) -> date:
    """The day on which the story of this anchor begins."""
    return anchor - timedelta(days=DAYS)


def anchor_of(begun_on: date) -> date:
    """The anchor of a story that began on this day."""
    return begun_on + timedelta(days=DAYS)


def four_weeks(house: House, *, anchor: date) -> dict[str, list[dict[str, Any]]]:
    """By login, all entries of the four weeks before the anchor, as they are handed over."""
    weeks = Weeks(read_story(), house, anchor)
    for number in range(DAYS):
        weeks.live(number)
    practise(weeks.diary, begins_on=weeks.begins_on)
    check_instruments(weeks.diary, weeks.story, begins_on=weeks.begins_on)
    weigh_packs(weeks.diary, weeks.story, begins_on=weeks.begins_on)
    write_costs(weeks.diary, weeks.story, begins_on=weeks.begins_on, b01=weeks.b01)
    log_temperatures(weeks.diary, weeks.story)
    return weeks.diary.entries()


class Weeks:
    """One day after the other, by the day of the week; nothing depends on the clock."""

    def __init__(self, story: Story, house: House, anchor: date) -> None:
        self.story = story
        self.begins_on = first_day(anchor)
        # By the day of the week only: so there are seven stories, and tests have read them all.
        self.chance = Random(f"{SEED} {anchor.weekday()}")  # noqa: S311 a story, not a secret
        self.diary = Diary(house, anchor=anchor, zone=story.zone)
        self.store = Store(story, self.diary, Shelf())
        self.market = Market(self.store, self.chance)
        self.kitchens = self._set_up()
        self.b01 = ""  # the id of the worked batch, once it is made
        self.mishaps = Mishaps(self.store, self.market, begins_on=self.begins_on)

    def live(self, number: int) -> None:
        """Day `number` of the story, from the first delivery to the last count."""
        on = self.begins_on + timedelta(days=number)
        if number in _DELIVERIES:
            self._dry_goods(number)
        self.mishaps.morning(number)
        weekday = on.weekday()
        if weekday in (WEDNESDAY, SUNDAY):
            self._steps_stall(on, weekday)
        if weekday == SATURDAY:
            self._square_stall(number, on)
        if number > 0:
            self._cook(number, weekday)
        if number == LAST:
            self._under_way(number)

    def _at(self, number: int, hour: int, minute: int = 0) -> datetime:
        on = self.begins_on + timedelta(days=number)
        return datetime.combine(on, time(hour, minute), self.diary.zone)

    def _dry_goods(self, number: int) -> None:
        """What keeps comes twice, in bulk; the second time before any kitchen begins."""
        hour = 9 if number == 0 else 5
        for minute, (material, amount) in enumerate(_DELIVERIES[number].items()):
            at = self._at(number, hour, minute * 2)
            lot = f"{material[:2].upper()}{number:02d}-{minute + 1}"
            self.store.receive("bettina", material, amount, at, their_lot=lot)
        if number > 0:
            self.store.top_up("bettina", "sugar", self._at(number, hour, 50))

    def _fresh(self, number: int, by: str, deliveries: Mapping[str, str]) -> None:
        for minute, (material, amount) in enumerate(deliveries.items()):
            at = self._at(number, 7, 5 + minute)
            lot = f"{self.begins_on.isocalendar().week}-{number}"
            self.store.receive(by, material, amount, at, their_lot=lot)

    def _cook(self, number: int, weekday: int) -> None:
        if weekday == TUESDAY:
            self._jam_and_biscuits(number)
        elif weekday == THURSDAY:
            self._pickle(number)
        elif weekday == FRIDAY:
            self._friday(number)
        if number == B01_DAY:
            self._fresh(number, "devan", {"mango": "15.00"})
            b01 = runs.b01(self.story, by="devan", at=self._at(number, 13, 30))
            self.b01 = self.kitchens.make(b01)

    def _jam_and_biscuits(self, number: int) -> None:
        self._fresh(number, "ilsa", {"mango": "16.0", "egg": "20"})
        jam = runs.jam(self.story, self.chance, by="ilsa", at=self._at(number, 9))
        self.kitchens.make(self.mishaps.in_jam(jam))
        at = self._at(number, 15)
        self.kitchens.make(runs.biscuits(self.story, self.chance, by="marisol", at=at))

    def _pickle(self, number: int) -> None:
        self._fresh(number, "noor", {"cucumber": "7.5", "garlic": "0.3"})
        pickle = runs.pickle(self.story, self.chance, by="noor", at=self._at(number, 10))
        if number == LAST:  # its pH can be read tomorrow only
            pickle = replace(pickle, is_finished=False, read={})
        self.kitchens.make(self.mishaps.in_pickle(pickle))

    def _friday(self, number: int) -> None:
        note = f"D-{number + 1:02d}"
        at = self._at(number, 14)
        self.market.dispatch("mango-jam", 12, "seven-lanterns", at, document=f"{note}-1")
        self.market.dispatch("cucumber-pickle", 6, "corner-shop", at, document=f"{note}-2")
        self.market.dispatch("coconut-biscuits", 8, "school-kitchen", at, document=f"{note}-3")
        at = self._at(number, 8)
        biscuits = runs.biscuits(self.story, self.chance, by="marisol", at=at)
        self.kitchens.make(self.mishaps.in_biscuits(biscuits))
        if number < LAST:
            self._fresh(number, "devan", {"banana": "12.5"})
            at = self._at(number, 14, 30)
            banana = runs.banana(self.story, self.chance, by="devan", at=at)
            self.kitchens.make(self.mishaps.in_banana(banana))

    def _under_way(self, number: int) -> None:
        """Trays that are in the dryer on the anchor day."""
        self._fresh(number, "noor", {"banana": "12.5"})
        at = self._at(number, 18)
        banana = runs.banana(self.story, self.chance, by="noor", at=at)
        read = {name: value for name, value in banana.read.items() if name != "dry"}
        self.kitchens.make(replace(banana, is_finished=False, read=read))

    def _steps_stall(self, on: date, weekday: int) -> None:
        """What is not sold stays in the locked box under the stall."""
        stall = StallDay(seller="joram", place="steps-stall", on=on, packs=8, busy=18)
        self.market.open_stall(stall)
        self.market.sell(stall)
        if weekday == SUNDAY:
            self.market.count("joram", "steps-stall", self.market.at(stall, 13, 0))
            self.market.count("bettina", "store", self.market.at(stall, 17, 0))

    def _square_stall(self, number: int, on: date) -> None:
        stall = StallDay(seller="marisol", place="square-stall", on=on, packs=16, busy=32)
        self.market.open_stall(stall)
        sales = self.market.sell(stall)
        self.mishaps.at_the_stall(number, stall, sales)
        self.market.close_stall(stall)

    def _set_up(self) -> Kitchens:
        """Definitions and recipe versions, all written on the first morning."""
        at = self._at(0, 6)
        for kind, body in _definitions(self.story, self.diary.house.cooperative):
            at += timedelta(minutes=1)
            self.diary.write("ilsa", kind, body, at)
        versions = {}
        for recipe in self.story.recipes.values():
            for body in _versions_of(recipe):
                at += timedelta(minutes=4)
                written = self.diary.write("ilsa", "recipe_published", body, at)
                versions[recipe["recipe"]] = written.id
        return Kitchens(
            story=self.story,
            diary=self.diary,
            store=self.store,
            versions=versions,
            chance=Random(f"{SEED} repeats {at.weekday()}"),  # noqa: S311 a story, not a secret
        )


_PUBLISHED = (
    "recipe", "number", "name", "product", "makes", "packs", "lines", "steps",
    "target_solids_percent", "pack_sizes", "does_not_scale", "life",
)  # fmt: skip

_DELIVERIES: Mapping[int, Mapping[str, str]] = {
    0: {
        "sugar": "40", "pectin": "0.5", "citric-acid": "1.0", "vinegar": "20", "salt": "5",
        "mustard-seed": "1.0", "flour": "25", "butter": "6.0", "coconut": "4.0", "egg": "30",
        "jar": "330", "bag": "200", "label": "800",
    },
    14: {
        "sugar": "40", "butter": "6.0", "coconut": "3.0", "egg": "30", "jar": "300",
        "bag": "160",
    },
}  # fmt: skip


def _versions_of(recipe: Row) -> list[Body]:
    """The version batches follow, after the one `before` it where the story tells of one."""
    body: Body = {name: recipe[name] for name in _PUBLISHED if name in recipe}
    if "before" not in recipe:
        return [body]
    before = recipe["before"]
    lines = [
        {**line, "amount": {**line["amount"], "amount": before["amounts"][line["line"]]}}
        if line["line"] in before["amounts"]
        else line
        for line in recipe["lines"]
    ]
    steps = [step for step in recipe["steps"] if step["step"] not in before["without_steps"]]
    return [{**body, "number": before["number"], "lines": lines, "steps": steps}, body]


def _definitions(story: Story, cooperative: str) -> list[tuple[str, Body]]:
    about: Body = {**story.cooperative, "cooperative": cooperative}
    del about["handle"]
    rows: list[tuple[str, Row]] = [("cooperative_defined", about)]
    rows += [("place_defined", row) for row in story.places]
    rows += [("instrument_defined", row) for row in story.instruments.values()]
    rows += [("material_defined", row) for row in story.materials.values()]
    rows += [("source_defined", row) for row in story.sources]
    rows += [("recipient_defined", row) for row in story.recipients]
    return [
        (kind, {name: value for name, value in row.items() if name != "bought"})
        for kind, row in rows
    ]
