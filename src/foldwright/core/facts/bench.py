"""What the bench holds to when it builds and tests a headrail."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Status

LEAST_SAFETY_WRAPS = fact(
    "least safety wraps",
    3.0,
    Unit.TURN,
    "At least three wraps stay on the tube at full drop: their friction takes the load off"
    " the clip.",
    Status.PRACTICE,
)

ADJUSTING_STEP = fact(
    "turns at a time",
    1.0,
    Unit.TURN,
    "A wound spring is adjusted one whole turn at a time, and tried after each.",
    Status.PRACTICE,
)

TEST_CYCLES = fact(
    "test cycles",
    10,
    Unit.COUNT,
    "Ten full cycles show a wrap that climbs or a cord that leaves its ring.",
    Status.HOUSE,
)

BAR_LEVEL = fact(
    "bar out of level",
    Length.inches("0.25"),
    Unit.LENGTH,
    "The bar stays level within a quarter inch at a quarter, a half, three quarters and fully up.",
    Status.PRACTICE,
)

EQUAL_CORDS = fact(
    "difference between cords",
    Length.inches("0.0625"),
    Unit.LENGTH,
    "Cords that differ by more than a sixteenth of an inch hang the bar out of level.",
    Status.PRACTICE,
)

COVER_OVERLAP = fact(
    "overlap of the board cover",
    Length.inches(1),
    Unit.LENGTH,
    "The cover goes once round the board and overlaps by an inch under the staples.",
    Status.PRACTICE,
)

COVER_ENDS = fact(
    "board cover beyond the board",
    Length.inches(3),
    Unit.LENGTH,
    "Three inches more than the board let both ends be wrapped like a parcel.",
    Status.PRACTICE,
)
