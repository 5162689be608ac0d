"""What was recorded of a process beside single readings: logs of time and temperature."""

from __future__ import annotations

from dataclasses import replace

from kitchenlog.calc.heat_logs import AT_S_MAX, ROWS_MAX
from kitchenlog.entries.kinds.fields import (
    SENTENCE_CHARS,
    Field,
    Kind,
    choice,
    decimal,
    decimals,
    group,
    id_of,
    moment,
    text,
    whole,
    wholes,
)

HEAT_UNITS = ("degC", "degF")
HEAT_RULES = (
    "lethality", "two_stage_cooling", "ambient_cooling", "received_cooling",
    "hot_hold", "cold_hold", "time_4_h", "time_6_h",
)  # fmt: skip
# Of tables/lethal_references.csv; "own" is one that a process authority or a recipe names.
HEAT_REFERENCES = (
    "f0", "f0_250_f", "acidified_from_4_1", "acidified_below_4_1", "beer", "beer_1_393",
    "acid_foods", "tomato_beverages", "pickle_quality", "own",
)  # fmt: skip


def _temperatures(name: str) -> Field:
    """Digits and bounds keep 10 000 rows of any log within 200 KiB."""
    general = decimals(name, most_items=ROWS_MAX)
    return replace(general, digits=6, places=3, least="-100", most="999.999")


PROCESS_KINDS: tuple[Kind, ...] = (
    Kind(
        name="heat_log",
        says="Temperatures of a batch over time, and what they are judged by.",
        fields=(
            id_of("batch"),
            text("step", most=20, needed=False),
            id_of("instrument", needed=False),
            decimal("division", least="0", needed=False),  # of its display, in `unit`
            decimal("repeatability", least="0", needed=False),
            choice("came_by", "typed", "pasted", "file", "timer"),
            choice("unit", *HEAT_UNITS),
            moment("began_at"),
            wholes("at_s", most=AT_S_MAX, most_items=ROWS_MAX),  # since it began
            _temperatures("temperatures"),  # one for each of `at_s`
            # Rows of a file or a text that hold no reading.
            whole("left_out", most=1_000_000, needed=False),
            group(
                "judged",
                choice("by", *HEAT_RULES),
                text("set_by"),
                choice("reference", *HEAT_REFERENCES, needed=False),
                # Of an own reference; the others are named.
                decimal("t_ref", least="-100", most="1000", places=3, needed=False),
                decimal("z", least="0", most="1000", places=3, needed=False),
                choice("reference_unit", *HEAT_UNITS, needed=False),
                decimal("wanted_min", least="0", most="100000", needed=False),
                # The end of preparation, the receipt, or when it was taken out; when used up.
                whole("from_s", most=AT_S_MAX, needed=False),
                whole("to_s", most=AT_S_MAX, needed=False),
                needed=False,
            ),
            text("action", most=SENTENCE_CHARS, needed=False),  # what was done about it
        ),
        subjects=("batch:{batch}",),
        mentions=("instrument:{instrument}",),
        leans_on=("instrument:{instrument}",),
    ),
)
