"""The processes of `manage.py serve`, really started and really killed."""

from __future__ import annotations

import os
import signal
import subprocess
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.servers import KitchenlogServer

WAIT_S_MAX = 20


@pytest.fixture(scope="module")
def standing(tmp_path_factory: pytest.TempPathFactory) -> Iterator[KitchenlogServer]:
    """One server for the tests after which it still stands."""
    running = KitchenlogServer(tmp_path_factory.mktemp("standing"))
    running.start()
    yield running
    running.stop()


def test_it_says_where_it_is(standing: KitchenlogServer) -> None:
    log = (standing.folder / "server.log").read_text()

    assert f"kitchenlog is at http://localhost:{standing.port}" in log


def test_the_worker_of_the_file_broker_is_seen_working(standing: KitchenlogServer) -> None:
    seen: Path = standing.folder / "worker_seen"

    _until(seen.exists)
    first = seen.stat().st_mtime_ns

    _until(lambda: seen.stat().st_mtime_ns > first)


def test_a_killed_worker_and_a_killed_web_server_come_back(standing: KitchenlogServer) -> None:
    worker, web = _child(standing, "celery"), _child(standing, "granian")

    os.kill(worker, signal.SIGKILL)
    os.kill(web, signal.SIGKILL)

    _until(lambda: _children(standing, "celery") not in ([], [worker]))
    _until(lambda: _children(standing, "granian") not in ([], [web]))
    _until(standing.answers)
    log = (standing.folder / "server.log").read_text()
    assert "worker ended (-9); starting it again" in log
    assert "web ended (-9); starting it again" in log


def test_no_process_of_the_web_server_outlives_it(standing: KitchenlogServer) -> None:
    web = _child(standing, "granian")
    own = _descendants(web)

    os.kill(web, signal.SIGKILL)

    assert len(own) >= 2
    _until(lambda: not any(map(_is_alive, own)))


def test_term_ends_every_process(server: KitchenlogServer) -> None:
    everybody = _descendants(_pid(server))

    server.stop()

    assert len(everybody) >= 4
    _until(lambda: not any(map(_is_alive, everybody)))


def test_no_process_outlives_a_killed_supervisor(server: KitchenlogServer) -> None:
    everybody = _descendants(_pid(server))

    os.kill(_pid(server), signal.SIGKILL)

    _until(lambda: not any(map(_is_alive, everybody)))
    assert not server.answers()


def test_what_was_begun_is_there_after_a_power_cut(server: KitchenlogServer) -> None:
    server.manage(
        "start_cooperative", "--name", "Hearth", "--handle", "hearth", "--time-zone",
        "Europe/Dublin", "--currency", "EUR", "--language", "en",
    )  # fmt: skip

    server.kill()
    server.start()

    assert "Hearth has begun already." in server.manage(
        "start_cooperative", "--handle", "hearth"
    )


def _pid(server: KitchenlogServer) -> int:
    assert server.process is not None
    return server.process.pid


def _child(server: KitchenlogServer, word: str) -> int:
    _until(lambda: _children(server, word) != [])
    return _children(server, word)[0]


def _children(server: KitchenlogServer, word: str) -> list[int]:
    return [pid for pid in _pids_below(_pid(server)) if word in _words(pid)]


def _descendants(pid: int) -> list[int]:
    below = _pids_below(pid)
    return below + [each for child in below for each in _descendants(child)]


def _pids_below(pid: int) -> list[int]:
    found = subprocess.run(
        ["ps", "--ppid", str(pid), "-o", "pid="], capture_output=True, text=True, check=False
    )
    return [int(word) for word in found.stdout.split()]


def _words(pid: int) -> str:
    try:
        return Path(f"/proc/{pid}/cmdline").read_bytes().decode().replace("\0", " ")
    except OSError:
        return ""


def _is_alive(pid: int) -> bool:
    try:
        return "\nState:\tZ" not in Path(f"/proc/{pid}/status").read_text()
    except OSError:
        return False


def _until(is_so: Callable[[], bool]) -> None:
    until = time.monotonic() + WAIT_S_MAX
    while not is_so():
        if time.monotonic() > until:
            pytest.fail(f"Waited {WAIT_S_MAX} s in vain.")
        time.sleep(0.05)
