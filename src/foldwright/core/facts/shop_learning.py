"""How much a shop's own record may move what is expected of its next shade."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Status

KIND_SPREAD = fact(
    "how far kinds differ from their sheets",
    0.06,
    Unit.RATIO,
    "The average of a kind of spring or cloth lies within about this share of its sheet (one"
    " standard deviation, as a logarithm).",
    Status.HOUSE,
)
PIECE_SPREAD = fact(
    "how far pieces of a kind differ",
    0.035,
    Unit.RATIO,
    "One spring or one cut of cloth differs from the average of its kind by about this share (one"
    " standard deviation), until the shop's own pieces have shown how much.",
    Status.HOUSE,
)
FRICTION_KIND_SPREAD = fact(
    "how far frictions of kinds differ",
    0.5,
    Unit.RATIO,
    "The friction of a kind of cord and bracket lies within about this of the house's, as a"
    " logarithm (one standard deviation).",
    Status.HOUSE,
)
FRICTION_PIECE_SPREAD = fact(
    "how far frictions of pieces differ",
    0.3,
    Unit.RATIO,
    "From shade to shade on the same cord and bracket, as a logarithm (one standard deviation).",
    Status.HOUSE,
)
SPREAD_WORTH = fact(
    "worth of the starting spread",
    8,
    Unit.COUNT,
    "The starting spread of pieces counts like so many pieces of the shop's own.",
    Status.HOUSE,
)
BATCH_ALARM = fact(
    "false alarms for each look at a batch",
    0.001,
    Unit.SHARE,
    "A batch like all before it is called different in one look of a thousand; in ten looks, one"
    " after each shade, in at most one batch of a hundred.",
    Status.HOUSE,
)
FEWEST_IN_A_BATCH = fact(
    "fewest springs that tell a batch",
    2,
    Unit.COUNT,
    "One spring alone never tells a batch from a stray piece.",
    Status.HOUSE,
)
DISTANCE_READ = fact(
    "distance read on a bar",
    Length.mm(3),
    Unit.LENGTH,
    "Where a weight on a bar just balances is found to about this.",
    Status.HOUSE,
)
TURNS_READ = fact(
    "turns read on a bar",
    0.03,
    Unit.TURN,
    "A bar is level to about this part of a turn.",
    Status.HOUSE,
)
TORQUE_LOST_YEARLY = fact(
    "torque lost in a year, at most",
    0.02,
    Unit.SHARE,
    "A wound spring relaxes and friction grows; together they cost at most about this a year.",
    Status.HOUSE,
)
TORQUE_LOST_AT_MOST = fact(
    "torque lost, at most",
    0.25,
    Unit.SHARE,
    "A spring that has lost more is worn out or broken.",
    Status.HOUSE,
)
