"""The shades of a group side by side, to scale and over one floor, with their row lines."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.check.groups.hung import Hung
from foldwright.core.drawing.frame import Frame, Gutters, fit, text_width, with_gutters
from foldwright.core.drawing.model import (
    Along,
    Anchor,
    AnyElement,
    Box,
    Circle,
    Dimension,
    Drawing,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Text,
)
from foldwright.core.drawing.shapes import around, rectangle
from foldwright.core.drawing.words import in_full
from foldwright.core.quantity.rounding import System

NAME = "room"
TITLE = "Elevation of the room"
SEEN_FROM = "from the room"
ROOM_FRAME = Frame(width=180.0, height=110.0)
GUTTERS = Gutters(left=8.0, bottom=19.0, right=8.0, top=13.0)
SIZE_LINE_OFF = 6.0
LINE_BELOW = 4.8
BETWEEN = 0.25  # of the widest shade, where nobody measured how far the windows are apart
BEYOND = 4.0  # the row lines run on past the outer shades, in millimetres of paper
RING_RADIUS = 0.5
CAPTION_BELOW = 15.5


@dataclass(frozen=True, kw_only=True, slots=True)
class _Place:
    """One shade at its place in the view, with its box in millimetres over the floor."""

    hung: Hung
    box: Box


@dataclass(frozen=True, kw_only=True, slots=True)
class _Scene:
    places: tuple[_Place, ...]
    scale: float
    system: System

    @property
    def whole(self) -> Box:
        return around(place.box for place in self.places)


def room_elevation(
    shades: tuple[Hung, ...], title: str, system: System, frame: Frame = ROOM_FRAME
) -> Drawing:
    """Draw the shades of a group side by side, fully down, seen from the room.

    Takes: the shades from left to right, one at least; what the drawing shows of them; the
    reader's system; the frame to fit, in millimetres of paper.

    Gives: the drawing: each shade to scale at its height above the floor, its rings, and a line
    through the room at every row.

    Holds for: widths and heights; how far the windows are apart is not measured, and not shown.

    Source: derived here; line kinds iso-128, dimensions iso-129.

    >>> from foldwright.core.rig.example import LAYOUT, SIZE
    >>> hung = Hung(
    ...     tag="A", width=SIZE.width, drop=SIZE.drop, top=SIZE.drop, hem=SIZE.board_length,
    ...     layout=LAYOUT)
    >>> room_elevation((hung,), "as they hang", System.METRIC).seen_from
    'from the room'
    """
    places = tuple(_places(shades))
    whole = around(place.box for place in places)
    scene = _Scene(places=places, scale=fit(whole, frame, GUTTERS), system=system)
    return Drawing(
        name=NAME,
        title=f"{TITLE}, {title}",
        seen_from=SEEN_FROM,
        description=_describe(scene, title),
        extent=with_gutters(scene.whole, GUTTERS, scene.scale),
        scale=scene.scale,
        elements=tuple(_elements(scene, title)),
    )


def _places(shades: tuple[Hung, ...]) -> Iterator[_Place]:
    apart = BETWEEN * max(shade.width.value.in_millimetres for shade in shades)
    left = 0.0
    for shade in shades:
        width, hem = shade.width.value.in_millimetres, shade.hem.value.in_millimetres
        top = hem + shade.drop.value.in_millimetres
        yield _Place(hung=shade, box=Box(left=left, bottom=hem, right=left + width, top=top))
        left += width + apart


def _elements(scene: _Scene, title: str) -> Iterator[AnyElement]:
    yield from _row_lines(scene)
    for place in scene.places:
        yield from _shade(place, scene)
    yield from _sizes(scene)
    yield from _hems(scene)
    yield _caption(scene, title)


def _row_lines(scene: _Scene) -> Iterator[AnyElement]:
    """Run the rows of the shade that has most of them through the room, for the eye to follow."""
    beyond = BEYOND * scene.scale
    longest = max((place.hung for place in scene.places), key=lambda hung: len(hung.rows))
    for height in longest.rows:
        yield Line(
            start=Point(scene.whole.left - beyond, height.in_millimetres),
            end=Point(scene.whole.right + beyond, height.in_millimetres),
            layer=Layer.MARKER,
            kind=LineKind.CENTRE,
        )


def _shade(place: _Place, scene: _Scene) -> Iterator[AnyElement]:
    yield rectangle(place.box, Layer.CLOTH, LineKind.VISIBLE)
    for row in place.hung.rows:
        yield from _row(place, row.in_millimetres, scene)
    yield Text(
        at=Point(
            (place.box.left + place.box.right) / 2,
            place.box.top - 4.0 * scene.scale,
        ),
        words=place.hung.tag,
        size=Lettering.FIGURE,
        anchor=Anchor.MIDDLE,
        strong=True,
        backed=True,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _row(place: _Place, height: float, scene: _Scene) -> Iterator[AnyElement]:
    yield Line(
        start=Point(place.box.left, height),
        end=Point(place.box.right, height),
        layer=Layer.ROWS,
        kind=LineKind.HIDDEN,
    )
    for mark in place.hung.layout.columns.marks:
        yield Circle(
            centre=Point(place.box.right - mark.value.in_millimetres, height),
            radius=RING_RADIUS * scene.scale,
            layer=Layer.ROWS,
            kind=LineKind.THIN,
        )


def _sizes(scene: _Scene) -> Iterator[AnyElement]:
    """Write each width over its shade, where there is room for it."""
    for place in scene.places:
        width = in_full(place.hung.width, scene.system)
        if text_width(width, Lettering.FIGURE) * scene.scale <= place.box.width:
            yield Dimension(
                start=Point(place.box.left, place.box.top),
                end=Point(place.box.right, place.box.top),
                line_at=scene.whole.top + SIZE_LINE_OFF * scene.scale,
                along=Along.ACROSS,
                words=width,
                layer=Layer.SIZES,
                kind=LineKind.THIN,
            )


def _hems(scene: _Scene) -> Iterator[AnyElement]:
    """Say under each shade how long it is, and how high its hem is over the floor."""
    for place in scene.places:
        drop, hem = (in_full(figure, scene.system) for figure in (place.hung.drop, place.hung.hem))
        lines = ((f"{drop} long", Lettering.FIGURE), (f"hem {hem} up", Lettering.NOTE))
        for number, (words, size) in enumerate(lines, start=1):
            yield Text(
                at=Point(
                    (place.box.left + place.box.right) / 2,
                    place.box.bottom - number * LINE_BELOW * scene.scale,
                ),
                words=words,
                size=size,
                anchor=Anchor.MIDDLE,
                layer=Layer.NOTES,
                kind=LineKind.THIN,
            )


def _caption(scene: _Scene, title: str) -> AnyElement:
    return Text(
        at=Point(
            (scene.whole.left + scene.whole.right) / 2,
            scene.whole.bottom - CAPTION_BELOW * scene.scale,
        ),
        words=f"Seen {SEEN_FROM}, {title}; heights over one floor, windows not spaced to scale",
        size=Lettering.NOTE,
        anchor=Anchor.MIDDLE,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _describe(scene: _Scene, title: str) -> str:
    """Say in sentences what the drawing shows."""
    sentences = [f"{len(scene.places)} shades seen {SEEN_FROM}, {title}."]
    for place in scene.places:
        width, drop, hem = (
            in_full(figure, scene.system)
            for figure in (place.hung.width, place.hung.drop, place.hung.hem)
        )
        rows = len(place.hung.rows)
        sentences.append(
            f"{place.hung.tag} is {width} wide and {drop} long, its hem {hem} above the floor,"
            f" with {rows} ring rows."
        )
    return " ".join(sentences)
