"""What thumbs do: entries drawn from a seed, about so few things that people often meet."""

from __future__ import annotations

from dataclasses import dataclass, field
from random import Random
from typing import Any
from uuid import UUID

Body = dict[str, Any]
Act = tuple[str, Body]

PLACES = ("kitchen-1", "store-1", "stall-1")
MATERIALS = {"fruit": "g", "sugar": "g", "jar": "pc"}
LINES = ("1", "2")
BENCH_SHARE = 0.4
SCALES = ("scale-1", "scale-2")
DAYS = ("2026-11-09", "2026-11-10", "2026-11-11")


@dataclass
class Story:
    """What has happened so far, as far as the next thumb needs to know."""

    chance: Random
    lots: list[tuple[str, str]] = field(default_factory=list)  # code, unit
    batches: list[str] = field(default_factory=list)
    made: list[tuple[str, str, Body]] = field(default_factory=list)  # id, kind, body
    scales: set[str] = field(default_factory=set)
    count: int = 0

    def act(self, mark: str) -> Act:
        """The next thing somebody does on the device with this mark."""
        if self.chance.random() < BENCH_SHARE:
            return self._at_the_bench(mark)
        ways = [
            self._receipt, self._batch_started, self._definition, self._edit, self._scale,
            self._check, self._check,
        ]  # fmt: skip
        if self.lots:
            moves = (
                self._sale, self._sale, self._count, self._transfer, self._return,
                self._dispatch, self._loss, self._topped_up, self._note, self._price,
            )  # fmt: skip
            ways += moves
        if self.lots and self.batches:
            ways += [self._laid_out, self._weigh_in, self._weigh_in, self._output]
        if self.batches:
            ways += [self._step, self._batch_loss, self._finish]
        return self.chance.choice(ways)(mark)

    def _at_the_bench(self, mark: str) -> Act:
        """Weighing and checking what weighs, so that the two often meet."""
        if not self.lots:
            return self._receipt(mark)
        if not self.batches:
            return self._batch_started(mark)
        return self.chance.choice((self._weigh_in, self._weigh_in, self._check))(mark)

    def remember(self, entry: Body) -> None:
        """Something was saved: others may correct it."""
        self.made.append((entry["id"], entry["kind"], entry["body"]))

    def corrected(self) -> tuple[str, Body] | None:
        """An entry and a new body for it."""
        known = [(one, body) for one, _, body in self.made if {"amount", "steps"} & set(body)]
        known = [(one, body) for one, body in known if "batch" not in body or "amount" in body]
        if not known:
            return None
        entry, body = self.chance.choice(known)
        if "amount" not in body:
            return entry, self._check("")[1]
        changed = {**body, "amount": self._amount(body["amount"]["unit"])}
        if "lot" in body and self.chance.random() < 0.3:
            changed["lot"] = self._lot()[0]  # it was another lot: its sheet changes too
        return entry, changed

    def _amount(self, unit: str) -> Body:
        count = self.chance.randrange(1, 20)
        amount = (
            str(count) if unit == "pc" else f"{count}.{self.chance.choice(('5', '50', '0'))}"
        )
        return {"amount": amount, "unit": unit}

    def _new_code(self, mark: str) -> str:
        self.count += 1
        return f"L-261110-{mark}-{self.count}"

    def _lot(self) -> tuple[str, str]:
        return self.chance.choice(self.lots)

    def _at(self, **more: Any) -> Body:
        code, unit = self._lot()
        place = self.chance.choice(PLACES)
        return {"lot": code, "amount": self._amount(unit), "place": place, **more}

    def _receipt(self, mark: str) -> Act:
        material, unit = self.chance.choice(list(MATERIALS.items()))
        code = self._new_code(mark)
        self.lots.append((code, unit))
        body = {
            "lot": code,
            "material": material,
            "source": "farm-1",
            "amount": self._amount(unit),
            "place": self.chance.choice(PLACES),
            "condition": self.chance.choice(("fit", "fit", "fit", "refused")),
            "life": {"sort": "use_by", "on": self.chance.choice(DAYS)},
        }
        return "receipt", body

    def _price(self, mark: str) -> Act:
        return "price_paid", {"lot": self._lot()[0], "price": "12.50", "currency": "EUR"}

    def _sale(self, mark: str) -> Act:
        price = {"price_each": "3.20"} if self.chance.random() < 0.7 else {}
        return "sale", self._at(on=self.chance.choice(DAYS), **price)

    def _return(self, mark: str) -> Act:
        condition = self.chance.choice(("fit", "unfit"))
        on = self.chance.choice(DAYS)
        return "return", self._at(on=on, condition=condition, reason="unsold")

    def _count(self, mark: str) -> Act:
        return "count", self._at()

    def _transfer(self, mark: str) -> Act:
        body = self._at()
        body["from_place"] = body.pop("place")
        body["to_place"] = self.chance.choice(PLACES)
        return "transfer", body

    def _dispatch(self, mark: str) -> Act:
        return "dispatch", self._at(recipient="shop-1")

    def _loss(self, mark: str) -> Act:
        return "loss", self._at(reason="breakage")

    def _topped_up(self, mark: str) -> Act:
        old, unit = self._lot()
        code = self._new_code(mark)
        self.lots.append((code, unit))
        body = {
            "lot": code,
            "material": "fruit",
            "place": self.chance.choice(PLACES),
            "from": [{"lot": old, "amount": self._amount(unit)}],
        }
        return "topped_up", body

    def _note(self, mark: str) -> Act:
        return "note", {"subject": f"lot:{self._lot()[0]}", "says": "smells <b>fine</b> é"}

    def _batch_started(self, mark: str) -> Act:
        batch = f"batch-{mark}-{len(self.batches) + 1}"
        self.batches.append(batch)
        lines = [
            {"line": line, "material": material, "amount": {"amount": "10", "unit": "g"},
             "below": "0.5", "above": "0.5"}
            for line, material in zip(LINES, ("fruit", "sugar"), strict=True)
        ]  # fmt: skip
        body = {
            "batch": batch,
            "code": self._new_code(mark),
            "recipe": "jam-1",
            "recipe_version": str(UUID(int=self.chance.getrandbits(128), version=4)),
            "product": "jar",
            "place": "kitchen-1",
            "makes": {"amount": "10", "unit": "pc"},
            "scaled_by": "as_written",
            "lines": lines,
            "steps": [{"step": "1", "says": "Boil", "measures": "temperature", "unit": "degC",
                       "low": "104", "high": "106"}],
        }  # fmt: skip
        return "batch_started", body

    def _batch(self) -> str:
        return self.chance.choice(self.batches)

    def _laid_out(self, mark: str) -> Act:
        lots = [{"lot": self._lot()[0]}]
        body = {"batch": self._batch(), "line": self.chance.choice(LINES), "lots": lots}
        return "laid_out", body

    def _weigh_in(self, mark: str) -> Act:
        shown = f"{self.chance.randrange(90, 130)}.{self.chance.randrange(10)}"
        body = {
            "batch": self._batch(),
            "line": self.chance.choice(LINES),
            "material": "fruit",
            "lot": self._lot()[0],
            "place": "kitchen-1",
            "reading": {
                "unit": "g",
                "shown": shown,
                "division": "0.1",
                **self.chance.choice(({"tare": "100.0"}, {})),
                "instrument": self.chance.choice(SCALES),
            },
        }
        return "weigh_in", body

    def _step(self, mark: str) -> Act:
        shown = self.chance.choice(("103", "105", "107"))
        reading = {"unit": "degC", "shown": shown, "instrument": self.chance.choice(SCALES)}
        return "step_done", {"batch": self._batch(), "step": "1", "reading": reading}

    def _output(self, mark: str) -> Act:
        code = self._new_code(mark)
        self.lots.append((code, "pc"))
        body = {
            "batch": self._batch(),
            "lot": code,
            "material": "jar",
            "place": "kitchen-1",
            "amount": self._amount("pc"),
            "pack_net": {"amount": "250", "unit": "g"},
            "rejected": {"amount": "1", "unit": "pc"},
        }
        return "output", body

    def _batch_loss(self, mark: str) -> Act:
        body = {"batch": self._batch(), "amount": self._amount("g"), "reason": "residue"}
        return "loss", {**body, "stage": "filling"}

    def _finish(self, mark: str) -> Act:
        return "batch_finished", {"batch": self._batch()}

    def _scale(self, mark: str) -> Act:
        """Defined, then edited: both only by a coordinator."""
        scale = self.chance.choice(SCALES)
        division = {"from": "0.1", "to": self.chance.choice(("1", "0.1"))}
        if scale in self.scales:
            return "instrument_changed", {
                "instrument": scale,
                "changes": {"division": division},
            }
        self.scales.add(scale)
        body = {"instrument": scale, "name": "Bench scale", "sort": "scale", "unit": "g"}
        limit = {"capacity": "500", "judged_by": "own", "most_error": "0.5"}
        return "instrument_defined", {**body, "division": "0.1", **limit}

    def _check(self, mark: str) -> Act:
        """Often a little off, so that it is corrected or fails; its repeats tell the spread."""
        off = self.chance.choice((0, 0, 0.3, 2, -3))
        # A scale that nobody may have defined yet is compared all the same.
        sort = self.chance.choice(("rising", "comparison"))
        steps: list[Body] = [
            {"sort": sort, "reference": str(mass), "readings": [f"{mass + off:.1f}"]}
            for mass in self.chance.sample((10, 50, 100, 200), self.chance.randrange(1, 4))
        ]
        if self.chance.random() < 0.3:
            shown = [f"{100 + off + self.chance.choice((0, 0.1)):.1f}" for _ in range(5)]
            steps.append({"sort": "repeats", "readings": shown})
        body = {"instrument": self.chance.choice(SCALES), "unit": "g", "division": "0.1"}
        body["most_error"] = "0.5"
        line = self.chance.choice(({}, {"line": "offset"}, {"line": "least_squares"}))
        adjusted = self.chance.choice(({}, {}, {}, {"is_adjusted": True}))
        return "instrument_checked", {**body, "steps": steps, **line, **adjusted}

    def _definition(self, mark: str) -> Act:
        """Only a coordinator may: from anybody else it is kept aside with code `role`."""
        place = self.chance.choice(PLACES)
        return "place_defined", {"place": place, "name": f"Named by {mark}", "sort": "kitchen"}

    def _edit(self, mark: str) -> Act:
        names = ["Hill kitchen", "Top kitchen", f"Named by {mark}"]
        first, second = self.chance.sample(names, 2)
        changes = {"name": {"from": first, "to": second}}
        if self.chance.random() < 0.5:
            return "source_changed", {"source": "farm-1", "changes": changes}
        return "place_changed", {"place": self.chance.choice(PLACES), "changes": changes}
