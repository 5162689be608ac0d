"""An entry on its way into the log: parsed, not yet numbered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Literal, NamedTuple

from kitchenlog.entries import links, rights
from kitchenlog.entries.canonical import canonical_text
from kitchenlog.entries.envelope import Entry
from kitchenlog.logbook.chain import fingerprint_of_text

KeptStatus = Literal["created", "exists", "mismatch", "unstorable"]


class Draft(NamedTuple):
    """What the log needs to know of an entry; `canonical` is the entry itself.

    Ids are text as entries write them: a push has hundreds, and each is only handed on.
    """

    id: str
    kind: str
    author: str
    device: str
    device_seq: int
    happened_at: datetime
    subjects: tuple[str, ...]
    mentions: tuple[str, ...]
    corrects: str | None
    audience: str
    canonical: str
    fingerprint: str


@dataclass(frozen=True)
class Kept:
    """What became of a draft; `seq` is that of the entry in the log, None if there is none."""

    id: str
    status: KeptStatus
    seq: int | None


def draft_of(entry: Entry, *, made: Mapping[str, object], body: Mapping[str, object]) -> Draft:
    """A draft of a parsed entry; `made` is it as it came, `body` its body in today's form.

    A phone may have forgotten what an entry is about, so subjects follow from the body too.
    """
    text = canonical_text(made)
    subjects = {*entry.subjects, *links.subjects_of(entry.kind, body)}
    return Draft(
        id=entry.id,
        kind=entry.kind,
        author=entry.author,
        device=entry.device,
        device_seq=entry.device_seq,
        happened_at=datetime.fromisoformat(entry.happened_at),
        subjects=tuple(sorted(subjects)),
        mentions=links.mentions_of(entry.kind, body),
        corrects=links.corrects(entry.kind, body),
        audience=rights.audience_about(entry.kind, body, subjects),
        canonical=text,
        fingerprint=fingerprint_of_text(text),
    )
