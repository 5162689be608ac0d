"""What holds a batch or lot back is alike in whatever order it arrived: a member's word, a log
of temperature with its corrections, the check of its thermometer, a decision."""

from __future__ import annotations

from itertools import permutations
from typing import Any

import pytest
from hypothesis import given, settings

from kitchenlog.calc import heat_results, heat_trust
from kitchenlog.calc.bodies import Body
from kitchenlog.calc.record import Fact
from tests.calc.registry_folds import fact_of
from tests.calc.test_folds_in_any_order import QUIET, histories, sheet_of


def test_a_release_and_a_hold_from_two_phones_end_alike_whichever_comes_first() -> None:
    def hold(id: str, device: str, minute: int) -> dict[str, Any]:
        body = {"lot": "A1", "because": "other", "reason": "seen"}
        at = f"2026-06-06T01:{minute:02}:00.000Z"
        return {"id": id, "kind": "held", "device": device, "happened_at": at, "body": body}

    release = {
        "id": "e02", "kind": "hold_decided", "device": "m2",
        "happened_at": "2026-06-06T01:30:00.000Z",
        "body": {"lot": "A1", "decision": "release", "decides": [{"entry": "e01"}],
                 "reason": "looked at"},
    }  # fmt: skip
    history = [
        fact_of(each) for each in (hold("e01", "k7", 10), release, hold("e03", "k7", 20))
    ]

    sheets = [sheet_of("lot:A1", list(arrived)) for arrived in permutations(history)]

    assert all(sheet["hold"] == sheets[0]["hold"] for sheet in sheets)
    # The release did not name the second hold: its writer had not seen it.
    assert sheets[0]["hold"]["is_held"]
    assert sheets[0]["hold"]["since"] == "2026-06-06T01:20:00.000Z"


def test_random_histories_reach_every_way_a_log_holds_a_batch() -> None:
    seen: set[str] = set()
    kinds = ("instrument_defined", "instrument_checked", "batch_started", "heat_log",
             "heat_log", "hold_decided")  # fmt: skip

    @given(history=histories(of=kinds))
    @settings(QUIET, max_examples=500)
    def collect(history: list[dict[str, Any]]) -> None:
        batch = sheet_of("batch:b1", [fact_of(each) for each in history])
        causes = (batch["hold"] or {"causes": []})["causes"]
        for each in causes:
            seen.add(f"{each['what']} {'stands' if each['stands'] else 'stood'}")
            if each["judged_by"] is not None:
                seen.add(str(each["decided"]))
        seen.update(each["what"] for each in batch["findings"] if each["is_settled"])

    collect()

    assert {"fail stands", "fail stood", "not_proven stands", "not_proven stood"} <= seen
    assert {"None", "release", "hold", "heat_failed", "heat_not_proven"} <= seen


def test_a_thermometer_check_that_arrives_late_decides_whether_a_log_holds_the_batch() -> None:
    def fact(id: str, kind: str, hour: int, body: dict[str, Any]) -> Fact:
        at = f"2026-06-06T{hour:02}:00:00.000Z"
        return fact_of({"id": id, "kind": kind, "happened_at": at, "body": body})

    log = fact("h1", "heat_log", 2, {
        "batch": "b1", "unit": "degC", "at_s": [0, 600], "temperatures": ["4.1", "4.6"],
        "instrument": "i1", "division": "0.1", "judged": {"by": "cold_hold"},
    })  # fmt: skip
    check = fact("c1", "instrument_checked", 1, {
        "instrument": "i1", "unit": "degC", "division": "0.1", "line": "offset",
        "steps": [{"sort": "comparison", "reference": "5", "readings": ["4"],
                   "tolerance": "0.1"}],
    })  # fmt: skip
    probe = fact("d1", "instrument_defined", 0, {"instrument": "i1", "sort": "thermometer"})

    before = sheet_of("batch:b1", [probe, log])
    after = [sheet_of("batch:b1", list(each)) for each in permutations([probe, log, check])]

    assert before["hold"] is None
    assert [cause["what"] for cause in after[0]["hold"]["causes"]] == ["fail"]
    assert all(sheet == after[0] for sheet in after)


def test_a_body_of_a_log_is_judged_once_in_a_fold(monkeypatch: pytest.MonkeyPatch) -> None:
    judged: list[str] = []

    def counted(body: Body, **about: Any) -> heat_trust.TrustedHeat:
        judged.append(body["temperatures"][0])
        return heat_trust.trusted_log(body, **about)

    monkeypatch.setattr(heat_results, "trusted_log", counted)
    warm, cold = (
        {"batch": "b1", "unit": "degC", "at_s": [0], "temperatures": [shown],
         "judged": {"by": "cold_hold"}}
        for shown in ("9", "3")
    )  # fmt: skip
    correction = {"corrects": "h1", "of_kind": "heat_log", "reason": "misread", "body": cold}

    sheet = sheet_of("batch:b1", [
        fact_of({"id": "h1", "kind": "heat_log", "body": warm}),
        fact_of({"id": "c1", "kind": "correction", "body": correction}),
    ])  # fmt: skip

    assert sorted(judged) == ["3", "9"]
    assert sheet["hold"]["causes"][0]["what"] == "fail"
