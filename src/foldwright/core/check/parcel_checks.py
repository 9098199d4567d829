"""Whether the shade gets to its window whole: the box, and the narrowest place on the way."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.facts.order_limits import PARCEL_BEYOND
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, by_change, by_hand


def draft_parcel_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what is wrong with the parcel; nothing until the width is known."""
    if review.size is None:
        return
    width, delivery = review.size.width, review.spec.delivery
    needed = derived(
        "length of the box",
        review.marked(width.value + PARCEL_BEYOND.value, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "The finished width {0} and {1} more, rounded up.",
        width,
        PARCEL_BEYOND,
        rounding=Rounding.CUT_OVERSIZE,
    )
    box, passage = delivery.box_length, delivery.longest_passage
    if box is not None and box < width.value + PARCEL_BEYOND.value:
        yield draft(
            Severity.NOTE,
            "parcel-short",
            "The box is {0} long; the shade wants one of {1}.",
            chosen("box", box, Unit.LENGTH),
            needed,
            ways=(
                by_change(
                    review.spec,
                    review.system,
                    "Take a box {0} long.",
                    needed,
                    delivery__box_length=needed.value,
                ),
            ),
            stage=Stage.INSTALL,
        )
    if passage is not None and passage < width.value:
        yield draft(
            Severity.STOP,
            "does-not-pass",
            "The shade is {0} wide, and the longest thing that passes on the way is {1}.",
            width,
            chosen("longest that passes", passage, Unit.LENGTH),
            ways=(by_hand("Divide the window, or find another way in before it is made."),),
            stage=Stage.MEASURE,
        )
