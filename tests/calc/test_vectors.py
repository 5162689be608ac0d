"""Every public function of calc says what its vectors say, and none is without vectors."""

from __future__ import annotations

import importlib
import inspect
import json
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

import kitchenlog.calc
from tests.calc.registry import ADAPTERS, answer_to

VECTORS = Path(__file__).parents[1] / "vectors"
CALC = Path(kitchenlog.calc.__file__).parent
# These read and write tables and calculate nothing.
NO_CALCULATIONS = {"__init__", "export_tables", "table_rows"}
MODULES = sorted({p.stem for p in CALC.glob("*.py")} - NO_CALCULATIONS)
# Folders that other tests read.
OTHER_FOLDERS = {"entries"}


def vector_files() -> list[Path]:
    return sorted(p for p in VECTORS.glob("*/*.json") if p.parent.name not in OTHER_FOLDERS)


def public_functions(module: ModuleType) -> set[str]:
    return {
        name
        for name, member in vars(module).items()
        if inspect.isfunction(member)
        and member.__module__ == module.__name__
        and not name.startswith("_")
    }


@cache
def calculations() -> frozenset[tuple[str, str]]:
    return frozenset(
        (file, name)
        for file in MODULES
        for name in public_functions(importlib.import_module(f"kitchenlog.calc.{file}"))
    )


def vectors() -> list[Any]:
    cases = []
    for path in vector_files():
        file = json.loads(path.read_text(encoding="utf-8"))
        for number, vector in enumerate(file["vectors"], start=1):
            label = f"{path.parent.name}.{file['function']}-{number}"
            cases.append(pytest.param(path, file["function"], vector, id=label))
    return cases


@pytest.mark.parametrize(("path", "function", "vector"), vectors())
def test_a_calculation_says_what_its_vector_says(
    path: Path, function: str, vector: dict[str, Any]
) -> None:
    said = answer_to(path.parent.name, function, vector["given"])

    assert said == vector["then"], vector["why"]


@pytest.mark.parametrize("path", vector_files(), ids=lambda p: f"{p.parent.name}.{p.stem}")
def test_a_vector_file_names_its_function_its_source_and_every_reason(path: Path) -> None:
    file = json.loads(path.read_text(encoding="utf-8"))

    assert file["function"] == path.stem
    assert file["source"]
    assert file["vectors"]
    assert all(vector["why"] for vector in file["vectors"])


def test_no_public_function_is_without_vectors() -> None:
    with_vectors = {(path.parent.name, path.stem) for path in vector_files()}

    assert sorted(calculations() - with_vectors) == []


def test_no_vector_file_stands_for_a_function_that_is_not_there() -> None:
    read = {(file, function) for file, adapters in ADAPTERS.items() for function in adapters}
    unread = [
        str(path.relative_to(VECTORS))
        for path in vector_files()
        if (path.parent.name, path.stem) not in calculations() & read
    ]

    assert unread == []
