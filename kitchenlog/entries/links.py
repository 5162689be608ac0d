"""What an entry is about, what it only names, which entries make one correction family."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import cache

from kitchenlog.entries.kinds import KINDS, Kind
from kitchenlog.entries.upcast import Body

_HOLE = re.compile(r"\{([a-z_.\[\]]+)\}")


def subjects_of(kind: str, body: Body) -> tuple[str, ...]:
    """The subjects whose sheets this entry changes, sorted; `body` is parsed, in today's form.

    A correction is about what its new body is about; a void names nothing by itself. What the
    corrected entry was about is added by `family_subjects`, and by the phone when it writes.
    """
    inner = _wrapped(kind, body)
    if inner is not None:
        return subjects_of(*inner)
    return _filled(KINDS[kind].subjects, body)


def mentions_of(kind: str, body: Body) -> tuple[str, ...]:
    """The subjects this entry only names, sorted."""
    inner = _wrapped(kind, body)
    if inner is not None:
        return mentions_of(*inner)
    return _filled(KINDS[kind].mentions, body)


def corrects(kind: str, body: Body) -> str | None:
    """The id of the entry a correction or void names."""
    named = body["corrects"] if is_about_entry(KINDS[kind]) else None
    return named if isinstance(named, str) else None


def effective_kind(kind: str, body: Body) -> str:
    """The kind of what stands corrected or voided; of any other entry its own kind."""
    named = body["of_kind"] if is_about_entry(KINDS[kind]) else kind
    assert isinstance(named, str)
    return named


def is_about_entry(kind: Kind) -> bool:
    """Corrections and voids wrap another kind."""
    return any(field.type == "kind" for field in kind.fields)


def family_subjects(
    about: Mapping[str, Iterable[str]], named: Mapping[str, str]
) -> dict[str, tuple[str, ...]]:
    """For each entry the subjects of its whole correction family, sorted.

    `about` holds each entry's own subjects, `named` the entry each correction or void names.
    A family is one entry and all that name it, directly or through each other; an entry that
    is named but not here still holds its family together.
    """
    families: dict[str, set[str]] = {}
    for entry_id, subjects in about.items():
        families.setdefault(_root(entry_id, named), set()).update(subjects)
    return {entry_id: tuple(sorted(families[_root(entry_id, named)])) for entry_id in about}


def _root(entry_id: str, named: Mapping[str, str]) -> str:
    """The entry at the start of the chain; a circle ends at its smallest id."""
    seen = [entry_id]
    while (before := named.get(seen[-1])) is not None:
        if before in seen:
            return min(seen[seen.index(before) :])
        seen.append(before)
    return seen[-1]


def _wrapped(kind: str, body: Body) -> tuple[str, Body] | None:
    inner, of_kind = body.get("body"), body.get("of_kind")
    if (
        KINDS[kind].name == "correction"
        and isinstance(of_kind, str)
        and isinstance(inner, dict)
    ):
        return of_kind, inner
    return None


def _filled(templates: Iterable[str], body: Body) -> tuple[str, ...]:
    return tuple(sorted({subject for text in templates for subject in _subjects(text, body)}))


def _subjects(template: str, body: Body) -> list[str]:
    """`lot:{from[].lot}` with every value the body has there; none where one is missing."""
    filled = [template]
    for path in _paths(template):
        values = _values_at(path, body)
        filled = [text.replace(f"{{{path}}}", value) for text in filled for value in values]
    return filled


@cache
def _paths(template: str) -> tuple[str, ...]:
    """What stands in the holes of a template; there are few, and every entry asks for some."""
    return tuple(_HOLE.findall(template))


def _values_at(path: str, body: Body) -> list[str]:
    whole = body.get(path)
    if isinstance(whole, str):  # most paths are one field, and every entry of a push asks
        return [whole]
    reached: list[object] = [body]
    for step in path.split("."):
        name = step.removesuffix("[]")
        inner = [part[name] for part in reached if isinstance(part, dict) and name in part]
        reached = (
            [item for part in inner if isinstance(part, list) for item in part]
            if step.endswith("[]")
            else inner
        )
    return [value for value in reached if isinstance(value, str)]
