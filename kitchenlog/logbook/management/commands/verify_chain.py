"""`manage.py verify_chain`: is the log what was written?"""

from __future__ import annotations

from typing import Any

from django.core.management.base import BaseCommand, CommandError

from kitchenlog.logbook.models import LogHead
from kitchenlog.logbook.verify import first_bad_place
from kitchenlog.members.scope import in_cooperative


class Command(BaseCommand):
    """Names the first bad place of each log, and ends with an error if there is one."""

    help = (
        "Recompute fingerprints and hash chains; name the first entry that was tampered with."
    )

    def handle(self, *args: Any, **options: Any) -> None:
        """Every cooperative, one after the other."""
        is_whole = True
        for head in LogHead.objects.select_related("cooperative").order_by("cooperative_id"):
            with in_cooperative(head.cooperative, writes=False):
                bad = first_bad_place(head.cooperative_id)
            if bad is None:
                self.stdout.write(f"{head.cooperative.handle}: whole")
                continue
            is_whole = False
            where = "at the end" if bad.seq is None else f"at {bad.seq}"
            self.stdout.write(f"{head.cooperative.handle}: broken {where}: {bad.says}")
        if not is_whole:
            raise CommandError("The log is not what was written.")
