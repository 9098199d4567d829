"""Where a figure comes from, and how far it can be trusted."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Status(Enum):
    """How a figure is known, best first; the words are shown on screen and paper."""

    MEASURED = "measured"
    SUPPLIER = "supplier's sheet"
    PUBLISHED = "published"
    CHOSEN = "chosen"
    DERIVED = "derived"
    PRACTICE = "common practice"
    HOUSE = "house default"
    MEMORY = "from memory"


@dataclass(frozen=True, kw_only=True, slots=True)
class Source:
    """One entry of docs/sources.toml, and the clause or page meant in it."""

    id: str
    clause: str = ""
