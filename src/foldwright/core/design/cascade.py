"""The cascade: a flat shade whose folds grow shorter from the hem up, so that each one shows."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache

from foldwright.core.design.choices import StyleName
from foldwright.core.design.flat import (
    FlatStyle,
    first_row_over_skirt,
    no_fullness,
    spacing_limit,
    span,
)
from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order, draft, head_allowance, skirt, stacked_pitch
from foldwright.core.design.rows import RowScale, row_plan
from foldwright.core.design.style import usual_rows
from foldwright.core.facts.panel_limits import CASCADE_GRID, SHALLOWEST_FOLD
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]

MOST_ROWS_TRIED = 60
_DEEP = SHALLOWEST_FOLD.value * 2  # the top spacing of a fold that is worth showing


class CascadeStyle(FlatStyle):
    """Cascade: raised, every fold shows below the one before it.

    A fold hangs half its spacing deep, so each spacing is two steps less than the one
    below. Head allowance, skirt, the spacings and half of the lowest make the drop.
    """

    name = StyleName.CASCADE

    def usual_row_count(self, order: Order) -> Figure[int]:
        """Take the fewest rows that keep to the largest spacing, or come nearest to it."""
        narrowing = _narrowing(order)
        return derived(
            "number of rows",
            _usual_count(order, narrowing.value),
            Unit.COUNT,
            "The fewest rows whose lowest spacing keeps within {0} while each is {1} less than"
            " the one below, or comes nearest to it, on a drop of {2}.",
            spacing_limit(order),
            narrowing,
            order.drop,
        )

    def least_spacing(self, order: Order, count: int) -> Fraction:
        """Give the top spacing, the least of all."""
        narrowing = _narrowing(order).value
        return _lowest(span(order), count, narrowing) - (count - 1) * narrowing.nanometres

    def rows(self, order: Order, count: Figure[int]) -> RowPlan:
        """Set the rows out from half the lowest spacing above the skirt."""
        narrowing = _narrowing(order)
        exact = _lowest(span(order), count.value, narrowing.value)
        spacing = derived(
            "row spacing",
            Length(round(exact)),
            Unit.LENGTH,
            "The lowest: the drop {0} less head {1} and skirt {2}, shared by {3} rows and half"
            " the lowest, each spacing {4} less than the one below.",
            order.drop,
            head_allowance(order),
            skirt(order),
            count,
            narrowing,
        )
        scale = RowScale(
            count=count,
            exact=exact,
            spacing=spacing,
            first_row=first_row_over_skirt(order, exact, spacing),
            fullness=no_fullness(),
            narrowing=narrowing,
        )
        return row_plan(order, scale)

    def drafts(self, order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Find a top fold too shallow for the eye."""
        top = _top_fold(rows)
        if top.value < SHALLOWEST_FOLD.value:
            yield draft(
                Severity.NOTE,
                "fold-depth",
                "The top fold is {0} deep; shallower than {1} is unusual.",
                top,
                SHALLOWEST_FOLD,
                ways=(*_shorter_step(order), by_hand("Keep it if the client likes it.")),
            )

    def closer_rows(self, order: Order) -> Iterator[Way[Order]]:
        """Take other rows, or steps that the spacing leaves room for."""
        yield usual_rows(order, self)
        yield from _shorter_step(order)


def step(order: Order) -> L:
    """Tell how much shorter each fold is than the one below it.

    Takes: the order.

    Gives: as typed; else the house's, or as much of it as keeps the lowest spacing within
    its limit and the top fold deep enough to show.

    Source: common practice; derived here for the limit.
    """
    if order.design.step is not None:
        return chosen("step of the cascade", order.design.step, Unit.LENGTH)
    fitting = _fitting_step(order)
    habit = order.habits.cascade_step
    if fitting == habit.value:
        return habit
    return derived(
        "step of the cascade",
        fitting,
        Unit.LENGTH,
        "The most, up to {0}, that leaves the lowest spacing within {1} and the top fold {2} deep.",
        habit,
        spacing_limit(order),
        SHALLOWEST_FOLD,
    )


def _narrowing(order: Order) -> L:
    each = step(order)
    because = "Twice the step {0}, since a fold hangs half its spacing deep."
    return derived("difference of two spacings", each.value * 2, Unit.LENGTH, because, each)


def _lowest(room: Length, count: int, narrowing: Length) -> Fraction:
    """Give the lowest spacing in nanometres: n + 1/2 of it, less all that the others lack."""
    lacking = narrowing.nanometres * count * (count - 1)
    return Fraction(room.nanometres * 2 + lacking, 2 * count + 1)


def _usual_count(order: Order, narrowing: Length) -> int:
    """Find the fewest rows, with a deep top fold where that can be had."""
    room, largest = span(order), spacing_limit(order).value
    return (
        _fewest(room, largest, narrowing, _DEEP)
        or _fewest(room, largest, narrowing, stacked_pitch(order).value * 2)
        or _nearest(room, narrowing, _DEEP)
    )


def _fewest(room: Length, largest: Length, narrowing: Length, top: Length) -> int | None:
    """Find the fewest rows that keep to the largest spacing, the top one no less than given."""
    most, counts = largest.nanometres, _counts(room, narrowing, top)
    return next((count for count in counts if _lowest(room, count, narrowing) <= most), None)


def _nearest(room: Length, narrowing: Length, top: Length) -> int:
    """Find the rows with the least lowest spacing, where none keeps to the largest."""
    counts = _counts(room, narrowing, top)
    return min(counts, key=lambda count: _lowest(room, count, narrowing), default=1)


def _counts(room: Length, narrowing: Length, top: Length) -> Iterator[int]:
    """Give every number of rows whose top spacing is no less than given."""
    for count in range(1, MOST_ROWS_TRIED):
        spacing = _lowest(room, count, narrowing) - (count - 1) * narrowing.nanometres
        if spacing < top.nanometres:
            return
        yield count


def _fitting_step(order: Order) -> Length:
    return _longest_step(span(order), spacing_limit(order).value, order.habits.cascade_step.value)


@lru_cache
def _longest_step(room: Length, largest: Length, most: Length) -> Length:
    """Find the longest step up to the most; every figure of a cascade asks for it again."""
    grid = CASCADE_GRID.value
    steps = (grid * number for number in range(most.nanometres // grid.nanometres, 0, -1))
    fitting = (each for each in (most, *steps) if _fewest(room, largest, each * 2, _DEEP))
    return next(fitting, ZERO)


def _top_fold(rows: RowPlan) -> L:
    value = (rows.top_panel.value - rows.head_allowance.value) / 2
    because = "Half of the top panel {0} less the head {1}."
    return derived(
        "depth of the top fold", value, Unit.LENGTH, because, rows.top_panel, rows.head_allowance
    )


def _shorter_step(order: Order) -> Iterator[Way[Order]]:
    """Offer the step that fits, where a typed one does not."""
    fitting = order.marked(_fitting_step(order), Rounding.MUST_FIT)
    if order.design.step is not None and ZERO < fitting < order.design.step:
        figure = chosen("step of the cascade", fitting, Unit.LENGTH)
        sentence = "Let each fold be {0} shorter than the one below."
        yield by_change(
            order, order.system, sentence, figure, design__step=fitting, design__row_count=None
        )
