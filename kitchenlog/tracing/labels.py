"""What people call the nodes of a trace: the same words a phone finds in its sheets."""

from __future__ import annotations

from collections.abc import Sequence
from uuid import UUID

from kitchenlog.batches.selectors import codes_of_batches
from kitchenlog.logbook.selectors import names_of
from kitchenlog.stock.selectors import materials_of_lots


def labels_of(cooperative: UUID, nodes: Sequence[str]) -> dict[str, str]:
    """A batch's code, the name of a lot's material, of a partner, of a stall with its day.

    A node whose name has not come yet is left out. A few statements, however many nodes.
    """
    lots = materials_of_lots(cooperative, _ids(nodes, "lot"))
    codes = codes_of_batches(cooperative, _ids(nodes, "batch"))
    named = {node: _definition(node, lots) for node in nodes}
    names = names_of(cooperative, sorted(set(named.values())))
    labels = {node: names[named[node]] for node in nodes if named[node] in names}
    labels |= {f"batch:{batch}": code for batch, code in codes.items()}
    return {node: _with_day(node, label) for node, label in labels.items()}


def _ids(nodes: Sequence[str], sort: str) -> list[str]:
    return [node.partition(":")[2] for node in nodes if node.startswith(f"{sort}:")]


def _definition(node: str, lots: dict[str, str]) -> str:
    """The definition whose name stands for a node; the node itself where it is one."""
    sort, _, named = node.partition(":")
    if sort == "lot":
        return f"material:{lots.get(named, '')}"
    return f"place:{named.rpartition(':')[0]}" if sort == "day" else node


def _with_day(node: str, label: str) -> str:
    return f"{label}, {node.rpartition(':')[2]}" if node.startswith("day:") else label
