"""Reads the story: who, where, with what, and what people say."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

STORY_NUMBER = 6  # goes up with any change that would write other entries under the same ids
SEED = "tamarelle"

Row = Mapping[str, Any]  # one table of story.toml


@dataclass(frozen=True, kw_only=True)
class Story:
    """story.toml; rows that are looked up are held by their id."""

    cooperative: Row
    passphrase: str
    members: tuple[Row, ...]
    places: tuple[Row, ...]
    sources: tuple[Row, ...]
    recipients: tuple[Row, ...]
    instruments: Mapping[str, Row]
    materials: Mapping[str, Row]
    recipes: Mapping[str, Row]
    says: Mapping[str, str]

    @property
    def zone(self) -> ZoneInfo:
        """Where its days begin and end."""
        return ZoneInfo(self.cooperative["time_zone"])


@cache
def read_story() -> Story:
    """The story as written; it never changes while the program runs."""
    told = tomllib.loads(Path(__file__).with_name("story.toml").read_text(encoding="utf-8"))
    return Story(
        cooperative=told["cooperative"],
        passphrase=told["sign_in"]["passphrase"],
        members=tuple(told["members"]),
        places=tuple(told["places"]),
        sources=tuple(told["sources"]),
        recipients=tuple(told["recipients"]),
        instruments={row["instrument"]: row for row in told["instruments"]},
        materials={row["material"]: row for row in told["materials"]},
        recipes={row["recipe"]: row for row in told["recipes"]},
        says=told["says"],
    )
