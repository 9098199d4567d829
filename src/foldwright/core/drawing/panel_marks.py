"""The marks along the edges of the panel: rows, columns, and the name of every line."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.drawing.frame import text_width
from foldwright.core.drawing.labels import levels, spread
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Polyline,
    Tag,
    Text,
)
from foldwright.core.drawing.panel import LABEL_OFF, Marked, Table
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import bare
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure

# In millimetres of paper.
LABEL_LINE = 5.2  # height of a line of marks
NAME_LINE = 4.4
LEADER = 5.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Name:
    """What a line across the cloth is called, at the right of it."""

    height: float
    words: str
    size: Lettering = Lettering.NOTE
    tag: Tag | None = None


def draw_marks(table: Table) -> Iterator[AnyElement]:
    """Draw every row and column with its mark, and name the lines across.

    Takes: the table.

    Gives: the elements.

    Source: derived here; marks from a common origin iso-129.

    >>> from foldwright.core.check.plan import ShadePlan, ShadeSpec
    >>> from foldwright.core.rig.example import LAYOUT, SIZE
    >>> plan = ShadePlan(spec=ShadeSpec(tag="1"), size=SIZE, layout=LAYOUT)
    >>> table = Table(plan=plan, size=SIZE, layout=LAYOUT, scale=10.0, system=System.INCH)
    >>> next(draw_marks(table)).words
    '0'
    """
    yield from _rows(table)
    yield from _columns(table)
    yield from _draw_names(table)


def label_width(marks: tuple[Figure[Length], ...], system: System) -> float:
    """Give the width of the widest of some marks.

    Takes: the marks, one or more; the reader's system.

    Gives: millimetres of paper.

    Source: derived here.

    >>> from foldwright.core.why.making import measured
    >>> label_width((measured("row 1", Length.inches(5)),), System.INCH) < LABEL_LINE
    True
    """
    return max(text_width(bare(mark, system), Lettering.FIGURE) for mark in marks)


def column_lines(table: Table) -> int:
    """Count the lines on which the marks below the cloth stand clear of each other.

    Takes: the table, at its scale.

    Gives: 1 or more.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadePlan, ShadeSpec
    >>> from foldwright.core.rig.example import LAYOUT, SIZE
    >>> plan = ShadePlan(spec=ShadeSpec(tag="1"), size=SIZE, layout=LAYOUT)
    >>> table = Table(plan=plan, size=SIZE, layout=LAYOUT, scale=10.0, system=System.INCH)
    >>> column_lines(table)
    1
    """
    marks = _below(table)
    places = [mark.millimetres / table.scale for mark in marks]
    return levels(places, label_width(tuple(mark.figure for mark in marks), table.system))


def _below(table: Table) -> list[Marked]:
    """Give columns, upright folds and edges of bands, from the left edge."""
    folds = [
        Marked(line.at, f"layout.sewn.{index}.at")
        for index, line in enumerate(table.layout.sewn)
        if line.upright
    ]
    bands = table.layout.bands.side_edges if table.layout.bands else ()
    folds += [Marked(edge, f"layout.bands.side_edges.{index}") for index, edge in enumerate(bands)]
    return sorted([*table.columns, *folds], key=lambda mark: mark.figure.value)


def names(table: Table) -> list[Name]:
    """Name every line that runs across, from the bottom up.

    Takes: the table.

    Gives: the names; rods between rows with their mark, since they have none at the left.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadePlan, ShadeSpec
    >>> from foldwright.core.rig.example import LAYOUT, SIZE
    >>> plan = ShadePlan(spec=ShadeSpec(tag="1"), size=SIZE, layout=LAYOUT)
    >>> table = Table(plan=plan, size=SIZE, layout=LAYOUT, scale=10.0, system=System.INCH)
    >>> [name.words for name in names(table)][:2]
    ['bottom edge', 'row 1']
    """
    found = [
        Name(height=0.0, words="bottom edge"),
        Name(height=table.drop, words="top line"),
        *_row_names(table),
        *_rod_names(table),
        *_sewn_names(table),
        *_band_names(table),
    ]
    staples = table.staple_line
    if staples is not None:
        found.append(Name(height=staples, words="staple line"))
    tape = table.tape_line
    if tape is not None:
        found.append(Name(height=tape, words="hook and loop"))
    return sorted(found, key=lambda name: name.height)


def _row_names(table: Table) -> Iterator[Name]:
    """Name each row, and what else lies on it."""
    across = (line for line in table.layout.sewn if not line.upright)
    sewn = {line.at.value: f" + {line.kind.value}" for line in across}
    rod = " + rod" if table.layout.rows.rods.at_rows else ""
    for number, row in enumerate(table.rows, start=1):
        beside = sewn.get(row.figure.value, "")
        yield Name(height=row.millimetres, words=f"row {number}{beside}{rod}")


def _rod_names(table: Table) -> Iterator[Name]:
    """Give rods between rows their mark, since they have none at the left."""
    if table.layout.rows.rods.between_rows:
        for rod in table.loose_rods:
            yield _marked(table, "rod", rod)


def _sewn_names(table: Table) -> Iterator[Name]:
    """Give sewn lines between rows their mark."""
    rows = {mark.figure.value for mark in (*table.rows, *table.loose_rods)}
    for index, line in enumerate(table.layout.sewn):
        if not line.upright and line.at.value not in rows:
            yield _marked(table, line.kind.value, Marked(line.at, f"layout.sewn.{index}.at"))


def _band_names(table: Table) -> Iterator[Name]:
    """Give the edges of a band across their mark; one at the bottom edge needs none."""
    bands = table.layout.bands
    for name in ("lower", "upper") if bands else ():
        edge = getattr(bands, name)
        if edge is not None and edge.value > ZERO:
            yield _marked(table, "band", Marked(edge, f"layout.bands.{name}"))


def _marked(table: Table, words: str, mark: Marked) -> Name:
    return Name(
        height=mark.millimetres,
        words=f"{words} {bare(mark.figure, table.system)}",
        size=Lettering.FIGURE,
        tag=tag(table.plan, mark.path),
    )


def _rows(table: Table) -> Iterator[AnyElement]:
    """Draw each row with its mark at the left, all measured from the bottom edge."""
    marks = table.rows
    heights = [mark.millimetres for mark in marks]
    origin, *labels = spread([0.0, *heights], LABEL_LINE * table.scale)
    yield _row_mark(table, "0", origin, None)
    edge = table.cut.left - LEADER * table.scale
    for mark, height, label in zip(marks, heights, labels, strict=True):
        path = tag(table.plan, mark.path)
        bend = Point(table.cut.left, height)
        yield Polyline(
            points=(Point(table.width, height), bend, Point(edge, label)),
            layer=Layer.ROWS,
            kind=LineKind.THIN,
            tag=path,
        )
        yield _row_mark(table, bare(mark.figure, table.system), label, path)


def _row_mark(table: Table, words: str, height: float, its_tag: Tag | None) -> Text:
    """Write a mark at the left of the cloth."""
    return Text(
        at=Point(table.cut.left - (LEADER + 1) * table.scale, height),
        words=words,
        anchor=Anchor.END,
        strong=True,
        layer=Layer.ROWS,
        kind=LineKind.THIN,
        tag=its_tag,
    )


def _columns(table: Table) -> Iterator[AnyElement]:
    """Draw each column with its mark below, on as many lines as keep the marks apart."""
    lines = column_lines(table)
    columns = {mark.path for mark in table.columns}
    for index, mark in enumerate(_below(table)):
        down = LABEL_OFF + LEADER + (index % lines) * LABEL_LINE
        label = table.cut.bottom - down * table.scale
        ring = mark.path in columns
        yield _leader(table, mark, label, ring=ring)
        yield Text(
            at=Point(mark.millimetres, label),
            words=bare(mark.figure, table.system),
            anchor=Anchor.MIDDLE,
            strong=ring,
            backed=True,
            layer=Layer.COLUMNS,
            kind=LineKind.THIN,
            tag=tag(table.plan, mark.path),
        )


def _leader(table: Table, mark: Marked, label: float, *, ring: bool) -> Line:
    """Lead a mark to its column over the whole drop, or to the foot of its fold."""
    return Line(
        start=Point(mark.millimetres, table.drop if ring else 0.0),
        end=Point(mark.millimetres, label + LABEL_LINE / 2 * table.scale),
        layer=Layer.COLUMNS,
        kind=LineKind.CENTRE if ring else LineKind.THIN,
        tag=tag(table.plan, mark.path),
    )


def _draw_names(table: Table) -> Iterator[AnyElement]:
    """Write the names at the right, each led to its line."""
    every = names(table)
    heights = spread([name.height for name in every], NAME_LINE * table.scale)
    edge = table.cut.right + LEADER * table.scale
    for name, height in zip(every, heights, strict=True):
        bend = Point(table.cut.right, name.height)
        yield Polyline(
            points=(Point(table.width, name.height), bend, Point(edge, height)),
            layer=Layer.NOTES,
            kind=LineKind.THIN,
        )
        yield Text(
            at=Point(edge + table.scale, height),
            words=name.words,
            size=name.size,
            layer=Layer.NOTES,
            kind=LineKind.THIN,
            tag=name.tag,
        )
