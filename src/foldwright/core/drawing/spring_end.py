"""The headrail seen from outside at the spring end: which way it turns, and why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.blank import blank
from foldwright.core.drawing.frame import Frame, Gutters, fit, with_gutters
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Arc,
    Box,
    Circle,
    Drawing,
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
from foldwright.core.facts.records import Board, Bracket, Tube
from foldwright.core.lift.choices import LiftKind
from foldwright.core.measure.opening import Face
from foldwright.core.quantity.rounding import System
from foldwright.core.rig.headrail import Headrail

NAME = "spring-end"
CORNER = Frame(width=62.0, height=52.0)
GUTTERS = Gutters(left=14.0, bottom=10.5, right=14.0, top=6.0)
HANGING_BELOW_TUBE = 0.45  # of the tube's diameter: how far cord and cloth are drawn
ARROW_RADIUS = 0.62  # of the tube's radius
ARROW_FROM, ARROW_TO = 215.0, -35.0  # over the top, clockwise
SIDE_NAME_OFF = 8.0  # of paper, from the middle at least
NOTE_LINES = (3.3, 7.9)  # of paper, under the cloth


@dataclass(frozen=True, kw_only=True, slots=True)
class _Scene:
    """All that the parts of this view look at; x towards the right of who stands at this end."""

    plan: ShadePlan
    rail: Headrail
    board: Board
    bracket: Bracket
    tube: Tube
    scale: float

    @property
    def room_is_right(self) -> bool:
        """Tell whether the room lies at the right: so it does for who looks in at the left end."""
        return self.rail.spring_side.value == "left"

    def towards(self, face: Face) -> int:
        """Give the direction of a face of the shade: 1 to the right, -1 to the left."""
        return 1 if (face is Face.ROOM) == self.room_is_right else -1

    @property
    def half_board(self) -> float:
        return self.board.depth.in_millimetres / 2

    @property
    def radius(self) -> float:
        return self.tube.outside.in_millimetres / 2

    @property
    def foot(self) -> float:
        centre = self.bracket.tube_centre_below_board.in_millimetres
        return -centre - self.radius * (1 + 2 * HANGING_BELOW_TUBE)

    @property
    def centre(self) -> Point:
        return Point(0.0, -self.bracket.tube_centre_below_board.in_millimetres)

    @property
    def box(self) -> Box:
        half = max(self.half_board, self.radius)
        return Box(left=-half, bottom=self.foot, right=half, top=0.0)


def spring_end(plan: ShadePlan, system: System, frame: Frame = CORNER) -> Drawing:  # noqa: ARG001 - every view takes the reader's system
    """Draw board and tube seen from outside at the spring end, with the turning as it rises.

    Takes: the plan; the reader's system; the frame to fit, in millimetres of paper.

    Gives: the drawing; without headrail, board, bracket and tube, a sentence that asks for them.

    Source: derived here (who stands at the right end has the room at the left hand).

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> spring_end(ShadePlan(spec=ShadeSpec(tag="1")), System.INCH).title
    'Spring end'
    """
    end = _end_name(plan)
    chosen = plan.chosen
    if (
        plan.headrail is None
        or chosen.board is None
        or chosen.bracket is None
        or chosen.tube is None
    ):
        missing = "Nothing to draw yet: board, bracket and tube must be chosen first."
        seen_from = f"at the {end} end"
        return blank(
            name=NAME, title=end.capitalize() + " end", seen_from=seen_from, missing=missing
        )
    scene = _Scene(
        plan=plan,
        rail=plan.headrail,
        board=chosen.board,
        bracket=chosen.bracket,
        tube=chosen.tube,
        scale=1.0,
    )
    scale = fit(scene.box, frame, GUTTERS)
    scene = replace(scene, scale=scale)
    side = plan.headrail.spring_side.value
    return Drawing(
        name=NAME,
        title=f"{end.capitalize()} end",
        seen_from=f"at the {end} end, the {side} one from the room",
        description=_describe(scene, end),
        extent=with_gutters(scene.box, GUTTERS, scale),
        scale=scale,
        elements=tuple(_elements(scene, end)),
    )


def _end_name(plan: ShadePlan) -> str:
    """Name the end after what sits in it."""
    return "spring" if plan.spec.lift.kind in {LiftKind.SPRING, None} else "control"


def _elements(scene: _Scene, end: str) -> Iterator[AnyElement]:
    """Draw the board, the tube with its turning, cord and cloth, and name the sides."""
    thickness = scene.board.thickness.in_millimetres
    half = scene.half_board
    board = Box(left=-half, bottom=-thickness, right=half, top=0.0)
    yield Hatch(outline=corners(board), layer=Layer.BOARD, kind=LineKind.THIN)
    yield rectangle(board, Layer.BOARD, LineKind.VISIBLE)
    yield Circle(centre=scene.centre, radius=scene.radius, layer=Layer.TUBE)
    yield _turning(scene)
    yield from _hanging(scene)
    yield from _words(scene, end)


def _turning(scene: _Scene) -> Arc:
    """Show the way the tube turns while the shade rises."""
    clockwise = scene.rail.wind_direction.value == "clockwise"
    first, last = (ARROW_FROM, ARROW_TO) if clockwise else (180 - ARROW_FROM, 180 - ARROW_TO)
    return Arc(
        centre=scene.centre,
        radius=ARROW_RADIUS * scene.radius,
        from_degrees=first,
        to_degrees=last,
        reverse=clockwise,
        arrow=True,
        layer=Layer.TUBE,
        tag=tag(scene.plan, "headrail.wind_direction"),
    )


def _hanging(scene: _Scene) -> Iterator[AnyElement]:
    """Hang the cord from its side of the tube and the cloth from its edge of the board."""
    mount = scene.plan.spec.mount
    cord = scene.towards(mount.cord_side) * scene.radius
    cloth = scene.towards(mount.board_edge) * scene.half_board
    yield Line(
        start=Point(cord, scene.centre.y),
        end=Point(cord, scene.foot),
        layer=Layer.CORDS,
        kind=LineKind.THIN,
    )
    yield Line(start=Point(cloth, 0.0), end=Point(cloth, scene.foot), layer=Layer.CLOTH)
    for words, across in (("cord", cord), ("cloth", cloth)):
        sign = 1 if across > 0 else -1
        inward = -1 if words == "cord" else 1
        yield Text(
            at=Point(across + sign * inward * scene.scale, scene.foot + 2.0 * scene.scale),
            words=words,
            size=Lettering.NOTE,
            anchor=Anchor.START if sign * inward > 0 else Anchor.END,
            layer=Layer.NOTES,
            kind=LineKind.THIN,
        )


def _words(scene: _Scene, end: str) -> Iterator[AnyElement]:
    """Name the room and the window, the end, and the turning."""
    for words, face in (("Room", Face.ROOM), ("Window", Face.WINDOW)):
        sign = scene.towards(face)
        yield Text(
            at=Point(sign * max(scene.half_board, SIDE_NAME_OFF * scene.scale), 4.0 * scene.scale),
            words=words,
            size=Lettering.NOTE,
            anchor=Anchor.MIDDLE,
            strong=True,
            layer=Layer.NOTES,
            kind=LineKind.THIN,
        )
    turning = scene.rail.wind_direction.value
    lines = (
        (f"Rises {turning}", Lettering.FIGURE, tag(scene.plan, "headrail.wind_direction")),
        (f"Seen at the {end} end", Lettering.NOTE, None),
    )
    for (words, size, its_tag), below in zip(lines, NOTE_LINES, strict=True):
        yield Text(
            at=Point(0.0, scene.foot - below * scene.scale),
            words=words,
            size=size,
            strong=size is Lettering.FIGURE,
            anchor=Anchor.MIDDLE,
            layer=Layer.NOTES,
            kind=LineKind.THIN,
            tag=its_tag,
        )


def _describe(scene: _Scene, end: str) -> str:
    """Say in sentences what the drawing shows."""
    mount, side = scene.plan.spec.mount, scene.rail.spring_side.value
    return (
        f"Looking in at the {end} end, the {side} one as seen from the room: the tube turns "
        f"{scene.rail.wind_direction.value} as the shade rises. Cords leave the tube on the "
        f"{mount.cord_side.value} side, the cloth leaves the {mount.board_edge.value} edge "
        "of the board."
    )
