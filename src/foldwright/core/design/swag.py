"""A hem that hangs free between its columns: how deep it dips, and what that takes sideways."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.hanging import EvenlyHungEdge, HangingEdge
from foldwright.core.design.order import Order, draft
from foldwright.core.design.usual import columns_within
from foldwright.core.facts.panel_limits import DEEPEST_DIP
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, by_change

L = Figure[Length]
N = Figure[float]

CATENARY = Source(id="catenary-page")


def swag_count(order: Order, edge: L, widest: L) -> Figure[int]:
    """Count the swags between the outer columns.

    Takes: the order; the edge distance; the widest swag.

    Gives: one less than the columns that are typed, or the fewest within the widest.

    Source: common practice.
    """
    fewest = columns_within(order.width.value, edge.value, widest.value)
    because = "What lies between the columns, {1} from the edges of a width of {2} and at most {0}"
    return derived(
        "number of swags",
        (order.design.column_count or fewest) - 1,
        Unit.COUNT,
        because + " apart, or as many as are typed.",
        widest,
        edge,
        order.width,
    )


def between_columns(order: Order, edge: L, swags: Figure[int]) -> L:
    """Measure the finished width from one column to the next.

    Takes: the order; the edge distance; the number of swags.

    Gives: the length.

    Source: derived here.
    """
    return derived(
        "width of a swag",
        (order.width.value - edge.value * 2) / swags.value,
        Unit.LENGTH,
        "The width {0} less twice the edge distance {1}, shared by {2}.",
        order.width,
        edge,
        swags,
    )


def usual_dip(name: str, habit: L, chord: L) -> L:
    """Take the house's dip, or less where the columns stand too close for it.

    Takes: the figure's name; the habit; the space between two columns.

    Gives: the lesser of the habit and the deepest dip.

    Source: common practice; house default for the deepest.
    """
    deepest = deepest_dip(chord)
    if habit.value <= deepest.value:
        return habit
    because = "The most that hangs well between columns {0} apart, where {1} is usual."
    return derived(name, deepest.value, Unit.LENGTH, because, chord, habit)


def deepest_dip(chord: L) -> L:
    """Tell how deep a hem may dip at most between two columns.

    Takes: the space between them.

    Gives: a share of it.

    Source: house default.
    """
    value = Length.metres(chord.value.in_metres * DEEPEST_DIP.value)
    because = "{1} of the {0} between two columns."
    return derived("deepest dip", value, Unit.LENGTH, because, chord, DEEPEST_DIP)


def hem_for(chord: L, dip: L) -> L:
    """Measure the hem that dips so deep between columns that stay where they are.

    Takes: the space between two columns; the dip.

    Gives: the length along the hem, as an evenly heavy chain hangs; the other end of its range
    is the hem that carries cloth hung evenly.

    Holds for: a limp hem.

    Source: catenary-page; derived here for the parabola.
    """
    span, sag = chord.value.in_metres, dip.value.in_metres
    if sag == 0:
        return derived("hem of a swag", chord.value, Unit.LENGTH, "Straight, {0} long.", chord)
    return derived(
        "hem of a swag",
        Length.metres(HangingEdge.of_sag(span, sag).length_m),
        Unit.LENGTH,
        "Along a chain that dips by {1} between columns {0} apart; a hem that carries cloth hung"
        " evenly is a little shorter.",
        chord,
        dip,
        low=Length.metres(EvenlyHungEdge(span_m=span, sag_m=sag).length_m),
        high=Length.metres(HangingEdge.of_sag(span, sag).length_m),
        source=CATENARY,
    )


def chord_under(hem: L, dip: L) -> L:
    """Measure how far apart two columns come to hang when their hem dips so deep.

    Takes: the hem between them; the dip.

    Gives: the space between the columns.

    Holds for: a limp hem whose sides are free to draw in.

    Source: catenary-page; derived here for the parabola.
    """
    length, sag = hem.value.in_metres, dip.value.in_metres
    if sag == 0:
        return derived("swag as it hangs", hem.value, Unit.LENGTH, "Straight, {0} wide.", hem)
    return derived(
        "swag as it hangs",
        Length.metres(HangingEdge.of_length_and_sag(length, sag).span_m),
        Unit.LENGTH,
        "A hem of {0} that dips by {1}, as an even chain does, brings its ends so near.",
        hem,
        dip,
        low=Length.metres(HangingEdge.of_length_and_sag(length, sag).span_m),
        high=Length.metres(EvenlyHungEdge.of_length_and_sag(length, sag).span_m),
        source=CATENARY,
    )


def draw_in(flat: L, hanging: L, swags: Figure[int]) -> L:
    """Tell how far each side draws in at the hem.

    Takes: a swag's width while it is flat, and as it hangs; the number of swags.

    Gives: half of what all swags take.

    Source: derived here.
    """
    return derived(
        "each side draws in",
        (flat.value - hanging.value) * swags.value / 2,
        Unit.LENGTH,
        "Half of what {2} swags take, each {0} wide flat and {1} hanging.",
        flat,
        hanging,
        swags,
    )


def tapered_gap(order: Order, drawn: L, dip: L) -> N:
    """Measure what is open at both sides of a shade whose hem draws in.

    Takes: the order; how far each side draws in; the dip.

    Gives: square metres of two slits that taper to nothing at the head, when the shade is
    raised just so far that the hem dips fully.

    Source: derived here.
    """
    height = order.drop.value - dip.value
    return derived(
        "light gap that tapers",
        drawn.value.in_metres * height.in_metres,
        Unit.AREA,
        "At each side {0} at the hem and nothing at the head, over the drop {1} less {2}.",
        drawn,
        order.drop,
        dip,
    )


def too_deep(order: Order, chord: L) -> Iterator[Draft[Order]]:
    """Refuse a typed dip that no hem between its columns can hang in.

    Takes: the order; the space between two columns.

    Gives: a draft of a stop, or none.

    Source: house default.
    """
    typed, deepest = order.design.dip, deepest_dip(chord)
    if typed is not None and typed > deepest.value:
        mark = order.marked(deepest.value, Rounding.MUST_FIT)
        figure = chosen("dip", mark, Unit.LENGTH)
        yield draft(
            Severity.STOP,
            "dip-too-deep",
            "A dip of {0} is asked for; between columns {2} apart the hem hangs well down to {1}.",
            chosen("dip", typed, Unit.LENGTH),
            deepest,
            chord,
            ways=(by_change(order, order.system, "Let it dip by {0}.", figure, design__dip=mark),),
        )
