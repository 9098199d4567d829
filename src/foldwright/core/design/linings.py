"""What lies behind the face: plain and coated linings, interlining, and cover for holes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.design.allowances import cut_length, top_allowance
from foldwright.core.design.layout import LayerCut, Piece, Rides, RowPlan
from foldwright.core.design.making import HoleCover
from foldwright.core.design.order import Order
from foldwright.core.design.rod_pockets import in_the_lining
from foldwright.core.design.widths import across, joins_in
from foldwright.core.facts.panel_limits import COVER_STRIP, LAP
from foldwright.core.facts.records import Cloth, Coating
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, fact, supplied
from foldwright.core.why.source import Status

L = Figure[Length]

SECOND_LAYER = "second layer"


def lined(order: Order) -> Figure[str]:
    """Tell in a word or two how a shade is lined.

    Takes: the order.

    Gives: a figure in words: unlined, lined, dim-out or blackout, and whether it is interlined.

    Source: common practice; coated-lining-page for what a coat does.
    """
    coatings = {cloth.coating for cloth in order.layers}
    lining = order.chosen.lining
    word = "unlined" if lining is None else "lined"
    for coating in (Coating.DIM_OUT, Coating.BLACKOUT):
        word = coating.value if coating in coatings else word
    if order.chosen.interlining is not None:
        word += ", interlined"
    because = "Named after the layers that are chosen, and the coat on their backs."
    return fact("how it is lined", word, Unit.WORD, because, Status.CHOSEN)


def blackout_cloth(order: Order) -> Cloth | None:
    """Give the layer whose holes let light through, the one nearest to the window first.

    Takes: the order.

    Gives: its record, or None where no layer blacks out.

    Source: reverse-mount-diary.
    """
    return next((cloth for cloth in reversed(order.layers) if cloth.blackout), None)


def cut_linings(order: Order, body: L, lining: L) -> Iterator[LayerCut]:
    """Cut every layer behind the face.

    Takes: the order; the cloth from hem to top line; that of the lining, with its pockets.

    Gives: the lining, a second layer of blackout where it is asked for, the interlining.

    Holds for: linings whose raw edges lie under the side turns, or that are hemmed by
    themselves to carry the rods.

    Source: common practice.
    """
    if order.chosen.lining is not None:
        sheet = _with_hems_of_its_own(order) if in_the_lining(order) else _under_the_turns(order)
        yield _lining(order, "lining", lining, order.chosen.lining, sheet)
    coated = blackout_cloth(order)
    if coated is not None and order.making.holes is HoleCover.SECOND_LAYER:
        yield _lining(order, SECOND_LAYER, body, coated, _under_the_turns(order))
    if order.chosen.interlining is not None:
        yield _interlining(order, body, order.chosen.interlining)


def cover_strips(order: Order, rows: RowPlan) -> Iterator[Piece]:
    """Cut a strip of the blackout for each row, to lie under its rings.

    Takes: the order; its rows.

    Gives: one piece, cut as often as there are rows, or nothing where none is asked for.

    Source: reverse-mount-diary (a needle pierces the black coat); the width is the house's.
    """
    coated = blackout_cloth(order)
    if coated is None or order.making.holes is not HoleCover.COVER:
        return
    shown = across(order)
    yield Piece(
        name="cover strip",
        layer="blackout",
        cloth=coated.name,
        count=rows.count,
        width=derived(
            "cut width of a cover strip",
            _less(order, shown),
            Unit.LENGTH,
            "{0} less {1}, as the lining; a strip may be joined by a lap.",
            shown,
            order.habits.lining_less_than_width,
            rounding=Rounding.CUT_OVERSIZE,
        ),
        length=COVER_STRIP,
        rides=Rides.ROWS,
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Sheet:
    """A layer before it is joined: how wide it is, why, and what is left beyond its length."""

    width: Length
    because: str
    figures: tuple[L, ...]
    beyond: tuple[L, ...]


def _under_the_turns(order: Order) -> _Sheet:
    shown, less = across(order), order.habits.lining_less_than_width
    return _Sheet(
        width=_less(order, shown),
        because="{0} less {1}, so that its raw edges stay under the side turns",
        figures=(shown, less),
        beyond=(top_allowance(order),),
    )


def _with_hems_of_its_own(order: Order) -> _Sheet:
    """Hem a lining that carries the rods, and leave some to trim it square once they are sewn."""
    habits, shown = order.habits, across(order)
    less, hem = habits.pocket_lining_less, habits.pocket_lining_hem
    return _Sheet(
        width=shown.value - less.value + hem.value * 2,
        because="{0} less {1}, and a hem of {2} at each side",
        figures=(shown, less, hem),
        beyond=(top_allowance(order), habits.pocket_lining_spare),
    )


def _lining(order: Order, layer: str, body: L, cloth: Cloth, sheet: _Sheet) -> LayerCut:
    lapped = cloth.coating is not Coating.NONE
    widths, per_join = _joined(order, sheet.width, cloth, lapped=lapped)
    joins = joins_in(widths.value)
    width = derived(
        f"cut width of the {layer}",
        sheet.width + _taken(per_join, joins, lapped=lapped),
        Unit.LENGTH,
        sheet.because + _joins_said(joins, lapped=lapped, slot=len(sheet.figures)),
        *sheet.figures,
        *((per_join,) if joins else ()),
        rounding=Rounding.CUT_OVERSIZE,
    )
    return LayerCut(
        layer=layer,
        cloth=cloth.name,
        width=width,
        length=cut_length(order, layer, body, sheet.beyond),
        body=body,
        widths=widths,
        lap=per_join if joins and lapped else None,
    )


def _interlining(order: Order, body: L, cloth: Cloth) -> LayerCut:
    shown = across(order)
    widths, lap = _joined(order, shown.value, cloth, lapped=True)
    joins = joins_in(widths.value)
    width = derived(
        "cut width of the interlining",
        shown.value + _taken(lap, joins, lapped=True),
        Unit.LENGTH,
        "{0}, to the folds" + _joins_said(joins, lapped=True, slot=1),
        shown,
        *((lap,) if joins else ()),
        rounding=Rounding.CUT_OVERSIZE,
    )
    return LayerCut(
        layer="interlining",
        cloth=cloth.name,
        width=width,
        length=cut_length(order, "interlining", body, ()),
        body=body,
        widths=widths,
        lap=lap if joins else None,
    )


def _less(order: Order, shown: L) -> Length:
    return shown.value - order.habits.lining_less_than_width.value


def _joined(order: Order, plain: Length, cloth: Cloth, *, lapped: bool) -> tuple[Figure[int], L]:
    """Count the fewest widths of a layer, with what each join takes; never a centre seam."""
    per_join = LAP if lapped else order.habits.seam_allowance
    usable = supplied("usable width", cloth.usable_width, Unit.LENGTH, cloth.name)
    count = 1
    while plain + _taken(per_join, joins_in(count), lapped=lapped) > usable.value * count:
        count += 1
    because = "The fewest widths of {0} that give it across, each join taking {1}" + (
        "." if lapped else " twice."
    )
    widths = derived("widths of the layer", count, Unit.COUNT, because, usable, per_join)
    return widths, per_join


def _taken(per_join: L, joins: int, *, lapped: bool) -> Length:
    """Give what joins take: a lap once, a seam allowance in both pieces."""
    return per_join.value * (joins if lapped else 2 * joins)


def _joins_said(joins: int, *, lapped: bool, slot: int) -> str:
    if not joins:
        return "."
    taken = f"laps of {{{slot}}}" if lapped else f"seams with twice {{{slot}}} each"
    return f"; {joins} {taken} more."
