"""Every way to spread the columns and split the seams that is tried, as arrays."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, replace

import numpy as np
from numpy.typing import NDArray

from foldwright.core.design.choices import Choices, RodPlace
from foldwright.core.design.column_checks import nearest_column
from foldwright.core.design.columns import fewest_columns, largest_pitch, plan_columns, usual_edge
from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order
from foldwright.core.design.sagging import fold_sag
from foldwright.core.design.styles import style_of
from foldwright.core.design.widths import Joining, full_piece, join_widths, usable_width
from foldwright.core.facts.layout_taste import MORE_COLUMNS, NARROWEST_MIDDLE, PIECE_STEP
from foldwright.core.facts.panel_limits import EDGE_STEP, FARTHEST_EDGE
from foldwright.core.facts.stiffness import FOLD_SAG, bending_length_of
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import chosen

Whole = NDArray[np.int64]
FAR = int(np.iinfo(np.int64).max)  # from a seam, where there is none


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class ColumnCases:
    """Ways to spread the columns, each with its joining; lengths in nanometres."""

    edges: Whole
    counts: Whole
    gaps: Whole  # from a seam to the nearest column
    joins: Whole
    first_seams: Whole
    narrower: Whole  # than its cloth, the middle piece
    middles: Whole  # the middle piece to type, or 0
    own: NDArray[np.bool_]  # as the shade spreads its columns by itself

    def design(self, place: int, design: Choices) -> Choices:
        """Type one of these ways into a design."""
        middle = int(self.middles[place])
        joined = replace(design, middle_piece=Length(middle)) if middle else design
        if self.own[place]:
            return joined
        return replace(
            joined,
            edge_distance=Length(int(self.edges[place])),
            column_count=int(self.counts[place]),
        )

    def pitches(self, width: Length) -> NDArray[np.float64]:
        """Give the distance between two columns."""
        return np.asarray((width.nanometres - 2 * self.edges) / (self.counts - 1), np.float64)

    def stops(self, order: Order) -> Whole:
        """Count what the room of designs would stop at."""
        return np.asarray(
            (self.edges < order.edge_floor.value.nanometres).astype(np.int64)
            + (self.gaps < order.habits.seam_to_column.value.nanometres)
            + (self.pitches(order.width.value) > largest_pitch(order).value.nanometres)
        )

    def asks(self, order: Order) -> Whole:
        """Count where cloth of unknown stiffness would have to bear more than the usual pitch."""
        usual, face = order.habits.largest_pitch.value, order.chosen.face
        known = face is None or bending_length_of(face) is not None
        if known or order.design.rods is not RodPlace.NONE or not self._straight(order):
            return np.zeros(len(self.edges), dtype=np.int64)
        if largest_pitch(order).value <= usual:
            return np.zeros(len(self.edges), dtype=np.int64)
        return (self.pitches(order.width.value) > usual.nanometres).astype(np.int64)

    def sags(self, order: Order, rows: RowPlan) -> Whole:
        """Tell where the folds of these rows are seen to sag."""
        if order.design.rods is not RodPlace.NONE or not self._straight(order):
            return np.zeros(len(self.edges), dtype=np.int64)
        pitches, which = np.unique(self.pitches(order.width.value), return_inverse=True)
        seen = [_sags(order, rows, Length(int(pitch))) for pitch in pitches]
        return np.array(seen, dtype=np.int64)[which]

    @staticmethod
    def _straight(order: Order) -> bool:
        return style_of(order.design.style).straight_folds


def _sags(order: Order, rows: RowPlan, pitch: Length) -> bool:
    sag = fold_sag(order, rows, chosen("column pitch", pitch, Unit.LENGTH))
    return sag is not None and sag.value > FOLD_SAG.value


def column_cases(order: Order) -> ColumnCases:
    """Spread the columns in every way that is tried; the first is the shade's own.

    Takes: the order.

    Gives: only what the order leaves open is varied: the edge distance, the number of columns
    and where the seams fall.

    Source: derived here.
    """
    own = _own(order, join_widths(order))
    return _together([own, *(cases for joined in _joined(order) for cases in _spread(joined))])


def _joined(order: Order) -> Iterator[Order]:
    """Join the face as it is, and with each narrower middle that as many widths do for."""
    yield order
    usable, widths = usable_width(order), join_widths(order).widths.value
    if usable is None or widths == 1 or order.design.middle_piece is not None:
        return
    for middle in _middles(order, full_piece(order, usable).value):
        narrower = replace(order, design=replace(order.design, middle_piece=middle))
        if join_widths(narrower).widths.value == widths:
            yield narrower


def _middles(order: Order, full: Length) -> Iterator[Length]:
    """Narrow the middle by whole repeats across, or by steps where there is no pattern."""
    repeat = order.chosen.face.horizontal_repeat if order.chosen.face else None
    least = Length(round(full.nanometres * NARROWEST_MIDDLE.value))
    if repeat is None:
        for number in range(1, int((full - least) / PIECE_STEP.value) + 1):
            yield order.marked(full - PIECE_STEP.value * number, Rounding.MUST_FIT)
        return
    for number in range(int(full / repeat), 0, -1):
        if least <= repeat * number < full:
            yield order.marked(repeat * number, Rounding.MUST_FIT)


def _spread(order: Order) -> Iterator[ColumnCases]:
    joining, style = join_widths(order), style_of(order.design.style)
    if style.fixed_columns:
        yield _own(order, joining)
        return
    edges = tuple(_edges(order))
    ways = [(edge, count) for edge in edges for count in _counts(order, edge)]
    flat = {edge: style.flat_edge(order, edge).nanometres for edge in edges}
    counts = _whole(count for _, count in ways)
    at = _whole(flat[edge] for edge, _ in ways)
    gaps = _gaps(style.flat_width(order).value, joining, at, counts)
    yield _cases(order, joining, _whole(edge.nanometres for edge, _ in ways), counts, gaps)


def _own(order: Order, joining: Joining) -> ColumnCases:
    """Spread the columns as the shade does by itself."""
    columns = plan_columns(order, joining.seams)
    nearest = nearest_column(columns, joining)
    gap = FAR if nearest is None else nearest.value.nanometres
    own = _cases(
        order,
        joining,
        _whole([columns.edge_distance.value.nanometres]),
        _whole([columns.count.value]),
        _whole([gap]),
    )
    return replace(own, own=np.array([True]))


def _cases(order: Order, joining: Joining, edges: Whole, counts: Whole, gaps: Whole) -> ColumnCases:
    usable, middle = usable_width(order), joining.centre_visible
    less = full_piece(order, usable).value - middle.value if usable and middle else ZERO
    typed = order.design.middle_piece

    def alike(value: int) -> Whole:
        return np.full(len(edges), value, dtype=np.int64)

    return ColumnCases(
        edges=edges,
        counts=counts,
        gaps=gaps,
        joins=alike(joining.joins),
        first_seams=alike(joining.seams[0].value.nanometres if joining.seams else 0),
        narrower=alike(max(less, ZERO).nanometres),
        middles=alike(typed.nanometres if typed else 0),
        own=np.zeros(len(edges), dtype=np.bool_),
    )


def _edges(order: Order) -> Iterator[Length]:
    """Step inward from the usual edge; what is typed stays."""
    usual = usual_edge(order).value
    if order.design.edge_distance is not None:
        yield usual
        return
    farthest = max(min(FARTHEST_EDGE.value, order.width.value / 4), usual)
    steps = range(int((farthest - usual) / EDGE_STEP.value) + 1)
    yield from dict.fromkeys(
        order.marked(usual + EDGE_STEP.value * number, Rounding.CUT_OVERSIZE) for number in steps
    )


def _counts(order: Order, edge: Length) -> range:
    typed = order.design.column_count
    if typed is not None:
        return range(typed, typed + 1)
    fewest = fewest_columns(order, edge)
    return range(fewest, fewest + MORE_COLUMNS.value + 1)


def _gaps(width: Length, joining: Joining, edges: Whole, counts: Whole) -> Whole:
    """Measure from the seams to the nearest column, rounded down to the nanometre."""
    nearest = np.full(len(edges), FAR, dtype=np.int64)
    clear, parts = width.nanometres - 2 * edges, counts - 1
    for seam in joining.seams:
        inward = seam.value.nanometres - edges
        over = inward * parts % clear
        between = np.minimum(over, clear - over) // parts
        outside = np.maximum(-inward, inward - clear)
        nearest = np.minimum(nearest, np.where(outside > 0, outside, between))
    return nearest


def _together(parts: list[ColumnCases]) -> ColumnCases:
    names = [slot.name for slot in fields(ColumnCases)]
    return ColumnCases(
        **{name: np.concatenate([getattr(part, name) for part in parts]) for name in names}
    )


def _whole(values: Iterator[int] | list[int]) -> Whole:
    return np.fromiter(values, dtype=np.int64)
