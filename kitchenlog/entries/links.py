"""What an entry is about, what it only names, what a correction or void stands for."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from functools import cache

from kitchenlog.entries.kinds import KINDS
from kitchenlog.entries.upcast import Body

# Corrections and voids wrap another kind.
ABOUT_ENTRIES = frozenset(
    kind.name for kind in KINDS.values() if any(field.type == "kind" for field in kind.fields)
)

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
    named = body["corrects"] if kind in ABOUT_ENTRIES else None
    return named if isinstance(named, str) else None


def effective_kind(kind: str, body: Body) -> str:
    """The kind of what stands corrected or voided; of any other entry its own kind."""
    named = body["of_kind"] if kind in ABOUT_ENTRIES else kind
    assert isinstance(named, str)
    return named


def _wrapped(kind: str, body: Body) -> tuple[str, Body] | None:
    if kind != "correction":
        return None
    inner, of_kind = body.get("body"), body.get("of_kind")
    return (of_kind, inner) if isinstance(of_kind, str) and isinstance(inner, dict) else None


def _filled(templates: Iterable[str], body: Body) -> tuple[str, ...]:
    return tuple(sorted({subject for text in templates for subject in _reader(text)(body)}))


@cache
def _reader(template: str) -> Callable[[Body], Sequence[str]]:
    """What fills `lot:{from[].lot}` with every value a body has there; none where one is
    missing. There are few templates, and every entry of a push asks for some."""
    paths: list[str] = _HOLE.findall(template)
    if all(path.isidentifier() for path in paths):
        return _reader_of_fields(template, paths)

    def subjects(body: Body) -> list[str]:
        filled = [template]
        for path in paths:
            values = _values_at(path, body)
            filled = [text.replace(f"{{{path}}}", value) for text in filled for value in values]
        return filled

    return subjects


def _reader_of_fields(template: str, names: Sequence[str]) -> Callable[[Body], Sequence[str]]:
    """The same for holes that are fields of the body itself: one subject at most."""

    def subjects(body: Body) -> tuple[str, ...]:
        for name in names:
            if not isinstance(body.get(name), str):
                return ()
        return (template.format_map(body),)

    return subjects


def _values_at(path: str, body: Body) -> list[str]:
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
