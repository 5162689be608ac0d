"""Reads the table of good and bad bodies that both languages must judge alike."""

import copy
import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

VECTORS = Path(__file__).parents[1] / "vectors" / "entries"
_TABLE = json.loads((VECTORS / "bodies.json").read_text(encoding="utf-8"))


@dataclass(frozen=True)
class Case:
    why: str
    kind: str
    body: Any
    then: dict[str, str] | None = None

    def __str__(self) -> str:
        return f"{self.kind}: {self.why}"


def good_bodies() -> list[Case]:
    return [Case(row["why"], row["kind"], _built(row["body"])) for row in _TABLE["good"]]


def good_body(kind: str) -> dict[str, Any]:
    """The first good body of a kind, to be changed freely."""
    return copy.deepcopy(next(case.body for case in good_bodies() if case.kind == kind))


def bad_bodies() -> list[Case]:
    return [Case(row["why"], row["kind"], _spoiled(row), row["then"]) for row in _TABLE["bad"]]


def _spoiled(row: dict[str, Any]) -> Any:
    body = good_body(row["kind"])
    for path, value in row.get("set", {}).items():
        if path == "$whole":
            return value
        holder, last = _holder(body, path)
        if isinstance(holder, list) and last == len(holder):
            holder.append(value)
        else:
            holder[last] = _built(value)
    for path in row.get("drop", []):
        holder, last = _holder(body, path)
        del holder[last]
    return body


def _holder(body: Any, path: str) -> tuple[Any, Any]:
    steps = [int(step) if step.isdecimal() else step for step in path.split(".")]
    for step in steps[:-1]:
        body = body[step]
    return body, steps[-1]


def _built(value: Any) -> Any:
    """Spells out {"$repeat": [text or list, times]} and {"$nest": levels}, at any depth."""
    if isinstance(value, list):
        return [_built(item) for item in value]
    if not isinstance(value, dict):
        return value
    if "$repeat" in value:
        part, times = value["$repeat"]
        return part * times
    if "$nest" in value:
        nested: list[Any] = []
        for _ in range(value["$nest"] - 1):
            nested = [nested]
        return nested
    return {name: _built(inner) for name, inner in value.items()}
