"""What the made-up cooperative has set up: places, goods, instruments, partners, one recipe."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from typing import Any

from tests.writing import Pen, made_id

KITCHEN, STORE, STALL = (made_id(name) for name in ("lane kitchen", "store", "stall"))
RECIPE = made_id("quince jelly recipe")

_PLACES = (
    (KITCHEN, "Lane kitchen", "kitchen"), (STORE, "Cool store", "store"),
    (STALL, "Bridge stall", "stall"),
)  # fmt: skip
_WEIGHED = (("Quinces", "QU"), ("Sugar", "SU"), ("Pectin", "PE"))
_SCALES = (("Bench scale", "1", "10000"), ("Small scale", "0.1", "500"))
_IN_STORE = (
    ("SU-1", "Sugar", "25", "kg"), ("PE-1", "Pectin", "500", "g"), ("JA-1", "Jar", "120", "pc"),
)  # fmt: skip
_LIFE = {"sort": "best_before", "length": 12, "unit": "months"}

Written = Iterator[tuple[str, dict[str, Any]]]


def set_up(pen: Pen) -> list[dict[str, Any]]:
    """Its entries, written two days ago, a minute apart."""
    began_at = datetime.now(UTC) - timedelta(days=2)
    bodies = [
        _cooperative(str(pen.phone.member.cooperative_id)), *_places(), *_materials(),
        *_partners(), *_instruments(), _recipe(), *_received(),
    ]  # fmt: skip
    return [
        pen.write(kind, body, at=began_at + timedelta(minutes=minute))
        for minute, (kind, body) in enumerate(bodies, start=1)
    ]


def _cooperative(cooperative: str) -> tuple[str, dict[str, Any]]:
    return "cooperative_defined", {
        "cooperative": cooperative, "name": "Hearth Lane", "time_zone": "Europe/Dublin",
        "currency": "EUR", "currency_places": 2, "language": "en", "unit_habit": "metric",
        "rules": "eu", "prices_shown": True,
    }  # fmt: skip


def _places() -> Written:
    for place, name, sort in _PLACES:
        yield "place_defined", {"place": place, "name": name, "sort": sort}


def _materials() -> Written:
    for name, letters in _WEIGHED:
        yield "material_defined", {
            "material": made_id(name), "name": name, "sort": "ingredient",
            "measured_by": "mass", "letters": letters,
        }  # fmt: skip
    yield "material_defined", {
        "material": made_id("Jar"), "name": "Jar with lid", "sort": "packaging",
        "measured_by": "count", "letters": "JA",
    }  # fmt: skip
    yield "material_defined", {
        "material": made_id("Quince jelly"), "name": "Quince jelly", "sort": "product",
        "measured_by": "count", "letters": "QJ", "pack_word": "jar", "price": "6.50",
        "pack_net": {"amount": "240", "unit": "g"}, "allergens": ["sulphites"], "life": _LIFE,
    }  # fmt: skip


def _partners() -> Written:
    yield "source_defined", {"source": made_id("orchard"), "name": "Orchard under the hill"}
    yield "recipient_defined", {
        "recipient": made_id("inn"), "name": "Inn at the ford", "contact": "ask for the cook",
    }  # fmt: skip


def _instruments() -> Written:
    for name, division, most in _SCALES:
        yield "instrument_defined", {
            "instrument": made_id(name), "name": name, "sort": "scale", "place": KITCHEN,
            "unit": "g", "division": division, "capacity": most,
        }  # fmt: skip
    yield "instrument_defined", {
        "instrument": made_id("Probe"), "name": "Probe", "sort": "thermometer",
        "place": KITCHEN, "unit": "degC", "division": "0.1",
    }  # fmt: skip


def _recipe() -> tuple[str, dict[str, Any]]:
    return "recipe_published", {
        "recipe": RECIPE, "number": 1, "name": "Quince jelly, clear",
        "product": made_id("Quince jelly"), "packs": 10,
        "makes": {"amount": "10", "unit": "pc"},
        "lines": [
            _line("quinces", "Quinces", "2000", off="20"),
            _line("sugar", "Sugar", "1200", off="10"),
            _line("pectin", "Pectin", "30", off="1"),
            {"line": "jars", "material": made_id("Jar"),
             "amount": {"amount": "10", "unit": "pc"}},
        ],
        "steps": [
            {"step": "set", "says": "Boil until it sets.", "measures": "temperature",
             "unit": "degC", "low": "104", "high": "106", "set_by": "the tested recipe"},
        ],
        "life": _LIFE,
    }  # fmt: skip


def _line(line: str, material: str, grams: str, *, off: str) -> dict[str, Any]:
    amount = {"amount": grams, "unit": "g"}
    return {"line": line, "material": made_id(material), "amount": amount,
            "below": off, "above": off}  # fmt: skip


def _received() -> Written:
    for lot, name, amount, unit in _IN_STORE:
        yield "receipt", {
            "lot": lot, "material": made_id(name), "source": made_id("orchard"),
            "amount": {"amount": amount, "unit": unit}, "place": KITCHEN, "condition": "fit",
        }  # fmt: skip
