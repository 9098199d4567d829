"""How the cloth hangs at any raise: the heights of hem, rows and fold edges.

A panel between a raised row and a still one hangs as a hairpin: half of its slack
hangs below the lower row, and its fold edge is the lowest point of that loop.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.layout import Layout
from foldwright.core.design.panels import hem_below, looped_fullness, panel_heights

MILLIMETRES_PER_METRE = 1000.0
SLACK_SEEN = 0.01  # millimetres; less is rounding, not a fold


@dataclass(frozen=True, kw_only=True, slots=True)
class Panel:
    """One panel of cloth between two rows, or between the top row and the board."""

    lower: float
    upper: float
    cloth: float  # length of cloth in it
    closed: bool = False  # its rows have met in the stack

    @property
    def slack(self) -> float:
        """Give how far the loop hangs below the lower row."""
        return max(0.0, (self.cloth - (self.upper - self.lower)) / 2)

    @property
    def fold_edge(self) -> float:
        """Give the height of the loop's lowest point."""
        return self.lower - self.slack

    @property
    def folded(self) -> bool:
        """Tell whether the panel hangs as a loop at all."""
        return self.slack > SLACK_SEEN

    def height_at(self, arc: float) -> float:
        """Give the height of the point that lies `arc` up the cloth from the lower row."""
        if arc <= self.slack:
            return self.lower - arc
        return self.upper - (self.cloth - arc)


class RodSpot(NamedTuple):
    """Where a rod lies: so far up the cloth of a panel, or up from the hem, below all rows."""

    panel: int | None
    arc: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Hang:
    """The whole shade at one raise; heights in millimetres above the hem when fully down."""

    hem: float
    rows: tuple[float, ...]
    panels: tuple[Panel, ...]  # from the bottom; the last one reaches the board
    rods: tuple[float, ...]
    top: float
    raised_by: float
    ridges: tuple[float, ...] = ()  # sewn tucks, as far as they are seen from the room
    dip: float = 0.0  # the middle of hem and folds below their columns

    def covers(self, height: float) -> bool:
        """Tell whether a fold hangs before a height; its own edge is seen."""
        return any(
            panel.folded and panel.fold_edge + SLACK_SEEN < height <= panel.lower + SLACK_SEEN
            for panel in self.panels
        )

    @property
    def lowest_at_columns(self) -> float:
        """Give the lowest edge where the cords hold it: the hem, or a fold that hangs below it."""
        return min([self.hem, *(panel.fold_edge for panel in self.panels if panel.folded)])

    @property
    def lowest(self) -> float:
        """Give the lowest visible edge."""
        return self.lowest_at_columns - self.dip


def hang(layout: Layout, *, drop_mm: float, pitch_mm: float, raise_share: float) -> Hang:
    """Hang the shade at a share of its design raise.

    Takes: the layout; the finished drop and the pitch of rows in the stack, millimetres;
    the raise as a share of the design raise, kept within 0 and 1.

    Gives: heights in millimetres above the hem when fully down.

    Holds for: limp cloth, flat or looped; stiff cloth opens its folds a little wider.

    Source: derived here (half of a panel's slack hangs from each of its rows).

    >>> Panel(lower=300.0, upper=400.0, cloth=200.0).fold_edge
    250.0
    """
    raised_by = min(max(raise_share, 0.0), 1.0) * layout.travel.value.in_millimetres
    marks = [mark.value.in_millimetres for mark in layout.rows.marks]
    rows = _row_heights(marks, raised_by, pitch_mm)
    panels = _panels(layout, marks, rows, drop_mm)
    return Hang(
        hem=rows[0] - hem_below(layout.rows).in_millimetres,
        rows=rows,
        panels=panels,
        rods=tuple(_rod_heights(layout, marks, rows, panels)),
        top=drop_mm,
        raised_by=raised_by,
        ridges=tuple(_ridge_heights(layout, marks, panels)),
        dip=_dip(layout, raised_by),
    )


def _dip(layout: Layout, raised_by: float) -> float:
    """Let the middle lag behind the rising columns until it hangs its whole dip lower.

    A pouf that is tied up for good has let it lag from the start, and scallops of shirred cloth
    never hang otherwise. Folds that rings pinch up hang lowest in the middle by themselves.
    """
    if layout.swag is None or layout.swag.pinched:
        return 0.0
    if layout.rows.shirred:
        return layout.swag.dip.value.in_millimetres
    pouf = layout.rows.pouf
    risen = raised_by + (pouf.value.in_millimetres if pouf else 0.0)
    return min(layout.swag.dip.value.in_millimetres, risen)


def stacked_pitch(plan: ShadePlan) -> float:
    """Give how far apart rows lie in the stack, in millimetres.

    Takes: the plan.

    Gives: the pitch of its rows; nothing, so that rows are drawn touching, while unknown.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> stacked_pitch(ShadePlan(spec=ShadeSpec(tag="1")))
    0.0
    """
    if plan.weights is not None:
        return plan.weights.load.stacked_pitch_m * MILLIMETRES_PER_METRE
    pitch = plan.layout.rows.stacked_pitch if plan.layout else None
    return pitch.value.in_millimetres if pitch else 0.0


def _row_heights(marks: list[float], raised_by: float, pitch: float) -> tuple[float, ...]:
    """Raise the lowest row; each row above waits until the one below touches it."""
    heights = [marks[0] + raised_by]
    for mark in marks[1:]:
        heights.append(max(mark, heights[-1] + pitch))
    return tuple(heights)


def _panels(
    layout: Layout, marks: list[float], rows: tuple[float, ...], drop: float
) -> tuple[Panel, ...]:
    """Give each panel its cloth; fullness makes loops that are always there."""
    full = looped_fullness(layout.rows)
    cloths = [height.in_millimetres * full for height in panel_heights(layout.rows)]
    tied = layout.rows.tied_rows.value
    places = zip(cloths, (*marks[1:], drop), pairwise([*rows, drop]), strict=True)
    return tuple(
        Panel(lower=lower, upper=upper, cloth=cloth, closed=number < tied or upper > rest_upper)
        for number, (cloth, rest_upper, (lower, upper)) in enumerate(places)
    )


def _rod_heights(
    layout: Layout, marks: list[float], rows: tuple[float, ...], panels: tuple[Panel, ...]
) -> list[float]:
    """Carry each rod along with its place on the cloth."""
    return [
        rows[0] - (marks[0] - place.arc)
        if place.panel is None
        else panels[place.panel].height_at(place.arc)
        for place in rod_places(layout)
    ]


def rod_places(layout: Layout) -> tuple[RodSpot, ...]:
    """Tell on which panel each rod lies, and how far up it.

    Takes: the layout.

    Gives: one place for each rod, from the bottom; in millimetres of cloth.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> rod_places(LAYOUT)
    ()
    """
    marks = [mark.value.in_millimetres for mark in layout.rows.marks]
    places = []
    for mark in (rod.value.in_millimetres for rod in layout.rows.rod_marks):
        below = [index for index, row in enumerate(marks) if row <= mark]
        if below:
            arc = (mark - marks[below[-1]]) * looped_fullness(layout.rows)
            places.append(RodSpot(panel=below[-1], arc=arc))
        else:
            places.append(RodSpot(panel=None, arc=mark))
    return tuple(places)


def _ridge_heights(
    layout: Layout, marks: list[float], panels: tuple[Panel, ...]
) -> Iterator[float]:
    """Carry each ridge along, and give those on the face that no fold hangs before."""
    for ridge in (each.value.in_millimetres for each in layout.rows.ridges):
        index = sum(row <= ridge for row in marks) - 1
        panel, arc = panels[index], ridge - marks[index]
        edges_above = [each.fold_edge for each in panels[index + 1 :] if each.folded]
        height = panel.height_at(arc)
        on_the_face = not panel.folded or (arc > panel.slack and not panel.closed)
        if on_the_face and height <= min(edges_above, default=height):
            yield height
