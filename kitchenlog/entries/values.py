"""Parse or refuse single values: each check says why a value does not fit its field."""

from __future__ import annotations

import zoneinfo
from collections.abc import Callable
from functools import cache

from kitchenlog.calc.numbers import parse_decimal
from kitchenlog.calc.units import UNITS
from kitchenlog.entries import forms
from kitchenlog.entries.kinds import SUBJECT_TYPES, Field
from kitchenlog.entries.refusals import Refusal

Check = Callable[[Field, object, str], Refusal | None]


def text_refusal(value: object, *, most: int, at: str) -> Refusal | None:
    """Why this is not one to `most` characters (code points) of storable text."""
    if not isinstance(value, str):
        return Refusal("text.wrong", at)
    if not forms.is_storable(value):
        return Refusal("text.unstorable", at)
    if forms.is_blank(value):
        return Refusal("text.blank", at)
    if len(value) > most:
        return Refusal("text.too_long", at, {"most": str(most)})
    return None


def _text(field: Field, value: object, at: str) -> Refusal | None:
    assert field.most_chars is not None
    return text_refusal(value, most=field.most_chars, at=at)


def _letters(field: Field, value: object, at: str) -> Refusal | None:
    assert field.most_chars is not None
    if (
        isinstance(value, str)
        and len(value) <= field.most_chars
        and forms.CAPITALS.fullmatch(value)
    ):
        return None
    return Refusal("letters.wrong", at, {"most": str(field.most_chars)})


def _code(field: Field, value: object, at: str) -> Refusal | None:
    is_code = isinstance(value, str) and forms.LOT_CODE.fullmatch(value)
    return None if is_code else Refusal("code.wrong", at)


def _id(field: Field, value: object, at: str) -> Refusal | None:
    is_id = isinstance(value, str) and forms.ID.fullmatch(value)
    return None if is_id else Refusal("id.wrong", at)


def _entry(field: Field, value: object, at: str) -> Refusal | None:
    is_uuid = isinstance(value, str) and forms.UUID.fullmatch(value)
    return None if is_uuid else Refusal("uuid.wrong", at)


def _subject(field: Field, value: object, at: str) -> Refusal | None:
    is_subject = isinstance(value, str) and forms.is_subject(value, types=SUBJECT_TYPES)
    return None if is_subject else Refusal("subject.wrong", at)


def _zone(field: Field, value: object, at: str) -> Refusal | None:
    is_zone = isinstance(value, str) and forms.ZONE.fullmatch(value) and value in _zones()
    return None if is_zone else Refusal("zone.unknown", at)


@cache
def _zones() -> frozenset[str]:
    return frozenset(zoneinfo.available_timezones())


def _decimal(field: Field, value: object, at: str) -> Refusal | None:
    if not isinstance(value, str) or not forms.DECIMAL.fullmatch(value):
        return Refusal("decimal.wrong", at)
    whole, _, fraction = value.removeprefix("-").partition(".")
    if field.digits is not None and len(whole) + len(fraction) > field.digits:
        return Refusal("decimal.too_many_digits", at, {"most": str(field.digits)})
    if field.places is not None and len(fraction) > field.places:
        return Refusal("decimal.too_many_places", at, {"most": str(field.places)})
    return _bounds_refusal(field, value, at)


def _whole(field: Field, value: object, at: str) -> Refusal | None:
    if not isinstance(value, int) or isinstance(value, bool):
        return Refusal("whole.wrong", at)
    return _bounds_refusal(field, str(value), at)


_bound = cache(parse_decimal)  # the table has few, and every number asks for two


def _bounds_refusal(field: Field, value: str, at: str) -> Refusal | None:
    number = parse_decimal(value)
    if field.least is not None and number < _bound(field.least):
        return Refusal("number.too_small", at, {"least": field.least})
    if field.most is not None and number > _bound(field.most):
        return Refusal("number.too_large", at, {"most": field.most})
    return None


def _unit(field: Field, value: object, at: str) -> Refusal | None:
    unit = UNITS.get(value) if isinstance(value, str) else None
    if unit is None:
        return Refusal("unit.unknown", at)
    if unit.dimension not in field.measures:
        return Refusal("unit.wrong_measure", at, {"measures": " or ".join(field.measures)})
    return None


def _day(field: Field, value: object, at: str) -> Refusal | None:
    if not isinstance(value, str) or not forms.is_day(value):
        return Refusal("day.wrong", at)
    if int(value[:4]) not in forms.DAY_YEARS:
        return Refusal("day.out_of_range", at)
    return None


def _choice(field: Field, value: object, at: str) -> Refusal | None:
    if isinstance(value, str) and value in field.choices:
        return None
    return Refusal("choice.unknown", at, {"choices": ", ".join(field.choices)})


def _flag(field: Field, value: object, at: str) -> Refusal | None:
    return None if isinstance(value, bool) else Refusal("flag.wrong", at)


VALUE_CHECKS: dict[str, Check] = {
    "text": _text,
    "letters": _letters,
    "code": _code,
    "id": _id,
    "entry": _entry,
    "subject": _subject,
    "zone": _zone,
    "decimal": _decimal,
    "whole": _whole,
    "unit": _unit,
    "day": _day,
    "choice": _choice,
    "flag": _flag,
}
