"""Which of its checks an instrument is judged by."""

from __future__ import annotations

from collections.abc import Sequence

from kitchenlog.calc.instruments import Check, InDoubt


def deciding_check(checks: Sequence[Check], doubts: Sequence[InDoubt]) -> Check | None:
    """The check by which an instrument is judged, and its uses are counted from: the last
    failed one that nothing has put right, else the last it passed; None where there is none.

    `checks` and `doubts` as its state holds them, in business order.
    """
    open_doubts = [each["check"] for each in doubts if each["until"] is None]
    by_entry = {each["entry"]: each for each in checks}
    if open_doubts and open_doubts[-1] in by_entry:
        return by_entry[open_doubts[-1]]
    # Put right on the spot: adjusted, or corrected by what it found.
    right_at = {(each["check"], each["until"]) for each in doubts}
    passed = [
        each
        for each in checks
        if each["verdict"] == "fit" or (each["entry"], each["happened_at"]) in right_at
    ]
    return passed[-1] if passed else None
