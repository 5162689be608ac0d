"""What speaks against using or selling a lot on a day: it is held, recalled or expired."""

from __future__ import annotations

from typing import Literal

from kitchenlog.calc.bodies import Body, items_in, object_in, text_in
from kitchenlog.calc.shelf_life import has_expired

Against = Literal["held", "recalled", "expired"]


def reasons_against(lot: Body, batch: Body | None, on: str) -> list[Against]:
    """From the sheet of a lot, and that of the batch it came out of if there is one: what is
    held back with its batch is let go with it. A best before that has passed speaks against
    nothing; `on` is the day it would be used, YYYY-MM-DD."""
    holds = [object_in(sheet, "hold") or {} for sheet in (lot, batch or {})]
    against: list[Against] = []
    if any(_is_recalled(hold) for hold in holds):
        against.append("recalled")
    elif any(hold.get("is_held") is True for hold in holds):
        against.append("held")
    life = object_in(lot, "life") or {}
    last = text_in(life, "on")
    if last is not None and text_in(life, "sort") != "best_before" and has_expired(last, on):
        against.append("expired")
    return against


def _is_recalled(hold: Body) -> bool:
    return any(
        text_in(cause, "because") == "recalled" and text_in(cause, "decided") != "release"
        for cause in items_in(hold, "causes")
    )
