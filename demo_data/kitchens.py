"""One batch as its processor writes it down, from the first crate to the packs in the store."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import ROUND_CEILING, Decimal
from random import Random

from demo_data.diary import Body, Diary
from demo_data.runs import Run, scale_for
from demo_data.shelf import Lot
from demo_data.shown import places_of, shown
from demo_data.store import Store, quantity
from demo_data.story import Row, Story
from kitchenlog.calc.shelf_life import last_day

BROUGHT_BY = {"g": Decimal(500), "mL": Decimal(500), "pc": Decimal(10)}
STEP_MINUTES = 25
FOUND_OUT_AFTER = timedelta(minutes=50)
INSTRUMENTS = {"brix": "hand-refractometer", "ph": "ph-meter"}


@dataclass
class Minutes:
    """A clock that goes on by so many minutes each time it is read."""

    at: datetime

    def later(self, minutes: int) -> datetime:
        """The moment this many minutes after the last one."""
        self.at += timedelta(minutes=minutes)
        return self.at


@dataclass(frozen=True, kw_only=True)
class Kitchens:
    """Where batches are made; `versions` names the entry of each recipe's version, `chance` is
    that of repeated readings alone."""

    story: Story
    diary: Diary
    store: Store
    versions: Mapping[str, str]
    chance: Random

    def make(self, run: Run) -> str:
        """One batch, and its id; what is not finished ends with the last step that was read."""
        clock = Minutes(run.at)
        self._bring(run, clock)
        batch = self._start(run, clock)
        lines = run.recipe["lines"]
        for line in lines:
            self._lay_out(run, batch, line, clock)
        for line in lines:
            if not self._is_packaging(line):
                self._weigh_in(run, batch, line, clock)
        self._losses(run, batch, "preparation", clock)
        self._steps(run, batch, clock)
        if run.is_finished:
            for line in filter(self._is_packaging, lines):
                self._weigh_in(run, batch, line, clock)
            self._losses(run, batch, "filling", clock)
            self._finish(run, batch, clock)
        return batch

    def _bring(self, run: Run, clock: Minutes) -> None:
        """From the store to the kitchen, in round amounts; what is over stays there."""
        kitchen, shelf = run.recipe["kitchen"], self.store.shelf
        for line in run.recipe["lines"]:
            material, step = line["material"], BROUGHT_BY[line["amount"]["unit"]]
            missing = run.nets[line["line"]] - shelf.on_hand(material, kitchen)
            wanted = (missing / step).to_integral_value(ROUND_CEILING) * step
            for lot, amount in shelf.portions(material, "store", wanted):
                at = clock.later(1)
                self.store.transfer(run.by, lot, amount, at, way=("store", kitchen))

    def _start(self, run: Run, clock: Minutes) -> str:
        recipe, at = run.recipe, clock.later(15)
        batch = self.diary.new_id(f"batch {recipe['recipe']} {run.by}", at)
        body: Body = {
            "batch": batch,
            "code": self.diary.new_code(run.by, f"B{recipe['recipe'][0].upper()}", at),
            "recipe": recipe["recipe"],
            "recipe_version": self.versions[recipe["recipe"]],
            "place": recipe["kitchen"],
            "scaled_by": "as_written",
        }
        copied = ("product", "makes", "lines", "steps", "target_solids_percent")
        body |= {name: recipe[name] for name in copied if name in recipe}
        self.diary.write(run.by, "batch_started", body, at)
        return batch

    def _is_packaging(self, line: Row) -> bool:
        return bool(self.story.materials[line["material"]]["sort"] == "packaging")

    def _lay_out(self, run: Run, batch: str, line: Row, clock: Minutes) -> None:
        lots = [{"lot": lot.code} for lot, _ in self._portions(run, line)]
        body = {"batch": batch, "line": line["line"], "lots": lots}
        self.diary.write(run.by, "laid_out", body, clock.later(1))

    def _portions(self, run: Run, line: Row) -> list[tuple[Lot, Decimal]]:
        kitchen, net = run.recipe["kitchen"], run.nets[line["line"]]
        portions = self.store.shelf.portions(line["material"], kitchen, net)
        assert sum(amount for _, amount in portions) == net, (run, line)  # the store ran dry
        return portions

    def _weigh_in(self, run: Run, batch: str, line: Row, clock: Minutes) -> None:
        for lot, amount in self._portions(run, line):
            for load in self._loads(amount, lot.unit):
                body: Body = {
                    "batch": batch,
                    "line": line["line"],
                    "material": line["material"],
                    "lot": lot.code,
                    "place": run.recipe["kitchen"],
                }
                if lot.unit == "pc":
                    body["counted"] = quantity(load, "pc")
                else:
                    reading = self._reading(self._scale(run, line, load), load)
                    is_repeated = line["line"] in run.read_thrice
                    body["reading"] = self._repeated(reading) if is_repeated else reading
                self._write_weigh_in(run, body, clock)
            self.store.shelf.take(lot.code, run.recipe["kitchen"], amount)

    def _loads(self, amount: Decimal, unit: str) -> Iterator[Decimal]:
        """A cylinder is filled as often as it takes; all else goes on the scale at once."""
        most = Decimal(self.story.instruments["tall-cylinder"]["capacity"])
        while unit == "mL" and amount > most:
            yield most
            amount -= most
        yield amount

    def _write_weigh_in(self, run: Run, body: Body, clock: Minutes) -> None:
        if run.forgets_tare_of != body["line"]:
            self.diary.write(run.by, "weigh_in", body, clock.later(3))
            return
        reading = {name: text for name, text in body["reading"].items() if name != "tare"}
        wrong = self.diary.write(
            run.by, "weigh_in", {**body, "reading": reading}, clock.later(3)
        )
        found_out_at, reason = clock.at + FOUND_OUT_AFTER, self.story.says["forgot_tare"]
        self.diary.correct(run.by, wrong, body=body, reason=reason, at=found_out_at)

    def _scale(self, run: Run, line: Row, load: Decimal) -> str:
        if line["amount"]["unit"] == "mL":
            return "tall-cylinder"
        return run.on_scale.get(line["line"]) or scale_for(run.recipe, load)

    def _reading(self, name: str, net: Decimal) -> Body:
        """As the instrument shows it: gross, with as many places as its division has."""
        instrument = self.story.instruments[name]
        tare, division = instrument.get("bowl_tare", "0"), instrument["division"]
        places = places_of(division)
        reading: Body = {
            "instrument": name,
            "unit": instrument["unit"],
            "shown": f"{net + Decimal(tare):.{places}f}",
            "division": division,
        }
        if "repeatability" in instrument:
            reading["repeatability"] = instrument["repeatability"]
        return {**reading, "tare": tare} if "bowl_tare" in instrument else reading

    def _repeated(self, reading: Body) -> Body:
        """Twice more the same load: as much below the first reading as above it."""
        off = self.chance.choice((0, 1, 1, 2)) * Decimal(reading["division"])
        first, division = Decimal(reading["shown"]), reading["division"]
        repeats = [shown(each, division) for each in (first - off, first + off)]
        return {**reading, "repeats": repeats}

    def _losses(self, run: Run, batch: str, stage: str, clock: Minutes) -> None:
        for loss in run.losses:
            if loss.stage == stage:
                body: Body = {"batch": batch, "amount": quantity(loss.amount_g, "g")}
                body |= {"reason": loss.reason, "stage": stage}
                body |= {} if loss.line is None else {"line": loss.line}
                self.diary.write(run.by, "loss", body, clock.later(6))

    def _steps(self, run: Run, batch: str, clock: Minutes) -> None:
        """A check that nobody read yet is left open."""
        minutes = run.recipe.get("takes_minutes", {})
        for step in run.recipe["steps"]:
            name = step["step"]
            body: Body = {"batch": batch, "step": name}
            if name in run.read:
                body["reading"] = self._reading(_instrument(run.recipe, step), run.read[name])
            elif "measures" in step:
                continue
            if name in run.action:
                body["action"] = run.action[name]
            self.diary.write(
                run.by, "step_done", body, clock.later(minutes.get(name, STEP_MINUTES))
            )

    def _finish(self, run: Run, batch: str, clock: Minutes) -> None:
        product, at = self.story.materials[run.recipe["product"]], clock.later(10)
        rule, kitchen = run.recipe["life"], run.recipe["kitchen"]
        on = at.astimezone(self.diary.zone).date().isoformat()
        life_on = last_day(on, sort=rule["sort"], length=rule["length"], unit=rule["unit"])
        code = self.diary.new_code(run.by, product["letters"], at)
        body: Body = {
            "batch": batch,
            "lot": code,
            "material": product["material"],
            "place": kitchen,
            "amount": quantity(Decimal(run.good), "pc"),
            "pack_net": product["pack_net"],
            "rejected": quantity(Decimal(run.rejected), "pc"),
            "life": {"sort": rule["sort"], "on": life_on},
        }
        self.diary.write(run.by, "output", body, at)
        lot, good = Lot(code, product["material"], "pc", life_on), Decimal(run.good)
        self.store.shelf.put(lot, kitchen, good)
        self.diary.write(run.by, "batch_finished", {"batch": batch}, clock.later(4))
        self.store.transfer(run.by, lot, good, clock.later(30), way=(kitchen, "store"))


def _instrument(recipe: Row, step: Row) -> str:
    if step["measures"] == "temperature":
        return str(recipe["thermometer"])
    return INSTRUMENTS.get(step["measures"]) or str(recipe["scale"])
