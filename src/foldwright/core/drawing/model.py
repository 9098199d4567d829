"""A drawing that belongs to no file format: lines, arcs, hatches, text and dimensions.

Coordinates are millimetres of the real thing, x to the right and y up. What a person
reads (letters, line widths, gaps of a hatch) is in millimetres of the paper, since it
must not shrink with the shade; `Drawing.scale` leads from one to the other.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from typing import NamedTuple


class Point(NamedTuple):
    """A place, in millimetres of the real thing."""

    x: float
    y: float


class LineKind(Enum):
    """What a line stands for, after the line types of ISO 128."""

    VISIBLE = "visible"  # continuous wide: edges that are seen
    THIN = "thin"  # continuous narrow: light edges, leaders, dimension lines
    HIDDEN = "hidden"  # dashed narrow: edges behind something
    CENTRE = "centre"  # long-dashed dotted narrow: centres, columns
    ELSEWHERE = "elsewhere"  # long-dashed double-dotted narrow: other positions, neighbours


class Layer(Enum):
    """The part of the shade that an element belongs to; writers keep layers apart."""

    WINDOW = "window"
    BOARD = "board"
    HEADRAIL = "headrail"
    TUBE = "tube"
    CLOTH = "cloth"
    CUTS = "cuts"
    SEAMS = "seams"
    ROWS = "rows"
    COLUMNS = "columns"
    RODS = "rods"
    CORDS = "cords"
    BAR = "bar"
    HANDLE = "handle"
    TRIM = "trim"
    TAPE = "tape"
    VALANCE = "valance"
    SIZES = "sizes"
    NOTES = "notes"
    AXES = "axes"
    LOAD = "load"
    SPRING = "spring"
    MARKER = "marker"
    LOCK = "lock"


class Lettering(Enum):
    """Sizes of letters in millimetres of paper; a figure is never under 11 points."""

    GREAT = 7.0
    LARGE = 5.0
    FIGURE = 3.9
    NOTE = 3.2


class Anchor(Enum):
    """Which end of a text stands at its place."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


class Along(Enum):
    """The direction in which a dimension is measured."""

    ACROSS = "across"
    UP = "up"


class Tag(NamedTuple):
    """The figure that an element shows: its dotted path in the plan, and its name."""

    path: str
    name: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Element:
    """What every element carries; a tagged element can open its why at a touch."""

    layer: Layer
    kind: LineKind = LineKind.VISIBLE
    tag: Tag | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Line(Element):
    """A straight line, with an arrow head at its end where it points at something."""

    start: Point
    end: Point
    arrow: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Polyline(Element):
    """Straight lines from point to point, closed or open."""

    points: tuple[Point, ...]
    closed: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Arc(Element):
    """Part of a circle from one angle to another, counter-clockwise from the right.

    `arrow` puts a head at the end; `reverse` turns the sense to clockwise.
    """

    centre: Point
    radius: float
    from_degrees: float
    to_degrees: float
    reverse: bool = False
    arrow: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Circle(Element):
    """A whole circle; `filled` makes it a dot."""

    centre: Point
    radius: float
    filled: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Rectangle(Element):
    """An upright rectangle from its lower left corner; `covering` hides what lies behind it."""

    corner: Point
    width: float
    height: float
    covering: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Hatch(Element):
    """Parallel thin lines inside an outline: a section, a cloth, a band of doubt."""

    outline: tuple[Point, ...]
    degrees: float = 45.0
    gap: float = 1.6  # millimetres of paper


@dataclass(frozen=True, kw_only=True, slots=True)
class Text(Element):
    """Words at a place: `at` is the middle of the letters' height at the anchored end."""

    at: Point
    words: str
    size: Lettering = Lettering.FIGURE
    anchor: Anchor = Anchor.START
    upright: bool = False  # turned to be read from the right
    strong: bool = False
    backed: bool = False  # on a clear ground, where it stands upon lines


@dataclass(frozen=True, kw_only=True, slots=True)
class Dimension(Element):
    """A dimension after ISO 129: extension lines, a line with two heads, the figure on it.

    `line_at` is where the dimension line runs: its y for a dimension across, its x for
    one up. The figure stands above the line, or to its left and turned for one up.
    """

    start: Point
    end: Point
    line_at: float
    along: Along
    words: str
    size: Lettering = Lettering.FIGURE
    strong: bool = False


AnyElement = Line | Polyline | Arc | Circle | Rectangle | Hatch | Text | Dimension


@dataclass(frozen=True, kw_only=True, slots=True)
class Box:
    """An upright box, in millimetres of the real thing."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """Give the width."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Give the height."""
        return self.top - self.bottom


@dataclass(frozen=True, kw_only=True, slots=True)
class Drawing:
    """One view, complete with the words that say what it shows and whence it is seen."""

    name: str  # one word for file names and ids: "elevation"
    title: str
    seen_from: str
    description: str  # the same in sentences, for whoever cannot see it
    extent: Box
    scale: float  # millimetres of the real thing to one of paper
    elements: tuple[AnyElement, ...]

    def tags(self) -> Iterator[Tag]:
        """Give each figure that is tagged, once, in drawing order."""
        yield from dict.fromkeys(element.tag for element in self.elements if element.tag)

    def words(self) -> Iterator[str]:
        """Give all that can be read in the drawing, in drawing order."""
        for element in self.elements:
            if isinstance(element, Text | Dimension):
                yield element.words
