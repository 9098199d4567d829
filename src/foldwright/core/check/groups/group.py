"""A group of shades that hang in one room, as the job file names it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class RowsFrom(Enum):
    """From which edge the rows of a group are counted, where they cannot suit both."""

    HEM = "hem"
    HEAD = "head"


@dataclass(frozen=True, kw_only=True, slots=True)
class ShadeGroup:
    """Shades whose rows are to lie level: the table `[[groups]]` of a job file."""

    name: str
    shades: tuple[str, ...]  # their tags, from left to right as seen from the room
    rows_from: RowsFrom = RowsFrom.HEM
    own_hems: bool = False  # each ends where its own window wants it
