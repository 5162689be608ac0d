"""Starts the web server and the worker, starts again what ends, and takes both down."""

from __future__ import annotations

import ctypes
import logging
import os
import signal
import subprocess
import time
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from types import FrameType

STOP_S_MAX = 15
SHORT_LIFE_S = 10  # who ends sooner is started again more slowly, or a typo fills the log
PAUSE_S = 2.0
PR_SET_PDEATHSIG = 1

logger = logging.getLogger(__name__)


class Told(Exception):  # noqa: N818 not an error
    """TERM or INT arrived."""


@dataclass
class Child:
    """One process that is to be there."""

    name: str
    argv: Sequence[str]
    is_once: bool = False  # done when it ends, like loading the demo
    process: subprocess.Popen[bytes] | None = None
    started_s: float = field(default=0.0)

    def start(self, folder: Path) -> None:
        """Start it so that it cannot outlive us."""
        self.process = subprocess.Popen(  # noqa: S603 our own words only
            self.argv,
            cwd=folder,
            stdin=subprocess.DEVNULL,
            preexec_fn=die_with_parent,  # noqa: PLW1509 this process has one thread
        )
        self.started_s = time.monotonic()

    def has_ended(self) -> bool:
        """Whether it was started and is gone."""
        return self.process is not None and self.process.poll() is not None


def die_with_parent(by: signal.Signals = signal.SIGTERM) -> None:
    """Ask the kernel for a signal when the parent is gone; kill -9 leaves no other way."""
    ctypes.CDLL(None).prctl(PR_SET_PDEATHSIG, by)


def supervise(children: Sequence[Child], *, folder: Path) -> None:
    """Keep the children running until TERM or INT, then end them within STOP_S_MAX."""
    for number in (signal.SIGTERM, signal.SIGINT):
        signal.signal(number, _tell)
    try:
        for child in children:
            child.start(folder)
        while True:
            _wait_for_any_end()
            for child in children:
                if child.has_ended():
                    _start_again(child, folder)
    except Told:
        logger.info("stopping")
    finally:
        _end(children)


def _tell(_number: int, _frame: FrameType | None) -> None:
    """Told once is enough: a second word while stopping would end it half-way."""
    for number in (signal.SIGTERM, signal.SIGINT):
        signal.signal(number, signal.SIG_IGN)
    raise Told


def _wait_for_any_end() -> None:
    """Sleep until a child has ended, and leave it for `poll` to take note of."""
    os.waitid(os.P_ALL, 0, os.WEXITED | os.WNOWAIT)


def _start_again(child: Child, folder: Path) -> None:
    assert child.process is not None
    code = child.process.returncode
    if child.is_once:
        logger.info("%s is done (%s)", child.name, code)
        child.process = None
        return
    logger.error("%s ended (%s); starting it again", child.name, code)
    if time.monotonic() - child.started_s < SHORT_LIFE_S:
        time.sleep(PAUSE_S)
    child.start(folder)


def _end(children: Sequence[Child]) -> None:
    running = [c.process for c in children if c.process is not None and not c.has_ended()]
    for process in running:
        process.terminate()
    until = time.monotonic() + STOP_S_MAX
    for process in running:
        try:
            process.wait(max(0.1, until - time.monotonic()))
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait()
