"""A panel that cannot hang as described, and the checks that find all that is wrong with it."""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING

from foldwright.core.facts.loads import PICK_UP_TOLERANCE
from foldwright.core.weigh.folds import greatest_travel, panel_heights
from foldwright.core.weigh.load import PanelLoad
from foldwright.core.why.fault import Fault

if TYPE_CHECKING:
    from collections.abc import Iterator

_LENGTH = "Measure it again, in metres."
_WEIGHT = "Weigh the part again, in newtons."
_NOT_NEGATIVE = {
    "stacked_pitch_m": _LENGTH,
    "skirt_cloth_m": _LENGTH,
    "top_panel_m": _LENGTH,
    "bending_length_m": _LENGTH,
    "cloth_n_m": _WEIGHT,
    "backing_n_m": _WEIGHT,
    "bar_n": _WEIGHT,
}


class ImpossiblePanel(ValueError):  # noqa: N818 - it says what is the matter, not that it is one
    """All that is wrong with a panel given to the lift: where, what, and what to do."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__(" ".join(fault.sentence for fault in faults))
        self.faults = faults


def check_panel(panel: PanelLoad) -> None:
    """Refuse a panel whose parts contradict each other, naming all that do."""
    faults = panel_faults(panel)
    if faults:
        raise ImpossiblePanel(faults)


def panel_faults(panel: PanelLoad) -> tuple[Fault, ...]:
    """Find all that no hanging panel can have.

    Takes: a panel in SI.

    Gives: faults, their places named as in the panel; none where it can hang.

    Source: derived here.

    >>> panel = PanelLoad(
    ...     row_spacings_m=(), stacked_pitch_m=0.005, skirt_cloth_m=0.06, top_panel_m=0.4,
    ...     cloth_n_m=5.0, bar_n=-3.0, rows_n=(0.4,), travel_m=0.3,
    ... )
    >>> [fault.sentence for fault in panel_faults(panel)]
    ['bar_n: -3 is not zero or more. Weigh the part again, in newtons.']
    """
    alone = (*_numbers(panel), *_rows(panel))
    return alone or (*_lumps(panel), *_travel(panel))


def _numbers(panel: PanelLoad) -> Iterator[Fault]:
    for where, remedy in _NOT_NEGATIVE.items():
        yield from _negative(where, (getattr(panel, where),), remedy)
    yield from _negative("rows_n", panel.rows_n, _WEIGHT)
    if not 1 <= panel.fullness < inf:
        what = f"a fullness of {panel.fullness:g} is less cloth than drop"
        yield _fault("fullness", what, "Give 1 for flat, more for looped.")


def _negative(where: str, values: tuple[float, ...], remedy: str) -> Iterator[Fault]:
    for value in values:
        if not 0 <= value < inf:
            yield _fault(where, f"{value:g} is not zero or more", remedy)


def _rows(panel: PanelLoad) -> Iterator[Fault]:
    rows, spacings = len(panel.rows_n), len(panel.row_spacings_m)
    if rows == 0:
        yield _fault("rows_n", "there is no ring row", "Give at least one row's weight.")
    elif spacings != rows - 1:
        what = f"{spacings} spacings do not fit {rows} rows"
        yield _fault("row_spacings_m", what, "Give one spacing fewer than rows.")
    if not all(panel.stacked_pitch_m < spacing < inf for spacing in panel.row_spacings_m):
        what = "a row spacing is not greater than the pitch of the stacked rows"
        yield _fault("row_spacings_m", what, "Space the rows wider, or use thinner rings and rods.")
    if rows and not 0 <= panel.tied_rows < rows:
        what = f"{panel.tied_rows} tied rows do not fit {rows} rows"
        yield _fault("tied_rows", what, "Tie fewer rows than there are.")


def _lumps(panel: PanelLoad) -> Iterator[Fault]:
    heights = panel_heights(panel)
    for lump in panel.lumps:
        yield from _negative("lumps", (lump.weight_n,), _WEIGHT)
        if not 0 <= lump.panel < len(heights):
            what = f"a weight is fixed to panel {lump.panel}, which does not exist"
            yield _fault("lumps", what, "Count panels from 0, the one above the lowest row.")
        elif not 0 <= lump.arc_m <= panel.fullness * heights[lump.panel]:
            what = f"a weight is fixed {lump.arc_m:g} m up its panel, beyond its cloth"
            yield _fault("lumps", what, "Measure from the row below it, along the cloth.")


def _travel(panel: PanelLoad) -> Iterator[Fault]:
    greatest = greatest_travel(panel)
    if not 0 < panel.travel_m <= greatest + PICK_UP_TOLERANCE.value.in_metres:
        what = f"a raise of {panel.travel_m:g} m is not between nothing and {greatest:g} m"
        yield _fault("travel_m", what, "Raise less: the rows meet the board there.")


def _fault(where: str, what: str, remedy: str) -> Fault:
    return Fault(where=where, what=what, remedy=remedy)
