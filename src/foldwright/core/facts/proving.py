"""How far bench observations can be trusted: starting values until a shop has its own."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Status

LOAD_DISCREPANCY = fact(
    "discrepancy of the load",
    0.06,
    Unit.SHARE,
    "Cloth is stiff and friction uneven, so a shade's load differs from the model's by about this"
    " share of its load half way up; alike at neighbouring heights, another far away.",
    Status.HOUSE,
)
DISCREPANCY_REACH = fact(
    "reach of a discrepancy",
    0.35,
    Unit.SHARE,
    "Over this share of the raise a discrepancy of the load stays much the same.",
    Status.HOUSE,
)
LOAD_ROUGHNESS = fact(
    "roughness of the load",
    0.02,
    Unit.SHARE,
    "From place to place a shade drags a little more or less than reckoned, by about this share"
    " of its load half way up.",
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
SURE_ENOUGH = fact(
    "sure enough to wind",
    0.98,
    Unit.SHARE,
    "Turns are advised that satisfy every limit at least this surely, where any do.",
    Status.HOUSE,
)
SURE_TO_LEAVE = fact(
    "sure enough to leave",
    0.95,
    Unit.SHARE,
    "Turns that already satisfy every limit at least this surely are left as they are.",
    Status.HOUSE,
)
MOST_TURNS_COUNTED = fact(
    "most turns that are counted",
    60.0,
    Unit.TURN,
    "No lift spring that fits a tube is wound further at the up-stop; a greater count is a slip.",
    Status.HOUSE,
)
FAR_OFF = fact(
    "far off",
    4.0,
    Unit.RATIO,
    "A reading so many standard deviations from all that the shade's case allows is asked about.",
    Status.HOUSE,
)
UNLIKELY = fact(
    "hardly possible",
    0.005,
    Unit.SHARE,
    "What had a smaller chance than this before it was seen is asked about.",
    Status.HOUSE,
)
SCALE_HEIGHTS = (0.25, 0.75)  # shares of the travel at which a scale is read, far enough apart
SPRING_BENCH_TURNS = fact(
    "turns on the spring's bench",
    15.0,
    Unit.TURN,
    "A middling number of turns: the torque is easy to read, and any lift spring stands it.",
    Status.HOUSE,
)
LIKELY_STALL = fact(
    "likely to stall",
    0.75,
    Unit.SHARE,
    "A stall is proposed with turns that make it stop well on the way in at least so many cases.",
    Status.HOUSE,
)
STRANGEST = fact(
    "strangest shade that is believed",
    18.0,
    Unit.RATIO,
    "Squared standard deviations from the likeliest shade to the one that explains best: of"
    " simulated sound shades tested six ways one in a hundred lies beyond 13, none beyond 15.",
    Status.HOUSE,
)
