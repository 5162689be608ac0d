"""Every screen of the app with an address that shows something, from what a phone holds."""

from __future__ import annotations

import re
from typing import Any
from urllib.parse import quote

from tests.servers import PROJECT

ROUTES = PROJECT / "frontend" / "src" / "screens" / "routes.ts"
SUMS = ("kettle", "drying", "brine", "mixing", "curing", "altitude", "acid-hold")


def patterns() -> list[str]:
    """Every pattern of the app's own list, so that a new screen is looked at too."""
    return re.findall(r'pattern: "([^"]+)"', ROUTES.read_text())


class Addresses:
    """Fills patterns with ids that stand in a phone's own sheets and entries."""

    def __init__(self, stores: dict[str, Any]) -> None:
        self.sheets = {row["subject"]: row["state"] for row in stores["sheets"]}
        self.entries = {row["id"]: row["entry"] for row in stores["entries"]}

    def of(self, pattern: str) -> str:
        """An address; each `:word` is answered by the method or table of that name."""
        words = {
            **self._about_batches(pattern),
            **self._about_lots(pattern),
            **self._others(pattern),
            **self._asked(pattern),
        }
        return re.sub(r":(\w+)", lambda found: quote(words[found[1]], safe=""), pattern)

    def _about_batches(self, pattern: str) -> dict[str, str]:
        """The one under way; for corrections and pages of what came out, a finished one."""
        wants_open = not pattern.startswith(("/correct", "/batch/", "/cost"))
        batch = next(
            state for state in self._all("batch") if state["is_finished"] is not wants_open
        )
        if pattern.startswith("/heat-log/"):
            return self._log()
        weigh_ins = [each for line in batch["lines"] for each in line["weigh_ins"]]
        held = [each["entry"] for each in weigh_ins if each["entry"] in self.entries]
        return {
            "batch": batch["batch"],
            "line": batch["lines"][0]["line"],
            "step": next(each for each in batch["steps"] if each["measures"])["step"],
            "entry": self._spent_on(batch["batch"]) if "/row/" in pattern else [*held, ""][0],
        }

    def _asked(self, pattern: str) -> dict[str, str]:
        """A product, of which prices are asked."""
        if not pattern.startswith("/asked/"):
            return {}
        return {"material": self._defined("material", sort="product")}

    def _log(self) -> dict[str, str]:
        """A log of temperature this phone holds; made up where it holds none."""
        kept = (entry for entry in self.entries.values() if entry["kind"] == "heat_log")
        entry = next(kept, {"id": "none", "body": {"batch": "none"}})
        return {"batch": entry["body"]["batch"], "entry": entry["id"]}

    def _spent_on(self, batch: str) -> str:
        """An entry of what a batch cost; made up where nothing was written about that."""
        spent = self.sheets.get(f"cost:{batch}", {}).get("expenses", ())
        return next((each["entry"] for each in spent), "none")

    def _about_lots(self, pattern: str = "") -> dict[str, str]:
        """A lot of packs with a history; for the rest of its sheet what happened to it. What
        was paid is asked of a lot that was bought."""
        if pattern.startswith("/paid"):
            bought = (each for each in self._all("lot") if each["made_by"] == "receipt")
            return {"lot": next(bought)["lot"]}
        lots = [
            state
            for state in self._all("lot")
            if state["made_by"] == "output" and state["on_hand"] not in ("0", "")
        ]
        lot = max(lots, key=lambda state: len(state["went_to"]))
        return {"lot": lot["lot"], "act": "count", "place": next(iter(lot["places"]))}

    def _others(self, pattern: str) -> dict[str, str]:
        words = {
            "way": "join", "code": "ABCD-EFGH", "area": "places", "type": "recipient",
            "sum": SUMS[0],
        }  # fmt: skip
        if pattern.startswith("/bring"):
            words["place"] = self._defined("place", sort="stall")
        if pattern.startswith("/lot/"):
            lot = self._about_lots()["lot"]
            words["entry"] = next(
                entry["id"]
                for entry in self.entries.values()
                if f"lot:{lot}" in entry["subjects"] and entry["kind"] in ("transfer", "sale")
            )
        for area in ("place", "material", "instrument", "source", "recipient"):
            if pattern.startswith((f"/set-up/{area}s/", "/trace-end/")):
                words["id"] = self._defined(area)
        if pattern == "/skills/:member":
            skills = [*self._all("skill")]
            readers = sorted(skills, key=lambda state: len(state["drills"]))
            words["member"] = readers[-1]["member"] if readers else "nobody"
        if pattern.startswith("/instruments/"):
            sheet = next(
                (each for each in self._all("instrument") if each.get("doubts")),
                next(self._all("instrument")),
            )
            checks = [each["check"] for each in sheet.get("doubts", [])]
            words |= {"id": sheet["id"], "check": checks[-1] if checks else "none"}
        if pattern.endswith("/correct/:entry") and not pattern.startswith("/lot/"):
            words |= self._corrected(pattern)
        if pattern == "/set-up/people/:id":
            words["id"] = "new"
        if pattern.startswith(("/set-up/recipes", "/start", "/yields")):
            recipe = next(self._all("recipe"))
            latest = recipe["versions"][-1]["body"]
            words |= {
                "recipe": recipe["recipe"],
                "line": latest["lines"][0]["line"],
                "step": latest["steps"][0]["step"],
                "size": next((each["size"] for each in latest.get("pack_sizes", ())), "1"),
            }
        return words

    def scale(self) -> str:
        """The id of a scale."""
        return self._defined("instrument", sort="scale")

    def _corrected(self, pattern: str) -> dict[str, str]:
        """A check or a drill this phone holds, and whose it is; made up where it holds none."""
        is_check = pattern.startswith("/instruments/")
        kind, about = (
            ("instrument_checked", "instrument") if is_check else ("drill_done", "member")
        )
        made_up = {"id": "none", "body": {about: "nobody"}}
        held = (each for each in self.entries.values() if each["kind"] == kind)
        entry = next(held, made_up)
        return {"entry": entry["id"], "id" if is_check else "member": entry["body"][about]}

    def _all(self, type: str) -> Any:
        return (
            state for subject, state in self.sheets.items() if subject.startswith(f"{type}:")
        )

    def _defined(self, type: str, **fields: str) -> str:
        return str(
            next(
                state["id"]
                for state in self._all(type)
                if fields.items() <= state["fields"].items()
            )
        )
