"""How the panels of a shade fold: when each opens, and how much cloth hangs where.

Raises are measured from fully down; a panel below tied rows opens at a raise below zero.
"""

from __future__ import annotations

from itertools import accumulate
from typing import TYPE_CHECKING

from foldwright.core.weigh.load import PanelLoad

if TYPE_CHECKING:
    from collections.abc import Sequence


def panel_heights(panel: PanelLoad) -> tuple[float, ...]:
    """Give the height of each panel when fully down, the top panel last, in m."""
    return (*panel.row_spacings_m, panel.top_panel_m)


def opening_raises(panel: PanelLoad) -> Sequence[float]:
    """Give the raise in m at which each panel starts to fold."""
    travels = (spacing - panel.stacked_pitch_m for spacing in panel.row_spacings_m)
    starts = list(accumulate(travels, initial=0.0))
    return [start - starts[panel.tied_rows] for start in starts]


def greatest_travel(panel: PanelLoad) -> float:
    """Give the raise in m at which even the top panel is folded away."""
    return opening_raises(panel)[-1] + panel.top_panel_m


def loop_lengths(panel: PanelLoad) -> Sequence[float]:
    """Give the cloth in m that hangs from each row when its panel starts to fold."""
    return [(panel.fullness - 1) * height / 2 for height in panel_heights(panel)]


def closing_lengths(panel: PanelLoad) -> Sequence[float]:
    """Give the cloth in m that hangs from a lower row just before it meets the next."""
    return [
        (panel.fullness * spacing - panel.stacked_pitch_m) / 2 for spacing in panel.row_spacings_m
    ]


def lump_raises(panel: PanelLoad) -> Sequence[float]:
    """Give the raise in m at which each lump passes the bottom of its fold.

    A lump beyond the bottom of the closed fold, such as a rod at mid-fold, arrives
    together with the next row.
    """
    starts = opening_raises(panel)
    ends = [*starts[1:], float("inf")]
    loops = loop_lengths(panel)
    return [
        min(starts[lump.panel] + max(0.0, 2 * (lump.arc_m - loops[lump.panel])), ends[lump.panel])
        for lump in panel.lumps
    ]
