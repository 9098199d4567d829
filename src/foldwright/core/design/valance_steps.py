"""The steps that make a valance and its flaps, and hang them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from foldwright.core.design.layout import Layout, Piece, SewingStep
from foldwright.core.design.making import Valance
from foldwright.core.why.figure import Figure


def valance_steps(layout: Layout) -> Iterator[SewingStep]:
    """Tell how the valance and the return flaps are made.

    Takes: the layout.

    Gives: the steps; none where there is neither.

    Source: common practice.
    """
    pieces = {piece.name: piece for piece in layout.pieces}
    if "return flap" in pieces and layout.flap_length is not None:
        yield SewingStep(
            title="Make the return flaps",
            instruction="Cut {0} flaps {1} wide by {2} long, hem them to {3}, and staple one over"
            " each end of the board.",
            figures=(*_cut(pieces["return flap"]), layout.flap_length),
        )
    if "valance" in pieces:
        yield from _valance(layout, pieces["valance"])


def _valance(layout: Layout, piece: Piece) -> Iterator[SewingStep]:
    plan = layout.valance
    if plan is None:
        return
    yield SewingStep(
        title="Make the valance",
        instruction="Cut {0} of the valance, {1} wide by {2} long; turn the sides and the hem, and"
        " make it {3} wide and {4} deep.",
        figures=(*_cut(piece), plan.width, plan.depth),
    )
    if plan.return_depth is not None:
        yield SewingStep(
            title="Fold the valance's corners",
            instruction="Press a corner {0} from each end: the cloth beyond it goes round the end"
            " of the board.",
            figures=(plan.return_depth,),
        )
    if plan.kind is Valance.ATTACHED:
        yield SewingStep(
            title="Hang the valance",
            instruction="Staple it to the top of the board, over the head of the shade, once the"
            " shade runs.",
        )
    elif plan.board_length is not None and plan.board_depth is not None:
        yield SewingStep(
            title="Hang the valance",
            instruction="Cut it a board of its own, {0} long and {1} deep, and staple it over that;"
            " fix the board after the shade runs.",
            figures=(plan.board_length, plan.board_depth),
        )


def _cut(piece: Piece) -> tuple[Figure[Any], ...]:
    return (piece.count, piece.width, piece.length)
