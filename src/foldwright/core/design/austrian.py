"""The Austrian shade: shirred on tapes from head to hem, with a scallop between each two."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.choices import StyleName
from foldwright.core.design.hanging import HangingEdge
from foldwright.core.design.layout import Layout, RowPlan, SewingStep, SwagPlan
from foldwright.core.design.order import Order, draft, head_allowance, skirt, stacked_pitch
from foldwright.core.design.poufs import PoufedStyle, Setting
from foldwright.core.design.rows import untied
from foldwright.core.design.swag import between_columns, swag_count
from foldwright.core.facts.panel_limits import WIDEST_SCALLOP
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]
N = Figure[float]


class AustrianStyle(PoufedStyle):
    """Austrian: no loops and no pouf, but two or three lengths of cloth drawn up on tapes.

    Extra width lets hem and folds hang in scallops between the tapes, down as well as up. The
    drop is measured to the lowest point of a scallop.
    """

    name = StyleName.AUSTRIAN
    shirred = True

    def fullness(self, order: Order) -> N:
        """Draw up on a tape as many drops of cloth as are asked for; a tape ends over its dip."""
        asked, dip, drop = asked_fullness(order), _dip(order), order.drop.value
        tape = drop - dip.value
        return derived(
            "fullness along the tapes",
            asked.value * float(drop / tape) if tape > ZERO else asked.value,
            Unit.RATIO,
            "{0} of cloth to one of the drop {1}, drawn up on tapes that end over the dip {2}.",
            asked,
            order.drop,
            dip,
        )

    def usual_pouf(self, order: Order) -> L:
        """Tie up none of the cloth below the lowest row."""
        return skirt(order)

    def dip_at_rest(self, order: Order) -> L | None:
        """Scallop the hem when the shade is down too."""
        return _dip(order)

    def usually_tied(self) -> int:
        """Tie no rows."""
        return 0

    def setting(self, order: Order) -> Setting:
        """Set the rows out from the lowest, which lies a skirt and a dip above the edge."""
        first, head = _first_row(order), head_allowance(order)
        room = derived(
            "drop left to the rows",
            order.drop.value - head.value - first.value,
            Unit.LENGTH,
            "The drop {0} less head {1} and first row {2}.",
            order.drop,
            head,
            first,
        )
        return Setting(tied=untied(), room=room, first_row=first)

    def largest_pitch(self, order: Order) -> L:
        """Take the widest scallop."""
        return order.length("largest column pitch", order.design.largest_pitch, WIDEST_SCALLOP)

    def flat_width(self, order: Order) -> L:
        """Add what every scallop takes across."""
        count, each = _scallops(order), scallop_allowance(order)
        return derived(
            "width of the flat cloth",
            order.width.value + each.value * count.value,
            Unit.LENGTH,
            "The finished width {0} and {1} scallops that take {2} more each.",
            order.width,
            count,
            each,
        )

    def hangs_below(self, order: Order, rows: RowPlan) -> L:
        """Take the lowest point of a scallop: of the hem, or of a fold of the lowest panel."""
        dip = _dip(order)
        below = max(rows.first_row.value, rows.fold_depth.value + dip.value)
        because = "The hem's lowest point {0} below the row, or the fold {1} and the dip {2}."
        return derived(
            "lowest scallop", below, Unit.LENGTH, because, rows.first_row, rows.fold_depth, dip
        )

    def swag(self, order: Order, rows: RowPlan) -> SwagPlan | None:
        """Hang the hem between its tapes, longer than their space by the scallop's cloth."""
        del rows
        return SwagPlan(chord=_chord(order), edge_length=_hem(order), dip=_dip(order))

    def refusals(self, order: Order) -> Iterator[Draft[Order]]:
        """Refuse scallops so deep that no row is left."""
        if order.width.value <= self.edge_distance(order).value * 2:
            return
        room, row = self.setting(order).room, stacked_pitch(order).value * 2
        if room.value <= row:
            yield draft(
                Severity.STOP,
                "scallops-too-deep",
                "Head, skirt and scallops leave {0} of the drop to the rows; one row takes {1}.",
                room,
                derived("room of a row", row, Unit.LENGTH, "Twice {0}.", stacked_pitch(order)),
                ways=_shallower(order),
            )

    def after_the_rings(self, order: Order, layout: Layout) -> Iterator[SewingStep]:
        """Draw the cloth up on its tapes."""
        yield SewingStep(
            title="Draw up the tapes",
            instruction="Sew a shirring tape over each of {0} columns from hem to top line, and"
            " draw the cloth up evenly until the rows hang {1} apart; knot the draw cords at both"
            " ends. Then gather the head from {2} to {3}.",
            figures=(
                layout.columns.count,
                layout.rows.spacing,
                self.flat_width(order),
                order.width,
            ),
        )


def asked_fullness(order: Order) -> N:
    """Tell how much cloth an Austrian shade has to one of drop.

    Takes: the order.

    Gives: as typed, else the house's.

    Source: gathered-shade-blog (three for sheer cloth, two for opaque).
    """
    habit = order.habits.austrian_fullness
    return order.number("fullness", order.design.fullness, Unit.RATIO, habit)


def scallop_allowance(order: Order) -> L:
    """Tell how much wider than its space each scallop is cut.

    Takes: the order.

    Gives: as typed, else the house's.

    Source: gathered-shade-blog (3 to 4 in).
    """
    habit = order.habits.austrian_scallop
    return order.length("cloth of a scallop", order.design.scallop, habit)


def _scallops(order: Order) -> Figure[int]:
    style = AustrianStyle()
    return swag_count(order, style.edge_distance(order), style.largest_pitch(order))


def _chord(order: Order) -> L:
    return between_columns(order, AustrianStyle().edge_distance(order), _scallops(order))


def _hem(order: Order) -> L:
    chord, each = _chord(order), scallop_allowance(order)
    because = "The space between two tapes {0} and the cloth of a scallop {1}."
    return derived("hem of a scallop", chord.value + each.value, Unit.LENGTH, because, chord, each)


def _dip(order: Order) -> L:
    chord, hem = _chord(order), _hem(order)
    edge = HangingEdge.of_length(chord.value.in_metres, hem.value.in_metres)
    return derived(
        "dip of a scallop",
        Length.metres(edge.sag_m),
        Unit.LENGTH,
        "A hem {1} long hangs so deep between tapes {0} apart, as an even chain does.",
        chord,
        hem,
    )


def _first_row(order: Order) -> L:
    under, dip = skirt(order), _dip(order)
    because = "The skirt {0} under the lowest row at its tapes, and the dip {1} between them."
    return derived("first row", under.value + dip.value, Unit.LENGTH, because, under, dip)


def _shallower(order: Order) -> Iterator[Way[Order]]:
    if order.design.scallop is not None:
        yield by_change(
            order, order.system, "Take the usual cloth of a scallop.", design__scallop=None
        )
    yield by_change(order, order.system, "Take no skirt.", design__skirt=ZERO)
    yield by_hand("Make the shade longer, or its scallops narrower.")
