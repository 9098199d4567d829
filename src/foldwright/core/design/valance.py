"""What hides the headrail: a valance before it, and flaps at the ends of the board."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.allowances import cut_length, over_the_board
from foldwright.core.design.layout import Piece, Rides, Stack, ValancePlan
from foldwright.core.design.making import Valance
from foldwright.core.design.order import Order
from foldwright.core.design.widths import joins_in, side_turn
from foldwright.core.facts.order_limits import VALANCE_BEYOND
from foldwright.core.facts.panel_limits import VALANCE_CLEAR, VALANCE_SHARE
from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, fact, supplied
from foldwright.core.why.source import Status

L = Figure[Length]


def plan_valance(order: Order, stack: Stack) -> ValancePlan | None:
    """Plan the valance: how deep, how wide, how far round the ends, and on which board.

    Takes: the order; its raised stack, before which a separate valance must stand clear.

    Gives: the plan, or None where there is no valance.

    Source: common practice.
    """
    kind = order.making.valance
    if kind is Valance.NONE:
        return None
    board = _own_board(order, stack) if kind is Valance.SEPARATE else None
    width = _width(order, board)
    back = order.size.return_depth if board is None else _own_return(order, board)
    return ValancePlan(
        kind=kind,
        depth=valance_depth(order),
        width=width,
        return_depth=back,
        board_depth=board,
        board_length=None if board is None else _board_length(order, width),
    )


def valance_depth(order: Order) -> L:
    """Tell how deep a valance hangs.

    Takes: the order.

    Gives: as typed; else the usual share of the drop, and never less than hides the headrail.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> float(valance_depth(ORDER).value.in_inches)  # a sixth of 60 in
    10.0
    """
    typed = order.making.valance_depth
    if typed is not None:
        return chosen("depth of the valance", typed, Unit.LENGTH)
    least = least_valance_depth(order)
    usual = Length.metres(order.drop.value.in_metres * VALANCE_SHARE.value)
    deep = usual if least is None else max(usual, least.value)
    because = "{1} of the drop {0}" + (", but at least {2}." if least else ".")
    inputs = (order.drop, VALANCE_SHARE, *((least,) if least else ()))
    value = order.marked(deep, Rounding.CUT_OVERSIZE)
    return derived("depth of the valance", value, Unit.LENGTH, because, *inputs)


def least_valance_depth(order: Order) -> L | None:
    """Tell the least depth of a valance that hides the headrail.

    Takes: the order.

    Gives: an exact length; None while no brackets are chosen.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> least_valance_depth(ORDER) is None
    True
    """
    bracket = order.chosen.bracket
    if bracket is None:
        return None
    height = supplied("headrail height", bracket.height, Unit.LENGTH, bracket.name)
    above = _board_above(order)
    value = height.value + VALANCE_BEYOND.value + sum((each.value for each in above), ZERO)
    return derived(
        "least depth of the valance",
        value,
        Unit.LENGTH,
        "The headrail {0} and {1} below it"
        + (", and its own board {2} above the shade's" if above else "")
        + ".",
        height,
        VALANCE_BEYOND,
        *above,
        rounding=Rounding.CUT_OVERSIZE,
    )


def _board_above(order: Order) -> tuple[L, ...]:
    """Give the thickness of a separate valance's board, which lies on top of the shade's."""
    board = order.chosen.board
    if order.making.valance is not Valance.SEPARATE or board is None:
        return ()
    return (supplied("thickness of the valance's board", board.thickness, Unit.LENGTH, board.name),)


def flap_length(order: Order, stack: Stack) -> L | None:
    """Tell how long the flaps at the ends of the board hang.

    Takes: the order; its raised stack.

    Gives: as long as the raised shade, so that they hide it from the side; None without flaps.

    Source: common practice (flaps cut apart for a shade that is raised); the length is the house's.
    """
    if not order.making.return_flaps or order.size.return_depth is None:
        return None
    because = "As long as the raised shade {0}, which it hides from the side."
    value = order.marked(stack.raised_size.value, Rounding.CUT_OVERSIZE)
    return derived("length of a return flap", value, Unit.LENGTH, because, stack.raised_size)


def cut_valance(order: Order, plan: ValancePlan | None) -> Iterator[Piece]:
    """Cut a valance and its lining.

    Takes: the order; the plan of its valance, if any.

    Gives: the pieces; a valance wider than a cloth that may not be turned takes several widths.

    Source: common practice.
    """
    if plan is None:
        return
    rides = Rides.BOARD if plan.kind is Valance.ATTACHED else Rides.OWN_BOARD
    yield _faced(order, plan, rides)
    if order.chosen.lining is not None:
        yield _backed(order, plan, rides)


def cut_flaps(order: Order, length: L | None) -> Iterator[Piece]:
    """Cut the flaps that close the ends of the board.

    Takes: the order; the length of a flap, if any are wanted.

    Gives: one piece, cut twice.

    Source: common practice.
    """
    back, turn = order.size.return_depth, side_turn(order)
    if length is None or back is None:
        return
    cloth = order.chosen.face
    yield Piece(
        name="return flap",
        layer="face",
        cloth=cloth.name if cloth else "",
        count=fact("return flaps", 2, Unit.COUNT, "One at each end of the board.", Status.PRACTICE),
        width=derived(
            "cut width of a return flap",
            back.value + turn.value * 2,
            Unit.LENGTH,
            "The return {0}, and a side turn of {1} twice.",
            back,
            turn,
            rounding=Rounding.CUT_OVERSIZE,
        ),
        length=cut_length(order, "return flap", length, (over_the_board(order), turn)),
        rides=Rides.BOARD,
    )


def _own_board(order: Order, stack: Stack) -> L:
    """Carry a separate valance clear of the headrail and of the raised stack before it."""
    board, bracket = order.chosen.board, order.chosen.bracket
    depths = [
        supplied(f"{name} depth", record.depth, Unit.LENGTH, record.name)
        for name, record in (("board", board), ("headrail", bracket))
        if record is not None
    ]
    rail = max((depth.value for depth in depths), default=ZERO)
    return derived(
        "depth of the valance's board",
        order.marked(rail + stack.depth.value + VALANCE_CLEAR.value, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "The raised stack {0} before board and headrail, with {1} to spare"
        + "".join(f", {{{number}}}" for number in range(2, len(depths) + 2))
        + ".",
        stack.depth,
        VALANCE_CLEAR,
        *depths,
        rounding=Rounding.CUT_OVERSIZE,
    )


def _width(order: Order, board: L | None) -> L:
    """Make a valance as wide as the shade; one on its own board clears it at both sides."""
    if board is None or not order.size.outside:
        because = "As wide as the shade {0}."
        return derived("width of the valance", order.width.value, Unit.LENGTH, because, order.width)
    value = order.width.value + VALANCE_CLEAR.value * 2
    because = "The shade {0}, and {1} to spare at each side."
    return derived("width of the valance", value, Unit.LENGTH, because, order.width, VALANCE_CLEAR)


def _own_return(order: Order, board: L) -> L | None:
    """Lead a separate valance round the ends of its board, but not in a reveal."""
    if not order.size.outside:
        return None
    return derived("return of the valance", board.value, Unit.LENGTH, "Its own board, {0}.", board)


def _board_length(order: Order, width: L) -> L:
    less = order.habits.board_deduction
    because = "The valance {0} less {1}, so that it hides the ends of its board."
    return derived(
        "length of the valance's board",
        width.value - less.value,
        Unit.LENGTH,
        because,
        width,
        less,
        rounding=Rounding.MUST_FIT,
    )


def _round_about(plan: ValancePlan) -> L:
    """Give the finished valance with both its returns, laid flat."""
    if plan.return_depth is None:
        return plan.width
    value = plan.width.value + plan.return_depth.value * 2
    because = "The valance {0} and a return of {1} at each end."
    name = "valance with its returns"
    return derived(name, value, Unit.LENGTH, because, plan.width, plan.return_depth)


def _faced(order: Order, plan: ValancePlan, rides: Rides) -> Piece:
    cloth, turn = order.chosen.valance or order.chosen.face, side_turn(order)
    widths = _widths(order, _round_about(plan).value + turn.value * 2, cloth)
    return Piece(
        name="valance",
        layer="valance" if order.chosen.valance else "face",
        cloth=cloth.name if cloth else "",
        count=_count(widths),
        width=_faced_width(order, plan, widths),
        length=cut_length(order, "valance", plan.depth, (_over_board(order, plan), turn)),
        rides=rides,
    )


def _faced_width(order: Order, plan: ValancePlan, widths: int) -> L:
    flat, turn, seam = _round_about(plan), side_turn(order), order.habits.seam_allowance
    joined = (seam,) if widths > 1 else ()
    because = "{0} and a side turn of {1} twice"
    if joined:
        because += f", with seams of {{2}} shared by {widths} widths, a full one in the centre"
    return derived(
        "cut width of the valance",
        (flat.value + turn.value * 2 + seam.value * (2 * joins_in(widths))) / widths,
        Unit.LENGTH,
        f"{because}.",
        flat,
        turn,
        *joined,
        rounding=Rounding.CUT_OVERSIZE,
    )


def _backed(order: Order, plan: ValancePlan, rides: Rides) -> Piece:
    lining, flat, less = (
        order.chosen.lining,
        _round_about(plan),
        order.habits.lining_less_than_width,
    )
    return Piece(
        name="valance lining",
        layer="lining",
        cloth=lining.name if lining else "",
        count=_count(1),
        width=derived(
            "cut width of the valance lining",
            flat.value - less.value,
            Unit.LENGTH,
            "{0} less {1}, under its side turns.",
            flat,
            less,
            rounding=Rounding.CUT_OVERSIZE,
        ),
        length=cut_length(order, "valance lining", plan.depth, (_over_board(order, plan),)),
        rides=rides,
    )


def _over_board(order: Order, plan: ValancePlan) -> L:
    """Leave cloth over the board that carries the valance, and for its staples."""
    if plan.board_depth is None:
        return over_the_board(order)
    beyond = order.habits.top_allowance_beyond_board
    value = plan.board_depth.value + beyond.value
    because = "Over its board {0}, and {1} for the staples."
    name = "top allowance of the valance"
    return derived(name, value, Unit.LENGTH, because, plan.board_depth, beyond)


def _widths(order: Order, whole: Length, cloth: Cloth | None) -> int:
    """Count widths: a valance is turned along the roll unless the cloth has an up and a down."""
    if cloth is None or not cloth.directional:
        return 1
    count, seam = 1, order.habits.seam_allowance.value
    while whole + seam * (2 * joins_in(count)) > cloth.usable_width * count:
        count += 1
    return count


def _count(number: int) -> Figure[int]:
    because = "As many widths as it takes, the cloth along the roll where it may be turned."
    return fact("pieces", number, Unit.COUNT, because, Status.PRACTICE)
