"""Parse or refuse single values: each check says why a value does not fit its field.

A check is made once of its field; every push asks for thousands of values. A text is asked for
by its very type: an `Inexact` number is a `str` too, and no text that anybody wrote.
"""

from __future__ import annotations

import re
import zoneinfo
from collections.abc import Callable
from decimal import Decimal
from functools import cache

from kitchenlog.calc.numbers import parse_decimal
from kitchenlog.calc.units import UNITS
from kitchenlog.entries import forms
from kitchenlog.entries.kinds import SUBJECT_TYPES, Field
from kitchenlog.entries.refusals import Refusal

Check = Callable[[object, str], Refusal | None]  # of a value and the path where it stands


def text_check(most: int) -> Check:
    """One to `most` characters (code points) of storable text."""

    def check(value: object, at: str) -> Refusal | None:
        if type(value) is not str:
            return Refusal("text.wrong", at)
        if not forms.is_storable(value):
            return Refusal("text.unstorable", at)
        if forms.is_blank(value):
            return Refusal("text.blank", at)
        if len(value) > most:
            return Refusal("text.too_long", at, {"most": str(most)})
        return None

    return check


def matching(is_right: Callable[[str], object], key: str) -> Check:
    """A text of a certain form, else the refusal `key`."""

    def check(value: object, at: str) -> Refusal | None:
        return None if type(value) is str and is_right(value) else Refusal(key, at)

    return check


def whole_check(least: int, most: int) -> Check:
    """A JSON integer between two bounds."""

    def check(value: object, at: str) -> Refusal | None:
        if not isinstance(value, int) or isinstance(value, bool):
            return Refusal("whole.wrong", at)
        if value < least:
            return Refusal("number.too_small", at, {"least": str(least)})
        return Refusal("number.too_large", at, {"most": str(most)}) if value > most else None

    return check


def subject_check(types: tuple[str, ...]) -> Check:
    """A subject of one of these types."""
    return matching(lambda text: forms.is_subject(text, types=types), "subject.wrong")


def _text(field: Field) -> Check:
    assert field.most_chars is not None
    return text_check(field.most_chars)


def _letters(field: Field) -> Check:
    most = field.most_chars
    assert most is not None

    def check(value: object, at: str) -> Refusal | None:
        if type(value) is str and len(value) <= most and forms.CAPITALS.fullmatch(value):
            return None
        return Refusal("letters.wrong", at, {"most": str(most)})

    return check


def _of_form(form: re.Pattern[str], key: str) -> Callable[[Field], Check]:
    return lambda field: matching(form.fullmatch, key)


def _zone(field: Field) -> Check:
    return matching(
        lambda text: forms.ZONE.fullmatch(text) and text in _zones(), "zone.unknown"
    )


@cache
def _zones() -> frozenset[str]:
    return frozenset(zoneinfo.available_timezones())


def _decimal(field: Field) -> Check:
    digits, places, least, most = field.digits, field.places, field.least, field.most
    assert digits is not None and places is not None and least is not None and most is not None
    smallest, largest = parse_decimal(least), parse_decimal(most)

    def check(value: object, at: str) -> Refusal | None:
        if type(value) is not str or not forms.DECIMAL.fullmatch(value):
            return Refusal("decimal.wrong", at)
        whole, _, fraction = value.removeprefix("-").partition(".")
        if len(whole) + len(fraction) > digits:
            return Refusal("decimal.too_many_digits", at, {"most": str(digits)})
        if len(fraction) > places:
            return Refusal("decimal.too_many_places", at, {"most": str(places)})
        number = Decimal(value)
        if number < smallest:
            return Refusal("number.too_small", at, {"least": least})
        return Refusal("number.too_large", at, {"most": most}) if number > largest else None

    return check


def _whole(field: Field) -> Check:
    assert field.least is not None and field.most is not None
    return whole_check(int(field.least), int(field.most))


def _unit(field: Field) -> Check:
    right = {code for code, unit in UNITS.items() if unit.dimension in field.measures}

    def check(value: object, at: str) -> Refusal | None:
        if type(value) is str and value in right:
            return None
        if type(value) is str and value in UNITS:
            measures = " or ".join(field.measures)
            return Refusal("unit.wrong_measure", at, {"measures": measures})
        return Refusal("unit.unknown", at)

    return check


def _day(field: Field) -> Check:
    def check(value: object, at: str) -> Refusal | None:
        if type(value) is not str or not forms.is_day(value):
            return Refusal("day.wrong", at)
        if int(value[:4]) not in forms.DAY_YEARS:
            return Refusal("day.out_of_range", at)
        return None

    return check


def _moment(field: Field) -> Check:
    def check(value: object, at: str) -> Refusal | None:
        if type(value) is not str or not forms.is_moment(value):
            return Refusal("moment.wrong", at)
        if int(value[:4]) not in forms.DAY_YEARS:
            return Refusal("day.out_of_range", at)
        return None

    return check


def _choice(field: Field) -> Check:
    def check(value: object, at: str) -> Refusal | None:
        if type(value) is str and value in field.choices:
            return None
        return Refusal("choice.unknown", at, {"choices": ", ".join(field.choices)})

    return check


def _flag(field: Field) -> Check:
    return lambda value, at: None if isinstance(value, bool) else Refusal("flag.wrong", at)


VALUE_CHECKS: dict[str, Callable[[Field], Check]] = {
    "text": _text,
    "letters": _letters,
    "code": _of_form(forms.LOT_CODE, "code.wrong"),
    "id": _of_form(forms.ID, "id.wrong"),
    "entry": _of_form(forms.UUID, "uuid.wrong"),
    "subject": lambda field: subject_check(SUBJECT_TYPES),
    "zone": _zone,
    "decimal": _decimal,
    "whole": _whole,
    "unit": _unit,
    "day": _day,
    "moment": _moment,
    "choice": _choice,
    "flag": _flag,
}
