"""The simulation must bite: a law broken on purpose in a phone is found within a few seeds."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.people import Kitchen
from tests.simulation.checks import check
from tests.simulation.phones import BUNDLE, Phones, build_phones
from tests.simulation.run import Run

SEEDS_MAX = 25

# What is broken: the words of the bundled phones, and what stands there instead.
MUTANTS = {
    "an answer about one entry empties the whole outbox": (
        "await outbox.delete(result.id);",
        "await outbox.clear();",
    ),
    "the counter of a device is not kept": (
        'writeMeta(tx.objectStore("meta"), { device_seq })',
        "Promise.resolve()",
    ),
    "the cursor moves past entries that were not taken in": (
        'change.type === "entry" ? await takeInEntry(tx, held, change)',
        'change.type === "entry" ? change.seq % 3 === 0 ? []'
        " : await takeInEntry(tx, held, change)",
    ),
    "what is kept aside is forgotten": (
        'await tx.objectStore("attention").put(',
        "void (",
    ),
    "a phone adds up in the order of arrival": (
        "TEXT_ORDER(a.happened_at, b.happened_at) || rank(a.kind)",
        "(a.seq ?? 0) - (b.seq ?? 0) || rank(a.kind)",
    ),
    "a reset throws own entries away": (
        'await tx.objectStore("sheets").clear();',
        'await tx.objectStore("sheets").clear(); meta.device = "nobody";',
    ),
    "the words of a portal are taken for an answer": (
        'if (outcome.code === "too_large" || outcome.code === "unreadable") {',
        'if (outcome.code === "nonsense")'
        ' for (const row of rows) await task.db.delete("outbox", row.id);'
        ' if (outcome.code === "too_large" || outcome.code === "unreadable") {',
    ),
}


@pytest.fixture(scope="session")
def bundle() -> str:
    """The phones as they are."""
    build_phones()
    return BUNDLE.read_text()


@pytest.fixture
def broken_phones(
    bundle: str, request: pytest.FixtureRequest, tmp_path: Path
) -> Iterator[Phones]:
    """Phones with one law broken."""
    words, instead = MUTANTS[request.param]
    assert bundle.count(words) == 1, f"{bundle.count(words)} places say {words!r}"
    broken = tmp_path / "phones.mjs"
    broken.write_text(bundle.replace(words, instead))
    running = Phones(broken)
    yield running
    running.stop()


@pytest.mark.parametrize("broken_phones", MUTANTS, indirect=True)
def test_a_broken_law_is_found_within_a_few_seeds(
    broken_phones: Phones, log_db: None, no_limits: None
) -> None:
    for seed in range(1, SEEDS_MAX + 1):
        run = Run(seed, broken_phones, Kitchen(f"kitchen{seed}"))
        try:
            run.play()
            check(run)
        except AssertionError:
            return
    raise AssertionError(f"{SEEDS_MAX} seeds did not find it")
