"""How the table of kinds describes a body: fields with limits, as data both languages read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Literal

FieldType = Literal[
    "text",  # a person's words
    "letters",  # capital letters A to Z, as in a lot code or a currency
    "code",  # a lot code: capital letters, digits, hyphens
    "id",  # the id part of a subject of type `to`
    "entry",  # the id of an entry
    "subject",  # a whole subject, `type:id`
    "decimal",  # a number as text, with the digits that were read
    "whole",  # a JSON integer
    "quantity",  # {"amount": decimal, "unit": unit code}
    "day",  # YYYY-MM-DD
    "moment",  # YYYY-MM-DDTHH:MM:SS.mmmZ, of the days a person may type
    "zone",  # an IANA time zone
    "choice",  # one of `choices`
    "flag",  # true or false
    "kind",  # the name of a kind that is not itself about an entry
    "group",  # an object of `fields`
    "list",  # a list of objects of `fields`
    "unit",  # the unit of a quantity; only within one
    "decimals",  # a list of decimals
    "wholes",  # a list of JSON integers
    "choices",  # a list of `choices`, each at most once
    "changes",  # {field: {"from": old, "to": new}} of the kind named in `of_kind`
    "change",  # {"from": old, "to": new} of one field; only within `changes`
    "body",  # the whole new body of the kind named in the field `of_kind`
]

Circle = Literal["member", "coordinator"]  # whose it is to write
Audience = Literal["member", "own", "coordinator"]  # who sees it; own: author and coordinator


@dataclass(frozen=True, kw_only=True)
class Field:
    """One field of a body.

    `most_chars` limits text, `most_items` lists, `digits` and `places` decimals, `least` and
    `most` numbers (inclusive); `measures` names the dimensions a quantity may have.
    """

    name: str
    type: FieldType
    is_required: bool = True
    most_chars: int | None = None
    most_items: int | None = None
    least_items: int = 0
    digits: int | None = None
    places: int | None = None
    least: str | None = None
    most: str | None = None
    to: str | None = None
    choices: tuple[str, ...] = ()
    measures: tuple[str, ...] = ()
    fields: tuple[Field, ...] = ()
    of_kind: str | None = None

    @cached_property
    def parts(self) -> Mapping[str, Field]:
        """What an object of this field holds, by name."""
        if self.type == "quantity":
            amount = replace(self, name="amount", type="decimal", is_required=True)
            unit = replace(self, name="unit", type="unit", is_required=True)
            return {"amount": amount, "unit": unit}
        return {field.name: field for field in self.fields}


NAME_CHARS = 120
SENTENCE_CHARS = 600
NOTE_CHARS = 4_000
VERSION_MOST = 9_999
AMOUNT_DIGITS = 14
AMOUNT_PLACES = 6
NUMBER_MOST = "100000000"  # of any unit in units.csv: in mg or uL it still fits 64 bits
NUMBER_LEAST = "-100000000"
MEASURES = ("mass", "volume", "count")


def text(name: str, *, most: int = NAME_CHARS, needed: bool = True) -> Field:
    """Words of a person, one to `most` characters."""
    return Field(name=name, type="text", most_chars=most, is_required=needed)


def letters(name: str, *, most: int) -> Field:
    """One to `most` capital letters."""
    return Field(name=name, type="letters", most_chars=most)


def code(name: str = "lot", *, needed: bool = True) -> Field:
    """A lot code; it is the id of the subject `lot:<code>`."""
    return Field(name=name, type="code", to="lot", is_required=needed)


def id_of(to: str, *, name: str | None = None, needed: bool = True) -> Field:
    """The id of a subject of type `to`; the field is called like the type unless named."""
    return Field(name=name or to, type="id", to=to, is_required=needed)


def entry_id(name: str, *, needed: bool = True) -> Field:
    """The id of another entry."""
    return Field(name=name, type="entry", is_required=needed)


def kind_name(name: str) -> Field:
    """The name of a kind; never that of a correction or void, which only wrap another kind."""
    return Field(name=name, type="kind")


def subject(name: str) -> Field:
    """A whole subject, `type:id`."""
    return Field(name=name, type="subject")


def decimal(
    name: str,
    *,
    least: str = NUMBER_LEAST,
    most: str = NUMBER_MOST,
    places: int = AMOUNT_PLACES,
    needed: bool = True,
) -> Field:
    """A number kept as the text that was read."""
    return Field(
        name=name,
        type="decimal",
        digits=AMOUNT_DIGITS,
        places=places,
        least=least,
        most=most,
        is_required=needed,
    )


def decimals(name: str, *, most_items: int, needed: bool = True) -> Field:
    """A list of numbers, each kept as the text that was read."""
    return replace(
        decimal(name, needed=needed), type="decimals", most_items=most_items, least_items=1
    )


def whole(name: str, *, least: int = 0, most: int, needed: bool = True) -> Field:
    """A JSON integer between two bounds."""
    return Field(name=name, type="whole", least=str(least), most=str(most), is_required=needed)


def wholes(name: str, *, least: int = 0, most: int, most_items: int) -> Field:
    """A list of JSON integers, each between two bounds."""
    one = whole(name, least=least, most=most)
    return replace(one, type="wholes", most_items=most_items, least_items=1)


def quantity(
    name: str = "amount",
    *,
    measures: tuple[str, ...] = MEASURES,
    least: str = "0",
    needed: bool = True,
) -> Field:
    """An amount with its unit; never negative unless `least` says so."""
    return Field(
        name=name,
        type="quantity",
        digits=AMOUNT_DIGITS,
        places=AMOUNT_PLACES,
        least=least,
        most=NUMBER_MOST,
        measures=measures,
        is_required=needed,
    )


def day(name: str, *, needed: bool = True) -> Field:
    """A calendar day of the cooperative's zone, 2000 to 2100."""
    return Field(name=name, type="day", is_required=needed)


def moment(name: str, *, needed: bool = True) -> Field:
    """A time in UTC to the millisecond, on a day from 2000 to 2100."""
    return Field(name=name, type="moment", is_required=needed)


def choice(name: str, *choices: str, needed: bool = True) -> Field:
    """One word out of a short list."""
    return Field(name=name, type="choice", choices=choices, is_required=needed)


def flag(name: str, *, needed: bool = True) -> Field:
    """True or false."""
    return Field(name=name, type="flag", is_required=needed)


def group(name: str, *fields: Field, needed: bool = True) -> Field:
    """An object with fields of its own."""
    return Field(name=name, type="group", fields=fields, is_required=needed)


def items(name: str, *fields: Field, most: int, least: int = 0, needed: bool = True) -> Field:
    """A list of objects."""
    return Field(
        name=name,
        type="list",
        fields=fields,
        most_items=most,
        least_items=least,
        is_required=needed,
    )


@dataclass(frozen=True, kw_only=True)
class Kind:
    """One kind of entry.

    `subjects` and `mentions` are templates over the body: `lot:{lot}`, `lot:{from[].lot}`.
    A template with a missing optional field yields nothing. `leans_on` are those mentions whose
    sheets the fold of its subjects is given too. `one_of` names fields of which
    exactly one is present; `together` names pairs of which the second must come with the first.
    """

    name: str
    says: str
    fields: tuple[Field, ...]
    subjects: tuple[str, ...]
    mentions: tuple[str, ...] = ()
    leans_on: tuple[str, ...] = ()
    version: int = 1
    written_by: Circle = "member"
    audience: Audience = "member"
    one_of: tuple[str, ...] = ()
    together: tuple[tuple[str, str], ...] = ()

    @cached_property
    def parts(self) -> Mapping[str, Field]:
        """What a body holds, by name."""
        return {field.name: field for field in self.fields}
