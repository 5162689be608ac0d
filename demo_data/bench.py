"""What instruments show when they are checked at the bench, each off by its own habit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from random import Random

from demo_data.diary import Body
from demo_data.shown import off_by
from demo_data.story import Row, Story
from kitchenlog.calc.limits import mass_tolerance
from kitchenlog.calc.numbers import plain
from kitchenlog.calc.thermometer_checks import boiling_point_at_altitude
from kitchenlog.calc.water import millilitres_per_gram

CORNERS = ("front", "right", "back", "left")
REPEATS = 5
FILLINGS = {"spoon": 5, "cup": 3, "cylinder": 3}
WATER_C = "24"
FACTOR_PLACES = 6
# mV a pH and at pH 7 of an electrode that is a little worn: 97 % of 59.16 mV.
MILLIVOLTS_A_PH, MILLIVOLTS_AT_7 = 57.4, 4.0


@dataclass(frozen=True, kw_only=True)
class Habit:
    """How an instrument reads: `off` everywhere and `slope` of the value besides, in its unit,
    and as unsteady as `unsteady`, a standard deviation."""

    off: float = 0.0
    slope: float = 0.0
    unsteady: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Bench:
    """One instrument on the bench, and the chance of the day."""

    instrument: Row
    habit: Habit
    chance: Random

    def scale_quick(self, masses: Sequence[str]) -> list[Body]:
        """Empty, and one known mass."""
        return [self._empty("zero"), self._mass("rising", _middle(masses))]

    def scale_whole(self, masses: Sequence[str]) -> list[Body]:
        """Empty, up, down, empty again, off centre, five times the same: as the app asks."""
        middle = _middle(masses)
        corners = [{**self._mass("off_centre", middle), "where": each} for each in CORNERS]
        often = self._mass("repeats", middle, reads=REPEATS)
        return [
            self._empty("zero"),
            *(self._mass("rising", mass) for mass in masses),
            *(self._mass("falling", mass) for mass in reversed(masses[:-1])),
            self._empty("return_to_zero"),
            *corners,
            often,
        ]

    def ice_and_boiling(self, altitude_m: str) -> list[Body]:
        """A thermometer in both waters, at the place it is used in."""
        boils = plain(boiling_point_at_altitude(Decimal(altitude_m)).celsius)
        return [
            {"sort": "ice", "readings": [self._read("0")]},
            {"sort": "boiling", "readings": [self._read(boils)], "altitude_m": altitude_m},
        ]

    def buffers(self, values: Sequence[str], tolerance: str) -> list[Body]:
        """A pH meter in two or three buffers, with what its electrode gives."""
        return [
            {
                **self._known("buffer", value, tolerance),
                "celsius": WATER_C,
                "millivolts": f"{MILLIVOLTS_AT_7 - MILLIVOLTS_A_PH * (float(value) - 7):.1f}",
            }
            for value in values
        ]

    def compared(self, values: Sequence[str], tolerance: str) -> list[Body]:
        """With solutions of known strength, or with what a better instrument shows."""
        return [self._known("comparison", value, tolerance) for value in values]

    def water(self, scale: Row, tare: str) -> list[Body]:
        """A measure filled with water again and again, on a scale; `habit` is of its mL."""
        factor = millilitres_per_gram(Decimal(WATER_C), FACTOR_PLACES)
        holds = self.instrument["holds"]["amount"]
        masses = [
            Decimal(holds) + Decimal(repr(self._off(holds)))
            for _ in range(FILLINGS[self.instrument["sort"]])
        ]
        readings = [
            off_by(plain(held / factor), float(tare), scale["division"]) for held in masses
        ]
        of_scale = {name: scale[name] for name in ("division", "repeatability")}
        return [
            {"sort": "water", "readings": readings, "celsius": WATER_C, "tare": tare} | of_scale
        ]

    def _empty(self, sort: str) -> Body:
        return {"sort": sort, "readings": [self._read("0")]}

    def _mass(self, sort: str, mass: str, *, reads: int = 1) -> Body:
        limit = mass_tolerance(Decimal(mass), "M1")
        assert limit is not None, mass  # no such weight is made
        readings = [self._read(mass) for _ in range(reads)]
        tolerance = plain(limit.amount)
        return {"sort": sort, "readings": readings, "reference": mass, "tolerance": tolerance}

    def _known(self, sort: str, value: str, tolerance: str) -> Body:
        readings = [self._read(value)]
        return {"sort": sort, "readings": readings, "reference": value, "tolerance": tolerance}

    def _read(self, value: str) -> str:
        return off_by(value, self._off(value), self.instrument["division"])

    def _off(self, value: str) -> float:
        habit = self.habit
        return self.chance.gauss(habit.off + habit.slope * float(value), habit.unsteady)


def bench_of(story: Story, name: str, habit: Habit, chance: Random) -> Bench:
    """The bench with this instrument on it."""
    return Bench(instrument=story.instruments[name], habit=habit, chance=chance)


def _middle(masses: Sequence[str]) -> str:
    return masses[len(masses) // 2]
