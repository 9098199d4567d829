"""What a hem that dips lets through at its sides, and what would hold it straight."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.choices import RodPlace
from foldwright.core.design.hanging import HangingEdge
from foldwright.core.design.layout import Layout, SwagPlan
from foldwright.core.design.order import Order, draft
from foldwright.core.design.style import Style
from foldwright.core.facts.panel_limits import MOST_DRAW_IN
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]


def draft_swag_checks(order: Order, style: Style, layout: Layout) -> Iterator[Draft[Order]]:
    """Draft what is wrong with a hem that dips.

    Takes: the order; its style; its layout.

    Gives: drafts of findings; none where a bar holds the hem straight.

    Source: common practice; derived here for the gap.
    """
    if layout.swag is not None and layout.swag.draw_in is not None:
        yield from _draws_in(order, layout, layout.swag, layout.swag.draw_in)
    if not style.straight_hem:
        yield from _bar_in_a_swag(order)
    if layout.swag is not None:
        yield from _rods_in_a_swag(order)


def _draws_in(order: Order, layout: Layout, swag: SwagPlan, drawn: L) -> Iterator[Draft[Order]]:
    """Find sides that draw in too far; that they draw in at all is worth telling."""
    if drawn.value > MOST_DRAW_IN.value:
        yield draft(
            Severity.ASK,
            "sides-draw-in",
            "With a dip of {2} each side draws in by {0} at the hem; more than {1} lets the light"
            " past.",
            drawn,
            MOST_DRAW_IN,
            swag.dip,
            ways=(*_shallower(order, layout), _widened(order), by_hand("Keep it with the gap.")),
        )
    elif drawn.value > ZERO and swag.tapered_gap is not None:
        yield draft(
            Severity.NOTE,
            "tapered-gap",
            "The hem dips, so each side draws in by {0} there: a gap that tapers to the head, {1}"
            " open in all. Tell the client.",
            drawn,
            swag.tapered_gap,
            ways=(_widened(order),),
        )


def _widened(order: Order) -> Way[Order]:
    sentence = "Cut the hem wider, so that the sides hang plumb."
    return by_change(order, order.system, sentence, design__widened_hem=True)


def _shallower(order: Order, layout: Layout) -> Iterator[Way[Order]]:
    """Find the deepest dip that draws the sides in no farther than they may."""
    flat, spaces = layout.columns.pitch.value, layout.columns.count.value - 1
    chord = flat - MOST_DRAW_IN.value * 2 / spaces
    if chord <= ZERO:
        return
    edge = HangingEdge.of_length(chord.in_metres, flat.in_metres)
    dip = order.marked(Length.metres(edge.sag_m), Rounding.MUST_FIT)
    figure = chosen("dip", dip, Unit.LENGTH)
    yield by_change(order, order.system, "Let it dip by {0}.", figure, design__dip=dip)


def _bar_in_a_swag(order: Order) -> Iterator[Draft[Order]]:
    if order.chosen.bar is not None:
        yield draft(
            Severity.ASK,
            "bar-in-a-swag",
            "A bottom bar is chosen, and it would hold straight a hem that is to dip.",
            ways=(by_hand("Leave the bar out, and weight the hem at its columns."),),
        )


def _rods_in_a_swag(order: Order) -> Iterator[Draft[Order]]:
    if order.design.rods is not RodPlace.NONE:
        yield draft(
            Severity.ASK,
            "rods-in-a-swag",
            "Rods are asked for, and they would hold straight a face that is to hang free.",
            ways=(
                by_change(order, order.system, "Leave the rods out.", design__rods=RodPlace.NONE),
            ),
        )
