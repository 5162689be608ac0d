"""The demo's cooperative on this server: begun once, with devices whose ids stay the same."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, datetime, time
from uuid import NAMESPACE_URL, UUID, uuid5

from demo_data.diary import House, Phone
from demo_data.door import Key
from demo_data.story import STORY_NUMBER, Row, Story
from demo_data.weeks import anchor_of, first_day
from kitchenlog.logbook.services import epoch_of
from kitchenlog.members.models import Cooperative, Device, Member
from kitchenlog.members.refusals import Refused
from kitchenlog.members.scope import in_cooperative
from kitchenlog.members.sessions import open_session
from kitchenlog.sync import people

BEGINS_AT = time(5)


@dataclass(frozen=True)
class Demo:
    """A demo cooperative, the day its story is told from, and what opens its devices."""

    cooperative: Cooperative
    anchor: date
    house: House
    keys: dict[str, Key]


def latest(story: Story) -> Cooperative | None:
    """The demo that was begun last, if there is one."""
    handle = story.cooperative["handle"]
    named = Cooperative.objects.filter(handle__startswith=handle).order_by("handle")
    demos = [each for each in named if re.fullmatch(rf"{handle}(-[0-9]+)?", each.handle)]
    return max(demos, key=lambda each: _number(each.handle), default=None)


def begin(story: Story, *, anchor: date) -> Cooperative:
    """Another demo cooperative; its first day says which anchor its story has."""
    before = latest(story)
    handle: str = story.cooperative["handle"]
    if before is not None:
        handle = f"{handle}-{_number(before.handle) + 1}"
    words = ("time_zone", "currency", "language")
    return people.begin_cooperative(
        handle=handle,
        name=story.cooperative["name"],
        starts_with={word: story.cooperative[word] for word in words},
        at=datetime.combine(first_day(anchor), BEGINS_AT, story.zone),
    )


def opened(cooperative: Cooperative, story: Story, *, at: datetime) -> Demo:
    """Members and devices of a demo, made where they are missing, each with a new session."""
    phones, keys = {}, {}
    for row in story.members:
        with in_cooperative(cooperative):
            device, token = _device(_member(cooperative, row, story), row, at)
            epoch = epoch_of(cooperative.pk)
        phones[row["login"]] = Phone(str(device.member_id), str(device.pk), device.mark)
        keys[row["login"]] = Key(str(device.pk), token, epoch)
    return Demo(
        cooperative=cooperative,
        anchor=anchor_of(cooperative.created_at.astimezone(story.zone).date()),
        house=House(str(cooperative.pk), phones),
        keys=keys,
    )


def _member(cooperative: Cooperative, row: Row, story: Story) -> Member:
    known = Member.objects.select_related("cooperative").filter(
        cooperative=cooperative, login=row["login"]
    )
    member = known.first()
    if member is not None:
        return member
    newcomer = people.Newcomer(row["name"], row["login"], story.passphrase)
    return people.add_member(
        cooperative, newcomer, roles=list(row["roles"]), at=cooperative.created_at
    )


def _device(member: Member, row: Row, at: datetime) -> tuple[Device, str]:
    """An entry names its device, so the id must follow from what the story says.

    An ordinary sign-in gives a device an id and a mark by chance.
    """
    device_id = _device_id(member.cooperative, row)
    found = Device.objects.filter(cooperative=member.cooperative, mark=row["mark"]).first()
    if found is None:
        found = Device(
            id=device_id, cooperative=member.cooperative, member=member, mark=row["mark"]
        )
    elif found.pk != device_id or found.revoked_at is not None:
        raise Refused("forbidden", 403, "This demo is no longer as its story tells it.")
    token = open_session(found, at=at)
    found.save()
    return found, token


def _device_id(cooperative: Cooperative, row: Row) -> UUID:
    words = f"kitchenlog-demo/{STORY_NUMBER}/{cooperative.pk}/{row['login']}"
    return uuid5(NAMESPACE_URL, words)


def _number(handle: str) -> int:
    number = handle.rpartition("-")[2]
    return int(number) if number.isdecimal() else 1
