"""Ring columns: mirrored, close enough for the cloth, far enough from edges and seams."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from foldwright.core.design.bands import needle_lines
from foldwright.core.design.layout import ColumnPlan
from foldwright.core.design.order import Order
from foldwright.core.design.styles import style_of
from foldwright.core.design.usual import LEAST_COLUMNS, columns_within
from foldwright.core.facts.panel_limits import EDGE_STEP, FARTHEST_EDGE
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.source import Source

L = Figure[Length]

MORE_COLUMNS_TRIED = 3
CORD_SPACING_PAGE = Source(id="cord-spacing-page")


@dataclass(frozen=True, kw_only=True, slots=True)
class Spread:
    """One way to spread columns over the width."""

    width: Length
    edge: Length
    count: int

    @property
    def clear(self) -> Length:
        """Give the distance from the first column to the last."""
        return self.width - self.edge * 2

    @property
    def marks(self) -> tuple[Length, ...]:
        """Give the columns from the left edge; the right half mirrors the left exactly."""
        left = [self.edge + self.clear * place / (self.count - 1) for place in range(self.half)]
        middle = [self.width / 2] if self.count % 2 else []
        return (*left, *middle, *(self.width - mark for mark in reversed(left)))

    @property
    def half(self) -> int:
        """Give the number of columns on either side of the centre."""
        return self.count // 2

    def keeps_off(self, place: Length, least: Length) -> bool:
        """Tell whether every column stands at least so far from a place between the edges.

        Counted in parts of a nanometre, without laying the columns out: a search asks this
        of hundreds of spreads.
        """
        parts = self.count - 1
        inward, clear = (place - self.edge).nanometres, self.clear.nanometres
        if not 0 <= inward <= clear:
            return max(-inward, inward - clear) >= least.nanometres
        over = inward * parts % clear
        return min(over, clear - over) >= least.nanometres * parts


def plan_columns(order: Order, seams: tuple[L, ...]) -> ColumnPlan:
    """Spread the ring columns, moving them off the seams where the choice is free.

    Takes: the order; the seams of the face from its left edge as seen from the back.

    Gives: columns that mirror about the centre. The edge distance moves first, then the
    number of columns; where no choice keeps clear of the seams, and of the edges of bands down
    the sides, the usual one stands.

    Holds for: a width of more than two edge distances.

    Source: cord-spacing-page (pitch); ansi-wcma-2012, 4.5.3.2 (edge); common practice
    (columns clear of seams).

    >>> from foldwright.core.design.example import ORDER
    >>> plan_columns(ORDER, ()).count.value
    8
    """
    usual = Spread(
        width=order.width.value,
        edge=usual_edge(order).value,
        count=_count_at(order, usual_edge(order).value),
    )
    if style_of(order.design.style).fixed_columns:
        return _plan(order, usual, usual)
    return _plan(order, usual, _clear_of_seams(order, usual, (*seams, *needle_lines(order))))


def usual_edge(order: Order) -> L:
    """Tell where the outer columns stand before any seam is looked at.

    Takes: the order.

    Gives: as its style places them.

    Source: ansi-wcma-2012, 4.5.3.2; common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> usual_edge(ORDER).value == Length.inches(2)
    True
    """
    return style_of(order.design.style).edge_distance(order)


def largest_pitch(order: Order) -> L:
    """Tell how far apart columns may stand.

    Takes: the order.

    Gives: as its style allows.

    Source: cord-spacing-page; common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> largest_pitch(ORDER).value == Length.inches(10)
    True
    """
    return style_of(order.design.style).largest_pitch(order)


def fewest_columns(order: Order, edge: Length) -> int:
    """Count the fewest columns that keep within the largest pitch.

    Takes: the order; the edge distance.

    Gives: the spaces that the clear width needs, and one; at least two.

    Source: derived here (the spaces are rounded up, not the cords).

    >>> from foldwright.core.design.example import ORDER
    >>> fewest_columns(ORDER, Length.inches(2))
    8
    """
    return columns_within(order.width.value, edge, largest_pitch(order).value)


def published_columns(order: Order, edge: L) -> tuple[Figure[int], L] | None:
    """Count columns the way a sewing page does, which rounds up the cords, not the spaces.

    Takes: the order; the edge distance.

    Gives: that number of columns and their pitch, or None where it would be a single one.

    Source: cord-spacing-page.
    """
    clear, pitch = order.width.value - edge.value * 2, largest_pitch(order)
    count = ceil(clear / pitch.value)
    if count < LEAST_COLUMNS:
        return None
    because = "The width {0} less twice the edge {1}, in parts of {2}, rounded up to the cords."
    cords = derived(
        "columns by the published rule",
        count,
        Unit.COUNT,
        because,
        order.width,
        edge,
        pitch,
        source=CORD_SPACING_PAGE,
    )
    return cords, derived(
        "pitch by the published rule",
        clear / (count - 1),
        Unit.LENGTH,
        "The width {0} less twice the edge {1}, shared by one space fewer than {2} columns.",
        order.width,
        edge,
        cords,
    )


def _count_at(order: Order, edge: Length) -> int:
    return order.design.column_count or fewest_columns(order, edge)


def _clear_of_seams(order: Order, usual: Spread, seams: tuple[L, ...]) -> Spread:
    """Keep the usual spread, or take the one with fewest columns, then nearest the edge."""
    if _keeps_clear(order, usual, seams):
        return usual
    tried = [spread for spread in _spreads(order, usual) if _keeps_clear(order, spread, seams)]
    return min(tried, key=lambda spread: (spread.count, spread.edge), default=usual)


def _keeps_clear(order: Order, spread: Spread, seams: tuple[L, ...]) -> bool:
    least = order.habits.seam_to_column.value
    flat = _on_the_flat_cloth(order, spread) if seams else spread
    return all(flat.keeps_off(seam.value, least) for seam in seams)


def _on_the_flat_cloth(order: Order, spread: Spread) -> Spread:
    """Give the same columns as they are marked before pleats and gathers are made."""
    style = style_of(order.design.style)
    edge, width = style.flat_edge(order, spread.edge), style.flat_width(order)
    return Spread(width=width.value, edge=edge, count=spread.count)


def _spreads(order: Order, usual: Spread) -> Iterator[Spread]:
    for edge in _edges(order, usual.edge):
        for count in _counts(order, edge):
            yield Spread(width=usual.width, edge=edge, count=count)


def _edges(order: Order, usual: Length) -> Iterator[Length]:
    edge = usual
    farthest = min(FARTHEST_EDGE.value, order.width.value / 4)
    while edge <= max(farthest, usual):
        yield edge
        if order.design.edge_distance is not None:
            return
        edge = edge + EDGE_STEP.value


def _counts(order: Order, edge: Length) -> tuple[int, ...]:
    if order.design.column_count is not None:
        return (order.design.column_count,)
    fewest = fewest_columns(order, edge)
    return tuple(range(fewest, fewest + MORE_COLUMNS_TRIED))


def _plan(order: Order, usual: Spread, taken: Spread) -> ColumnPlan:
    edge = _edge_figure(order, usual, taken)
    count = _count_figure(order, taken, edge)
    pitch = derived(
        "column pitch",
        taken.clear / (taken.count - 1),
        Unit.LENGTH,
        "The width {0} less twice the edge distance {1}, shared by one space fewer than {2}"
        " columns.",
        order.width,
        edge,
        count,
    )
    marks = tuple(_mark(number, mark, edge, pitch) for number, mark in enumerate(taken.marks))
    return ColumnPlan(
        count=count,
        marks=marks,
        pitch=pitch,
        edge_distance=edge,
        cloth_marks=_cloth_marks(order, taken, marks),
    )


def _cloth_marks(order: Order, taken: Spread, marks: tuple[L, ...]) -> tuple[L, ...]:
    """Mark the columns on the flat cloth, where that is wider than the shade."""
    width = style_of(order.design.style).flat_width(order)
    if width.value == order.width.value:
        return ()
    flat = _on_the_flat_cloth(order, taken)
    return tuple(
        derived(
            f"column {number} on the flat cloth",
            place,
            Unit.LENGTH,
            "The column that hangs at {0}, on a face of {1} before it is pleated or gathered.",
            mark,
            width,
        )
        for number, (place, mark) in enumerate(zip(flat.marks, marks, strict=True), start=1)
    )


def _edge_figure(order: Order, usual: Spread, taken: Spread) -> L:
    if taken.edge == usual.edge:
        return usual_edge(order)
    return derived(
        "edge distance",
        taken.edge,
        Unit.LENGTH,
        "Moved in from {0} in steps of {1}, until every column stood {2} off the seams.",
        usual_edge(order),
        EDGE_STEP,
        order.habits.seam_to_column,
    )


def _count_figure(order: Order, taken: Spread, edge: L) -> Figure[int]:
    if order.design.column_count is not None:
        return chosen("number of columns", taken.count, Unit.COUNT)
    more = taken.count - fewest_columns(order, taken.edge)
    because = "The fewest columns no more than {0} apart, {1} from the edges of a width of {2}"
    because += f", and {more} more to keep off the seams." if more else "."
    inputs: tuple[Figure[Length] | Figure[int], ...] = (largest_pitch(order), edge, order.width)
    other = published_columns(order, edge)
    if other is not None:
        because += " A published rule rounds up the cords instead of the spaces: {3} at {4}."
        inputs = (*inputs, *other)
    return derived("number of columns", taken.count, Unit.COUNT, because, *inputs)


def _mark(number: int, mark: Length, edge: L, pitch: L) -> L:
    return derived(
        f"column {number + 1}",
        mark,
        Unit.LENGTH,
        f"From the left edge as seen from the back: {{0}} and {number} times {{1}}.",
        edge,
        pitch,
    )
