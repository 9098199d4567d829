"""The finished size, and what it leaves at the sides, the head and the sill."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class FinishedSize:
    """What the measurements make of the shade.

    Figures that cannot be known yet are None.
    """

    width: L
    drop: L
    board_length: L
    return_depth: L | None = None
    side_gap_left: L | None = None  # inside mount: least gap, seen from the room
    side_gap_right: L | None = None
    racking: L | None = None  # how far the head is shifted against the sill
    height_spread: L | None = None
    light_gap_area: Figure[float] | None = None
    sill_gap: L | None = None  # bottom edge, fully down, to the sill or the floor of the opening
    top_above_glass: L | None = None  # top of shade to the first visible glass
    outside: bool = False  # hangs outside the opening
    clear_depth: L | None = None
