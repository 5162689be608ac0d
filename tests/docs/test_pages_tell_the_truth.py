"""README.md and DEVELOPERS.md name only what exists, and name all that must be named."""

from __future__ import annotations

import json
import re
import subprocess
import tomllib
from pathlib import Path

import pytest
from django.core.management import get_commands

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text()
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text()
PAGES = README + DEVELOPERS
MAKEFILE = (ROOT / "Makefile").read_text()


def _section(number: int) -> str:
    return DEVELOPERS.split(f"\n## {number}. ", 1)[1].split("\n## ", 1)[0]


@pytest.mark.parametrize("target", sorted(set(re.findall(r"`?make ([a-z]+)", PAGES))))
def test_every_make_command_that_is_named_exists(target: str) -> None:
    assert re.search(rf"^{target}:", MAKEFILE, re.MULTILINE)


def test_every_make_command_has_one_line_of_help() -> None:
    phony = re.search(r"^\.PHONY: (.*)$", MAKEFILE, re.MULTILINE)
    assert phony is not None
    for target in phony.group(1).split():
        assert re.search(rf"^{target}:.*## \S", MAKEFILE, re.MULTILINE), target


def test_every_management_command_that_is_named_exists() -> None:
    named = set(re.findall(r"manage\.py ([a-z_]+)", PAGES))
    named |= set(
        re.findall(r"`([a-z_]+)(?: [^`]*)?`", _section(3).split("`python manage.py`:")[1])
    )

    assert named <= set(get_commands())


@pytest.mark.parametrize("link", sorted(set(re.findall(r"\]\(([^)#:]+)\)", PAGES))))
def test_every_relative_link_leads_to_a_file(link: str) -> None:
    assert (ROOT / link).exists()


def test_every_folder_on_the_map_exists() -> None:
    drawn = DEVELOPERS.split("```")[1]
    parent = ""
    for line in drawn.strip().splitlines():
        names = (
            re.split(r"\s{2,}", line.strip())[0] if line.startswith(" ") else line.split()[0]
        )
        if not line.startswith(" "):
            parent = names
        for name in [names] if not line.startswith(" ") else names.split():
            path = name if name == parent else parent + name
            assert (ROOT / path.replace("<task>/", "")).exists(), path


@pytest.mark.parametrize(
    "named",
    sorted(set(re.findall(r"`((?:kitchenlog|frontend|tests|docker)/[\w/.-]+)`", PAGES))),
)
def test_every_path_that_is_named_exists(named: str) -> None:
    assert (ROOT / named).exists()


def test_the_settings_table_lists_exactly_what_the_settings_read() -> None:
    readers = (ROOT / "kitchenlog/config").glob("*.py")
    read = {
        name
        for path in readers
        for name in re.findall(r'environ\w*(?:\.get\(|, )\s*"(\w+)"', path.read_text())
        if name.startswith("KITCHENLOG_") or name == "PORT"
    }
    listed = set(re.findall(r"^\| `([A-Z_]+)` ", _section(9), re.MULTILINE))

    assert listed == read


def test_only_the_settings_read_the_environment() -> None:
    readers = [
        path
        for path in (ROOT / "kitchenlog").rglob("*.py")
        if re.search(r"os\.(environ|getenv)", path.read_text())
        and path.relative_to(ROOT).parts[1] != "config"
    ]

    assert readers == []


def test_every_dependency_has_its_reason() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    wanted = project["dependencies"] + project["optional-dependencies"]["test"]
    names = {re.split(r"[\[><=;~ ]", line)[0] for line in wanted}
    for folder in ("frontend", "tests/chromium"):
        package = json.loads((ROOT / folder / "package.json").read_text())
        names |= set(package.get("dependencies", {})) | set(package.get("devDependencies", {}))
    listed = set()
    for row in re.findall(r"^\| ([^|]+) \|", _section(8), re.MULTILINE):
        listed |= {name.strip() for name in row.split(",")}

    assert names == listed - {"package", "---"}


def test_no_file_holds_a_registry_address_or_a_path_of_one_machine() -> None:
    names = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout.splitlines()
    hosts = "|".join(("py" + "pi", "pythonhosted", "regis" + "try"))
    homes = "|".join(("wor" + "k", "hom" + "e", "roo" + "t"))
    forbidden = re.compile(rf'"resolved" *:|https?://[\w.-]*({hosts})|(?<![\w.])/({homes})/\w')
    found = []
    for name in names:
        path = ROOT / name
        if path.suffix in {".png", ".ico", ".woff2"} or not path.is_file():
            continue
        for number, line in enumerate(path.read_text().splitlines(), 1):
            if forbidden.search(line):
                found.append(f"{name}:{number}")

    assert found == []
