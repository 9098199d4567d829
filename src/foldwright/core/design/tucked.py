"""The tucked shade: a stitched ridge at every fold line, so that the folds need no dressing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from math import ceil, floor

from foldwright.core.design.choices import StyleName
from foldwright.core.design.flat import (
    FlatStyle,
    first_row_over_skirt,
    no_fullness,
    spacing_limit,
)
from foldwright.core.design.layout import ColumnPlan, Layout, RowPlan, SewingStep, Sewn, SewnLine
from foldwright.core.design.order import Order, head_allowance, skirt
from foldwright.core.design.panels import cloth_of
from foldwright.core.design.rows import RowScale, row_plan
from foldwright.core.design.style import rods_between_rows
from foldwright.core.facts.panel_limits import TUCK_BOOK, TUCK_SPACING, TUCKED_HEAD
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived
from foldwright.core.why.trying import Draft

L = Figure[Length]

HALF = Fraction(1, 2)
TUCKS_TO_A_ROW = 2


class TuckedStyle(FlatStyle):
    """Tucked: rings on every other tuck, from the lowest up.

    The rows share the whole drop, half a spacing below the lowest one and half above the
    top one, or less where the head needs more; every other tuck stands for itself, in the
    middle between two rows, where the fold turns.
    """

    name = StyleName.TUCKED

    def usual_row_count(self, order: Order) -> Figure[int]:
        """Take half the book's count of tucks, or more where a limit asks for it."""
        tucks, largest = book_tuck_count(order.drop), spacing_limit(order)
        return derived(
            "number of rows",
            max(ceil(Fraction(tucks.value, TUCKS_TO_A_ROW)), _fewest_within(order, largest)),
            Unit.COUNT,
            "Every other one of the usual {0} tucks, or more to keep the rows within {1} on a drop"
            " of {2}.",
            tucks,
            largest,
            order.drop,
        )

    def least_spacing(self, order: Order, count: int) -> Fraction:
        """Share the whole drop, unless the top row would then stand too near the head."""
        drop = order.drop.value
        free = drop - skirt(order).value - head_allowance(order).value
        return min(Fraction(drop.nanometres, count), free.nanometres / (count - HALF))

    def rows(self, order: Order, count: Figure[int]) -> RowPlan:
        """Set the rows out from half a spacing above the skirt, with a tuck at and between them."""
        exact = self.least_spacing(order, count.value)
        spacing = derived(
            "row spacing",
            Length(round(exact)),
            Unit.LENGTH,
            "The drop {0} shared by {1} rows, or less where the head needs {2} above the top row.",
            order.drop,
            count,
            head_allowance(order),
            source=TUCK_BOOK,
        )
        scale = RowScale(
            count=count,
            exact=exact,
            spacing=spacing,
            first_row=first_row_over_skirt(order, exact, spacing),
            fullness=no_fullness(),
        )
        plain = row_plan(order, scale)
        ridged = replace(plain, ridges=tuple(_ridges(order, plain, exact)))
        return replace(ridged, cloth_marks=tuple(_rows_on_the_cloth(order, ridged)))

    def drafts(self, order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Find folds out of taste, and rods between the rows."""
        yield from super().drafts(order, rows)
        yield from rods_between_rows(order, "Between the rows a tuck already turns the fold")

    def cloth(self, order: Order, rows: RowPlan) -> L:
        """Add what every tuck takes to the drop."""
        each, count = tuck(order), tuck_count(rows)
        return derived(
            "cloth from hem to top line",
            cloth_of(rows) + each.value * count.value,
            Unit.LENGTH,
            "The drop {0} and {1} tucks of {2}.",
            order.drop,
            count,
            each,
        )

    def sewn(self, order: Order, rows: RowPlan, columns: ColumnPlan) -> tuple[SewnLine, ...]:
        """Mark the middle of every tuck on the flat cloth."""
        del columns
        return tuple(SewnLine(kind=Sewn.TUCK, at=mark) for mark in _tucks_on_the_cloth(order, rows))

    def before_the_turns(self, order: Order, layout: Layout) -> Iterator[SewingStep]:
        """Sew the tucks while the panel is flat."""
        yield SewingStep(
            title="Sew the tucks",
            instruction="Baste face and lining together. Fold along each of {0} tuck lines, the"
            " lowest {1} above the bottom edge of the flat cloth, and stitch so that {2} is taken"
            " up; then measure the drop {3} anew.",
            figures=(
                tuck_count(layout.rows),
                layout.sewn[0].at,
                tuck(order),
                order.drop,
            ),
        )


def book_tuck_count(drop: L) -> Figure[int]:
    """Count the tucks the way a sewing book does.

    Takes: the finished drop.

    Gives: the drop less 3 in, in parts of 3 in, to the nearest whole number, at least two.

    Source: stitched-tuck-book.

    >>> from foldwright.core.why.making import measured
    >>> book_tuck_count(measured("drop", Length.inches(63))).value
    20
    """
    parts = (drop.value - TUCKED_HEAD.value) / TUCK_SPACING.value
    return derived(
        "usual number of tucks",
        max(TUCKS_TO_A_ROW, floor(parts + HALF)),
        Unit.COUNT,
        "The drop {0} less {1}, in parts of {2}.",
        drop,
        TUCKED_HEAD,
        TUCK_SPACING,
        source=TUCK_BOOK,
    )


def tuck(order: Order) -> L:
    """Tell how much cloth is sewn into each tuck.

    Takes: the order.

    Gives: as typed, else the house's.

    Source: stitched-tuck-book.
    """
    return order.length("cloth of a tuck", order.design.tuck, order.habits.tuck)


def tuck_count(rows: RowPlan) -> Figure[int]:
    """Count the tucks of a shade.

    Takes: its rows.

    Gives: one at each row and one between each two, and one over the top row where the drop
    has room for it.

    Source: stitched-tuck-book.
    """
    because = "One at each of {0} rows, and one in the middle above each."
    return derived("number of tucks", len(rows.ridges), Unit.COUNT, because, rows.count)


def _fewest_within(order: Order, largest: L) -> int:
    """Count the fewest rows that keep the spacing within the largest."""
    drop = order.drop.value
    free = drop - skirt(order).value - head_allowance(order).value
    by_drop, by_head = drop / largest.value, free / largest.value + HALF
    return max(1, min(ceil(by_drop), ceil(by_head)))


def _ridges(order: Order, rows: RowPlan, exact: Fraction) -> Iterator[L]:
    for mark in rows.marks:
        yield mark
        middle = Length(round(mark.value.nanometres + exact / 2))
        if middle <= order.drop.value:
            yield derived(
                f"tuck over {mark.name}",
                middle,
                Unit.LENGTH,
                "The row at {0} and half a spacing {1}.",
                mark,
                rows.spacing,
            )


def _tucks_on_the_cloth(order: Order, rows: RowPlan) -> Iterator[L]:
    """Shift each tuck up by the cloth of those below it and half its own."""
    each = tuck(order)
    for number, ridge in enumerate(rows.ridges):
        yield derived(
            f"tuck {number + 1} on the flat cloth",
            ridge.value + each.value * (number + HALF),
            Unit.LENGTH,
            f"The tuck that hangs at {{0}}, higher by {number} tucks of {{1}} and half its own.",
            ridge,
            each,
        )


def _rows_on_the_cloth(order: Order, rows: RowPlan) -> Iterator[L]:
    """Give the rows the place of their tucks, every other one from the lowest."""
    tucks = [*_tucks_on_the_cloth(order, rows)][::TUCKS_TO_A_ROW]
    for number, mark in enumerate(tucks, start=1):
        yield replace(mark, name=f"row {number} on the flat cloth")
