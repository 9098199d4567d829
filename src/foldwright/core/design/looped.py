"""The looped shade: more cloth than drop, in loops that hang there even when it is down."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor

from foldwright.core.design.choices import StyleName
from foldwright.core.design.cloth_marks import mark_the_cloth
from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order, draft, head_allowance, skirt
from foldwright.core.design.pattern_lock import locking_ways
from foldwright.core.design.rows import RowScale, exact_share, row_plan
from foldwright.core.design.style import Style, rods_between_rows, usual_rows
from foldwright.core.facts.panel_limits import (
    BILLOWING_LOOPS,
    HOBBLED_BOOK,
    LOOP_LIMIT,
    LOOPED_HEAD,
    LOOPED_SPACING,
)
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]
N = Figure[float]

HALF = Fraction(1, 2)
FULLNESS_STEP = 20  # fullness is offered in twentieths


class LoopedStyle(Style):
    """Looped: each row spacing carries its own loop of cloth, down as well as up.

    The lowest row lies on the bar's pocket, a skirt up, or as far up as its own loop hangs down,
    so that no loop hangs below the hem. The rows share the whole drop, and the top panel is
    one spacing less what lies below the lowest row, or longer where the head needs it.
    """

    name = StyleName.LOOPED
    billow = BILLOWING_LOOPS

    def largest_spacing(self, order: Order) -> L:
        """Take the smallest of the market's cap, the loop's limit and the spacing asked for."""
        return loop_spacing_limit(order)

    def usual_row_count(self, order: Order) -> Figure[int]:
        """Take the book's count of loops, or more where a limit asks for it."""
        largest = self.largest_spacing(order)
        book = book_loop_count(order.drop)
        return derived(
            "number of rows",
            max(book.value, ceil(order.drop.value / largest.value)),
            Unit.COUNT,
            "The usual count {0}, or more to keep the drop {1} within {2} a row.",
            book,
            order.drop,
            largest,
        )

    def least_spacing(self, order: Order, count: int) -> Fraction:
        """Share the whole drop, unless the top row would then stand too near the head."""
        drop = order.drop.value
        if count == 1:
            return Fraction(drop.nanometres)
        under_head = drop - head_allowance(order).value
        over_skirt = Fraction((under_head - skirt(order).value).nanometres, count - 1)
        shared = min(Fraction(drop.nanometres, count), over_skirt)
        if order.design.skirt is not None:
            return shared
        return min(shared, under_head.nanometres / (count - 1 + _loop_share(order)))

    def rows(self, order: Order, count: Figure[int]) -> RowPlan:
        """Set the rows out from the skirt up."""
        exact = self.least_spacing(order, count.value)
        spacing = derived(
            "row spacing",
            Length(round(exact)),
            Unit.LENGTH,
            "The drop {0} shared by {1} rows, or less where the head needs {2} above the top row.",
            order.drop,
            count,
            head_allowance(order),
            source=HOBBLED_BOOK,
        )
        scale = RowScale(
            count=count,
            exact=exact,
            spacing=spacing,
            first_row=_first_row(order, exact, spacing),
            fullness=fullness(order),
        )
        return mark_the_cloth(row_plan(order, scale))

    def hangs_below(self, order: Order, rows: RowPlan) -> L:
        """Take the lowest loop, or the skirt where that hangs lower."""
        del order
        return max((rows.fold_depth, rows.first_row), key=lambda figure: figure.value)

    def folds(self, rows: RowPlan) -> Figure[int]:
        """Count one loop to a row."""
        because = "One loop over each of the {0} rows."
        return derived("folds in the stack", rows.count.value, Unit.COUNT, because, rows.count)

    def drafts(self, order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Find loops too long for a child's safety, and rods inside loops."""
        yield from loop_draft(order, self, rows)
        yield from self._below_the_hem(order, rows)
        yield from rods_between_rows(order, "A loop has no fold line for a rod to lie in")

    @staticmethod
    def _below_the_hem(order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Find a typed skirt that is shorter than the lowest loop."""
        exact = Fraction(rows.spacing.value.nanometres)
        loop = _loop_below(exact, rows.spacing, rows.fullness)
        if loop.value > rows.first_row.value:
            yield draft(
                Severity.ASK,
                "loop-below-hem",
                "When it is down the lowest loop hangs {0} below its row, and the hem {1}: the"
                " shade is so much longer than it was measured.",
                loop,
                rows.first_row,
                ways=(
                    by_change(
                        order,
                        order.system,
                        "Let the tool set the lowest row as far up as its loop hangs down.",
                        design__skirt=None,
                    ),
                ),
            )


def book_loop_count(drop: L) -> Figure[int]:
    """Count the loops the way a sewing book does.

    Takes: the finished drop.

    Gives: the drop less 3 in, in parts of 6 in, to the nearest whole number, at least one.

    Source: hobbled-shade-book.

    >>> from foldwright.core.why.making import measured
    >>> book_loop_count(measured("drop", Length.inches(63))).value
    10
    """
    parts = (drop.value - LOOPED_HEAD.value) / LOOPED_SPACING.value
    return derived(
        "usual number of loops",
        max(1, floor(parts + HALF)),
        Unit.COUNT,
        "The drop {0} less {1}, in parts of {2}.",
        drop,
        LOOPED_HEAD,
        LOOPED_SPACING,
        source=HOBBLED_BOOK,
    )


def fullness(order: Order) -> N:
    """Tell how much cloth a looped shade has to one of drop.

    Takes: the order.

    Gives: as typed, else the house's.

    Source: hobbled-tutorial (one and a half); hobbled-shade-book (double).

    >>> from foldwright.core.design.example import ORDER
    >>> fullness(ORDER).value
    1.5
    """
    habit = order.habits.looped_fullness
    return order.number("fullness", order.design.fullness, Unit.RATIO, habit)


def loop_of(rows: RowPlan) -> L:
    """Measure the loop that a row spacing makes with the cloth of its fold.

    Takes: the row plan of a looped shade.

    Gives: row spacing and cloth of one loop together.

    Source: hobbled-pattern-diary.
    """
    return derived(
        "loop of cord and cloth",
        rows.spacing.value * (1 + exact_share(rows.fullness)),
        Unit.LENGTH,
        "The row spacing {0} and its cloth, {1} times as long.",
        rows.spacing,
        rows.fullness,
        source=LOOP_LIMIT.source,
    )


def loop_spacing_limit(order: Order) -> L:
    """Take the smallest of the market's cap, the loop's limit and the spacing asked for.

    Takes: the order of a shade with loops.

    Gives: the largest row spacing that all of them allow.

    Source: hobbled-pattern-diary.
    """
    asked = order.design.largest_row_spacing
    typed = () if asked is None else (chosen("largest row spacing", asked, Unit.LENGTH),)
    return min((order.row_cap, _loop_spacing(order), *typed), key=lambda limit: limit.value)


def loop_draft(order: Order, style: Style, rows: RowPlan) -> Iterator[Draft[Order]]:
    """Find loops of cord and cloth that are too long for a child's safety.

    Takes: the order; its style; its rows.

    Gives: a draft of a stop, or none.

    Source: hobbled-pattern-diary.
    """
    loop = loop_of(rows)
    if loop.value > LOOP_LIMIT.value:
        yield draft(
            Severity.STOP,
            "loop-too-long",
            "A row spacing and the cloth of its loop make {0}; workrooms keep it to {1} for"
            " the safety of children.",
            loop,
            LOOP_LIMIT,
            ways=_shorter_loops(order, style, rows),
            source=LOOP_LIMIT.source,
        )


def _shorter_loops(order: Order, style: Style, rows: RowPlan) -> Iterator[Way[Order]]:
    yield from locking_ways(order, style)
    yield usual_rows(order, style)
    yield from _less_fullness(order, rows)
    yield by_hand("Or take a style without loops.")


def _loop_spacing(order: Order) -> L:
    full = fullness(order)
    return derived(
        "largest row spacing by the loop",
        Length(floor(LOOP_LIMIT.value.nanometres / (1 + exact_share(full)))),
        Unit.LENGTH,
        "A loop of {0}, of which the row spacing is one part and the cloth {1}.",
        LOOP_LIMIT,
        full,
        rounding=Rounding.MUST_FIT,
        source=LOOP_LIMIT.source,
    )


def _first_row(order: Order, exact: Fraction, spacing: L) -> L:
    under, loop = skirt(order), _loop_below(exact, spacing, fullness(order))
    if order.design.skirt is not None or loop.value <= under.value:
        because = "The lowest row lies on the bar's pocket, at the skirt {0}."
        return derived("first row", under.value, Unit.LENGTH, because, under)
    because = "As far up as the lowest loop hangs down, {0}, which is more than the skirt {1}."
    return derived("first row", loop.value, Unit.LENGTH, because, loop, under)


def _loop_share(order: Order) -> Fraction:
    """Tell how far a loop hangs below its row when the shade is down, in row spacings."""
    return (exact_share(fullness(order)) - 1) / 2


def _loop_below(exact: Fraction, spacing: L, full: N) -> L:
    return derived(
        "depth of the lowest loop",
        Length(round(exact * (exact_share(full) - 1) / 2)),
        Unit.LENGTH,
        "Half of what {0} of row spacing has more of cloth, at {1} to one.",
        spacing,
        full,
    )


def _less_fullness(order: Order, rows: RowPlan) -> Iterator[Way[Order]]:
    """Offer the fullness that the spacing still allows, where any fullness is left."""
    allowed = floor((LOOP_LIMIT.value / rows.spacing.value - 1) * FULLNESS_STEP) / FULLNESS_STEP
    if allowed > 1:
        figure = chosen("fullness", allowed, Unit.RATIO)
        sentence = "Take {0} of cloth to one of drop."
        yield by_change(order, order.system, sentence, figure, design__fullness=allowed)
