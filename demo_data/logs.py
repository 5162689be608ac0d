"""Two logs of temperature: a batch cooled after cooking, and jars kept cold on a market day.

Both are read on the hill kitchen's probe and pass, with room for what it cannot tell.
"""

from __future__ import annotations

from datetime import UTC, datetime, time, timedelta

from demo_data.diary import Body, Diary, Written
from demo_data.story import Story

PROBE = "hill-probe"
PRODUCT = "mango-jam"
AFTER_FILLING = timedelta(minutes=15)
MARKET_OPENS = time(7, 0)
# Minutes since the first reading, and degC: a tray in an ice bath, then the cold room.
COOLED = (
    (0, "78.4"), (20, "58.9"), (30, "55.2"), (50, "41.6"), (70, "31.8"), (90, "24.6"),
    (105, "20.3"), (150, "14.1"), (210, "9.2"), (255, "6.4"), (280, "4.6"),
)  # fmt: skip
# Every half hour, the box opened for each jar that was tasted.
KEPT = ("3.1", "3.3", "3.4", "3.9", "4.1", "3.8", "4.2", "4.0", "4.3", "4.1", "4.4")
STEP_MIN = 30


def log_temperatures(diary: Diary, story: Story) -> None:
    """Write both; of the first two batches of jam that were filled."""
    filled = [each for each in diary.of_kind("output") if each.body["material"] == PRODUCT]
    cooked, tasted = sorted(filled, key=lambda each: each.happened_at)[:2]
    at_s = [minute * 60 for minute, _ in COOLED]
    cooling = _body(story, cooked, at_s, [shown for _, shown in COOLED])
    cooling |= {"came_by": "timer", "judged": _judged(story, "two_stage_cooling")}
    _write(diary, cooked, cooling, at=cooked.happened_at + AFTER_FILLING)
    next_day = tasted.happened_at.astimezone(diary.zone).date() + timedelta(days=1)
    opens = datetime.combine(next_day, MARKET_OPENS, tzinfo=diary.zone)
    held = _body(story, tasted, [n * STEP_MIN * 60 for n in range(len(KEPT))], list(KEPT))
    held |= {"came_by": "typed", "judged": _judged(story, "cold_hold")}
    _write(diary, tasted, held, at=opens)


def _judged(story: Story, by: str) -> Body:
    return {"by": by, "set_by": story.says["code_sets"]}


def _body(story: Story, output: Written, at_s: list[int], temperatures: list[str]) -> Body:
    probe = story.instruments[PROBE]
    return {
        "batch": output.body["batch"],
        "instrument": PROBE,
        "division": probe["division"],
        "unit": probe["unit"],
        "at_s": at_s,
        "temperatures": temperatures,
    }


def _write(diary: Diary, output: Written, body: Body, *, at: datetime) -> None:
    began = at.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
    diary.write(output.by, "heat_log", {**body, "began_at": began}, at)
