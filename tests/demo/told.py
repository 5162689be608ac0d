"""The demo's entries for seven anchors, one for each day of the week, and what they fold to."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from datetime import date, timedelta
from functools import cache
from typing import Any
from uuid import UUID

from demo_data.diary import House, Phone
from demo_data.story import read_story
from demo_data.weeks import four_weeks
from kitchenlog.calc.batches import BatchState, batch_state
from kitchenlog.calc.folds import State, fold_subject
from kitchenlog.calc.instruments import InstrumentState, instrument_state
from kitchenlog.calc.record import Fact, family_roots
from kitchenlog.calc.stock import LotState, lot_state

ANCHORS = [date(2026, 11, 23) + timedelta(days=number) for number in range(7)]
ANCHOR = ANCHORS[3]
Entry = dict[str, Any]


def house() -> House:
    """The members' devices, with ids by number."""
    members = read_story().members
    phones = {
        row["login"]: Phone(str(UUID(int=number)), str(UUID(int=100 + number)), row["mark"])
        for number, row in enumerate(members, start=1)
    }
    return House(str(UUID(int=1000)), phones)


@cache
def entries(anchor: date) -> tuple[Entry, ...]:
    """All entries of the four weeks before an anchor, device by device."""
    return tuple(entry for own in four_weeks(house(), anchor=anchor).values() for entry in own)


def of_kind(anchor: date, kind: str) -> list[Entry]:
    """Those of one kind."""
    return [entry for entry in entries(anchor) if entry["kind"] == kind]


@cache
def facts_by_subject(anchor: date) -> dict[str, list[Fact]]:
    """What each fold is given, families of corrections joined."""
    return _by_subject(entries(anchor))


@cache
def instruments(anchor: date) -> dict[str, InstrumentState]:
    """Instrument sheets by subject."""
    facts = facts_by_subject(anchor)
    return {each: instrument_state(each, facts[each]) for each in _named(facts, "instrument")}


@cache
def batches(anchor: date) -> dict[str, BatchState]:
    """Batch sheets by subject, beside the sheets of their instruments."""
    facts, beside = facts_by_subject(anchor), instruments(anchor)
    return {each: batch_state(each, facts[each], beside) for each in _named(facts, "batch")}


@cache
def lots(anchor: date) -> dict[str, LotState]:
    """Lot sheets by subject."""
    facts = facts_by_subject(anchor)
    return {each: lot_state(each, facts[each]) for each in _named(facts, "lot")}


@cache
def sheets(anchor: date) -> dict[str, State]:
    """All sheets by subject."""
    facts = facts_by_subject(anchor)
    beside = instruments(anchor)
    return {each: fold_subject(each, facts[each], beside) for each in facts}


def _named(facts: Iterable[str], sort: str) -> list[str]:
    return [subject for subject in facts if subject.startswith(f"{sort}:")]


def _by_subject(told: Iterable[Entry]) -> dict[str, list[Fact]]:
    every = list(told)
    roots = family_roots({e["id"]: e["body"].get("corrects") for e in every})
    about: dict[str, set[str]] = defaultdict(set)
    for entry in every:
        about[roots[entry["id"]]].update(entry["subjects"])
    facts: dict[str, list[Fact]] = defaultdict(list)
    for seq, entry in enumerate(every, start=1):
        names = ("id", "kind", "author", "device", "device_seq", "happened_at", "local_date")
        fact = Fact(seq=seq, body=entry["body"], **{name: entry[name] for name in names})
        for subject in about[roots[entry["id"]]]:
            facts[subject].append(fact)
    return facts
