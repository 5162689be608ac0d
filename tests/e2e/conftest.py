"""A prepared cooperative, copied for each test, and phones that end with the test."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Playwright, expect

from tests.e2e.checks import bring_instruments
from tests.e2e.hearth import Hearth, begin, copied
from tests.e2e.phones import WAIT_MS, Phone
from tests.people import PASSPHRASE
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
    server = KitchenlogServer(folder, is_migrated=True)
    server.start()
    try:
        yield Hearth(server)
    finally:
        server.kill()  # asked to stop it would take seconds, and nobody reads this data again


@pytest.fixture
def new_phone(
    playwright: Playwright, browser_type_launch_args: dict[str, Any], tmp_path: Path
) -> Iterator[Callable[..., Phone]]:
    """Makes phones on profile folders of their own, off until they are started."""
    made: list[Phone] = []

    def make(
        url: str, name: str = "phone", *, copy_of: Path | None = None, **looks: Any
    ) -> Phone:
        folder = tmp_path / f"{name}{len(made)}"
        if copy_of is not None:
            copied(copy_of, folder)
        made.append(Phone(playwright, folder, url, **{**browser_type_launch_args, **looks}))
        return made[-1]

    make.phones = made  # type: ignore[attr-defined] # for the report of a failure
    yield make
    for phone in made:
        phone.put_away()


@pytest.fixture(scope="session")
def _laid_down(
    playwright: Playwright,
    browser_type_launch_args: dict[str, Any],
    _hearth_data: Path,
    tmp_path_factory: pytest.TempPathFactory,
) -> Phone:
    """A processor's phone that holds everything, put away; its server is dead."""
    folder = tmp_path_factory.mktemp("laid down")
    copied(_hearth_data, folder / "server")
    server = KitchenlogServer(folder / "server", is_migrated=True)
    phone = Phone(playwright, folder / "phone", server.url, **browser_type_launch_args)
    server.start()
    try:
        bring_instruments(Hearth(server).desk())
        phone.start().sign_in("pim@hearth", PASSPHRASE)
        phone.until_controlled()
        phone.until_whole()
    finally:
        server.kill()
        phone.put_away()
    return phone


@pytest.fixture
def without_signal(_laid_down: Phone, new_phone: Callable[..., Phone]) -> Phone:
    """A copy of that phone, of this test's own, started where no signal reaches the server."""
    phone: Phone = new_phone(_laid_down.url, copy_of=_laid_down.folder)
    return phone.start()


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
