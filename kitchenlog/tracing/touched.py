"""From sheets to what failed checks touch, and to what was read where nothing leans."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import partial
from typing import Any
from uuid import UUID

from kitchenlog.calc.batches import BatchState
from kitchenlog.calc.instruments import InstrumentState
from kitchenlog.calc.record import Finding
from kitchenlog.calc.skills import SkillState
from kitchenlog.calc.stock import LotState
from kitchenlog.logbook.subjects import FieldTable
from kitchenlog.tracing.models import ReadElsewhere, Touched

_Listed = tuple[str, Mapping[str, Any]]  # the failed check, and a reading it puts in question


def _touched_by_batch(cooperative: UUID, batch: str, state: BatchState) -> list[Touched]:
    listed = [*_weighed(state), *_measured(state), *_logged(state)]
    head = {"code": state["code"] or "", "material": state["product"] or ""}
    return _touched(cooperative, f"batch:{batch}", state["findings"], listed, head)


def _touched_by_lot(cooperative: UUID, lot: str, state: LotState) -> list[Touched]:
    head = {"code": lot, "material": state["material"] or ""}
    return _touched(cooperative, f"lot:{lot}", state["findings"], list(_filled(state)), head)


def _touched(
    cooperative: UUID,
    subject: str,
    findings: Sequence[Finding],
    listed: Sequence[_Listed],
    head: Mapping[str, str],
) -> list[Touched]:
    """One row for each failed check that a finding of the sheet names."""
    return [
        Touched(
            cooperative_id=cooperative,
            subject=subject,
            check_entry=found["entry"],
            readings=int(found["detail"]["readings"]),
            would_change=found["detail"]["would_change"],
            listed=_json(
                {"subject": subject, **each}
                for check, each in listed
                if check == found["entry"]
            ),
            **head,
        )
        for found in findings
        if found["what"] == "instrument_failed"
    ]


def _json(readings: Iterable[Mapping[str, Any]]) -> str:
    return json.dumps(list(readings), separators=(",", ":"), ensure_ascii=False)


def _weighed(state: BatchState) -> Iterator[_Listed]:
    for line in state["lines"]:
        for each in line["weigh_ins"]:
            trust = each["trust"]
            if trust["failed_by"] is not None:
                yield (
                    trust["failed_by"],
                    {
                        "entry": each["entry"],
                        "kind": "weigh_in",
                        "happened_at": each["happened_at"],
                        "author": each["author"],
                        "place": line["line"],
                        "material": line["material"],
                        "says": None,
                        "read": each["net"],
                        "corrected": trust["corrected"],
                        "u": each["u"],
                        "unit": each["unit"],
                        "moves": trust["moves"],
                    },
                )


def _measured(state: BatchState) -> Iterator[_Listed]:
    for step in state["steps"]:
        for each in step["done"]:
            trust = each["trust"]
            if trust["failed_by"] is not None:
                yield (
                    trust["failed_by"],
                    {
                        "entry": each["entry"],
                        "kind": "step_done",
                        "happened_at": each["happened_at"],
                        "author": each["author"],
                        "place": step["step"],
                        "material": None,
                        "says": step["says"],
                        "read": each["value"],
                        "corrected": trust["corrected"],
                        "u": each["u"],
                        "unit": step["unit"],
                        "moves": trust["moves"],
                    },
                )


def _logged(state: BatchState) -> Iterator[_Listed]:
    """A log is listed once, by its warmest reading; `says` is what it is judged by."""
    for each in state["heat"]:
        trust, rows = each["trust"], each["rows"]
        if trust is not None and rows is not None and trust["failed_by"] is not None:
            yield (
                trust["failed_by"],
                {
                    "entry": each["entry"],
                    "kind": "heat_log",
                    "happened_at": each["happened_at"],
                    "author": each["author"],
                    "place": each["entry"],
                    "material": None,
                    "says": each["by"],
                    "read": rows["highest"],
                    "corrected": trust["highest"],
                    "u": trust["u"],
                    "unit": each["unit"],
                    "moves": trust["moves"],
                },
            )


def _filled(state: LotState) -> Iterator[_Listed]:
    """A fill check is listed by how far the mean content is off, which is what it found."""
    for each in state["fills"]:
        trust = each["trust"]
        if trust["failed_by"] is not None:
            yield (
                trust["failed_by"],
                {
                    "entry": each["entry"],
                    "kind": "fill_checked",
                    "happened_at": each["happened_at"],
                    "author": each["author"],
                    "place": each["entry"],
                    "material": state["material"],
                    "says": None,
                    "read": each["mean_error"],
                    "corrected": None,
                    "u": None,
                    "unit": each["unit"],
                    "moves": trust["moves"],
                },
            )


def _drills(cooperative: UUID, member: str, state: SkillState) -> list[ReadElsewhere]:
    return [
        ReadElsewhere(
            cooperative_id=cooperative,
            subject=f"skill:{member}",
            instrument=weighing["instrument"],
            entry=each["entry"],
            happened_at=each["happened_at"],
            author=each["author"],
            read=weighing["mean"],
            unit=weighing["unit"],
        )
        for each in state["drills"]
        if (weighing := each["weighing"]) is not None and weighing["instrument"] is not None
    ]


def _checks(cooperative: UUID, instrument: str, state: InstrumentState) -> list[ReadElsewhere]:
    """Checks of a vessel, by the scale its water was weighed on."""
    return [
        ReadElsewhere(
            cooperative_id=cooperative,
            subject=f"instrument:{instrument}",
            instrument=each["check_scale"],
            entry=each["entry"],
            happened_at=each["happened_at"],
            author=each["author"],
            read="",
            unit="",
        )
        for each in state["checks"]
        if each["check_scale"] is not None
    ]


def _subject(sort: str, id_part: str) -> str:
    return f"{sort}:{id_part}"


TOUCHED_BY_BATCH = FieldTable(
    Touched, owner="subject", rows=_touched_by_batch, owner_of=partial(_subject, "batch")
)
TOUCHED_BY_LOT = FieldTable(
    Touched, owner="subject", rows=_touched_by_lot, owner_of=partial(_subject, "lot")
)
READ_IN_DRILLS = FieldTable(
    ReadElsewhere, owner="subject", rows=_drills, owner_of=partial(_subject, "skill")
)
READ_IN_CHECKS = FieldTable(
    ReadElsewhere, owner="subject", rows=_checks, owner_of=partial(_subject, "instrument")
)
