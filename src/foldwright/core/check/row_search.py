"""Look for another design that keeps clear, for the numbers of a remedy."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.design.layout import Layout
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import USUAL_MARK
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import chosen
from foldwright.core.why.trying import Way, by_change

MORE_ROWS_TRIED = 6
SKIRT_MARKS = 2  # an eighth of an inch, or 2 mm
SKIRT_STEPS_TRIED = 64


def fewest_more_rows(review: Review, clear: Callable[[Layout], bool]) -> Iterator[Way[ShadeSpec]]:
    """Take the fewest rows more with which a shade keeps clear, if a few are enough."""
    if review.layout is None:
        return
    count = review.layout.rows.count.value
    for rows in range(count + 1, count + 1 + MORE_ROWS_TRIED):
        layout = review.laid_out(replace(review.spec.design, row_count=rows))
        if layout is not None and clear(layout):
            number = chosen("number of rows", rows, Unit.COUNT)
            sentence = "Use {0} rows at {1}."
            yield by_change(
                review.spec,
                review.system,
                sentence,
                number,
                layout.rows.spacing,
                design__row_count=rows,
            )
            return


def nearest_skirt(review: Review, clear: Callable[[Layout], bool]) -> Iterator[Way[ShadeSpec]]:
    """Take the nearest longer skirt, mark by mark, with which a shade keeps clear."""
    for skirt in _longer_skirts(review):
        layout = review.laid_out(replace(review.spec.design, skirt=skirt))
        if layout is not None and clear(layout):
            figure = chosen("skirt", skirt, Unit.LENGTH)
            sentence = "Take a skirt of {0}: the lowest row then lies at {1}."
            yield by_change(
                review.spec,
                review.system,
                sentence,
                figure,
                layout.rows.first_row,
                design__skirt=skirt,
            )
            return


def _longer_skirts(review: Review) -> Iterator[Length]:
    if review.layout is None:
        return
    step = USUAL_MARK[review.system] * SKIRT_MARKS
    first = step * (-(-review.layout.rows.skirt.value.nanometres // step.nanometres))
    yield from (first + step * number for number in range(1, SKIRT_STEPS_TRIED + 1))
