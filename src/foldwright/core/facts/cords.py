"""What is taken of cords that are pulled behind a shade."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Status

RING_FRICTION = fact(
    "friction of a cord on a ring",
    0.2,
    Unit.RATIO,
    "Invented starting range for braided cord on smooth rings; no published value was found.",
    Status.HOUSE,
    low=0.1,
    high=0.3,
)

LEAST_USEFUL_LOOP = fact(
    "shortest chain loop that can be worked",
    Length.mm(300),
    Unit.LENGTH,
    "A hand must find the chain under the headrail and pull it down a hand's breadth or two.",
    Status.HOUSE,
)
