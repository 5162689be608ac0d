"""What is kept back: put on hold by any member, let go again only by a coordinator."""

from __future__ import annotations

from kitchenlog.entries.kinds.fields import (
    SENTENCE_CHARS,
    Field,
    Kind,
    choice,
    code,
    entry_id,
    group,
    id_of,
    items,
    text,
)

HOLD_CAUSES = ("check", "complaint", "recalled", "other")
# What spoke against using or selling a lot that was used or sold all the same.
AGAINST = ("held", "recalled", "expired")

DESPITE = group(
    "despite",
    Field(name="what", type="choices", choices=AGAINST, most_items=len(AGAINST)),
    text("reason", most=SENTENCE_CHARS),
    needed=False,
)

_BATCH_OR_LOT = (id_of("batch", needed=False), code(needed=False))
_REASON = text("reason", most=SENTENCE_CHARS)

HOLDING_KINDS: tuple[Kind, ...] = (
    Kind(
        name="held",
        says="A batch or a lot is kept back until a coordinator decides.",
        fields=(*_BATCH_OR_LOT, choice("because", *HOLD_CAUSES), _REASON),
        subjects=("batch:{batch}", "lot:{lot}"),
        one_of=("batch", "lot"),
    ),
    Kind(
        name="hold_decided",
        says="A coordinator decided what becomes of a batch or lot on hold, naming each cause.",
        # A cause that nobody named stays open: what came from another phone is not let go
        # by somebody who had not seen it.
        fields=(
            *_BATCH_OR_LOT,
            choice("decision", "release", "hold"),
            items("decides", entry_id("entry"), most=60, least=1),
            _REASON,
        ),
        subjects=("batch:{batch}", "lot:{lot}"),
        written_by="coordinator",
        one_of=("batch", "lot"),
    ),
)
