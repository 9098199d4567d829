"""Designs that lock the pattern of the face into the folds, for the search to try."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from foldwright.core.check.layouts.skirts import skirts_tried
from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.order import Order
from foldwright.core.design.pattern_lock import (
    LOCKED_BY_SPACING,
    fullnesses_alike,
    locked_at,
    locked_fullness,
)
from foldwright.core.design.rows import exact_share
from foldwright.core.design.styles import row_count, style_of
from foldwright.core.facts.layout_taste import ALIKE_AFTER, MORE_ROWS, MOST_FULL_LOOP
from foldwright.core.facts.panel_limits import SHALLOWEST_FOLD
from foldwright.core.quantity.length import Length


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


def _alike(order: Order) -> tuple[int, ...]:
    """Take the number of folds that is typed, or try every one that is seen as a rule."""
    asked = order.design.alike_after
    return (asked,) if asked is not None else tuple(range(1, ALIKE_AFTER.value + 1))


def _by_spacing(order: Order, repeat: Length) -> Iterator[Choices]:
    largest = style_of(order.design.style).largest_spacing(order).value
    for folds in _alike(order):
        spacing = Fraction(repeat.nanometres, folds)
        if SHALLOWEST_FOLD.value.nanometres * 2 <= spacing <= largest.nanometres:
            yield from _at_spacing(order, spacing)


def _at_spacing(order: Order, spacing: Fraction) -> Iterator[Choices]:
    for under in skirts_tried(order):
        design = locked_at(replace(order, design=replace(order.design, skirt=under)), spacing)
        if design is not None:
            yield design


def _by_fullness(order: Order, repeat: Length) -> Iterator[Choices]:
    style, fewest = style_of(order.design.style), row_count(order).value
    counts = (
        (order.design.row_count,)
        if order.design.row_count
        else range(fewest, fewest + MORE_ROWS.value + 1)
    )
    for count in counts:
        spacing = style.least_spacing(order, count)
        for full in _fullnesses(order, spacing, repeat):
            fold = Length(round(spacing * Fraction(full).limit_denominator()))
            settled = locked_fullness(order, style, count, fold)
            yield replace(order.design, row_count=count, fullness=settled)


def _fullnesses(order: Order, spacing: Fraction, repeat: Length) -> Iterator[float]:
    """Give the fullness of every loop within reason that takes whole parts of the repeat."""
    if spacing > 0:
        for folds in _alike(order):
            yield from fullnesses_alike(spacing, repeat, folds, exact_share(MOST_FULL_LOOP))
