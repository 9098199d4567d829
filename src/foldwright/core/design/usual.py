"""What the house does in every style that does not do it its own way."""

from __future__ import annotations

from math import ceil

from foldwright.core.design.order import Order
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

L = Figure[Length]

LEAST_COLUMNS = 2


def columns_within(width: Length, edge: Length, pitch: Length) -> int:
    """Count the fewest columns that keep within the largest pitch.

    Takes: the finished width; the edge distance; the largest pitch.

    Gives: the spaces that the clear width needs, and one; at least two.

    Source: derived here (the spaces are rounded up, not the cords).

    >>> columns_within(Length.inches(48), Length.inches(2), Length.inches(10))
    6
    """
    return max(LEAST_COLUMNS, ceil((width - edge * 2) / pitch) + 1)


def house_edge(order: Order) -> L:
    """Tell where the outer columns of a plain shade stand before any seam is looked at.

    Takes: the order.

    Gives: as typed; else the house's distance, or the market's floor where that is greater.

    Source: ansi-wcma-2012, 4.5.3.2.
    """
    return order.length("edge distance", order.design.edge_distance, outer_columns(order))


def outer_columns(order: Order) -> L:
    """Tell the house's edge distance, or the market's floor where that is greater.

    Takes: the order.

    Gives: whichever is greater.

    Source: ansi-wcma-2012, 4.5.3.2.
    """
    habit = order.habits.edge_distance
    return habit if habit.value >= order.edge_floor.value else order.edge_floor


def house_pitch(order: Order) -> L:
    """Tell how far apart the columns of a plain shade may stand.

    Takes: the order.

    Gives: as typed; else the house's, which is larger where a rod lies at every row.

    Source: cord-spacing-page.
    """
    habits = order.habits
    rods = order.design.rods.at_rows
    habit = habits.largest_pitch_with_rods if rods else habits.largest_pitch
    return order.length("largest column pitch", order.design.largest_pitch, habit)
