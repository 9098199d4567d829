"""The headrail as it is cut, marked, wound and tested at the bench."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foldwright.core.measure.opening import Side
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit

L = Figure[Length]
N = Figure[float]
W = Figure[str]


@dataclass(frozen=True, kw_only=True, slots=True)
class CordLine:
    """One cord or tape column on the tube; positions from the tube's left end, from the back."""

    number: int  # 1 is the leftmost as seen from the back
    column: L  # where the cord comes down
    clip: L  # where the cord is clipped to the tube
    clip_side: Side | None  # the clip's side of its column, from the back; None: upon it (tape)
    offset: L  # clip to column
    band_start: L  # the wraps walk from here ...
    band_end: L  # ... to here, fully raised
    cut_length: L


@dataclass(frozen=True, kw_only=True, slots=True)
class Adjustment:
    """One line of the adjustment table."""

    symptom: str
    action: W
    amount: Figure[Any]
    end: W  # at which end, and which way to turn as seen from that end

    @property
    def is_measured(self) -> bool:
        """Tell whether the amount is worth a figure: no turns left is said by the action."""
        return self.amount.unit is not Unit.TURN or self.amount.value > 0


@dataclass(frozen=True, kw_only=True, slots=True)
class Step:
    """One bench step: what to do, with which figure, why, and what to beware of."""

    number: int
    title: str
    instruction: str  # {0}, {1} … stand for figures
    figures: tuple[Figure[Any], ...] = ()
    reason: str = ""
    caution: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Headrail:
    """Every cut, mark, turn and check of the headrail."""

    board_length: L
    board_depth: L | None
    tube_cut: L
    tube_start: L  # board's left end (from the back) to the tube's left end
    bracket_marks: tuple[L, ...]  # bracket centres from the board's left end, from the back
    cradle_marks: tuple[L, ...] = ()  # cradle centres from the board's left end, from the back
    spring_side: W  # "right" or "left", seen from the room; control side without a spring
    wind_direction: W  # looking at that end: clockwise or counter-clockwise
    cord_side: W
    lines: tuple[CordLine, ...]
    safety_wraps: N
    travel_wraps: N
    walk: L  # of the wraps along the tube, over the whole travel
    greatest_lean: N | None = None  # of a cord against the plumb line, fully down
    longest_drop: L | None = None  # that this tube serves with this cord and the shop's clips
    lowest_lock_position: L  # bottom edge above fully down
    release_travel: L
    up_stop: L  # lowest ring row below the top of the board, at the stop
    hem_at_stop: L  # bottom edge below the top of the board, at the stop
    pretension_turns: N | None
    handle: L  # pull handle from the left edge, seen from the back
    adjustments: tuple[Adjustment, ...]
    steps: tuple[Step, ...]
