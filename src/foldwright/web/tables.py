"""The numbers of a shade as tables, in the order of the work."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from markupsafe import Markup, escape

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.layout import LayerCut, Piece
from foldwright.core.why.figure import Figure
from foldwright.core.why.telling import cite
from foldwright.web.figures import FigureIndex
from foldwright.web.wording import Wording, known

Cell = Markup | str
NUMBER = re.compile(r"\d+")

LISTS = (
    ("Size", ("size",)),
    ("Rows, from the bottom edge up", ("layout.rows",)),
    (
        "Columns and seams, from the left edge as seen from the back",
        ("layout.columns", "layout.widths"),
    ),
    ("Stack, travel and allowances", ("layout",)),
    ("Weight", ("weights",)),
    ("Lift", ("balance",)),
    ("Headrail, seen from the back", ("headrail",)),
    ("Safety of children", ("safety",)),
)
TOLD_ELSEWHERE = (
    "layout.cuts",
    "layout.pieces",
    "layout.sewing",
    "balance.ranking",
    "balance.window.sensitivities",
    "headrail.lines",
    "headrail.adjustments",
    "headrail.steps",
    "safety.lines",
    "safety.labels",
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Table:
    """One section of the numbers: a head, which may be empty, and lines of cells."""

    title: str
    head: tuple[str, ...] = ()
    lines: tuple[tuple[Cell, ...], ...]


def tables(plan: ShadePlan, figures: FigureIndex, wording: Wording) -> tuple[Table, ...]:
    """Give every section that has anything to show."""
    made = (*_lists(figures, wording), *(grid(plan, wording) for grid in GRIDS))
    return tuple(table for table in made if table.lines)


def _lists(figures: FigureIndex, wording: Wording) -> Iterator[Table]:
    """Make the plain lists; a figure stands in the first that asks for it, and once."""
    listed: set[int] = set()
    for title, rooms in LISTS:
        shown = [one for room in rooms for one in figures.in_room(room) if id(one[1]) not in listed]
        kept = [one for one in shown if not one[0].startswith(TOLD_ELSEWHERE)]
        once = {id(figure): (path, figure) for path, figure in reversed(kept)}
        listed |= once.keys()
        yield Table(title=title, lines=tuple(_lines(list(reversed(once.values())), wording)))


def _lines(
    shown: Sequence[tuple[str, Figure[Any]]], wording: Wording
) -> Iterator[tuple[Cell, ...]]:
    for _, alike in groupby(shown, key=lambda one: series(one[0], one[1].name)):
        row = [figure for _, figure in alike]
        values = (wording.link(figure, ranged=True) for figure in row)
        yield row_name([figure.name for figure in row]), Markup(", ").join(values), known(row[0])


def series(path: str, name: str) -> tuple[str, str]:
    """Give one key to the marks of one row of marks, and its own to any other figure.

    >>> series("layout.rows.marks.3", "row 4") == series("layout.rows.marks.4", "row 5")
    True
    >>> series("weights.layers.0", "mass of the face")
    ('weights.layers.', 'mass of the face')
    """
    return NUMBER.sub("", path), NUMBER.sub("", name)


def row_name(names: Sequence[str]) -> str:
    """Name a row of marks by its first and last.

    >>> row_name(["row 1", "row 2", "row 3"]), row_name(["drop"])
    ('row 1 to 3', 'drop')
    """
    last = NUMBER.search(names[-1])
    return f"{names[0]} to {last[0]}" if last and len(names) > 1 else names[0]


def _cloth(plan: ShadePlan, wording: Wording) -> Table:
    cuts, pieces = (plan.layout.cuts, plan.layout.pieces) if plan.layout else ((), ())
    return Table(
        title="Cloth to cut",
        head=("piece", "cloth", "number", "width", "length"),
        lines=(
            *((cut.layer, cut.cloth, "1", *_cut_size(cut, wording)) for cut in cuts),
            *(
                (piece.name, piece.cloth, wording.link(piece.count), *_cut_size(piece, wording))
                for piece in pieces
            ),
        ),
    )


def _cut_size(cut: LayerCut | Piece, wording: Wording) -> tuple[Cell, Cell]:
    return wording.link(cut.width), wording.link(cut.length)


def _sewing(plan: ShadePlan, wording: Wording) -> Table:
    steps = plan.layout.sewing if plan.layout else ()
    return Table(
        title="Order of the sewing",
        head=("", "step", "what to do"),
        lines=tuple(
            (str(number), step.title, wording.linked(step.instruction, step.figures))
            for number, step in enumerate(steps, start=1)
        ),
    )


def _cords(plan: ShadePlan, wording: Wording) -> Table:
    lines = plan.headrail.lines if plan.headrail else ()
    return Table(
        title="Cords, from the left end of the tube as seen from the back",
        head=("cord", "column", "clip", "side", "wraps from", "to", "cut length"),
        lines=tuple(
            (
                str(line.number),
                wording.link(line.column),
                wording.link(line.clip),
                line.clip_side.value if line.clip_side else "at it",
                wording.link(line.band_start),
                wording.link(line.band_end),
                wording.link(line.cut_length),
            )
            for line in lines
        ),
    )


def _springs(plan: ShadePlan, wording: Wording) -> Table:
    ranking = plan.balance.ranking if plan.balance else ()
    return Table(
        title="The shop's springs on this shade",
        head=("spring", "verdict", "turns", "chance", "remark"),
        lines=tuple(
            (
                rank.spring,
                rank.verdict.value,
                _or_none(rank.window.recommended_turns, wording),
                wording.link(rank.window.chance),
                wording.link(rank.remark),
            )
            for rank in ranking
        ),
    )


def _sensitivities(plan: ShadePlan, wording: Wording) -> Table:
    window = plan.balance.window if plan.balance else None
    return Table(
        title="What would move the least turns",
        lines=tuple(
            (one.name, wording.link(one)) for one in (window.sensitivities if window else ())
        ),
    )


def _adjustments(plan: ShadePlan, wording: Wording) -> Table:
    adjustments = plan.headrail.adjustments if plan.headrail else ()
    return Table(
        title="If it does not run as it should",
        head=("what shows", "what to do", "how much", "where"),
        lines=tuple(
            (
                escape(one.symptom),
                wording.link(one.action),
                wording.link(one.amount) if one.is_measured else "",
                wording.link(one.end),
            )
            for one in adjustments
        ),
    )


def _rules(plan: ShadePlan, wording: Wording) -> Table:
    """Give the rules on children that speak of this shade, and those that no longer hold."""
    lines = plan.safety.lines if plan.safety else ()
    return Table(
        title="Rules on children: nothing here certifies the shade",
        head=("market", "about", "verdict", "on this shade", "what it asks", "known by", "source"),
        lines=tuple(
            (
                line.rule.market.value,
                line.rule.subject.value,
                line.verdict.value,
                wording.linked(line.sentence, line.figures),
                wording.linked(line.rule.says, line.rule.figures),
                f"{line.rule.force.value}, {line.rule.confidence.value}",
                cite(line.rule.source),
            )
            for line in lines
            if line.speaks
        ),
    )


def _labels(plan: ShadePlan, wording: Wording) -> Table:
    del wording
    labels = plan.safety.labels if plan.safety else ()
    return Table(
        title="Labels: the prescribed wording is taken from the rule itself",
        head=("market", "languages", "says", "still lacks", "mind"),
        lines=tuple(
            (
                label.market.value,
                " and ".join(label.languages),
                ", ".join(f"{each.name}: {each.text}" for each in label.fields if each.text),
                ", ".join(each.name for each in label.missing),
                label.note,
            )
            for label in labels
        ),
    )


def _or_none(figure: Figure[Any] | None, wording: Wording) -> Cell:
    return wording.link(figure) if figure else "none"


GRIDS: tuple[Callable[[ShadePlan, Wording], Table], ...] = (
    _cloth,
    _sewing,
    _cords,
    _springs,
    _sensitivities,
    _adjustments,
    _rules,
    _labels,
)
