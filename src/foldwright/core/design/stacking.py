"""The shade fully raised: how low the stack hangs, how thick it is, how far it travelled."""

from __future__ import annotations

from math import prod

from foldwright.core.design.layout import RowPlan, Stack
from foldwright.core.design.order import Order, stacked_pitch
from foldwright.core.design.style import Style
from foldwright.core.facts.panel_limits import (
    NOSE_IN_BENDING_LENGTHS,
    RING_THICKNESS,
    THICKNESS_WHEN_UNKNOWN,
)
from foldwright.core.facts.records import Cloth
from foldwright.core.facts.stiffness import bending_length_of
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, supplied

L = Figure[Length]
N = Figure[float]


def plan_stack(order: Order, style: Style, rows: RowPlan) -> Stack:
    """Stack the rows under the head allowance, the folds hanging below the lowest.

    Takes: the order; its style; its rows.

    Gives: raised size, depth to the room, and the glass that stays covered where the glass
    is measured.

    Source: common practice (head allowance, fold, skirt and bunching).

    >>> from foldwright.core.design.example import ORDER
    >>> from foldwright.core.design.styles import row_count, style_of
    >>> style = style_of(ORDER.design.style)
    >>> stack = plan_stack(ORDER, style, style.rows(ORDER, row_count(ORDER)))
    >>> float(stack.raised_size.value.in_inches)
    8.95
    """
    raised = _raised_size(order, style, rows)
    return Stack(
        raised_size=raised,
        depth=_depth(order, style, rows),
        glass_covered=_glass_covered(order, raised),
    )


def travel(order: Order, rows: RowPlan) -> L:
    """Work out the design raise of the lowest ring row.

    The top row stops at the head allowance, and the others stack under it, so the lowest
    row stops lower by one stacked pitch for each row above it. Where rows had no thickness
    every row would reach the head allowance, as the bench's rule of thumb takes it.

    Takes: the order; its rows.

    Gives: the drop less first row, head allowance and the stacked rows. It equals one less
    than the rows times (spacing less stacked pitch), and what the top panel folds.

    Holds for: top panels no shorter than the head allowance.

    Source: common practice; derived here for the stacked rows.

    >>> from foldwright.core.design.example import ORDER
    >>> from foldwright.core.design.styles import row_count, style_of
    >>> rows = style_of(ORDER.design.style).rows(ORDER, row_count(ORDER))
    >>> float(travel(ORDER, rows).value.in_inches)
    51.05
    """
    stacked = _stacked(order, rows)
    value = order.drop.value - rows.first_row.value - rows.head_allowance.value - stacked.value
    return derived(
        "travel",
        value,
        Unit.LENGTH,
        "The drop {0} less the first row {1} and the head allowance {2}, and less {3} because"
        " the rows stack under the top one; a rule of thumb leaves that last part out.",
        order.drop,
        rows.first_row,
        rows.head_allowance,
        stacked,
    )


def _stacked(order: Order, rows: RowPlan) -> L:
    pitch = stacked_pitch(order)
    return derived(
        "height of the stacked rows",
        pitch.value * (rows.count.value - 1),
        Unit.LENGTH,
        "One less than {0} rows, {1} apart.",
        rows.count,
        pitch,
    )


def _raised_size(order: Order, style: Style, rows: RowPlan) -> L:
    stacked, below = _stacked(order, rows), style.hangs_below(order, rows)
    return derived(
        "raised size",
        rows.head_allowance.value + stacked.value + below.value,
        Unit.LENGTH,
        "Head allowance {0}, stacked rows {1}, and {2} that hangs below the lowest row.",
        rows.head_allowance,
        stacked,
        below,
    )


def _glass_covered(order: Order, raised: L) -> L | None:
    above = order.size.top_above_glass
    if above is None:
        return None
    return derived(
        "glass covered",
        max(raised.value - above.value, ZERO),
        Unit.LENGTH,
        "The raised size {0} less the {1} from the top of the shade to the glass.",
        raised,
        above,
    )


def _depth(order: Order, style: Style, rows: RowPlan) -> L:
    """Take the thickest of the pressed folds, the nose of a free fold, and folds that billow."""
    depths = (_pressed_folds(order, style, rows), _nose(order), style.billow)
    return max((depth for depth in depths if depth), key=lambda depth: depth.value)


def _pressed_folds(order: Order, style: Style, rows: RowPlan) -> L:
    folds, bulk, cloth = style.folds(rows), order.habits.fold_bulk, _thickness(order)
    gathers = (*_gathered_across(order, style), *_gathered_along(rows))
    times = 2 * folds.value * prod(each.value for each in gathers)

    def deep(kappa: float) -> Length:
        return Length.metres(times * kappa * cloth.value.in_metres) + RING_THICKNESS.value

    return derived(
        "depth of the stack",
        deep(bulk.value),
        Unit.LENGTH,
        "Twice {0} folds, of cloth {1} thick, bulking {2} times, and a ring {3}"
        + _gathered(len(gathers)),
        folds,
        cloth,
        bulk,
        RING_THICKNESS,
        *gathers,
        low=None if bulk.low is None else deep(bulk.low),
        high=None if bulk.high is None else deep(bulk.high),
        rounding=Rounding.CUT_OVERSIZE,
    )


def _gathered(ways: int) -> str:
    """Say that the folds are as many times thicker as they are gathered across and along."""
    times = " and ".join(f"{{{number}}} times" for number in range(4, 4 + ways))
    return f"; gathered, that is {times} as thick." if ways else "."


def _gathered_along(rows: RowPlan) -> tuple[N, ...]:
    return (rows.fullness,) if rows.shirred else ()


def _gathered_across(order: Order, style: Style) -> tuple[N, ...]:
    """Give how many times as wide as the shade its flat cloth is, where it is wider at all."""
    flat = style.flat_width(order)
    if flat.value == order.width.value:
        return ()
    ratio = float(flat.value / order.width.value)
    because = "The flat cloth {0} to the finished width {1}."
    return (derived("cloth across", ratio, Unit.RATIO, because, flat, order.width),)


def _thickness(order: Order) -> L:
    layers = tuple(_layer_thickness(cloth) for cloth in order.layers) or (THICKNESS_WHEN_UNKNOWN,)
    return derived(
        "thickness of all layers",
        sum((layer.value for layer in layers), ZERO),
        Unit.LENGTH,
        "All layers: " + " and ".join(f"{{{number}}}" for number in range(len(layers))) + ".",
        *layers,
    )


def _layer_thickness(cloth: Cloth) -> L:
    if cloth.thickness is None:
        return THICKNESS_WHEN_UNKNOWN
    return supplied("thickness", cloth.thickness, Unit.LENGTH, cloth.name)


def _nose(order: Order) -> L | None:
    known = (bending_length_of(cloth) for cloth in order.layers)
    stiff = [figure for figure in known if figure is not None]
    if not stiff:
        return None
    stiffest, times = max(stiff, key=lambda figure: figure.value), NOSE_IN_BENDING_LENGTHS

    def deep(lengths: float) -> Length:
        return Length.metres(stiffest.value.in_metres * lengths)

    return derived(
        "depth of the stack",
        deep(times.value),
        Unit.LENGTH,
        "The nose of a free fold: {0} times the bending length {1} of the stiffest layer.",
        times,
        stiffest,
        low=deep(times.low or times.value),
        high=deep(times.high or times.value),
        rounding=Rounding.CUT_OVERSIZE,
    )
