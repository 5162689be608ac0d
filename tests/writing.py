"""How tests write entries: as a phone would, with ids and times that follow from a count."""

from __future__ import annotations

import uuid
from datetime import UTC, datetime, timedelta
from typing import Any

from kitchenlog.entries.envelope import uuid7
from kitchenlog.entries.links import subjects_of
from kitchenlog.logbook.selectors import heads_with_work
from kitchenlog.logbook.wire import wire_time
from kitchenlog.logbook.work import recompute_for_a_slice
from tests.people import Phone

ROUNDS_MAX = 100
START = datetime(2026, 6, 5, 8, 0, tzinfo=UTC)


def made_id(name: str) -> str:
    """The same id for the same name, for places, materials and batches of a test."""
    return str(uuid.uuid5(uuid.NAMESPACE_OID, name))


class Pen:
    """Writes entries for one phone: ids, device_seq and times follow from a counter."""

    def __init__(self, phone: Phone) -> None:
        self.phone = phone
        self.seq = 0

    def write(
        self, kind: str, body: dict[str, Any], *, at: datetime | None = None, **other: Any
    ) -> dict[str, Any]:
        """One entry; anything of the envelope may be given otherwise."""
        self.seq += 1
        happened_at = at or START + timedelta(minutes=self.seq)
        chance = uuid.uuid5(self.phone.device.id, str(self.seq)).bytes[:10]
        entry: dict[str, Any] = {
            "id": uuid7(int(happened_at.timestamp() * 1000), chance=chance),
            "kind": kind,
            "version": 1,
            "subjects": [],
            "cooperative": str(self.phone.member.cooperative_id),
            "author": str(self.phone.member.id),
            "device": str(self.phone.device.id),
            "device_seq": self.seq,
            "recorded_at": wire_time(happened_at),
            "tz": "Europe/Dublin",
            "utc_offset_min": 60,
            "local_date": happened_at.date().isoformat(),
            "seen": "",
            "happened_at": wire_time(happened_at),
            "app_version": "test",
            "body": body,
            **other,
        }
        if kind not in ("correction", "void") and "subjects" not in other:
            entry["subjects"] = list(subjects_of(kind, body))
        return entry

    def receipt(self, lot: str = "J1", amount: str = "10", **other: Any) -> dict[str, Any]:
        """Jars that came from a source into the store."""
        body = {
            "lot": lot,
            "material": made_id("jam"),
            "source": made_id("farm"),
            "amount": {"amount": amount, "unit": "pc"},
            "place": made_id("store"),
            "condition": "fit",
        }
        return self.write("receipt", body, **other)

    def sale(self, lot: str = "J1", amount: str = "1", **other: Any) -> dict[str, Any]:
        """Jars sold from the store."""
        body = {
            "lot": lot,
            "amount": {"amount": amount, "unit": "pc"},
            "place": other.pop("place", made_id("store")),
            "on": (other.get("at") or START).date().isoformat(),
        }
        return self.write("sale", body, **other)

    def void(self, entry: dict[str, Any], **other: Any) -> dict[str, Any]:
        """An entry that did not happen."""
        of_kind = entry["body"].get("of_kind", entry["kind"])
        body = {"corrects": entry["id"], "of_kind": of_kind, "reason": "typed twice"}
        subjects = other.pop("subjects", entry["subjects"])
        return self.write("void", body, subjects=subjects, **other)

    def correction(
        self, entry: dict[str, Any], body: dict[str, Any], **other: Any
    ) -> dict[str, Any]:
        """The whole new body of an entry."""
        of_kind = entry["body"].get("of_kind", entry["kind"])
        about = {"corrects": entry["id"], "of_kind": of_kind, "reason": "misread", "body": body}
        subjects = other.pop("subjects", entry["subjects"])
        return self.write("correction", about, subjects=subjects, **other)


def push_of(phone: Phone, entries: list[Any], **other: Any) -> dict[str, Any]:
    """The body of a push."""
    return {
        "protocol": 1,
        "push": str(uuid.uuid4()),
        "device": str(phone.device.id),
        "device_time": wire_time(datetime.now(UTC)),
        "epoch": "",
        "entries": entries,
        **other,
    }


def pushed(phone: Phone, entries: list[Any], **other: Any) -> list[dict[str, Any]]:
    """The results of a push that was taken as a whole."""
    answer = phone.post("sync/push", push_of(phone, entries, **other))
    assert answer.status_code == 200, answer.content
    results: list[dict[str, Any]] = answer.json()["results"]
    return results


def statuses(results: list[dict[str, Any]]) -> list[str]:
    """What became of each entry, with the code where it was kept aside."""
    return [
        f"{each['status']} {each['code']}"
        if each["status"] == "quarantined"
        else each["status"]
        for each in results
    ]


def pulled(
    phone: Phone, cursor: str = "", limit: int = 500
) -> tuple[list[dict[str, Any]], str]:
    """Every change after a cursor, page by page, and the cursor after them."""
    changes: list[dict[str, Any]] = []
    while True:
        answer = phone.get("sync/pull", cursor=cursor, limit=limit)
        assert answer.status_code == 200, answer.content
        page = answer.json()
        assert "reset" not in page
        changes += page["changes"]
        cursor = page["next"]
        if not page["more"]:
            return changes, cursor


def recompute_all(*, rounds: int = ROUNDS_MAX) -> None:
    """Do the worker's rounds of a second until nothing is left; a bench has more to do."""
    for _ in range(rounds):
        recompute_for_a_slice(clock=lambda: datetime.now(UTC))
        if not heads_with_work():
            return
    raise AssertionError("some sheet cannot be built")
