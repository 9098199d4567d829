"""Bands and trims on the face, as far as the folds leave them to be seen, and from the back."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.layout import BandPlan
from foldwright.core.drawing.face import Edge, Face
from foldwright.core.drawing.model import AnyElement, Hatch, Layer, Line, LineKind, Point, Polyline
from foldwright.core.drawing.tags import tag

HATCH_GAP = 2.4  # of paper: wide, so that it reads as another cloth and not as a section
SIDES = 2  # a band down each
SEEN = 0.5  # millimetres; less of a band is not drawn


def draw_bands(plan: ShadePlan, face: Face) -> Iterator[AnyElement]:
    """Draw the bands as they are seen from the room at one raise.

    Takes: the plan; the face as it hangs.

    Gives: hatched bands with their edges; nothing of a band that the folds hide.

    Holds for: a band across within one panel, or below the lowest row.

    Source: derived here; line kinds iso-128.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> from foldwright.core.drawing.folding import hang
    >>> from foldwright.core.drawing.face import face_of
    >>> from foldwright.core.rig.example import LAYOUT
    >>> down = hang(LAYOUT, drop_mm=1600.0, pitch_mm=5.0, raise_share=0.0)
    >>> face = face_of(LAYOUT, down, width=1200.0, scale=10.0)
    >>> list(draw_bands(ShadePlan(spec=ShadeSpec(tag="1")), face))
    []
    """
    bands = plan.layout.bands if plan.layout else None
    if bands is None:
        return
    yield from _down_the_sides(plan, bands, face)
    yield from _across(plan, bands, face)


def _across(plan: ShadePlan, bands: BandPlan, face: Face) -> Iterator[AnyElement]:
    """Draw the band across between the heights that are seen of it."""
    if bands.lower is None or bands.upper is None:
        return
    lower, upper = (
        height_on(plan, face, edge.value.in_millimetres) for edge in (bands.lower, bands.upper)
    )
    if lower is None:
        return
    upper = min(upper if upper is not None else face.hang.top, _lowest_fold(face))
    if upper - lower < SEEN:
        return
    foot, head = (face.edge(Edge(height, face.hang.dip)) for height in (lower, upper))
    outline = (*foot, *reversed(head))
    yield Hatch(outline=outline, layer=Layer.TRIM, kind=LineKind.THIN, gap=HATCH_GAP)
    for name, points in (("lower", foot), ("upper", head)):
        yield Polyline(points=points, layer=Layer.TRIM, tag=tag(plan, f"layout.bands.{name}"))


def height_on(plan: ShadePlan, face: Face, above_hem: float) -> float | None:
    """Find how high a line across the cloth hangs.

    Takes: the plan, with its layout; the face; how far the line lies over the bottom edge of
    the lowered shade, in millimetres.

    Gives: its height, or None where its panel is folded away.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> from foldwright.core.drawing.folding import hang
    >>> from foldwright.core.drawing.face import face_of
    >>> from foldwright.core.rig.example import LAYOUT
    >>> half = hang(LAYOUT, drop_mm=1600.0, pitch_mm=5.0, raise_share=0.5)
    >>> plan = ShadePlan(spec=ShadeSpec(tag="1"), layout=LAYOUT)
    >>> face = face_of(LAYOUT, half, width=1200.0, scale=10.0)
    >>> height_on(plan, face, 20.0) == half.hem + 20.0, height_on(plan, face, 100.0)
    (True, None)
    """
    rows = plan.layout.rows if plan.layout else None
    marks = [mark.value.in_millimetres for mark in rows.marks] if rows else []
    below = [mark for mark in marks if mark <= above_hem]
    if not below:
        return face.hang.hem + above_hem
    panel = face.hang.panels[len(below) - 1]
    return None if panel.folded else panel.lower + above_hem - below[-1]


def _lowest_fold(face: Face) -> float:
    """Give the height above which the folds hide what hangs behind them."""
    folded = [panel.fold_edge for panel in face.hang.panels if panel.folded]
    return min(folded, default=face.hang.top)


def _down_the_sides(plan: ShadePlan, bands: BandPlan, face: Face) -> Iterator[AnyElement]:
    """Draw the edges of the bands down the sides, and hatch between them."""
    bottom, top = face.hang.lowest_at_columns, face.hang.top
    places = [face.width - edge.value.in_millimetres for edge in bands.side_edges]
    for index, place in enumerate(places):
        yield Line(
            start=face.point(place, bottom),
            end=face.point(place, top),
            layer=Layer.TRIM,
            tag=tag(plan, f"layout.bands.side_edges.{index}"),
        )
    for left, right in _sides(sorted(places), face.width):
        corners = ((left, bottom), (right, bottom), (right, top), (left, top))
        outline = tuple(face.point(x, y) for x, y in corners)
        yield Hatch(outline=outline, layer=Layer.TRIM, kind=LineKind.THIN, gap=HATCH_GAP)


def _sides(places: list[float], width: float) -> Iterator[tuple[float, float]]:
    """Give each side band by its edges; one that lies along the edge of the shade has one alone."""
    if len(places) == SIDES:
        places = [0.0, *places, width]
    yield from zip(places[::2], places[1::2], strict=True)


def bands_from_the_back(plan: ShadePlan, width: float, height: float) -> Iterator[AnyElement]:
    """Draw the edges of the bands on the panel that lies face down: hidden lines.

    Takes: the plan; the width and length of the finished panel, in millimetres.

    Gives: dashed lines; nothing without bands.

    Source: derived here; line kinds iso-128.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> list(bands_from_the_back(ShadePlan(spec=ShadeSpec(tag="1")), 900.0, 1500.0))
    []
    """
    bands = plan.layout.bands if plan.layout else None
    if bands is None:
        return
    for name in ("lower", "upper"):
        edge = getattr(bands, name)
        if edge is not None and edge.value.in_millimetres > SEEN:
            at = edge.value.in_millimetres
            yield _hidden(plan, f"layout.bands.{name}", Point(0.0, at), Point(width, at))
    for index, edge in enumerate(bands.side_edges):
        at = edge.value.in_millimetres
        path = f"layout.bands.side_edges.{index}"
        yield _hidden(plan, path, Point(at, 0.0), Point(at, height))


def _hidden(plan: ShadePlan, path: str, start: Point, end: Point) -> Line:
    return Line(start=start, end=end, layer=Layer.TRIM, kind=LineKind.HIDDEN, tag=tag(plan, path))
