"""Every piece that is cut besides the layers of the shade, for one list of cloth to cut."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.layout import Piece, RowPlan
from foldwright.core.design.linings import cover_strips
from foldwright.core.design.order import Order


def cut_pieces(order: Order, rows: RowPlan) -> Iterator[Piece]:
    """Cut the pieces that hang on or before the shade.

    Takes: the order; its rows.

    Gives: the pieces, each with its cloth, its cut size and where its weight rides.

    Source: common practice.
    """
    yield from cover_strips(order, rows)
