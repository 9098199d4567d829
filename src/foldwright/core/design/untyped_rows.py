"""How many rows a shade takes by itself, so that the cord above the top row is short too."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Protocol

from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order, stacked_pitch
from foldwright.core.facts.markets import counts_to_the_tube
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, supplied

if TYPE_CHECKING:
    from foldwright.core.facts.records import Bracket

L = Figure[Length]

MOST_ROWS_MORE = 8  # what so many rows do not mend, the head allowance alone makes too long


class Rowed(Protocol):
    """What lays out rows: all that is asked of a style here."""

    def usual_row_count(self, order: Order) -> Figure[int]:
        """Tell how many rows it usually takes."""

    def least_spacing(self, order: Order, count: int) -> Fraction:
        """Tell the least spacing of so many rows, in nanometres."""

    def rows(self, order: Order, count: Figure[int]) -> RowPlan:
        """Lay out so many rows."""


def untyped_row_count(order: Order, style: Rowed) -> Figure[int]:
    """Tell how many rows a shade takes when nobody has typed a number.

    Takes: the order; its style.

    Gives: what the style usually takes; more where a known headrail would otherwise leave
    more cord between the top row and the tube than the market allows between two rows, and
    where more rows mend it.

    Source: sor-2019-97, s. 6; derived here.
    """
    usual, bracket = style.usual_row_count(order), order.chosen.bracket
    if bracket is None or not counts_to_the_tube(order.row_cap):
        return usual
    for count in range(usual.value, usual.value + 1 + MOST_ROWS_MORE):
        if style.least_spacing(order, count) < stacked_pitch(order).value.nanometres * 2:
            break
        if _keeps(order, style, bracket, tried := _more(order, usual, count)):
            return tried
    return usual


def cord_to_tube(panel: L, bracket: Bracket | None) -> L:
    """Measure the cord from the top row to the tube.

    Takes: the top panel; the bracket, where the headrail is chosen.

    Gives: the panel less the depth of the tube; the panel alone without a bracket.

    Holds for: a shade that is fully down.

    Source: derived here.

    >>> panel = derived("top panel", Length.inches(10), Unit.LENGTH, "Head and one spacing.")
    >>> cord_to_tube(panel, None).value == panel.value
    True
    """
    if bracket is None:
        because = "The top panel {0}; the headrail is not chosen yet."
        return derived("top row to the tube", panel.value, Unit.LENGTH, because, panel)
    below = supplied(
        "tube below the board", bracket.tube_centre_below_board, Unit.LENGTH, bracket.name
    )
    value = panel.value - below.value
    because = "The top panel {0} less the tube's middle {1} under the top of the board."
    return derived("top row to the tube", value, Unit.LENGTH, because, panel, below)


def _keeps(order: Order, style: Rowed, bracket: Bracket, count: Figure[int]) -> bool:
    panel = style.rows(order, count).top_panel
    return cord_to_tube(panel, bracket).value <= order.row_cap.value


def _more(order: Order, usual: Figure[int], count: int) -> Figure[int]:
    if count == usual.value:
        return usual
    return derived(
        "number of rows",
        count,
        Unit.COUNT,
        "{0} would do between the rows; so many keep the cord from the top row to the tube within"
        " {1} too.",
        usual,
        order.row_cap,
    )
