"""The shade cut from front to back: headrail, tube, cord, rings and the hanging folds."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.layout import Layout
from foldwright.core.drawing.blank import blank
from foldwright.core.drawing.folding import Hang, hang, rod_places, stacked_pitch
from foldwright.core.drawing.frame import Frame, Gutters, fit, with_gutters
from foldwright.core.drawing.loops import loops, on_loop
from foldwright.core.drawing.model import (
    Along,
    Anchor,
    AnyElement,
    Box,
    Circle,
    Dimension,
    Drawing,
    Hatch,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Polyline,
    Text,
)
from foldwright.core.drawing.shapes import corners, rectangle
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.valance import above_shade, flap_in_section, valance_in_section
from foldwright.core.drawing.words import in_full
from foldwright.core.measure.opening import Face, MountPlace
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System

NAME = "section"
TITLE = "Side section"
SEEN_FROM = "from the side, room at the right"
BESIDE_ELEVATION = Frame(width=90.0, height=200.0)
GUTTERS = Gutters(left=14.0, bottom=21.0, right=12.0, top=14.0)
GREATEST_LANE, SPREAD = 1.7, 38.0  # of paper: one limb of a fold, all limbs together
REST = 1.0  # of paper: the cloth lies this far before its rings
RING_RADIUS = 0.7
ROD_RADIUS = 0.6
WALL_WIDTH = 4.0
TAPE_THICK = 1.4  # of paper
SIZE_LINE_OFF = 9.0
FULLY_RAISED_OFF, FULLY_RAISED_ABOVE = 3.5, 3.0
NOTE_LINES = (7.0, 12.5, 18.0)  # of paper: below the shade


@dataclass(frozen=True, kw_only=True, slots=True)
class _Scene:
    """All that the parts of this view look at; x runs from the cords towards the room."""

    plan: ShadePlan
    layout: Layout
    hang: Hang
    scale: float
    system: System

    @property
    def lane(self) -> float:
        limbs = 2 * len(self.hang.panels) + 1
        return min(GREATEST_LANE, SPREAD / limbs) * self.scale

    @property
    def rest(self) -> float:
        return REST * self.scale

    @property
    def board(self) -> Box:
        return _board(self.plan, self.hang.top, self.rest)

    @property
    def room_end(self) -> float:
        return self.rest + self.lane * (2 * len(self.hang.panels) + 1)


def side_section(
    plan: ShadePlan, raise_share: float, system: System, frame: Frame = BESIDE_ELEVATION
) -> Drawing:
    """Draw the shade in section at any raise, heights to scale.

    Takes: the plan; the raise as a share of the design raise, 0 to 1; the reader's
    system; the frame to fit, in millimetres of paper.

    Gives: the drawing; without a layout, a sentence that asks for it.

    Holds for: shades of limp cloth; folds are spread out across, and cut at a column.

    Source: derived here; line kinds iso-128.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> side_section(ShadePlan(spec=ShadeSpec(tag="1")), 0.0, System.INCH).description
    'Nothing to draw yet: the rows must be laid out first.'
    """
    if plan.size is None or plan.layout is None:
        missing = "Nothing to draw yet: the rows must be laid out first."
        return blank(name=NAME, title=TITLE, seen_from=SEEN_FROM, missing=missing)
    drop = plan.size.drop.value.in_millimetres
    pitch = stacked_pitch(plan)
    hung = hang(plan.layout, drop_mm=drop, pitch_mm=pitch, raise_share=raise_share)
    board = _board(plan, drop, 0.0)
    whole = Box(left=min(board.left, 0.0), bottom=0.0, right=max(board.right, 0.0), top=drop)
    edges = Gutters(
        left=GUTTERS.left, bottom=GUTTERS.bottom, right=GUTTERS.right + SPREAD, top=GUTTERS.top
    )
    scale = fit(whole, frame, edges)
    scene = _Scene(plan=plan, layout=plan.layout, hang=hung, scale=scale, system=system)
    return Drawing(
        name=NAME,
        title=TITLE,
        seen_from=SEEN_FROM,
        description=_describe(scene),
        extent=with_gutters(whole, edges, scale),
        scale=scale,
        elements=tuple(_elements(scene)),
    )


def _board(plan: ShadePlan, drop: float, rest: float) -> Box:
    """Place the board so that the cloth leaves the edge that the mount asks for."""
    board, rail = plan.chosen.board, plan.headrail
    thickness = board.thickness.in_millimetres if board else 0.0
    depth = board.depth.in_millimetres if board else 0.0
    if rail is not None and rail.board_depth is not None:
        depth = rail.board_depth.value.in_millimetres
    left = rest - depth if plan.spec.mount.board_edge is Face.ROOM else rest
    return Box(left=left, bottom=drop - thickness, right=left + depth, top=drop)


def _elements(scene: _Scene) -> Iterator[AnyElement]:
    """Draw from the wall to the room."""
    yield from _wall(scene)
    yield from _headrail(scene)
    yield from _cord(scene)
    yield from _cloth(scene)
    yield from _rods(scene)
    yield from _bar(scene)
    yield from flap_in_section(scene.plan, scene.board)
    yield from valance_in_section(scene.plan, scene.board, _front(scene))
    yield from _raised_size(scene)
    yield from _notes(scene)


def _wall(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the wall behind an outside mount, and name the two sides."""
    left = scene.board.left
    if scene.plan.spec.mount.place is MountPlace.OUTSIDE:
        face = Box(left=left - WALL_WIDTH * scene.scale, bottom=0.0, right=left, top=scene.hang.top)
        yield Hatch(outline=corners(face), layer=Layer.WINDOW, kind=LineKind.THIN, degrees=-45.0)
        yield Line(start=Point(left, face.bottom), end=Point(left, face.top), layer=Layer.WINDOW)
    height = scene.hang.top + NOTE_LINES[0] * scene.scale
    yield _note("Window", Point(min(left, 0.0), height), Anchor.END, scene)
    yield _note("Room", Point(max(scene.board.right, 0.0), height), Anchor.START, scene)


def _note(words: str, at: Point, anchor: Anchor, scene: _Scene) -> Text:
    """Write a small note a little clear of its place."""
    shift = {Anchor.START: 1.0, Anchor.MIDDLE: 0.0, Anchor.END: -1.0}[anchor] * scene.scale
    return Text(
        at=Point(at.x + shift, at.y),
        words=words,
        size=Lettering.NOTE,
        anchor=anchor,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _headrail(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the board cut through, and the tube with its wraps."""
    if scene.plan.chosen.board is not None:
        yield Hatch(outline=corners(scene.board), layer=Layer.BOARD, kind=LineKind.THIN)
        yield rectangle(scene.board, Layer.BOARD, LineKind.VISIBLE)
    yield from _tape(scene)
    tube = scene.plan.chosen.tube
    centre = _tube_centre(scene)
    if tube is None or centre is None:
        return
    bare = tube.outside.in_millimetres / 2
    yield Circle(centre=centre, radius=bare, layer=Layer.TUBE)
    yield Circle(centre=centre, radius=_wound(scene, bare), layer=Layer.CORDS, kind=LineKind.THIN)


def _tape(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the tape between the edge of the board and the cloth, wider than it is."""
    tape = scene.layout.tape
    if tape is None:
        return
    deep, thick = tape.width.value.in_millimetres, TAPE_THICK * scene.scale
    body = Box(
        left=scene.rest - thick / 2,
        bottom=scene.hang.top - deep,
        right=scene.rest + thick / 2,
        top=scene.hang.top,
    )
    its_tag = tag(scene.plan, "layout.tape.width")
    yield Hatch(outline=corners(body), layer=Layer.TAPE, kind=LineKind.THIN, degrees=-45, gap=0.5)
    yield rectangle(body, Layer.TAPE, LineKind.THIN, its_tag)


def _tube_centre(scene: _Scene) -> Point | None:
    """Put the tube under the middle of the board."""
    bracket = scene.plan.chosen.bracket
    if bracket is None or scene.plan.chosen.tube is None:
        return None
    below = bracket.tube_centre_below_board.in_millimetres
    return Point((scene.board.left + scene.board.right) / 2, scene.hang.top - below)


def _wound(scene: _Scene, bare: float) -> float:
    """Give the radius over the wraps: one layer of cord, or tape that builds up."""
    cord, balance = scene.plan.chosen.cord, scene.plan.balance
    if cord is not None:
        return bare + cord.diameter.in_millimetres
    if balance is None:
        return bare
    low, high = balance.arm_lowered.value, balance.arm_raised.value
    travel = scene.layout.travel.value.in_millimetres
    share = scene.hang.raised_by / travel if travel else 0.0
    return max(bare, low.in_millimetres + (high - low).in_millimetres * share)


def _cord(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the cord from the tube to the top ring and down to the lowest, and every ring."""
    rows = scene.hang.rows
    points = [Point(0.0, rows[-1]), Point(0.0, rows[0])]
    centre, tube = _tube_centre(scene), scene.plan.chosen.tube
    if centre is not None and tube is not None:
        side = 1 if scene.plan.spec.mount.cord_side is Face.ROOM else -1
        wound = _wound(scene, tube.outside.in_millimetres / 2)
        points.insert(0, Point(centre.x + side * wound, centre.y))
    yield Polyline(points=tuple(points), layer=Layer.CORDS, kind=LineKind.THIN)
    for height in rows:
        yield Circle(
            centre=Point(0.0, height),
            radius=RING_RADIUS * scene.scale,
            layer=Layer.ROWS,
            kind=LineKind.THIN,
        )


def _cloth(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the cloth in one line from the board down through all panels to the hem."""
    path = _path(scene)
    hem = Point(scene.rest, scene.hang.hem)
    yield Polyline(points=(*path, hem), layer=Layer.CLOTH)


def _path(scene: _Scene) -> tuple[Point, ...]:
    return loops(scene.hang.panels, lane=scene.lane, rest=scene.rest)


def _front(scene: _Scene) -> float:
    """Give how far the folds reach into the room as drawn, and a little more."""
    return max(point.x for point in _path(scene)) + REST * scene.scale


def _rods(scene: _Scene) -> Iterator[AnyElement]:
    """Draw every rod cut through, where it lies on the cloth."""
    rod = scene.plan.chosen.rod
    thick = rod.diameter.in_millimetres / 2 if rod else 0.0
    radius = max(thick, ROD_RADIUS * scene.scale)
    for index, (panel, arc) in enumerate(rod_places(scene.layout)):
        centre = Point(scene.rest, scene.hang.rods[index])
        if panel is not None:
            centre = on_loop(scene.hang.panels, panel, arc, lane=scene.lane, rest=scene.rest)
        path = tag(scene.plan, f"layout.rows.rod_marks.{index}")
        yield Circle(centre=centre, radius=radius, filled=True, layer=Layer.RODS, tag=path)


def _bar(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the bottom bar cut through, in the hem behind the face."""
    bar = scene.plan.chosen.bar
    if bar is None:
        return
    width = max(bar.thickness.in_millimetres, REST * scene.scale / 2)
    body = Box(
        left=scene.rest - width,
        bottom=scene.hang.hem,
        right=scene.rest,
        top=scene.hang.hem + bar.width.in_millimetres,
    )
    yield Hatch(outline=corners(body), layer=Layer.BAR, kind=LineKind.THIN, gap=0.6)
    yield rectangle(body, Layer.BAR, LineKind.THIN)


def _raised_size(scene: _Scene) -> Iterator[AnyElement]:
    """Show how much is left hanging when the shade is fully raised."""
    top = scene.hang.top
    edge = top - scene.layout.stack.raised_size.value.in_millimetres
    right = scene.room_end
    yield Line(
        start=Point(scene.rest, edge),
        end=Point(right, edge),
        layer=Layer.SIZES,
        kind=LineKind.ELSEWHERE,
    )
    yield Dimension(
        start=Point(right, edge),
        end=Point(scene.board.right, top),
        line_at=right + SIZE_LINE_OFF * scene.scale,
        along=Along.UP,
        words=in_full(scene.layout.stack.raised_size, scene.system),
        layer=Layer.SIZES,
        kind=LineKind.THIN,
        tag=tag(scene.plan, "layout.stack.raised_size"),
    )
    yield _note(
        "Fully raised",
        Point(
            right + FULLY_RAISED_OFF * scene.scale,
            top + above_shade(scene.plan) + FULLY_RAISED_ABOVE * scene.scale,
        ),
        Anchor.END,
        scene,
    )


def _notes(scene: _Scene) -> Iterator[AnyElement]:
    """Say what the drawing cannot show: the depth, the wraps, and that folds are spread."""
    depth = in_full(scene.layout.stack.depth, scene.system)
    lines = [f"Stack {depth} deep", _wraps(scene), _cut_at(scene)]
    tags = [tag(scene.plan, "layout.stack.depth"), None, None]
    below = iter(NOTE_LINES)
    for words, its_tag in zip(lines, tags, strict=True):
        if words:
            yield Text(
                at=Point(scene.board.left, -next(below) * scene.scale),
                words=words,
                size=Lettering.FIGURE if its_tag else Lettering.NOTE,
                layer=Layer.NOTES,
                kind=LineKind.THIN,
                tag=its_tag,
            )


def _cut_at(scene: _Scene) -> str:
    return "Cut at a column, folds spread" if scene.layout.swag else "Folds drawn spread out"


def _wraps(scene: _Scene) -> str:
    """Count the wraps on the tube at this raise."""
    rail = scene.plan.headrail
    travel = scene.layout.travel.value.in_millimetres
    if rail is None or not travel:
        return ""
    share = scene.hang.raised_by / travel
    wraps = rail.safety_wraps.value + share * rail.travel_wraps.value
    return f"{wraps:.1f} wraps on the tube"


def _describe(scene: _Scene) -> str:
    """Say in sentences what the drawing shows."""
    raised = print_length(Length.mm(str(scene.hang.raised_by)), scene.system)
    folded = sum(panel.folded for panel in scene.hang.panels)
    full = in_full(scene.layout.stack.raised_size, scene.system)
    depth = in_full(scene.layout.stack.depth, scene.system)
    return (
        f"The shade cut from front to back, raised by {raised}; {folded} panels hang as loops. "
        f"Fully raised it hangs {full} down from the board and is {depth} deep."
    )
