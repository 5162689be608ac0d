"""From the log to sheets: the work list, the rebuild, the check of both commands."""

from __future__ import annotations

import json
from datetime import UTC, datetime, timedelta
from io import StringIO
from typing import Any

import pytest
from django.core.management import CommandError, call_command

from kitchenlog.logbook import rebuild, services
from kitchenlog.logbook.models import Entry, EntrySubject, LogHead, Sheet, StaleSubject
from kitchenlog.logbook.turnstile import locked_head
from kitchenlog.logbook.work import close_quiet
from kitchenlog.members.scope import in_cooperative
from kitchenlog.stock.models import LotAtPlace, LotRow
from tests.people import Kitchen
from tests.writing import Pen, made_id, pushed, recompute_all


def state_of(subject: str) -> dict[str, Any]:
    state: dict[str, Any] = json.loads(Sheet.objects.get(subject=subject).state)
    return state


@pytest.mark.django_db
def test_a_push_becomes_sheets_and_an_empty_work_list(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1", "10"), pen.sale("J1", "4")])

    recompute_all()

    assert state_of("lot:J1")["on_hand"] == "6"
    sheet = Sheet.objects.get(subject="lot:J1")
    assert (sheet.entry_count, sheet.is_open, sheet.audience) == (2, True, "member")
    assert sheet.upto_seq == Entry.objects.order_by("-seq")[0].seq
    assert not StaleSubject.objects.exists()
    assert not LogHead.objects.get().has_stale


@pytest.mark.django_db
def test_a_saved_sheet_has_a_new_number_each_time(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt()])
    recompute_all()
    before = Sheet.objects.get(subject="lot:J1").seq

    pushed(phone, [pen.sale()])
    recompute_all()

    assert Sheet.objects.get(subject="lot:J1").seq > before + 1


@pytest.mark.django_db
def test_stock_tables_follow_the_lot_sheet(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    body = {**pen.receipt()["body"], "amount": {"amount": "1.2345", "unit": "kg"}}
    pushed(phone, [pen.write("receipt", {**body, "lot": "S1"})])
    recompute_all()

    assert LotRow.objects.get().on_hand == 1_234_500
    assert LotRow.objects.get().unit == "mg"
    assert LotAtPlace.objects.get().place == made_id("store")

    pushed(phone, [pen.sale("S1", "1")])
    recompute_all()
    assert LotAtPlace.objects.get().amount == 1_234_500


def test_what_arrives_while_a_sheet_is_folded_is_not_lost(
    log_db: None, kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1", "100")])
    fold = rebuild.fold_subject
    folds: list[int] = []

    def slow_fold(subject: str, facts: Any, beside: Any) -> Any:
        folds.append(len(facts))
        if len(folds) <= rebuild.TRIES_WITHOUT_LOCK:
            pushed(phone, [pen.sale("J1", "1")])
        return fold(subject, facts, beside)

    monkeypatch.setattr(rebuild, "fold_subject", slow_fold)

    rebuild.rebuild_subject(kitchen.cooperative, "lot:J1", at=datetime.now(UTC))

    assert folds == [1, 2, 3]
    assert state_of("lot:J1")["on_hand"] == "98"
    assert not StaleSubject.objects.filter(subject="lot:J1").exists()


@pytest.mark.django_db
def test_a_sheet_that_cannot_be_built_stays_on_the_list_and_the_others_are_built(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1"), pen.receipt("J2")])
    fold = rebuild.fold_subject

    def broken_fold(subject: str, facts: Any, beside: Any) -> Any:
        assert subject != "lot:J1"
        return fold(subject, facts, beside)

    monkeypatch.setattr(rebuild, "fold_subject", broken_fold)
    with pytest.raises(AssertionError, match="cannot be built"):
        recompute_all()

    assert list(StaleSubject.objects.values_list("subject", flat=True)) == ["lot:J1"]
    assert Sheet.objects.filter(subject="lot:J2").exists()
    assert LogHead.objects.get().has_stale

    monkeypatch.undo()
    recompute_all()
    assert not StaleSubject.objects.exists()


@pytest.mark.django_db
def test_while_a_phone_hands_over_entries_sheets_wait_but_not_for_good(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt(f"J{number}") for number in range(3 * rebuild.SHEETS_A_TURN)])
    built: list[str] = []
    rests: list[int] = []
    fold = rebuild.fold_subject

    def fold_while_an_entry_comes(subject: str, facts: Any, beside: Any) -> Any:
        built.append(subject)
        if len(built) == 1:
            pushed(phone, [pen.receipt("L")])
        return fold(subject, facts, beside)

    def rest_while_entries_come(seconds: float) -> None:
        rests.append(len(built))
        pushed(phone, [pen.receipt(f"R{len(rests)}")])

    monkeypatch.setattr(rebuild, "fold_subject", fold_while_an_entry_comes)
    now = datetime.now(UTC)
    rebuild.recompute(
        kitchen.cooperative,
        clock=lambda: now + timedelta(minutes=len(built) // (2 * rebuild.SHEETS_A_TURN)),
        until=now + timedelta(minutes=1),
        rest=rest_while_entries_come,
    )

    assert rests == [rebuild.SHEETS_A_TURN] * rebuild.RESTS_MOST
    assert len(built) == 2 * rebuild.SHEETS_A_TURN


@pytest.mark.django_db
def test_running_every_task_twice_changes_nothing_but_numbers(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt(), pen.sale()])
    recompute_all()
    before = _sheets()

    recompute_all()
    for subject in before:
        if not subject.startswith("member:"):
            rebuild.rebuild_subject(kitchen.cooperative, subject, at=datetime.now(UTC))

    assert _sheets() == before


@pytest.mark.django_db
def test_a_used_up_lot_closes_after_two_quiet_weeks_and_opens_with_the_next_entry(
    kitchen: Kitchen,
) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1", "1"), pen.sale("J1", "1"), pen.receipt("J2", "1")])
    recompute_all()
    now = datetime.now(UTC)

    assert close_quiet(at=now + timedelta(days=13)) == 0
    assert close_quiet(at=now + timedelta(days=15)) == 2  # J1 and the day

    assert not Sheet.objects.get(subject="lot:J1").is_open
    assert Sheet.objects.get(subject="lot:J2").is_open
    pushed(phone, [pen.sale("J1", "1")])
    assert Sheet.objects.get(subject="lot:J1").is_open
    recompute_all()
    assert Sheet.objects.get(subject="lot:J1").is_open


@pytest.mark.django_db
def test_a_sheet_with_something_waiting_is_not_closed(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1", "1"), pen.sale("J1", "1")])
    recompute_all()
    pushed(phone, [pen.sale("J1", "1")])

    close_quiet(at=datetime.now(UTC) + timedelta(days=15))

    assert Sheet.objects.get(subject="lot:J1").is_open


@pytest.mark.django_db
def test_a_sheet_an_older_fold_made_is_made_anew(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pushed(phone, [Pen(phone).receipt("J1")])
    recompute_all()
    Sheet.objects.filter(subject="lot:J1").update(fold=0, state="{}")

    close_quiet(at=datetime.now(UTC))
    recompute_all()

    assert state_of("lot:J1")["on_hand"] == "10"
    assert Sheet.objects.get(subject="lot:J1").fold > 0


@pytest.mark.django_db
def test_rebuild_sheets_restores_everything_from_the_log_alone(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt(), pen.sale()])
    recompute_all()
    before = _sheets()
    Sheet.objects.exclude(subject__startswith="member:").delete()
    LotRow.objects.all().delete()

    call_command("rebuild_sheets", stdout=StringIO())

    assert _sheets() == before
    assert LotRow.objects.count() == 1
    assert "sheets equal the log" in _check()


@pytest.mark.django_db
def test_the_check_names_each_difference(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1"), pen.receipt("J2"), pen.receipt("J3")])
    recompute_all()
    Sheet.objects.filter(subject="lot:J1").update(state="{}")
    Sheet.objects.filter(subject="lot:J2").delete()
    LotRow.objects.filter(code="J3").update(on_hand=7)
    with in_cooperative(kitchen.cooperative):
        head = locked_head(kitchen.cooperative.pk)
        stray = services.NewSheet(
            subject="place:p", state={}, upto_seq=1, entry_count=1, fold=1, is_open=False
        )
        services.save_sheets(head, [stray])

    said = _check()

    assert "lot:J1: its state differs" in said
    assert "lot:J2: has no sheet" in said
    assert "lot:J3: its rows in stock.LotRow differ" in said
    assert "place:p: has a sheet and no entry" in said


@pytest.mark.django_db
def test_the_check_names_an_entry_that_no_sheet_would_be_told_of(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1"), pen.sale("J1")])
    last = EntrySubject.objects.filter(subject="lot:J1").order_by("seq").last()
    assert last is not None
    EntrySubject.objects.filter(subject="lot:J1", seq=last.seq).delete()
    call_command("rebuild_sheets", stdout=StringIO())

    said = _check()

    assert "lot:J1: entry" in said
    assert "is not linked to it" in said


@pytest.mark.django_db
def test_sheets_are_not_compared_with_a_log_that_is_not_what_was_written(
    kitchen: Kitchen,
) -> None:
    phone = kitchen.phone()
    pushed(phone, [Pen(phone).receipt("J1")])
    recompute_all()
    LogHead.objects.update(chain_hash="0" * 64)

    assert "verify_chain says where" in _check()


@pytest.mark.django_db
def test_work_not_done_yet_is_a_difference(kitchen: Kitchen) -> None:
    phone = kitchen.phone()
    pen = Pen(phone)
    pushed(phone, [pen.receipt("J1")])

    assert "lot:J1: has no sheet" in _check()


def _check() -> str:
    out = StringIO()
    try:
        call_command("rebuild_sheets", "--check", stdout=out)
    except CommandError:
        assert "sheets equal the log" not in out.getvalue()
    return out.getvalue()


def _sheets() -> dict[str, tuple[Any, ...]]:
    return {
        sheet.subject: (sheet.state, sheet.upto_seq, sheet.entry_count, sheet.is_open)
        for sheet in Sheet.objects.all()
    }
