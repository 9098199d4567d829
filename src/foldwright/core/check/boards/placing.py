"""Where each shade of a board hangs, and where its cords come down, in marks along the board."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.layout import ColumnPlan, Layout
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class Hanging:
    """A shade that can be hung: its plan with the rooms that are needed here answered."""

    plan: ShadePlan
    size: FinishedSize
    layout: Layout

    @property
    def tag(self) -> str:
        """Give its tag."""
        return self.plan.spec.tag


@dataclass(frozen=True, kw_only=True, slots=True)
class OnBoard:
    """One shade on its board; marks run from the board's left end, seen from the back."""

    tag: str
    width: L
    left: L  # its left edge; less than nothing where the cloth hides the board's end
    columns: tuple[L, ...]
    brackets: tuple[L, ...] = ()  # of a tube of its own


def width_over_all(shades: tuple[Hanging, ...], gap: Length) -> L:
    """Add up the shades of a board and the gaps between them.

    Takes: the shades; the gap between two.

    Gives: the width from the outermost edge to the other.

    Source: derived here.

    >>> width_over_all((), Length(0)).value.nanometres
    0
    """
    slots = ", ".join(f"{{{number}}}" for number in range(len(shades)))
    gaps = chosen("gap between two shades", gap, Unit.LENGTH)
    between = max(len(shades) - 1, 0)
    return derived(
        "width over all shades",
        sum((shade.size.width.value for shade in shades), ZERO) + gap * between,
        Unit.LENGTH,
        f"{slots or 'No shade'}, and {between} times {{{len(shades)}}} between them.",
        *(shade.size.width for shade in shades),
        gaps,
    )


def board_for(over_all: L, less: L) -> L:
    """Cut the board a little shorter than all its shades together.

    Takes: the width over all; what a board is shorter by.

    Gives: its length, to be rounded down.

    Source: common practice.

    >>> wide, less = (chosen("w", Length.mm(mm), Unit.LENGTH) for mm in (1800, 6))
    >>> board_for(wide, less).value.in_millimetres
    1794.0
    """
    return derived(
        "length of the shared board",
        over_all.value - less.value,
        Unit.LENGTH,
        "{0} over all shades less {1}, so that the cloth hides the ends of the board.",
        over_all,
        less,
        rounding=Rounding.MUST_FIT,
    )


def place_shades(
    shades: tuple[Hanging, ...], gap: Length, less: L, *, own_tubes: bool
) -> tuple[OnBoard, ...]:
    """Mark every shade along the board, from its left end as seen from the back.

    Takes: the shades from left to right as seen from the room; the gap; what the board is
    shorter than all of them; whether each has a tube, with brackets, of its own.

    Gives: the shades from left to right as seen from the back, so the other way round.

    Source: derived here; common practice (one end to measure from).

    >>> place_shades((), Length(0), chosen("less", Length(0), Unit.LENGTH), own_tubes=True)
    ()
    """
    placed, left = [], -(less.value / 2)
    for shade in reversed(shades):
        edge = derived(
            f"left edge of {shade.tag}".replace("{", "(").replace("}", ")"),
            left,
            Unit.LENGTH,
            "From the board's left end, seen from the back: half of {0}, and all that hangs left"
            " of it.",
            less,
        )
        placed.append(_on_board(shade, edge, own_tubes=own_tubes))
        left = left + shade.size.width.value + gap
    return tuple(placed)


def _on_board(shade: Hanging, edge: L, *, own_tubes: bool) -> OnBoard:
    columns = tuple(
        derived(
            mark.name,
            edge.value + mark.value,
            Unit.LENGTH,
            "{0} from the edge of its shade, which hangs at {1}.",
            mark,
            edge,
        )
        for mark in shade.layout.columns.marks
    )
    brackets = tuple(_brackets(shade, edge)) if own_tubes else ()
    return OnBoard(
        tag=shade.tag, width=shade.size.width, left=edge, columns=columns, brackets=brackets
    )


def _brackets(shade: Hanging, edge: L) -> tuple[L, ...]:
    """Hold its own tube where it would be held on a board of its own."""
    rail = shade.plan.headrail
    if rail is None:
        return ()
    less = derived(
        "edge of the shade beyond its own board",
        (shade.size.width.value - rail.board_length.value) / 2,
        Unit.LENGTH,
        "Half of what {0} has more than {1}.",
        shade.size.width,
        rail.board_length,
    )
    return tuple(
        derived(
            mark.name,
            edge.value + less.value + mark.value,
            Unit.LENGTH,
            "{0} from the end of a board of its own, which would begin {1} in from its edge at"
            " {2}.",
            mark,
            less,
            edge,
        )
        for mark in rail.bracket_marks
    )


def columns_together(placed: tuple[OnBoard, ...], less: L) -> ColumnPlan:
    """Take the columns of all shades as those of one, from its left edge seen from the back.

    Takes: the shades on their board; what the board is shorter than all of them.

    Gives: the columns; their pitch is the least there is, since cords wind in every bay.

    Holds for: one shade or more.

    Source: derived here.
    """
    half = less.value / 2
    marks = tuple(
        derived(
            f"column {number}",
            mark.value + half,
            Unit.LENGTH,
            "{0} from the board's end, which lies half of {1} in from the edge.",
            mark,
            less,
        )
        for number, mark in enumerate((mark for one in placed for mark in one.columns), start=1)
    )
    apart = min(after.value - before.value for before, after in pairwise(marks))
    because = "The least distance of two cords on the tube, within a shade or from one to the next."
    return ColumnPlan(
        count=derived("columns of all shades", len(marks), Unit.COUNT, "All cords on one tube."),
        marks=marks,
        pitch=derived("least column pitch", apart, Unit.LENGTH, because),
        edge_distance=marks[0],
    )
