"""Widths of cloth joined for the face: never a seam in the centre."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.design.order import Order
from foldwright.core.design.styles import style_of
from foldwright.core.facts.panel_limits import LEAST_SIDE_PIECE
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, supplied

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class Joining:
    """How the widths of the face are joined; one width has no seams and no pieces."""

    widths: Figure[int]
    joins: int
    seams: tuple[L, ...] = ()
    centre_visible: L | None = None
    side_visible: L | None = None
    side_cut: L | None = None


def join_widths(order: Order) -> Joining:
    """Join as few widths of cloth as will do: full ones in the middle, equal ones at the sides.

    Takes: the order; while the face is not chosen one width is taken to do.

    Gives: the number of widths, and the seams from the left edge as seen from the back;
    they mirror exactly.

    Holds for: cloth wider than two seam allowances.

    Source: common practice (full width in the centre); derived here for the count.

    >>> from foldwright.core.design.example import ORDER
    >>> [float(seam.value.in_inches) for seam in join_widths(ORDER).seams]
    [9.5, 62.5]
    """
    usable = usable_width(order)
    if usable is None:
        because = "One, until the face is chosen and its width known."
        return Joining(widths=derived("widths of the face", 1, Unit.COUNT, because), joins=0)
    count = _count(order, usable)
    if count.value == 1:
        return Joining(widths=count, joins=0)
    return _joined(order, usable, count)


def least_cloth(order: Order) -> L:
    """Give the width of cloth that turns and seams use up, so that none can be joined of it.

    Takes: the order, of which nothing else is impossible.

    Gives: the narrowest side piece as cut, or four seam allowances where those are more.

    Source: derived here: the middle pieces lose two allowances, a side piece turn and seam.
    """
    side, seam = _side_cut(order, LEAST_SIDE_PIECE), order.habits.seam_allowance
    return derived(
        "cloth that turns and seams use up",
        max(side.value, seam.value * 4),
        Unit.LENGTH,
        "A side piece as cut {0}, or four seam allowances of {1}.",
        side,
        seam,
    )


def joins_in(widths: int) -> int:
    """Count the seams between pieces when none may lie in the centre.

    Takes: the number of widths cut.

    Gives: one less than the widths when they are odd; as many as the widths when they are
    even, because the last one is split for both sides.

    Source: derived here.

    >>> joins_in(1), joins_in(2), joins_in(3)
    (0, 2, 2)
    """
    return widths - widths % 2


def across(order: Order) -> L:
    """Tell how much cloth lies across: the face, and both returns where there are any.

    Takes: the order.

    Gives: the width of the flat cloth and twice the return.

    Source: common practice.
    """
    flat, back = flat_width(order), wrapped_return(order)
    if back is None:
        return flat
    value = flat.value + back.value * 2
    because = "The face {0} and a return of {1} at each side."
    return derived("width with returns", value, Unit.LENGTH, because, flat, back)


def wrapped_return(order: Order) -> L | None:
    """Tell how far the face itself is led round the ends of the board.

    Takes: the order.

    Gives: the return; None without returns, or where flaps are cut for them.

    Source: common practice.
    """
    return None if order.making.return_flaps else order.size.return_depth


def flat_width(order: Order) -> L:
    """Tell how wide the face lies flat, before its pleats and gathers are made.

    Takes: the order.

    Gives: the finished width, or as much more as its style takes.

    Source: common practice.
    """
    return style_of(order.design.style).flat_width(order)


def side_turn(order: Order) -> L:
    """Tell how much is turned in at each side.

    Takes: the order.

    Gives: as typed, else the house's.

    Source: common practice.
    """
    return order.length("side turn", order.design.side_turn, order.habits.side_turn)


def cut_width(order: Order, joins: int) -> L:
    """Add up the cloth across the face before sewing.

    Takes: the order; the number of seams.

    Gives: what shows at the hem, two side turns and two allowances a seam.

    Source: common practice.
    """
    shown, turn, seam = across(order), side_turn(order), order.habits.seam_allowance
    flare = _flare(order)
    return derived(
        "cut width of the face",
        shown.value + turn.value * 2 + seam.value * (2 * joins) + _sum(flare),
        Unit.LENGTH,
        f"{{0}} that shows, a side turn of {{1}} twice, and {joins} seams with twice {{2}} each"
        + ("; the hem is cut wider by {3}." if flare else "."),
        shown,
        turn,
        seam,
        *flare,
        rounding=Rounding.CUT_OVERSIZE,
    )


def _flare(order: Order) -> tuple[L, ...]:
    """Give what the hem is cut wider than the head, where it is."""
    flare = style_of(order.design.style).flare(order)
    return () if flare is None else (flare,)


def _sum(figures: tuple[L, ...]) -> Length:
    return sum((figure.value for figure in figures), ZERO)


def usable_width(order: Order) -> L | None:
    """Tell how wide the face is inside its selvages.

    Takes: the order.

    Gives: as its sheet says; None while no face is chosen.

    Source: supplier's sheet.

    >>> from foldwright.core.design.example import ORDER
    >>> usable_width(ORDER).value == Length.inches(54)
    True
    """
    face = order.chosen.face
    if face is None:
        return None
    return supplied("usable width of the face", face.usable_width, Unit.LENGTH, face.name)


def _count(order: Order, usable: L) -> Figure[int]:
    count = 1
    while not _enough(order, usable, count):
        count += 1
    needed = cut_width(order, joins_in(count))
    because = "The fewest widths of {0} that give {1} across with no seam in the centre."
    return derived("widths of the face", count, Unit.COUNT, because, usable, needed)


def _enough(order: Order, usable: L, count: int) -> bool:
    """Tell whether so many widths give the face, and the sides come out of what is theirs."""
    if cut_width(order, joins_in(count)).value > usable.value * count:
        return False
    if count == 1:
        return True
    sides_in_a_width = 2 - count % 2
    side = _side_cut(order, _side_piece(order, _full_piece(order, usable), full_pieces(count)))
    return side.value * sides_in_a_width <= usable.value


def full_pieces(count: int) -> int:
    """Count the full widths in the middle of a layer that is joined from so many.

    Takes: the number of widths cut.

    Gives: all but one that is split for both sides, or all but one for each side.

    Source: derived here.

    >>> full_pieces(2), full_pieces(3), full_pieces(4)
    (1, 1, 3)
    """
    return count - 2 + (count + 1) % 2


def _joined(order: Order, usable: L, count: Figure[int]) -> Joining:
    full = _full_piece(order, usable)
    pieces = full_pieces(count.value)
    side = _side_piece(order, full, pieces)
    seams = _seams(order, side, full, (pieces + 1) // 2)
    return Joining(
        widths=count,
        joins=joins_in(count.value),
        seams=seams,
        centre_visible=_centre_piece(seams),
        side_visible=side,
        side_cut=_side_cut(order, side),
    )


def _full_piece(order: Order, usable: L) -> L:
    """Show a width as it was asked for, as far as its cloth goes; else all of it."""
    full, asked = full_piece(order, usable), order.design.middle_piece
    if asked is None or asked >= full.value:
        return full
    return chosen("middle piece showing", asked, Unit.LENGTH)


def full_piece(order: Order, usable: L) -> L:
    """Tell how wide a full width of cloth shows between its seams.

    Takes: the order; the usable width of the face.

    Gives: the width less both seam allowances.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> full_piece(ORDER, usable_width(ORDER)).value == Length.inches(53)
    True
    """
    seam = order.habits.seam_allowance
    return derived(
        "full width showing",
        usable.value - seam.value * 2,
        Unit.LENGTH,
        "The usable width {0} less a seam allowance of {1} at each side.",
        usable,
        seam,
    )


def full_widths(number: int) -> str:
    """Write a number of full widths in words.

    Takes: the number.

    Gives: text such as "1 full width".

    Source: derived here.

    >>> full_widths(1), full_widths(3)
    ('1 full width', '3 full widths')
    """
    return f"{number} full width" if number == 1 else f"{number} full widths"


def _side_piece(order: Order, full: L, pieces: int) -> L:
    face = flat_width(order)
    left = face.value - full.value * pieces
    half = Length(-(-left.nanometres // 2))
    return derived(
        "side piece showing",
        max(half, LEAST_SIDE_PIECE.value),
        Unit.LENGTH,
        f"Half of what {full_widths(pieces)} of {{1}} leaves of the width {{0}}, but at least"
        " {2}.",
        face,
        full,
        LEAST_SIDE_PIECE,
    )


def _seams(order: Order, side: L, full: L, each_side: int) -> tuple[L, ...]:
    face = flat_width(order)
    left = [_seam(number, side, full) for number in range(each_side)]
    right = [
        derived(
            f"seam {2 * each_side - number}",
            face.value - mark.value,
            Unit.LENGTH,
            "The width of the face {0} less the seam opposite at {1}.",
            face,
            mark,
        )
        for number, mark in enumerate(left)
    ]
    return (*left, *reversed(right))


def _seam(number: int, side: L, full: L) -> L:
    return derived(
        f"seam {number + 1}",
        side.value + full.value * number,
        Unit.LENGTH,
        f"From the left edge as seen from the back: the side piece {{0}} and"
        f" {full_widths(number)} of {{1}}.",
        side,
        full,
    )


def _centre_piece(seams: tuple[L, ...]) -> L:
    right, left = seams[len(seams) // 2], seams[len(seams) // 2 - 1]
    value = right.value - left.value
    because = "From the seam at {0} to the seam at {1}."
    return derived("centre piece showing", value, Unit.LENGTH, because, left, right)


def _side_cut(order: Order, side: L) -> L:
    turn, seam, back = side_turn(order), order.habits.seam_allowance, wrapped_return(order)
    returned, flare = () if back is None else (back,), _flare(order)
    because = "{0} that shows, the side turn {1} and the seam {2}"
    because += ", and the return {3}" if returned else ""
    because += f", and half of the wider hem {{{3 + len(returned)}}}" if flare else ""
    return derived(
        "side piece as cut",
        side.value + turn.value + seam.value + _sum(returned) + _sum(flare) / 2,
        Unit.LENGTH,
        f"{because}.",
        side,
        turn,
        seam,
        *returned,
        *flare,
        rounding=Rounding.CUT_OVERSIZE,
    )
