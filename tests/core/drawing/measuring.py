"""Measure a drawing as a reader sees it: where its words stand and what they touch."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from foldwright.core.drawing.frame import text_width
from foldwright.core.drawing.model import (
    Along,
    Anchor,
    AnyElement,
    Arc,
    Box,
    Circle,
    Dimension,
    Drawing,
    Hatch,
    Line,
    Point,
    Polyline,
    Rectangle,
    Text,
)

DIMENSION_WORDS_OFF = 1.0  # of paper: the writer's gap between a line and its figure


def points(element: AnyElement) -> Iterator[Point]:
    """Give the points that bound an element, without its words."""
    match element:
        case Line() | Dimension():
            yield from (element.start, element.end)
        case Polyline():
            yield from element.points
        case Hatch():
            yield from element.outline
        case Circle() | Arc():
            x, y, r = element.centre.x, element.centre.y, element.radius
            yield from (Point(x - r, y - r), Point(x + r, y + r))
        case Rectangle():
            x, y = element.corner
            yield from (element.corner, Point(x + element.width, y + element.height))
        case Text():
            yield element.at


def words_box(element: Text | Dimension, scale: float) -> Box:
    """Give the box that some words take, in the drawing's millimetres."""
    long = text_width(element.words, element.size) * scale
    high = element.size.value * scale
    if isinstance(element, Dimension):
        off = high / 2 + DIMENSION_WORDS_OFF * scale
        middle_x = (element.start.x + element.end.x) / 2
        middle_y = (element.start.y + element.end.y) / 2
        if element.along is Along.UP:
            return _box(Point(element.line_at - off, middle_y), high, long)
        return _box(Point(middle_x, element.line_at + off), long, high)
    shift = {Anchor.START: 0.5, Anchor.MIDDLE: 0.0, Anchor.END: -0.5}[element.anchor] * long
    if element.upright:
        return _box(Point(element.at.x, element.at.y + shift), high, long)
    return _box(Point(element.at.x + shift, element.at.y), long, high)


def _box(middle: Point, width: float, height: float) -> Box:
    return Box(
        left=middle.x - width / 2,
        bottom=middle.y - height / 2,
        right=middle.x + width / 2,
        top=middle.y + height / 2,
    )


def written(drawing: Drawing) -> list[tuple[str, Box]]:
    """Give all words with their boxes."""
    return [
        (element.words, words_box(element, drawing.scale))
        for element in drawing.elements
        if isinstance(element, Text | Dimension)
    ]


def collisions(drawing: Drawing) -> list[tuple[str, str]]:
    """Give the pairs of words that run into each other."""
    boxes = written(drawing)
    return [
        (first, second)
        for index, (first, a) in enumerate(boxes)
        for second, b in boxes[index + 1 :]
        if a.left < b.right and b.left < a.right and a.bottom < b.top and b.bottom < a.top
    ]


def strays(drawing: Drawing) -> list[str]:
    """Name what lies outside the drawing's extent."""
    extent, slack = drawing.extent, 0.3 * drawing.scale
    outside = []
    boxes = (
        (words, (Point(b.left, b.bottom), Point(b.right, b.top))) for words, b in written(drawing)
    )
    shapes = ((type(e).__name__, tuple(points(e))) for e in drawing.elements)
    for name, corners in chain(boxes, shapes):
        outside += [
            f"{name} at {point.x:.0f}, {point.y:.0f}"
            for point in corners
            if not (
                extent.left - slack <= point.x <= extent.right + slack
                and extent.bottom - slack <= point.y <= extent.top + slack
            )
        ]
    return outside
