"""How each fold of kitchenlog.calc is called with what a vector gives; see registry.py."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

# File -> function -> adapter: takes `given`, returns the answer as JSON. A vector's `then` is
# {function: answer}, or {"is_refused": true} where the function raises ValueError.
FOLDS: dict[str, dict[str, Callable[[dict[str, Any]], Any]]] = {}

# Files that only hold parts of folds, between whose functions whole facts and maps pass. Their
# vectors are those of the folds that use them.
FOLD_PARTS = frozenset({"bodies", "stock_moves", "weighing", "batch_lines", "batch_balance"})
