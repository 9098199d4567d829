"""Rows and pattern locked together: every so many folds show the same part of the print."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from math import floor, gcd

from foldwright.core.check.layouts.skirts import skirts_tried
from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.flat import span
from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order, head_allowance
from foldwright.core.design.rows import exact_share
from foldwright.core.design.styles import row_count, style_of
from foldwright.core.facts.layout_taste import (
    ALIKE_AFTER,
    LEAST_FULL_LOOP,
    LOCK_DRIFT,
    MORE_ROWS,
    MOST_FULL_LOOP,
)
from foldwright.core.facts.panel_limits import SHALLOWEST_FOLD
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding

LOCKED_BY_SPACING = frozenset({StyleName.FLAT, StyleName.RELAXED})
FULLNESS_PLACES = 4  # a loop set by so many places runs off by less than a thread


@dataclass(frozen=True, kw_only=True, slots=True)
class Lock:
    """A pattern whose repeat goes into the cloth of the folds: every so many are alike."""

    alike_after: int  # folds
    repeats: int  # of the pattern in that many folds


def lock_of(order: Order, rows: RowPlan) -> Lock | None:
    """Tell whether the folds of a shade show its pattern by a rule.

    Takes: the order; its rows.

    Gives: after how many folds the print comes back, the fewest first; None for cloth without
    a repeat, for rows that differ or are tied, and where the print runs off over the drop.

    Holds for: a fold that takes as much cloth as its row spacing and fullness say.

    Source: derived here; common practice for the use of it.
    """
    repeat = order.chosen.face.vertical_repeat if order.chosen.face else None
    if repeat is None or rows.spacings or rows.ridges or rows.tied_rows.value:
        return None
    fold = rows.spacing.value.nanometres * exact_share(rows.fullness)
    locks = (_alike_after(folds, fold, repeat) for folds in range(1, ALIKE_AFTER.value + 1))
    drift = Fraction(LOCK_DRIFT.value.nanometres, rows.count.value)
    return next((lock for lock, off in locks if lock.repeats and off <= drift), None)


def _alike_after(folds: int, fold: Fraction, repeat: Length) -> tuple[Lock, Fraction]:
    """Give the whole repeats nearest to so many folds, and what one fold is then off by."""
    repeats = floor(fold * folds / repeat.nanometres + Fraction(1, 2))
    off = abs(fold - Fraction(repeats * repeat.nanometres, folds))
    return Lock(alike_after=folds, repeats=repeats), off


def locked_designs(order: Order) -> Iterator[Choices]:
    """Type what locks the pattern of the face into the folds, where that is left open.

    Takes: the order.

    Gives: designs of rows a whole part of the repeat apart, the rest of the drop left to skirt
    and head; or for loops, with the fullness that puts whole repeats into them.

    Source: derived here; common practice for the use of it.
    """
    repeat = order.chosen.face.vertical_repeat if order.chosen.face else None
    if repeat is None:
        return
    if order.design.style in LOCKED_BY_SPACING and order.design.head_allowance is None:
        yield from _by_spacing(order, repeat)
    if order.design.style is StyleName.LOOPED and order.design.fullness is None:
        yield from _by_fullness(order, repeat)


def _by_spacing(order: Order, repeat: Length) -> Iterator[Choices]:
    largest = style_of(order.design.style).largest_spacing(order).value
    for folds in range(1, ALIKE_AFTER.value + 1):
        spacing = Fraction(repeat.nanometres, folds)
        if SHALLOWEST_FOLD.value.nanometres * 2 <= spacing <= largest.nanometres:
            yield from _at_spacing(order, spacing)


def _at_spacing(order: Order, spacing: Fraction) -> Iterator[Choices]:
    """Take as many rows as fit, or the number typed, and leave the rest to skirt and head."""
    for under in skirts_tried(order):
        design = replace(order.design, skirt=under)
        room = span(replace(order, design=design)).nanometres
        count = order.design.row_count or floor(room / spacing - Fraction(1, 2))
        left = room - (count + Fraction(1, 2)) * spacing
        if count >= 1 and 0 <= left < spacing:
            head = head_allowance(order).value + Length(floor(left))
            yield replace(
                design, row_count=count, head_allowance=order.marked(head, Rounding.CUT_OVERSIZE)
            )


def _by_fullness(order: Order, repeat: Length) -> Iterator[Choices]:
    style, fewest = style_of(order.design.style), row_count(order).value
    counts = (
        (order.design.row_count,)
        if order.design.row_count
        else range(fewest, fewest + MORE_ROWS.value + 1)
    )
    for count in counts:
        spacing = style.least_spacing(order, count)
        for full in _fullnesses(spacing, repeat):
            yield replace(order.design, row_count=count, fullness=full)


def _fullnesses(spacing: Fraction, repeat: Length) -> Iterator[float]:
    """Give the fullness of every loop within reason that takes whole parts of the repeat."""
    if spacing <= 0:
        return
    for folds in range(1, ALIKE_AFTER.value + 1):
        part = Fraction(repeat.nanometres, folds)
        most = floor(spacing * exact_share(MOST_FULL_LOOP) / part)
        for parts in range(1, most + 1):
            full = round(float(part * parts / spacing), FULLNESS_PLACES)
            if gcd(parts, folds) == 1 and full >= LEAST_FULL_LOOP.value:
                yield full
