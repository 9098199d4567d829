"""Figures behind the load on the cords: what a stop near a pick-up, and stiff cloth, add."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.source import Status

PICK_UP_TOLERANCE = Figure(
    name="pick-up tolerance",
    value=Length.mm(5),
    unit=Unit.LENGTH,
    because="Rows are sewn to within a few millimetres, so a row picked up within 5 mm"
    " above the stop may already hang on the cords.",
    status=Status.PRACTICE,
)

STIFF_START = Figure(
    name="stiff cloth at the start of a fold",
    value=2.2,
    unit=Unit.RATIO,
    because="Fitted to chains of stiff links run in a physics engine: the extra load at the"
    " start of a fold, in weights of one bending length of cloth.",
)

STIFF_REACH = Figure(
    name="reach of the stiffness into a fold",
    value=3.6,
    unit=Unit.RATIO,
    because="Fitted to the same chains: the raise, in bending lengths, after which a fold"
    " no longer feels its stiffness.",
)

STIFF_FADE = Figure(
    name="fading of the stiffness in a fold",
    value=1.2,
    unit=Unit.RATIO,
    because="Fitted to the same chains: the power with which the extra load fades.",
)

STIFF_FROM = Figure(
    name="bending length that counts as stiff",
    value=0.125,
    unit=Unit.SHARE,
    because="The load without stiffness is good to about 1 % while the bending length is"
    " below an eighth of the row spacing, and too small above it.",
)
