"""The window behind the shade: its opening, casing and the first visible glass."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.model import AnyElement, Box, Layer, Line, LineKind, Point
from foldwright.core.drawing.shapes import behind
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import MountPlace, Opening
from foldwright.core.quantity.length import Length


@dataclass(frozen=True, kw_only=True, slots=True)
class Surround:
    """Outline and glass line of the window; x from the shade's left edge, y from its hem."""

    outline: tuple[Point, ...]  # closed: the opening, or outside it the casing
    glass_top: float | None

    @property
    def box(self) -> Box:
        """Give the box round the outline."""
        across = [point.x for point in self.outline]
        up = [point.y for point in self.outline]
        return Box(left=min(across), bottom=min(up), right=max(across), top=max(up))


def surround(plan: ShadePlan, size: FinishedSize) -> Surround | None:
    """Place the window behind the shade as seen from the room.

    Takes: the plan, for the measurements and the mount; its finished size.

    Gives: the opening of an inside mount or the casing of an outside mount; None while
    its width or height is not measured.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> from foldwright.core.why.making import measured
    >>> one = measured("size", Length.mm(900))
    >>> size = FinishedSize(width=one, drop=one, board_length=one)
    >>> surround(ShadePlan(spec=ShadeSpec(tag="1")), size) is None
    True
    """
    outline = (
        _casing(plan, size)
        if plan.spec.mount.place is MountPlace.OUTSIDE
        else _opening(plan.spec.opening, size)
    )
    if outline is None:
        return None
    glass = size.top_above_glass
    top = size.drop.value.in_millimetres
    return Surround(
        outline=outline, glass_top=None if glass is None else top - glass.value.in_millimetres
    )


def draw_surround(window: Surround, cover: Box) -> Iterator[AnyElement]:
    """Draw the window: dashed where the shade covers it, plain where it is seen.

    Takes: the window; the box that the shade covers at this raise.

    Gives: its lines.

    Source: iso-128 (from memory).

    >>> edge = (Point(0, 0), Point(9, 0), Point(9, 9), Point(0, 9))
    >>> shade = Box(left=-1, bottom=5, right=10, top=10)
    >>> lines = draw_surround(Surround(outline=edge, glass_top=None), shade)
    >>> sorted({line.kind.value for line in lines})
    ['hidden', 'thin']
    """
    for start, end in pairwise([*window.outline, window.outline[0]]):
        yield from behind(start, end, cover, Layer.WINDOW)
    if window.glass_top is not None:
        yield Line(
            start=Point(window.box.left, window.glass_top),
            end=Point(window.box.right, window.glass_top),
            layer=Layer.WINDOW,
            kind=LineKind.CENTRE,
        )


def _opening(opening: Opening, size: FinishedSize) -> tuple[Point, ...] | None:
    """Draw the opening of an inside mount from whichever of its sizes are measured."""
    widths = _filled(opening.width_top, opening.width_middle, opening.width_bottom)
    heights = _filled(opening.height_left, opening.height_centre, opening.height_right)
    if not widths or not heights:
        return None
    centre = size.width.value.in_millimetres / 2 + _shift(size)
    top = size.drop.value.in_millimetres
    middle = top - heights[1] / 2
    return (
        Point(centre - widths[2] / 2, top - heights[0]),
        Point(centre, top - heights[1]),
        Point(centre + widths[2] / 2, top - heights[2]),
        Point(centre + widths[1] / 2, middle),
        Point(centre + widths[0] / 2, top),
        Point(centre - widths[0] / 2, top),
        Point(centre - widths[1] / 2, middle),
    )


def _filled(*sizes: Length | None) -> list[float]:
    """Fill sizes not measured with the mean of those that are."""
    known = [size.in_millimetres for size in sizes if size is not None]
    return [
        sum(known) / len(known) if size is None else size.in_millimetres for size in sizes if known
    ]


def _shift(size: FinishedSize) -> float:
    """Give how far the opening's centre lies right of the shade's centre."""
    if size.side_gap_left is None or size.side_gap_right is None:
        return 0.0
    gap = size.side_gap_right.value - size.side_gap_left.value
    return gap.in_millimetres / 2


def _casing(plan: ShadePlan, size: FinishedSize) -> tuple[Point, ...] | None:
    """Draw the casing behind an outside mount, by the overlaps or else centred."""
    opening, mount = plan.spec.opening, plan.spec.mount
    if opening.casing_width is None or opening.casing_height is None:
        return None
    spare = size.width.value - opening.casing_width
    left = (mount.overlap_left or spare / 2).in_millimetres
    above = (mount.above or Length(0)).in_millimetres
    top = size.drop.value.in_millimetres - above
    right = left + opening.casing_width.in_millimetres
    bottom = top - opening.casing_height.in_millimetres
    return (Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top))
