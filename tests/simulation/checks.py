"""What must hold after quiet, whatever happened before."""

from __future__ import annotations

import json
from collections import Counter, defaultdict
from typing import Any

from django.db.models import Q, QuerySet

from kitchenlog.logbook.models import Entry, Quarantined, Sheet
from kitchenlog.logbook.verify import bad_places, sheets_that_differ
from kitchenlog.members.models import Device, Member
from kitchenlog.members.scope import in_cooperative
from tests.simulation.run import Run


def check(run: Run) -> None:
    """Everything; the first thing that does not hold is told with the seed."""
    seen = run.look()
    with in_cooperative(run.kitchen.cooperative):
        _every_saved_entry_is_there_once(run)
        _no_device_number_is_missing(run)
        _nothing_waits(seen)
        _what_is_kept_aside_needs_attention(run, seen)
        _every_phone_shows_what_the_server_folded(run, seen)
        _the_log_agrees_with_itself(run)


def _every_saved_entry_is_there_once(run: Run) -> None:
    entries = Entry.objects.filter(cooperative=run.kitchen.cooperative.pk)
    stored = [json.loads(text) for text in entries.values_list("canonical", flat=True)]
    aside = [json.loads(bytes(raw)) for raw in _aside(run).values_list("raw", flat=True)]
    counts = Counter(entry["id"] for entry in [*stored, *aside])
    twice = [one for one, count in counts.items() if count > 1]
    assert not twice, f"on the server twice: {twice}"
    found = {entry["id"]: entry for entry in [*stored, *aside]}
    assert set(found) == set(run.saved), (
        f"missing: {set(run.saved) - set(found)}, invented: {set(found) - set(run.saved)}"
    )
    changed = [one for one, entry in found.items() if entry != run.saved[one]]
    assert not changed, f"not as they were made: {changed}"


def _no_device_number_is_missing(run: Run) -> None:
    numbers = defaultdict(list)
    for entry in run.saved.values():
        numbers[entry["device"]].append(entry["device_seq"])
    for device, given in numbers.items():
        assert sorted(given) == list(range(1, len(given) + 1)), f"{device}: {sorted(given)}"


def _nothing_waits(seen: dict[str, Any]) -> None:
    waiting = {device: one["waiting"] for device, one in seen.items() if one["waiting"]}
    assert not waiting, f"still waiting: {waiting}"


def _what_is_kept_aside_needs_attention(run: Run, seen: dict[str, Any]) -> None:
    aside = {(str(one), code) for one, code in _aside(run).values_list("entry_id", "code")}
    told = {(row["id"], row["code"]) for one in seen.values() for row in one["attention"]}
    assert told == aside, f"only on phones: {told - aside}, only on the server: {aside - told}"


def _every_phone_shows_what_the_server_folded(run: Run, seen: dict[str, Any]) -> None:
    for device, one in seen.items():
        if one["standing"] != "in":
            continue
        member = Member.objects.get(pk=Device.objects.get(pk=device).member_id)
        sheets = Sheet.objects.filter(cooperative=run.kitchen.cooperative.pk)
        if "coordinator" not in member.roles:
            own = Q(audience="own", subject=f"skill:{member.pk}")
            sheets = sheets.filter(Q(audience="member") | own)
        server = {
            subject: json.loads(state)
            for subject, state in sheets.values_list("subject", "state")
        }
        phone = {subject: shown["state"] for subject, shown in one["sheets"].items()}
        # What not all may see is still shown to the member who wrote it, from the own entry.
        own = {subject for subject in phone if subject.startswith("price:")}
        assert set(phone) - own == set(server) - own, f"{device}: {set(phone) ^ set(server)}"
        for subject, state in server.items():
            shown = one["sheets"][subject]
            assert shown["state"] == state, (
                f"{subject} on {device} (from {shown['from']}):\n"
                f"{_sorted(shown['state'])}\n{_sorted(state)}"
            )
            assert shown["waiting"] == 0, f"{subject} on {device} says something waits"


def _aside(run: Run) -> QuerySet[Quarantined]:
    return Quarantined.objects.filter(cooperative=run.kitchen.cooperative.pk)


def _sorted(state: Any) -> str:
    return json.dumps(state, sort_keys=True)


def _the_log_agrees_with_itself(run: Run) -> None:
    cooperative = run.kitchen.cooperative.pk
    assert list(bad_places(cooperative)) == []
    assert list(sheets_that_differ(cooperative)) == []
