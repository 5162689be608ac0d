"""Fill checks: what the packs of a lot, weighed against their label, say of its net content.

The rules themselves are in net_packs.py (US) and net_batches.py (EU).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from decimal import Decimal
from typing import Any, TypedDict

from kitchenlog.calc.bodies import (
    Body,
    Quantity,
    decimal_in,
    in_base_unit,
    items_in,
    quantity_in,
    text_in,
    texts_in,
)
from kitchenlog.calc.limits import Cited, leans_on_memory
from kitchenlog.calc.net_batches import FilledBatch, batch_check
from kitchenlog.calc.net_content import PLACES, NetVerdict, larger_declaration
from kitchenlog.calc.net_limits import MavColumn
from kitchenlog.calc.net_packs import Moisture, WeighedLot, category_a
from kitchenlog.calc.numbers import (
    ZERO,
    as_double,
    difference,
    divided,
    parse_decimal,
    plain,
    significant,
)
from kitchenlog.calc.readings import mean
from kitchenlog.calc.units import base_unit_of

FILL_DIGITS = 4  # of a standard deviation and of what the mean may be short
# Flour and dry pasta, taken off the nominal gross weight: NIST HB 133 (2026) 2.3.8, read.
_DRIED = Moisture(percent=Decimal(3), places=1, taken="off_nominal")
_DRIED_SAYS = Cited(what="moisture", source="NIST HB 133 (2026) 2.3.8", basis="read")


class Fill(TypedDict):
    """A fill check; amounts in `unit`, g or mL, errors below zero are short.

    `declared` is the larger declaration and `label` how it is written. `mean_allowed` is how
    short the mean may be, `most_short` the MAV or T of one pack, `short` the positions of packs
    beyond it and `far_short` of those beyond 2 T (EU). `reasons` are keys of sentences.
    """

    rules: str | None
    label: Quantity | None
    declared: str | None
    unit: str | None
    packs: int
    lot_size: int
    division: str | None
    verdict: NetVerdict
    reasons: list[str]
    errors: list[str]
    mean_error: str | None
    sd: str | None
    mean_allowed: str | None
    most_short: str | None
    short: list[int]
    far_short: list[int]
    sample_size: int | None
    cited: list[dict[str, Any]]
    leans_on_memory: bool


@dataclass(frozen=True, kw_only=True)
class _Weighed:
    """Packs as they were weighed, in g: empty ones, full ones, division of the scale."""

    tares: tuple[Decimal, ...]
    gross: tuple[Decimal, ...]
    division: Decimal | None
    lot_size: int
    column: MavColumn


def fill_of(body: Body) -> Fill:
    """What a fill check says; without a lot's size the packs weighed are the whole lot.

    Not decided, with the reason, where a number cannot be read or the rules have no figures for
    such packs: the US tables here are for labels by weight.
    """
    weighed, label, blank = _weighed(body), _label(body), _blank(body)
    if weighed is None or not weighed.gross or not weighed.tares:
        return {**blank, "reasons": ["unreadable" if weighed is None else "nothing_weighed"]}
    try:
        declared = larger_declaration([(parse_decimal(q["amount"]), q["unit"]) for q in label])
    except ValueError:
        return {**blank, "reasons": ["no_figures"]}
    known: Fill = {
        **blank,
        "label": label[declared.position],
        "declared": plain(declared.in_base),
        "unit": base_unit_of(label[0]["unit"]),
    }
    try:
        return _judged(known, weighed, declared.in_base, body)
    except ValueError:
        return {**known, "reasons": ["no_figures"]}


def _judged(known: Fill, weighed: _Weighed, declared: Decimal, body: Body) -> Fill:
    """Raises ValueError where the rules have no figures for such packs."""
    is_by_weight = known["unit"] == "g"
    if known["rules"] == "us" and is_by_weight:
        return _by_us(known, weighed, declared, has_dried=body.get("loses_moisture") is True)
    if known["rules"] != "eu" or known["unit"] not in ("g", "mL"):
        raise ValueError("no table here has such packs")
    density = None if is_by_weight else decimal_in(body, "density")
    if not is_by_weight and (density is None or density <= ZERO):
        return {**known, "reasons": ["no_density"]}
    return _by_eu(known, weighed, declared, density)


def _by_us(known: Fill, weighed: _Weighed, declared: Decimal, *, has_dried: bool) -> Fill:
    result = category_a(
        WeighedLot(
            label=declared,
            column=weighed.column,
            tares=weighed.tares,
            gross=weighed.gross,
            lot_size=weighed.lot_size,
            division=weighed.division,
            moisture=_DRIED if has_dried else None,
        )
    )
    allowed = None if result.sel is None else significant(result.sel, FILL_DIGITS)
    return {
        **known,
        "verdict": result.verdict,
        "reasons": list(result.reasons),
        "errors": [plain(each) for each in result.errors],
        "mean_error": plain(result.mean_error),
        "sd": significant(result.sd, FILL_DIGITS),
        "mean_allowed": allowed,
        "most_short": plain(result.mav),
        "short": list(result.beyond_mav),
        "sample_size": result.plan.sample_size,
        **_cited((*result.cited, *((_DRIED_SAYS,) if has_dried else ()))),
    }


def _by_eu(known: Fill, weighed: _Weighed, declared: Decimal, density: Decimal | None) -> Fill:
    tare = mean(weighed.tares, PLACES)
    nets = [difference(each, tare) for each in weighed.gross]
    if density is not None:
        nets = [divided(each, density, PLACES) for each in nets]
    result = batch_check(
        FilledBatch(
            nominal=declared,
            contents=tuple(nets),
            batch_size=weighed.lot_size,
            rules="arrete_1978",
            is_destructive=False,
            division=weighed.division,
        )
    )
    measured = declared if result.mean is None else result.mean
    allowed = result.sd * as_double(result.plan.mean_factor)
    return {
        **known,
        "verdict": result.verdict,
        "reasons": list(result.reasons),
        "errors": [plain(difference(each, declared)) for each in nets],
        "mean_error": plain(difference(measured, declared)),
        "sd": significant(result.sd, FILL_DIGITS),
        "mean_allowed": significant(allowed, FILL_DIGITS),
        "most_short": plain(result.t),
        "short": list(result.below_t1),
        "far_short": list(result.below_t2),
        "sample_size": result.plan.sample_size,
        **_cited(result.cited),
    }


def _cited(cited: Sequence[Cited]) -> Any:
    """The two fields of a fill that say who says so."""
    return {
        "cited": [asdict(each) for each in dict.fromkeys(cited)],
        "leans_on_memory": leans_on_memory(cited),
    }


def _blank(body: Body) -> Fill:
    """A fill of which nothing is decided yet."""
    return Fill(
        rules=text_in(body, "rules"),
        label=None,
        declared=None,
        unit=None,
        packs=len(texts_in(body, "gross")),
        lot_size=_lot_size(body),
        division=text_in(body, "division"),
        verdict="not_decided",
        reasons=[],
        errors=[],
        mean_error=None,
        sd=None,
        mean_allowed=None,
        most_short=None,
        short=[],
        far_short=[],
        sample_size=None,
        cited=[],
        leans_on_memory=False,
    )


def _weighed(body: Body) -> _Weighed | None:
    """None where a number or the unit cannot be read."""
    tares, gross = _masses(body, "tares"), _masses(body, "gross")
    if tares is None or gross is None:
        return None
    unit = text_in(body, "unit")
    division = in_base_unit(decimal_in(body, "division"), unit)
    return _Weighed(
        tares=tares,
        gross=gross,
        division=None if division is None else division.value,
        lot_size=_lot_size(body),
        # The MAV is read in the unit the packs are weighed in, whatever the label declares.
        column="lb" if unit == "lb" else "oz" if unit == "oz" else "g",
    )


def _masses(body: Body, name: str) -> tuple[Decimal, ...] | None:
    unit = text_in(body, "unit")
    found = [
        in_base_unit(decimal_in({name: each}, name), unit) for each in texts_in(body, name)
    ]
    masses = tuple(each.value for each in found if each is not None and each.unit == "g")
    return masses if len(masses) == len(found) else None


def _lot_size(body: Body) -> int:
    size = body.get("lot_size")
    return size if isinstance(size, int) else len(texts_in(body, "gross"))


def _label(body: Body) -> list[Quantity]:
    found = (quantity_in(each, "amount") for each in items_in(body, "label"))
    return [each for each in found if each is not None]
