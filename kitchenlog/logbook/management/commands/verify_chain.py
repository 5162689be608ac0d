"""`manage.py verify_chain`: is the log what was written?"""

from __future__ import annotations

from typing import Any

from django.core.management.base import BaseCommand, CommandError

from kitchenlog.logbook.models import LogHead
from kitchenlog.logbook.verify import bad_places
from kitchenlog.members.scope import in_cooperative


class Command(BaseCommand):
    """Names each bad place of each log, and ends with an error if there is one."""

    help = "Recompute fingerprints, hash chains and links; name what was tampered with."

    def handle(self, *args: Any, **options: Any) -> None:
        """Every cooperative, one after the other."""
        is_whole = True
        for head in LogHead.objects.select_related("cooperative").order_by("cooperative_id"):
            handle = head.cooperative.handle
            with in_cooperative(head.cooperative, writes=False):
                bad_count = 0
                for bad in bad_places(head.cooperative_id):
                    bad_count += 1
                    where = "at the end" if bad.seq is None else f"at {bad.seq}"
                    self.stdout.write(f"{handle}: broken {where}: {bad.says}")
            if bad_count == 0:
                self.stdout.write(f"{handle}: whole")
            is_whole = is_whole and bad_count == 0
        if not is_whole:
            raise CommandError("The log is not what was written.")
