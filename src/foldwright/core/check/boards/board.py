"""A board that carries more than one shade, as the job file names it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from foldwright.core.quantity.length import Length


class BoardLift(Enum):
    """What lifts the shades of one board."""

    EACH = "a tube each"
    ONE = "one tube"


@dataclass(frozen=True, kw_only=True, slots=True)
class SharedBoard:
    """Two shades or more on one board: the table `[[boards]]` of a job file."""

    name: str
    shades: tuple[str, ...]  # their tags, from left to right as seen from the room
    gap: Length  # between two of them
    lift: BoardLift = BoardLift.EACH
    across: Length | None = None  # over all of them, to be shared out where no width is typed
