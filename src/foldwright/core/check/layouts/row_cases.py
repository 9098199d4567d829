"""Every way to set out the rows that is tried: skirts, numbers of rows, and locked patterns."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from foldwright.core.check.layouts.locking import locked_designs
from foldwright.core.check.layouts.skirts import skirts_tried
from foldwright.core.check.motif_checks import Motif
from foldwright.core.design.choices import Choices
from foldwright.core.design.layout import RowPlan, Stack
from foldwright.core.design.making import Making
from foldwright.core.design.order import (
    Order,
    head_allowance,
    least_head_allowance,
    skirt,
    stacked_pitch,
)
from foldwright.core.design.pattern_lock import Lock, lock_of
from foldwright.core.design.row_checks import draft_row_checks
from foldwright.core.design.stack_checks import draft_stack_checks
from foldwright.core.design.stacking import plan_stack, travel
from foldwright.core.design.styles import row_count, style_of
from foldwright.core.design.untyped_rows import cord_to_tube
from foldwright.core.facts.layout_taste import MORE_ROWS
from foldwright.core.facts.markets import counts_to_the_tube
from foldwright.core.facts.panel_limits import DEEPEST_FOLD, SHALLOWEST_FOLD
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Severity


@dataclass(frozen=True, kw_only=True, slots=True)
class Band:
    """A trim across the face that no ring may be sewn on."""

    lower: Length
    upper: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class RowCase:
    """One way to set out the rows, and what is held against it."""

    design: Choices  # typed so far as the rows need it
    rows: RowPlan
    stack: Stack
    travel: Length
    lock: Lock | None
    stops: int
    asks: int
    motif_folded: bool  # by the lowest row, in sight on the raised shade
    off_fold: Length  # folds out of the usual by so much
    off_skirt: Length
    more_head: Length


def row_cases(order: Order, band: Band | None, motif: Motif | None = None) -> tuple[RowCase, ...]:
    """Set out the rows in every way that is tried; the first is the shade's own.

    Takes: the order; a band across the face and a motif on it, where there are any.

    Gives: only what the order leaves open is varied; ways that cannot be drawn are left out.

    Source: derived here.
    """
    designs = dict.fromkeys((order.design, *_plain_designs(order), *locked_designs(order)))
    trials = (_trial(order, design) for design in designs)
    return tuple(_case(trial, band, motif) for trial in trials if _can_rise(trial))


@dataclass(frozen=True, kw_only=True, slots=True)
class _Trial:
    """A design on trial, with its number of rows, which takes long to find."""

    order: Order
    count: Figure[int]


def _trial(order: Order, design: Choices) -> _Trial:
    tried = replace(order, design=design)
    return _Trial(order=tried, count=row_count(tried))


def _plain_designs(order: Order) -> Iterator[Choices]:
    """Try every skirt with the fewest rows that do, and with a few more; typed rows stay."""
    for under in skirts_tried(order):
        design = replace(order.design, skirt=under)
        yield design
        if order.design.row_count is None:
            fewest = _trial(order, design).count.value
            counts = range(fewest + 1, fewest + 1 + MORE_ROWS.value)
            yield from (replace(design, row_count=count) for count in counts)


def _can_rise(trial: _Trial) -> bool:
    """Tell whether the rows lie farther apart than they stack, under a head and over a skirt."""
    order, count = trial.order, trial.count.value
    style, pitch = style_of(order.design.style), stacked_pitch(order).value
    used = head_allowance(order).value + skirt(order).value + pitch * 2
    return (
        count >= 1
        and order.drop.value > used
        and style.least_spacing(order, count) >= pitch.nanometres * 2
    )


def count_row_stops(order: Order, band: Band | None) -> int:
    """Count what the rows of an order would be stopped for.

    Takes: the order; a band across the face, where there is one.

    Gives: the stops of rows, stack, band and the cord over the top row.

    Holds for: an order that can be drawn.

    Source: derived here.

    >>> from foldwright.core.design.example import ORDER
    >>> count_row_stops(ORDER, None)
    0
    """
    return _case(_trial(order, order.design), band).stops


def band_of(making: Making) -> Band | None:
    """Give the band across a face, where there is one.

    Takes: what is sewn on.

    Gives: its edges over the bottom edge.

    Source: derived here.

    >>> band_of(Making()) is None
    True
    """
    if making.band_height is None:
        return None
    lower = making.band_above_hem or ZERO
    return Band(lower=lower, upper=lower + making.band_height)


def _case(trial: _Trial, band: Band | None, motif: Motif | None = None) -> RowCase:
    order, style = trial.order, style_of(trial.order.design.style)
    rows = style.rows(order, trial.count)
    stack = plan_stack(order, style, rows)
    drafts = (
        *draft_row_checks(order, style, rows),
        *draft_stack_checks(order, style, rows, stack),
    )
    said = [draft.finding.severity for draft in drafts]
    stops = said.count(Severity.STOP) + _on_the_band(rows, band) + _far_from_the_tube(order, rows)
    motif_folded = motif is not None and motif.crosses(rows.first_row.value)
    return RowCase(
        design=order.design,
        rows=rows,
        stack=stack,
        travel=travel(order, rows).value,
        lock=lock_of(order, rows),
        stops=stops,
        asks=said.count(Severity.ASK) + motif_folded,
        motif_folded=motif_folded,
        off_fold=_off_fold(rows),
        off_skirt=abs(rows.skirt.value - order.habits.skirt.value),
        more_head=rows.head_allowance.value - least_head_allowance(order).value,
    )


def _on_the_band(rows: RowPlan, band: Band | None) -> bool:
    return band is not None and any(band.lower <= mark.value <= band.upper for mark in rows.marks)


def _far_from_the_tube(order: Order, rows: RowPlan) -> bool:
    """Tell whether the cord over the top row is longer than the market allows."""
    bracket, cap = order.chosen.bracket, order.row_cap
    if bracket is None or not counts_to_the_tube(cap):
        return False
    return cord_to_tube(rows.top_panel, bracket).value > cap.value


def _off_fold(rows: RowPlan) -> Length:
    """Measure how far the folds are out of the usual; loops are deeper on purpose."""
    depth = rows.fold_depth.value
    if rows.fullness.value > 1:
        return ZERO
    return max(SHALLOWEST_FOLD.value - depth, depth - DEEPEST_FOLD.value, ZERO)
