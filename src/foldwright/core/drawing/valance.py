"""A valance before the head of the shade, from the room and in section."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Box,
    Layer,
    Line,
    LineKind,
    Point,
    Polyline,
    Rectangle,
    Text,
)
from foldwright.core.drawing.shapes import rectangle
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import in_full
from foldwright.core.quantity.rounding import System


def valance_before(
    plan: ShadePlan, system: System, *, width: float, top: float
) -> Iterator[AnyElement]:
    """Draw a valance as it hides the head of the shade from the room.

    Takes: the plan; the reader's system; the finished width and the height of the shade's top,
    in millimetres.

    Gives: a rectangle that covers what is drawn before it; nothing without a valance.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> plan = ShadePlan(spec=ShadeSpec(tag="1"))
    >>> list(valance_before(plan, System.INCH, width=900.0, top=1500.0))
    []
    """
    valance = plan.layout.valance if plan.layout else None
    if valance is None:
        return
    wide, deep = valance.width.value.in_millimetres, valance.depth.value.in_millimetres
    over, its_tag = top + above_shade(plan), tag(plan, "layout.valance.depth")
    yield Rectangle(
        corner=Point((width - wide) / 2, over - deep),
        width=wide,
        height=deep,
        covering=True,
        layer=Layer.VALANCE,
        tag=its_tag,
    )
    yield Text(
        at=Point(width / 2, over - deep / 2),
        words=f"valance {in_full(valance.depth, system)} deep",
        anchor=Anchor.MIDDLE,
        layer=Layer.VALANCE,
        kind=LineKind.THIN,
        tag=its_tag,
    )


def valance_in_section(plan: ShadePlan, board: Box, front: float) -> Iterator[AnyElement]:
    """Draw a valance cut from front to back, with the board that carries it where it has one.

    Takes: the plan; the shade's board; how far the cloth reaches into the room, in millimetres.

    Gives: the cloth from the back of its board over the front and down; nothing without one.

    Holds for: folds that are spread out across, so that the valance stands out as far as they.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> empty = Box(left=0.0, bottom=0.0, right=1.0, top=1.0)
    >>> list(valance_in_section(ShadePlan(spec=ShadeSpec(tag="1")), empty, 2.0))
    []
    """
    valance = plan.layout.valance if plan.layout else None
    if valance is None:
        return
    deep, over = valance.depth.value.in_millimetres, board.top + above_shade(plan)
    edge = max(front, board.right)
    if valance.board_depth is not None:
        carrier = Box(left=board.left, bottom=board.top, right=edge, top=over)
        yield rectangle(carrier, Layer.VALANCE, LineKind.VISIBLE)
    yield Polyline(
        points=(Point(board.left, over), Point(edge, over), Point(edge, over - deep)),
        layer=Layer.VALANCE,
        tag=tag(plan, "layout.valance.depth"),
    )


def above_shade(plan: ShadePlan) -> float:
    """Give how far a valance on a board of its own begins above the shade.

    Takes: the plan.

    Gives: millimetres: the thickness of its board, which lies on the shade's.

    Source: common practice.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> above_shade(ShadePlan(spec=ShadeSpec(tag="1")))
    0.0
    """
    valance, board = plan.layout.valance if plan.layout else None, plan.chosen.board
    if valance is None or valance.board_depth is None or board is None:
        return 0.0
    return board.thickness.in_millimetres


def flap_in_section(plan: ShadePlan, board: Box) -> Iterator[AnyElement]:
    """Draw the flap that hangs from the end of the board, behind the section.

    Takes: the plan; the shade's board.

    Gives: a dashed outline; nothing without flaps.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> empty = Box(left=0.0, bottom=0.0, right=1.0, top=1.0)
    >>> list(flap_in_section(ShadePlan(spec=ShadeSpec(tag="1")), empty))
    []
    """
    length = plan.layout.flap_length if plan.layout else None
    if length is None:
        return
    bottom, its_tag = board.top - length.value.in_millimetres, tag(plan, "layout.flap_length")
    for across in (board.left, board.right):
        yield Line(
            start=Point(across, board.top),
            end=Point(across, bottom),
            layer=Layer.VALANCE,
            kind=LineKind.HIDDEN,
            tag=its_tag,
        )
    yield Line(
        start=Point(board.left, bottom),
        end=Point(board.right, bottom),
        layer=Layer.VALANCE,
        kind=LineKind.HIDDEN,
        tag=its_tag,
    )
