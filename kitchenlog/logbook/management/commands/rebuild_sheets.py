"""`manage.py rebuild_sheets`: all sheets from the log alone; with --check only compare."""

from __future__ import annotations

from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.utils import timezone

from kitchenlog.calc.folds import LEANED_ON
from kitchenlog.calc.subjects import type_in
from kitchenlog.logbook.models import LogHead
from kitchenlog.logbook.rebuild import rebuild_subject
from kitchenlog.logbook.selectors import subjects_in_log
from kitchenlog.logbook.verify import first_bad_place, sheets_that_differ
from kitchenlog.members.models import Cooperative
from kitchenlog.members.scope import in_cooperative

LOG_IS_BROKEN = "the log itself is not what was written; manage.py verify_chain says where"


class Command(BaseCommand):
    """Rebuilds, or says whether what is stored equals the log."""

    help = "Rebuild every sheet from the log; --check changes nothing and names differences."

    def add_arguments(self, parser: CommandParser) -> None:
        """One switch."""
        parser.add_argument(
            "--check", action="store_true", help="only compare; ends with 1 on a difference"
        )

    def handle(self, *args: Any, **options: Any) -> None:
        """Every cooperative, one after the other."""
        work = self._check if options["check"] else self._rebuild
        heads = LogHead.objects.select_related("cooperative").order_by("cooperative_id")
        differences = sum(work(head.cooperative) for head in heads)
        if differences:
            raise CommandError(f"{differences} differences between sheets and log.")

    def _rebuild(self, cooperative: Cooperative) -> int:
        with in_cooperative(cooperative, writes=False):
            subjects = subjects_in_log(cooperative.pk)
        for subject in sorted(subjects, key=_leans):
            rebuild_subject(cooperative, subject, at=timezone.now())
        self.stdout.write(f"{cooperative.handle}: {len(subjects)} sheets rebuilt")
        return 0

    def _check(self, cooperative: Cooperative) -> int:
        differences = 0
        with in_cooperative(cooperative, writes=False):
            if first_bad_place(cooperative.pk) is not None:
                self.stdout.write(f"{cooperative.handle}: {LOG_IS_BROKEN}")
                return 1
            for sentence in sheets_that_differ(cooperative.pk):
                differences += 1
                self.stdout.write(f"{cooperative.handle}: {sentence}")
        if not differences:
            self.stdout.write(f"{cooperative.handle}: sheets equal the log")
        return differences


def _leans(subject: str) -> bool:
    """What others lean on is built first: they are folded with its sheet as it will stand."""
    return type_in(subject) not in LEANED_ON
