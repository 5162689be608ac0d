"""`manage.py start_cooperative`: a real start, and the way back in for the first member."""

from __future__ import annotations

import getpass
import sys
import zoneinfo
from argparse import ArgumentParser
from datetime import UTC, datetime
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError
from django.db import transaction

from kitchenlog.members.models import ROLES, Cooperative, JoinCode, Member
from kitchenlog.members.refusals import Refused
from kitchenlog.members.scope import in_cooperative
from kitchenlog.sync import people

QUESTIONS = {
    "name": "Name of the cooperative",
    "handle": "Short name for signing in, as in anna@HANDLE",
    "time_zone": "Time zone, for example Europe/Dublin",
    "currency": "Currency, three letters",
    "language": "Language, for example en",
}
CURRENCY_LETTERS = 3


class Command(BaseCommand):
    """Begin a cooperative, or let its first member in again."""

    help = (
        "Begin a cooperative and answer a join code for its first coordinator. With --login "
        "and a passphrase the coordinator is made at once. For a handle that is known, a "
        "new code is made: for the member named by --login, or else for another coordinator."
    )

    def add_arguments(self, parser: ArgumentParser) -> None:
        """All may be left out; what is needed is then asked for."""
        for word in QUESTIONS:
            parser.add_argument(f"--{word.replace('_', '-')}")
        parser.add_argument("--login", help="login of the first coordinator, without @")
        parser.add_argument("--member", help="name of the first coordinator")
        parser.add_argument(
            "--passphrase-stdin",
            action="store_true",
            help="read the passphrase from standard input (else from a prompt)",
        )

    def handle(self, *args: Any, **options: Any) -> None:
        """Begin, or let in again; a refusal becomes one sentence."""
        at = datetime.now(UTC)
        try:
            handle = _answer(options, "handle").lower()
            known = Cooperative.objects.filter(handle=handle).first()
            if known is not None:
                self._let_in_again(known, options["login"], at)
            else:
                self._begin(handle, options, at)
        except Refused as refused:
            raise CommandError(refused.detail) from refused

    def _begin(self, handle: str, options: dict[str, Any], at: datetime) -> None:
        said = {word: _answer(options, word) for word in QUESTIONS if word != "handle"}
        _require_known(said["time_zone"], said["currency"])
        newcomer = _newcomer(options) if options["login"] else None
        starts_with = {word: said[word] for word in ("time_zone", "currency", "language")}
        starts_with["currency"] = starts_with["currency"].upper()
        with transaction.atomic():  # a refused member must not leave a cooperative without one
            cooperative = people.begin_cooperative(
                handle=handle, name=said["name"], starts_with=starts_with, at=at
            )
            if newcomer is not None:
                with in_cooperative(cooperative):
                    people.add_member(cooperative, newcomer, roles=list(ROLES), at=at)
        self.stdout.write(f"{cooperative.name} has begun.")
        if newcomer is None:
            self._give_code(cooperative, None, at)
        else:
            self.stdout.write(f"Sign in as {newcomer.login.lower()}@{handle}.")

    def _let_in_again(self, known: Cooperative, login: str | None, at: datetime) -> None:
        self.stdout.write(f"{known.name} has begun already.")
        member = None
        if login:
            member = Member.objects.filter(cooperative=known, login=login.lower()).first()
            if member is None:
                raise CommandError(f"login: nobody there is called {login}.")
        self._give_code(known, member, at)

    def _give_code(self, cooperative: Cooperative, member: Member | None, at: datetime) -> None:
        roles = member.roles if member else list(ROLES)
        code, kept = people.make_join_code(
            cooperative, roles=roles, member=member, made_by=None, at=at
        )
        whom = member.full_login if member else "a coordinator"
        self.stdout.write(f"Join code for {whom}: {code}")
        self.stdout.write(f"It works once, until {_clock(kept)}.")


def _answer(options: dict[str, Any], word: str) -> str:
    given = options[word]
    if not given:
        if not sys.stdin.isatty():
            raise CommandError(f"--{word.replace('_', '-')} is needed: {QUESTIONS[word]}.")
        given = input(f"{QUESTIONS[word]}: ")
    return str(given).strip()


def _newcomer(options: dict[str, Any]) -> people.Newcomer:
    passphrase = (
        sys.stdin.readline().rstrip("\n")
        if options["passphrase_stdin"] or not sys.stdin.isatty()
        else getpass.getpass("Passphrase, at least 10 characters: ")
    )
    login = str(options["login"])
    return people.Newcomer(options["member"] or login, login, passphrase)


def _require_known(time_zone: str, currency: str) -> None:
    if time_zone not in zoneinfo.available_timezones():
        raise CommandError(f"--time-zone: {time_zone!r} is not one. Try Europe/Dublin.")
    if not (len(currency) == CURRENCY_LETTERS and currency.isascii() and currency.isalpha()):
        raise CommandError("--currency: three letters, for example EUR.")


def _clock(kept: JoinCode) -> str:
    return f"{kept.expires_at:%H:%M} UTC ({settings.JOIN_CODE_MINUTES} minutes)"
