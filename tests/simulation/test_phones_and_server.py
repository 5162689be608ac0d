"""The phone's own code against the real server, under faults drawn from a seed."""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest

from tests.people import Kitchen
from tests.simulation.checks import check
from tests.simulation.phones import Phones, build_phones
from tests.simulation.run import Run

SEEDS = int(os.environ.get("KITCHENLOG_SEEDS", "100"))


@pytest.fixture(scope="session")
def phones() -> Iterator[Phones]:
    """The process that all phones live in."""
    build_phones()
    running = Phones()
    yield running
    running.stop()


@pytest.mark.parametrize("seed", range(1, SEEDS + 1))
def test_after_quiet_nothing_is_lost_doubled_or_shown_differently(
    seed: int, phones: Phones, log_db: None, kitchen: Kitchen, no_limits: None
) -> None:
    run = Run(seed, phones, kitchen)

    run.play()

    check(run)
