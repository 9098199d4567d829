"""The rise graphs: height against time, speed against height, and the hand's force at the bar."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from foldwright.core.drawing.axes import (
    TICK,
    axis_name,
    metres_in_unit,
    newtons_in_unit,
    round_values,
    tick,
)
from foldwright.core.drawing.frame import Frame
from foldwright.core.drawing.labels import spread
from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Box,
    Circle,
    Drawing,
    Hatch,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Polyline,
    Text,
)
from foldwright.core.drawing.words import UNIT_WORDS
from foldwright.core.prove.advice import RiseTold
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measure_reading import FOOT_M
from foldwright.core.quantity.measures import print_force, print_number, print_speed
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import show, show_value

NAME = "rise-graph"
TITLE = "How it rises when let go"
ON_THE_PAGE = Frame(width=180.0, height=210.0)
LEFT, RIGHT, BELOW, ABOVE = 17.0, 40.0, 14.0, 9.0  # round each of the three plots
TICKS = 4
HEADROOM = 1.08
DOT = 1.0
LABEL_GAP = 5.0
LABEL_OFF = 3.0
DOWN_GAP, UP_GAP = 1.3, 2.2  # of the hatches
LEAST_SPAN = 0.1  # what is drawn of a shade that does not move


@dataclass(frozen=True, kw_only=True, slots=True)
class _Axis:
    """One axis: its ends in SI, what one mark of it is in SI, and its name with the unit."""

    low: float
    high: float
    unit: float
    words: str

    def share(self, value: float) -> float:
        return (value - self.low) / (self.high - self.low)

    def marks(self) -> Iterator[tuple[float, str]]:
        for mark in round_values(self.high / self.unit, self.low / self.unit, TICKS):
            yield mark * self.unit, print_number(mark)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Plot:
    """One plot of the three: its place on the paper and its two axes."""

    box: Box
    across: _Axis
    up: _Axis

    def at(self, x: float, y: float) -> Point:
        return Point(
            self.box.left + self.box.width * self.across.share(x),
            self.box.bottom + self.box.height * self.up.share(y),
        )

    def path(self, xs: Sequence[float], ys: Sequence[float]) -> tuple[Point, ...]:
        return tuple(self.at(x, y) for x, y in zip(xs, ys, strict=True))

    def axes(self) -> Iterator[AnyElement]:
        """Draw both axes with round figures, and name them with their units."""
        box = self.box
        corner = Point(box.left, box.bottom)
        for end in (Point(box.right, box.bottom), Point(box.left, box.top)):
            yield Line(start=corner, end=end, layer=Layer.AXES, kind=LineKind.THIN)
        for value, words in self.across.marks():
            at = Point(self.at(value, self.up.low).x, box.bottom)
            yield from tick(at, Point(at.x, at.y - TICK), words, Anchor.MIDDLE)
        for value, words in self.up.marks():
            at = Point(box.left, self.at(self.across.low, value).y)
            yield from tick(at, Point(at.x - TICK, at.y), words, Anchor.END)
        yield axis_name(
            self.across.words, Point((box.left + box.right) / 2, box.bottom - BELOW + 2.5)
        )
        middle = (box.bottom + box.top) / 2
        yield axis_name(self.up.words, Point(box.left - LEFT + 2.5, middle), upright=True)


def rise_graph(
    told: RiseTold, seconds: float, system: System, frame: Frame = ON_THE_PAGE
) -> Drawing:
    """Draw how a shade rises when it is let go, with a marker at the present moment.

    Takes: the rise as told; the seconds since the release; the reader's system; the frame, in
    millimetres of paper.

    Gives: three plots, one above the other: height against time, speed against height, and
    the force of the hand down and up at every height with its range.

    Source: derived here.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.learning import learn
    >>> from foldwright.core.prove.telling_rise import tell_rise
    >>> told = tell_rise(learn(CASE, (), qmc.Sobol(16, seed=1).random(64)), 13.0)
    >>> rise_graph(told, 0.0, System.METRIC).name
    'rise-graph'
    """
    height, speed, force = _plots(told, system, frame)
    return Drawing(
        name=NAME,
        title=TITLE,
        seen_from="",
        description=_describe(told, system),
        extent=Box(left=0.0, bottom=0.0, right=frame.width, top=frame.height),
        scale=1.0,
        elements=(
            *_height(height, told, seconds, system),
            *_speed(speed, told, seconds, system),
            *_force(force, told, seconds, system),
        ),
    )


def _plots(told: RiseTold, system: System, frame: Frame) -> tuple[_Plot, _Plot, _Plot]:
    curve = told.curve
    time = _axis(curve.time_s[-1], 1.0, "Time, s")
    raised = _axis(curve.at_m[-1], metres_in_unit(system), f"Raise, {UNIT_WORDS[system]}")
    speed = _axis(max(curve.speed_m_s), *_speed_unit(system))
    high, low = max(curve.hand_down_high_n), min(0.0, *curve.hand_up_low_n)
    unit = print_force(1.0, system).split()[-1]
    force = _Axis(
        low=low * HEADROOM,
        high=high * HEADROOM,
        unit=newtons_in_unit(system),
        words=f"Hand, {unit}",
    )
    boxes = _boxes(frame)
    return (
        _Plot(box=boxes[0], across=time, up=raised),
        _Plot(box=boxes[1], across=raised, up=speed),
        _Plot(box=boxes[2], across=raised, up=force),
    )


def _axis(high: float, unit: float, words: str) -> _Axis:
    return _Axis(low=0.0, high=max(high, LEAST_SPAN) * HEADROOM, unit=unit, words=words)


def _speed_unit(system: System) -> tuple[float, str]:
    return (FOOT_M, "Speed, ft/s") if system is System.INCH else (1.0, "Speed, m/s")


def _boxes(frame: Frame) -> tuple[Box, Box, Box]:
    """Share the frame among three plots, the first on top."""
    each = frame.height / 3

    def box(place: int) -> Box:
        return Box(
            left=LEFT,
            bottom=place * each + BELOW,
            right=frame.width - RIGHT,
            top=(place + 1) * each - ABOVE,
        )

    return box(2), box(1), box(0)


def _height(plot: _Plot, told: RiseTold, seconds: float, system: System) -> Iterator[AnyElement]:
    curve = told.curve
    raised = curve.raise_at(seconds)
    yield from plot.axes()
    yield Polyline(points=plot.path(curve.time_s, curve.raise_m), layer=Layer.CLOTH)
    yield from _dot(plot, min(seconds, curve.time_s[-1]), raised)
    words = f"After {print_number(seconds)} s: raised {_length(raised, system)}"
    yield _heading(plot, words)
    end = plot.at(curve.time_s[-1], curve.raise_m[-1])
    yield from _label(end, end.y, _at_the_end(told, system), Layer.CLOTH)


def _at_the_end(told: RiseTold, system: System) -> str:
    stands = _length(told.end_raise.value.in_metres, system)
    return f"{stands}, {show_value(told.rise_time, system)}"


def _speed(plot: _Plot, told: RiseTold, seconds: float, system: System) -> Iterator[AnyElement]:
    curve = told.curve
    now = float(np.interp(seconds, curve.time_s, curve.speed_m_s))
    yield from plot.axes()
    yield Polyline(points=plot.path(curve.raise_m, curve.speed_m_s), layer=Layer.CLOTH)
    yield from _dot(plot, curve.raise_at(seconds), now)
    yield _heading(plot, f"Speed {print_speed(now, system)}, {_greatest(told, system)}")
    if told.arrival_speed.value:
        end = plot.at(curve.raise_m[-1], curve.speed_m_s[-1])
        words = f"Stop: {show_value(told.arrival_speed, system)}"
        yield from _label(end, end.y, words, Layer.CLOTH)


def _greatest(told: RiseTold, system: System) -> str:
    return f"greatest {show_value(told.top_speed, system)}"


def _force(plot: _Plot, told: RiseTold, seconds: float, system: System) -> Iterator[AnyElement]:
    curve = told.curve
    yield from plot.axes()
    yield _band(plot, curve.at_m, curve.hand_down_low_n, curve.hand_down_high_n, DOWN_GAP)
    yield _band(plot, curve.at_m, curve.hand_up_low_n, curve.hand_up_high_n, UP_GAP)
    yield Polyline(points=plot.path(curve.at_m, curve.hand_down_n), layer=Layer.SPRING)
    yield Polyline(
        points=plot.path(curve.at_m, curve.hand_up_n), layer=Layer.SPRING, kind=LineKind.HIDDEN
    )
    nothing = plot.path((0.0, curve.at_m[-1]), (0.0, 0.0))
    yield Line(start=nothing[0], end=nothing[1], layer=Layer.AXES, kind=LineKind.CENTRE)
    raised = curve.raise_at(seconds)
    forces = [float(np.interp(raised, curve.at_m, each)) for each in _middles(told)]
    for force in forces:
        yield from _dot(plot, raised, force)
    down, up = (print_force(force, system) for force in forces)
    yield _heading(plot, f"Hand: draws down {down}, eases up {up}")
    ends = [plot.at(curve.at_m[-1], each[-1]) for each in _middles(told)]
    heights = spread([end.y for end in ends], LABEL_GAP)
    for end, y, words in zip(ends, heights, ("Draw down", "Ease up"), strict=True):
        yield from _label(end, y, words, Layer.SPRING)


def _middles(told: RiseTold) -> tuple[tuple[float, ...], tuple[float, ...]]:
    return told.curve.hand_down_n, told.curve.hand_up_n


def _band(
    plot: _Plot, xs: Sequence[float], low: Sequence[float], high: Sequence[float], gap: float
) -> Hatch:
    """Hatch between two lines; the hatches of down and up lean either way."""
    outline = (*plot.path(xs, low), *reversed(plot.path(xs, high)))
    degrees = 45.0 if gap == DOWN_GAP else -45.0
    return Hatch(outline=outline, layer=Layer.SPRING, kind=LineKind.THIN, degrees=degrees, gap=gap)


def _dot(plot: _Plot, x: float, y: float) -> Iterator[AnyElement]:
    """Mark the present moment."""
    centre = plot.at(x, y)
    foot = Point(centre.x, plot.box.bottom)
    yield Line(
        start=foot, end=Point(centre.x, plot.box.top), layer=Layer.MARKER, kind=LineKind.THIN
    )
    yield Circle(centre=centre, radius=DOT, filled=True, layer=Layer.MARKER)


def _heading(plot: _Plot, words: str) -> Text:
    return Text(at=Point(plot.box.left, plot.box.top + ABOVE / 2), words=words, layer=Layer.MARKER)


def _label(end: Point, y: float, words: str, layer: Layer) -> Iterator[AnyElement]:
    place = Point(end.x + LABEL_OFF, y)
    yield Line(start=end, end=place, layer=layer, kind=LineKind.THIN)
    yield Text(
        at=Point(place.x + DOT, place.y),
        words=words,
        size=Lettering.NOTE,
        layer=layer,
        kind=LineKind.THIN,
    )


def _length(metres: float, system: System) -> str:
    return print_length(Length.metres(round(metres, 6)), system)


def _describe(told: RiseTold, system: System) -> str:
    """Say in sentences what the graphs show."""
    return (
        f"Let go, the shade {told.ending.value}, at a raise of {show(told.end_raise, system)},"
        f" after {show(told.rise_time, system)}. Its greatest speed is"
        f" {show(told.top_speed, system)}, at the stop {show(told.arrival_speed, system)}. To draw"
        " it down from there takes more and more: lowered,"
        f" {show(told.hand_force_down, system)}."
    )
