"""When a time-temperature log falls through a limit, in exact seconds.

A crossing lies on the straight line between two readings, which on a decaying curve is late.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Self

from kitchenlog.calc.heat_logs import HeatLog
from kitchenlog.calc.numbers import ONE, difference, divided, product

MINUTE_PLACES = 2
# How far apart the readings around a limit may be for a straight line to decide; own proposal.
NEAR_S = 1800
MINUTE_S = Decimal(60)


@dataclass(frozen=True, kw_only=True)
class Seconds:
    """An exact time or span: `over` / `under` seconds."""

    over: Decimal
    under: Decimal

    @classmethod
    def whole(cls, second: int) -> Self:
        """A whole number of seconds."""
        return cls(over=Decimal(second), under=ONE)

    def since(self, start: Seconds) -> Seconds:
        """The span from `start` to this time."""
        over = difference(product(self.over, start.under), product(start.over, self.under))
        return Seconds(over=over, under=product(start.under, self.under))

    def exceeds(self, limit_s: Decimal) -> bool:
        """Whether the span is longer than so many seconds; as long is not longer."""
        return self.over > product(limit_s, self.under)

    def minutes(self) -> Decimal:
        """The span in minutes, rounded to MINUTE_PLACES."""
        return divided(self.over, product(self.under, MINUTE_S), MINUTE_PLACES)


@dataclass(frozen=True, kw_only=True)
class Crossing:
    """When a limit was passed: between two readings, and on the straight line between them.

    `earliest_s` is None where it was before the first reading; both are alike where a reading
    is exactly the limit.
    """

    earliest_s: int | None
    latest_s: int
    line: Seconds

    @classmethod
    def at_reading(cls, second: int, *, earliest_s: int | None) -> Self:
        """Known only to have happened by this reading."""
        return cls(earliest_s=earliest_s, latest_s=second, line=Seconds.whole(second))

    @classmethod
    def into(cls, log: HeatLog, values: Sequence[int], *, row: int, limit: int) -> Self:
        """Where `values` (thousandths of a degree) of a log fall through `limit` between the
        reading before `row` and that one."""
        at = log.at_s[row]
        if row == 0:
            return cls.at_reading(at, earliest_s=None)
        before, above, below = log.at_s[row - 1], values[row - 1], values[row]
        over = before * (above - below) + (above - limit) * (at - before)
        return cls(
            earliest_s=at if below == limit else before,
            latest_s=before if above == limit else at,
            line=Seconds(over=Decimal(over), under=Decimal(above - below)),
        )

    @property
    def is_near(self) -> bool:
        """Whether the readings around it are close enough for a straight line to decide."""
        return self.earliest_s is not None and self.latest_s - self.earliest_s <= NEAR_S
