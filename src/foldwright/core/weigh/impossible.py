"""A panel that cannot hang as described, and the checks that find it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from foldwright.core.facts.loads import PICK_UP_TOLERANCE
from foldwright.core.weigh.folds import greatest_travel
from foldwright.core.weigh.load import PanelLoad

if TYPE_CHECKING:
    from collections.abc import Iterator


class ImpossiblePanel(ValueError):  # noqa: N818 - it says what is the matter, not that it is one
    """What is wrong with a panel given to the lift, where, and what to do."""

    def __init__(self, where: str, what: str, remedy: str) -> None:
        super().__init__(f"{where}: {what}. {remedy}")
        self.where = where
        self.what = what
        self.remedy = remedy


def check_panel(panel: PanelLoad) -> None:
    """Refuse a panel whose parts contradict each other, naming the first that does."""
    for wrong, where, what, remedy in _contradictions(panel):
        if wrong:
            raise ImpossiblePanel(where, what, remedy)


def _contradictions(panel: PanelLoad) -> Iterator[tuple[bool, str, str, str]]:
    rows = len(panel.rows_n)
    yield (rows == 0, "rows_n", "there is no ring row", "Give at least one row's weight.")
    yield (
        rows != len(panel.row_spacings_m) + 1,
        "row_spacings_m",
        f"{len(panel.row_spacings_m)} spacings do not fit {rows} rows",
        "Give one spacing fewer than rows.",
    )
    yield (
        any(s <= panel.stacked_pitch_m for s in panel.row_spacings_m),
        "row_spacings_m",
        "a row spacing is not greater than the stacked row pitch",
        "Widen the spacing or use thinner rings and rods.",
    )
    yield (
        min(panel.cloth_n_m, panel.bar_n, panel.backing_n_m, *panel.rows_n) < 0,
        "weights",
        "a weight is below zero",
        "Weigh the part again.",
    )
    yield (
        min(panel.stacked_pitch_m, panel.skirt_cloth_m, panel.top_panel_m) < 0,
        "lengths",
        "a length is below zero",
        "Measure it again.",
    )
    yield (
        panel.fullness < 1,
        "fullness",
        f"a fullness of {panel.fullness:g} is less cloth than drop",
        "Give 1 for flat, more for looped.",
    )
    yield (
        not 0 <= panel.tied_rows < max(rows, 1),
        "tied_rows",
        f"{panel.tied_rows} tied rows do not fit {rows} rows",
        "Tie fewer rows.",
    )
    yield (
        any(not 0 <= lump.panel < rows for lump in panel.lumps),
        "lumps",
        "a weight is fixed to a panel that does not exist",
        "Count panels from 0, the one above the lowest row.",
    )
    greatest = greatest_travel(panel) if rows else 0.0
    yield (
        not 0 < panel.travel_m <= greatest + PICK_UP_TOLERANCE.value.in_metres,
        "travel_m",
        f"a raise of {panel.travel_m:g} m is not between nothing and {greatest:g} m",
        "Raise less: the rows meet the board there.",
    )
