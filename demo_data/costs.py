"""What batches cost beside their lots: who worked how long, fuel, and the rates in force."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from random import Random

from demo_data.diary import Body, Diary, Written
from demo_data.story import SEED, Story

WRITES_COSTS = "bettina"
# Production pack 1.9 [B01]: 6.5 h at 62.50, fuel 85.00, overhead 120.00.
RATES: Body = {
    "pay_per_hour": "62.50",
    "overhead": {"by": "batch", "rate": "120.00"},
    "proposal": {"of": "price", "percent": "30", "coin": "0.50", "rule": "up"},
}
B01_WORK = (("devan", "240"), ("noor", "150"))
B01_FUEL = "85.00"
FUEL = {"mango-jam": (70, 100), "cucumber-pickle": (40, 60), "coconut-biscuits": (50, 80)}
WORK_MINUTES = (150, 400, 5)
HELPERS = ("noor", "marisol", "joram", "devan")


def write_costs(diary: Diary, story: Story, *, begins_on: date, b01: str) -> None:
    """Work and fuel of every finished batch; their own chance leaves the rest as it was."""
    chance = Random(f"{SEED} costs {begins_on.weekday()}")  # noqa: S311 a story, not a secret
    at = datetime.combine(begins_on, time(6, 55), diary.zone)
    rates = {"cooperative": diary.house.cooperative, "since": begins_on.isoformat(), **RATES}
    diary.write("ilsa", "rates_set", rates, at)
    starts = {each.body["batch"]: each for each in diary.of_kind("batch_started")}
    for finished in diary.of_kind("batch_finished"):
        batch = finished.body["batch"]
        start, drawn = starts[batch], _drawn(chance)
        fuel = chance.randint(*FUEL.get(start.body["recipe"], (30, 45)))
        is_worked = batch == b01
        work = B01_WORK if is_worked else drawn
        _write(diary, story, finished, work=work, fuel=B01_FUEL if is_worked else f"{fuel}.00")


def _drawn(chance: Random) -> tuple[tuple[str, str], ...]:
    """One helper, or two."""
    helpers = chance.sample(HELPERS, chance.randint(1, 2))
    return tuple((helper, str(chance.randrange(*WORK_MINUTES))) for helper in helpers)


def _write(
    diary: Diary,
    story: Story,
    finished: Written,
    *,
    work: tuple[tuple[str, str], ...],
    fuel: str,
) -> None:
    """Everybody writes down their own minutes; the coordinator what the gas cost."""
    batch, at = finished.body["batch"], finished.happened_at
    for number, (login, minutes) in enumerate(work, start=1):
        member = diary.house.phones[login].member
        worked = {"batch": batch, "member": member, "minutes": minutes}
        diary.write(login, "labour", worked, at + timedelta(minutes=number))
    spent = {
        "batch": batch,
        "part": "fuel",
        "amount": fuel,
        "currency": story.cooperative["currency"],
    }
    diary.write(WRITES_COSTS, "expense", spent, at + timedelta(minutes=5))
