"""Entries about entries: correction, void, a settled finding, a note."""

from __future__ import annotations

from kitchenlog.entries.kinds.fields import (
    NOTE_CHARS,
    SENTENCE_CHARS,
    VERSION_MOST,
    Field,
    Kind,
    choice,
    entry_id,
    items,
    kind_name,
    subject,
    text,
    whole,
)

# `of_kind` is the kind of the first entry of the family, also where a correction is corrected.
_NAMES_AN_ENTRY = (entry_id("corrects"), kind_name("of_kind"))
# A body has the version of its kind; without this field it is the first one.
_OF_VERSION = whole("of_version", least=1, most=VERSION_MOST, needed=False)
_REASON = text("reason", most=SENTENCE_CHARS)
_INSTEAD_OF = items("instead_of", entry_id("entry"), most=20, needed=False)

ABOUT_KINDS: tuple[Kind, ...] = (
    Kind(
        name="correction",
        says="The whole new body of an earlier entry, and why. The old one stays readable.",
        fields=(
            *_NAMES_AN_ENTRY,
            _REASON,
            Field(name="body", type="body"),
            _OF_VERSION,
            _INSTEAD_OF,
        ),
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
