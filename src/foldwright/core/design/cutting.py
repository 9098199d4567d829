"""Cut sizes of every layer, before sewing."""

from __future__ import annotations

from foldwright.core.design.allowances import cut_length, hem_allowance, top_allowance
from foldwright.core.design.layout import LayerCut, RowPlan
from foldwright.core.design.linings import cut_linings
from foldwright.core.design.order import Order
from foldwright.core.design.rod_pockets import in_the_face, in_the_lining, with_pockets
from foldwright.core.design.styles import style_of
from foldwright.core.design.widths import Joining, cut_width
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

L = Figure[Length]


def cut_layers(order: Order, rows: RowPlan, joining: Joining) -> tuple[LayerCut, ...]:
    """Cut the face, and every layer behind it.

    Takes: the order; the rows; the joining of the face.

    Gives: one cut for each layer, printed rounded up; the face first.

    Holds for: side turns over the lining; linings that loop with the face.

    Source: hobby-shade-blog (hem); common practice.
    """
    body = style_of(order.design.style).cloth(order, rows)
    pocketed = with_pockets(order, body, rows)
    front = pocketed if in_the_face(order) else body
    lining = pocketed if in_the_lining(order) else front
    return (_face(order, front, joining), *cut_linings(order, front, lining))


def _face(order: Order, body: L, joining: Joining) -> LayerCut:
    cloth = order.chosen.face
    return LayerCut(
        layer="face",
        cloth=cloth.name if cloth else "",
        width=cut_width(order, joining.joins),
        length=cut_length(order, "face", body, (top_allowance(order), hem_allowance(order))),
        body=body,
    )
