"""The worker's rounds over all cooperatives, each in a transaction and a scope of its own."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta

from kitchenlog.logbook.rebuild import QUIET_DAYS, recompute
from kitchenlog.logbook.selectors import heads_with_work
from kitchenlog.logbook.services import close_quiet_sheets, mark_outdated_sheets
from kitchenlog.logbook.turnstile import all_heads, ring
from kitchenlog.members.scope import in_cooperative

SLICE_S = 1.0  # a worker that does one thing at a time must hear its clock in between


def recompute_for_a_slice(*, clock: Callable[[], datetime]) -> None:
    """Work through the stale lists for a second; ring again if that was not enough."""
    until = clock() + timedelta(seconds=SLICE_S)
    for head in heads_with_work():
        # A list with a sheet that cannot be built waits for the sweep, or the ring never ends.
        recompute(head.cooperative, clock=clock, until=until)
        if clock() >= until:
            ring()
            return


def close_quiet(*, at: datetime) -> int:
    """Close quiet sheets of every cooperative; how many were closed.

    Before that, sheets of a fold that has changed since are put on the work list.
    """
    closed = 0
    for head in all_heads():
        with in_cooperative(head.cooperative):
            mark_outdated_sheets(cooperative=head.cooperative_id)
            closed += close_quiet_sheets(
                cooperative=head.cooperative_id, quiet_since=at - timedelta(days=QUIET_DAYS)
            )
    return closed
