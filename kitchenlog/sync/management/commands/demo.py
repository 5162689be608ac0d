"""`manage.py demo`: a made-up cooperative, handed over at the front door by its devices."""

from __future__ import annotations

from argparse import ArgumentParser
from collections import Counter
from datetime import UTC, date, datetime
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError

from demo_data.door import Door, Shut
from demo_data.story import Story, read_story
from demo_data.weeks import four_weeks
from kitchenlog.members.refusals import Refused
from kitchenlog.sync import demo_house
from kitchenlog.sync.demo_house import Demo

FRESH_DAYS = 7


class Command(BaseCommand):
    """Begin the demo cooperative if there is none and push its four weeks."""

    help = (
        "Load the demo cooperative into a running server on this database. Loading it twice "
        "adds nothing. Its days are counted back from the day it was first loaded."
    )

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Where the server is, and from which day a new demo counts back."""
        parser.add_argument("--to", required=True, help="for example http://localhost:8000")
        parser.add_argument(
            "--today",
            type=date.fromisoformat,
            help="YYYY-MM-DD, the day after the last of a demo that begins now",
        )
        parser.add_argument(
            "--afresh", action="store_true", help="begin another demo beside those there are"
        )

    def handle(self, *args: Any, **options: Any) -> None:
        """Begin, push, and say how to sign in."""
        if settings.KITCHENLOG_HOST:
            raise CommandError(
                "The demo's passphrase is known to everybody, so it is loaded only where "
                "KITCHENLOG_HOST is not set."
            )
        story, now = read_story(), datetime.now(UTC)
        today = options["today"] or now.astimezone(story.zone).date()
        try:
            door = Door(options["to"])
            door.wait_until_open()
            demo = _demo(story, today=today, is_afresh=options["afresh"], at=now)
            statuses = _handed_over(demo, door)
        except Refused as refused:
            raise CommandError(f"{refused.detail} {_how_to_begin(options['to'])}") from refused
        except Shut as shut:
            raise CommandError(str(shut)) from shut
        self._say(story, demo, statuses)
        age_days = (today - demo.anchor).days
        if age_days > FRESH_DAYS:
            self.stdout.write(
                f"Its last day is {age_days + 1} days ago. {_how_to_begin(options['to'])}"
            )

    def _say(self, story: Story, demo: Demo, statuses: Counter[str]) -> None:
        counted = ", ".join(f"{count} {status}" for status, count in sorted(statuses.items()))
        self.stdout.write(f"{demo.cooperative.name}, a made-up cooperative: {counted}.")
        for row in story.members:
            login = f"{row['login']}@{demo.cooperative.handle}"
            self.stdout.write(f"  {login:<22} {', '.join(row['roles'])}")
        self.stdout.write(f"  passphrase of each: {story.passphrase}")


def _demo(story: Story, *, today: date, is_afresh: bool, at: datetime) -> Demo:
    cooperative = None if is_afresh else demo_house.latest(story)
    if cooperative is None:
        cooperative = demo_house.begin(story, anchor=today)
    return demo_house.opened(cooperative, story, at=at)


def _handed_over(demo: Demo, door: Door) -> Counter[str]:
    statuses: Counter[str] = Counter()
    for login, entries in four_weeks(demo.house, anchor=demo.anchor).items():
        statuses += door.push(demo.keys[login], entries)
    return statuses


def _how_to_begin(address: str) -> str:
    return (
        "To begin one afresh beside it: "
        f".venv/bin/python manage.py demo --to {address} --afresh"
    )
