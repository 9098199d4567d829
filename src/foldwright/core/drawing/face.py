"""The face of the shade as it is seen from the room: folds, ridges and their shading."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.drawing.folding import Hang
from foldwright.core.drawing.model import AnyElement, Layer, Line, LineKind, Point

SHADING = (1.2, 2.8, 5.0)  # lines above a fold edge, ever farther apart, that round it
EDGES_APART = 1.2  # fold edges closer than this would run into one black band


@dataclass(frozen=True, kw_only=True, slots=True)
class Face:
    """The hanging cloth, and the paper it is drawn on."""

    width: float
    hang: Hang
    scale: float


def draw_face(face: Face) -> Iterator[AnyElement]:
    """Draw the fold edges and ridges that are seen: each fold hangs before the one below it.

    Takes: the face.

    Gives: the elements, from the top down.

    Source: derived here.

    >>> from foldwright.core.drawing.folding import hang
    >>> from foldwright.core.rig.example import LAYOUT
    >>> up = hang(LAYOUT, drop_mm=1600.0, pitch_mm=5.0, raise_share=1.0)
    >>> len([*draw_face(Face(width=1200.0, hang=up, scale=10.0))]) > 0
    True
    """
    seen_down_to = face.hang.top
    for panel in reversed(face.hang.panels):
        edge = panel.fold_edge
        if panel.folded and edge < seen_down_to:
            apart = seen_down_to - edge >= EDGES_APART * face.scale
            yield _across(face, edge, LineKind.VISIBLE if apart else LineKind.THIN)
            yield from _shading(face, edge, seen_down_to)
        seen_down_to = min(seen_down_to, edge)
    for height in face.hang.ridges:
        yield _across(face, height, LineKind.VISIBLE)


def _shading(face: Face, edge: float, upper: float) -> Iterator[AnyElement]:
    """Round a fold with thin lines above its edge, as many as there is room for."""
    for distance in SHADING:
        height = edge + distance * face.scale
        if height < upper:
            yield _across(face, height, LineKind.THIN)


def _across(face: Face, height: float, kind: LineKind) -> Line:
    """Draw a line over the whole width."""
    return Line(
        start=Point(0.0, height), end=Point(face.width, height), layer=Layer.CLOTH, kind=kind
    )
