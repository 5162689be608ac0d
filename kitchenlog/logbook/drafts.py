"""An entry on its way into the log: parsed, not yet numbered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache
from typing import Literal
from uuid import UUID

from kitchenlog.entries import links, rights
from kitchenlog.entries.canonical import canonical_text
from kitchenlog.entries.envelope import Entry
from kitchenlog.logbook.chain import fingerprint_of_text

KeptStatus = Literal["created", "exists", "mismatch", "unstorable"]


@dataclass(frozen=True, kw_only=True)
class Draft:
    """What the log needs to know of an entry; `canonical` is the entry itself."""

    id: UUID
    kind: str
    author: UUID
    device: UUID
    device_seq: int
    happened_at: datetime
    subjects: tuple[str, ...]
    mentions: tuple[str, ...]
    corrects: UUID | None
    audience: str
    canonical: str
    fingerprint: str


@dataclass(frozen=True)
class Kept:
    """What became of a draft; `seq` is that of the entry in the log, None if there is none."""

    id: UUID
    status: KeptStatus
    seq: int | None


_uuid = lru_cache(maxsize=1_000)(UUID)  # a push names one author and one device


def draft_of(entry: Entry, *, made: Mapping[str, object], body: Mapping[str, object]) -> Draft:
    """A draft of a parsed entry; `made` is it as it came, `body` its body in today's form.

    A phone may have forgotten what an entry is about, so subjects follow from the body too.
    """
    text = canonical_text(made)
    named = links.corrects(entry.kind, body)
    subjects = {*entry.subjects, *links.subjects_of(entry.kind, body)}
    return Draft(
        id=UUID(entry.id),
        kind=entry.kind,
        author=_uuid(entry.author),
        device=_uuid(entry.device),
        device_seq=entry.device_seq,
        happened_at=datetime.fromisoformat(entry.happened_at),
        subjects=tuple(sorted(subjects)),
        mentions=links.mentions_of(entry.kind, body),
        corrects=None if named is None else UUID(named),
        audience=rights.audience_about(entry.kind, body, subjects),
        canonical=text,
        fingerprint=fingerprint_of_text(text),
    )
