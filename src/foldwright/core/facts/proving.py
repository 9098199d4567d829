"""How far bench observations can be trusted: starting values until a shop has its own."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Status

LOAD_DISCREPANCY = fact(
    "discrepancy of the load",
    0.04,
    Unit.SHARE,
    "Cloth is stiff and friction uneven, so a shade's load differs from the model's by about this.",
    Status.HOUSE,
)
HAND_UNSTEADINESS = fact(
    "unsteadiness of hand and scale",
    0.6,
    Unit.FORCE,
    "A spring scale drawn by hand wavers by about this.",
    Status.HOUSE,
)
STALL_REACH = fact(
    "reach of a stall",
    Length.mm(20),
    Unit.LENGTH,
    "A guided shade that stalls would still have run this much lower, and not this much higher.",
    Status.HOUSE,
)
WEIGHING_SPREAD = fact(
    "spread of a weighing",
    0.02,
    Unit.SHARE,
    "A scale in the workroom reads a panel or a spring's torque to about this.",
    Status.HOUSE,
)
TIME_DISCREPANCY = fact(
    "discrepancy of a rise time",
    0.10,
    Unit.SHARE,
    "A braked rise takes as long as reckoned to about this, brake and stopwatch together.",
    Status.HOUSE,
)
MISCOUNT = fact(
    "turns miscounted",
    0.25,
    Unit.TURN,
    "Turns lost in play or in the count, either way; 90 % lie within this.",
    Status.HOUSE,
)
