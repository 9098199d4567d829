"""The panel as it lies on the table: face down, so seen from the back, with every mark."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.blank import blank
from foldwright.core.drawing.frame import Frame, Gutters, fit, text_width, widened, with_gutters
from foldwright.core.drawing.model import (
    Along,
    Anchor,
    AnyElement,
    Dimension,
    Drawing,
    Layer,
    Lettering,
    LineKind,
    Point,
    Text,
)
from foldwright.core.drawing.panel import LABEL_OFF, Table, draw_panel
from foldwright.core.drawing.panel_marks import (
    LABEL_LINE,
    LEADER,
    column_lines,
    draw_marks,
    label_width,
    names,
)
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import UNIT_NOTES, bare, in_full
from foldwright.core.quantity.rounding import System

NAME = "table-layout"
TITLE = "Table layout"
SEEN_FROM = "from the back, face down"
PAGE = Frame(width=180.0, height=180.0)
TOP_GUTTER, CAPTION = 13.0, 5.0
DROP_LINE = 9.0  # room at the right for the drop's dimension line
SIZE_LINE_OFF = 5.0


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
    table = Table(plan=plan, size=plan.size, layout=plan.layout, scale=1.0, system=system)
    gutters = _gutters(table, frame)
    table = replace(table, scale=fit(table.cut, frame, gutters))
    return Drawing(
        name=NAME,
        title=TITLE,
        seen_from=SEEN_FROM,
        description=_describe(table),
        extent=with_gutters(table.cut, gutters, table.scale),
        scale=table.scale,
        elements=(*draw_panel(table), *draw_marks(table), *_sizes(table), *_captions(table)),
    )


def _gutters(table: Table, frame: Frame) -> Gutters:
    """Leave room for the marks; how many lines they take depends on the scale, so look twice."""
    rows = tuple(row.figure for row in table.rows)
    left = label_width(rows, table.system) + LEADER + LABEL_OFF
    right = max(text_width(name.words, name.size) for name in names(table))
    gutters = Gutters(
        left=left,
        bottom=LABEL_OFF + LEADER + LABEL_LINE + CAPTION,
        right=right + LEADER + LABEL_OFF + DROP_LINE,
        top=TOP_GUTTER + (LABEL_LINE if table.layout.widths.seams else 0.0),
    )
    for _ in range(2):
        lines = column_lines(replace(table, scale=fit(table.cut, frame, gutters)))
        bottom = LABEL_OFF + LEADER + lines * LABEL_LINE + CAPTION
        gutters = replace(gutters, bottom=bottom)
    return widened(gutters, table.cut, frame, text_width(_caption(table), Lettering.NOTE))


def _sizes(table: Table) -> Iterator[AnyElement]:
    """Write the sizes of the cloth as it lies along it."""
    widest = max(text_width(name.words, name.size) for name in names(table))
    beyond_names = table.cut.right + (widest + LEADER) * table.scale
    seam_line = LABEL_OFF + LABEL_LINE / 2 if table.layout.widths.seams else 0.0
    above_seams = table.cut.top + seam_line * table.scale
    yield Dimension(
        start=Point(0.0, above_seams),
        end=Point(table.width, above_seams),
        line_at=above_seams + SIZE_LINE_OFF * table.scale,
        along=Along.ACROSS,
        words=in_full(table.across.figure, table.system),
        size=Lettering.LARGE,
        strong=True,
        layer=Layer.SIZES,
        kind=LineKind.THIN,
        tag=tag(table.plan, table.across.path),
    )
    yield Dimension(
        start=Point(beyond_names, 0.0),
        end=Point(beyond_names, table.drop),
        line_at=beyond_names + DROP_LINE * table.scale,
        along=Along.UP,
        words=in_full(table.along.figure, table.system),
        size=Lettering.LARGE,
        strong=True,
        layer=Layer.SIZES,
        kind=LineKind.THIN,
        tag=tag(table.plan, table.along.path),
    )


def _captions(table: Table) -> Iterator[AnyElement]:
    """Say whence the panel is seen, and in which unit."""
    lines = column_lines(table)
    below = LABEL_OFF + LEADER + lines * LABEL_LINE
    yield Text(
        at=Point(table.width / 2, table.cut.bottom - below * table.scale),
        words=_caption(table),
        size=Lettering.NOTE,
        anchor=Anchor.MIDDLE,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _caption(table: Table) -> str:
    flat = table.layout.rows.cloth_marks or table.layout.columns.cloth_marks
    before = "Flat, before it is sewn up. " if flat else ""
    return f"{before}Seen {SEEN_FROM}. {UNIT_NOTES[table.system]}."


def _describe(table: Table) -> str:
    """Say in sentences what the drawing shows."""
    rows = ", ".join(bare(mark.figure, table.system) for mark in table.rows)
    columns = ", ".join(bare(mark.figure, table.system) for mark in table.columns)
    return (
        f"The panel lying face down, seen from the back. {UNIT_NOTES[table.system]}. "
        f"Rows from the bottom edge: {rows}. Columns from the left edge: {columns}."
    )
