"""Parse or refuse a body: the table of kinds applied to what came from outside."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from kitchenlog.entries import forms
from kitchenlog.entries.envelope import Entry, parse_envelope
from kitchenlog.entries.kinds import Field, Kind
from kitchenlog.entries.readable import unreadable
from kitchenlog.entries.refusals import Refusal
from kitchenlog.entries.upcast import TABLE, Body, Newer, Table, declaration, lifted
from kitchenlog.entries.values import VALUE_CHECKS

BODY_DEPTH = 2  # the entry itself is the first level

Trouble = Refusal | Newer | None


def parse_entry(value: object, *, table: Table = TABLE) -> Entry | Refusal | Newer:
    """A whole entry as made: its envelope and, by the table, its body; or why not."""
    entry = parse_envelope(value)
    if isinstance(entry, Refusal):
        return entry
    body = parse_body_of(entry, table=table)
    return body if isinstance(body, Refusal | Newer) else entry


def parse_body_of(entry: Entry, *, table: Table = TABLE) -> Body | Refusal | Newer:
    """The body of a parsed envelope in today's form, or why not."""
    return _parse_readable(entry.kind, entry.version, entry.body, table=table)


def parse_body(
    kind: str, version: int, body: object, *, table: Table = TABLE
) -> Body | Refusal | Newer:
    """The body in today's form, or why not. Digits stay as they were typed."""
    trouble = unreadable(body, depth=BODY_DEPTH)
    if trouble is not None:
        return replace(trouble, field="body")
    return _parse_readable(kind, version, body, table=table)


def _parse_readable(
    kind: str, version: int, body: object, *, table: Table
) -> Body | Refusal | Newer:
    declared = declaration(kind, version, table=table)
    if not isinstance(declared, Kind):
        return declared
    if not isinstance(body, dict):
        return Refusal("group.wrong", "body")
    return _kind_trouble(declared, body, at="", table=table) or lifted(
        kind, version, body, table=table
    )


@dataclass(frozen=True)
class _Spot:
    """Where a value stands: its path, the fields beside it, the table in use."""

    at: str
    beside: Mapping[str, object]
    table: Table


def _kind_trouble(kind: Kind, body: Mapping[str, object], *, at: str, table: Table) -> Trouble:
    return _parts_trouble(kind.parts, body, at=at, table=table) or _rules_trouble(
        kind, body, at
    )


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


def _parts_trouble(
    known: Mapping[str, Field], value: Mapping[str, object], *, at: str, table: Table
) -> Trouble:
    """The first thing wrong with an object: unknown fields, then the declared ones in order."""
    if not value.keys() <= known.keys():
        name = min(value.keys() - known.keys())
        # A stranger's field name is repeated only where that is harmless.
        return Refusal(
            "field.unknown", at + (name if forms.FIELD_NAME.fullmatch(name) else "?")
        )
    for name, field in known.items():
        if name in value:
            trouble = _value_trouble(field, value[name], _Spot(at + name, value, table))
        else:
            trouble = Refusal("field.missing", at + name) if field.is_required else None
        if trouble is not None:
            return trouble
    return None


def _value_trouble(field: Field, value: object, spot: _Spot) -> Trouble:
    """By the field's type: a single value, or something that holds values."""
    if field.type in VALUE_CHECKS:
        return VALUE_CHECKS[field.type](field, value, spot.at)
    return _HOLDING_CHECKS[field.type](field, value, spot)


def _group(field: Field, value: object, spot: _Spot) -> Trouble:
    if not isinstance(value, dict):
        return Refusal("group.wrong", spot.at)
    return _parts_trouble(field.parts, value, at=f"{spot.at}.", table=spot.table)


def _list(field: Field, value: object, spot: _Spot) -> Trouble:
    return _items_trouble(replace(field, type="group"), value, spot)


def _decimals(field: Field, value: object, spot: _Spot) -> Trouble:
    return _items_trouble(replace(field, type="decimal"), value, spot)


def _choices(field: Field, value: object, spot: _Spot) -> Trouble:
    trouble = _items_trouble(replace(field, type="choice"), value, spot)
    if trouble is None and isinstance(value, list) and len(set(value)) < len(value):
        return Refusal("choice.twice", spot.at)
    return trouble


def _items_trouble(field: Field, value: object, spot: _Spot) -> Trouble:
    """A list within its length, each item by `field`."""
    if not isinstance(value, list):
        return Refusal("list.wrong", spot.at)
    if len(value) < field.least_items:
        return Refusal("list.too_short", spot.at, {"least": str(field.least_items)})
    if field.most_items is not None and len(value) > field.most_items:
        return Refusal("list.too_long", spot.at, {"most": str(field.most_items)})
    for number, item in enumerate(value):
        trouble = _value_trouble(field, item, replace(spot, at=f"{spot.at}[{number}]"))
        if trouble is not None:
            return trouble
    return None


def _changes(field: Field, value: object, spot: _Spot) -> Trouble:
    """Fields of a definition, each from what to what; its id is not a field one can change."""
    assert field.of_kind is not None
    own_id = field.of_kind.removesuffix("_defined")
    changeable = tuple(
        Field(name=inner.name, type="change", fields=(inner,), is_required=False)
        for inner in spot.table.kinds[field.of_kind].fields
        if inner.name != own_id
    )
    if value == {}:
        return Refusal("changes.none", spot.at)
    return _group(replace(field, fields=changeable), value, spot)


def _change(field: Field, value: object, spot: _Spot) -> Trouble:
    """Both sides must stand there; null says that a field which may be missing is missing."""
    if not isinstance(value, dict):
        return Refusal("group.wrong", spot.at)
    changed = field.fields[0]
    nulls = {
        side
        for side in ("from", "to")
        if not changed.is_required and side in value and value[side] is None
    }
    sides = {
        side: replace(changed, name=side, is_required=True)
        for side in ("from", "to")
        if side not in nulls
    }
    given = {name: side for name, side in value.items() if name not in nulls}
    return _parts_trouble(sides, given, at=f"{spot.at}.", table=spot.table)


def _kind(field: Field, value: object, spot: _Spot) -> Trouble:
    kind = spot.table.kinds.get(value) if isinstance(value, str) else None
    if kind is None:
        return Refusal("kind.unknown", spot.at)
    if any(inner.type == "kind" for inner in kind.fields):
        return Refusal("kind.about_entries", spot.at)
    return None


def _body(field: Field, value: object, spot: _Spot) -> Trouble:
    """The whole body of the kind named beside it, in the version named beside it."""
    kind, version = spot.beside.get("of_kind"), spot.beside.get("of_version", 1)
    if not isinstance(kind, str) or not isinstance(version, int):
        return None  # said of those fields themselves
    declared = declaration(kind, version, table=spot.table)
    if isinstance(declared, Newer):
        return declared
    if isinstance(declared, Refusal):
        return replace(declared, field="of_version")
    if not isinstance(value, dict):
        return Refusal("group.wrong", spot.at)
    return _kind_trouble(declared, value, at=f"{spot.at}.", table=spot.table)


_HOLDING_CHECKS: dict[str, Callable[[Field, object, _Spot], Trouble]] = {
    "group": _group,
    "quantity": _group,
    "list": _list,
    "decimals": _decimals,
    "choices": _choices,
    "changes": _changes,
    "change": _change,
    "kind": _kind,
    "body": _body,
}
