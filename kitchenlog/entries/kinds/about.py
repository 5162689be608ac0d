"""Entries about entries: correction, void, a settled finding, a note."""

from __future__ import annotations

from kitchenlog.entries.kinds.fields import (
    NOTE_CHARS,
    SENTENCE_CHARS,
    Field,
    Kind,
    choice,
    entry_id,
    items,
    subject,
    text,
)

_NAMES_AN_ENTRY = (entry_id("corrects"), text("of_kind", most=40))
_REASON = text("reason", most=SENTENCE_CHARS)
_INSTEAD_OF = items("instead_of", entry_id("entry"), most=20, needed=False)

ABOUT_KINDS: tuple[Kind, ...] = (
    Kind(
        name="correction",
        says="The whole new body of an earlier entry, and why. The old one stays readable.",
        fields=(*_NAMES_AN_ENTRY, _REASON, Field(name="body", type="body"), _INSTEAD_OF),
        subjects=(),  # those of the old body and of the new, see entries.links
    ),
    Kind(
        name="void",
        says="An earlier entry did not happen, and why. It stays readable.",
        fields=(*_NAMES_AN_ENTRY, _REASON, _INSTEAD_OF),
        subjects=(),  # those of the entry it names, see entries.links
    ),
    Kind(
        name="finding_settled",
        says="Somebody looked at a finding and decided.",
        fields=(
            subject("subject"),
            text("finding", most=200),
            choice("decision", "explained", "put_right", "accepted"),
            _REASON,
        ),
        subjects=("{subject}",),
        written_by="coordinator",
    ),
    Kind(
        name="note",
        says="Words about a subject.",
        fields=(subject("subject"), text("says", most=NOTE_CHARS)),
        subjects=("{subject}",),
    ),
)
