"""Axes of graphs: round values, their ticks, and the names with their units."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, floor, log10

from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Layer,
    Lettering,
    Line,
    LineKind,
    Point,
    Text,
)
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measure_reading import POUND_FORCE_N
from foldwright.core.quantity.rounding import System

TICKS_WANTED = 6
NICE_STEPS = (1.0, 2.0, 2.5, 5.0, 10.0)
TICK = 1.5


def metres_in_unit(system: System) -> float:
    """Give the metres in one mark of a length axis."""
    return (Length.inches(1) if system is System.INCH else Length.mm(1)).in_metres


def newtons_in_unit(system: System) -> float:
    """Give the newtons in one mark of a force axis."""
    return POUND_FORCE_N if system is System.INCH else 1.0


def round_values(greatest: float, least: float = 0.0, wanted: int = TICKS_WANTED) -> list[float]:
    """Give round values from the least to the greatest, nothing among them."""
    rough = (greatest - least) / wanted
    power = 10.0 ** floor(log10(rough))
    step = next(nice * power for nice in NICE_STEPS if nice * power >= rough)
    return [step * count for count in range(ceil(least / step), int(greatest / step) + 1)]


def tick(at: Point, end: Point, words: str, anchor: Anchor) -> Iterator[AnyElement]:
    """Draw a tick and its figure."""
    yield Line(start=at, end=end, layer=Layer.AXES, kind=LineKind.THIN)
    shift = Point(0.0, -2.5) if anchor is Anchor.MIDDLE else Point(-1.0, 0.0)
    yield Text(
        at=Point(end.x + shift.x, end.y + shift.y),
        words=words,
        size=Lettering.NOTE,
        anchor=anchor,
        layer=Layer.AXES,
        kind=LineKind.THIN,
    )


def axis_name(words: str, at: Point, *, upright: bool = False) -> Text:
    """Name an axis."""
    return Text(
        at=at,
        words=words,
        size=Lettering.NOTE,
        anchor=Anchor.MIDDLE,
        upright=upright,
        layer=Layer.AXES,
        kind=LineKind.THIN,
    )
