"""The panel as it lies on the table: face down, so seen from the back, with every mark."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import RodPlace
from foldwright.core.design.layout import Layout
from foldwright.core.drawing.blank import blank
from foldwright.core.drawing.frame import Frame, Gutters, fit, text_width, widened, with_gutters
from foldwright.core.drawing.labels import levels, spread
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
    Polyline,
    Tag,
    Text,
)
from foldwright.core.drawing.shapes import rectangle
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import UNIT_NOTES, bare, in_full
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure

NAME = "table-layout"
TITLE = "Table layout"
SEEN_FROM = "from the back, face down"
PAGE = Frame(width=180.0, height=180.0)
TOP_GUTTER, CAPTION = 13.0, 7.0
DROP_LINE = 9.0  # room at the right for the drop's dimension line
LABEL_LINE = 5.2  # height of a line of marks
NAME_LINE = 4.4
LABEL_OFF = 3.0  # from the cloth to the first mark
LEADER = 5.0
SIZE_LINE_OFF = 5.0
ORIGIN_RADIUS = 1.1
RING_RADIUS = 0.7


@dataclass(frozen=True, kw_only=True, slots=True)
class _Scene:
    """All that the parts of this view look at; x from the left edge, y from the bottom edge."""

    plan: ShadePlan
    size: FinishedSize
    layout: Layout
    scale: float
    system: System

    @property
    def width(self) -> float:
        return self.size.width.value.in_millimetres

    @property
    def drop(self) -> float:
        return self.size.drop.value.in_millimetres

    @property
    def cut(self) -> Box:
        return _cut(self.layout, self.size)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Name:
    """What a line across the cloth is called, at the right of it."""

    height: float
    words: str
    size: Lettering = Lettering.NOTE
    tag: Tag | None = None


def table_layout(plan: ShadePlan, system: System, frame: Frame = PAGE) -> Drawing:
    """Draw the panel face down with rows, columns, seams and rods, to scale.

    Takes: the plan; the reader's system; the frame to fit, in millimetres of paper.

    Gives: the drawing; without a layout, a sentence that asks for it.

    Source: derived here; line kinds iso-128, marks from a common origin iso-129.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> table_layout(ShadePlan(spec=ShadeSpec(tag="1")), System.INCH).seen_from
    'from the back, face down'
    """
    if plan.size is None or plan.layout is None:
        missing = "Nothing to draw yet: the rows must be laid out first."
        return blank(name=NAME, title=TITLE, seen_from=SEEN_FROM, missing=missing)
    scene = _Scene(plan=plan, size=plan.size, layout=plan.layout, scale=1.0, system=system)
    gutters = _gutters(scene, frame)
    scene = replace(scene, scale=fit(scene.cut, frame, gutters))
    return Drawing(
        name=NAME,
        title=TITLE,
        seen_from=SEEN_FROM,
        description=_describe(scene),
        extent=with_gutters(scene.cut, gutters, scene.scale),
        scale=scene.scale,
        elements=tuple(_elements(scene)),
    )


def _cut(layout: Layout, size: FinishedSize) -> Box:
    """Give the outline of the face with its turns, hem and top allowance."""
    turn, hem, top = (
        allowance.value.in_millimetres if allowance else 0.0
        for allowance in (layout.side_turn, layout.hem_allowance, layout.top_allowance)
    )
    return Box(
        left=-turn,
        bottom=-hem,
        right=size.width.value.in_millimetres + turn,
        top=size.drop.value.in_millimetres + top,
    )


def _gutters(scene: _Scene, frame: Frame) -> Gutters:
    """Leave room for the marks; how many lines they take depends on the scale, so look twice."""
    rows = scene.layout.rows.marks
    left = _label_width(rows, scene.system) + LEADER + LABEL_OFF
    right = max(text_width(name.words, name.size) for name in _names(scene))
    gutters = Gutters(
        left=left,
        bottom=LABEL_OFF + LEADER + LABEL_LINE + CAPTION,
        right=right + LEADER + LABEL_OFF + DROP_LINE,
        top=TOP_GUTTER + (LABEL_LINE if scene.layout.widths.seams else 0.0),
    )
    for _ in range(2):
        lines = _column_lines(scene.layout, fit(scene.cut, frame, gutters), scene.system)
        bottom = LABEL_OFF + LEADER + lines * LABEL_LINE + CAPTION
        gutters = replace(gutters, bottom=bottom)
    return widened(gutters, scene.cut, frame, text_width(_caption(scene), Lettering.NOTE))


def _label_width(marks: tuple[Figure[Length], ...], system: System) -> float:
    """Give the width of the widest of some marks."""
    return max(text_width(bare(mark, system), Lettering.FIGURE) for mark in marks)


def _column_lines(layout: Layout, scale: float, system: System) -> int:
    """Count the lines on which the column marks stand clear of each other."""
    places = [mark.value.in_millimetres / scale for mark in layout.columns.marks]
    return levels(places, _label_width(layout.columns.marks, system))


def _elements(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the cloth, then what is marked on it, then the figures."""
    yield from _outlines(scene)
    yield from _seams(scene)
    yield from _rows(scene)
    yield from _columns(scene)
    yield from _rings(scene)
    yield from _loose_rods(scene)
    yield from _staple_line(scene)
    yield from _draw_names(scene)
    yield from _origin(scene)
    yield from _sizes(scene)
    yield from _captions(scene)


def _outlines(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the cut edge thin and the finished edge wide."""
    yield rectangle(scene.cut, Layer.CUTS, LineKind.THIN)
    finished = Box(left=0.0, bottom=0.0, right=scene.width, top=scene.drop)
    yield rectangle(finished, Layer.CLOTH, LineKind.VISIBLE)


def _seams(scene: _Scene) -> Iterator[AnyElement]:
    """Draw seams dashed, marked at the top."""
    for index, seam in enumerate(scene.layout.widths.seams):
        across = seam.value.in_millimetres
        path = tag(scene.plan, f"layout.widths.seams.{index}")
        yield Line(
            start=Point(across, scene.cut.bottom),
            end=Point(across, scene.cut.top),
            layer=Layer.SEAMS,
            kind=LineKind.HIDDEN,
            tag=path,
        )
        yield Text(
            at=Point(across, scene.cut.top + LABEL_OFF * scene.scale),
            words=f"seam {bare(seam, scene.system)}",
            anchor=Anchor.MIDDLE,
            layer=Layer.SEAMS,
            kind=LineKind.THIN,
            tag=path,
        )


def _rows(scene: _Scene) -> Iterator[AnyElement]:
    """Draw each row with its mark at the left, all measured from the bottom edge."""
    marks = scene.layout.rows.marks
    heights = [mark.value.in_millimetres for mark in marks]
    origin, *labels = spread([0.0, *heights], LABEL_LINE * scene.scale)
    yield _row_mark(scene, "0", origin, None)
    edge = scene.cut.left - LEADER * scene.scale
    for index, (mark, height, label) in enumerate(zip(marks, heights, labels, strict=True)):
        path = tag(scene.plan, f"layout.rows.marks.{index}")
        bend = Point(scene.cut.left, height)
        yield Polyline(
            points=(Point(scene.width, height), bend, Point(edge, label)),
            layer=Layer.ROWS,
            kind=LineKind.THIN,
            tag=path,
        )
        yield _row_mark(scene, bare(mark, scene.system), label, path)


def _row_mark(scene: _Scene, words: str, height: float, its_tag: Tag | None) -> Text:
    """Write a mark at the left of the cloth."""
    return Text(
        at=Point(scene.cut.left - (LEADER + 1) * scene.scale, height),
        words=words,
        anchor=Anchor.END,
        strong=True,
        layer=Layer.ROWS,
        kind=LineKind.THIN,
        tag=its_tag,
    )


def _columns(scene: _Scene) -> Iterator[AnyElement]:
    """Draw each column with its mark below, on as many lines as keep the marks apart."""
    lines = _column_lines(scene.layout, scene.scale, scene.system)
    for index, mark in enumerate(scene.layout.columns.marks):
        across = mark.value.in_millimetres
        path = tag(scene.plan, f"layout.columns.marks.{index}")
        down = LABEL_OFF + LEADER + (index % lines) * LABEL_LINE
        label = scene.cut.bottom - down * scene.scale
        yield Line(
            start=Point(across, scene.drop),
            end=Point(across, label + LABEL_LINE / 2 * scene.scale),
            layer=Layer.COLUMNS,
            kind=LineKind.CENTRE,
            tag=path,
        )
        yield Text(
            at=Point(across, label),
            words=bare(mark, scene.system),
            anchor=Anchor.MIDDLE,
            strong=True,
            backed=True,
            layer=Layer.COLUMNS,
            kind=LineKind.THIN,
            tag=path,
        )


def _rings(scene: _Scene) -> Iterator[AnyElement]:
    """Put a ring at every crossing."""
    for row in scene.layout.rows.marks:
        for column in scene.layout.columns.marks:
            yield Circle(
                centre=Point(column.value.in_millimetres, row.value.in_millimetres),
                radius=RING_RADIUS * scene.scale,
                layer=Layer.ROWS,
            )


def _loose_rods(scene: _Scene) -> Iterator[AnyElement]:
    """Draw rods that lie between rows."""
    if scene.layout.rows.rods is not RodPlace.MID_FOLD:
        return
    for index, rod in enumerate(scene.layout.rows.rod_marks):
        height = rod.value.in_millimetres
        yield Line(
            start=Point(0.0, height),
            end=Point(scene.width, height),
            layer=Layer.RODS,
            kind=LineKind.HIDDEN,
            tag=tag(scene.plan, f"layout.rows.rod_marks.{index}"),
        )


def _staple_line(scene: _Scene) -> Iterator[AnyElement]:
    """Draw the line along which the cloth is stapled: the far edge of the board."""
    height = _staple_height(scene)
    if height is not None:
        yield Line(
            start=Point(scene.cut.left, height),
            end=Point(scene.cut.right, height),
            layer=Layer.CUTS,
            kind=LineKind.HIDDEN,
        )


def _staple_height(scene: _Scene) -> float | None:
    """Lay the cloth over the depth of the board, where the top allowance reaches so far."""
    if scene.plan.chosen.board is None:
        return None
    height = scene.drop + scene.plan.chosen.board.depth.in_millimetres
    return height if height < scene.cut.top else None


def _names(scene: _Scene) -> list[_Name]:
    """Name every line that runs across, from the bottom up."""
    rod = " + rod" if scene.layout.rows.rods is RodPlace.ROWS else ""
    names = [_Name(height=0.0, words="bottom edge"), _Name(height=scene.drop, words="top line")]
    for number, mark in enumerate(scene.layout.rows.marks, start=1):
        names.append(_Name(height=mark.value.in_millimetres, words=f"row {number}{rod}"))
    if scene.layout.rows.rods is RodPlace.MID_FOLD:
        for index, mark in enumerate(scene.layout.rows.rod_marks):
            names.append(
                _Name(
                    height=mark.value.in_millimetres,
                    words=f"rod {bare(mark, scene.system)}",
                    size=Lettering.FIGURE,
                    tag=tag(scene.plan, f"layout.rows.rod_marks.{index}"),
                )
            )
    staples = _staple_height(scene)
    if staples is not None:
        names.append(_Name(height=staples, words="staple line"))
    return sorted(names, key=lambda name: name.height)


def _draw_names(scene: _Scene) -> Iterator[AnyElement]:
    """Write the names at the right, each led to its line."""
    names = _names(scene)
    heights = spread([name.height for name in names], NAME_LINE * scene.scale)
    edge = scene.cut.right + LEADER * scene.scale
    for name, height in zip(names, heights, strict=True):
        bend = Point(scene.cut.right, name.height)
        yield Polyline(
            points=(Point(scene.width, name.height), bend, Point(edge, height)),
            layer=Layer.NOTES,
            kind=LineKind.THIN,
        )
        yield Text(
            at=Point(edge + scene.scale, height),
            words=name.words,
            size=name.size,
            layer=Layer.NOTES,
            kind=LineKind.THIN,
            tag=name.tag,
        )


def _origin(scene: _Scene) -> Iterator[AnyElement]:
    """Circle the corner from which every mark is measured."""
    yield Circle(centre=Point(0.0, 0.0), radius=ORIGIN_RADIUS * scene.scale, layer=Layer.SIZES)


def _sizes(scene: _Scene) -> Iterator[AnyElement]:
    """Write the finished sizes along the cloth."""
    widest = max(text_width(name.words, name.size) for name in _names(scene))
    beyond_names = scene.cut.right + (widest + LEADER) * scene.scale
    seam_line = LABEL_OFF + LABEL_LINE / 2 if scene.layout.widths.seams else 0.0
    above_seams = scene.cut.top + seam_line * scene.scale
    yield Dimension(
        start=Point(0.0, above_seams),
        end=Point(scene.width, above_seams),
        line_at=above_seams + SIZE_LINE_OFF * scene.scale,
        along=Along.ACROSS,
        words=in_full(scene.size.width, scene.system),
        size=Lettering.LARGE,
        strong=True,
        layer=Layer.SIZES,
        kind=LineKind.THIN,
        tag=tag(scene.plan, "size.width"),
    )
    yield Dimension(
        start=Point(beyond_names, 0.0),
        end=Point(beyond_names, scene.drop),
        line_at=beyond_names + DROP_LINE * scene.scale,
        along=Along.UP,
        words=in_full(scene.size.drop, scene.system),
        size=Lettering.LARGE,
        strong=True,
        layer=Layer.SIZES,
        kind=LineKind.THIN,
        tag=tag(scene.plan, "size.drop"),
    )


def _captions(scene: _Scene) -> Iterator[AnyElement]:
    """Say whence the panel is seen, and in which unit."""
    lines = _column_lines(scene.layout, scene.scale, scene.system)
    below = LABEL_OFF + LEADER + lines * LABEL_LINE
    yield Text(
        at=Point(scene.width / 2, scene.cut.bottom - below * scene.scale),
        words=_caption(scene),
        size=Lettering.NOTE,
        anchor=Anchor.MIDDLE,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _caption(scene: _Scene) -> str:
    return f"Seen {SEEN_FROM}. {UNIT_NOTES[scene.system]}."


def _describe(scene: _Scene) -> str:
    """Say in sentences what the drawing shows."""
    rows = ", ".join(bare(mark, scene.system) for mark in scene.layout.rows.marks)
    columns = ", ".join(bare(mark, scene.system) for mark in scene.layout.columns.marks)
    return (
        f"The panel lying face down, seen from the back. {UNIT_NOTES[scene.system]}. "
        f"Rows from the bottom edge: {rows}. Columns from the left edge: {columns}."
    )
