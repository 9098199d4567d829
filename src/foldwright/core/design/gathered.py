"""Cloth gathered across: the balloon with its pouf, and the gathered shade with its loops."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.choices import StyleName
from foldwright.core.design.flat import no_fullness
from foldwright.core.design.hanging import HangingEdge
from foldwright.core.design.layout import Layout, RowPlan, SewingStep, SwagPlan
from foldwright.core.design.looped import fullness, loop_draft, loop_spacing_limit
from foldwright.core.design.order import Order
from foldwright.core.design.poufs import PoufedStyle
from foldwright.core.design.rows import exact_share
from foldwright.core.design.swag import between_columns, deepest_dip, swag_count
from foldwright.core.facts.panel_limits import WIDEST_POUF
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived
from foldwright.core.why.trying import Draft

L = Figure[Length]
N = Figure[float]


class BalloonStyle(PoufedStyle):
    """Balloon: gathered at the head, with rings that pinch every fold and a pouf at the hem."""

    name = StyleName.BALLOON

    def fullness(self, order: Order) -> N:
        """Take as much cloth as drop; the pouf comes on top."""
        del order
        return no_fullness()

    def usual_width_fullness(self, order: Order) -> N:
        """Take the house's fullness across."""
        return order.habits.balloon_width_fullness

    def usual_pouf(self, order: Order) -> L:
        """Take the house's pouf."""
        return order.habits.balloon_pouf

    def dip_at_rest(self, order: Order) -> L | None:
        """Let nothing hang lower than the folds do by themselves."""
        del order
        return None

    def largest_pitch(self, order: Order) -> L:
        """Take the widest pouf."""
        return order.length("largest column pitch", order.design.largest_pitch, WIDEST_POUF)

    def width_fullness(self, order: Order) -> N:
        """Tell how much cloth lies across to one of finished width."""
        typed, habit = order.design.width_fullness, self.usual_width_fullness(order)
        return order.number("width fullness", typed, Unit.RATIO, habit)

    def flat_width(self, order: Order) -> L:
        """Take as many times the finished width as are gathered into it."""
        full = self.width_fullness(order)
        return derived(
            "width of the flat cloth",
            Length(round(order.width.value.nanometres * exact_share(full))),
            Unit.LENGTH,
            "The finished width {0}, with {1} of cloth to one.",
            order.width,
            full,
        )

    def swag(self, order: Order, rows: RowPlan) -> SwagPlan | None:
        """Pinch every fold at its rings; between them it hangs its whole depth."""
        chord, cloth = self._between_rings(order), self._cloth_between_rings(order)
        return SwagPlan(
            chord=chord, edge_length=cloth, dip=_scallop(rows, chord, cloth), pinched=True
        )

    def after_the_rings(self, order: Order, layout: Layout) -> Iterator[SewingStep]:
        """Tie the pouf, then draw the head up."""
        yield from super().after_the_rings(order, layout)
        yield SewingStep(
            title="Gather the head",
            instruction="Run two gathering threads along the top line, draw the {0} up to {1},"
            " evenly from column to column until each stands at its mark on the board, and sew"
            " the gathers to a strip of tape.",
            figures=(self.flat_width(order), order.width),
        )

    def _between_rings(self, order: Order) -> L:
        return between_columns(order, self.edge_distance(order), self._poufs(order))

    def _poufs(self, order: Order) -> Figure[int]:
        return swag_count(order, self.edge_distance(order), self.largest_pitch(order))

    def _cloth_between_rings(self, order: Order) -> L:
        flat, edge, poufs = self.flat_width(order), self.edge_distance(order), self._poufs(order)
        return derived(
            "cloth between two columns",
            (flat.value - edge.value * 2) / poufs.value,
            Unit.LENGTH,
            "The flat cloth {0} less the edge distance {1} twice, shared by {2}.",
            flat,
            edge,
            poufs,
        )


class GatheredStyle(BalloonStyle):
    """Gathered: fuller along the drop too, in soft loops that hang there when it is down."""

    name = StyleName.GATHERED

    def largest_spacing(self, order: Order) -> L:
        """Take the smallest of the market's cap, the loop's limit and the spacing asked for."""
        return loop_spacing_limit(order)

    def fullness(self, order: Order) -> N:
        """Take what is typed, or as much as a looped shade has."""
        return fullness(order)

    def usual_width_fullness(self, order: Order) -> N:
        """Take the house's fullness across."""
        return order.habits.gathered_width_fullness

    def usually_tied(self) -> int:
        """Tie no rows: the loops are full enough."""
        return 0

    def drafts(self, order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
        """Find loops too long for a child's safety."""
        yield from loop_draft(order, self, rows)

    def after_the_rings(self, order: Order, layout: Layout) -> Iterator[SewingStep]:
        """Tack the loops up to tapes that are no longer than the drop."""
        yield SewingStep(
            title="Hold the loops",
            instruction="At each of {0} columns lay a tape from the lowest row up to the top line;"
            " sew each ring's mark on the cloth to the tape, {1} of tape from row to row, and let"
            " the cloth between hang as a loop.",
            figures=(layout.columns.count, layout.rows.spacing),
        )
        yield from super().after_the_rings(order, layout)


def _scallop(rows: RowPlan, chord: L, cloth: L) -> L:
    """Let a fold be pinched up by its depth, as far as the cloth between two columns reaches."""
    fold, deepest = max(rows.fold_depth, rows.first_row, key=_length), deepest_dip(chord)
    reach = ZERO
    if cloth.value > chord.value:
        edge = HangingEdge.of_length(chord.value.in_metres, cloth.value.in_metres)
        reach = Length.metres(edge.sag_m)
    return derived(
        "depth of a scallop",
        min(fold.value, deepest.value, reach),
        Unit.LENGTH,
        "Between two columns {0} apart hang {1} of cloth; a fold {2} deep dips there by as much,"
        " but by {3} at most.",
        chord,
        cloth,
        fold,
        deepest,
    )


def _length(figure: L) -> Length:
    return figure.value
