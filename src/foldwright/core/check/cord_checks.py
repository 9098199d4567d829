"""Whether the cords came out alike, as they were measured at the bench."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.facts.bench import EQUAL_CORDS
from foldwright.core.quantity.length import ZERO
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import measured
from foldwright.core.why.trying import Draft, by_change, by_hand


def draft_cord_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what is wrong with the cords; nothing until they are measured."""
    apart = review.spec.lift.cords_apart
    if apart is None or apart <= EQUAL_CORDS.value:
        return
    found = measured("longest cord less the shortest", apart)
    yield draft(
        Severity.ASK,
        "cords-unequal",
        "The cords differ by {0}; beyond {1} the bar hangs out of level.",
        found,
        EQUAL_CORDS,
        ways=(
            by_hand("Tie the longest up by {0}, at its ring and never by turns.", found),
            by_change(
                review.spec,
                review.system,
                "They are tied anew, and measure alike.",
                lift__cords_apart=ZERO,
            ),
        ),
        stage=Stage.BENCH,
    )
