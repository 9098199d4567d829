"""The flat shade: cloth as long as its drop, folding half a spacing deep between rows."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor

from foldwright.core.design.choices import StyleName
from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order, draft, head_allowance, skirt
from foldwright.core.design.rows import RowScale, row_plan
from foldwright.core.design.style import Style
from foldwright.core.facts.panel_limits import DEEPEST_FOLD, SHALLOWEST_FOLD
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]
N = Figure[float]

HALF = Fraction(1, 2)


class FlatStyle(Style):
    """Flat, with or without rods: the drop is head allowance, skirt and n + 1/2 spacings.

    Half a spacing lies below the lowest row so that the raised hem hangs level with the
    folds, and the skirt shows below them.
    """

    name = StyleName.FLAT

    def largest_spacing(self, order: Order) -> L:
        """Take the smaller of the market's cap and the spacing asked for."""
        return spacing_limit(order)

    def usual_row_count(self, order: Order) -> Figure[int]:
        """Take the fewest rows whose spacing keeps to the largest."""
        largest = self.largest_spacing(order)
        count = max(1, ceil(span(order) / largest.value - HALF))
        return derived(
            "number of rows",
            count,
            Unit.COUNT,
            "The fewest rows that keep within {0}, with head {1} and skirt {2} off the drop {3}.",
            largest,
            head_allowance(order),
            skirt(order),
            order.drop,
        )

    def least_spacing(self, order: Order, count: int) -> Fraction:
        """Share the drop less head and skirt into n + 1/2 spacings."""
        return span(order).nanometres / (count + HALF)

    def rows(self, order: Order, count: Figure[int]) -> RowPlan:
        """Set the rows out from half a spacing above the skirt."""
        exact = self.least_spacing(order, count.value)
        spacing = derived(
            "row spacing",
            Length(round(exact)),
            Unit.LENGTH,
            "The drop {0} less head {1} and skirt {2}, shared by {3} rows and a half.",
            order.drop,
            head_allowance(order),
            skirt(order),
            count,
        )
        scale = RowScale(
            count=count,
            exact=exact,
            spacing=spacing,
            first_row=first_row_over_skirt(order, exact, spacing),
            fullness=no_fullness(),
        )
        return row_plan(order, scale)

    def hangs_below(self, order: Order, rows: RowPlan) -> L:
        """Take the hem, half a spacing and the skirt below the lowest row."""
        del order
        return rows.first_row

    def folds(self, rows: RowPlan) -> Figure[int]:
        """Count one fold to a row, the top panel's included."""
        return derived(
            "folds in the stack",
            rows.count.value,
            Unit.COUNT,
            "One fold over each of the {0} rows, the top panel's included.",
            rows.count,
        )

    def drafts(self, order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Find folds too shallow or too deep for the eye."""
        if rows.fold_depth.value < SHALLOWEST_FOLD.value:
            yield self._out_of_taste(order, rows, SHALLOWEST_FOLD, -1)
        if rows.fold_depth.value > DEEPEST_FOLD.value:
            yield self._out_of_taste(order, rows, DEEPEST_FOLD, 1)

    def _out_of_taste(self, order: Order, rows: RowPlan, limit: L, step: int) -> Draft[Order]:
        word = "shallower" if step < 0 else "deeper"
        return draft(
            Severity.NOTE,
            "fold-depth",
            f"The folds are {{0}} deep; {word} than {{1}} is unusual.",
            rows.fold_depth,
            limit,
            ways=self._other_count(order, limit, step),
        )

    def _other_count(self, order: Order, limit: L, step: int) -> Iterator[Way[Order]]:
        """Take the count of rows nearest to the limit, on its good side."""
        spacings = span(order) / (limit.value * 2) - HALF
        count = ceil(spacings) if step > 0 else floor(spacings)
        if count >= 1:
            figure = chosen("number of rows", count, Unit.COUNT)
            depth = self.rows(order, figure).fold_depth
            sentence = "Use {0} rows with folds {1} deep."
            yield by_change(order, order.system, sentence, figure, depth, design__row_count=count)
        yield by_hand("Keep it if the client likes it.")


def spacing_limit(order: Order) -> L:
    """Take the smaller of the market's cap and the spacing asked for."""
    asked = order.design.largest_row_spacing
    if asked is None or asked >= order.row_cap.value:
        return order.row_cap
    return chosen("largest row spacing", asked, Unit.LENGTH)


def span(order: Order) -> Length:
    """Give what head allowance and skirt leave of the drop.

    Takes: the order.

    Gives: the length that the rows share.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> span(ORDER) == Length.inches("55.5")
    True
    """
    return order.drop.value - head_allowance(order).value - skirt(order).value


def first_row_over_skirt(order: Order, exact: Fraction, spacing: L) -> L:
    """Set the lowest row half a spacing above the skirt."""
    under = skirt(order)
    return derived(
        "first row",
        Length(round(under.value.nanometres + exact / 2)),
        Unit.LENGTH,
        "The skirt {0} and half a row spacing {1}, so that the skirt shows below the folds.",
        under,
        spacing,
    )


def no_fullness() -> N:
    """Tell that there is as much cloth as drop."""
    because = "A shade without loops or gathers has as much cloth as drop."
    return derived("fullness", 1.0, Unit.RATIO, because)
