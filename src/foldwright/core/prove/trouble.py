"""What may be wrong with a shade, as numbers that trial shades can be drawn from."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.facts.proving import MISCOUNT

Range = tuple[float, float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Trouble:
    """Ways in which a shade's physics may differ from its case; each drawn evenly from a range.

    The default is a sound shade. At most one range is open at a time, for all share a draw.
    """

    pull: Range = (1.0, 1.0)  # what of the spring's torque reaches the tube; below zero: against
    drag_n: Range = (0.0, 0.0)  # of the bar along something, both ways
    caught_n: Range = (0.0, 0.0)  # against rising, from some height on
    climbed: Range = (0.0, 0.0)  # share of the load more on the arm, from some height on
    miscount_turns: float = float(MISCOUNT.value)  # nine in ten within this, either way


SOUND = Trouble()
