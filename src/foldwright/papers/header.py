"""What a sheet is headed and signed with: facts about the print, not about the shade."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import Enum


class Paper(Enum):
    """The two papers a workroom prints on; the value is the typesetter's name for it."""

    A4 = "a4"
    LETTER = "us-letter"


@dataclass(frozen=True, kw_only=True, slots=True)
class PaperSize:
    """A sheet and what is left of it inside the margins, in millimetres."""

    width: float
    height: float
    margin: float

    @property
    def inside_width(self) -> float:
        """Give the width between the margins."""
        return self.width - 2 * self.margin


MARGIN = 8.0
SIZES = {
    Paper.A4: PaperSize(width=210.0, height=297.0, margin=MARGIN),  # iso-216
    Paper.LETTER: PaperSize(width=215.9, height=279.4, margin=MARGIN),  # 8 1/2 by 11 in
}


@dataclass(frozen=True, kw_only=True, slots=True)
class Header:
    """The job, and which print this is."""

    job: str
    version: str
    printed_at: datetime
    replaces: str = ""  # the version that this print makes void
