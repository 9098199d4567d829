"""Small geometry that several views share."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from foldwright.core.drawing.model import Box, Layer, Line, LineKind, Point, Rectangle, Tag


def around(boxes: Iterable[Box]) -> Box:
    """Give the least box round some boxes.

    Takes: one box or more.

    Gives: the box that holds them all.

    Source: derived here.

    >>> a, b = Box(left=0, bottom=0, right=1, top=1), Box(left=2, bottom=0, right=3, top=2)
    >>> around([a, b]).width
    3
    """
    every = list(boxes)
    return Box(
        left=min(box.left for box in every),
        bottom=min(box.bottom for box in every),
        right=max(box.right for box in every),
        top=max(box.top for box in every),
    )


def rectangle(box: Box, layer: Layer, kind: LineKind, tag: Tag | None = None) -> Rectangle:
    """Draw a box.

    Takes: the box; the layer and line kind; the tag of the figure it shows, if any.

    Gives: the rectangle.

    Source: derived here.

    >>> square = Box(left=0, bottom=0, right=1, top=1)
    >>> rectangle(square, Layer.BOARD, LineKind.VISIBLE).width
    1
    """
    corner = Point(box.left, box.bottom)
    return Rectangle(
        corner=corner, width=box.width, height=box.height, layer=layer, kind=kind, tag=tag
    )


def corners(box: Box) -> tuple[Point, Point, Point, Point]:
    """Give the corners of a box, counter-clockwise from the lower left.

    Takes: the box.

    Gives: four points.

    Source: derived here.

    >>> corners(Box(left=0, bottom=0, right=2, top=1))[2]
    Point(x=2, y=1)
    """
    return (
        Point(box.left, box.bottom),
        Point(box.right, box.bottom),
        Point(box.right, box.top),
        Point(box.left, box.top),
    )


def behind(start: Point, end: Point, cover: Box, layer: Layer) -> Iterator[Line]:
    """Draw a line that something may cover: hidden inside the cover, plain outside it.

    Takes: the ends of the line; the box that covers; the layer.

    Gives: one to three lines that together are the whole.

    Source: derived here.

    >>> cover = Box(left=0, bottom=0, right=2, top=2)
    >>> [line.kind.value for line in behind(Point(-1, 1), Point(3, 1), cover, Layer.WINDOW)]
    ['thin', 'hidden', 'thin']
    """
    enter, leave = _covered_share(start, end, cover)
    shares = [0.0, 1.0] if enter >= leave else [0.0, enter, leave, 1.0]
    kinds = (LineKind.THIN, LineKind.HIDDEN, LineKind.THIN)
    for first, last, kind in zip(shares, shares[1:], kinds, strict=False):
        if last > first:
            yield Line(
                start=_between(start, end, first),
                end=_between(start, end, last),
                layer=layer,
                kind=kind,
            )


def _between(start: Point, end: Point, share: float) -> Point:
    """Give the point at a share of the way."""
    return Point(start.x + share * (end.x - start.x), start.y + share * (end.y - start.y))


def _covered_share(start: Point, end: Point, cover: Box) -> tuple[float, float]:
    """Give the shares of the way at which a line goes in and out of a box."""
    enter, leave = 0.0, 1.0
    for at, step, low, high in (
        (start.x, end.x - start.x, cover.left, cover.right),
        (start.y, end.y - start.y, cover.bottom, cover.top),
    ):
        if step == 0:
            if not low <= at <= high:
                return 0.0, 0.0
            continue
        first, last = sorted(((low - at) / step, (high - at) / step))
        enter, leave = max(enter, first), min(leave, last)
    return enter, leave
