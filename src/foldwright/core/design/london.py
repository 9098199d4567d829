"""The London shade: inverted pleats at its cords, a swag between them, and tails beyond."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from foldwright.core.design.choices import StyleName
from foldwright.core.design.flat import no_fullness
from foldwright.core.design.layout import (
    ColumnPlan,
    Layout,
    RowPlan,
    SewingStep,
    Sewn,
    SewnLine,
    SwagPlan,
)
from foldwright.core.design.order import Order, draft
from foldwright.core.design.poufs import PoufedStyle
from foldwright.core.design.swag import (
    between_columns,
    hem_for,
    swag_count,
    too_deep,
    usual_dip,
)
from foldwright.core.facts.panel_limits import WIDEST_LONDON_SWAG
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, by_change

L = Figure[Length]
N = Figure[float]


class LondonStyle(PoufedStyle):
    """London: a pleat at each column feeds the swags beside it, so that no side draws in."""

    name = StyleName.LONDON
    straight_hem = False

    def fullness(self, order: Order) -> N:
        """Take as much cloth as drop; the pouf comes on top."""
        del order
        return no_fullness()

    def usual_pouf(self, order: Order) -> L:
        """Take the house's pouf."""
        return order.habits.london_pouf

    def dip_at_rest(self, order: Order) -> L | None:
        """Let the pouf's own cloth swag between the pleats when the shade is down."""
        return dip(order)

    def edge_distance(self, order: Order) -> L:
        """Stand the outer pleats one tail from the edges."""
        return order.length("width of a tail", order.design.edge_distance, order.habits.london_tail)

    def largest_pitch(self, order: Order) -> L:
        """Take the widest swag."""
        return order.length("largest column pitch", order.design.largest_pitch, WIDEST_LONDON_SWAG)

    def flat_width(self, order: Order) -> L:
        """Add the cloth of a pleat at each column."""
        pleats, each = _pleats(order), pleat_allowance(order)
        return derived(
            "width of the flat cloth",
            order.width.value + each.value * pleats.value,
            Unit.LENGTH,
            "The finished width {0} and {1} pleats that take {2} each.",
            order.width,
            pleats,
            each,
        )

    def flat_edge(self, order: Order, edge: Length) -> Length:
        """Mark the outer columns in the middle of their pleats."""
        return edge + pleat_allowance(order).value / 2

    def hangs_below(self, order: Order, rows: RowPlan) -> L:
        """Take the middle of the swag: below the pouf, or below the fold of an open panel."""
        sag = dip(order)
        at_rest = sag.value if rows.tied_rows.value else Length(0)
        below = max(rows.first_row.value - at_rest, rows.fold_depth.value)
        return derived(
            "middle of the swag",
            below + sag.value,
            Unit.LENGTH,
            "The hem or fold at its pleats, of first row {0} or fold {1}, and the dip {2}.",
            rows.first_row,
            rows.fold_depth,
            sag,
        )

    def swag(self, order: Order, rows: RowPlan) -> SwagPlan | None:
        """Hang the hem between two pleats, which open to feed it."""
        del rows
        chord, sag = _chord(order), dip(order)
        return SwagPlan(chord=chord, edge_length=hem_for(chord, sag), dip=sag, tails=True)

    def drafts(self, order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Find pleats that hold too little cloth for their swag."""
        del rows
        chord, each = _chord(order), pleat_allowance(order)
        hem = hem_for(chord, dip(order))
        room = derived(
            "cloth between two pleats",
            chord.value + each.value,
            Unit.LENGTH,
            "The space between them {0}, and what they hold together for it {1}.",
            chord,
            each,
        )
        if hem.value > room.value:
            needed = order.marked(hem.value - chord.value, Rounding.CUT_OVERSIZE)
            figure = chosen("cloth of a pleat", needed, Unit.LENGTH)
            sentence = "Fold {0} into each pleat."
            yield draft(
                Severity.STOP,
                "pleats-too-small",
                "The hem of a swag takes {0}; between two pleats there is {1} of cloth.",
                hem,
                room,
                ways=(
                    by_change(
                        order, order.system, sentence, figure, design__pleat_allowance=needed
                    ),
                ),
            )

    def refusals(self, order: Order) -> Iterator[Draft[Order]]:
        """Refuse a dip that no hem between these pleats can hang in, or a pouf too long."""
        if order.width.value <= self.edge_distance(order).value * 2:
            return
        yield from too_deep(order, _chord(order))
        yield from super().refusals(order)

    def sewn(self, order: Order, rows: RowPlan, columns: ColumnPlan) -> tuple[SewnLine, ...]:
        """Mark the two folds of every pleat, half its cloth on either side of its column."""
        del rows
        each = pleat_allowance(order)
        marks = columns.cloth_marks or columns.marks
        folds = chain.from_iterable((_fold(mark, each, -1), _fold(mark, each, 1)) for mark in marks)
        return tuple(SewnLine(kind=Sewn.PLEAT, at=fold, upright=True) for fold in folds)

    def before_the_turns(self, order: Order, layout: Layout) -> Iterator[SewingStep]:
        """Fold the pleats once the widths are joined."""
        yield SewingStep(
            title="Fold the pleats",
            instruction="At each of {0} columns bring the two fold lines together over the column's"
            " mark, {1} of cloth behind them; baste the pleats at the head only, and check the"
            " width {2}.",
            figures=(layout.columns.count, pleat_allowance(order), order.width),
        )


def dip(order: Order) -> L:
    """Tell how much lower the swag hangs midway between its pleats.

    Takes: the order.

    Gives: as typed; else the house's, or less where the pleats stand too close for it.

    Source: common practice.
    """
    if order.design.dip is not None:
        return chosen("dip", order.design.dip, Unit.LENGTH)
    return usual_dip("dip", order.habits.london_dip, _chord(order))


def pleat_allowance(order: Order) -> L:
    """Tell how much cloth is folded into each pleat.

    Takes: the order.

    Gives: as typed, else the house's.

    Source: london-gallery-diary.
    """
    habit = order.habits.london_pleat
    return order.length("cloth of an inverted pleat", order.design.pleat_allowance, habit)


def _pleats(order: Order) -> Figure[int]:
    swags = _swags(order)
    return derived(
        "number of pleats", swags.value + 1, Unit.COUNT, "One more than {0} swags.", swags
    )


def _swags(order: Order) -> Figure[int]:
    style = LondonStyle()
    return swag_count(order, style.edge_distance(order), style.largest_pitch(order))


def _chord(order: Order) -> L:
    return between_columns(order, LondonStyle().edge_distance(order), _swags(order))


def _fold(mark: L, each: L, way: int) -> L:
    side = "left" if way < 0 else "right"
    return derived(
        f"fold {side} of {mark.name}",
        mark.value + each.value * way / 2,
        Unit.LENGTH,
        f"The pleat's middle at {{0}}, and half of its cloth {{1}} to the {side}.",
        mark,
        each,
    )
