"""Write one element of a drawing as SVG, in millimetres of paper."""

from __future__ import annotations

from functools import singledispatch
from html import escape
from math import atan2, cos, degrees, hypot, radians, sin
from typing import NamedTuple

from foldwright.core.drawing.frame import text_width
from foldwright.core.drawing.model import (
    Along,
    Anchor,
    Arc,
    Circle,
    Dimension,
    Element,
    Hatch,
    Line,
    LineKind,
    Point,
    Polyline,
    Rectangle,
    Text,
)

# Widths two to one, dashes and gaps in multiples of the narrow width, as ISO 128 asks.
WIDE, NARROW = 0.5, 0.25
DASHES = {
    LineKind.VISIBLE: "",
    LineKind.THIN: "",
    LineKind.HIDDEN: "3 1",
    LineKind.CENTRE: "6 1 0.1 1",
    LineKind.ELSEWHERE: "6 1 0.1 1 0.1 1",
}
ANCHORS = {Anchor.START: "start", Anchor.MIDDLE: "middle", Anchor.END: "end"}
ARROW_LENGTH, ARROW_HALF_WIDTH = 2.6, 0.45
ARROWS_OUTSIDE_BELOW = 3 * ARROW_LENGTH
TEXT_ABOVE_LINE = 1.0
EXTENSION_GAP, EXTENSION_BEYOND = 0.8, 1.5
TOUCH_WIDTH, TOUCH_HEIGHT = 12.0, 8.0
BASELINE = 0.36  # from the middle of the figures down to their baseline, of the letter height
GROUND = 0.4  # clear ground around backed words


class Place(NamedTuple):
    """Leads from the drawing's millimetres to those of the paper, y down."""

    left: float
    top: float
    scale: float
    name: str

    def at(self, point: Point) -> Point:
        """Give the place on paper."""
        return Point((point.x - self.left) / self.scale, (self.top - point.y) / self.scale)

    def size(self, length: float) -> float:
        """Give the size on paper."""
        return length / self.scale


def number(value: float) -> str:
    """Write a number with two decimals at most."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def pattern_name(drawing_name: str, hatch: Hatch) -> str:
    """Name a hatch so that like hatches share a name and two drawings never do."""
    return f"{drawing_name}-hatch-{number(hatch.degrees % 180)}-{number(hatch.gap * 10)}"


@singledispatch
def draw(element: Element, place: Place) -> str:  # noqa: ARG001 - the signature of all kinds
    """Write an element as SVG."""
    message = f"no way to write {type(element).__name__}"
    raise TypeError(message)


@draw.register
def _(line: Line, place: Place) -> str:
    start, end = place.at(line.start), place.at(line.end)
    stroke = f'<path{_stroke(line)} d="M{_xy(start)}L{_xy(end)}"/>'
    heading = degrees(atan2(end.y - start.y, end.x - start.x))
    return stroke + (_arrow(end, heading) if line.arrow else "")


@draw.register
def _(polyline: Polyline, place: Place) -> str:
    path = "L".join(_xy(place.at(point)) for point in polyline.points)
    return f'<path{_stroke(polyline)} d="M{path}{"Z" if polyline.closed else ""}"/>'


@draw.register
def _(arc: Arc, place: Place) -> str:
    start, end = (_on_circle(arc, angle) for angle in (arc.from_degrees, arc.to_degrees))
    turn = arc.from_degrees - arc.to_degrees if arc.reverse else arc.to_degrees - arc.from_degrees
    large, sweep = int(turn % 360 > 180), int(arc.reverse)  # noqa: PLR2004 - half a circle
    radius = number(place.size(arc.radius))
    first, last = place.at(start), place.at(end)
    path = f"M{_xy(first)}A{radius} {radius} 0 {large} {sweep} {_xy(last)}"
    heading = -arc.to_degrees + (90 if arc.reverse else -90)
    return f'<path{_stroke(arc)} d="{path}"/>' + (_arrow(last, heading) if arc.arrow else "")


@draw.register
def _(circle: Circle, place: Place) -> str:
    centre = place.at(circle.centre)
    fill = ' fill="currentColor"' if circle.filled else ""
    return (
        f'<circle{_stroke(circle)}{fill} cx="{number(centre.x)}" cy="{number(centre.y)}"'
        f' r="{number(place.size(circle.radius))}"/>'
    )


@draw.register
def _(box: Rectangle, place: Place) -> str:
    corner = place.at(Point(box.corner.x, box.corner.y + box.height))
    ground = ' class="ground" fill="#fff"' if box.covering else ""
    return (
        f'<rect{_stroke(box)}{ground} x="{number(corner.x)}" y="{number(corner.y)}"'
        f' width="{number(place.size(box.width))}" height="{number(place.size(box.height))}"/>'
    )


@draw.register
def _(hatch: Hatch, place: Place) -> str:
    path = "L".join(_xy(place.at(point)) for point in hatch.outline)
    name = pattern_name(place.name, hatch)
    return f'<path class="hatched" stroke="none" fill="url(#{name})" d="M{path}Z"/>'


@draw.register
def _(text: Text, place: Place) -> str:
    at = place.at(text.at)
    ground = _ground(text, place) if text.backed else ""
    return ground + _letters(text, at, text.anchor, upright=text.upright)


def touch_area(element: Text | Dimension, place: Place) -> str:
    """Write the clear area that a finger may hit around some words."""
    middle = _middle_of_words(element, place)
    long = max(text_width(element.words, element.size), TOUCH_WIDTH)
    short = max(element.size.value, TOUCH_HEIGHT)
    turned = element.along is Along.UP if isinstance(element, Dimension) else element.upright
    width, height = (short, long) if turned else (long, short)
    return (
        f'<rect class="touch" stroke="none" pointer-events="all" x="{number(middle.x - width / 2)}"'
        f' y="{number(middle.y - height / 2)}" width="{number(width)}" height="{number(height)}"/>'
    )


def _stroke(element: Element) -> str:
    """Write the look of a line kind, as attributes that a style sheet can override."""
    width = WIDE if element.kind is LineKind.VISIBLE else NARROW
    dashes = DASHES[element.kind]
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return f' class="line-{element.kind.value}" stroke-width="{width}"{dashed}'


def _xy(point: Point) -> str:
    """Write a place."""
    return f"{number(point.x)} {number(point.y)}"


def _arrow(tip: Point, heading: float) -> str:
    """Write a filled head whose tip points along the heading, in degrees clockwise."""
    barbs = (
        _step(_step(tip, heading + 180, ARROW_LENGTH), heading + side, ARROW_HALF_WIDTH)
        for side in (90, -90)
    )
    path = "L".join(_xy(point) for point in (tip, *barbs))
    return f'<path class="head" stroke="none" fill="currentColor" d="M{path}Z"/>'


def _step(start: Point, heading: float, distance: float) -> Point:
    """Go a distance along a heading, in degrees clockwise from the right."""
    angle = radians(heading)
    return Point(start.x + distance * cos(angle), start.y + distance * sin(angle))


def _on_circle(arc: Arc, angle: float) -> Point:
    """Give the point of an arc's circle at an angle."""
    turned = radians(angle)
    return Point(arc.centre.x + arc.radius * cos(turned), arc.centre.y + arc.radius * sin(turned))


def _letters(element: Text | Dimension, at: Point, anchor: Anchor, *, upright: bool) -> str:
    """Write words with the middle of their height at a place."""
    size = element.size
    turn = f' transform="rotate(-90 {_xy(at)})"' if upright else ""
    weight = ' font-weight="600"' if element.strong else ""
    return (
        f'<text class="letters-{size.name.lower()}" stroke="none" fill="currentColor"'
        f' font-size="{size.value}" text-anchor="{ANCHORS[anchor]}"{weight}'
        f' x="{number(at.x)}" y="{number(at.y + BASELINE * size.value)}"{turn}>'
        f"{escape(element.words)}</text>"
    )


def _ground(text: Text, place: Place) -> str:
    """Write the clear ground behind words that stand upon lines."""
    middle = _middle_of_words(text, place)
    long, short = text_width(text.words, text.size) + GROUND, text.size.value + 2 * GROUND
    width, height = (short, long) if text.upright else (long, short)
    return (
        f'<rect class="ground" stroke="none" fill="#fff" x="{number(middle.x - width / 2)}"'
        f' y="{number(middle.y - height / 2)}" width="{number(width)}" height="{number(height)}"/>'
    )


def _middle_of_words(element: Text | Dimension, place: Place) -> Point:
    """Give the middle of a text as written on paper."""
    if isinstance(element, Dimension):
        return _words_at(element, place)
    at = place.at(element.at)
    half = text_width(element.words, element.size) / 2
    shift = {Anchor.START: half, Anchor.MIDDLE: 0.0, Anchor.END: -half}[element.anchor]
    return Point(at.x, at.y - shift) if element.upright else Point(at.x + shift, at.y)


def _words_at(dimension: Dimension, place: Place) -> Point:
    """Put the figure above its line, or left of an upright one."""
    middle = place.at(
        Point((dimension.start.x + dimension.end.x) / 2, (dimension.start.y + dimension.end.y) / 2)
    )
    line = place.at(Point(dimension.line_at, dimension.line_at))
    off = TEXT_ABOVE_LINE + dimension.size.value / 2
    if dimension.along is Along.ACROSS:
        return Point(middle.x, line.y - off)
    return Point(line.x - off, middle.y)


@draw.register
def _(dimension: Dimension, place: Place) -> str:
    upright = dimension.along is Along.UP
    first, last = place.at(dimension.start), place.at(dimension.end)
    line = place.at(Point(dimension.line_at, dimension.line_at))
    if upright:
        ends = (Point(line.x, first.y), Point(line.x, last.y))
    else:
        ends = (Point(first.x, line.y), Point(last.x, line.y))
    stroke = _stroke(dimension)
    parts = [
        *(_extension(stroke, start, end) for start, end in zip((first, last), ends, strict=True)),
        f'<path{stroke} d="M{_xy(ends[0])}L{_xy(ends[1])}"/>',
        *_heads(*ends),
        _letters(dimension, _words_at(dimension, place), Anchor.MIDDLE, upright=upright),
    ]
    return "".join(parts)


def _extension(stroke: str, start: Point, end: Point) -> str:
    """Lead from the thing to its dimension line and a little beyond."""
    length = hypot(end.x - start.x, end.y - start.y)
    if length <= EXTENSION_GAP:
        return ""
    heading = degrees(atan2(end.y - start.y, end.x - start.x))
    near, far = (_step(start, heading, d) for d in (EXTENSION_GAP, length + EXTENSION_BEYOND))
    return f'<path{stroke} d="M{_xy(near)}L{_xy(far)}"/>'


def _heads(first: Point, last: Point) -> tuple[str, str]:
    """Put the heads inside the extension lines, or outside where there is no room."""
    heading = degrees(atan2(last.y - first.y, last.x - first.x))
    inside = hypot(last.x - first.x, last.y - first.y) >= ARROWS_OUTSIDE_BELOW
    turn = 0 if inside else 180
    return _arrow(first, heading + 180 + turn), _arrow(last, heading + turn)
