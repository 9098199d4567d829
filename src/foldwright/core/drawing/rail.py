"""The headrail from the room and from the back: lengths to scale, heights as is clearest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import Enum

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.blank import blank
from foldwright.core.drawing.frame import Frame, text_width
from foldwright.core.drawing.labels import levels
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Box,
    Circle,
    Drawing,
    Hatch,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Tag,
    Text,
)
from foldwright.core.drawing.shapes import corners, rectangle
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import UNIT_NOTES, bare, in_full
from foldwright.core.lift.choices import LiftKind
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.rig.headrail import CordLine, Headrail
from foldwright.core.why.figure import Figure

ACROSS_PAGE = Frame(width=186.0, height=60.0)
SIDE_GUTTER = 17.0  # names of the rows of marks
# Heights above the middle of the tube, in millimetres of paper.
TUBE_HALF, BAND_HALF, CLIP_HALF = 3.2, 3.9, 4.5
BOARD_UNDER, BOARD_TOP = 6.0, 12.0
BRACKET_FOOT = -5.0
BRACKET_MARK, TOP = 14.8, 17.6
COLUMN_FOOT = -10.5
NUMBER_RADIUS = 2.6
MARKS_FROM = -16.0
MARK_LINE = 5.0
ORIGIN_RADIUS = 0.9
CLIP_WIDTH = 1.6
CAPTION_LINE = 4.4
DRIVE_NAMES = {LiftKind.SPRING: "spring", LiftKind.CLUTCH: "clutch", LiftKind.MOTOR: "motor"}


class _View(Enum):
    """Whence the headrail is seen."""

    BACK = "from the back"
    ROOM = "from the room"


@dataclass(frozen=True, kw_only=True, slots=True)
class _Scene:
    """Leads from lengths along the board, from its left end seen from the back, to paper."""

    plan: ShadePlan
    rail: Headrail
    view: _View
    system: System
    scale: float
    tube_marks: bool

    @property
    def board(self) -> float:
        return self.rail.board_length.value.in_millimetres / self.scale

    def along_board(self, length: Length) -> float:
        place = length.in_millimetres / self.scale
        return SIDE_GUTTER + (place if self.view is _View.BACK else self.board - place)

    def along_tube(self, length: Length) -> float:
        return self.along_board(self.rail.tube_start.value + length)

    def between(self, first: float, second: float, bottom: float, top: float) -> Box:
        left, right = sorted((first, second))
        return Box(left=left, bottom=bottom, right=right, top=top)


def headrail_from_back(plan: ShadePlan, system: System, frame: Frame = ACROSS_PAGE) -> Drawing:
    """Draw the headrail seen from the back, with every mark along it.

    Brackets are marked from the board's left end, clips and cords from the tube's left
    end, both as seen from the back.

    Takes: the plan; the reader's system; the frame, in millimetres of paper.

    Gives: the drawing, in millimetres of paper; without a headrail, a sentence that asks for it.

    Source: derived here; line kinds iso-128, marks from a common origin iso-129.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> headrail_from_back(ShadePlan(spec=ShadeSpec(tag="1")), System.INCH).seen_from
    'from the back'
    """
    return _draw(plan, system, frame, _View.BACK, tube_marks=True)


def headrail_from_room(
    plan: ShadePlan, system: System, frame: Frame = ACROSS_PAGE, *, tube_marks: bool = True
) -> Drawing:
    """Draw the headrail seen from the room: the same marks from the same ends, mirrored.

    Takes: the plan; the reader's system; the frame, in millimetres of paper; whether the
    marks along the tube are written, which a sheet with both views needs only once.

    Gives: the drawing, in millimetres of paper; without a headrail, a sentence that asks for it.

    Source: derived here; line kinds iso-128, marks from a common origin iso-129.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> headrail_from_room(ShadePlan(spec=ShadeSpec(tag="1")), System.INCH).seen_from
    'from the room'
    """
    return _draw(plan, system, frame, _View.ROOM, tube_marks=tube_marks)


def _draw(
    plan: ShadePlan, system: System, frame: Frame, view: _View, *, tube_marks: bool
) -> Drawing:
    """Draw either view."""
    name, title = f"headrail-{view.value.replace(' ', '-')}", "Headrail"
    if plan.headrail is None:
        missing = "Nothing to draw yet: the headrail must be worked out first."
        return blank(name=name, title=title, seen_from=view.value, missing=missing)
    board = plan.headrail.board_length.value.in_millimetres
    scale = board / (frame.width - 2 * SIDE_GUTTER)
    scene = _Scene(
        plan=plan,
        rail=plan.headrail,
        view=view,
        system=system,
        scale=scale,
        tube_marks=tube_marks,
    )
    bottom = _marks_bottom(scene) - CAPTION_LINE
    return Drawing(
        name=name,
        title=title,
        seen_from=view.value,
        description=_describe(scene),
        extent=Box(left=0.0, bottom=bottom, right=frame.width, top=TOP),
        scale=1.0,
        elements=tuple(_elements(scene, bottom)),
    )


def _elements(scene: _Scene, bottom: float) -> Iterator[AnyElement]:
    """Draw the board, what hangs under it, and the marks."""
    yield from _board(scene)
    yield from _brackets(scene)
    yield from _tube(scene)
    for line in scene.rail.lines:
        yield from _cord(scene, line)
    yield from _ends(scene)
    yield from _marks(scene)
    middle = SIDE_GUTTER + scene.board / 2
    yield _note(_caption(scene), Point(middle, bottom + CAPTION_LINE / 2))


def _caption(scene: _Scene) -> str:
    """Say whence the headrail is seen, and from which end its marks are measured."""
    if not scene.tube_marks:
        return f"Seen {scene.view.value}"
    from_drive = scene.rail.spring_side.value == "right"
    end = _drive_name(scene) if from_drive else "idle"
    return (
        f"Seen {scene.view.value}. Tube marks from its {end} end, bracket marks from that end "
        "of the board."
    )


def _drive_name(scene: _Scene) -> str:
    """Name what turns the tube."""
    kind = scene.plan.spec.lift.kind
    return DRIVE_NAMES[kind] if kind else "drive"


def _board(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the board, and write on it how long board and tube are cut."""
    ends = (scene.along_board(Length(0)), scene.along_board(scene.rail.board_length.value))
    box = scene.between(*ends, BOARD_UNDER, BOARD_TOP)
    yield rectangle(box, Layer.BOARD, LineKind.VISIBLE)
    middle, height = (box.left + box.right) / 2, (BOARD_UNDER + BOARD_TOP) / 2
    for field, name, place, anchor in (
        ("board_length", "board", middle - 2.0, Anchor.END),
        ("tube_cut", "tube", middle + 2.0, Anchor.START),
    ):
        yield Text(
            at=Point(place, height),
            words=f"{name} {in_full(getattr(scene.rail, field), scene.system)}",
            anchor=anchor,
            strong=True,
            layer=Layer.BOARD,
            kind=LineKind.THIN,
            tag=tag(scene.plan, f"headrail.{field}"),
        )
    yield Circle(centre=Point(ends[0], BOARD_TOP), radius=ORIGIN_RADIUS, layer=Layer.SIZES)


def _brackets(scene: _Scene) -> Iterator[AnyElement]:
    """Draw brackets and cradles, each with its mark from the board's end."""
    record = scene.plan.chosen.bracket
    half = record.width.in_millimetres / scene.scale / 2 if record else CLIP_WIDTH / 2
    for field in ("bracket_marks", "cradle_marks"):
        for index, mark in enumerate(getattr(scene.rail, field)):
            middle = scene.along_board(mark.value)
            box = Box(left=middle - half, bottom=BRACKET_FOOT, right=middle + half, top=BOARD_UNDER)
            path = tag(scene.plan, f"headrail.{field}.{index}")
            yield rectangle(box, Layer.HEADRAIL, LineKind.VISIBLE, path)
            yield Text(
                at=Point(middle, BRACKET_MARK),
                words=bare(mark, scene.system),
                anchor=Anchor.MIDDLE,
                backed=True,
                layer=Layer.HEADRAIL,
                kind=LineKind.THIN,
                tag=path,
            )


def _tube(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the tube with its cut length."""
    ends = (scene.along_tube(Length(0)), scene.along_tube(scene.rail.tube_cut.value))
    path = tag(scene.plan, "headrail.tube_cut")
    yield rectangle(scene.between(*ends, -TUBE_HALF, TUBE_HALF), Layer.TUBE, LineKind.VISIBLE, path)
    yield Circle(centre=Point(ends[0], -TUBE_HALF), radius=ORIGIN_RADIUS, layer=Layer.SIZES)


def _cord(scene: _Scene, line: CordLine) -> Iterator[AnyElement]:
    """Draw one cord: its clip, the band its wraps take, and where it comes down."""
    start, end = scene.along_tube(line.band_start.value), scene.along_tube(line.band_end.value)
    clip, column = scene.along_tube(line.clip.value), scene.along_tube(line.column.value)
    band = scene.between(start, end, -BAND_HALF, BAND_HALF)
    yield Hatch(outline=corners(band), layer=Layer.CORDS, kind=LineKind.THIN, degrees=90.0, gap=0.7)
    yield rectangle(band, Layer.CORDS, LineKind.THIN)
    box = scene.between(clip - CLIP_WIDTH / 2, clip + CLIP_WIDTH / 2, -CLIP_HALF, CLIP_HALF)
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


def _ends(scene: _Scene) -> Iterator[AnyElement]:
    """Name what sits at each end of the tube, and the end that marks are measured from."""
    word = _drive_name(scene)
    side = scene.rail.spring_side.value
    at_right = (side == "right") == (scene.view is _View.ROOM)
    for right in (False, True):
        driven = right == at_right
        edge = SIDE_GUTTER + scene.board + 1.5 if right else SIDE_GUTTER - 1.5
        yield Text(
            at=Point(edge, 0.0),
            words=word if driven else "idle end",
            size=Lettering.FIGURE if driven else Lettering.NOTE,
            strong=driven,
            anchor=Anchor.START if right else Anchor.END,
            layer=Layer.HEADRAIL,
            kind=LineKind.THIN,
            tag=tag(scene.plan, "headrail.spring_side") if driven else None,
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Row:
    """One row of marks along the tube."""

    name: str
    figures: Sequence[Figure[Length]]
    tags: Sequence[Tag]
    strong: bool


def _rows(scene: _Scene) -> tuple[_Row, ...]:
    """List what is marked on the tube."""
    lines = scene.rail.lines if scene.tube_marks else ()
    return tuple(
        _Row(
            name=name,
            figures=[getattr(line, field) for line in lines],
            tags=[
                tag(scene.plan, f"headrail.lines.{index}.{field}") for index in range(len(lines))
            ],
            strong=field == "clip",
        )
        for name, field in (("clips", "clip"), ("cords", "column"))
        if lines
    )


def _levels(scene: _Scene, row: _Row) -> int:
    """Count the lines on which a row's marks stand clear of each other."""
    places = sorted(scene.along_tube(figure.value) for figure in row.figures)
    widest = max(text_width(bare(figure, scene.system), Lettering.FIGURE) for figure in row.figures)
    return levels(places, widest)


def _marks_bottom(scene: _Scene) -> float:
    """Find how far down the rows of marks reach, or the numbers where there are none."""
    if not scene.tube_marks:
        return COLUMN_FOOT - NUMBER_RADIUS
    return MARKS_FROM - MARK_LINE * (sum(_levels(scene, row) for row in _rows(scene)) - 0.5)


def _marks(scene: _Scene) -> Iterator[AnyElement]:
    """Write the rows of marks under the tube."""
    top = MARKS_FROM
    for row in _rows(scene):
        count = _levels(scene, row)
        yield Text(
            at=Point(0.0, top),
            words=row.name,
            size=Lettering.NOTE,
            layer=Layer.SIZES,
            kind=LineKind.THIN,
        )
        for index, (figure, its_tag) in enumerate(zip(row.figures, row.tags, strict=True)):
            yield Text(
                at=Point(scene.along_tube(figure.value), top - MARK_LINE * (index % count)),
                words=bare(figure, scene.system),
                anchor=Anchor.MIDDLE,
                strong=row.strong,
                layer=Layer.SIZES,
                kind=LineKind.THIN,
                tag=its_tag,
            )
        top -= MARK_LINE * count


def _note(words: str, at: Point) -> Text:
    """Write a small note, centred."""
    return Text(
        at=at,
        words=words,
        size=Lettering.NOTE,
        anchor=Anchor.MIDDLE,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _describe(scene: _Scene) -> str:
    """Say in sentences what the drawing shows."""
    board = in_full(scene.rail.board_length, scene.system)
    tube = in_full(scene.rail.tube_cut, scene.system)
    clips = ", ".join(bare(line.clip, scene.system) for line in scene.rail.lines)
    cords = ", ".join(bare(line.column, scene.system) for line in scene.rail.lines)
    return (
        f"The headrail seen {scene.view.value}: board {board}, tube {tube}. Spring or control at "
        f"the {scene.rail.spring_side.value}, seen from the room. From the tube's left end as seen "
        f"from the back: clips at {clips}; cords come down at {cords}. {UNIT_NOTES[scene.system]}."
    )
