"""Limits of a process that are one number, with who set them: tables/process_limits.csv."""

from kitchenlog.calc.heat_tables import PROCESS_LIMIT_ROWS, ProcessLimitRow


def process_limit(key: str) -> ProcessLimitRow:
    """The row of a limit: "acid_ph", "water_activity", "low_acid_f0" and so on; a row without
    a figure only says something. Raises ValueError for another key."""
    for row in PROCESS_LIMIT_ROWS:
        if row.key == key:
            return row
    raise ValueError(f"no limit is called {key!r}")
