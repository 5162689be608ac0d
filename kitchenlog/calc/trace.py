"""Following lots over sheets: back to sources and forward to recipients.

Lots are nodes and edges point the way goods went. A batch joins all its lots in to all its lots
out, and a topped-up bin is a lot that came from lots, so no clock is asked.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal, NotRequired, TypedDict

from kitchenlog.calc.bodies import items_in, object_in, text_in
from kitchenlog.calc.subjects import id_in, type_in

Direction = Literal["back", "forward"]
Sheets = Mapping[str, Mapping[str, Any]]  # subject -> state; each is read by its own type

WALKED = ("lot", "batch")  # of these a sheet is needed to go on; the others are ends


class Node(TypedDict):
    """A subject on the way, with a name where a held sheet gives one."""

    id: str
    label: NotRequired[str]


Edge = TypedDict(
    "Edge",
    {"from": str, "to": str, "amount": str, "unit": str | None},
)


class Trace(TypedDict):
    """What a walk found; `missing` names the sheets it could not go on without."""

    lot: str
    direction: str
    nodes: list[Node]
    edges: list[Edge]
    is_complete: bool
    missing: list[str]


@dataclass(frozen=True, kw_only=True)
class Walk:
    """Subjects reached, edges used, and sheets that were not there."""

    reached: frozenset[str]
    edges: tuple[Edge, ...]
    missing: tuple[str, ...]


def trace(lot: str, direction: Direction, sheets: Sheets) -> Trace:
    """Everything a lot came from, or everywhere it went, over the sheets at hand."""
    walk = walk_from(f"lot:{lot}", direction, sheets)
    return Trace(
        lot=lot,
        direction=direction,
        nodes=[_node(subject, sheets) for subject in sorted(walk.reached)],
        edges=list(walk.edges),
        is_complete=not walk.missing,
        missing=list(walk.missing),
    )


def walk_from(start: str, direction: Direction, sheets: Sheets) -> Walk:
    """Breadth first; a subject is visited once, so that a recorded circle ends."""
    reached, queue = {start}, [start]
    edges: list[Edge] = []
    missing: list[str] = []
    for subject in queue:  # grows while it is walked
        state = sheets.get(subject)
        if state is None:
            if type_in(subject) in WALKED:
                missing.append(subject)
            continue
        for edge in edges_at(subject, state, direction):
            edges.append(edge)
            following = edge["from"] if direction == "back" else edge["to"]
            if following not in reached:
                reached.add(following)
                queue.append(following)
    edges.sort(key=lambda edge: (edge["from"], edge["to"], edge["unit"] or ""))
    return Walk(reached=frozenset(reached), edges=tuple(edges), missing=tuple(sorted(missing)))


def edges_at(subject: str, state: Mapping[str, Any], direction: Direction) -> list[Edge]:
    """The edges one sheet knows in one direction, so that a caller may fetch sheets by level.

    Between a lot and a batch the sheet that is walked from is asked.
    """
    walked = type_in(subject)
    if walked == "lot":
        unit = text_in(state, "unit")
        if direction == "back":
            return [
                _edge(text_in(each, "origin"), subject, each, unit)
                for each in items_in(state, "made_from")
            ]
        return [
            _edge(subject, text_in(each, "to"), each, unit)
            for each in items_in(state, "went_to")
        ]
    if walked == "batch" and direction == "back":
        return [
            _edge(f"lot:{text_in(each, 'lot') or ''}", subject, each, text_in(each, "unit"))
            for each in items_in(state, "lots_in")
        ]
    if walked == "batch":
        return [
            _edge(subject, f"lot:{text_in(each, 'lot') or ''}", each, text_in(each, "unit"))
            for each in items_in(state, "lots_out")
        ]
    return []


def _edge(
    origin: str | None, target: str | None, each: Mapping[str, Any], unit: str | None
) -> Edge:
    amount = text_in(each, "amount") or "0"
    return {"from": origin or "", "to": target or "", "amount": amount, "unit": unit}


def _node(subject: str, sheets: Sheets) -> Node:
    label = _label(subject, sheets)
    return Node(id=subject) if label is None else Node(id=subject, label=label)


def _label(subject: str, sheets: Sheets) -> str | None:
    """What people call it: a batch's code, a lot's material, a partner's or place's name."""
    named = type_in(subject)
    state = sheets.get(subject) or {}
    if named == "batch":
        return text_in(state, "code")
    if named == "lot":
        return _name(f"material:{text_in(state, 'material') or ''}", sheets)
    if named == "day":
        place, _, on = id_in(subject).rpartition(":")
        name = _name(f"place:{place}", sheets)
        return None if name is None else f"{name}, {on}"
    return _name(subject, sheets)


def _name(subject: str, sheets: Sheets) -> str | None:
    return text_in(object_in(sheets.get(subject) or {}, "fields") or {}, "name")
