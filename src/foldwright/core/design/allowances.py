"""What is left around a finished layer: hem, top, and what the steam will take."""

from __future__ import annotations

from fractions import Fraction

from foldwright.core.design.layout import TapePlan
from foldwright.core.design.making import TopFixing
from foldwright.core.design.order import Order
from foldwright.core.design.rows import exact_share
from foldwright.core.facts.panel_limits import TAPE_WIDTH, TOP_TURN
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, supplied

L = Figure[Length]
N = Figure[float]


def hem_allowance(order: Order) -> L:
    """Tell how much is turned up below the finished bottom edge.

    Takes: the order.

    Gives: as typed, else the house's.

    Source: hobby-shade-blog.
    """
    return order.length("hem allowance", order.design.hem_allowance, order.habits.hem_allowance)


def top_allowance(order: Order) -> L:
    """Tell how much is left above the top line, over the board or turned to the back.

    Takes: the order.

    Gives: as typed; else what staples need, or the turn of a head that is held by tape.

    Source: common practice.
    """
    if order.design.top_allowance is None and order.making.top is TopFixing.STAPLES:
        return over_the_board(order)
    return order.length("top allowance", order.design.top_allowance, TOP_TURN)


def over_the_board(order: Order) -> L:
    """Tell how much cloth goes over the board and under its staples.

    Takes: the order.

    Gives: the board's depth, once it is chosen, and the house's spare.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> float(over_the_board(ORDER).value.in_inches)
    2.0
    """
    board, beyond = order.chosen.board, order.habits.top_allowance_beyond_board
    if board is None:
        return beyond
    depth = supplied("board depth", board.depth, Unit.LENGTH, board.name)
    value = depth.value + beyond.value
    because = "Over the board {0}, and {1} for its back and the staples."
    return derived("top allowance", value, Unit.LENGTH, because, depth, beyond)


def head_tape(order: Order) -> TapePlan | None:
    """Tell which tape holds the head of the shade.

    Takes: the order.

    Gives: its width and its length, that of the board; None where the head is stapled.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> head_tape(ORDER) is None
    True
    """
    if order.making.top is TopFixing.STAPLES:
        return None
    board = order.size.board_length
    because = "As long as the board {0}."
    length = derived("length of the tape", board.value, Unit.LENGTH, because, board)
    return TapePlan(width=TAPE_WIDTH, length=length)


def shrinkage(order: Order) -> N:
    """Tell what share of its length the cloth loses in steam.

    Takes: the order.

    Gives: as tested and typed, else the house's guess.

    Source: common practice; astm-d3691-09, Table 1 (3 % at most).
    """
    return order.number("shrinkage", order.design.shrinkage, Unit.SHARE, order.habits.shrinkage)


def cut_length(order: Order, layer: str, body: L, allowances: tuple[L, ...]) -> L:
    """Add the allowances to the cloth that the drop takes, and what the steam will take.

    Takes: the order; the layer's name; the cloth from hem to top line; what is left beyond it.

    Gives: the cut length, printed rounded up.

    Source: common practice.
    """
    shrink = shrinkage(order)
    whole = body.value.nanometres + sum(allowance.value.nanometres for allowance in allowances)
    extra = "".join(f" and {{{number + 2}}}" for number in range(len(allowances)))
    return derived(
        f"cut length of the {layer}",
        Length(round(Fraction(whole) / (1 - exact_share(shrink)))),
        Unit.LENGTH,
        f"The cloth {{0}}{extra}, longer by the shrinkage {{1}}.",
        body,
        shrink,
        *allowances,
        rounding=Rounding.CUT_OVERSIZE,
    )
