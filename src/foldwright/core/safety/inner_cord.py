"""How much cord a child's pull can draw out behind a shade that is fully down.

Between two contact points the cord is drawn aside into two legs. Each leg pulls at the column:
where its pull, less the friction of the ring it bends round, exceeds the weight that hangs on
the column, the cord slides through the ring and the loop grows, until the row it has raised
weighs enough. Only the share of one column is counted, and no slack: the least that can happen.
"""

from __future__ import annotations

import numpy as np

from foldwright.core.design.untyped_rows import cord_to_tube
from foldwright.core.facts.cords import RING_FRICTION
from foldwright.core.lift.capstan import friction_ratio
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.safety.canada import CHILD_PULL
from foldwright.core.safety.choices import CordGuard
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.report import InnerCord, L
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.load import Weights
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import derived

STEPS = 4000


def drawn_cord_m(
    curve: LoadCurve, *, columns: int, stretch_m: float, pull_n: float, friction: float
) -> float:
    """Give how much cord a sideways pull draws in between two contact points.

    Takes: the load curve of the shade; its cord columns; the taut cord between the two contact
    points in m; the pull in N at its middle; the friction coefficient of cord on ring.

    Gives: metres; the whole travel where nothing stops it.

    Holds for: a shade fully down whose tube does not turn, cord that runs freely through the
    rings below and is tied at the lowest; no slack.

    Source: derived here, by the statics of two legs; capstan-article.

    >>> from foldwright.core.weigh.load import PanelLoad
    >>> panel = PanelLoad(
    ...     row_spacings_m=(0.2,) * 4, stacked_pitch_m=0.005, skirt_cloth_m=0.1, top_panel_m=0.2,
    ...     cloth_n_m=5.0, bar_n=60.0, rows_n=(0.5,) * 5, travel_m=0.8)
    >>> round(drawn_cord_m(
    ...     LoadCurve.of(panel), columns=3, stretch_m=0.2, pull_n=35.0, friction=0.0), 4)
    0.1848
    """
    drawn = np.linspace(0.0, curve.panel.travel_m, STEPS + 1)
    aside = np.arccos(stretch_m / (stretch_m + drawn))
    load = curve.load(drawn) / columns
    withstood = 2 * load * friction_ratio(friction, aside) * np.sin(aside)
    stopped = np.flatnonzero(withstood >= pull_n)
    return float(drawn[stopped[0]]) if stopped.size else curve.panel.travel_m


def inner_cord(order: SafetyOrder) -> InnerCord:
    """Find the freest cord behind a shade, and what a child's pull makes of it.

    Takes: the order.

    Gives: its taut length; what is drawn in, where the weights are known.

    Holds for: cords or tapes through rings.

    Source: derived here; sor-2019-97, ss. 5 to 8 for the pull.
    """
    stretch = longest_stretch(order)
    if order.weights is None:
        return InnerCord(stretch=stretch)
    held = order.safety.cord_guard is CordGuard.HELD
    drawn = _held(stretch) if held else _drawn(order, order.weights, stretch)
    span = derived(
        "cord between two contact points under a pull",
        stretch.value + drawn.value,
        Unit.LENGTH,
        "The taut cord {0} and {1} drawn in; slack would add to it.",
        stretch,
        drawn,
        low=None if drawn.low is None else stretch.value + drawn.low,
        high=None if drawn.high is None else stretch.value + drawn.high,
    )
    return InnerCord(stretch=stretch, drawn=drawn, span=span, loop=_loop(stretch, span))


def longest_stretch(order: SafetyOrder) -> L:
    """Take the longest cord from one contact point to the next: between rows, or to the tube."""
    rows = order.layout.rows
    to_tube = cord_to_tube(rows.top_panel, order.chosen.bracket)
    if to_tube.value <= rows.spacing.value:
        because = "From row to row {0}; from the top row to the tube it is {1}."
        figures = (rows.spacing, to_tube)
    else:
        because = "From the top row to the tube {0}; from row to row it is {1}."
        figures = (to_tube, rows.spacing)
    name = "longest cord between two contact points"
    return derived(name, figures[0].value, Unit.LENGTH, because, *figures)


def _drawn(order: SafetyOrder, weights: Weights, stretch: L) -> L:
    columns, curve = order.layout.columns.count, LoadCurve.of(weights.load)
    hanging = derived(
        "load on one column, fully down",
        float(curve.load_lowered()) / columns.value,
        Unit.FORCE,
        "What hangs on all cords when the bar just lifts, shared by {0} columns.",
        columns,
    )

    def drawn(friction: float | None) -> Length:
        metres = drawn_cord_m(
            curve,
            columns=columns.value,
            stretch_m=stretch.value.in_metres,
            pull_n=CHILD_PULL.value,
            friction=RING_FRICTION.value if friction is None else friction,
        )
        return Length.metres(metres)

    return derived(
        "cord drawn in by a pull",
        drawn(None),
        Unit.LENGTH,
        "A pull of {0} in the middle of {1} draws cord through the rings, round which it rubs with"
        " {2}, until what it raises holds it: {3} at first.",
        CHILD_PULL,
        stretch,
        RING_FRICTION,
        hanging,
        low=drawn(RING_FRICTION.high),
        high=drawn(RING_FRICTION.low),
    )


def _held(stretch: L) -> L:
    because = "The cord is held at both ends of {0}: nothing slides in."
    return derived("cord drawn in by a pull", ZERO, Unit.LENGTH, because, stretch)


def _loop(stretch: L, span: L) -> L:
    return derived(
        "way round the loop behind the shade",
        stretch.value + span.value,
        Unit.LENGTH,
        "Out along the cord {0} and back along the cloth {1}.",
        span,
        stretch,
        low=None if span.low is None else stretch.value + span.low,
        high=None if span.high is None else stretch.value + span.high,
    )
