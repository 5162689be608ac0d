"""A push: judge each entry, append the good ones, keep the others aside, answer one by one."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any, NamedTuple
from uuid import UUID

from django.db.models.functions import Greatest

from kitchenlog.entries.forms import UUID as UUID_FORM
from kitchenlog.logbook.drafts import Draft, Kept
from kitchenlog.logbook.selectors import (
    LogPlace,
    coordinators_among,
    fingerprints_by_id,
    own_subjects_of,
)
from kitchenlog.logbook.services import NewAside, append_entries, keep_aside
from kitchenlog.members.models import Device, Member
from kitchenlog.sync.judge import (
    Aside,
    Later,
    Sender,
    anothers,
    coordinators_only,
    is_anothers,
    judged,
)
from kitchenlog.sync.push_body import PushBody

ID_ECHO_CHARS = 100

Judgement = Draft | Aside | Later
Result = dict[str, Any]


class Answer(NamedTuple):
    """What became of each entry of a push, in its order, and where the log stands now."""

    results: list[Result]
    place: LogPlace


@dataclass(frozen=True)
class Session:
    """Who pushes, from which device, and when we heard of it."""

    member: Member
    device: Device
    at: datetime


def answer_to(push: PushBody, *, session: Session) -> Answer:
    """Store what can be stored and answer for each entry (R2)."""
    sender = Sender(session.member, _devices(push, session))
    judgements = [judged(value, sender=sender) for value in push.entries]
    judgements = _but_known(_but_anothers(judgements, session.member), session)
    drafts = [each for each in judgements if isinstance(each, Draft)]
    appended = append_entries(
        drafts,
        cooperative=session.member.cooperative_id,
        received_at=session.at,
        skew_ms=_skew_ms(push, session),
    )
    kept = iter(appended.kept)
    outcomes = [next(kept) if isinstance(v, Draft) else v for v in judgements]
    _keep_asides(push, judgements, outcomes, session)
    own_device = str(session.device.pk)
    _note_device_seq(session, [d for d in drafts if d.device == own_device])
    results = [
        _result(value, outcome) for value, outcome in zip(push.entries, outcomes, strict=True)
    ]
    return Answer(results, appended.place)


def _devices(push: PushBody, session: Session) -> Mapping[str, Device]:
    """Devices named in the entries: nearly always only the one that sends them."""
    named = {
        device
        for entry in push.entries
        if isinstance(entry, dict) and isinstance(device := entry.get("device"), str)
    }
    own = str(session.device.pk)
    others = [UUID(device) for device in named - {own} if UUID_FORM.fullmatch(device)]
    known = {own: session.device}
    if others:
        rows = Device.objects.filter(cooperative=session.member.cooperative_id, pk__in=others)
        known |= {str(device.pk): device for device in rows}
    return known


def _but_anothers(judgements: Sequence[Judgement], member: Member) -> list[Judgement]:
    """A correction or void of what is another member's own, or only a coordinator's to write,
    stays outside, whatever it says of itself: the log knows the entry that it names."""
    named = [v.corrects for v in judgements if isinstance(v, Draft) and v.corrects is not None]
    if not named or member.is_coordinator:
        return list(judgements)
    own = own_subjects_of(member.cooperative_id, named)
    coordinators = coordinators_among(member.cooperative_id, named)

    def decided(judgement: Judgement) -> Judgement:
        if not isinstance(judgement, Draft) or judgement.corrects is None:
            return judgement
        if judgement.corrects in coordinators:
            return coordinators_only(judgement)
        is_not_theirs = is_anothers(own.get(judgement.corrects, ()), member)
        return anothers(judgement) if is_not_theirs else judgement

    return [decided(each) for each in judgements]


def _but_known(judgements: Sequence[Judgement], session: Session) -> list[Judgement]:
    """What the log already holds was good when it came; sending it again stays harmless."""
    readable = [v.draft for v in judgements if isinstance(v, Aside) and v.draft is not None]
    if not readable:
        return list(judgements)
    known = fingerprints_by_id(session.member.cooperative_id, [d.id for d in readable])
    return [
        v.draft
        if isinstance(v, Aside)
        and v.draft is not None
        and known.get(v.draft.id) == v.draft.fingerprint
        else v
        for v in judgements
    ]


def _skew_ms(push: PushBody, session: Session) -> int:
    """Our clock minus the device's (R33)."""
    return round((session.at - push.device_time).total_seconds() * 1000)


def _keep_asides(
    push: PushBody,
    judgements: Sequence[Judgement],
    outcomes: Sequence[Kept | Aside | Later],
    session: Session,
) -> None:
    reasons = [_reason(outcome) for outcome in outcomes]
    if not any(reasons):
        return
    rows = []
    for each, reason, raw in zip(judgements, reasons, push.raw_entries(), strict=True):
        if reason is not None:
            draft = each.draft if isinstance(each, Aside) else each
            rows.append(_new_aside(reason, draft, raw))
    keep_aside(
        rows,
        cooperative=session.member.cooperative_id,
        author=session.member.pk,
        device=session.device.pk,
        received_at=session.at,
    )


def _reason(outcome: Kept | Aside | Later) -> tuple[str, str] | None:
    """Code and sentence of what is kept aside, None for all else."""
    if isinstance(outcome, Aside):
        return outcome.code, outcome.detail
    if isinstance(outcome, Kept) and outcome.status == "mismatch":
        return "mismatch", "Another entry with this id came first; both are kept."
    if isinstance(outcome, Kept) and outcome.status == "unstorable":
        return "unreadable", "The entry holds something that cannot be stored."
    return None


def _new_aside(reason: tuple[str, str], draft: Draft | Later | None, raw: str) -> NewAside:
    is_readable = isinstance(draft, Draft)
    sent = raw.encode()
    return NewAside(
        code=reason[0],
        detail=reason[1],
        entry=UUID(draft.id) if isinstance(draft, Draft) else None,
        is_readable=is_readable,
        digest=draft.fingerprint
        if isinstance(draft, Draft)
        else hashlib.sha256(sent).hexdigest(),
        raw=sent,
    )


def _note_device_seq(session: Session, own: Sequence[Draft]) -> None:
    highest = max((draft.device_seq for draft in own), default=0)
    if highest > session.device.highest_device_seq:
        Device.objects.filter(pk=session.device.pk).update(
            highest_device_seq=Greatest("highest_device_seq", highest)
        )


def _result(value: object, outcome: Kept | Aside | Later) -> Result:
    reason = _reason(outcome)
    if isinstance(outcome, Later):
        return {"id": _echo(value), "status": "retry", "detail": outcome.detail}
    if reason is None:
        assert isinstance(outcome, Kept)
        return {"id": outcome.id, "status": outcome.status}
    is_mismatch = reason[0] == "mismatch"
    return {
        "id": _echo(value),
        "status": "mismatch" if is_mismatch else "quarantined",
        "code": reason[0],
        "detail": reason[1],
    }


def _echo(value: object) -> str | None:
    """The id an entry claims, so that the phone can tell which one is meant."""
    claimed = value.get("id") if isinstance(value, dict) else None
    return claimed[:ID_ECHO_CHARS] if isinstance(claimed, str) else None
