"""What shows past an edge or bulges at one: lining, bar, rods, seams at the hardware."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.design.column_checks import narrower_middle
from foldwright.core.facts.order_limits import (
    BAR_EDGE,
    LINING_EDGE,
    ROD_EDGE,
    SEAM_TO_HARDWARE,
)
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import derived
from foldwright.core.why.trying import Draft, Way, by_hand

L = Figure[Length]


def draft_edge_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what shows past an edge of the shade."""
    yield from _lining(review)
    yield from _bar(review)
    yield from _rod(review)
    yield from _seam(review)


def _lining(review: Review) -> Iterator[Draft[ShadeSpec]]:
    less = review.habits.lining_less_than_width
    if review.chosen.lining is not None and less.value < LINING_EDGE.value:
        yield draft(
            Severity.NOTE,
            "lining-shows",
            "The lining is cut only {0} narrower than the shade; within {1} it shows at the edge.",
            less,
            LINING_EDGE,
            ways=(by_hand("Set the habit of the lining to {0} or more.", LINING_EDGE),),
            stage=Stage.ORDER,
        )


def _bar(review: Review) -> Iterator[Draft[ShadeSpec]]:
    less = review.habits.bar_less_than_width
    if review.chosen.bar is not None and less.value < BAR_EDGE.value:
        yield draft(
            Severity.NOTE,
            "bar-too-long",
            "The bar is cut only {0} shorter than the shade; within {1} it scrapes the reveal.",
            less,
            BAR_EDGE,
            ways=(by_hand("Set the habit of the bar to {0} or more.", BAR_EDGE),),
            stage=Stage.HEADRAIL,
            source=BAR_EDGE.source,
        )


def _rod(review: Review) -> Iterator[Draft[ShadeSpec]]:
    less, rods = review.habits.rod_less_than_width, review.layout and review.layout.rows.rod_marks
    if rods and review.chosen.rod is not None and less.value < ROD_EDGE.value:
        yield draft(
            Severity.NOTE,
            "rod-too-long",
            "The rods are cut only {0} shorter than the shade; within {1} they poke out.",
            less,
            ROD_EDGE,
            ways=(by_hand("Set the habit of the rods to {0} or more.", ROD_EDGE),),
            stage=Stage.HEADRAIL,
        )


def _seam(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find the seam that comes nearest to hardware, and too near."""
    gaps = sorted(_gaps(review), key=lambda gap: gap.value)
    if gaps and gaps[0].value < SEAM_TO_HARDWARE.value:
        shift = derived(
            "shift of the seam",
            review.marked(SEAM_TO_HARDWARE.value - gaps[0].value, Rounding.CUT_OVERSIZE),
            Unit.LENGTH,
            "The {0} wanted less the {1} there is.",
            SEAM_TO_HARDWARE,
            gaps[0],
            rounding=Rounding.CUT_OVERSIZE,
        )
        yield draft(
            Severity.NOTE,
            "seam-at-hardware",
            "A seam lies {0} from a bracket, the pull or the end of the bar; within {1} it bulges.",
            gaps[0],
            SEAM_TO_HARDWARE,
            ways=_elsewhere(review, shift),
            stage=Stage.HEADRAIL,
        )


def _elsewhere(review: Review, shift: L) -> Iterator[Way[ShadeSpec]]:
    order = review.order
    if order is not None:
        yield from narrower_middle(order, review.spec, shift)
    yield by_hand("Or join the cloth elsewhere, so that the seams move by {0}.", shift)


def _gaps(review: Review) -> Iterator[L]:
    if review.layout is None:
        return
    places = tuple(_hardware(review))
    for seam in review.layout.widths.seams:
        for place in places:
            yield derived(
                "seam to hardware",
                abs(seam.value - place.value),
                Unit.LENGTH,
                f"From the seam at {{0}} to the {place.name} at {{1}}.",
                seam,
                place,
            )


def _hardware(review: Review) -> Iterator[L]:
    """Give brackets, pull and ends of the bar, from the left edge as seen from the back."""
    rail, size = review.plan.headrail, review.size
    if rail is None or size is None:
        return
    yield rail.handle
    for mark in rail.bracket_marks:
        yield derived(
            "bracket",
            mark.value + (size.width.value - size.board_length.value) / 2,
            Unit.LENGTH,
            "{0} from the end of the board {1}, which is centred on the shade {2}.",
            mark,
            size.board_length,
            size.width,
        )
