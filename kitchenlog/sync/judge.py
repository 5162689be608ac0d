"""One entry of a push: a draft for the log, or why it is kept aside, or not yet to be read."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from kitchenlog.entries import rights
from kitchenlog.entries.envelope import Entry
from kitchenlog.entries.parse import parse_entry
from kitchenlog.entries.refusals import Refusal, quarantine_code, sentence
from kitchenlog.entries.upcast import Newer
from kitchenlog.logbook.drafts import Draft, draft_of
from kitchenlog.members.models import Device, Member


@dataclass(frozen=True)
class Aside:
    """Why an entry stays outside the record (R31); `draft` is there if it could be read."""

    code: str
    detail: str
    draft: Draft | None = None


@dataclass(frozen=True)
class Later:
    """Written by a newer app than this server knows; nothing is stored (R35)."""

    detail: str


@dataclass(frozen=True)
class Sender:
    """Who pushes, and every device an entry in the push names that this cooperative has.

    Ids are here as entries write them: there are hundreds of those, and one of these.
    """

    member: Member
    devices: Mapping[str, Device]

    @cached_property
    def cooperative(self) -> str:
        """The member's cooperative."""
        return str(self.member.cooperative_id)

    @cached_property
    def author(self) -> str:
        """The member who may be the author."""
        return str(self.member.pk)


def judged(value: object, *, sender: Sender) -> Draft | Aside | Later:
    """What to do with one entry. Business reasons never count here (R31)."""
    parsed = parse_entry(value)
    if isinstance(parsed, Newer):
        return Later("This server is older than the app that wrote it; it will be asked again.")
    if isinstance(parsed, Refusal):
        return Aside(quarantine_code(parsed), sentence(parsed))
    entry, body = parsed
    assert isinstance(value, dict)  # else its envelope would have been refused
    draft = draft_of(entry, made=value, body=body)
    objection = _objection(entry, sender)
    if objection is not None:
        return Aside(*objection, draft)
    if sender.member.is_coordinator:
        return draft
    if rights.written_by(entry.kind, body) == "coordinator":
        return Aside("role", f"Only a coordinator may write {entry.kind}.", draft)
    if is_anothers(draft.subjects, sender.member):
        return anothers(draft)
    return draft


def is_anothers(subjects: Iterable[str], member: Member) -> bool:
    """Whether something about these subjects is another member's own."""
    return bool(rights.owners_of(subjects) - {str(member.pk)})


def anothers(draft: Draft) -> Aside:
    """What is a member's own is written by that member, or by a coordinator."""
    return Aside("role", "Only that member or a coordinator may write this.", draft)


def coordinators_only(draft: Draft) -> Aside:
    """What only a coordinator may write is a coordinator's to correct."""
    return Aside("role", "Only a coordinator may correct what a coordinator wrote.", draft)


def _objection(entry: Entry, sender: Sender) -> tuple[str, str] | None:
    """Author, device and cooperative are checked against the session, never believed (R70)."""
    member, device = sender.member, sender.devices.get(entry.device)
    if entry.cooperative != sender.cooperative or entry.author != sender.author:
        return "wrong_author", "This entry was not written by the member who sent it."
    if device is None or device.member_id != member.pk:
        return "wrong_author", "This entry was not written on a device of its author."
    if member.has_left:
        return "not_a_member", "Its author is no longer a member."
    if device.revoked_at is not None:
        return "revoked_device", "It was written on a device that was signed off."
    return None
