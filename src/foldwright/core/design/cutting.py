"""Cut sizes of every layer, before sewing."""

from __future__ import annotations

from fractions import Fraction

from foldwright.core.design.layout import LayerCut, RowPlan
from foldwright.core.design.order import Order
from foldwright.core.design.rows import exact_share
from foldwright.core.design.styles import style_of
from foldwright.core.design.widths import Joining, across, cut_width
from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, supplied

L = Figure[Length]
N = Figure[float]


def cut_layers(order: Order, rows: RowPlan, joining: Joining) -> tuple[LayerCut, ...]:
    """Cut the face, and the lining and interlining that are chosen.

    Takes: the order; the rows; the joining of the face.

    Gives: one cut for each layer, printed rounded up; the face first.

    Holds for: side turns over the lining; lining and interlining that loop with the face.

    Source: hobby-shade-blog (hem); common practice.
    """
    cuts = [_face(order, rows, joining)]
    if order.chosen.lining is not None:
        cuts.append(_lining(order, rows, order.chosen.lining))
    if order.chosen.interlining is not None:
        cuts.append(_interlining(order, rows, order.chosen.interlining))
    return tuple(cuts)


def hem_allowance(order: Order) -> L:
    """Tell how much is turned up below the finished bottom edge.

    Takes: the order.

    Gives: as typed, else the house's.

    Source: hobby-shade-blog.
    """
    return order.length("hem allowance", order.design.hem_allowance, order.habits.hem_allowance)


def top_allowance(order: Order) -> L:
    """Tell how much is left above the top line, over the board and under its staples.

    Takes: the order.

    Gives: as typed; else the board's depth, once it is chosen, and the house's spare.

    Source: common practice.
    """
    typed, board = order.design.top_allowance, order.chosen.board
    beyond = order.habits.top_allowance_beyond_board
    if typed is not None or board is None:
        return order.length("top allowance", typed, beyond)
    depth = supplied("board depth", board.depth, Unit.LENGTH, board.name)
    value = depth.value + beyond.value
    because = "Over the board {0}, and {1} for its back and the staples."
    return derived("top allowance", value, Unit.LENGTH, because, depth, beyond)


def shrinkage(order: Order) -> N:
    """Tell what share of its length the cloth loses in steam.

    Takes: the order.

    Gives: as tested and typed, else the house's guess.

    Source: common practice; astm-d3691-09, Table 1 (3 % at most).
    """
    return order.number("shrinkage", order.design.shrinkage, Unit.SHARE, order.habits.shrinkage)


def _face(order: Order, rows: RowPlan, joining: Joining) -> LayerCut:
    cloth = order.chosen.face
    body = style_of(order.design.style).cloth(order, rows)
    return LayerCut(
        layer="face",
        cloth=cloth.name if cloth else "",
        width=cut_width(order, joining.joins),
        length=_length(order, "face", body, (top_allowance(order), hem_allowance(order))),
        body=body,
    )


def _lining(order: Order, rows: RowPlan, cloth: Cloth) -> LayerCut:
    shown, less = across(order), order.habits.lining_less_than_width
    width = derived(
        "cut width of the lining",
        shown.value - less.value,
        Unit.LENGTH,
        "{0} less {1}, so that its raw edges stay under the side turns.",
        shown,
        less,
        rounding=Rounding.CUT_OVERSIZE,
    )
    body = style_of(order.design.style).cloth(order, rows)
    length = _length(order, "lining", body, (top_allowance(order),))
    return LayerCut(layer="lining", cloth=cloth.name, width=width, length=length, body=body)


def _interlining(order: Order, rows: RowPlan, cloth: Cloth) -> LayerCut:
    shown = across(order)
    width = derived(
        "cut width of the interlining",
        shown.value,
        Unit.LENGTH,
        "{0}, to the folds.",
        shown,
        rounding=Rounding.CUT_OVERSIZE,
    )
    body = style_of(order.design.style).cloth(order, rows)
    length = _length(order, "interlining", body, ())
    return LayerCut(layer="interlining", cloth=cloth.name, width=width, length=length, body=body)


def _length(order: Order, layer: str, body: L, allowances: tuple[L, ...]) -> L:
    """Add the allowances to the cloth that the drop takes, and what the steam will take."""
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
