"""Every way an entry is refused, each with one sentence: what, where, what would be right."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping


@dataclasses.dataclass(frozen=True)
class Refusal:
    """What a person can put right. It never repeats what was typed: that may be unstorable.

    `key` names the sentence, `field` is the path in the body (`lines[2].amount.unit`), `params`
    fill the sentence.
    """

    key: str
    field: str
    params: Mapping[str, str] = dataclasses.field(default_factory=dict)


SENTENCES: dict[str, str] = {
    "entry.too_deep": "{field} holds groups nested deeper than {most}; nest fewer.",
    "entry.text_too_long": "{field} holds a text longer than {most} characters; shorten it.",
    "entry.not_exact": "{field} holds a number with a point or an exponent; write it as text.",
    "kind.unknown": "{field} is not a kind of entry known here; update the app.",
    "kind.about_entries": "{field} is a correction or void; name the kind of the first entry.",
    "version.wrong": "{field} is not a version of this kind; write a whole number from 1.",
    "group.wrong": "{field} is not a group of fields; fill in its fields.",
    "list.wrong": "{field} is not a list; write one.",
    "list.too_short": "{field} has too few items; give at least {least}.",
    "list.too_long": "{field} has too many items; give at most {most}.",
    "field.missing": "{field} is missing; fill it in.",
    "field.unknown": "{field} is not a field of this kind of entry; leave it out.",
    "field.one_of": "{field}: exactly one of {fields} is needed; fill in one.",
    "field.together": "{field} is missing; it is needed together with {partner}.",
    "text.wrong": "{field} is not a text; write words.",
    "text.blank": "{field} is empty; write something or leave it out.",
    "text.too_long": "{field} is too long; use at most {most} characters.",
    "text.unstorable": "{field} holds a character that cannot be stored; type it again.",
    "letters.wrong": "{field} is not a short name; write 1 to {most} capital letters, A to Z.",
    "code.wrong": "{field} is not a lot code; write capitals, digits and hyphens, at most 40.",
    "id.wrong": "{field} does not name anything set up; choose it from the list.",
    "uuid.wrong": "{field} is not an id; write a UUID in lower case.",
    "subject.wrong": "{field} is not a subject; write its type and its id, such as lot:MJ-1.",
    "decimal.wrong": "{field} is not a number; write digits with one point at most, as 12.50.",
    "decimal.too_many_digits": "{field} has too many digits; write at most {most}.",
    "decimal.too_many_places": "{field} is too fine; round it to {most} places.",
    "number.too_small": "{field} is too small; write {least} or more.",
    "number.too_large": "{field} is too large; write {most} or less.",
    "whole.wrong": "{field} is not a whole number; write one without a point.",
    "unit.unknown": "{field} is not a unit known here; choose one from the list.",
    "unit.wrong_measure": "{field} is a unit of something else; choose a unit of {measures}.",
    "day.wrong": "{field} is not a day; write year, month and day, as in 2026-11-10.",
    "day.out_of_range": "{field} lies outside the years 2000 to 2100; correct the year.",
    "moment.wrong": "{field} is not a time; write it as in 2026-11-10T08:15:00.000Z.",
    "zone.unknown": "{field} is not a time zone; choose one such as Europe/Lisbon.",
    "choice.unknown": "{field} is not one of the choices; choose {choices}.",
    "choice.twice": "{field} names the same choice twice; name it once.",
    "flag.wrong": "{field} is neither yes nor no; choose one.",
    "changes.none": "{field} changes nothing; change at least one field.",
}


def sentence(refusal: Refusal, *, named: str | None = None) -> str:
    """The sentence of a refusal; `named` is the name a person knows the field by."""
    where = named or refusal.field or "The entry"
    return SENTENCES[refusal.key].format(field=where, **refusal.params)


def quarantine_code(refusal: Refusal) -> str:
    """Which of the wire's codes (R31) an entry is kept aside under when it is refused so."""
    return "unknown_kind" if refusal.key == "kind.unknown" else "unreadable"
