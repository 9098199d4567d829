"""The raise graph: load on the cords against raise, and the spring that must carry it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.axes import (
    TICK,
    axis_name,
    metres_in_unit,
    newtons_in_unit,
    round_values,
    tick,
)
from foldwright.core.drawing.blank import blank
from foldwright.core.drawing.frame import Frame, Gutters
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
    Tag,
    Text,
)
from foldwright.core.drawing.tags import tag
from foldwright.core.drawing.words import UNIT_WORDS
from foldwright.core.lift.balance import Balance, RaiseCurve
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measures import print_force, print_number, print_turns
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import show_value

NAME = "raise-graph"
TITLE = "Load against raise"
UNDER_ELEVATION = Frame(width=180.0, height=100.0)
EDGES = Gutters(left=15.0, bottom=14.0, right=41.0, top=10.0)
HEADROOM = 1.08  # of the greatest force
LABEL_GAP = 5.0
LABEL_OFF = 3.0
DOT = 1.0
DOUBT_GAP, FRICTION_GAP = 1.1, 2.6  # the hatch of doubt is closer than that of friction


@dataclass(frozen=True, kw_only=True, slots=True)
class _Scale:
    """Leads from metres and newtons to millimetres of paper."""

    plot: Box
    raise_m: float  # at the right edge
    force_n: float  # at the upper edge

    def at(self, raise_m: float, force_n: float) -> Point:
        return Point(
            self.plot.left + self.plot.width * raise_m / self.raise_m,
            self.plot.bottom + self.plot.height * force_n / self.force_n,
        )

    def path(self, raises: Sequence[float], forces: Sequence[float]) -> tuple[Point, ...]:
        return tuple(self.at(x, force) for x, force in zip(raises, forces, strict=True))


@dataclass(frozen=True, kw_only=True, slots=True)
class _Trace:
    """One line of the graph: its forces, its line kind, and the words at its end."""

    words: str
    forces: tuple[float, ...]
    kind: LineKind
    layer: Layer
    tag: Tag | None = None


def raise_graph(
    plan: ShadePlan, raise_share: float, system: System, frame: Frame = UNDER_ELEVATION
) -> Drawing:
    """Draw load and spring against raise, with a marker at the present raise.

    The spring lifts with what friction leaves of it; pulling down must overcome it and
    friction. The shade rises by itself where the load lies under the lower of the two
    lines, and holds without a lock where the load lies between them.

    Takes: the plan; the raise as a share of the design raise, 0 to 1; the reader's
    system; the frame, in millimetres of paper.

    Gives: the drawing, in millimetres of paper; without a balance, a sentence that asks for it.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> raise_graph(ShadePlan(spec=ShadeSpec(tag="1")), 0.0, System.INCH).description
    'Nothing to draw yet: the lift must be chosen first.'
    """
    balance = plan.balance
    if balance is None or balance.curve is None:
        missing = "Nothing to draw yet: the lift must be chosen first."
        return blank(name=NAME, title=TITLE, seen_from="", missing=missing)
    curve = balance.curve
    scale = _scale(curve, frame)
    share = min(max(raise_share, 0.0), 1.0)
    return Drawing(
        name=NAME,
        title=TITLE,
        seen_from="",
        description=_describe(balance, curve, share * curve.raise_m[-1], system),
        extent=Box(left=0.0, bottom=0.0, right=frame.width, top=frame.height),
        scale=1.0,
        elements=(
            *_bands(curve, scale),
            *_axes(scale, system),
            *_traces(plan, balance, curve, scale, system),
            *_marker(curve, share * curve.raise_m[-1], scale, system),
        ),
    )


def _scale(curve: RaiseCurve, frame: Frame) -> _Scale:
    """Give the plot what the edges leave of the frame."""
    forces = (*curve.load_high_n, *curve.spring_resisting_n)
    plot = Box(
        left=EDGES.left,
        bottom=EDGES.bottom,
        right=frame.width - EDGES.right,
        top=frame.height - EDGES.top,
    )
    return _Scale(plot=plot, raise_m=curve.raise_m[-1], force_n=max(forces) * HEADROOM)


def _bands(curve: RaiseCurve, scale: _Scale) -> Iterator[AnyElement]:
    """Hatch the doubt about the load, and what friction takes either way from the spring."""
    yield _band(curve.raise_m, curve.load_low_n, curve.load_high_n, scale, Layer.LOAD)
    if curve.spring_n:
        yield _band(
            curve.raise_m, curve.spring_lifting_n, curve.spring_resisting_n, scale, Layer.SPRING
        )


def _band(
    raises: Sequence[float],
    low: Sequence[float],
    high: Sequence[float],
    scale: _Scale,
    layer: Layer,
) -> Hatch:
    """Hatch between two lines."""
    outline = (*scale.path(raises, low), *reversed(scale.path(raises, high)))
    doubt = layer is Layer.LOAD
    return Hatch(
        outline=outline,
        layer=layer,
        kind=LineKind.THIN,
        degrees=45.0 if doubt else -45.0,
        gap=DOUBT_GAP if doubt else FRICTION_GAP,
    )


def _traces(
    plan: ShadePlan, balance: Balance, curve: RaiseCurve, scale: _Scale, system: System
) -> Iterator[AnyElement]:
    """Draw each line and name it at its right end."""
    lines = list(_lines(plan, balance, curve, system))
    ends = [scale.at(curve.raise_m[-1], line.forces[-1]) for line in lines]
    heights = spread([end.y for end in ends], LABEL_GAP)
    for line, end, height in zip(lines, ends, heights, strict=True):
        path = scale.path(curve.raise_m, line.forces)
        yield Polyline(points=path, layer=line.layer, kind=line.kind)
        label = Point(end.x + LABEL_OFF, height)
        yield Line(start=end, end=label, layer=line.layer, kind=LineKind.THIN)
        yield Text(
            at=Point(label.x + DOT, label.y),
            words=line.words,
            size=Lettering.NOTE,
            layer=line.layer,
            kind=LineKind.THIN,
            tag=line.tag,
        )


def _lines(
    plan: ShadePlan, balance: Balance, curve: RaiseCurve, system: System
) -> Iterator[_Trace]:
    """List the lines that this lift has."""
    yield _Trace(
        words=_load_word(plan, show_value(balance.load_raised, system)),
        forces=curve.load_n,
        kind=LineKind.VISIBLE,
        layer=Layer.LOAD,
        tag=tag(plan, "balance.load_raised"),
    )
    if curve.spring_n:
        yield _Trace(
            words="Spring lifts",
            forces=curve.spring_lifting_n,
            kind=LineKind.THIN,
            layer=Layer.SPRING,
        )
        yield _Trace(
            words="Spring, no friction",
            forces=curve.spring_n,
            kind=LineKind.CENTRE,
            layer=Layer.SPRING,
        )
        yield _Trace(
            words="Spring resists",
            forces=curve.spring_resisting_n,
            kind=LineKind.HIDDEN,
            layer=Layer.SPRING,
        )


def _load_word(plan: ShadePlan, raised: str) -> str:
    """Name the line by the load of the raised shade, and say where it is a bound."""
    bound = plan.weights is not None and plan.weights.bound is not None
    return f"Load up to {raised}" if bound else f"Load, {raised} raised"


def _marker(
    curve: RaiseCurve, raised_m: float, scale: _Scale, system: System
) -> Iterator[AnyElement]:
    """Mark the present raise, with load and lift at it in figures."""
    foot = scale.at(raised_m, 0.0)
    yield Line(
        start=foot, end=Point(foot.x, scale.plot.top), layer=Layer.MARKER, kind=LineKind.THIN
    )
    load = float(np.interp(raised_m, curve.raise_m, curve.load_n))
    marked = [load]
    words = f"Raised {_length(raised_m, system)}: load {print_force(load, system)}"
    if curve.spring_n:
        lift = float(np.interp(raised_m, curve.raise_m, curve.spring_lifting_n))
        marked.append(lift)
        words += f", spring lifts {print_force(lift, system)}{_wound(curve)}"
    for force in marked:
        centre = scale.at(raised_m, force)
        yield Circle(centre=centre, radius=DOT, filled=True, layer=Layer.MARKER)
    yield Text(
        at=Point(scale.plot.left, scale.plot.top + EDGES.top / 2), words=words, layer=Layer.MARKER
    )


def _wound(curve: RaiseCurve) -> str:
    """Name the turns that the spring's lines are drawn for, whether they do or not."""
    return "" if curve.turns is None else f" with {print_turns(curve.turns)}"


def _length(metres: float, system: System) -> str:
    return print_length(Length.metres(metres), system)


def _axes(scale: _Scale, system: System) -> Iterator[AnyElement]:
    """Draw both axes with round figures, and name them with their units."""
    plot = scale.plot
    origin = Point(plot.left, plot.bottom)
    for end in (Point(plot.right, plot.bottom), Point(plot.left, plot.top)):
        yield Line(start=origin, end=end, layer=Layer.AXES, kind=LineKind.THIN)
    for value in round_values(scale.raise_m / metres_in_unit(system)):
        at = scale.at(value * metres_in_unit(system), 0.0)
        yield from tick(at, Point(at.x, at.y - TICK), print_number(value), Anchor.MIDDLE)
    for value in round_values(scale.force_n / newtons_in_unit(system)):
        at = scale.at(0.0, value * newtons_in_unit(system))
        yield from tick(at, Point(at.x - TICK, at.y), print_number(value), Anchor.END)
    force_unit = print_force(1.0, system).split()[-1]
    yield axis_name(f"Raise, {UNIT_WORDS[system]}", Point((plot.left + plot.right) / 2, 2.0))
    middle = (plot.bottom + plot.top) / 2
    yield axis_name(f"Force on all cords, {force_unit}", Point(2.0, middle), upright=True)


def _describe(balance: Balance, curve: RaiseCurve, raised_m: float, system: System) -> str:
    """Say in sentences what the graph shows."""
    lowered = show_value(balance.load_lowered, system)
    raised = show_value(balance.load_raised, system)
    sentences = [f"The load on all cords grows from {lowered} just lifted to {raised} raised."]
    if curve.spring_n:
        first = print_force(curve.spring_lifting_n[0], system)
        last = print_force(curve.spring_lifting_n[-1], system)
        spring = f"the spring{_wound(curve)}"
        sentences.append(f"After friction {spring} lifts {first} at the bottom and {last} up.")
    sentences.append(f"The marker stands at a raise of {_length(raised_m, system)}.")
    return " ".join(sentences)
