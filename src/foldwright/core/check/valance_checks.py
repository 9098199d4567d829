"""What is wrong with a valance, its returns and its flaps."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.design.making import Valance
from foldwright.core.design.valance import least_valance_depth, valance_depth
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived, supplied
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]


def draft_valance_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what is wrong with what hides the headrail."""
    yield from _which(review)
    yield from _short(review)
    yield from _ends_seen(review)
    yield from _flaps_without_returns(review)
    yield from _reveal(review)


def _which(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Ask on which board a valance hangs, where only its depth is typed."""
    depth = review.spec.making.valance_depth
    if depth is None or review.spec.making.valance is not Valance.NONE:
        return
    yield draft(
        Severity.ASK,
        "valance-kind",
        "A valance {0} deep is asked for: does it hang from the shade's own board, or from one of"
        " its own?",
        chosen("depth of the valance", depth, Unit.LENGTH),
        ways=(
            _change(review, "Staple it to the shade's board.", making__valance=Valance.ATTACHED),
            _change(review, "Give it a board of its own.", making__valance=Valance.SEPARATE),
            _change(review, "Leave it out.", making__valance_depth=None),
        ),
        stage=Stage.ORDER,
    )


def _short(review: Review) -> Iterator[Draft[ShadeSpec]]:
    order = review.order
    if order is None or review.spec.making.valance is Valance.NONE:
        return
    least, depth = least_valance_depth(order), valance_depth(order)
    if least is None or depth.value >= least.value:
        return
    deep = derived(
        "depth of the valance",
        review.marked(least.value, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "{0}, rounded up to a mark.",
        least,
    )
    yield draft(
        Severity.NOTE,
        "valance-short",
        "The valance is {0} deep; with less than {1} the headrail shows under it.",
        depth,
        least,
        ways=(_change(review, "Make it {0} deep.", deep, making__valance_depth=deep.value),),
        stage=Stage.ORDER,
    )


def _ends_seen(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find a valance before a board whose ends stand open to the side."""
    board = review.chosen.board
    attached = review.spec.making.valance is Valance.ATTACHED
    if not attached or not review.outside or review.spec.mount.returns or board is None:
        return
    yield draft(
        Severity.NOTE,
        "valance-without-returns",
        "The valance hides the headrail from the room, but the board stands {0} out and its ends"
        " are seen from the side.",
        supplied("board depth", board.depth, Unit.LENGTH, board.name),
        ways=(
            _change(
                review,
                "Lead the valance round its ends, with flaps for the shade.",
                mount__returns=True,
                making__return_flaps=True,
            ),
        ),
        stage=Stage.ORDER,
    )


def _flaps_without_returns(review: Review) -> Iterator[Draft[ShadeSpec]]:
    spec = review.spec
    if not spec.making.return_flaps or (review.outside and spec.mount.returns):
        return
    back = () if not review.outside else (_change(review, "Close the sides.", mount__returns=True),)
    yield draft(
        Severity.ASK,
        "flaps-without-returns",
        "Return flaps are asked for, but the shade has no returns to the wall.",
        ways=(*back, _change(review, "Leave the flaps out.", making__return_flaps=False)),
        stage=Stage.ORDER,
    )


def _reveal(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find a separate valance whose board stands out of the reveal it is to hang in."""
    plan, size = review.layout.valance if review.layout else None, review.size
    if plan is None or size is None or size.clear_depth is None or plan.board_depth is None:
        return
    if plan.board_depth.value > size.clear_depth.value:
        yield draft(
            Severity.ASK,
            "valance-stands-out",
            "The valance's own board is {0} deep to clear the raised shade; the reveal is {1}.",
            plan.board_depth,
            size.clear_depth,
            ways=(
                _change(
                    review, "Staple it to the shade's board.", making__valance=Valance.ATTACHED
                ),
                by_hand("Or let it stand out of the reveal, with returns."),
            ),
            stage=Stage.ORDER,
        )


def _change(review: Review, sentence: str, *figures: L, **fields: object) -> Way[ShadeSpec]:
    return by_change(review.spec, review.system, sentence, *figures, **fields)
