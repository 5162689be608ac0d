"""Whose eyes a member reads the record with."""

from __future__ import annotations

from uuid import UUID

from kitchenlog.entries.rights import SEES_ALL, Eyes
from kitchenlog.logbook.selectors import states_of
from kitchenlog.members.models import Member


def eyes_of(member: Member) -> Eyes:
    """A coordinator sees all of it; money is for all members where prices are shown."""
    if member.is_coordinator:
        return SEES_ALL
    return Eyes(str(member.pk), sees_money=shows_prices(member.cooperative_id))


def sees_money(member: Member) -> bool:
    """Whether a member may know what things cost."""
    return member.is_coordinator or shows_prices(member.cooperative_id)


def shows_prices(cooperative: UUID) -> bool:
    """Whether a cooperative shows prices to all its members; not before it says so."""
    subject = f"cooperative:{cooperative}"
    state = states_of(cooperative, [subject]).get(subject, {})
    return state.get("fields", {}).get("prices_shown") is True
