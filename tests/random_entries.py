"""Entries drawn from the table of kinds by a seed: few things and few instants, so that they
often meet, and some that correct, or take back, one another."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import UTC, datetime, timedelta
from random import Random
from typing import Any

from kitchenlog.calc.units import UNITS
from kitchenlog.entries.kinds import KINDS, Field, Kind
from kitchenlog.entries.links import ABOUT_ENTRIES
from tests.writing import Pen, made_id

Entry = dict[str, Any]

DEFINING = tuple(
    name
    for name in KINDS
    if name.endswith(("_defined", "_changed")) or name == "recipe_published"
)
HAPPENING = tuple(name for name in KINDS if name not in (*DEFINING, *ABOUT_ENTRIES))

_START = datetime(2026, 6, 5, 8, tzinfo=UTC)
_INSTANTS = 4
_DAYS = ("2026-06-04", "2026-06-05", "2026-06-06")
_CODES = ("A1", "B2", "C3")
_UNITS = {"mass": ("g", "kg", "oz"), "volume": ("mL", "L"), "count": ("pc",)}
_WORDS = ("fruit", "pot", "g", "degC", "pH", "mL", "seen")
# Lines and steps are named by words: of many, an entry about one would seldom find it.
_NAMED = {"line": ("1", "2"), "step": ("s1", "s2")}


class Hand:
    """Draws bodies and entries; the same seed draws the same."""

    def __init__(self, seed: int, pens: Sequence[Pen]) -> None:
        self.chance = Random(seed)
        self.pens = pens
        self.made: list[Entry] = []
        self.member = str(pens[0].phone.member.pk)

    def history(self, count: int, *, of: Sequence[str], corrected: float = 0.3) -> list[Entry]:
        """So many entries, in the order they were written; some correct earlier ones."""
        for _ in range(count):
            if self.made and self.chance.random() < corrected:
                self.made.append(self._about(self.chance.choice(self.made)))
            else:
                self.made.append(self._entry(self.chance.choice(of)))
        return self.made

    def _entry(self, kind: str) -> Entry:
        at = _START + timedelta(minutes=self.chance.randrange(_INSTANTS))
        pen = self.chance.choice(self.pens)
        return pen.write(kind, self.body(KINDS[kind]), at=at, version=KINDS[kind].version)

    def _about(self, named: Entry) -> Entry:
        pen = self.chance.choice(self.pens)
        at = datetime.fromisoformat(named["happened_at"])
        others = [each["id"] for each in self.made if each["kind"] in ABOUT_ENTRIES]
        if self.chance.random() < 0.4:
            entry = pen.void(named, at=at)
        else:
            of_kind = KINDS[named["body"].get("of_kind", named["kind"])]
            entry = pen.correction(named, self.body(of_kind), at=at)
            entry["body"]["of_version"] = of_kind.version
        if others and self.chance.random() < 0.3:
            entry["body"]["instead_of"] = [{"entry": self.chance.choice(others)}]
        return entry

    def body(self, kind: Kind) -> dict[str, Any]:
        """A body the table takes."""
        body = self._fields(kind.fields)
        for one in kind.one_of[1:]:
            body.pop(one, None)
        if kind.one_of and kind.one_of[0] not in body:
            first = next(each for each in kind.fields if each.name == kind.one_of[0])
            body[first.name] = self._value(first)
        if kind.one_of and self.chance.random() < 0.5:
            other = next(each for each in kind.fields if each.name == kind.one_of[1])
            del body[kind.one_of[0]]
            body[other.name] = self._value(other)
        for with_, needed in kind.together:
            if with_ in body and needed not in body:
                field = next(each for each in kind.fields if each.name == needed)
                body[needed] = self._value(field)
        return body

    def _fields(self, fields: Sequence[Field]) -> dict[str, Any]:
        return {
            each.name: self._value(each)
            for each in fields
            if each.is_required or self.chance.random() < 0.6
        }

    def _value(self, field: Field) -> Any:
        if field.name in _NAMED and field.type == "text":
            return self.chance.choice(_NAMED[field.name])
        if field.name == "decides" and self.made:
            return [{"entry": self.chance.choice(self.made)["id"]} for _ in range(2)]
        return _DRAWN[field.type](self, field)

    def _decimal(self, field: Field) -> str:
        least, most = float(field.least or "0"), float(field.most or "0")
        drawn = self.chance.choice(("50", "53", "20.5", "4.6", "1", "100", "0", "7.01"))
        return drawn if least <= float(drawn) <= most else str(field.least)

    def _whole(self, field: Field) -> int:
        least = int(field.least or "0")
        return self.chance.randint(least, min(int(field.most or "0"), least + 2))

    def _id(self, field: Field) -> str:
        if field.to == "skill":
            return self.member
        if field.to == "instrument":
            return self.chance.choice(("i1", "i1", "i2"))
        return made_id(f"{field.to} {self.chance.choice('112')}")

    def _quantity(self, field: Field) -> dict[str, str]:
        units = [unit for each in field.measures for unit in _UNITS[each]]
        assert set(units) <= set(UNITS)
        return {"amount": self._decimal(field), "unit": self.chance.choice(units)}

    def _list(self, field: Field) -> list[Any]:
        most = min(field.most_items or 0, field.least_items + 2)
        count = self.chance.randint(max(field.least_items, 1), most)
        return [self._fields(field.fields) for _ in range(count)]

    def _choices(self, field: Field) -> list[str]:
        return sorted(self.chance.sample(field.choices, min(2, len(field.choices))))

    def _changes(self, field: Field) -> dict[str, Any]:
        """Edits of two fields; what each was is drawn, so that now and then it is right."""
        defined = KINDS[field.of_kind or ""].fields[1:]
        some = self.chance.sample(defined, 2)
        return {
            each.name: {"from": self._value(each), "to": self._value(each)} for each in some
        }

    def _subject(self, _: Field) -> str:
        return self.chance.choice(
            ("lot:A1", "instrument:i1", f"batch:{made_id('batch 1')}", "price:A1")
        )


def _lists(one: Callable[[Hand, Field], Any]) -> Callable[[Hand, Field], list[Any]]:
    return lambda hand, field: [one(hand, field) for _ in range(3)]


_DRAWN: Mapping[str, Callable[[Hand, Field], Any]] = {
    "text": lambda hand, field: hand.chance.choice(_WORDS)[: field.most_chars],
    "letters": lambda hand, field: hand.chance.choice(("EUR", "USD"))[: field.most_chars],
    "code": lambda hand, _: hand.chance.choice(_CODES),
    "id": Hand._id,
    "entry": lambda hand, _: hand.chance.choice(hand.made)["id"] if hand.made else made_id("e"),
    "subject": Hand._subject,
    "decimal": Hand._decimal,
    "decimals": _lists(Hand._decimal),
    "whole": Hand._whole,
    "wholes": _lists(Hand._whole),
    "quantity": Hand._quantity,
    "day": lambda hand, _: hand.chance.choice(_DAYS),
    "moment": lambda hand, _: f"{hand.chance.choice(_DAYS)}T08:00:00.000Z",
    "zone": lambda hand, _: hand.chance.choice(("Europe/Dublin", "Europe/Lisbon")),
    "choice": lambda hand, field: hand.chance.choice(field.choices),
    "choices": Hand._choices,
    "flag": lambda hand, _: hand.chance.random() < 0.5,
    "group": lambda hand, field: hand._fields(field.fields),
    "list": Hand._list,
    "changes": Hand._changes,
}
