"""What a style of shade must be able to tell; each style of the house tells it its own way."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Protocol

from foldwright.core.design.choices import StyleName
from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure
from foldwright.core.why.trying import Draft, Way, by_change

L = Figure[Length]


class Style(Protocol):
    """A way of taking up the drop in folds.

    A style tells its ring rows, panel lengths, fullness and tied rows (all in the row plan),
    how low its stack hangs and how thick it is. Everything else about a shade, columns,
    widths, cuts, weight and lift, is worked from these.
    """

    @property
    def name(self) -> StyleName:
        """Give the style's name in the job file."""

    def largest_spacing(self, order: Order) -> L:
        """Give the largest row spacing that rule, choice and style allow together."""

    def usual_row_count(self, order: Order) -> Figure[int]:
        """Give the number of rows the style takes when nobody has typed one."""

    def exact_spacing(self, order: Order, count: int) -> Fraction:
        """Give the row spacing of that many rows, in nanometres and unrounded."""

    def rows(self, order: Order, count: Figure[int]) -> RowPlan:
        """Set out that many rows; they sum to the drop exactly."""

    def hangs_below(self, rows: RowPlan) -> L:
        """Give how far the raised cloth hangs below the lowest row."""

    def folds(self, rows: RowPlan) -> Figure[int]:
        """Give how many folds lie one behind another in the raised stack."""

    def drafts(self, order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Draft what the style itself finds fault with."""


def usual_rows(order: Order, style: Style) -> Way[Order]:
    """Make the way that takes the number of rows the style would take by itself.

    Takes: the order; its style.

    Gives: a way that types the number and tells the spacing.

    Source: common practice.
    """
    count = style.usual_row_count(order)
    spacing = style.rows(order, count).spacing
    return by_change(
        order, order.system, "Use {0} rows at {1}.", count, spacing, design__row_count=count.value
    )
