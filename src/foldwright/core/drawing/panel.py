"""The panel on the table: its outlines, and what is sewn into it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.layout import Layout
from foldwright.core.drawing.bands import bands_from_the_back
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Box,
    Circle,
    Layer,
    Line,
    LineKind,
    Point,
    Text,
)
from foldwright.core.drawing.shapes import rectangle
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import bare
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure

LABEL_OFF = 3.0  # of paper, from the cloth to the first mark
ORIGIN_RADIUS = 1.1
RING_RADIUS = 0.7


class Marked(NamedTuple):
    """A figure that is marked or measured on the cloth, and its path in the plan."""

    figure: Figure[Length]
    path: str

    @property
    def millimetres(self) -> float:
        """Give where it lies."""
        return self.figure.value.in_millimetres


def _listed(
    hung: tuple[Figure[Length], ...], flat: tuple[Figure[Length], ...], room: str
) -> tuple[Marked, ...]:
    """Take the marks on the flat cloth, where they differ from those on the hanging shade."""
    name = "cloth_marks" if flat else "marks"
    return tuple(
        Marked(figure, f"{room}.{name}.{number}") for number, figure in enumerate(flat or hung)
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class Table:
    """All that this view looks at; x from the left edge of the panel, y from its bottom edge."""

    plan: ShadePlan
    size: FinishedSize
    layout: Layout
    scale: float
    system: System

    @property
    def across(self) -> Marked:
        """Give the width of the cloth as it lies: flat, before pleats and gathers are made."""
        flat = self.layout.widths.cloth_width
        return (
            Marked(self.size.width, "size.width")
            if flat is None
            else Marked(flat, "layout.widths.cloth_width")
        )

    @property
    def along(self) -> Marked:
        """Give the cloth from hem to top line as it lies: flat, before tucks are sewn."""
        body = self.layout.cuts[0].body if self.layout.cuts else None
        if body is None or not self.layout.rows.cloth_marks:
            return Marked(self.size.drop, "size.drop")
        return Marked(body, "layout.cuts.0.body")

    @property
    def rows(self) -> tuple[Marked, ...]:
        """Give the rows as they are marked on the cloth."""
        rows = self.layout.rows
        return _listed(rows.marks, rows.cloth_marks, "layout.rows")

    @property
    def loose_rods(self) -> tuple[Marked, ...]:
        """Give the rods that lie between rows, as they are marked on the cloth."""
        rows = self.layout.rows
        name = "rod_cloth_marks" if rows.rod_cloth_marks else "rod_marks"
        rods = rows.rod_cloth_marks or rows.rod_marks
        at_rows = {row.figure.value for row in self.rows}
        found = (Marked(rod, f"layout.rows.{name}.{index}") for index, rod in enumerate(rods))
        return tuple(rod for rod in found if rod.figure.value not in at_rows)

    @property
    def columns(self) -> tuple[Marked, ...]:
        """Give the columns as they are marked on the cloth."""
        columns = self.layout.columns
        return _listed(columns.marks, columns.cloth_marks, "layout.columns")

    @property
    def width(self) -> float:
        """Give the width of the cloth as it lies."""
        return self.across.millimetres

    @property
    def drop(self) -> float:
        """Give the length of the cloth from hem to top line as it lies."""
        return self.along.millimetres

    @property
    def cut(self) -> Box:
        """Give the outline of the face with its turns, hem and top allowance."""
        layout = self.layout
        turn, hem, top = (
            allowance.value.in_millimetres if allowance else 0.0
            for allowance in (layout.side_turn, layout.hem_allowance, layout.top_allowance)
        )
        return Box(left=-turn, bottom=-hem, right=self.width + turn, top=self.drop + top)

    @property
    def staple_line(self) -> float | None:
        """Give the height of the far edge of the board, where the cloth reaches so far."""
        if self.plan.chosen.board is None or self.layout.tape is not None:
            return None
        height = self.drop + self.plan.chosen.board.depth.in_millimetres
        return height if height < self.cut.top else None

    @property
    def tape_line(self) -> float | None:
        """Give the height of the lower edge of the tape at the head, where there is one."""
        tape = self.layout.tape
        return None if tape is None else self.drop - tape.width.value.in_millimetres


def draw_panel(table: Table) -> Iterator[AnyElement]:
    """Draw the panel: outlines, seams, rings and rods, the staple line, and its origin.

    Takes: the table.

    Gives: the elements, from the back to the front.

    Source: derived here; line kinds iso-128.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> from foldwright.core.rig.example import LAYOUT, SIZE
    >>> plan = ShadePlan(spec=ShadeSpec(tag="1"), size=SIZE, layout=LAYOUT)
    >>> table = Table(plan=plan, size=SIZE, layout=LAYOUT, scale=10.0, system=System.INCH)
    >>> next(draw_panel(table)).layer.value
    'cuts'
    """
    yield from _outlines(table)
    yield from _seams(table)
    yield from _rings(table)
    yield from _loose_rods(table)
    yield from _sewn(table)
    yield from bands_from_the_back(table.plan, table.width, table.drop)
    yield from _staple_line(table)
    yield from _origin(table)


def _outlines(table: Table) -> Iterator[AnyElement]:
    """Draw the cut edge thin and the finished edge wide."""
    yield rectangle(table.cut, Layer.CUTS, LineKind.THIN)
    finished = Box(left=0.0, bottom=0.0, right=table.width, top=table.drop)
    yield rectangle(finished, Layer.CLOTH, LineKind.VISIBLE)


def _seams(table: Table) -> Iterator[AnyElement]:
    """Draw seams dashed, marked at the top."""
    for index, seam in enumerate(table.layout.widths.seams):
        across = seam.value.in_millimetres
        path = tag(table.plan, f"layout.widths.seams.{index}")
        yield Line(
            start=Point(across, table.cut.bottom),
            end=Point(across, table.cut.top),
            layer=Layer.SEAMS,
            kind=LineKind.HIDDEN,
            tag=path,
        )
        yield Text(
            at=Point(across, table.cut.top + LABEL_OFF * table.scale),
            words=f"seam {bare(seam, table.system)}",
            anchor=Anchor.MIDDLE,
            layer=Layer.SEAMS,
            kind=LineKind.THIN,
            tag=path,
        )


def _rings(table: Table) -> Iterator[AnyElement]:
    """Put a ring at every crossing."""
    for row in table.rows:
        for column in table.columns:
            yield Circle(
                centre=Point(column.millimetres, row.millimetres),
                radius=RING_RADIUS * table.scale,
                layer=Layer.ROWS,
            )


def _loose_rods(table: Table) -> Iterator[AnyElement]:
    """Draw rods that lie between rows."""
    if not table.layout.rows.rods.between_rows:
        return
    for rod in table.loose_rods:
        height = rod.millimetres
        yield Line(
            start=Point(0.0, height),
            end=Point(table.width, height),
            layer=Layer.RODS,
            kind=LineKind.HIDDEN,
            tag=tag(table.plan, rod.path),
        )


def _sewn(table: Table) -> Iterator[AnyElement]:
    """Draw the lines that are sewn or folded into the cloth besides its seams."""
    for index, line in enumerate(table.layout.sewn):
        at = line.at.value.in_millimetres
        start, end = Point(0.0, at), Point(table.width, at)
        if line.upright:
            start, end = Point(at, 0.0), Point(at, table.cut.top)
        yield Line(
            start=start,
            end=end,
            layer=Layer.SEAMS,
            kind=LineKind.HIDDEN,
            tag=tag(table.plan, f"layout.sewn.{index}.at"),
        )


def _staple_line(table: Table) -> Iterator[AnyElement]:
    """Draw the line along which the cloth is stapled, or the lower edge of its tape."""
    height = table.staple_line if table.layout.tape is None else table.tape_line
    if height is not None:
        yield Line(
            start=Point(table.cut.left, height),
            end=Point(table.cut.right, height),
            layer=Layer.CUTS,
            kind=LineKind.HIDDEN,
        )


def _origin(table: Table) -> Iterator[AnyElement]:
    """Circle the corner from which every mark is measured."""
    yield Circle(centre=Point(0.0, 0.0), radius=ORIGIN_RADIUS * table.scale, layer=Layer.SIZES)
