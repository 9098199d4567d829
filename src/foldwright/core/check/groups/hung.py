"""A shade as it hangs in its room: what anybody can see of it from across the floor."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.design.layout import Layout
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class Hung:
    """One shade over the floor, fully down."""

    tag: str
    width: L
    drop: L
    top: L  # above the floor
    hem: L
    layout: Layout

    @property
    def rows(self) -> tuple[Length, ...]:
        """Give the heights of its ring rows above the floor, the lowest first."""
        return tuple(self.hem.value + mark.value for mark in self.layout.rows.marks)


def apart_at_most(one: Hung, other: Hung) -> Length:
    """Give the farthest that a row lies from the nearest one of another shade.

    Takes: two shades.

    Gives: the greatest distance, over the rows that lie between the other's lowest and top one.

    Source: derived here.
    """
    rows = [row for row in one.rows if other.rows[0] <= row <= other.rows[-1]]
    nearest = (min((abs(row - each) for each in other.rows), default=row) for row in rows)
    return max(nearest, default=Length(0))
