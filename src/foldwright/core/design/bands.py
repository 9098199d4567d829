"""Bands and trims on the face: where they lie, how they are cut, and what must keep off them."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.allowances import cut_length, hem_allowance, top_allowance
from foldwright.core.design.layout import BandPlan, Layout, Piece, Rides
from foldwright.core.design.making import BandSewing
from foldwright.core.design.order import Order
from foldwright.core.design.widths import across, side_turn
from foldwright.core.facts.panel_limits import BAND_TURN
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, fact
from foldwright.core.why.source import Status

L = Figure[Length]


def plan_bands(order: Order) -> BandPlan | None:
    """Place the bands on the face.

    Takes: the order.

    Gives: the edges of the band across, from the bottom edge up, and of the bands down the
    sides, from the left edge; None where there is neither.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> plan_bands(ORDER) is None
    True
    """
    making = order.making
    if making.band_height is None and making.side_band_width is None:
        return None
    lower, upper = _across_edges(order)
    return BandPlan(
        sewing=making.band_sewing, lower=lower, upper=upper, side_edges=tuple(_side_edges(order))
    )


def needle_lines(order: Order) -> tuple[L, ...]:
    """Give the upright edges that a column must not meet: those of bands sewn on before the rings.

    Takes: the order.

    Gives: lengths from the left edge; none where the trim is applied after the rings.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> needle_lines(ORDER)
    ()
    """
    flat_sewn = order.making.band_sewing is BandSewing.FLAT
    return tuple(_side_edges(order)) if flat_sewn else ()


def cut_bands(order: Order, layout: Layout) -> Iterator[Piece]:
    """Cut the bands.

    Takes: the order; its layout, as far as it is drawn.

    Gives: the pieces; a band that is sewn flat is turned in along both edges, one that is
    applied comes ready and is turned in at its ends.

    Source: common practice.
    """
    plan = layout.bands
    if plan is None:
        return
    if plan.lower is not None and plan.upper is not None:
        yield _band_across(order, plan.lower, plan.upper)
    if plan.side_edges:
        yield _band_down(order, layout)


def _across_edges(order: Order) -> tuple[L, L] | tuple[None, None]:
    height = order.making.band_height
    if height is None:
        return None, None
    lower = chosen("lower edge of the band", order.making.band_above_hem or ZERO, Unit.LENGTH)
    upper = derived(
        "upper edge of the band",
        lower.value + height,
        Unit.LENGTH,
        "{0} above the bottom edge, and {1} high.",
        lower,
        chosen("height of the band", height, Unit.LENGTH),
    )
    return lower, upper


def _side_edges(order: Order) -> Iterator[L]:
    """Give the edges of both side bands, left to right, that lie inside the shade."""
    wide = order.making.side_band_width
    if wide is None:
        return
    inset = chosen("side band from the edge", order.making.side_band_inset or ZERO, Unit.LENGTH)
    width = chosen("width of a side band", wide, Unit.LENGTH)
    inner = inset.value + width.value
    if inset.value > ZERO:
        yield _edge("outer edge of the left band", inset.value, "{0} in from the edge.", inset)
    inside = "{0} in from the edge, and {1} wide."
    yield _edge("inner edge of the left band", inner, inside, inset, width)
    mirrored = "The width {2} less {0} and {1}."
    right = order.width.value - inner
    yield _edge("inner edge of the right band", right, mirrored, inset, width, order.width)
    if inset.value > ZERO:
        outer = order.width.value - inset.value
        because = "The width {1} less {0}."
        yield _edge("outer edge of the right band", outer, because, inset, order.width)


def _edge(name: str, value: Length, because: str, *inputs: L) -> L:
    return derived(name, value, Unit.LENGTH, because, *inputs)


def _band_across(order: Order, lower: L, upper: L) -> Piece:
    height = derived(
        "height of the band", upper.value - lower.value, Unit.LENGTH, "{1} less {0}.", lower, upper
    )
    shown, turn = across(order), side_turn(order)
    return Piece(
        name="band",
        layer=_layer(order),
        cloth=_cloth(order),
        count=_count(1),
        width=derived(
            "cut width of the band",
            shown.value + turn.value * 2,
            Unit.LENGTH,
            "{0}, and {1} at each end, turned with the sides.",
            shown,
            turn,
            rounding=Rounding.CUT_OVERSIZE,
        ),
        length=_turned_in(order, "cut height of the band", height),
        rides=Rides.BAND,
        above_hem=derived(
            "middle of the band",
            (lower.value + upper.value) / 2,
            Unit.LENGTH,
            "Between {0} and {1}.",
            lower,
            upper,
        ),
    )


def _band_down(order: Order, layout: Layout) -> Piece:
    width = chosen("width of a side band", order.making.side_band_width or ZERO, Unit.LENGTH)
    body = layout.cuts[0].body or order.drop
    ends = (top_allowance(order), hem_allowance(order))
    return Piece(
        name="side band",
        layer=_layer(order),
        cloth=_cloth(order),
        count=_count(2),
        width=_turned_in(order, "cut width of a side band", width),
        length=cut_length(order, "side band", body, ends),
        rides=Rides.DROP,
    )


def _turned_in(order: Order, name: str, shown: L) -> L:
    """Add what is turned in along both edges; a trim that is applied comes ready."""
    if order.making.band_sewing is BandSewing.APPLIED:
        because = "{0}, ready as it is bought."
        return derived(name, shown.value, Unit.LENGTH, because, shown)
    return derived(
        name,
        shown.value + BAND_TURN.value * 2,
        Unit.LENGTH,
        "{0}, and {1} turned in along both edges.",
        shown,
        BAND_TURN,
        rounding=Rounding.CUT_OVERSIZE,
    )


def _layer(order: Order) -> str:
    return "band" if order.chosen.band else "face"


def _cloth(order: Order) -> str:
    cloth = order.chosen.band or order.chosen.face
    return cloth.name if cloth else ""


def _count(number: int) -> Figure[int]:
    because = "One across the shade, and one down each side."
    return fact("bands", number, Unit.COUNT, because, Status.PRACTICE)
