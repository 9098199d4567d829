"""The parts of a headrail as they are seen from the back or from the room."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Box,
    Circle,
    Hatch,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Text,
)
from foldwright.core.drawing.shapes import corners, rectangle
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import bare, in_full
from foldwright.core.lift.choices import LiftKind
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.rig.headrail import CordLine, Headrail

SIDE_GUTTER = 17.0  # of paper: names of the ends and of the rows of marks
# Heights above the middle of the tube, in millimetres of paper.
TUBE_HALF, BAND_HALF, CLIP_HALF = 3.2, 3.9, 4.5
BOARD_UNDER, BOARD_TOP = 6.0, 12.0
BRACKET_FOOT = -5.0
BRACKET_MARK = 14.8
COLUMN_FOOT = -10.5
NUMBER_RADIUS = 2.6
ORIGIN_RADIUS = 0.9
CLIP_WIDTH = 1.6
DRIVE_NAMES = {LiftKind.SPRING: "spring", LiftKind.CLUTCH: "clutch", LiftKind.MOTOR: "motor"}


class View(Enum):
    """Whence the headrail is seen."""

    BACK = "from the back"
    ROOM = "from the room"


@dataclass(frozen=True, kw_only=True, slots=True)
class Rail:
    """Leads from lengths along the board, from its left end seen from the back, to paper."""

    plan: ShadePlan
    headrail: Headrail
    view: View
    system: System
    scale: float
    tube_marks: bool

    @property
    def board(self) -> float:
        """Give the length of the board on paper."""
        return self.headrail.board_length.value.in_millimetres / self.scale

    def along_board(self, length: Length) -> float:
        """Give the place of a length along the board."""
        place = length.in_millimetres / self.scale
        return SIDE_GUTTER + (place if self.view is View.BACK else self.board - place)

    def along_tube(self, length: Length) -> float:
        """Give the place of a length along the tube."""
        return self.along_board(self.headrail.tube_start.value + length)

    def between(self, first: float, second: float, bottom: float, top: float) -> Box:
        """Give the box between two places."""
        left, right = sorted((first, second))
        return Box(left=left, bottom=bottom, right=right, top=top)


def draw_rail(rail: Rail) -> Iterator[AnyElement]:
    """Draw the board, what hangs under it, and the names of its ends.

    Takes: the rail.

    Gives: the elements, in millimetres of paper.

    Source: derived here; line kinds iso-128.

    >>> [view.value for view in View]
    ['from the back', 'from the room']
    """
    yield from _board(rail)
    yield from _brackets(rail)
    yield from _tube(rail)
    for line in rail.headrail.lines:
        yield from _cord(rail, line)
    yield from _ends(rail)


def drive_name(rail: Rail) -> str:
    """Name what turns the tube.

    Takes: the rail.

    Gives: one word.

    Source: derived here.

    >>> DRIVE_NAMES[LiftKind.CLUTCH]
    'clutch'
    """
    kind = rail.plan.spec.lift.kind
    return DRIVE_NAMES[kind] if kind else "drive"


def _board(rail: Rail) -> Iterator[AnyElement]:
    """Draw the board with the lengths to cut written on it, and where its marks start."""
    ends = (rail.along_board(Length(0)), rail.along_board(rail.headrail.board_length.value))
    box = rail.between(*ends, BOARD_UNDER, BOARD_TOP)
    yield rectangle(box, Layer.BOARD, LineKind.VISIBLE)
    yield from _lengths(rail, Point((box.left + box.right) / 2, (BOARD_UNDER + BOARD_TOP) / 2))
    yield Circle(centre=Point(ends[0], BOARD_TOP), radius=ORIGIN_RADIUS, layer=Layer.SIZES)


def _lengths(rail: Rail, middle: Point) -> Iterator[Text]:
    """Write how long the board is cut, and beside it the tube where marks along it are written."""
    names = [("board_length", "board", Anchor.MIDDLE, 0.0)]
    if rail.tube_marks:
        names = [
            ("board_length", "board", Anchor.END, -2.0),
            ("tube_cut", "tube", Anchor.START, 2.0),
        ]
    for field, name, anchor, aside in names:
        yield Text(
            at=Point(middle.x + aside, middle.y),
            words=f"{name} {in_full(getattr(rail.headrail, field), rail.system)}",
            anchor=anchor,
            strong=True,
            layer=Layer.BOARD,
            kind=LineKind.THIN,
            tag=tag(rail.plan, f"headrail.{field}"),
        )


def _brackets(rail: Rail) -> Iterator[AnyElement]:
    """Draw brackets and cradles, each with its mark from the board's end."""
    record = rail.plan.chosen.bracket
    half = record.width.in_millimetres / rail.scale / 2 if record else CLIP_WIDTH / 2
    for field in ("bracket_marks", "cradle_marks"):
        for index, mark in enumerate(getattr(rail.headrail, field)):
            middle = rail.along_board(mark.value)
            box = Box(left=middle - half, bottom=BRACKET_FOOT, right=middle + half, top=BOARD_UNDER)
            path = tag(rail.plan, f"headrail.{field}.{index}")
            yield rectangle(box, Layer.HEADRAIL, LineKind.VISIBLE, path)
            yield Text(
                at=Point(middle, BRACKET_MARK),
                words=bare(mark, rail.system),
                anchor=Anchor.MIDDLE,
                backed=True,
                layer=Layer.HEADRAIL,
                kind=LineKind.THIN,
                tag=path,
            )


def _tube(rail: Rail) -> Iterator[AnyElement]:
    """Draw the tube with its cut length."""
    ends = (rail.along_tube(Length(0)), rail.along_tube(rail.headrail.tube_cut.value))
    path = tag(rail.plan, "headrail.tube_cut")
    yield rectangle(rail.between(*ends, -TUBE_HALF, TUBE_HALF), Layer.TUBE, LineKind.VISIBLE, path)
    yield Circle(centre=Point(ends[0], -TUBE_HALF), radius=ORIGIN_RADIUS, layer=Layer.SIZES)


def _cord(rail: Rail, line: CordLine) -> Iterator[AnyElement]:
    """Draw one cord: its clip, the band its wraps take, and where it comes down."""
    start, end = rail.along_tube(line.band_start.value), rail.along_tube(line.band_end.value)
    clip, column = rail.along_tube(line.clip.value), rail.along_tube(line.column.value)
    band = rail.between(start, end, -BAND_HALF, BAND_HALF)
    yield Hatch(outline=corners(band), layer=Layer.CORDS, kind=LineKind.THIN, degrees=90.0, gap=0.7)
    yield rectangle(band, Layer.CORDS, LineKind.THIN)
    box = rail.between(clip - CLIP_WIDTH / 2, clip + CLIP_WIDTH / 2, -CLIP_HALF, CLIP_HALF)
    yield Hatch(outline=corners(box), layer=Layer.CORDS, kind=LineKind.THIN, gap=0.3)
    yield rectangle(box, Layer.CORDS, LineKind.VISIBLE)
    foot = Point(column, COLUMN_FOOT + NUMBER_RADIUS)
    yield Line(start=Point(end, -BAND_HALF), end=foot, layer=Layer.CORDS, kind=LineKind.THIN)
    yield Circle(
        centre=Point(column, COLUMN_FOOT),
        radius=NUMBER_RADIUS,
        layer=Layer.COLUMNS,
        kind=LineKind.THIN,
    )
    yield Text(
        at=Point(column, COLUMN_FOOT),
        words=str(line.number),
        size=Lettering.NOTE,
        anchor=Anchor.MIDDLE,
        layer=Layer.COLUMNS,
        kind=LineKind.THIN,
    )


def _ends(rail: Rail) -> Iterator[AnyElement]:
    """Name what sits at each end of the tube, and the end that marks are measured from."""
    word = drive_name(rail)
    side = rail.headrail.spring_side.value
    at_right = (side == "right") == (rail.view is View.ROOM)
    for right in (False, True):
        driven = right == at_right
        edge = SIDE_GUTTER + rail.board + 1.5 if right else SIDE_GUTTER - 1.5
        yield Text(
            at=Point(edge, 0.0),
            words=word if driven else "idle end",
            size=Lettering.FIGURE if driven else Lettering.NOTE,
            strong=driven,
            anchor=Anchor.START if right else Anchor.END,
            layer=Layer.HEADRAIL,
            kind=LineKind.THIN,
            tag=tag(rail.plan, "headrail.spring_side") if driven else None,
        )
