"""The path of the cloth in side section: hairpin loops, spread out so each can be seen.

Heights are true. Across, real folds lie a few millimetres apart, too close to draw:
each limb gets a lane of its own, farther to the room side the higher its panel.
"""

from __future__ import annotations

from math import cos, pi, sin

import numpy as np

from foldwright.core.drawing.folding import Panel
from foldwright.core.drawing.model import Point

SHOULDER_SHARE = 4.0  # how slowly a limb leaves the rings: its height over its way across
OPEN_SHOULDER = 0.75  # an open loop leaves its row slowly, behind the loop above
CURVE_POINTS = 10  # even, so that a bend has a lowest point


def loops(panels: tuple[Panel, ...], *, lane: float, rest: float) -> tuple[Point, ...]:
    """Draw the cloth in one line from the board down to the lowest row.

    Takes: the panels from the bottom; the width of a lane and the place of cloth at rest,
    in millimetres.

    Gives: the path of the cloth, without doubled points.

    Source: derived here.

    >>> flat = Panel(lower=0.0, upper=200.0, cloth=200.0)
    >>> loops((flat,), lane=10.0, rest=5.0)
    (Point(x=5.0, y=200.0), Point(x=5.0, y=0.0))
    """
    lanes = _lanes(panels)
    paths = [
        _loop(panel, number, lane=lane, rest=rest)
        for panel, number in zip(panels, lanes, strict=True)
    ]
    return tuple(dict.fromkeys(point for path in reversed(paths) for point in path))


def on_loop(
    panels: tuple[Panel, ...], number: int, arc: float, *, lane: float, rest: float
) -> Point:
    """Find a point of one panel in the drawn path, by how far up the cloth it lies.

    Takes: the panels from the bottom; the panel's number from 0; the length of cloth from its
    lower row; the width of a lane and the place of cloth at rest, in millimetres.

    Gives: the point, at its true height, on the limb that it hangs in.

    Source: derived here.

    >>> flat = Panel(lower=0.0, upper=200.0, cloth=200.0)
    >>> on_loop((flat,), 0, 50.0, lane=10.0, rest=5.0)
    Point(x=5.0, y=50.0)
    """
    panel = panels[number]
    path = _loop(panel, _lanes(panels)[number], lane=lane, rest=rest)
    turn = min(range(len(path)), key=lambda place: path[place].y)
    from_the_lower_row = panel.folded and arc <= panel.slack
    limb = path[turn:] if from_the_lower_row else tuple(reversed(path[: turn + 1]))
    height = panel.height_at(arc)
    across = np.interp(height, [point.y for point in limb], [point.x for point in limb])
    return Point(float(across), height)


def _lanes(panels: tuple[Panel, ...]) -> list[int]:
    """Give the stack's loops lanes side by side, and open loops above it lanes ever farther in."""
    stacked = sum(panel.closed for panel in panels)
    return [
        number if number <= stacked else max(0, 2 * stacked - number)
        for number in range(len(panels))
    ]


def _loop(panel: Panel, number: int, *, lane: float, rest: float) -> tuple[Point, ...]:
    """Draw one panel from its upper row to its lower one; straight where it has no slack."""
    top, bottom = Point(rest, panel.upper), Point(rest, panel.lower)
    if not panel.folded:
        return (top, bottom)
    opened = min(1.0, panel.slack / (2 * lane))
    inner = rest + opened * lane * (2 * number + 1)
    outer = rest + opened * lane * (2 * number + 2)
    bend = min((outer - inner) / 2, panel.slack)
    turn = Point((inner + outer) / 2, panel.fold_edge + bend)
    slow = 0.0 if panel.closed else OPEN_SHOULDER
    down = _limb(top, Point(outer, turn.y), slow)
    up = _limb(bottom, Point(inner, turn.y), 0.0)
    return (*down, *_bend(turn, (outer - inner) / 2, bend), *reversed(up))


def _limb(ring: Point, foot: Point, slow: float) -> tuple[Point, ...]:
    """Lead from a ring outwards to the lane, then straight down it.

    `slow` is the least share of the height that the way outwards takes.
    """
    height = ring.y - foot.y
    shoulder = min(height, max(SHOULDER_SHARE * (foot.x - ring.x), slow * height))
    shares = [step / CURVE_POINTS for step in range(CURVE_POINTS + 1)]
    curve = tuple(
        Point(
            ring.x + (foot.x - ring.x) * share * share * (3 - 2 * share),
            ring.y - shoulder * share,
        )
        for share in shares
    )
    return (*curve, foot) if height > shoulder else curve


def _bend(turn: Point, half_width: float, depth: float) -> tuple[Point, ...]:
    """Draw the lower half of an ellipse from the room side to the window side."""
    angles = [-pi * step / CURVE_POINTS for step in range(1, CURVE_POINTS)]
    return tuple(
        Point(turn.x + half_width * cos(angle), turn.y + depth * sin(angle)) for angle in angles
    )
