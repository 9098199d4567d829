"""Ring rows as exact marks from the bottom edge, whatever the style."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order, head_allowance, skirt, stacked_pitch
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

L = Figure[Length]
N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Tie:
    """Rows tied to the lowest for good: how many, how far apart, and the cloth between them."""

    rows: Figure[int]
    pitch: L
    pouf: L


@dataclass(frozen=True, kw_only=True, slots=True)
class RowScale:
    """Where the rows of a style lie.

    `exact` is the spacing in nanometres, unrounded; `spacing` is the figure that is shown.
    A cascade narrows: each spacing is that much less than the one below it. Tied rows lie
    stacked on the lowest even when the shade is down, with the pouf gathered between them.
    Shirred cloth is gathered along the drop, and folds as if it were as long as it hangs.
    """

    count: Figure[int]
    exact: Fraction
    spacing: L
    first_row: L
    fullness: N
    narrowing: L | None = None
    tie: Tie | None = None
    shirred: bool = False

    def above_first(self, number: int) -> Fraction:
        """Give how far a row lies above the lowest, in nanometres; rows count from 0."""
        if self.tie is not None:
            tied = min(number, self.tie.rows.value)
            return (number - tied) * self.exact + tied * self.tie.pitch.value.nanometres
        if self.narrowing is not None:
            less = self.narrowing.value.nanometres * (number * (number - 1) // 2)
            return number * self.exact - less
        return number * self.exact

    def above(self, number: int) -> Fraction:
        """Give the spacing above a row, in nanometres."""
        return self.above_first(number + 1) - self.above_first(number)


def row_plan(order: Order, scale: RowScale) -> RowPlan:
    """Set out the rows on a scale, each mark computed from the bottom edge.

    Takes: the order; the scale.

    Gives: the plan; first row, spacings and top panel sum to the drop exactly, because each
    mark is rounded to the nanometre on its own and the top panel is what is left.

    Holds for: a spacing wider than the stacked rows.

    Source: common practice (marks are cumulative).
    """
    marks = _marks(scale)
    return RowPlan(
        count=scale.count,
        marks=marks,
        spacing=scale.spacing,
        fold_depth=_fold_depth(scale),
        first_row=scale.first_row,
        skirt=skirt(order),
        head_allowance=head_allowance(order),
        top_panel=_top_panel(order, marks),
        fullness=scale.fullness,
        tied_rows=scale.tie.rows if scale.tie else untied(),
        rod_marks=_rod_marks(order, marks, scale),
        rods=order.design.rods,
        stacked_pitch=stacked_pitch(order),
        spacings=_spacings(scale, marks),
        pouf=scale.tie.pouf if scale.tie else None,
        shirred=scale.shirred,
    )


def exact_share(number: N) -> Fraction:
    """Take a typed number as the fraction that was meant, 1.7 as 17/10.

    Takes: a plain number.

    Gives: the nearest fraction with a denominator of at most a million.

    Source: derived here.

    >>> from foldwright.core.why.making import chosen
    >>> exact_share(chosen("fullness", 1.7, Unit.RATIO))
    Fraction(17, 10)
    """
    return Fraction(number.value).limit_denominator()


def _nearest(nanometres: Fraction) -> Length:
    return Length(round(nanometres))


def _marks(scale: RowScale) -> tuple[L, ...]:
    first = scale.first_row.value.nanometres
    return tuple(
        derived(
            f"row {number + 1}",
            _nearest(first + scale.above_first(number)),
            Unit.LENGTH,
            f"From the bottom edge: {{0}} to the lowest row and {words}, rounded only here.",
            scale.first_row,
            *figures,
        )
        for number in range(scale.count.value)
        for words, figures in (_way_up(scale, number),)
    )


def _way_up(scale: RowScale, number: int) -> tuple[str, tuple[L, ...]]:
    """Say how a row is reached from the lowest one; {0} is the lowest row's own mark."""
    if scale.narrowing is not None:
        words = f"{number} spacings, the lowest {{1}} and each {{2}} less than the one below"
        return words, (scale.spacing, scale.narrowing)
    if scale.tie is None:
        return f"{number} times the spacing {{1}}", (scale.spacing,)
    tied = min(number, scale.tie.rows.value)
    words = f"{tied} tied rows {{1}} apart" if tied != 1 else "a tied row {1} above it"
    if number == tied:
        return words, (scale.tie.pitch,)
    return f"{words}, then {number - tied} times the spacing {{2}}", (
        scale.tie.pitch,
        scale.spacing,
    )


def _spacings(scale: RowScale, marks: tuple[L, ...]) -> tuple[L, ...]:
    """Give each spacing for itself, where they are not all alike."""
    if scale.narrowing is None:
        return ()
    return tuple(
        derived(
            f"spacing {number}",
            upper.value - lower.value,
            Unit.LENGTH,
            "From the row at {0} to the row at {1}.",
            lower,
            upper,
        )
        for number, (lower, upper) in enumerate(pairwise(marks), start=1)
    )


def _fold_depth(scale: RowScale) -> L:
    """Fold the cloth of one spacing in two; what is shirred folds as long as it hangs."""
    if scale.shirred:
        value, because = _nearest(scale.exact / 2), "Half of one row spacing {0}."
        return derived("fold depth", value, Unit.LENGTH, because, scale.spacing)
    return derived(
        "fold depth",
        _nearest(scale.exact * exact_share(scale.fullness) / 2),
        Unit.LENGTH,
        "Half the cloth of one row spacing {0}, at {1} of cloth to one of drop.",
        scale.spacing,
        scale.fullness,
    )


def _top_panel(order: Order, marks: tuple[L, ...]) -> L:
    return derived(
        "top panel",
        order.drop.value - marks[-1].value,
        Unit.LENGTH,
        "The drop {0} less the top row at {1}.",
        order.drop,
        marks[-1],
    )


def untied() -> Figure[int]:
    """Tell that no rows are tied together."""
    because = "No rows are tied together for good."
    return derived("tied rows", 0, Unit.COUNT, because)


def _rod_marks(order: Order, marks: tuple[L, ...], scale: RowScale) -> tuple[L, ...]:
    rods = order.design.rods
    at_rows = marks if rods.at_rows else ()
    between = [_half_up(mark, scale, number) for number, mark in enumerate(marks)]
    every = (*at_rows, *(between if rods.between_rows else ()))
    return tuple(sorted(every, key=lambda rod: rod.value))


def _half_up(mark: L, scale: RowScale, number: int) -> L:
    return derived(
        f"rod over {mark.name}",
        _nearest(mark.value.nanometres + scale.above(number) / 2),
        Unit.LENGTH,
        "The row at {0} and half a spacing {1}: where the fold turns.",
        mark,
        scale.spacing,
    )
