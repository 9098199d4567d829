"""How far a cord leans between its wraps and its first ring.

A clip near its column leans less; a clip far from it never lets a loose wrap pass the
column. The trade stands far; the bench watches the lean.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from foldwright.core.quantity.length import Length
from foldwright.core.rig.wraps import Wraps
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived
from foldwright.core.why.source import Source

L = Figure[Length]
N = Figure[float]

FLEET_ANGLE = Source(id="fleet-angle-page", clause="smooth drum")


@dataclass(frozen=True, kw_only=True, slots=True)
class Fall:
    """The free fall of a cord from the tube's centre to its first ring."""

    lowered: L
    raised: L


def fall(depth: L, top_panel: L, top_ring: L) -> Fall | None:
    """Measure how far a cord hangs free above its first ring, lowered and raised.

    Takes: the tube's depth below the top; the top row below the top when lowered, and at
    the up-stop.

    Gives: both falls, or None where a top ring comes as high as the tube.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT, PARTS
    >>> free = fall(PARTS.depth, LAYOUT.rows.top_panel, PARTS.top_ring)
    >>> free.lowered.value.in_millimetres
    113.0
    """
    if min(top_panel.value, top_ring.value) <= depth.value:
        return None
    return Fall(
        lowered=_fall("free fall of a cord when lowered", depth, top_panel),
        raised=_fall("free fall of a cord when raised", depth, top_ring),
    )


def _fall(name: str, depth: L, ring: L) -> L:
    return derived(
        name,
        ring.value - depth.value,
        Unit.LENGTH,
        "From the tube, {0} below the top, to the first ring, {1} below the top.",
        depth,
        ring,
    )


def least_leaning_offset(wraps: Wraps, free: Fall) -> L:
    """Find the clip whose cord leans least, as far one way at the bottom as the other at the top.

    Takes: the wraps of a cord; its free fall.

    Gives: clip to column.

    Holds for: wraps side by side without gaps, and a top row that comes up only at the end.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT, PARTS
    >>> free = fall(PARTS.depth, LAYOUT.rows.top_panel, PARTS.top_ring)
    >>> round(least_leaning_offset(PARTS.wraps, free).value.in_millimetres, 2)
    13.97
    """
    first = wraps.safety.value * wraps.step.value.in_metres
    last = wraps.width.value.in_metres
    low, high = free.lowered.value.in_metres, free.raised.value.in_metres
    return derived(
        "clip of the least lean",
        Length.metres((first * high + last * low) / (low + high)),
        Unit.LENGTH,
        "The clip from which the first wrap of travel leans towards the column, over a fall of {1},"
        " as much as the last of {0} leans back, over {2}.",
        wraps.width,
        free.lowered,
        free.raised,
    )


def greatest_lean(offset: L, wraps: Wraps, free: Fall) -> N:
    """Give the angle by which a cord leans from the plumb line, fully down.

    Takes: clip to column; the wraps of a cord; its free fall.

    Gives: degrees, for the clip as chosen; the sentence names the clip that leans least.

    Holds for: safety wraps side by side at the clip and a cord straight to its first ring.

    Source: derived here; fleet-angle-page: hoists with wire rope on a smooth drum keep
    below 1.5 degrees. A soft cord's own limit is not known.

    >>> from foldwright.core.rig.example import LAYOUT, PARTS
    >>> free = fall(PARTS.depth, LAYOUT.rows.top_panel, PARTS.top_ring)
    >>> round(greatest_lean(PARTS.offset, PARTS.wraps, free).value, 1)
    28.6
    """
    best = least_leaning_offset(wraps, free)
    return derived(
        "greatest lean of a cord",
        lean(offset.value, wraps, free),
        Unit.ANGLE,
        "From a clip {0} from the column the cord falls {1} to its first ring, fully down. A clip"
        " {2} from it would lean only {3}. Hoists keep wire rope below a degree and a half; a soft"
        " cord's limit is not known: watch the wraps for gaps and climbing over ten cycles, and"
        " move the clips nearer if they show.",
        offset,
        free.lowered,
        best,
        _least_lean(best, wraps, free),
        source=FLEET_ANGLE,
    )


def _least_lean(best: L, wraps: Wraps, free: Fall) -> N:
    return derived(
        "least lean of a cord",
        lean(best.value, wraps, free),
        Unit.ANGLE,
        "From a clip {0} from the column, over a fall of {1}.",
        best,
        free.lowered,
    )


def lean(offset: Length, wraps: Wraps, free: Fall) -> float:
    """Give the lean of a cord in degrees, fully down.

    Takes: clip to column; the wraps; the free fall.

    Gives: degrees towards the column.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT, PARTS
    >>> free = fall(PARTS.depth, LAYOUT.rows.top_panel, PARTS.top_ring)
    >>> round(lean(Length.mm(20), PARTS.wraps, free), 1)
    8.0
    """
    aside = offset.in_metres - wraps.safety.value * wraps.step.value.in_metres
    return math.degrees(math.atan2(aside, free.lowered.value.in_metres))
