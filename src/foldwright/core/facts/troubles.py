"""How often something is wrong with a shade at the bench, and what shows then.

Starting values, invented: no source is known. A shop that keeps its records soon has its own.
"""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Status


def _often(what: str, share: float) -> Figure[float]:
    because = f"Of a hundred shades on the rig, in about this many {what}; an invented start."
    return fact(f"how often {what}", share, Unit.SHARE, because, Status.HOUSE)


MISCOUNTED_OFTEN = _often("the turns were miscounted", 0.06)
WEIGHT_OFTEN = _often("the weight was mistaken", 0.05)
OTHER_SPRING_OFTEN = _often("another spring lies in the tube", 0.03)
DRAGGING_OFTEN = _often("the bar drags", 0.03)
CAUGHT_OFTEN = _often("a ring or cord is caught", 0.03)
CLIMBED_OFTEN = _often("a cord has climbed", 0.03)
UNENGAGED_OFTEN = _often("the spring is not engaged", 0.015)
WRONG_SIDE_OFTEN = _often("the spring pulls the wrong way", 0.01)

MISCOUNT_GROSS = fact(
    "turns miscounted by a slip",
    3.0,
    Unit.TURN,
    "Who loses count is off by some turns; 90 % lie within this.",
    Status.HOUSE,
)
WEIGHT_GROSS = fact(
    "weight mistaken",
    0.5,
    Unit.SHARE,
    "A layer forgotten, a wrong bar: 90 % lie within this share of cloth and of bar.",
    Status.HOUSE,
)
RATE_GROSS = fact(
    "rate of another spring",
    1.0,
    Unit.RATIO,
    "Another spring of the shelf: 90 % lie between these shares of the rate on the sheet.",
    Status.HOUSE,
    low=0.76,
    high=1.8,
)
DRAG_GROSS = fact(
    "drag of a bar",
    12.0,
    Unit.FORCE,
    "A bar that rubs along reveal or moulding is held back with up to this.",
    Status.HOUSE,
)
CAUGHT_GROSS = fact(
    "hold of a caught ring",
    25.0,
    Unit.FORCE,
    "A ring or cord that is caught holds the shade back with up to this.",
    Status.HOUSE,
)
CLIMBED_GROSS = fact(
    "load on a longer arm",
    0.15,
    Unit.SHARE,
    "Wraps that climb lengthen the arm of their column, and the load counts up to this much more.",
    Status.HOUSE,
)
UNENGAGED_PULL = fact(
    "pull of a spring not engaged",
    0.2,
    Unit.SHARE,
    "A spring that slips in its seat gives the tube at most this share of its torque.",
    Status.HOUSE,
)
LEVEL_USUAL = fact(
    "bar out of level, usually",
    Length.mm(3),
    Unit.LENGTH,
    "Cords cut and tied with care hang a bar level to about this.",
    Status.HOUSE,
)
LEVEL_CLIMBED = fact(
    "bar out of level, a cord climbed",
    Length.mm(18),
    Unit.LENGTH,
    "Two turns of a climbed wrap put a bar out of level by about this.",
    Status.HOUSE,
)
LEVEL_CAUGHT = fact(
    "bar out of level, a ring caught",
    Length.mm(10),
    Unit.LENGTH,
    "A column that is held back hangs lower by about this.",
    Status.HOUSE,
)
JUMPS_USUAL = fact(
    "cords that jump, usually",
    0.02,
    Unit.SHARE,
    "In about so many tests a cord jumps though nothing is wrong.",
    Status.HOUSE,
)
JUMPS_CLIMBED = fact(
    "cords that jump once climbed",
    0.7,
    Unit.SHARE,
    "A cord that climbs falls back with a jump in about so many tests.",
    Status.HOUSE,
)
