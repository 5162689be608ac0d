"""Whether food that was cooling is shown to have been reheated, so that its clock begins anew.

Reheated is 74 degC for 15 s, reached within 2 h: Food Code 3-403.11 as in
tables/cooling_rule.csv. One reading shows no 15 s.
"""

from __future__ import annotations

from kitchenlog.calc.heat_logs import HeatLog

REHEATED_S = 15


class Reheat:
    """Seen reading by reading while the clock of a cooling runs.

    `count` says how often it was shown; `is_in_vain`: it was as hot since the clock runs, but
    that was not shown.
    """

    def __init__(
        self, log: HeatLog, *, hot: int, within_s: int, whole_s: int, near_s: int
    ) -> None:
        """`hot` in thousandths, to be reached `within_s` of the coldest reading and `whole_s`
        of the clock's start; readings further apart than `near_s` are not one stretch."""
        self._log = log
        self._hot = hot
        self._within_s = within_s
        self._whole_s = whole_s
        self._near_s = near_s
        self._coldest: tuple[int, int] | None = None  # and when it was read last
        self._hot_since: int | None = None
        self._is_in_time = False
        self.is_in_vain = False
        self.count = 0

    def step(self, row: int, started_s: int | None) -> bool:
        """Whether this reading shows it; `started_s` is when the clock started at the earliest,
        None where nobody saw that."""
        at, low, high = self._log.at_s[row], self._log.low[row], self._log.high[row]
        if self._coldest is None or high <= self._coldest[0]:
            self._coldest = (high, at)
        if low < self._hot:
            self._hot_since = None
            return False
        if self._hot_since is None or at - self._log.at_s[row - 1] > self._near_s:
            self._hot_since = at
            is_quick = at - self._coldest[1] <= self._within_s
            is_early = started_s is not None and at - started_s <= self._whole_s
            self._is_in_time = is_quick and is_early
        if not self._is_in_time or at - self._hot_since < REHEATED_S:
            self.is_in_vain = True
            return False
        self._coldest, self._hot_since, self.is_in_vain = None, None, False
        self.count += 1
        return True
