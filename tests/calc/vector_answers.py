"""Short forms of vectors: decimals from their texts, limits and what they cite as JSON."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import Any

from kitchenlog.calc import limits
from kitchenlog.calc.numbers import parse_decimal, plain, written

Given = dict[str, Any]


def decimal(given: str | None) -> Decimal | None:
    return None if given is None else parse_decimal(given)


def decimals(texts: Sequence[str]) -> tuple[Decimal, ...]:
    return tuple(parse_decimal(text) for text in texts)


def text(x: Decimal | None) -> str | None:
    return None if x is None else written(x)


def cited_json(cited: Sequence[limits.Cited]) -> Given:
    bases = [f"{each.what}: {each.basis}" for each in cited]
    return {"bases": bases, "source": cited[0].source if cited else None}


def limit_json(limit: limits.Limit | None) -> Given | None:
    return limit and {"amount": plain(limit.amount), **cited_json(limit.cited)}


def shown(result: Given, g: Given) -> Given:
    return {name: result[name] for name in g["show"]} if "show" in g else result


def plain_all(amounts: Iterable[Decimal]) -> list[str]:
    return [plain(each) for each in amounts]
