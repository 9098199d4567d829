"""From the finished size to the layout: rows, columns, widths, cuts and the raised stack."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from foldwright.core.design.allowances import head_tape, hem_allowance, top_allowance
from foldwright.core.design.bands import plan_bands
from foldwright.core.design.choices import Choices
from foldwright.core.design.column_checks import draft_column_checks, nearest_column
from foldwright.core.design.columns import plan_columns
from foldwright.core.design.cutting import cut_layers
from foldwright.core.design.layout import ColumnPlan, Layout, WidthPlan
from foldwright.core.design.linings import lined
from foldwright.core.design.making import PLAIN, Making
from foldwright.core.design.order import Order
from foldwright.core.design.pattern_lock import draft_lock_checks
from foldwright.core.design.pieces import cut_pieces
from foldwright.core.design.refusing import draft_refusals
from foldwright.core.design.rod_pockets import (
    draft_pocket_checks,
    plan_pockets,
    pocket_lines,
    pocketed_rows,
)
from foldwright.core.design.row_checks import draft_row_checks
from foldwright.core.design.sagging import draft_sag_checks
from foldwright.core.design.sewing import sewing_order
from foldwright.core.design.stack_checks import draft_stack_checks
from foldwright.core.design.stacking import plan_stack, travel
from foldwright.core.design.styles import row_count, style_of
from foldwright.core.design.swag_checks import draft_swag_checks
from foldwright.core.design.valance import flap_length, plan_valance
from foldwright.core.design.widths import Joining, flat_width, join_widths, side_turn
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Chosen
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.why.answer import Answer
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding
from foldwright.core.why.trying import Draft, settle

L = Figure[Length]


def lay_out(  # noqa: PLR0913, PLR0917 - the contract between the rooms
    choices: Choices,
    size: FinishedSize,
    chosen: Chosen,
    habits: Habits,
    row_cap: L,
    edge_floor: L,
    making: Making = PLAIN,
) -> Answer[Layout]:
    """Lay out a shade: rows, columns, widths, seams, cut sizes and the raised stack.

    Takes: the design as signed; the finished size; the materials chosen so far; the shop's
    habits; the largest row spacing and the least edge distance that the markets allow; what
    is sewn on or hung before the shade, nothing unless told.

    Gives: the layout, or None where none can be drawn, and the findings; every remedy that
    changes a field has been tried.

    Holds for: shades in one piece, in the styles of the house.

    Source: common practice; hobbled-shade-book for loops; the markets' rules for cap and edge.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.facts.markets import edge_distance_floor, row_spacing_cap
    >>> from foldwright.core.measure.finishing import finished_size
    >>> from foldwright.core.measure.opening import AskedSize, Mount, Opening
    >>> asked = AskedSize(width=Length.inches(48), drop=Length.inches(60), given_by="client")
    >>> size = finished_size(Opening(), Mount(), asked, house_habits()).result
    >>> answer = lay_out(Choices(head_allowance=Length.inches(3)), size, Chosen(),
    ...     house_habits(), row_spacing_cap(()), edge_distance_floor(()))
    >>> answer.result.rows.count.value, answer.result.columns.count.value
    (7, 6)
    """
    order = Order(
        design=choices,
        size=size,
        chosen=chosen,
        habits=habits,
        row_cap=row_cap,
        edge_floor=edge_floor,
        making=making,
    )
    refusals = list(draft_refusals(order))
    if refusals:
        return Answer(result=None, findings=settle(refusals, _refused))
    drawn = draw_layout(order)
    return Answer(result=drawn, findings=settle(_checks(order, drawn), _judge))


def draw_layout(order: Order) -> Layout:
    """Draw the layout of an order without looking for faults in it.

    Takes: an order that is not refused.

    Gives: the layout that `lay_out` gives for it.

    Source: common practice, as in each part.

    >>> from foldwright.core.design.example import ORDER
    >>> draw_layout(ORDER).columns.count.value
    8
    """
    style = style_of(order.design.style)
    rows = pocketed_rows(order, style.rows(order, row_count(order)))
    joining = join_widths(order)
    columns = plan_columns(order, joining.seams)
    pockets = plan_pockets(order, rows)
    stack = plan_stack(order, style, rows)
    layout = Layout(
        style=style.name,
        rows=rows,
        columns=columns,
        widths=_width_plan(order, joining, columns),
        cuts=cut_layers(order, rows, joining),
        lined=lined(order),
        stack=stack,
        tape=head_tape(order),
        bands=plan_bands(order),
        valance=plan_valance(order, stack),
        flap_length=flap_length(order, stack),
        travel=travel(order, rows),
        swag=style.swag(order, rows),
        side_turn=side_turn(order),
        hem_allowance=hem_allowance(order),
        top_allowance=top_allowance(order),
        pockets=pockets,
        sewn=(*style.sewn(order, rows, columns), *pocket_lines(pockets)),
    )
    layout = replace(layout, pieces=tuple(cut_pieces(order, layout)))
    return replace(layout, sewing=sewing_order(order, layout))


def _width_plan(order: Order, joining: Joining, columns: ColumnPlan) -> WidthPlan:
    flat = flat_width(order)
    return WidthPlan(
        widths=joining.widths,
        seams=joining.seams,
        centre_visible=joining.centre_visible,
        side_visible=joining.side_visible,
        side_cut=joining.side_cut,
        nearest_column=nearest_column(columns, joining),
        cloth_width=None if flat.value == order.width.value else flat,
    )


def _checks(order: Order, layout: Layout) -> Iterator[Draft[Order]]:
    style = style_of(layout.style)
    yield from draft_row_checks(order, style, layout.rows)
    yield from draft_column_checks(order, layout.columns, join_widths(order))
    if style.straight_folds:
        yield from draft_sag_checks(order, layout.rows, layout.columns)
    yield from draft_pocket_checks(order)
    yield from draft_lock_checks(order, style, layout.rows)
    yield from draft_swag_checks(order, style, layout)
    yield from draft_stack_checks(order, style, layout.rows, layout.stack)


def _refused(order: Order) -> list[Finding]:
    """Find what still keeps an order from being drawn; the drawing is judged once there is one."""
    return [draft.finding for draft in draft_refusals(order)]


def _judge(order: Order) -> list[Finding]:
    """Find fault with an order as it would be, its remedies left untried."""
    return _refused(order) or [draft.finding for draft in _checks(order, draw_layout(order))]
