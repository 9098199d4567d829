"""The relaxed shade: cords near the sides alone, and a hem that dips between them."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.choices import StyleName
from foldwright.core.design.flat import FlatStyle
from foldwright.core.design.layout import Layout, RowPlan, SewingStep, SwagPlan
from foldwright.core.design.order import Order
from foldwright.core.design.swag import (
    between_columns,
    chord_under,
    draw_in,
    hem_for,
    swag_count,
    tapered_gap,
    too_deep,
    usual_dip,
)
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft

L = Figure[Length]


class RelaxedStyle(FlatStyle):
    """Relaxed: rows as on a flat shade, with rings at two columns and no bar in the hem.

    Raised, the middle of the hem lags behind its columns until it hangs a dip lower. The
    hem's length stays, so the sides draw in, unless it is cut wider to begin with.
    """

    name = StyleName.RELAXED
    straight_hem = False
    straight_folds = False
    fixed_columns = True

    def largest_pitch(self, order: Order) -> L:
        """Take the widest swag."""
        return order.length(
            "largest column pitch", order.design.largest_pitch, order.habits.widest_swag
        )

    def hangs_below(self, order: Order, rows: RowPlan) -> L:
        """Take the hem in the middle of its dip."""
        sag, below = dip(order), rows.first_row
        because = "The hem {0} below the lowest row at the columns, and the dip {1}."
        value = below.value + sag.value
        return derived("middle of the hem", value, Unit.LENGTH, because, below, sag)

    def swag(self, order: Order, rows: RowPlan) -> SwagPlan | None:
        """Hang the hem between its columns, drawn in or cut wider."""
        del rows
        swags, flat, sag = _swags(order), _flat_chord(order), dip(order)
        if order.design.widened_hem:
            hem = hem_for(flat, sag)
            return SwagPlan(chord=flat, edge_length=hem, dip=sag, flare=self.flare(order))
        chord = chord_under(flat, sag)
        drawn = draw_in(flat, chord, swags)
        gap = tapered_gap(order, drawn, sag)
        return SwagPlan(chord=chord, edge_length=flat, dip=sag, draw_in=drawn, tapered_gap=gap)

    def flare(self, order: Order) -> L | None:
        """Cut the hem as much wider as its dips take, where that is asked for."""
        if not order.design.widened_hem:
            return None
        flat = _flat_chord(order)
        return _flare(flat, hem_for(flat, dip(order)), _swags(order))

    def refusals(self, order: Order) -> Iterator[Draft[Order]]:
        """Refuse a dip that no hem between these columns can hang in."""
        if order.width.value > self.edge_distance(order).value * 2:
            yield from too_deep(order, _flat_chord(order))

    def after_the_rings(self, order: Order, layout: Layout) -> Iterator[SewingStep]:
        """Leave the middle free, and weight the hem at its columns."""
        del order
        assert layout.swag is not None  # noqa: S101 - a relaxed hem always dips
        yield SewingStep(
            title="Leave the middle free",
            instruction="Put no bar in the hem and no ring or rod between the columns; sew a weight"
            " into the hem at each column. Raise it on the rig and pin the dip to {0}.",
            figures=(layout.swag.dip,),
        )


def dip(order: Order) -> L:
    """Tell how much lower the hem hangs midway between its columns.

    Takes: the order.

    Gives: as typed; else the house's, or less where the columns stand too close for it.

    Source: common practice.
    """
    if order.design.dip is not None:
        return chosen("dip", order.design.dip, Unit.LENGTH)
    return usual_dip("dip", order.habits.relaxed_dip, _flat_chord(order))


def _swags(order: Order) -> Figure[int]:
    style = RelaxedStyle()
    return swag_count(order, style.edge_distance(order), style.largest_pitch(order))


def _flat_chord(order: Order) -> L:
    return between_columns(order, RelaxedStyle().edge_distance(order), _swags(order))


def _flare(flat: L, hem: L, swags: Figure[int]) -> L:
    return derived(
        "hem cut wider",
        (hem.value - flat.value) * swags.value,
        Unit.LENGTH,
        "What {2} swags take, each {0} wide with a hem of {1}.",
        flat,
        hem,
        swags,
    )
