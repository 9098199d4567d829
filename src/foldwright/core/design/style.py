"""What a style of shade must be able to tell; each style of the house tells it its own way."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Protocol

from foldwright.core.design.choices import RodPlace, StyleName
from foldwright.core.design.layout import (
    ColumnPlan,
    Layout,
    RowPlan,
    SewingStep,
    SewnLine,
    SwagPlan,
)
from foldwright.core.design.order import Order, draft
from foldwright.core.design.panels import cloth_of
from foldwright.core.design.untyped_rows import untyped_row_count
from foldwright.core.design.usual import house_edge, house_pitch
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import derived
from foldwright.core.why.trying import Draft, Way, by_change

L = Figure[Length]


class Style(Protocol):
    """A way of taking up the drop in folds.

    A style tells its ring rows, panel lengths, fullness and tied rows (all in the row plan),
    how low its stack hangs and how thick it is. Everything else about a shade, columns,
    widths, cuts, weight and lift, is worked from these. What most styles do alike is told
    here once: a style says only what it does its own way.
    """

    straight_hem: bool = True  # a bar holds the hem straight
    straight_folds: bool = True  # folds are to hang level from column to column
    fixed_columns: bool = False  # the columns belong to the look, and no seam moves them
    billow: L | None = None  # how far folds that are never pressed stand into the room

    @property
    def name(self) -> StyleName:
        """Give the style's name in the job file."""

    def largest_spacing(self, order: Order) -> L:
        """Give the largest row spacing that rule, choice and style allow together."""

    def usual_row_count(self, order: Order) -> Figure[int]:
        """Give the number of rows the style takes when nobody has typed one."""

    def least_spacing(self, order: Order, count: int) -> Fraction:
        """Give the least row spacing of that many rows, in nanometres and unrounded."""

    def rows(self, order: Order, count: Figure[int]) -> RowPlan:
        """Set out that many rows; they sum to the drop exactly."""

    def hangs_below(self, order: Order, rows: RowPlan) -> L:
        """Give how far the raised cloth hangs below the lowest row."""

    def folds(self, rows: RowPlan) -> Figure[int]:
        """Give how many folds lie one behind another in the raised stack."""

    def drafts(self, order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Draft what the style itself finds fault with."""

    def closer_rows(self, order: Order) -> Iterator[Way[Order]]:
        """Give the ways to rows that lie no farther apart than they may."""
        yield usual_rows(order, self)

    def cloth(self, order: Order, rows: RowPlan) -> L:
        """Measure the cloth from hem to top line, before tucks and pockets are sewn."""
        return plain_cloth(order, rows)

    def sewn(self, order: Order, rows: RowPlan, columns: ColumnPlan) -> tuple[SewnLine, ...]:
        """Give the lines that are marked on the flat cloth besides rows and columns."""
        del order, rows, columns
        return ()

    def before_the_turns(self, order: Order, layout: Layout) -> Iterator[SewingStep]:
        """Give what is sewn before the sides and the hem are turned."""
        del order, layout
        yield from ()

    def after_the_rings(self, order: Order, layout: Layout) -> Iterator[SewingStep]:
        """Give what is tied or sewn once the rings are on."""
        del order, layout
        yield from ()

    def edge_distance(self, order: Order) -> L:
        """Tell where the outer columns stand before any seam is looked at."""
        return house_edge(order)

    def largest_pitch(self, order: Order) -> L:
        """Tell how far apart columns may stand."""
        return house_pitch(order)

    def swag(self, order: Order, rows: RowPlan) -> SwagPlan | None:
        """Tell how the hem hangs between its columns; None where it is straight."""
        del order, rows
        return None

    def flare(self, order: Order) -> L | None:
        """Tell how much wider than the head the hem is cut; None where the sides are straight."""
        del order
        return None

    def refusals(self, order: Order) -> Iterator[Draft[Order]]:
        """Draft what makes a shade of this style impossible."""
        del order
        yield from ()

    def flat_width(self, order: Order) -> L:
        """Tell how wide the face lies flat, before its pleats and gathers are made."""
        return order.width

    def flat_edge(self, order: Order, edge: Length) -> Length:
        """Tell how far from the edge of the flat cloth the outer columns are marked."""
        del order
        return edge


def plain_cloth(order: Order, rows: RowPlan) -> L:
    """Measure the cloth of a shade without tucks or pockets, from hem to top line.

    Takes: the order; its rows.

    Gives: the drop, and what is tied up in a pouf, at the fullness of its loops.

    Source: derived here.
    """
    pouf = () if rows.pouf is None else (rows.pouf,)
    return derived(
        "cloth from hem to top line",
        cloth_of(rows),
        Unit.LENGTH,
        "The drop {0}"
        + (" and the pouf {2}, less what it hangs below the hem," if pouf else "")
        + " at {1} of cloth to one"
        + ("." if rows.shirred or rows.fullness.value == 1 else " above the lowest row."),
        order.drop,
        rows.fullness,
        *pouf,
    )


def usual_rows(order: Order, style: Style) -> Way[Order]:
    """Make the way that takes the number of rows the shade would take by itself.

    Takes: the order; its style.

    Gives: a way that types the number and tells the spacing.

    Source: common practice.
    """
    count = untyped_row_count(order, style)
    spacing = style.rows(order, count).spacing
    return by_change(
        order, order.system, "Use {0} rows at {1}.", count, spacing, design__row_count=count.value
    )


def rods_between_rows(order: Order, why: str) -> Iterator[Draft[Order]]:
    """Find rods at mid-fold in a style that has no place for them there.

    Takes: the order; the reason, as the beginning of a sentence.

    Gives: a draft of a finding, or none.

    Source: common practice.
    """
    if order.design.rods.between_rows:
        yield draft(
            Severity.ASK,
            "rods-in-loops",
            f"{why}; the rods are asked for at mid-fold.",
            ways=(
                by_change(
                    order, order.system, "Put the rods at the rows.", design__rods=RodPlace.ROWS
                ),
                by_change(order, order.system, "Leave the rods out.", design__rods=RodPlace.NONE),
            ),
        )
