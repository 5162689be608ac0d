"""Sheets of what people set up: definitions edited by field, recipes in fixed versions."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any, TypedDict

from kitchenlog.calc.bodies import Body, object_in, text_in, texts_in
from kitchenlog.calc.record import (
    Fact,
    Finding,
    Note,
    Standing,
    as_it_stands,
    finding,
    in_log_order,
    notes_about,
    settled,
)
from kitchenlog.calc.subjects import id_in, type_in

DEFINITION_FOLD = 1
RECIPE_FOLD = 1

_UNITED = "allergens"  # where two people disagree, food carries what either of them named


class DefinitionState(TypedDict):
    """The fields in force of one definition."""

    type: str
    id: str
    fields: dict[str, Any]  # JSON of the kind's own fields
    defined_by: str | None
    changed_at: str | None
    findings: list[Finding]
    notes: list[Note]


class Version(TypedDict):
    """One published version; it never changes."""

    entry: str
    number: int
    author: str
    published_on: str
    body: dict[str, Any]  # the whole recipe as published


class RecipeState(TypedDict):
    """All versions of one recipe by number, then in the order of the log."""

    recipe: str
    name: str | None
    versions: list[Version]
    latest: str | None
    findings: list[Finding]
    notes: list[Note]


def definition_state(subject: str, facts: Sequence[Fact]) -> DefinitionState:
    """Fold one definition by `seq`, own unsent entries last (R49).

    A change whose `from` is in force is set, whose `to` is in force does nothing; any other is
    a conflict: the value stays (allergens: the union of both), and a finding shows both until
    somebody settles it. A second definition of the same id is a finding and changes nothing.
    """
    own_type, named = type_in(subject), id_in(subject)
    record = as_it_stands(facts)
    about = [
        each for each in in_log_order(record.standing) if text_in(each.body, own_type) == named
    ]
    defined = [each for each in about if each.kind == f"{own_type}_defined"]
    changed = [each for each in about if each.kind == f"{own_type}_changed"]
    fields = _fields(defined[0].body, own_type) if defined else {}
    findings = [*record.findings, *_conflicts(fields, changed, is_defined=bool(defined))]
    if len(defined) > 1:
        findings.append(finding("defined_twice", "defined_twice", entry=defined[1].id))
    if changed and not defined:
        findings.append(finding("not_defined", "not_defined", entry=changed[0].id))
    return DefinitionState(
        type=own_type,
        id=named,
        fields=dict(sorted(fields.items())),
        defined_by=defined[0].id if defined else None,
        changed_at=changed[-1].happened_at if changed else None,
        findings=settled(findings, record.standing, subject),
        notes=notes_about(record.standing, subject),
    )


def recipe_state(subject: str, facts: Sequence[Fact]) -> RecipeState:
    """Fold one recipe. A published version never changes (R50): a void withdraws it, a
    correction of it is a finding only."""
    recipe = id_in(subject)
    record = as_it_stands(facts)
    own_bodies = {fact.id: fact.body for fact in facts if fact.kind == "recipe_published"}
    published = [
        each
        for each in in_log_order(record.standing)
        if each.kind == "recipe_published" and text_in(each.body, "recipe") == recipe
    ]
    versions = sorted(
        (_version(each, own_bodies.get(each.id, each.body)) for each in published),
        key=lambda version: version["number"],
    )
    findings = [*record.findings, *_version_findings(published, versions)]
    return RecipeState(
        recipe=recipe,
        name=text_in(versions[-1]["body"], "name") if versions else None,
        versions=versions,
        latest=versions[-1]["entry"] if versions else None,
        findings=settled(findings, record.standing, subject),
        notes=notes_about(record.standing, subject),
    )


def _fields(body: Body, own_type: str) -> dict[str, Any]:
    return {
        name: value for name, value in body.items() if name != own_type and value is not None
    }


def _conflicts(
    fields: dict[str, Any], changed: Iterable[Standing], *, is_defined: bool
) -> list[Finding]:
    """Apply each change to the fields; what could not be applied is a finding."""
    findings = []
    for entry in changed:
        changes = object_in(entry.body, "changes") or {}
        for name in sorted(changes):
            change = object_in(changes, name) or {}
            # Without its definition nobody knows what was in force: the first change says it.
            is_unknown = not is_defined and name not in fields
            if is_unknown:
                _set(fields, name, change.get("to"))
            else:
                findings.extend(_change_field(fields, entry, name, change))
    return findings


def _change_field(
    fields: dict[str, Any], entry: Standing, name: str, change: Body
) -> list[Finding]:
    in_force, wanted = fields.get(name), change.get("to")
    if _same(change.get("from"), in_force):
        _set(fields, name, wanted)
        return []
    if _same(wanted, in_force):
        return []
    if name == _UNITED:
        _set(fields, name, _union(fields, change))
    return [_conflict(entry, name, in_force, wanted)]


def _set(fields: dict[str, Any], name: str, value: object) -> None:
    if value is None:
        fields.pop(name, None)
    else:
        fields[name] = value


def _union(fields: Body, change: Body) -> list[str]:
    return sorted({*texts_in(fields, _UNITED), *texts_in(change, "to")})


def _conflict(entry: Standing, name: str, in_force: object, wanted: object) -> Finding:
    """Its key names the entry too: settling one conflict must not settle the next."""
    return finding(
        f"conflict:{name}:{entry.id}",
        "conflict",
        entry=entry.id,
        about=name,
        detail={"in_force": _shown(in_force), "wanted": _shown(wanted)},
    )


def _same(one: object, other: object) -> bool:
    return _shown(one) == _shown(other)


def _shown(value: object) -> str:
    """A JSON value as text that is alike in both languages; text itself as it is."""
    if isinstance(value, str):
        return value
    if isinstance(value, dict):
        inner = [f"{name}: {_shown(each)}" for name, each in sorted(value.items())]
        return "{" + ", ".join(inner) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(_shown(each) for each in value) + "]"
    if isinstance(value, bool):
        return "true" if value else "false"
    return "" if value is None else str(value)


def _version(entry: Standing, own_body: Body) -> Version:
    number = own_body.get("number")
    return Version(
        entry=entry.id,
        number=number if isinstance(number, int) else 0,
        author=entry.author,
        published_on=entry.local_date,
        body=dict(own_body),
    )


def _version_findings(
    published: Sequence[Standing], versions: Sequence[Version]
) -> list[Finding]:
    findings = [
        finding(f"corrected_version:{each.id}", "corrected_version", entry=each.id)
        for each in published
        if each.was
    ]
    numbers = [version["number"] for version in versions]
    for version in versions:
        number = str(version["number"])
        if numbers.count(version["number"]) > 1:
            key, detail = f"same_number:{number}", {"number": number}
            findings.append(finding(key, "same_number", entry=version["entry"], detail=detail))
    return findings
