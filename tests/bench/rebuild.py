"""Rebuilding one lot whose history is 10 to 10 000 entries long."""

from __future__ import annotations

from datetime import UTC, datetime

from django.core.management import call_command

from kitchenlog.logbook.models import EntrySubject
from kitchenlog.logbook.rebuild import rebuild_subject
from tests.bench.table import head, line, seconds
from tests.bench.wire import Sender, push_of_one_lot
from tests.people import Kitchen, Phone

LENGTHS = (10, 100, 1_000, 10_000)
TIMES = 3


def measure() -> None:
    """Fills lots through the same door as a push, then times the rebuild alone."""
    call_command("migrate", verbosity=0)
    kitchen = Kitchen("bench")
    phone = kitchen.phone("coordinator")
    phone.client.defaults["HTTP_HOST"] = "localhost"
    head("rebuild of one lot, sqlite")
    for length in LENGTHS:
        sender = Sender(0, str(kitchen.cooperative.pk), str(phone.member.pk),
                        str(phone.device.pk), phone.token)  # fmt: skip
        for body in push_of_one_lot(sender, f"LOT-{length}", length):
            _take_in(phone, body)
        subject = f"lot:LOT-{length}"
        held = EntrySubject.objects.filter(subject=subject).count()
        assert held == length, (held, length)
        took = min(
            seconds(
                lambda s=subject: rebuild_subject(kitchen.cooperative, s, at=datetime.now(UTC))
            )
            for _ in range(TIMES)
        )
        line(
            f"{length:,} entries",
            f"{took * 1000:,.1f} ms",
            floor=f"{took / length * 1e6:,.0f} us an entry",
        )


def _take_in(phone: Phone, body: bytes) -> None:
    answer = phone.post("sync/push", body)
    assert {row["status"] for row in answer.json()["results"]} == {"created"}, answer.content
