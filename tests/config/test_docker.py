"""Images cannot be built here: what docker/ names is held to exist instead."""

from __future__ import annotations

import re
import subprocess
import sys
from importlib.util import find_spec
from typing import Any

import pytest
import yaml
from django.core.management import get_commands, load_command_class

from tests.servers import PROJECT

DOCKER = PROJECT / "docker"
FILES = (
    "Caddyfile",
    "Dockerfile",
    "Dockerfile.dockerignore",
    "compose.scale.yaml",
    "compose.yaml",
    "create_app_role.sh",
)
COMPOSE = ("compose.yaml", "compose.scale.yaml")
SETTINGS = (PROJECT / "kitchenlog/config/settings.py").read_text() + (
    PROJECT / "kitchenlog/config/environment.py"
).read_text()


def test_these_files_are_all_there_is() -> None:
    assert sorted(path.name for path in DOCKER.iterdir() if path.name != ".env") == sorted(
        FILES
    )


def test_what_the_image_copies_exists_and_is_let_through() -> None:
    ignored = _text("Dockerfile.dockerignore").splitlines()
    copied = re.findall(r"^COPY (?!--from)(.+) \S+$", _text("Dockerfile"), re.MULTILINE)

    assert copied
    for path in " ".join(copied).split():
        assert (PROJECT / path).exists(), path
        assert any(f"!{part}" in ignored for part in (path, path.split("/")[0])), path


def test_what_the_image_copies_from_its_first_stage_is_made_there() -> None:
    taken = re.findall(r"^COPY --from=build /app/(\S+)", _text("Dockerfile"), re.MULTILINE)

    assert taken == [".venv", "frontend/dist"]


@pytest.mark.parametrize("name", FILES)
def test_every_setting_that_is_named_is_read(name: str) -> None:
    named = set(re.findall(r"\bKITCHENLOG_[A-Z_]+", _text(name)))

    for setting in named:
        assert f'"{setting}"' in SETTINGS, setting


def test_every_management_command_that_is_named_exists_with_its_options() -> None:
    calls = [
        re.findall(r"[\w-]+", call)
        for name in FILES
        for call in re.findall(r"python[\", ]+manage\.py[\", ]+([^\n\]&]+)", _text(name))
    ]

    assert {words[0] for words in calls} == {"migrate", "serve", "start_cooperative"}
    for command, *options in calls:
        known = load_command_class(get_commands()[command], command)
        described = known.create_parser("manage.py", command).format_help()
        for option in options:
            if option.startswith("--"):
                assert option in described, (command, option)


def test_every_python_module_that_is_run_exists() -> None:
    named = set()
    for name in FILES:
        named |= set(re.findall(r"python[\", ]+-m[\", ]+([\w.]+)", _text(name)))

    assert named == {"venv", "whitenoise.compress", "celery"}
    assert all(find_spec(module) for module in named)


def test_the_worker_application_that_is_named_exists() -> None:
    (named,) = set(re.findall(r"--app\", \"([\w.]+):app", _text("compose.scale.yaml")))

    assert named == "kitchenlog.config.celery"
    assert find_spec(named)


def test_npm_scripts_that_are_named_exist() -> None:
    package = yaml.safe_load((PROJECT / "frontend/package.json").read_text())

    for script in re.findall(r"npm run -s (\w+)", _text("Dockerfile")):
        assert script in package["scripts"]


@pytest.mark.parametrize("name", COMPOSE)
def test_files_and_volumes_that_are_mounted_exist(name: str) -> None:
    compose = _compose(name)

    for service in compose["services"].values():
        for mount in service.get("volumes", []):
            place = mount.split(":")[0]
            if place.startswith("."):
                assert (DOCKER / place).exists(), place
            else:
                assert place in compose["volumes"], place


@pytest.mark.parametrize("name", COMPOSE)
def test_services_wait_for_services_that_exist(name: str) -> None:
    services = _compose(name)["services"]

    for service in services.values():
        assert set(service.get("depends_on", [])) <= set(services)
        build = service.get("build")
        if build:
            assert (DOCKER / build["context"] / build["dockerfile"]).exists()


@pytest.mark.parametrize("name", COMPOSE)
def test_the_proxy_asks_the_service_and_port_that_answer(name: str) -> None:
    ((service, port),) = re.findall(r"reverse_proxy (\w+):(\d+)", _text("Caddyfile"))

    assert service in _compose(name)["services"]
    assert f"PORT={port}" in _text("Dockerfile")
    assert f"EXPOSE {port}" in _text("Dockerfile")


def test_scaled_out_exactly_one_process_has_the_clock() -> None:
    services = _compose("compose.scale.yaml")["services"]

    beats = [name for name, one in services.items() if "beat" in one.get("command", [])]
    assert beats == ["beat"]
    assert services["worker"]["environment"]["KITCHENLOG_CLOCK"] == "off"


def test_scaled_out_only_the_migration_is_the_owner_of_the_tables() -> None:
    services = _compose("compose.scale.yaml")["services"]

    owners = [
        name
        for name, one in services.items()
        if "postgres://kitchenlog:" in one.get("environment", {}).get("KITCHENLOG_DATABASE", "")
    ]
    assert owners == ["migrate"]
    assert "CREATE ROLE kitchenlog_app LOGIN NOBYPASSRLS" in _text("create_app_role.sh")


def test_the_shell_script_can_be_read_by_a_shell() -> None:
    done = subprocess.run(
        ["sh", "-n", DOCKER / "create_app_role.sh"], capture_output=True, check=False
    )

    assert done.returncode == 0
    assert (DOCKER / "create_app_role.sh").stat().st_mode & 0o111


def test_the_image_holds_the_python_the_project_asks_for() -> None:
    assert _text("Dockerfile").count("FROM python:3.11-slim") == 2
    assert sys.version_info >= (3, 11)


def _text(name: str) -> str:
    return (DOCKER / name).read_text()


def _compose(name: str) -> Any:
    return yaml.safe_load((DOCKER / name).read_text())
