"""How people come in: a cooperative begins, a code lets one in, a device gets its session."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, timedelta
from random import SystemRandom
from uuid import UUID

from django.conf import settings
from django.contrib.auth.hashers import make_password
from django.contrib.auth.password_validation import validate_password
from django.core.exceptions import ValidationError
from django.db import transaction

from kitchenlog.logbook.services import NewSheet, open_log, save_sheets
from kitchenlog.logbook.turnstile import locked_head
from kitchenlog.members.marks import code_hash, free_mark, new_code
from kitchenlog.members.models import ROLES, Cooperative, Device, JoinCode, Member
from kitchenlog.members.refusals import Refused
from kitchenlog.members.scope import in_cooperative
from kitchenlog.members.sessions import open_session

LOGIN = re.compile(r"[a-z0-9][a-z0-9._-]{0,39}")
HANDLE = re.compile(r"[a-z0-9][a-z0-9-]{0,39}")
MEMBER_FOLD = 1  # a member's sheet is written by the server and folded from nothing
NOT_TOGETHER = "This login and this passphrase do not go together."
CODE_IS_OVER = "This code is wrong, used or older than 30 minutes. Ask for a new one."


@dataclass(frozen=True)
class Newcomer:
    """What somebody who joins says of themselves."""

    name: str
    login: str
    passphrase: str


def begin_cooperative(
    *, handle: str, name: str, starts_with: dict[str, str], at: datetime
) -> Cooperative:
    """A new cooperative with an empty log. `starts_with`: time_zone, currency, language."""
    if not HANDLE.fullmatch(handle):
        raise Refused("unreadable", 400, "handle: small letters, digits and dashes.", "handle")
    if Cooperative.objects.filter(handle=handle).exists():
        raise Refused("unreadable", 400, "handle: another cooperative has it.", "handle")
    cooperative = Cooperative(handle=handle, name=name, starts_with=starts_with, created_at=at)
    with in_cooperative(cooperative):
        cooperative.save(force_insert=True)
        open_log(cooperative.id)
    return cooperative


def make_join_code(
    cooperative: Cooperative,
    *,
    roles: list[str],
    member: Member | None,
    made_by: Device | None,
    at: datetime,
) -> tuple[str, JoinCode]:
    """A code for one person, once; it stands in clear in this answer only."""
    if not roles or not set(roles) <= set(ROLES):
        raise Refused("unreadable", 400, f"roles: one or more of {', '.join(ROLES)}.", "roles")
    code = new_code(SystemRandom(), is_for_member=member is not None)
    kept = JoinCode.objects.create(
        cooperative=cooperative,
        code_hash=code_hash(code),
        roles=sorted(set(roles), key=ROLES.index),
        member=member,
        made_by=made_by,
        created_at=at,
        expires_at=at + timedelta(minutes=settings.JOIN_CODE_MINUTES),
    )
    return code, kept


def open_join_code(code: str, *, at: datetime) -> JoinCode:
    """The code somebody brings, if it still opens; whichever way it does not, one answer."""
    kept = (
        JoinCode.objects.select_related("cooperative", "member")
        .filter(code_hash=code_hash(code), used_at=None, expires_at__gt=at)
        .first()
    )
    if kept is None:
        raise Refused("not_authenticated", 401, CODE_IS_OVER, "join_code")
    return kept


def join_by_code(kept: JoinCode, newcomer: Newcomer, *, at: datetime) -> Member:
    """Use a code up: a new member, or the code's own member with a new passphrase.

    Call it inside the cooperative's scope.
    """
    # The row lock keeps two newcomers from taking one login on PostgreSQL.
    Cooperative.objects.select_for_update().get(pk=kept.cooperative_id)
    if kept.member is None:
        member = add_member(kept.cooperative, newcomer, roles=kept.roles, at=at)
    else:
        member = kept.member
        _set_passphrase(member, newcomer.passphrase)
        member.save(update_fields=["password"])
    used = JoinCode.objects.filter(pk=kept.pk, used_at=None).update(used_at=at)
    if not used:
        raise Refused("not_authenticated", 401, CODE_IS_OVER, "join_code")
    return member


def add_member(
    cooperative: Cooperative, newcomer: Newcomer, *, roles: list[str], at: datetime
) -> Member:
    """A new member and the sheet by which the others know the name."""
    login = newcomer.login.strip().lower()
    if not LOGIN.fullmatch(login):
        raise Refused(
            "unreadable",
            400,
            "login: small letters, digits, dot and dash, at most 40.",
            "login",
        )
    if Member.objects.filter(cooperative=cooperative, login=login).exists():
        raise Refused("unreadable", 400, "login: somebody here has it already.", "login")
    member = Member(
        cooperative=cooperative, login=login, name=newcomer.name, roles=roles, joined_at=at
    )
    _set_passphrase(member, newcomer.passphrase)
    member.save(force_insert=True)
    put_member_sheet(member)
    return member


def put_member_sheet(member: Member) -> None:
    """Tell every phone who this is; to be called after each change of a member."""
    sheet = NewSheet(
        subject=f"member:{member.id}",
        state={
            "member": str(member.id),
            "name": member.name,
            "roles": member.roles,
            "has_left": member.has_left,
        },
        upto_seq=0,
        entry_count=0,
        fold=MEMBER_FOLD,
        is_open=False,
    )
    with transaction.atomic():
        save_sheets(locked_head(member.cooperative_id), [sheet])


def member_who_signs_in(full_login: str, passphrase: str) -> Member:
    """The member of `name@handle` with this passphrase; one answer for all who are not.

    An unknown login costs a hash as well, or its time would tell that it is unknown.
    """
    login, _, handle = full_login.strip().lower().partition("@")
    member = (
        Member.objects.select_related("cooperative")
        .filter(login=login, cooperative__handle=handle)
        .first()
    )
    if member is None:
        make_password(passphrase)
    elif member.check_password(passphrase):
        return member
    raise Refused("not_authenticated", 401, NOT_TOGETHER)


def register_device(member: Member, *, app_version: str, at: datetime) -> tuple[Device, str]:
    """A new device of this member with a mark of its own, and its token.

    Call it inside the cooperative's scope.
    """
    Cooperative.objects.select_for_update().get(pk=member.cooperative_id)
    known = Device.objects.filter(cooperative=member.cooperative_id)
    mark = free_mark(set(known.values_list("mark", flat=True)), SystemRandom())
    if mark is None:
        raise Refused("forbidden", 403, "All 576 device marks of this cooperative are taken.")
    device = Device(
        cooperative=member.cooperative,
        member=member,
        mark=mark,
        app_version=app_version,
    )
    token = open_session(device, at=at)
    device.save(force_insert=True)
    return device, token


def sign_in_again(
    device_id: UUID, member: Member, *, app_version: str, at: datetime
) -> tuple[Device, str]:
    """A new session for a device this member has had; call it inside the scope."""
    device = (
        Device.objects.select_related("member", "cooperative")
        .filter(id=device_id, member=member)
        .first()
    )
    if device is None:
        raise Refused("not_authenticated", 401, NOT_TOGETHER)
    if device.revoked_at is not None:
        raise Refused("device_revoked", 403, "This device was signed off by a coordinator.")
    token = open_session(device, at=at)
    device.app_version = app_version
    device.save()
    return device, token


def sign_out(device: Device, *, at: datetime) -> None:
    """End the session; the device keeps its mark and may sign in again."""
    device.token_hash = ""
    device.signed_out_at = at
    device.save(update_fields=["token_hash", "signed_out_at"])


def revoke(device: Device, *, at: datetime) -> None:
    """Shut a device out for good. The token stays known, so that the device can be told."""
    if device.revoked_at is None:
        device.revoked_at = at
        device.save(update_fields=["revoked_at"])


def _set_passphrase(member: Member, passphrase: str) -> None:
    try:
        validate_password(passphrase, member)
    except ValidationError as wrong:
        sentence = f"passphrase: {' '.join(wrong.messages)}"
        raise Refused("unreadable", 400, sentence, "passphrase") from wrong
    member.set_password(passphrase)
