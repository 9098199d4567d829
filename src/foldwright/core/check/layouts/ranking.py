"""Every way to set out the rows with every way to spread the columns, held against the merits."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from foldwright.core.check.layouts.column_cases import ColumnCases, Whole
from foldwright.core.check.layouts.rail import Rail
from foldwright.core.check.layouts.row_cases import RowCase
from foldwright.core.design.choices import Choices
from foldwright.core.design.order import Order
from foldwright.core.facts.layout_taste import (
    COLUMN_TIME,
    COMFORTABLE_SEAM,
    DIFFERENT_STACK,
    RING_TIME,
    ROW_TIME,
    SEAM_GAIN,
    SEAM_TIME,
    Merit,
    Wish,
)
from foldwright.core.quantity.length import Length

Flags = NDArray[np.bool_]
UNUSUAL = 2  # columns with both of their clips in the only bay


@dataclass(frozen=True, kw_only=True, slots=True)
class Place:
    """One layout among all: which of the row cases, which of the column cases."""

    row: int
    column: int


@dataclass(frozen=True, kw_only=True)
class Field:
    """All layouts that are tried: the row cases down, the column cases across."""

    order: Order
    rows: tuple[RowCase, ...]
    columns: ColumnCases
    rail: Rail | None

    @cached_property
    def merits(self) -> dict[Merit, Whole]:
        """Measure every layout by every merit; of each, less is better."""
        rows, columns = self.rows, self.columns
        counts = _down(case.rows.count.value for case in rows)
        usual = columns.edges[0]
        comfortable = COMFORTABLE_SEAM.value.nanometres
        return {
            Merit.STOPS: _down(case.stops for case in rows)
            + columns.stops(self.order)
            + self._at_the_rail,
            Merit.ASKS: _down(case.asks for case in rows) + columns.asks(self.order),
            Merit.SAG: columns.sags(self.order, rows[0].rows)[None, :],
            Merit.WORK: _work(counts, columns),
            Merit.RINGS: counts * columns.counts,
            Merit.COLUMNS: columns.counts[None, :],
            Merit.FOLD: _down(case.off_fold.nanometres for case in rows),
            Merit.SKIRT: _down(case.off_skirt.nanometres for case in rows),
            Merit.GLASS: _down(_covered(case) for case in rows),
            Merit.STACK: _down(case.stack.raised_size.value.nanometres for case in rows),
            Merit.EDGE: np.abs(columns.edges - usual)[None, :],
            Merit.SEAM: np.maximum(comfortable - columns.gaps, 0)[None, :],
            Merit.PIECE: columns.narrower[None, :],
            Merit.LOCK: _down(case.lock is None for case in rows),
            Merit.HEAD: _down(case.more_head.nanometres for case in rows),
        }

    @cached_property
    def _at_the_rail(self) -> Whole:
        """Count where wraps reach into brackets, or neighbours or cradles want their room."""
        if self.rail is None:
            return np.zeros((1, 1), dtype=np.int64)
        edges, pitches = self.columns.edges, self.columns.pitches(self.order.width.value)
        stops = (edges < self._asked(self.rail.least_edge)).astype(np.int64)
        stops += pitches < self._asked(self.rail.least_pitch)
        facing = self.columns.counts == UNUSUAL
        between = self._asked(lambda travel: self.rail_room(travel, facing=True))
        beside = self._asked(lambda travel: self.rail_room(travel, facing=False))
        stops += pitches < np.where(facing, between, beside)
        return np.asarray(stops)

    def rail_room(self, travel: int, *, facing: bool) -> float:
        """Give the pitch that a cradle asks for."""
        return self.rail.cradled_pitch(travel, facing=facing) if self.rail else 0.0

    def _asked(self, question: Callable[[int], float]) -> NDArray[np.float64]:
        return np.array([[question(case.travel.nanometres)] for case in self.rows])

    @property
    def shape(self) -> tuple[int, int]:
        """Count the cases down and across."""
        return len(self.rows), len(self.columns.edges)

    def value(self, merit: Merit, place: Place) -> int:
        """Measure one layout by one merit."""
        return int(np.broadcast_to(self.merits[merit], self.shape)[place.row, place.column])

    def first(self, wish: Wish, among: Flags | None = None) -> Place | None:
        """Find the layout that comes first by a wish, among all or some."""
        alive = np.ones(self.shape, dtype=np.bool_) if among is None else among
        if not alive.any():
            return None
        for merit in wish.order:
            values = np.broadcast_to(self.merits[merit], self.shape)
            alive = alive & (values == values[alive].min())
        row, column = np.unravel_index(int(np.argmax(alive)), self.shape)
        return Place(row=int(row), column=int(column))

    def gains(self, wish: Wish, best: Place) -> Flags:
        """Find the layouts that gain in the aim of a wish and have no more faults than the best."""
        gained = np.ones(self.shape, dtype=np.bool_)
        for merit in (Merit.STOPS, Merit.ASKS, Merit.SAG):
            gained &= self.merits[merit] <= self.value(merit, best)
        if wish.aim is not None and wish.gain is not None:
            gain = wish.gain.value
            least = gain.nanometres if isinstance(gain, Length) else gain
            gained &= self.merits[wish.aim] <= self.value(wish.aim, best) - least
        return gained

    def differs(self, place: Place) -> Flags:
        """Find the layouts that anybody can tell from one."""
        columns, case = self.columns, self.rows[place.row]
        stacks = self.merits[Merit.STACK] - self.value(Merit.STACK, place)
        seams = self.merits[Merit.SEAM] - self.value(Merit.SEAM, place)
        down = _down(
            each.rows.count.value != case.rows.count.value or each.lock != case.lock
            for each in self.rows
        )
        return np.asarray(
            (down > 0)
            | (np.abs(stacks) >= DIFFERENT_STACK.value.nanometres)
            | (columns.counts != columns.counts[place.column])
            | (np.abs(seams) >= SEAM_GAIN.value.nanometres)
        )

    def design(self, place: Place) -> Choices:
        """Type a layout into the design."""
        return self.columns.design(place.column, self.rows[place.row].design)


def _down(values: Iterable[int]) -> Whole:
    return np.array([[value] for value in values], dtype=np.int64)


def _work(rows: Whole, columns: ColumnCases) -> Whole:
    """Add up the time for rows, rings, cords and seams, in seconds."""
    along = columns.counts * round(COLUMN_TIME.value) + columns.joins * round(SEAM_TIME.value)
    rings = rows * columns.counts * round(RING_TIME.value)
    return np.asarray(rows * round(ROW_TIME.value) + rings + along)


def _covered(case: RowCase) -> int:
    covered = case.stack.glass_covered
    return covered.value.nanometres if covered else 0
