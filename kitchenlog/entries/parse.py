"""Parse or refuse a body: the table of kinds applied to what came from outside.

The table is made into checks once, one for each version of a kind: going through declarations
anew for every entry of a push takes three times as long.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import NamedTuple

from kitchenlog.entries import forms
from kitchenlog.entries.envelope import Entry, entry_in
from kitchenlog.entries.kinds import Field, Kind
from kitchenlog.entries.readable import unreadable
from kitchenlog.entries.refusals import Refusal
from kitchenlog.entries.upcast import TABLE, Body, Newer, Table, declaration, lifted
from kitchenlog.entries.values import VALUE_CHECKS

BODY_DEPTH = 2  # the entry itself is the first level

Trouble = Refusal | Newer | None
Check = Callable[[object, str], Trouble]  # of a value and the path where it stands
ObjectCheck = Callable[[Mapping[str, object], str], Trouble]  # the path ends with its dot


class Parsed(NamedTuple):
    """An entry as made, and its body in today's form."""

    entry: Entry
    body: Body


def parse_entry(value: object, *, table: Table = TABLE) -> Parsed | Refusal | Newer:
    """A whole entry: its envelope and, by the table, its body; or why not.

    Nothing unreadable fits the table, so only what does not fit is walked for it: its refusal
    comes first, as it does for a body alone.
    """
    parsed = _parsed(value, table)
    return parsed if isinstance(parsed, Parsed) else unreadable(value) or parsed


def _parsed(value: object, table: Table) -> Parsed | Refusal | Newer:
    entry = entry_in(value)
    if isinstance(entry, Refusal):
        return entry
    body = _body(entry.kind, entry.version, entry.body, table=table)
    return body if isinstance(body, Refusal | Newer) else Parsed(entry, body)


def parse_body(
    kind: str, version: int, body: object, *, table: Table = TABLE
) -> Body | Refusal | Newer:
    """The body in today's form, or why not. Digits stay as they were typed."""
    trouble = unreadable(body, depth=BODY_DEPTH)
    if trouble is not None:
        return replace(trouble, field="body")
    return _body(kind, version, body, table=table)


def _body(kind: str, version: int, body: object, *, table: Table) -> Body | Refusal | Newer:
    declared = declaration(kind, version, table=table)
    if not isinstance(declared, Kind):
        return declared
    if not isinstance(body, dict):
        return Refusal("group.wrong", "body")
    return _kind_check(table, kind, version)(body, "") or lifted(
        kind, version, body, table=table
    )


@cache
def _kind_check(table: Table, kind: str, version: int) -> ObjectCheck:
    """The check of bodies of a kind; of declared ones only, so there are few."""
    declared = declaration(kind, version, table=table)
    assert isinstance(declared, Kind)
    check_fields = _fields_check(declared.fields, table)

    def check(body: Mapping[str, object], at: str) -> Trouble:
        return check_fields(body, at) or _rules_trouble(declared, body, at)

    return check


def _rules_trouble(kind: Kind, body: Mapping[str, object], at: str) -> Refusal | None:
    """What several fields owe each other."""
    if kind.one_of and sum(name in body for name in kind.one_of) != 1:
        return Refusal(
            "field.one_of", at + kind.one_of[0], {"fields": " or ".join(kind.one_of)}
        )
    for name, partner in kind.together:
        if name in body and partner not in body:
            return Refusal("field.together", at + partner, {"partner": name})
    return None


@dataclass(frozen=True)
class _Part:
    """One field of an object; only a body has no check by itself: its kind stands beside it."""

    name: str
    is_required: bool
    check: Check | None


def _fields_check(fields: Iterable[Field], table: Table) -> ObjectCheck:
    return _parts_check(
        [_Part(field.name, field.is_required, _check(field, table)) for field in fields], table
    )


def _parts_check(parts: Sequence[_Part], table: Table) -> ObjectCheck:
    """The first thing wrong with an object: unknown fields, then the declared ones in order."""
    known = {part.name for part in parts}

    def check(value: Mapping[str, object], at: str) -> Trouble:
        if not value.keys() <= known:
            return _stranger(min(value.keys() - known), at)
        trouble: Trouble = None
        for part in parts:
            name = part.name
            if name not in value:
                trouble = Refusal("field.missing", at + name) if part.is_required else None
            elif part.check is None:
                trouble = _wrapped_trouble(value, at + name, table)
            else:
                trouble = part.check(value[name], at + name)
            if trouble is not None:
                return trouble
        return None

    return check


def _stranger(name: str, at: str) -> Refusal:
    """A stranger's field name is repeated only where that is harmless."""
    return Refusal("field.unknown", at + (name if forms.FIELD_NAME.fullmatch(name) else "?"))


def _check(field: Field, table: Table) -> Check | None:
    """By the field's type: a single value, or something that holds values."""
    if field.type == "body":
        return None
    if field.type in VALUE_CHECKS:
        return VALUE_CHECKS[field.type](field)
    return _HOLDING_CHECKS[field.type](field, table)


def _group(field: Field, table: Table) -> Check:
    return _object(_fields_check(field.parts.values(), table))


def _object(check_fields: ObjectCheck) -> Check:
    def check(value: object, at: str) -> Trouble:
        if not isinstance(value, dict):
            return Refusal("group.wrong", at)
        return check_fields(value, f"{at}.")

    return check


def _list(field: Field, table: Table) -> Check:
    return _items(field, _group(field, table))


def _decimals(field: Field, table: Table) -> Check:
    return _items(field, VALUE_CHECKS["decimal"](field))


def _wholes(field: Field, table: Table) -> Check:
    return _items(field, VALUE_CHECKS["whole"](field))


def _choices(field: Field, table: Table) -> Check:
    check_items = _items(field, VALUE_CHECKS["choice"](field))

    def check(value: object, at: str) -> Trouble:
        trouble = check_items(value, at)
        if trouble is None and isinstance(value, list) and len(set(value)) < len(value):
            return Refusal("choice.twice", at)
        return trouble

    return check


def _items(field: Field, check_item: Check) -> Check:
    """A list within its length, each item by `check_item`."""
    least, most = field.least_items, field.most_items
    assert most is not None

    def check(value: object, at: str) -> Trouble:
        if not isinstance(value, list):
            return Refusal("list.wrong", at)
        if len(value) < least:
            return Refusal("list.too_short", at, {"least": str(least)})
        if len(value) > most:
            return Refusal("list.too_long", at, {"most": str(most)})
        for number, item in enumerate(value):
            # Of ten thousand numbers only that of a wrong one is told where it stands.
            if check_item(item, at) is not None:
                return check_item(item, f"{at}[{number}]")
        return None

    return check


def _changes(field: Field, table: Table) -> Check:
    """Fields of a definition, each from what to what; its id is not a field one can change."""
    assert field.of_kind is not None
    own_id = field.of_kind.removesuffix("_defined")
    changeable = [
        Field(name=inner.name, type="change", fields=(inner,), is_required=False)
        for inner in table.kinds[field.of_kind].fields
        if inner.name != own_id
    ]
    check_changes = _object(_fields_check(changeable, table))

    def check(value: object, at: str) -> Trouble:
        return Refusal("changes.none", at) if value == {} else check_changes(value, at)

    return check


def _change(field: Field, table: Table) -> Check:
    """Both sides must stand there; null says that a field which may be missing is missing."""
    changed = field.fields[0]
    check_value = _check(changed, table)
    assert check_value is not None

    def check_side(value: object, at: str) -> Trouble:
        is_missing = value is None and not changed.is_required
        return None if is_missing else check_value(value, at)

    sides = [_Part(side, is_required=True, check=check_side) for side in ("from", "to")]
    return _object(_parts_check(sides, table))


def _kind(field: Field, table: Table) -> Check:
    def check(value: object, at: str) -> Trouble:
        kind = table.kinds.get(value) if type(value) is str else None
        if kind is None:
            return Refusal("kind.unknown", at)
        if any(inner.type == "kind" for inner in kind.fields):
            return Refusal("kind.about_entries", at)
        return None

    return check


_HOLDING_CHECKS: dict[str, Callable[[Field, Table], Check]] = {
    "group": _group,
    "quantity": _group,
    "list": _list,
    "decimals": _decimals,
    "wholes": _wholes,
    "choices": _choices,
    "changes": _changes,
    "change": _change,
    "kind": _kind,
}


def _wrapped_trouble(holder: Mapping[str, object], at: str, table: Table) -> Trouble:
    """The whole body of the kind named beside it, in the version named beside it."""
    kind, version = holder.get("of_kind"), holder.get("of_version", 1)
    if not isinstance(kind, str) or not isinstance(version, int):
        return None  # said of those fields themselves
    declared = declaration(kind, version, table=table)
    if isinstance(declared, Newer):
        return declared
    if isinstance(declared, Refusal):
        return replace(declared, field="of_version")
    body = holder["body"]
    if not isinstance(body, dict):
        return Refusal("group.wrong", at)
    return _kind_check(table, kind, version)(body, f"{at}.")
