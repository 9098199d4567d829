"""Row lines at one height through a whole room: the spacing, and where each shade meets it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor

from foldwright.core.check.groups.group import RowsFrom
from foldwright.core.check.groups.member import Member
from foldwright.core.check.layouts.row_cases import band_of, count_row_stops
from foldwright.core.design.order import Order
from foldwright.core.facts.layout_taste import (
    LEVEL_STEP,
    RING_TIME,
    ROW_TIME,
    STACK_WORTH,
)
from foldwright.core.facts.panel_limits import SHALLOWEST_FOLD
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding, System


@dataclass(frozen=True, kw_only=True, slots=True)
class Meeting:
    """How one shade meets the row lines: its rows, and what is left to skirt and head."""

    member: Member
    rows: int
    skirt: Length
    head: Length
    wanted: Length  # skirt, at this spacing

    @property
    def given_up(self) -> Length:
        """Give what its skirt and its head take beyond their own."""
        return abs(self.skirt - self.wanted) + (self.head - self.member.least_head)

    @property
    def seconds(self) -> float:
        """Give what it costs: the time for rows and rings, and what a longer stack is worth."""
        rings = self.rows * self.member.columns * RING_TIME.value
        longer = self.given_up.in_metres * STACK_WORTH.value
        return rings + self.rows * ROW_TIME.value + longer

    @property
    def order(self) -> Order:
        """Order the shade so, on marks: what the skirt is rounded by goes to the head."""
        review, order = self.member.review, self.member.order
        skirt = review.marked(self.skirt, Rounding.MARK)
        head = review.marked(self.head + self.skirt - skirt, Rounding.MARK)
        design = replace(
            order.design, row_count=self.rows, skirt=skirt, head_allowance=max(head, ZERO)
        )
        return replace(order, design=design)

    @property
    def stops(self) -> int:
        """Count what it would be stopped for."""
        return count_row_stops(self.order, band_of(self.member.review.spec.making))


@dataclass(frozen=True, kw_only=True, slots=True)
class Lines:
    """Row lines above the floor: one of them, and how far they lie apart."""

    one: Length
    spacing: Length
    meetings: tuple[Meeting, ...]

    @property
    def seconds(self) -> float:
        """Give what these lines cost all shades together."""
        return sum(meeting.seconds for meeting in self.meetings)

    @property
    def stops(self) -> int:
        """Count what these lines would stop."""
        return sum(meeting.stops for meeting in self.meetings)


def level_rows(members: tuple[Member, ...], rows_from: RowsFrom, system: System) -> Lines | None:
    """Find the row lines that cost the shades of a room the least.

    Takes: the shades; the edge that rows are counted from; the system of the marks.

    Gives: the lines, on marks as far as heads and hems lie on them, without a stop where any
    are; None where no spacing suits all shades.

    Holds for: styles whose rows can be set at any height; spacings tried in steps, from what
    every shade allows down to the shallowest usual fold.

    Source: derived here.
    """
    tried = sorted(
        (
            lines
            for spacing in _spacings(members, system)
            for one in _starts(members, rows_from, spacing)
            if (lines := _lines(members, one, spacing)) is not None
        ),
        key=lambda lines: lines.seconds,
    )
    clean = (lines for lines in tried if not lines.stops)
    return next(clean, min(tried, key=lambda lines: lines.stops, default=None))


def _spacings(members: tuple[Member, ...], system: System) -> Iterator[Length]:
    step = LEVEL_STEP[system].value
    most = floor(min(member.largest_spacing for member in members) / step)
    least = ceil(SHALLOWEST_FOLD.value * 2 / step)
    yield from (step * number for number in range(most, least - 1, -1))


def _starts(members: tuple[Member, ...], rows_from: RowsFrom, spacing: Length) -> Iterator[Length]:
    """Give a line that suits one shade without loss, for each shade in turn."""
    for member in members:
        if rows_from is RowsFrom.HEM:
            yield member.hem.value + member.wanted_skirt(spacing) + spacing * member.rungs.below
        else:
            yield member.top.value - member.least_head - spacing * member.rungs.above


def _lines(members: tuple[Member, ...], one: Length, spacing: Length) -> Lines | None:
    meetings = tuple(_meet(member, one, spacing) for member in members)
    whole = tuple(meeting for meeting in meetings if meeting is not None)
    return Lines(one=one, spacing=spacing, meetings=whole) if len(whole) == len(meetings) else None


def _meet(member: Member, one: Length, spacing: Length) -> Meeting | None:
    """Take the line nearest to its skirt as its lowest row, and the highest one under its head."""
    under = member.hem.value + spacing * member.rungs.below
    wanted = member.wanted_skirt(spacing)
    lowest = _nearest(one - under - wanted, spacing)
    skirt = one + spacing * lowest - under
    if skirt < member.least_skirt(spacing):
        lowest, skirt = lowest + 1, skirt + spacing
    over = member.top.value - member.least_head - spacing * member.rungs.above
    top = floor((over - one) / spacing)
    head = member.least_head + over - one - spacing * top
    rows = top - lowest + 1
    if rows < 1 or (member.rungs.loops and not _loops(member, rows, spacing)):
        return None
    return Meeting(member=member, rows=rows, skirt=skirt, head=head, wanted=wanted)


def _nearest(ahead: Length, spacing: Length) -> int:
    """Give the number of the line nearest to a place that lies so far under the first."""
    return -floor(ahead / spacing + Fraction(1, 2))


def _loops(member: Member, rows: int, spacing: Length) -> bool:
    """Tell whether a looped shade sets out rows so: the drop is what they share at most."""
    return rows > 1 and spacing * rows <= member.order.drop.value
