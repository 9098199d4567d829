"""The lock of a spring shade as a ratchet: what it blocks, what it lets pass."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, pi, sin

from foldwright.core.drawing.model import (
    Anchor,
    AnyElement,
    Arc,
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
from foldwright.core.lift.choices import Lock

TEETH = 10
OUTER, INNER, HUB = 11.0, 8.2, 2.0
ARROW_RADIUS = 5.2
HALF_EXTENT, TOP, CAPTION_BELOW = 29.0, 20.0, 17.0
PIVOT = Point(17.0, 2.5)  # pushed clockwise the pawl is squeezed against it and holds
STEEP = 0.02  # of a tooth: the face that the pawl stands against
STOP_HALF = 1.6  # half the bar across the tip of a blocked arrow


@dataclass(frozen=True, kw_only=True, slots=True)
class _Kind:
    """What one kind of lock does."""

    title: str
    words: str
    blocks_rising: bool
    blocks_sinking: bool


KINDS = {
    Lock.ONE_WAY: _Kind(
        title="One-way lock",
        words="Blocks rising only",
        blocks_rising=True,
        blocks_sinking=False,
    ),
    Lock.TWO_WAY: _Kind(
        title="Two-way lock",
        words="Blocks rising and sinking",
        blocks_rising=True,
        blocks_sinking=True,
    ),
    Lock.NONE: _Kind(
        title="No lock",
        words="Blocks nothing",
        blocks_rising=False,
        blocks_sinking=False,
    ),
    Lock.UNKNOWN: _Kind(
        title="Lock not known",
        words="One-way or two-way? Look at it",
        blocks_rising=False,
        blocks_sinking=False,
    ),
}
RIM_ALONE = (Lock.NONE, Lock.UNKNOWN)
SENTENCES = {
    Lock.ONE_WAY: "A shade too heavy for its spring still sinks.",
    Lock.TWO_WAY: "A spring wound too little stays hidden until the lock lets go.",
    Lock.UNKNOWN: "What it blocks cannot be drawn until somebody has looked.",
    Lock.NONE: "Only the balance of spring, load and friction holds the shade.",
}


def lock_drawing(lock: Lock) -> Drawing:
    """Sketch a lock as a ratchet wheel with its pawl.

    An arrow ends free where the wheel can turn and at a bar where it is blocked; rising
    is clockwise in the sketch.

    Takes: the kind of lock.

    Gives: the drawing, in millimetres of paper; of a lock that is not known no more than its rim.

    Source: common practice (what a lock blocks); derived here (the sketch).

    >>> lock_drawing(Lock.TWO_WAY).title
    'Two-way lock'
    """
    kind = KINDS[lock]
    return Drawing(
        name=f"lock-{lock.value}",
        title=kind.title,
        seen_from="",
        description=f"{kind.title}. {kind.words}. {SENTENCES[lock]}",
        extent=Box(left=-HALF_EXTENT, bottom=-CAPTION_BELOW - 3.5, right=HALF_EXTENT, top=TOP),
        scale=1.0,
        elements=tuple(_elements(lock, kind)),
    )


def _elements(lock: Lock, kind: _Kind) -> Iterator[AnyElement]:
    """Draw the wheel, its pawl, and an arrow for each way of turning."""
    yield _wheel(lock)
    yield Circle(centre=Point(0.0, 0.0), radius=HUB, layer=Layer.LOCK)
    if lock not in RIM_ALONE:
        yield from _pawl(lock)
    if lock is not Lock.UNKNOWN:
        yield from _way("rise", 165.0, 95.0, blocked=kind.blocks_rising)
        yield from _way("sink", 195.0, 265.0, blocked=kind.blocks_sinking)
    yield Text(
        at=Point(0.0, -CAPTION_BELOW),
        words=kind.words,
        anchor=Anchor.MIDDLE,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )


def _polar(radius: float, angle: float) -> Point:
    return Point(radius * cos(angle), radius * sin(angle))


def _wheel(lock: Lock) -> AnyElement:
    """Draw saw teeth for a one-way lock, square notches for a two-way one, else a plain rim."""
    if lock in RIM_ALONE:
        return Circle(centre=Point(0.0, 0.0), radius=OUTER, layer=Layer.LOCK)
    step = 2 * pi / TEETH
    points: list[Point] = []
    for tooth in range(TEETH):
        # a notch begins at 45 degrees, where the pawl stands
        start = pi / 4 + tooth * step
        if lock is Lock.ONE_WAY:
            points += [_polar(INNER, start), _polar(OUTER, start + STEEP * step)]
        else:
            points += [
                _polar(INNER, start - step / 4),
                _polar(INNER, start + step / 4),
                _polar(OUTER, start + step / 4),
                _polar(OUTER, start + 3 * step / 4),
            ]
    return Polyline(points=tuple(points), closed=True, layer=Layer.LOCK)


def _pawl(lock: Lock) -> Iterator[AnyElement]:
    """Draw the pawl in its notch."""
    step = 2 * pi / TEETH
    if lock is Lock.ONE_WAY:
        tip = (_polar(INNER, pi / 4), _polar(OUTER, pi / 4))
        yield Polyline(points=(PIVOT, *tip), closed=True, layer=Layer.LOCK)
        yield Circle(centre=PIVOT, radius=HUB / 2, layer=Layer.LOCK, filled=True)
        return
    half = step / 4 * 0.9
    body = (
        _polar(INNER, pi / 4 - half),
        _polar(INNER, pi / 4 + half),
        _polar(OUTER + 6.0, pi / 4 + half * INNER / (OUTER + 6.0)),
        _polar(OUTER + 6.0, pi / 4 - half * INNER / (OUTER + 6.0)),
    )
    yield Polyline(points=body, closed=True, layer=Layer.LOCK)


def _way(words: str, first: float, last: float, *, blocked: bool) -> Iterator[AnyElement]:
    """Draw one way of turning inside the wheel, with a bar across it where it is blocked."""
    reverse = last < first
    yield Arc(
        centre=Point(0.0, 0.0),
        radius=ARROW_RADIUS,
        from_degrees=first,
        to_degrees=last,
        reverse=reverse,
        arrow=True,
        layer=Layer.LOCK,
        kind=LineKind.THIN,
    )
    if blocked:
        angle = (last + (-8.0 if reverse else 8.0)) * pi / 180
        yield Line(
            start=_polar(ARROW_RADIUS - STOP_HALF, angle),
            end=_polar(ARROW_RADIUS + STOP_HALF, angle),
            layer=Layer.LOCK,
        )
    yield Text(
        at=Point(-OUTER - 1.5, 4.0 if reverse else -4.0),
        words=words,
        size=Lettering.NOTE,
        anchor=Anchor.END,
        layer=Layer.NOTES,
        kind=LineKind.THIN,
    )
