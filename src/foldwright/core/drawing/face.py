"""The face of the shade as it is seen from the room: folds, ridges, swags and their shading."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from foldwright.core.design.hanging import HangingEdge
from foldwright.core.design.layout import Layout
from foldwright.core.drawing.folding import MILLIMETRES_PER_METRE, Hang, Panel
from foldwright.core.drawing.model import AnyElement, Box, Layer, Line, LineKind, Point, Polyline
from foldwright.core.drawing.shapes import rectangle

SHADING = (1.2, 2.8, 5.0)  # lines above a fold edge, ever farther apart, that round it
EDGES_APART = 1.2  # fold edges closer than this would run into one black band
SWAG_POINTS = 16
DIP_SEEN = 0.01  # millimetres
GATHERS_APART, GATHERS_DOWN = 1.6, (4.0, 2.2, 3.1, 1.7)  # of paper: lines under a gathered head
RIPPLES = 4  # drawn to a row of shirred cloth
ENDS = 2  # points of a straight line


class Edge(NamedTuple):
    """A line across the cloth: its height at the columns, and how much lower it hangs midway."""

    height: float
    dip: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Face:
    """The hanging cloth, and the paper it is drawn on; x from the left as seen from the room."""

    width: float
    hang: Hang
    scale: float
    columns: tuple[float, ...] = ()  # as they hang from the headrail
    draw_in: float = 0.0  # of each side at the hem, at this raise
    tails: bool = False  # the cloth beyond the outer columns hangs as low as the swags
    scallop: float = 0.0  # rings pinch each fold up so much higher than it hangs midway
    shirred: bool = False  # drawn up on tapes, so that the face ripples all the way down
    gathered: bool = False  # drawn up at its head

    @property
    def is_straight(self) -> bool:
        """Tell whether hem and sides are straight and plumb."""
        return self.hang.dip <= DIP_SEEN and not self.draw_in and not self.scallop

    @property
    def lowest(self) -> Edge:
        """Give the lowest edge: the hem, or a fold that hangs below it."""
        folds = [self.fold(panel) for panel in self.hang.panels if panel.folded]
        hem = Edge(height=self.hang.hem, dip=self.hang.dip)
        return min([hem, *folds], key=lambda edge: edge.height - edge.dip)

    def fold(self, panel: Panel) -> Edge:
        """Give the edge of a fold, pinched up to its row where rings do so."""
        pinched = min(self.scallop, panel.slack)
        return Edge(height=panel.fold_edge + pinched, dip=self.hang.dip + pinched)

    def inset(self, height: float) -> float:
        """Give how far each side has drawn in at a height: nothing at the head."""
        tall = self.hang.top - self.hang.lowest_at_columns
        return self.draw_in * (self.hang.top - height) / tall

    def point(self, across: float, height: float) -> Point:
        """Give where a point of the cloth hangs, the sides drawn in and the middle between them."""
        inset, middle = self.inset(height), self.width / 2
        if not inset:
            return Point(across, height)
        outer = middle - min(self.columns)
        off = across - middle
        shrunk = off * (1 - inset / outer) if abs(off) <= outer else off - inset * off / abs(off)
        return Point(middle + shrunk, height)

    def edge(self, edge: Edge) -> tuple[Point, ...]:
        """Give a line of the cloth from side to side, hanging in swags between columns."""
        ends = (0.0, self.width)
        if edge.dip <= DIP_SEEN:
            return tuple(self.point(end, edge.height) for end in ends)
        columns = [self.point(column, edge.height) for column in sorted(self.columns)]
        swags = [point for pair in pairwise(columns) for point in _swag(*pair, edge.dip)]
        tail = edge.dip if self.tails else 0.0
        left, right = (self.point(end, edge.height - tail) for end in ends)
        return tuple(dict.fromkeys((left, *swags, right)))


def face_of(layout: Layout, hang: Hang, *, width: float, scale: float) -> Face:
    """Give the face of a shade at one raise.

    Takes: the layout; how it hangs; the finished width in millimetres; the scale.

    Gives: the face.

    Source: derived here.

    >>> from foldwright.core.drawing.folding import hang
    >>> from foldwright.core.rig.example import LAYOUT
    >>> up = hang(LAYOUT, drop_mm=1600.0, pitch_mm=5.0, raise_share=1.0)
    >>> face_of(LAYOUT, up, width=1200.0, scale=10.0).columns
    (1140.0, 780.0, 420.0, 60.0)
    """
    return Face(
        width=width,
        hang=hang,
        scale=scale,
        columns=tuple(width - mark.value.in_millimetres for mark in layout.columns.marks),
        draw_in=_drawn_in(layout, hang),
        tails=layout.swag is not None and layout.swag.tails,
        scallop=_scallop(layout),
        shirred=layout.rows.shirred,
        gathered=layout.rows.shirred or (layout.swag is not None and layout.swag.pinched),
    )


def draw_face(face: Face) -> Iterator[AnyElement]:
    """Draw the fold edges and ridges that are seen: each fold hangs before the one below it.

    Takes: the face.

    Gives: the elements, from the top down.

    Source: derived here.

    >>> from foldwright.core.drawing.folding import hang
    >>> from foldwright.core.rig.example import LAYOUT
    >>> up = hang(LAYOUT, drop_mm=1600.0, pitch_mm=5.0, raise_share=1.0)
    >>> len([*draw_face(face_of(LAYOUT, up, width=1200.0, scale=10.0))]) > 0
    True
    """
    seen_down_to = face.hang.top
    for panel in reversed(face.hang.panels):
        lowest = panel.fold_edge
        if panel.folded and lowest < seen_down_to:
            apart = seen_down_to - lowest >= EDGES_APART * face.scale
            edge = face.fold(panel)
            yield _across(face, edge, LineKind.VISIBLE if apart else LineKind.THIN)
            yield from _shading(face, edge, seen_down_to - lowest)
        seen_down_to = min(seen_down_to, lowest)
    if face.gathered:
        yield from _gathers(face)
    if face.shirred:
        yield from _ripples(face)
    for height in face.hang.ridges:
        yield _across(face, Edge(height=height, dip=face.hang.dip), LineKind.VISIBLE)


def draw_outline(face: Face) -> AnyElement:
    """Draw the outline of the cloth: its head, its sides, and its lowest edge.

    Takes: the face.

    Gives: a closed line.

    Source: derived here.

    >>> from foldwright.core.drawing.folding import hang
    >>> from foldwright.core.rig.example import LAYOUT
    >>> down = hang(LAYOUT, drop_mm=1600.0, pitch_mm=5.0, raise_share=0.0)
    >>> draw_outline(face_of(LAYOUT, down, width=1200.0, scale=10.0)).height
    1600.0
    """
    if face.is_straight:
        bottom, top = face.hang.lowest_at_columns, face.hang.top
        whole = Box(left=0.0, bottom=bottom, right=face.width, top=top)
        return rectangle(whole, Layer.CLOTH, LineKind.VISIBLE)
    head = (Point(face.width, face.hang.top), Point(0.0, face.hang.top))
    points = (*face.edge(face.lowest), *head)
    return Polyline(points=points, closed=True, layer=Layer.CLOTH)


def _gathers(face: Face) -> Iterator[AnyElement]:
    """Draw short lines down from the head, as far as the cloth there hangs free."""
    apart, top = GATHERS_APART * face.scale, face.hang.top
    highest = max((panel.fold_edge for panel in face.hang.panels if panel.folded), default=0.0)
    free = min((top - face.hang.rows[-1]) / 2, top - highest)
    for number in range(1, int(face.width / apart)):
        down = min(GATHERS_DOWN[number % len(GATHERS_DOWN)] * face.scale, free)
        start, end = (Point(number * apart, height) for height in (top, top - down))
        yield Line(start=start, end=end, layer=Layer.CLOTH, kind=LineKind.THIN)


def _ripples(face: Face) -> Iterator[AnyElement]:
    """Draw a ripple at every row that hangs free, and between each two."""
    free = [panel for panel in face.hang.panels if not panel.closed]
    for panel in free:
        seen = panel.upper - panel.lower - panel.slack
        for part in range(RIPPLES):
            height = panel.upper - seen * part / RIPPLES
            if height < face.hang.top - face.hang.dip / 2:
                yield _across(face, Edge(height=height, dip=face.hang.dip), LineKind.THIN)


def _drawn_in(layout: Layout, hang: Hang) -> float:
    """Give how far each side has drawn in: as the square of how far the hem has dipped."""
    if layout.swag is None or layout.swag.draw_in is None or not layout.swag.dip.value:
        return 0.0
    dipped = hang.dip / layout.swag.dip.value.in_millimetres
    return layout.swag.draw_in.value.in_millimetres * dipped**2


def _scallop(layout: Layout) -> float:
    pinched = layout.swag is not None and layout.swag.pinched
    return layout.swag.dip.value.in_millimetres if layout.swag and pinched else 0.0


def _swag(left: Point, right: Point, dip: float) -> Iterator[Point]:
    """Give the points of one swag, as an evenly heavy chain hangs."""
    span, middle = right.x - left.x, (left.x + right.x) / 2
    edge = HangingEdge.of_sag(span / MILLIMETRES_PER_METRE, dip / MILLIMETRES_PER_METRE)
    yield left
    for number in range(1, SWAG_POINTS):
        across = left.x + span * number / SWAG_POINTS
        above = edge.height_at((across - middle) / MILLIMETRES_PER_METRE)
        yield Point(across, left.y - dip + above * MILLIMETRES_PER_METRE)
    yield right


def _shading(face: Face, edge: Edge, room: float) -> Iterator[AnyElement]:
    """Round a fold with thin lines above its edge, as many as there is room for."""
    for distance in SHADING:
        above = distance * face.scale
        if above < room:
            yield _across(face, edge._replace(height=edge.height + above), LineKind.THIN)


def _across(face: Face, edge: Edge, kind: LineKind) -> AnyElement:
    """Draw a line over the whole width."""
    points = face.edge(edge)
    if len(points) == ENDS:
        return Line(start=points[0], end=points[1], layer=Layer.CLOTH, kind=kind)
    return Polyline(points=points, layer=Layer.CLOTH, kind=kind)
