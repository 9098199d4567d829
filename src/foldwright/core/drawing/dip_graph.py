"""The dip graph: how far each side of a shade draws in as its hem dips deeper."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.hanging import EvenlyHungEdge, HangingEdge
from foldwright.core.design.layout import SwagPlan
from foldwright.core.drawing.axes import TICK, axis_name, metres_in_unit, round_values, tick
from foldwright.core.drawing.blank import blank
from foldwright.core.drawing.frame import Frame, Gutters
from foldwright.core.drawing.labels import spread
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Box,
    Circle,
    Drawing,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Polyline,
    Text,
)
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import UNIT_WORDS
from foldwright.core.facts.panel_limits import DEEPEST_DIP
from foldwright.core.quantity.measures import print_number
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import show_value

NAME = "dip-graph"
TITLE = "Dip against draw-in"
UNDER_ELEVATION = Frame(width=180.0, height=90.0)
EDGES = Gutters(left=18.0, bottom=14.0, right=41.0, top=14.0)
TITLE_OFF = 10.0  # over the plot, clear of the names at the ends of the lines
STEPS = 60
TWICE = 2.0  # the graph reaches to this many times the dip, or to the deepest
LABEL_GAP = 5.0
LABEL_OFF = 3.0
DOT = 1.0


@dataclass(frozen=True, kw_only=True, slots=True)
class _Curve:
    """What each side draws in, in metres, for each dip, along one kind of hanging edge."""

    words: str
    kind: LineKind
    dips_m: tuple[float, ...]
    drawn_m: tuple[float, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class _Scale:
    """Leads from draw-in and dip, both in metres, to millimetres of paper."""

    plot: Box
    drawn_m: float  # at the right edge
    dip_m: float  # at the upper edge

    def at(self, drawn_m: float, dip_m: float) -> Point:
        return Point(
            self.plot.left + self.plot.width * drawn_m / self.drawn_m,
            self.plot.bottom + self.plot.height * dip_m / self.dip_m,
        )


def dip_graph(plan: ShadePlan, system: System, frame: Frame = UNDER_ELEVATION) -> Drawing:
    """Draw the dip of a hem against what each side draws in, with a marker at the dip chosen.

    Takes: the plan; the reader's system; the frame, in millimetres of paper.

    Gives: the drawing, in millimetres of paper: one line for a hem that carries itself, one for
    a hem that carries cloth hung evenly. Where the sides do not draw in, a sentence that says so.

    Holds for: a limp hem whose sides are free to draw in.

    Source: catenary-page; derived here for the parabola.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> dip_graph(ShadePlan(spec=ShadeSpec(tag="1")), System.INCH).description
    'Nothing to draw: the sides of this shade do not draw in.'
    """
    swag = plan.layout.swag if plan.layout else None
    if plan.layout is None or swag is None or swag.draw_in is None or not swag.draw_in.value:
        missing = "Nothing to draw: the sides of this shade do not draw in."
        return blank(name=NAME, title=TITLE, seen_from="", missing=missing)
    curves = tuple(_curves(swag, plan.layout.columns.count.value - 1))
    scale = _scale(curves, frame)
    return Drawing(
        name=NAME,
        title=TITLE,
        seen_from="",
        description=_describe(swag, system),
        extent=Box(left=0.0, bottom=0.0, right=frame.width, top=frame.height),
        scale=1.0,
        elements=(*_axes(scale, system), *_traces(curves, scale), *_marker(plan, scale, system)),
    )


def _curves(swag: SwagPlan, swags: int) -> Iterator[_Curve]:
    hem, dip = swag.edge_length.value.in_metres, swag.dip.value.in_metres
    deepest = max(dip, min(TWICE * dip, DEEPEST_DIP.value * hem))
    dips = tuple(float(each) for each in np.linspace(deepest / STEPS, deepest, STEPS))
    for words, kind, span in (
        ("Chain", LineKind.VISIBLE, _chain_span),
        ("Cloth hung evenly", LineKind.HIDDEN, _evenly_hung_span),
    ):
        yield _Curve(
            words=words, kind=kind, dips_m=(0.0, *dips), drawn_m=_drawn_in(span, hem, dips, swags)
        )


def _drawn_in(
    span: Callable[[float, float], float], hem_m: float, dips_m: tuple[float, ...], swags: int
) -> tuple[float, ...]:
    return (0.0, *((hem_m - span(hem_m, dip)) * swags / 2 for dip in dips_m))


def _chain_span(hem_m: float, dip_m: float) -> float:
    return HangingEdge.of_length_and_sag(hem_m, dip_m).span_m


def _evenly_hung_span(hem_m: float, dip_m: float) -> float:
    return EvenlyHungEdge.of_length_and_sag(hem_m, dip_m).span_m


def _scale(curves: tuple[_Curve, ...], frame: Frame) -> _Scale:
    plot = Box(
        left=EDGES.left,
        bottom=EDGES.bottom,
        right=frame.width - EDGES.right,
        top=frame.height - EDGES.top,
    )
    return _Scale(
        plot=plot,
        drawn_m=max(curve.drawn_m[-1] for curve in curves),
        dip_m=max(curve.dips_m[-1] for curve in curves),
    )


def _axes(scale: _Scale, system: System) -> Iterator[AnyElement]:
    """Draw both axes with round figures, and name them with their unit."""
    plot, unit = scale.plot, metres_in_unit(system)
    origin = Point(plot.left, plot.bottom)
    for end in (Point(plot.right, plot.bottom), Point(plot.left, plot.top)):
        yield Line(start=origin, end=end, layer=Layer.AXES, kind=LineKind.THIN)
    for value in round_values(scale.drawn_m / unit):
        at = scale.at(value * unit, 0.0)
        yield from tick(at, Point(at.x, at.y - TICK), print_number(value), Anchor.MIDDLE)
    for value in round_values(scale.dip_m / unit):
        at = scale.at(0.0, value * unit)
        yield from tick(at, Point(at.x - TICK, at.y), print_number(value), Anchor.END)
    words, middle = UNIT_WORDS[system], (plot.bottom + plot.top) / 2
    yield axis_name(f"Each side draws in, {words}", Point((plot.left + plot.right) / 2, 2.0))
    yield axis_name(f"Dip, {words}", Point(2.0, middle), upright=True)


def _traces(curves: tuple[_Curve, ...], scale: _Scale) -> Iterator[AnyElement]:
    """Draw each line and name it at its end."""
    ends = [scale.at(curve.drawn_m[-1], curve.dips_m[-1]) for curve in curves]
    heights = spread([end.y for end in ends], LABEL_GAP)
    for curve, end, height in zip(curves, ends, heights, strict=True):
        pairs = zip(curve.drawn_m, curve.dips_m, strict=True)
        points = tuple(scale.at(drawn, dip) for drawn, dip in pairs)
        label = Point(scale.plot.right + LABEL_OFF, height)
        yield Polyline(points=points, layer=Layer.CLOTH, kind=curve.kind)
        yield Line(start=end, end=label, layer=Layer.CLOTH, kind=LineKind.THIN)
        yield Text(
            at=Point(label.x + DOT, label.y),
            words=curve.words,
            size=Lettering.NOTE,
            layer=Layer.CLOTH,
            kind=LineKind.THIN,
        )


def _marker(plan: ShadePlan, scale: _Scale, system: System) -> Iterator[AnyElement]:
    """Mark the dip of this shade, and what its sides draw in, in figures."""
    swag = plan.layout.swag if plan.layout else None
    if swag is None or swag.draw_in is None:
        return
    at = scale.at(swag.draw_in.value.in_metres, swag.dip.value.in_metres)
    path = tag(plan, "layout.swag.draw_in")
    for foot in (Point(at.x, scale.plot.bottom), Point(scale.plot.left, at.y)):
        yield Line(start=foot, end=at, layer=Layer.MARKER, kind=LineKind.THIN)
    yield Circle(centre=at, radius=DOT, filled=True, layer=Layer.MARKER, tag=path)
    yield Text(
        at=Point(scale.plot.left, scale.plot.top + TITLE_OFF),
        words=_told(swag, system),
        layer=Layer.MARKER,
        tag=path,
    )


def _told(swag: SwagPlan, system: System) -> str:
    assert swag.draw_in is not None  # noqa: S101 - drawn only where the sides draw in
    drawn, dip = (show_value(each, system) for each in (swag.draw_in, swag.dip))
    return f"A dip of {dip} draws each side in by {drawn}"


def _describe(swag: SwagPlan, system: System) -> str:
    return (
        "What each side of the shade draws in grows faster than the dip of its hem."
        f" {_told(swag, system)} where the hem hangs as a chain, and by a little less where it"
        " carries cloth hung evenly."
    )
