"""Every piece that is cut besides the layers of the shade, for one list of cloth to cut."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.bands import cut_bands
from foldwright.core.design.layout import Layout, Piece
from foldwright.core.design.linings import cover_strips
from foldwright.core.design.order import Order
from foldwright.core.design.valance import cut_flaps, cut_valance


def cut_pieces(order: Order, layout: Layout) -> Iterator[Piece]:
    """Cut the pieces that hang on or before the shade.

    Takes: the order; its layout, as far as it is drawn.

    Gives: the pieces, each with its cloth, its cut size and where its weight rides.

    Source: common practice.
    """
    yield from cover_strips(order, layout.rows)
    yield from cut_bands(order, layout)
    yield from cut_valance(order, layout.valance)
    yield from cut_flaps(order, layout.flap_length)
