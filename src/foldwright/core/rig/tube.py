"""The tube between its brackets: its cut, where it starts, and what of it is free.

Everything is seen from the back, where the work lies; the board hangs centred behind the
shade, and both ends have alike brackets.
"""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.facts.records import Bracket, Clutch
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import Side
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, supplied

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class TubePlace:
    """The tube on its board, seen from the back."""

    cut: L
    start: L  # board's left end to the tube's left end
    shade_to_tube: L  # left edge of the shade to the tube's left end
    bracket_marks: tuple[L, L]  # from the board's left end
    free_from: L  # from the tube's left end: clear of the left bracket ...
    free_to: L  # ... to the right one


def place_tube(
    size: FinishedSize, bracket: Bracket, clutch: Clutch | None, control: Side
) -> TubePlace:
    """Cut the tube to the board less what its end fittings take, and mark the brackets.

    Takes: the finished size with its board length; the pair of end brackets; the clutch,
    None where there is none; the drive end as seen from the room.

    Gives: the cut (rounded down: it must fit), its place and what the brackets leave free.

    Holds for: two alike brackets; what a clutch takes beyond them, it takes at its end.

    Source: common practice; the deductions stand on the suppliers' sheets.

    >>> from foldwright.core.rig import example
    >>> place_tube(example.SIZE, example.BRACKET, None, Side.RIGHT).cut.value.in_millimetres
    1160.0
    """
    cut = _cut(size, bracket, clutch)
    start = _start(cut, size, bracket, control)
    return TubePlace(
        cut=cut,
        start=start,
        shade_to_tube=_shade_to_tube(size, start),
        bracket_marks=_bracket_marks(size.board_length, bracket),
        free_from=_free_from(start, bracket),
        free_to=_free_to(size.board_length, start, cut, bracket),
    )


def _cut(size: FinishedSize, bracket: Bracket, clutch: Clutch | None) -> L:
    taken = supplied("tube deduction", bracket.tube_deduction, Unit.LENGTH, bracket.name)
    if clutch is not None and clutch.deduction is not None:
        taken = supplied("tube deduction", clutch.deduction, Unit.LENGTH, clutch.name)
    return derived(
        "tube cut",
        size.board_length.value - taken.value,
        Unit.LENGTH,
        "The board of {0} less the {1} that these end fittings take.",
        size.board_length,
        taken,
        rounding=Rounding.MUST_FIT,
    )


def _start(cut: L, size: FinishedSize, bracket: Bracket, control: Side) -> L:
    """Give the idle end half of the brackets' deduction, the drive end what is left."""
    taken = supplied("tube deduction", bracket.tube_deduction, Unit.LENGTH, bracket.name)
    idle = taken.value / 2
    drive = size.board_length.value - cut.value - idle
    drive_at_left = control is Side.RIGHT
    return derived(
        "board end to tube end",
        drive if drive_at_left else idle,
        Unit.LENGTH,
        "What the board of {0} is longer than the tube of {1}, shared by both ends; a clutch takes"
        " what it needs beyond the brackets' {2} at its own end.",
        size.board_length,
        cut,
        taken,
    )


def _bracket_marks(board: L, bracket: Bracket) -> tuple[L, L]:
    inset = supplied("bracket inset", bracket.inset, Unit.LENGTH, bracket.name)
    width = supplied("bracket width", bracket.width, Unit.LENGTH, bracket.name)
    left = bracket.inset + bracket.width / 2
    return (
        derived(
            "left bracket mark",
            left,
            Unit.LENGTH,
            "The inset of {0} and half the bracket's width of {1}.",
            inset,
            width,
        ),
        derived(
            "right bracket mark",
            board.value - left,
            Unit.LENGTH,
            "The board of {2} less the inset of {0} and half the bracket's width of {1}.",
            inset,
            width,
            board,
        ),
    )


def _shade_to_tube(size: FinishedSize, start: L) -> L:
    return derived(
        "shade edge to tube end",
        (size.width.value - size.board_length.value) / 2 + start.value,
        Unit.LENGTH,
        "The board of {1} is centred behind the shade of {0}, and the tube starts {2} in from"
        " the board's end.",
        size.width,
        size.board_length,
        start,
    )


def _free_from(start: L, bracket: Bracket) -> L:
    width = supplied("bracket width", bracket.width, Unit.LENGTH, bracket.name)
    inner_face = bracket.inset + bracket.width - start.value
    return derived(
        "tube free from",
        max(inner_face, Length(0)),
        Unit.LENGTH,
        "Where the left bracket, {0} wide, ends on the tube, which starts {1} from the board end.",
        width,
        start,
    )


def _free_to(board: L, start: L, cut: L, bracket: Bracket) -> L:
    width = supplied("bracket width", bracket.width, Unit.LENGTH, bracket.name)
    inner_face = board.value - bracket.inset - bracket.width - start.value
    return derived(
        "tube free to",
        min(inner_face, cut.value),
        Unit.LENGTH,
        "The tube of {0} up to where the right bracket, {1} wide, begins.",
        cut,
        width,
    )
