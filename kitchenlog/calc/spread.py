"""How far lots spread: dispersion, recalls by recipient, shares, and a recall's reconciliation.

Dispersion after Dupuy, Botta-Genoulaz and Guinet (2005), the definition recalled; recall size
as a measure after Dabbene and Gay (2011).
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import TypedDict

from kitchenlog.calc.balance import percent_of
from kitchenlog.calc.bodies import decimal_in, items_in, text_in
from kitchenlog.calc.numbers import (
    ONE,
    ZERO,
    difference,
    divided,
    plain,
    product,
    rounded,
    total,
    written,
)
from kitchenlog.calc.subjects import id_in, type_in
from kitchenlog.calc.trace import Edge, Sheets, walk_from

SHARE_PLACES = 6
_WORKING_PLACES = 20  # shares are rounded to these at each mixing; only estimates rest on them
AVERAGE_PLACES = 1
_GONE = ("recipient", "day")


class Dispersion(TypedDict):
    """Finished lots that hold some of each raw lot, and raw lots in each finished lot."""

    downward: dict[str, int]
    upward: dict[str, int]
    sum_down: int
    sum_up: int
    batch_dispersion: int


class Recall(TypedDict):
    """Finished lots that hold some of a lot and what of them went out, by recipient or day."""

    lots: list[str]
    went_out: str
    by_target: dict[str, str]
    missing: list[str]


class RecallSize(TypedDict):
    """How much would be recalled for each raw lot; `average` to one place, None without any."""

    by_raw_lot: dict[str, str]
    worst: str
    average: str | None


class Reconciliation(TypedDict):
    """Where a recalled lot is; percentages to four places, None where nothing was sent."""

    accounted_inside: str
    unaccounted_inside: str
    trace_completeness_percent: str | None
    recovered_percent: str | None
    accounted_in_trade_percent: str | None
    still_out: str


def raw_lots(sheets: Sheets) -> list[str]:
    """Codes of lots that were received."""
    return _lots(sheets, made_by="receipt")


def finished_lots(sheets: Sheets) -> list[str]:
    """Codes of lots a batch put out that went into no batch and no other lot."""
    return [
        code
        for code in _lots(sheets, made_by="output")
        if not any(
            (text_in(each, "to") or "").startswith(("batch:", "lot:"))
            for each in items_in(sheets[f"lot:{code}"], "went_to")
        )
    ]


def dispersion(sheets: Sheets) -> Dispersion:
    """Down, up and batch dispersion over all lots at hand; the two sums are always equal."""
    raw, finished = raw_lots(sheets), finished_lots(sheets)
    origins = {
        code: walk_from(f"lot:{code}", "back", sheets).reached & {f"lot:{each}" for each in raw}
        for code in finished
    }
    upward = {code: len(found) for code, found in origins.items()}
    downward = {code: sum(f"lot:{code}" in found for found in origins.values()) for code in raw}
    sum_down, sum_up = sum(downward.values()), sum(upward.values())
    return Dispersion(
        downward=downward,
        upward=upward,
        sum_down=sum_down,
        sum_up=sum_up,
        batch_dispersion=sum_down + sum_up,
    )


def recall(lot: str, sheets: Sheets) -> Recall:
    """All that has to come back if a lot is bad: every lot a path leads to, however small the
    share, and every recipient and stall day, also where all was returned."""
    walk = walk_from(f"lot:{lot}", "forward", sheets)
    finished = set(finished_lots(sheets))
    gone = [edge for edge in walk.edges if type_in(edge["to"]) in _GONE]
    by_target: dict[str, Decimal] = {}
    for edge in gone:
        by_target[edge["to"]] = total([by_target.get(edge["to"], ZERO), _amount(edge)])
    return Recall(
        lots=sorted(id_in(each) for each in walk.reached if id_in(each) in finished),
        went_out=plain(total(by_target.values())),
        by_target={target: plain(amount) for target, amount in sorted(by_target.items())},
        missing=list(walk.missing),
    )


def recall_size(sheets: Sheets) -> RecallSize:
    """The recall of each raw lot, the worst of them and their average."""
    sizes = {code: recall(code, sheets)["went_out"] for code in raw_lots(sheets)}
    amounts = [Decimal(size) for size in sizes.values()]
    return RecallSize(
        by_raw_lot=sizes,
        worst=plain(max(amounts, default=ZERO)),
        average=None
        if not amounts
        else written(divided(total(amounts), Decimal(len(amounts)), AVERAGE_PLACES)),
    )


def share_of(lot: str, within: str, sheets: Sheets) -> str:
    """The share of one lot in another, by mass and as if every mixing were perfect, to six
    places. What went in by another unit than mass is left out. An estimate of a dose, never a
    reason to recall less."""
    walk = walk_from(f"lot:{within}", "back", sheets)
    start = f"lot:{lot}"
    into: dict[str, list[Edge]] = {}
    for edge in walk.edges:
        into.setdefault(edge["to"], []).append(edge)
    shares: dict[str, Decimal] = {}
    for subject in _inputs_first(f"lot:{within}", into):
        mixed = [
            edge for edge in into.get(subject, ()) if not edge["from"].startswith("source:")
        ]
        shares[subject] = ONE if subject == start else _mixed_share(mixed, shares)
    return plain(rounded(shares[f"lot:{within}"], SHARE_PLACES))


def reconciliation(
    *,
    produced: Decimal,
    inside: Sequence[Decimal],
    dispatched: Decimal,
    recovered: Decimal,
    gone_for_good: Decimal,
) -> Reconciliation:
    """Account for every pack of a recalled lot. `inside` is what is known without the trade: in
    stock, wasted, kept as samples, used in other lots. `gone_for_good` was eaten or destroyed
    by recipients, confirmed."""
    accounted = total([*inside, dispatched])
    in_trade = total([recovered, gone_for_good])
    percents = {
        "completeness": percent_of(accounted, produced),
        "recovered": percent_of(recovered, dispatched),
        "in_trade": percent_of(in_trade, dispatched),
    }
    shown = {name: None if each is None else written(each) for name, each in percents.items()}
    return Reconciliation(
        accounted_inside=plain(accounted),
        unaccounted_inside=plain(difference(produced, accounted)),
        trace_completeness_percent=shown["completeness"],
        recovered_percent=shown["recovered"],
        accounted_in_trade_percent=shown["in_trade"],
        still_out=plain(difference(dispatched, in_trade)),
    )


def _lots(sheets: Sheets, *, made_by: str) -> list[str]:
    return sorted(
        id_in(subject)
        for subject, state in sheets.items()
        if subject.startswith("lot:") and text_in(state, "made_by") == made_by
    )


def _amount(edge: Edge) -> Decimal:
    return decimal_in({"amount": edge["amount"]}, "amount") or ZERO


def _inputs_first(end: str, into: dict[str, list[Edge]]) -> list[str]:
    """Each subject after all that flowed into it; a recorded circle is entered once."""
    done: dict[str, None] = {}
    seen: set[str] = set()
    stack = [(end, False)]
    while stack:
        subject, has_inputs = stack.pop()
        if has_inputs:
            done[subject] = None
        elif subject not in seen:
            seen.add(subject)
            stack.append((subject, True))
            stack.extend((edge["from"], False) for edge in into.get(subject, ()))
    return list(done)


def _mixed_share(mixed: Sequence[Edge], shares: dict[str, Decimal]) -> Decimal:
    """Share in a mixture: by mass where anything went in by mass, else by what there is."""
    by_mass = [edge for edge in mixed if edge["unit"] == "g"] or mixed
    whole = total(_amount(edge) for edge in by_mass)
    if whole <= ZERO:
        return ZERO
    part = total(product(_amount(edge), shares.get(edge["from"], ZERO)) for edge in by_mass)
    return divided(part, whole, _WORKING_PLACES)
