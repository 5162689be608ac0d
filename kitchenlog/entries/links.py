"""What an entry is about, what it only names, what a correction or void stands for."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

from kitchenlog.entries.kinds import KINDS, Kind
from kitchenlog.entries.upcast import Body

_HOLE = re.compile(r"\{([a-z_.\[\]]+)\}")


def subjects_of(kind: str, body: Body) -> tuple[str, ...]:
    """The subjects whose sheets this entry changes, sorted; `body` is parsed, in today's form.

    A correction is about what its new body is about; a void names nothing by itself. What the
    corrected entry was about is added by the phone, and by the log for the whole family.
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


def leans_on(kind: str, body: Body) -> tuple[str, ...]:
    """Those of its mentions whose sheets a fold of this entry is given too, sorted."""
    inner = _wrapped(kind, body)
    if inner is not None:
        return leans_on(*inner)
    return _filled(KINDS[kind].leans_on, body)


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
