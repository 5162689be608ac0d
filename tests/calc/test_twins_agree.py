"""The Python and the TypeScript core have the same functions and give the same answers."""

from __future__ import annotations

import importlib
import json
import os
import random
import shutil
import subprocess
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

from tests.calc.random_givens import RANDOM_GIVENS
from tests.calc.registry import SUMS, answer_to
from tests.calc.test_vectors import MODULES, public_functions

TWIN = Path(__file__).with_name("twin.mjs")
ROOT = Path(__file__).parents[2]
PAIRS = int(os.environ.get("KITCHENLOG_SOAK", "200"))
SEED = 20261110
FUNCTIONS_A_TALK = max(1, 100_000 // PAIRS)
FUNCTIONS = [(file, function) for file, adapters in SUMS.items() for function in adapters]
# Their twins are tables of constants, in frontend/src/calc/tables.
ONLY_PYTHON = {
    "density_tables",
    "chart_tables",
    "gauge_tables",
    "check_tables",
    "net_tables",
    "bench_tables",
    "yield_tables",
    "heat_tables",
}


def twin_answers(questions: Iterable[Any]) -> list[Any]:
    """What the TypeScript core answers, one answer a question, over a pipe to Node."""
    node = shutil.which(
        "node", path=os.pathsep.join([str(ROOT / ".venv/bin"), os.environ["PATH"]])
    )
    assert node is not None, "Node 24 comes with the test requirements"
    asked = "".join(f"{json.dumps(question)}\n" for question in questions)
    done = subprocess.run(
        [node, str(TWIN)], input=asked, capture_output=True, text=True, check=True, timeout=600
    )
    return [json.loads(line) for line in done.stdout.splitlines()]


def test_both_languages_have_the_same_public_functions_in_each_file() -> None:
    (theirs,) = twin_answers(["names"])
    ours = {
        file: sorted(public_functions(importlib.import_module(f"kitchenlog.calc.{file}")))
        for file in MODULES
        if file not in ONLY_PYTHON
    }

    assert {file: theirs.get(file) for file in ours} == ours


def test_every_sum_has_random_givens() -> None:
    assert sorted(set(FUNCTIONS) ^ set(RANDOM_GIVENS)) == []


@pytest.mark.parametrize(("file", "function"), FUNCTIONS, ids=lambda name: name)
def test_random_givens_get_the_same_answer_from_both(file: str, function: str) -> None:
    asked = _talk(FUNCTIONS.index((file, function)) // FUNCTIONS_A_TALK)[file, function]
    differing = [
        (given, ours, theirs)
        for given, theirs in asked
        if (ours := answer_to(file, function, given)) != theirs
    ]

    assert differing[:3] == []
    assert len(asked) == PAIRS


@lru_cache(maxsize=1)
def _talk(number: int) -> dict[tuple[str, str], list[tuple[Any, Any]]]:
    """Givens and the twin's answers for some functions.

    Not for each alone: starting Node costs more than answering. Not for all in a soak: they
    would not fit into memory.
    """
    names = FUNCTIONS[number * FUNCTIONS_A_TALK :][:FUNCTIONS_A_TALK]
    givens = [(name, given) for name in names for given in _givens(name)]
    answers = twin_answers(
        {"file": file, "function": function, "given": given}
        for (file, function), given in givens
    )
    by_name: dict[tuple[str, str], list[tuple[Any, Any]]] = {name: [] for name in names}
    for (name, given), answer in zip(givens, answers, strict=True):
        by_name[name].append((given, answer))
    return by_name


def _givens(name: tuple[str, str]) -> list[Any]:
    """The same for a function whatever else is asked."""
    chance = random.Random(f"{SEED} {name}")
    return [RANDOM_GIVENS[name](chance) for _ in range(PAIRS)]
