"""Limits a workroom keeps in mind at the window: gaps, depths, walls, squareness."""

from __future__ import annotations

from fractions import Fraction

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Source, Status

MEASURING_PAGE = Source(id="measuring-page", clause="inside and outside mount")


def _limit(
    name: str, value: Length, because: str, status: Status = Status.PRACTICE
) -> Figure[Length]:
    return fact(name, value, Unit.LENGTH, because, status)


HEIGHT_SPREAD_SEEN = _limit(
    "spread of heights that is seen",
    Length.inches(Fraction(1, 4)),
    "A level bar looks crooked against a sill that runs off by more than this.",
    Status.HOUSE,
)

DIAGONAL_DISAGREEMENT = _limit(
    "disagreement of the diagonals",
    Length.inches(Fraction(1, 2)),
    "In any parallelogram the squares of the diagonals sum to those of the four sides;"
    " tapes read carefully keep within this.",
    Status.HOUSE,
)

LEAST_REVEAL_DEPTH = fact(
    "least depth of the reveal",
    Length.inches(1),
    Unit.LENGTH,
    "A measuring page asks for at least this depth before a shade is mounted inside.",
    Status.PUBLISHED,
    source=MEASURING_PAGE,
)

HANDLE_CLEARANCE = _limit(
    "clearance in front of a handle",
    Length.inches(Fraction(1, 2)),
    "The cloth hangs straight only if it clears handles and locks by this much.",
)

BOARD_ABOVE_FRAME = _limit(
    "board above the frame",
    Length.inches(1),
    "A board needs at least this much wall above the frame for its fixings.",
)

HEADROOM_ABOVE_BOARD = _limit(
    "wall for board and brackets",
    Length.inches(2),
    "Above the casing the board needs its own thickness and this much for its brackets.",
)

LEAST_OVERLAP = fact(
    "least overlap",
    Length.inches(2),
    Unit.LENGTH,
    "A measuring page asks for at least this overlap at each side, against the light.",
    Status.PUBLISHED,
    source=MEASURING_PAGE,
)

WALL_BESIDE_OVERLAP = _limit(
    "wall beside the overlap",
    Length.inches(Fraction(1, 2)),
    "A shade that ends closer than this to a corner or a door looks squeezed.",
)

HEAD_FALL_SHARE = fact(
    "fall of the head",
    1 / 384,
    Unit.SHARE,
    "A head that falls by more than 1/8 in over 48 in needs shims under the board.",
    Status.PRACTICE,
)

WIDEST_USUAL = _limit(
    "widest usual shade", Length.inches(96), "A wider flat shade wants the owner's agreement."
)

NARROWEST_USUAL = _limit(
    "narrowest usual shade", Length.inches(12), "A narrower shade wants the owner's agreement."
)

TALLEST_SHARE = fact(
    "tallest usual shape",
    4.0,
    Unit.RATIO,
    "A shade more than four times as long as wide hangs unsteadily and wants the owner's"
    " agreement.",
    Status.PRACTICE,
)
