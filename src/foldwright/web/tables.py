"""The numbers of a shade as tables, in the order of the work."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from markupsafe import Markup

from foldwright.core.why.figure import Figure
from foldwright.web.figures import FigureIndex
from foldwright.web.wording import Wording, known

SECTIONS = (
    ("Size", ("size",)),
    ("Rows, seen from the back, from the bottom edge up", ("layout.rows",)),
    (
        "Columns and seams, seen from the back, from the left edge",
        ("layout.columns", "layout.widths"),
    ),
    ("Cloth to cut", ("layout.cuts",)),
    ("Stack and travel", ("layout.stack", "layout.travel")),
    ("Weight", ("weights",)),
    ("Lift", ("balance",)),
    ("Headrail, seen from the back", ("headrail",)),
)
LEFT_OUT = ("balance.ranking", "balance.window.sensitivities", "headrail.steps")


@dataclass(frozen=True, kw_only=True, slots=True)
class Row:
    """One line of a table: a name, its figures, and how far they can be trusted."""

    name: str
    values: tuple[Markup, ...]
    known: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Table:
    """One section of the numbers."""

    title: str
    rows: tuple[Row, ...]


def tables(figures: FigureIndex, wording: Wording) -> tuple[Table, ...]:
    """Give every section that has anything to show."""
    drawn = (
        Table(title=title, rows=tuple(_rows(figures, rooms, wording))) for title, rooms in SECTIONS
    )
    return tuple(table for table in drawn if table.rows)


def _rows(figures: FigureIndex, rooms: tuple[str, ...], wording: Wording) -> Iterator[Row]:
    for room in rooms:
        shown = [one for one in figures.in_room(room) if not one[0].startswith(LEFT_OUT)]
        for _, alike in groupby(shown, key=lambda one: series(one[0])):
            yield _row([figure for _, figure in alike], wording)


def series(path: str) -> str:
    """Give one key to the members of a row of marks, and its own to any other figure."""
    series, _, last = path.rpartition(".")
    return series if last.isdecimal() else path


def _row(alike: list[Figure[Any]], wording: Wording) -> Row:
    first = alike[0]
    return Row(
        name=first.name,
        values=tuple(wording.link(figure, ranged=True) for figure in alike),
        known=known(first),
    )
