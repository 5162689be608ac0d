"""Sheets that lean on others: a batch on the checks of the instruments it was read on."""

from __future__ import annotations

import json
from datetime import UTC, datetime, timedelta
from io import StringIO
from typing import Any

import pytest
from django.core.management import call_command

from kitchenlog.logbook.models import Sheet, StaleSubject
from kitchenlog.logbook.rebuild import rebuild_subject
from kitchenlog.members.models import Cooperative
from tests.people import Kitchen
from tests.writing import START, Pen, made_id, pulled, pushed, recompute_all

BATCH, SCALE = f"batch:{made_id('b1')}", f"instrument:{made_id('scale')}"
PUSH_MOST = 100


class Bench(Pen):
    """Writes what happens on one bench with one scale."""

    def scale(self) -> dict[str, Any]:
        """A scale of 1 g."""
        body = {
            "instrument": made_id("scale"),
            "name": "Bench scale",
            "sort": "scale",
            "unit": "g",
            "division": "1",
            "capacity": "5000",
            "accuracy_class": "III",
        }
        return self.write("instrument_defined", body)

    def batch(self) -> dict[str, Any]:
        """A batch with one line of 500 g, 2 g more or less."""
        body = {
            "batch": made_id("b1"),
            "code": "B-260605-K7-1",
            "recipe": made_id("jam recipe"),
            "recipe_version": made_id("version 1"),
            "product": made_id("jam"),
            "place": made_id("kitchen"),
            "makes": {"amount": "10", "unit": "pc"},
            "scaled_by": "as_written",
            "lines": [
                {
                    "line": "sugar",
                    "material": made_id("sugar"),
                    "amount": {"amount": "500", "unit": "g"},
                    "below": "2",
                    "above": "2",
                }
            ],
            "steps": [],
        }
        return self.write("batch_started", body)

    def weigh_in(self, shown: str, *, at: datetime | None = None) -> dict[str, Any]:
        """Sugar weighed without a tare."""
        reading = {
            "instrument": made_id("scale"),
            "unit": "g",
            "shown": shown,
            "division": "1",
        }
        body = {
            "batch": made_id("b1"),
            "line": "sugar",
            "material": made_id("sugar"),
            "lot": "SU1",
            "place": made_id("kitchen"),
            "reading": reading,
        }
        return self.write("weigh_in", body, at=at)

    def check(self, shown: str, *, at: datetime, **more: Any) -> dict[str, Any]:
        """The scale compared with masses of 100 g and 500 g; `shown` with the larger."""
        off = int(shown) - 500
        steps = [
            {"sort": "rising", "reference": "100", "readings": [str(100 + off)]},
            {"sort": "rising", "reference": "500", "readings": [shown]},
        ]
        body = {"instrument": made_id("scale"), "unit": "g", "steps": steps, **more}
        return self.write("instrument_checked", body, at=at)


@pytest.fixture
def bench(kitchen: Kitchen) -> Bench:
    """A batch with 503 g of sugar on it, weighed at 12:00 and folded."""
    pen = Bench(kitchen.phone("coordinator"))
    weighed = pen.weigh_in("503", at=START + timedelta(hours=4))
    pushed(pen.phone, [pen.scale(), pen.batch(), weighed])
    recompute_all()
    return pen


def state_of(subject: str) -> dict[str, Any]:
    state: dict[str, Any] = json.loads(Sheet.objects.get(subject=subject).state)
    return state


def says_the_check() -> str:
    out = StringIO()
    call_command("rebuild_sheets", "--check", stdout=out)
    return out.getvalue()


@pytest.mark.django_db
def test_a_check_that_arrives_after_the_batch_corrects_its_reading(bench: Bench) -> None:
    assert state_of(BATCH)["lines"][0]["verdict"] == "outside"
    before = Sheet.objects.get(subject=BATCH)
    pushed(bench.phone, [bench.check("503", at=START + timedelta(hours=1), line="offset")])

    recompute_all()

    line = state_of(BATCH)["lines"][0]
    after = Sheet.objects.get(subject=BATCH)
    assert (line["in_base"], line["corrected"], line["verdict"]) == ("503", "500", "within")
    assert after.seq > before.seq
    assert (after.entry_count, after.upto_seq) == (before.entry_count, before.upto_seq)
    assert "sheets equal the log" in says_the_check()


@pytest.mark.django_db
def test_a_check_of_its_instrument_puts_the_batch_on_the_work_list(bench: Bench) -> None:
    pushed(bench.phone, [bench.check("503", at=START + timedelta(hours=1), line="offset")])
    assert set(StaleSubject.objects.values_list("subject", flat=True)) == {SCALE}

    rebuild_subject(Cooperative.objects.get(), SCALE, at=datetime.now(UTC))

    assert set(StaleSubject.objects.values_list("subject", flat=True)) == {BATCH}


@pytest.mark.django_db
def test_a_check_that_changes_neither_line_nor_doubts_leaves_the_batch_alone(
    bench: Bench,
) -> None:
    before = Sheet.objects.get(subject=BATCH).seq
    pushed(bench.phone, [bench.check("500", at=START + timedelta(hours=1))])

    recompute_all()

    assert Sheet.objects.get(subject=BATCH).seq == before
    assert state_of(SCALE)["checks"][0]["verdict"] == "fit"


@pytest.mark.django_db
def test_a_failed_check_recorded_late_gives_the_batch_its_finding(bench: Bench) -> None:
    passed = bench.check("500", at=START + timedelta(hours=1))
    failed = bench.check("503", at=START + timedelta(hours=8))
    pushed(bench.phone, [passed, failed])

    recompute_all()

    found = {each["key"]: each for each in state_of(BATCH)["findings"]}
    assert found[f"instrument_failed:{failed['id']}"]["detail"] == {
        "readings": "1",
        "where": "sugar",
        "would_change": "sugar:outside:within",
    }
    assert state_of(BATCH)["lines"][0]["weigh_ins"][0]["trust"]["moves"] == "-3"
    assert "sheets equal the log" in says_the_check()


@pytest.mark.django_db
def test_a_void_check_takes_its_finding_with_it(bench: Bench) -> None:
    failed = bench.check("503", at=START + timedelta(hours=8))
    pushed(bench.phone, [failed])
    recompute_all()
    assert [each["what"] for each in state_of(BATCH)["findings"]].count("instrument_failed")

    pushed(bench.phone, [bench.void(failed)])
    recompute_all()

    assert "instrument_failed" not in [each["what"] for each in state_of(BATCH)["findings"]]
    assert "sheets equal the log" in says_the_check()


@pytest.mark.django_db
def test_the_coordinator_settles_the_finding_of_the_batch(bench: Bench) -> None:
    failed = bench.check("503", at=START + timedelta(hours=8))
    key = f"instrument_failed:{failed['id']}"
    body = {"subject": BATCH, "finding": key, "decision": "explained", "reason": "tasted"}
    pushed(bench.phone, [failed, bench.write("finding_settled", body)])

    recompute_all()

    found = {each["key"]: each for each in state_of(BATCH)["findings"]}
    assert found[key]["is_settled"]


@pytest.mark.django_db
def test_rebuilding_builds_what_leans_after_what_it_leans_on(bench: Bench) -> None:
    pushed(bench.phone, [bench.check("503", at=START + timedelta(hours=1), line="offset")])
    recompute_all()
    wanted = state_of(BATCH)
    Sheet.objects.exclude(subject__startswith="member:").delete()

    call_command("rebuild_sheets", stdout=StringIO())

    assert state_of(BATCH) == wanted
    assert "sheets equal the log" in says_the_check()
    assert not StaleSubject.objects.exists()


@pytest.mark.django_db
def test_weigh_ins_cost_the_sheet_of_their_scale_nothing(bench: Bench) -> None:
    pushed(bench.phone, [bench.check("500", at=START + timedelta(hours=1))])
    recompute_all()
    before = Sheet.objects.get(subject=SCALE)

    for _ in range(3):
        pushed(bench.phone, [bench.weigh_in("1") for _ in range(PUSH_MOST)])
        assert not StaleSubject.objects.filter(subject=SCALE).exists()
        recompute_all()

    after = Sheet.objects.get(subject=SCALE)
    assert (after.seq, after.entry_count, after.state) == (before.seq, 2, before.state)
    assert len(state_of(BATCH)["lines"][0]["weigh_ins"]) == 301


@pytest.mark.django_db
def test_phones_are_told_the_checks_of_an_instrument(bench: Bench) -> None:
    checked = bench.check("503", at=START + timedelta(hours=1), line="offset")
    pushed(bench.phone, [checked])
    recompute_all()

    changes, _ = pulled(bench.phone)

    assert checked["id"] in [each["id"] for each in changes if each["type"] == "entry"]
    sheets = {each["id"]: each["data"] for each in changes if each["type"] == "sheet"}
    assert sheets[SCALE]["is_open"]
    assert sheets[SCALE]["state"]["corrections"][0]["check"] == checked["id"]
