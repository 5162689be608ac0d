"""The Python and the TypeScript core have the same functions and give the same answers."""

from __future__ import annotations

import importlib
import json
import os
import random
import shutil
import subprocess
from collections.abc import Iterable
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
def test_random_givens_get_the_same_answer_from_both(
    file: str, function: str, twin: dict[tuple[str, str], list[tuple[Any, Any]]]
) -> None:
    differing = [
        (given, ours, theirs)
        for given, theirs in twin[file, function]
        if (ours := answer_to(file, function, given)) != theirs
    ]

    assert differing[:3] == []
    assert len(twin[file, function]) == PAIRS


@pytest.fixture(scope="module")
def twin() -> dict[tuple[str, str], list[tuple[Any, Any]]]:
    """All questions go through one process: starting Node costs more than answering."""
    chance = random.Random(SEED)
    givens = [(name, RANDOM_GIVENS[name](chance)) for name in FUNCTIONS for _ in range(PAIRS)]
    answers = twin_answers(
        {"file": file, "function": function, "given": given}
        for (file, function), given in givens
    )
    by_name: dict[tuple[str, str], list[tuple[Any, Any]]] = {name: [] for name in FUNCTIONS}
    for (name, given), answer in zip(givens, answers, strict=True):
        by_name[name].append((given, answer))
    return by_name
