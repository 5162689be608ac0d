"""A prepared cooperative, copied for each test, and phones that end with the test."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Playwright, expect

from tests.e2e.hearth import Hearth, begin, copied
from tests.e2e.phones import WAIT_MS, Phone
from tests.servers import KitchenlogServer

expect.set_options(timeout=WAIT_MS)


@pytest.fixture(scope="session")
def _hearth_data(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The data folder of a stopped server whose cooperative is set up."""
    folder = tmp_path_factory.mktemp("hearth")
    server = KitchenlogServer(folder)
    server.start()
    try:
        begin(server)
    finally:
        server.stop()
    return folder


@pytest.fixture
def hearth(_hearth_data: Path, tmp_path: Path) -> Iterator[Hearth]:
    """The cooperative on a server of this test's own, running."""
    folder = tmp_path / "server"
    copied(_hearth_data, folder)
    server = KitchenlogServer(folder)
    server.start()
    try:
        yield Hearth(server)
    finally:
        server.stop()


@pytest.fixture
def new_phone(
    playwright: Playwright, browser_type_launch_args: dict[str, Any], tmp_path: Path
) -> Iterator[Callable[..., Phone]]:
    """Makes phones on profile folders of their own, off until they are started."""
    made: list[Phone] = []

    def make(url: str, name: str = "phone", **looks: Any) -> Phone:
        folder = tmp_path / f"{name}{len(made)}"
        made.append(Phone(playwright, folder, url, **{**browser_type_launch_args, **looks}))
        return made[-1]

    make.phones = made  # type: ignore[attr-defined] # for the report of a failure
    yield make
    for phone in made:
        phone.put_away()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item, call: pytest.CallInfo[None]) -> Any:
    """With a failure comes what each phone showed at that moment."""
    report = yield
    make = getattr(item, "funcargs", {}).get("new_phone")
    if report.when == "call" and report.failed and make is not None:
        for phone in make.phones:
            report.sections.append((f"{phone.folder.name} shows", phone.shown()))
            report.sections.append((f"{phone.folder.name} says", "\n".join(phone.trouble)))
    return report
