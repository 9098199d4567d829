"""Figures behind the load on the cords: what a stop near a pick-up, and stiff cloth, add."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Status

PICK_UP_TOLERANCE = fact(
    "pick-up tolerance",
    Length.mm(5),
    Unit.LENGTH,
    "Rows are never sewn exactly to their marks, so a row picked up this little above the stop"
    " may already hang on the cords.",
    Status.PRACTICE,
)

STIFF_START = fact(
    "stiff cloth at the start of a fold",
    2.2,
    Unit.RATIO,
    "Fitted to chains of stiff links run in a physics engine: the extra load at the start of"
    " a fold, in weights of one bending length of cloth. What the fit leaves over is its range.",
    Status.DERIVED,
    low=1.7,
    high=2.7,
)

STIFF_REACH = fact(
    "reach of the stiffness into a fold",
    3.6,
    Unit.RATIO,
    "Fitted to the same chains: the raise, in bending lengths, after which a fold no longer"
    " feels its stiffness.",
    Status.DERIVED,
)

STIFF_FADE = fact(
    "fading of the stiffness in a fold",
    1.2,
    Unit.RATIO,
    "Fitted to the same chains: the power with which the extra load fades.",
    Status.DERIVED,
)

STIFF_FROM = fact(
    "bending length that counts as stiff",
    0.125,
    Unit.SHARE,
    "The load without stiffness is good to about 1 % while the bending length is below an"
    " eighth of the row spacing, and too small above it.",
    Status.DERIVED,
)

HEM_EASE = fact(
    "ease of a hem without a bar",
    0.005,
    Unit.SHARE,
    "A sewn hem is a little longer than the line it hangs on: half a per cent is little.",
    Status.HOUSE,
)

WEIGHED_SPREAD = fact(
    "spread of a weighed swatch",
    0.02,
    Unit.SHARE,
    "A swatch on a kitchen scale, cut by hand, is good to about 2 %.",
    Status.HOUSE,
)
