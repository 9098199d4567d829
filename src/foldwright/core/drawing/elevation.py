"""The shade seen from the room, to scale, at any raise."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import RodPocket
from foldwright.core.drawing.bands import draw_bands
from foldwright.core.drawing.blank import blank
from foldwright.core.drawing.face import Face as ClothFace
from foldwright.core.drawing.face import draw_face, draw_outline, face_of
from foldwright.core.drawing.folding import Hang, hang, stacked_pitch
from foldwright.core.drawing.frame import SCREEN, Frame, Gutters, fit, with_gutters
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
from foldwright.core.drawing.surround import Surround, draw_surround, surround
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.valance import valance_before
from foldwright.core.drawing.words import in_full
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import Face
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System

NAME = "elevation"
TITLE = "Elevation"
SEEN_FROM = "from the room"
GUTTERS = Gutters(left=13.0, bottom=13.0, right=15.0, top=16.0)
SIZE_LINE_OFF = 6.0  # from the thing to its dimension line
CAPTION_BELOW = 9.0
RING_RADIUS = 0.6
HANDLE_DROP = 4.0
HANDLE_RADIUS = 1.2
BAR_INSET = 0.8  # the bar lies in its pocket a little above the edge


@dataclass(frozen=True, kw_only=True, slots=True)
class _Scene:
    """All that the parts of this view look at."""

    plan: ShadePlan
    size: FinishedSize
    hang: Hang | None
    window: Surround | None
    scale: float
    system: System

    @property
    def width(self) -> float:
        return self.size.width.value.in_millimetres

    @property
    def drop(self) -> float:
        return self.size.drop.value.in_millimetres

    @property
    def lowest(self) -> float:
        return self.hang.lowest if self.hang else 0.0

    @property
    def cover(self) -> Box:
        return Box(left=0.0, bottom=self.lowest, right=self.width, top=self.drop)


def elevation(
    plan: ShadePlan, raise_share: float, system: System, frame: Frame = SCREEN
) -> Drawing:
    """Draw the shade to scale, seen from the room.

    Takes: the plan; the raise as a share of the design raise, 0 to 1; the reader's
    system; the frame to fit, in millimetres of paper.

    Gives: the drawing; without a finished size, a sentence that asks for it.

    Holds for: shades of limp cloth.

    Source: derived here; line kinds iso-128, dimensions iso-129.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> elevation(ShadePlan(spec=ShadeSpec(tag="1")), 0.0, System.INCH).description
    'Nothing to draw yet: give a finished width and drop, or measure the window.'
    """
    if plan.size is None:
        missing = "Nothing to draw yet: give a finished width and drop, or measure the window."
        return blank(name=NAME, title=TITLE, seen_from=SEEN_FROM, missing=missing)
    scene = _set_scene(plan, plan.size, raise_share, system, frame)
    return Drawing(
        name=NAME,
        title=TITLE,
        seen_from=SEEN_FROM,
        description=_describe(scene),
        extent=with_gutters(_whole(scene), GUTTERS, scene.scale),
        scale=scene.scale,
        elements=tuple(_elements(scene)),
    )


def _set_scene(
    plan: ShadePlan, size: FinishedSize, raise_share: float, system: System, frame: Frame
) -> _Scene:
    """Hang the shade before its window and find the scale."""
    drop = size.drop.value.in_millimetres
    hung = None
    if plan.layout is not None:
        pitch = stacked_pitch(plan)
        hung = hang(plan.layout, drop_mm=drop, pitch_mm=pitch, raise_share=raise_share)
    window = surround(plan, size)
    scene = _Scene(plan=plan, size=size, hang=hung, window=window, scale=1.0, system=system)
    scale = fit(_whole(scene), frame, GUTTERS)
    return _Scene(plan=plan, size=size, hang=hung, window=window, scale=scale, system=system)


def _whole(scene: _Scene) -> Box:
    """Give the box of shade and window, the same at every raise so that nothing jumps."""
    shade = Box(left=0.0, bottom=0.0, right=scene.width, top=scene.drop)
    return around([shade, scene.window.box] if scene.window else [shade])


def _elements(scene: _Scene) -> Iterator[AnyElement]:
    """Draw from the back to the front."""
    if scene.window is not None:
        yield from draw_surround(scene.window, scene.cover)
    yield from _headrail(scene)
    if scene.hang is not None:
        yield from _rings_and_cords(scene, scene.hang)
        yield from _rods(scene, scene.hang)
        yield from draw_face(_face(scene, scene.hang))
        yield from draw_bands(scene.plan, _face(scene, scene.hang))
        yield from _bar(scene, scene.hang)
        yield from _handle(scene)
        yield draw_outline(_face(scene, scene.hang))
    else:
        yield rectangle(scene.cover, Layer.CLOTH, LineKind.VISIBLE)
    yield from valance_before(scene.plan, scene.system, width=scene.width, top=scene.drop)
    yield from _sizes(scene)
    yield from _caption(scene)


def _headrail(scene: _Scene) -> Iterator[AnyElement]:
    """Draw board and tube: hidden where the cloth leaves the room edge of the board."""
    hidden = scene.plan.spec.mount.board_edge is Face.ROOM
    kind = LineKind.HIDDEN if hidden else LineKind.VISIBLE
    length = scene.size.board_length.value.in_millimetres
    left = (scene.width - length) / 2
    under_board = scene.drop
    if scene.plan.chosen.board is not None:
        under_board -= scene.plan.chosen.board.thickness.in_millimetres
        board = Box(left=left, bottom=under_board, right=left + length, top=scene.drop)
        yield rectangle(board, Layer.BOARD, kind, tag(scene.plan, "size.board_length"))
    yield from _tube(scene, left, kind)


def _tube(scene: _Scene, left: float, kind: LineKind) -> Iterator[AnyElement]:
    """Draw the tube where the headrail is worked out and its parts are chosen."""
    rail, tube, bracket = scene.plan.headrail, scene.plan.chosen.tube, scene.plan.chosen.bracket
    if rail is None or tube is None or bracket is None:
        return
    centre = scene.drop - bracket.tube_centre_below_board.in_millimetres
    half = tube.outside.in_millimetres / 2
    # the rail's marks run from the left as seen from the back: from the right in this view
    right = left + (rail.board_length.value - rail.tube_start.value).in_millimetres
    start = right - rail.tube_cut.value.in_millimetres
    body = Box(left=start, bottom=centre - half, right=right, top=centre + half)
    yield rectangle(body, Layer.TUBE, kind, tag(scene.plan, "headrail.tube_cut"))


def _rings_and_cords(scene: _Scene, hung: Hang) -> Iterator[AnyElement]:
    """Draw each cord from the headrail to the lowest ring, and a ring at every crossing."""
    assert scene.plan.layout is not None  # noqa: S101 - a shade that hangs is laid out
    bracket = scene.plan.chosen.bracket
    below = bracket.tube_centre_below_board.in_millimetres if bracket else 0.0
    face = _face(scene, hung)
    for index, mark in enumerate(scene.plan.layout.columns.marks):
        across = scene.width - mark.value.in_millimetres
        yield Line(
            start=Point(across, scene.drop - below),
            end=face.point(across, hung.rows[0]),
            layer=Layer.CORDS,
            kind=LineKind.HIDDEN,
            tag=tag(scene.plan, f"layout.columns.marks.{index}"),
        )
        for height in hung.rows:
            yield Circle(
                centre=face.point(across, height),
                radius=RING_RADIUS * scene.scale,
                layer=Layer.ROWS,
                kind=LineKind.THIN,
            )


def _rods(scene: _Scene, hung: Hang) -> Iterator[AnyElement]:
    """Draw rods across the shade: seen where their pockets stand to the room, else hidden."""
    pockets = scene.plan.layout.pockets if scene.plan.layout else None
    seen = pockets is not None and pockets.place is RodPocket.TO_THE_ROOM
    for index, height in enumerate(hung.rods):
        if seen and hung.covers(height):
            continue
        yield Line(
            start=Point(0.0, height),
            end=Point(scene.width, height),
            layer=Layer.RODS,
            kind=LineKind.VISIBLE if seen else LineKind.HIDDEN,
            tag=tag(scene.plan, f"layout.rows.rod_marks.{index}"),
        )


def _face(scene: _Scene, hung: Hang) -> ClothFace:
    assert scene.plan.layout is not None  # noqa: S101 - a shade that hangs is laid out
    return face_of(scene.plan.layout, hung, width=scene.width, scale=scene.scale)


def _bar(scene: _Scene, hung: Hang) -> Iterator[AnyElement]:
    """Draw the bottom bar in its pocket."""
    bar = scene.plan.chosen.bar
    if bar is None:
        return
    bottom = hung.hem + BAR_INSET * scene.scale
    inset = BAR_INSET * scene.scale
    body = Box(
        left=inset,
        bottom=bottom,
        right=scene.width - inset,
        top=bottom + bar.width.in_millimetres,
    )
    yield rectangle(body, Layer.BAR, LineKind.HIDDEN)


def _handle(scene: _Scene) -> Iterator[AnyElement]:
    """Hang the pull handle on the lowest edge."""
    if scene.plan.headrail is None:
        return
    across = scene.width - scene.plan.headrail.handle.value.in_millimetres
    bottom = scene.lowest - HANDLE_DROP * scene.scale
    radius = HANDLE_RADIUS * scene.scale
    handle = tag(scene.plan, "headrail.handle")
    yield Line(
        start=Point(across, scene.lowest),
        end=Point(across, bottom + radius),
        layer=Layer.HANDLE,
        tag=handle,
    )
    yield Circle(centre=Point(across, bottom), radius=radius, layer=Layer.HANDLE, tag=handle)


def _sizes(scene: _Scene) -> Iterator[AnyElement]:
    """Write the two finished sizes largest, and how far the shade is raised."""
    whole = _whole(scene)
    off = SIZE_LINE_OFF * scene.scale
    yield Dimension(
        start=Point(0.0, scene.drop),
        end=Point(scene.width, scene.drop),
        line_at=whole.top + off,
        along=Along.ACROSS,
        words=in_full(scene.size.width, scene.system),
        size=Lettering.GREAT,
        strong=True,
        layer=Layer.SIZES,
        kind=LineKind.THIN,
        tag=tag(scene.plan, "size.width"),
    )
    yield Dimension(
        start=Point(scene.width, 0.0),
        end=Point(scene.width, scene.drop),
        line_at=whole.right + off + Lettering.GREAT.value * scene.scale,
        along=Along.UP,
        words=in_full(scene.size.drop, scene.system),
        size=Lettering.GREAT,
        strong=True,
        layer=Layer.SIZES,
        kind=LineKind.THIN,
        tag=tag(scene.plan, "size.drop"),
    )
    if scene.hang is not None and scene.hang.raised_by > 0:
        yield from _raised_by(scene, whole.left - off)


def _raised_by(scene: _Scene, line_at: float) -> Iterator[AnyElement]:
    """Show where the bottom edge was, and how far it has come up."""
    raised = scene.hang.raised_by if scene.hang else 0.0
    yield Line(
        start=Point(0.0, 0.0),
        end=Point(scene.width, 0.0),
        layer=Layer.MARKER,
        kind=LineKind.ELSEWHERE,
    )
    yield Dimension(
        start=Point(0.0, 0.0),
        end=Point(0.0, raised),
        line_at=line_at,
        along=Along.UP,
        words=print_length(Length.mm(str(raised)), scene.system),
        layer=Layer.MARKER,
        kind=LineKind.THIN,
    )


def _caption(scene: _Scene) -> Iterator[AnyElement]:
    """Say whence the shade is seen."""
    below = _whole(scene).bottom - CAPTION_BELOW * scene.scale
    yield Text(
        at=Point(scene.width / 2, below),
        words=f"Seen {SEEN_FROM}",
        size=Lettering.NOTE,
        anchor=Anchor.MIDDLE,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _describe(scene: _Scene) -> str:
    """Say in sentences what the drawing shows."""
    width = in_full(scene.size.width, scene.system)
    drop = in_full(scene.size.drop, scene.system)
    sentences = [f"The shade seen {SEEN_FROM}, {width} wide and {drop} long."]
    if scene.hang is not None:
        raised = print_length(Length.mm(str(scene.hang.raised_by)), scene.system)
        folds = sum(panel.folded for panel in scene.hang.panels)
        sentences.append(f"Raised by {raised}; {folds} of {len(scene.hang.panels)} panels folded.")
    return " ".join(sentences)
