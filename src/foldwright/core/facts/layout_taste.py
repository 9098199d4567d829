"""What makes one layout better than another: the merits, their order, and how far to look."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Source, Status

L = Figure[Length]


class Merit(Enum):
    """What layouts are compared by; of each, less is better."""

    STOPS = "things to stop at"
    ASKS = "things to ask about"
    SAG = "folds that are seen to sag between the columns"
    WORK = "time for rings, cords and seams"
    RINGS = "rings to sew"
    COLUMNS = "cords and clips"
    FOLD = "folds shallower or deeper than usual"
    SKIRT = "skirt off the house's"
    GLASS = "glass that the raised shade covers"
    STACK = "raised size"
    EDGE = "outer columns off their usual place"
    SEAM = "seams nearer to a column than comfortable"
    PIECE = "middle piece narrower than its cloth"
    LOCK = "folds that show the pattern anyhow"
    HEAD = "head deeper than it must be"


@dataclass(frozen=True, kw_only=True, slots=True)
class Wish:
    """What somebody may want of a layout: the merits in their order, the first one first.

    As another layout beside the best it must gain at least so much in its aim.
    """

    title: str
    order: tuple[Merit, ...]
    aim: Merit | None = None
    gain: Figure[Length] | Figure[int] | None = None


def _look(name: str, inches: str, because: str) -> L:
    return fact(name, Length.inches(Fraction(inches)), Unit.LENGTH, because, Status.HOUSE)


def _seconds(name: str, seconds: float, because: str) -> Figure[float]:
    return fact(name, seconds, Unit.TIME, because, Status.HOUSE)


RING_TIME = _seconds(
    "time to sew a ring", 45, "Invented: by hand, with its tack and the way to the next one."
)
ROW_TIME = _seconds("time to mark a row", 60, "Invented: measured, drawn and checked.")
COLUMN_TIME = _seconds(
    "time for a cord", 300, "Invented: cut, threaded, clipped, tied off and levelled."
)
SEAM_TIME = _seconds("time for a seam", 900, "Invented: matched, pinned, sewn and pressed.")

ONE_FEWER = fact("one fewer", 1, Unit.COUNT, "A row or a column more or less.", Status.HOUSE)
STACK_GAIN = _look(
    "shorter stack", "3/4", "A raised shade that is shorter by less is not seen to be so."
)
SEAM_GAIN = _look(
    "seam farther off", "1/2", "A seam that lies farther off by less is no easier to sew."
)

_NO_FAULT = (Merit.STOPS, Merit.ASKS, Merit.SAG)
_LOOKS = (Merit.FOLD, Merit.SKIRT, Merit.GLASS)
_HABITS = (Merit.HEAD, Merit.EDGE, Merit.PIECE, Merit.SEAM, Merit.LOCK)

BEST = Wish(title="Best", order=(*_NO_FAULT, Merit.WORK, *_LOOKS, *_HABITS, Merit.STACK))

OTHERS = (
    Wish(
        title="Pattern locked",
        order=(*_NO_FAULT, Merit.LOCK, Merit.WORK, *_LOOKS, *_HABITS),
        aim=Merit.LOCK,
        gain=ONE_FEWER,
    ),
    Wish(
        title="Fewer columns",
        order=(*_NO_FAULT, Merit.COLUMNS, Merit.WORK, *_LOOKS, *_HABITS),
        aim=Merit.COLUMNS,
        gain=ONE_FEWER,
    ),
    Wish(
        title="By the house's habits",
        order=(*_NO_FAULT, Merit.SKIRT, Merit.HEAD, Merit.EDGE, Merit.PIECE, Merit.WORK, *_LOOKS),
    ),
    Wish(
        title="Seams clear of the columns",
        order=(*_NO_FAULT, Merit.SEAM, Merit.WORK, *_LOOKS, *_HABITS),
        aim=Merit.SEAM,
        gain=SEAM_GAIN,
    ),
    Wish(
        title="Shorter stack",
        order=(*_NO_FAULT, Merit.FOLD, Merit.WORK, Merit.SKIRT, Merit.STACK, *_HABITS),
        aim=Merit.STACK,
        gain=STACK_GAIN,
    ),
)
"""What is offered besides the best, tried in this order until two are found."""

NEXT = Wish(title="Next best", order=BEST.order)
"""What is offered where those are too few."""

GREATEST_SKIRT = _look(
    "longest skirt tried", "2", "A plain hem shows none to this much of itself below the folds."
)
SKIRT_STEP = {
    System.INCH: _look("step of the skirt", "1/2", "Skirts are tried in steps of this."),
    System.METRIC: fact(
        "step of the skirt",
        Length.mm(10),
        Unit.LENGTH,
        "Skirts are tried in steps of this.",
        Status.HOUSE,
    ),
}
MORE_ROWS = fact("more rows tried", 3, Unit.COUNT, "Beyond the fewest that do.", Status.HOUSE)
MORE_COLUMNS = fact("more columns tried", 3, Unit.COUNT, "Beyond the fewest that do.", Status.HOUSE)
PIECE_STEP = _look("step of the middle piece", "1", "Seams are moved by half of this at a time.")
NARROWEST_MIDDLE = fact(
    "narrowest middle piece tried",
    0.85,
    Unit.SHARE,
    "Of the width of its cloth: a narrower one wastes what a side piece cannot use.",
    Status.HOUSE,
)
COMFORTABLE_SEAM = _look(
    "comfortable distance of a seam", "1", "So far from a seam a ring is sewn without a thought."
)

ALIKE_AFTER = fact(
    "folds until the pattern is alike",
    4,
    Unit.COUNT,
    "A pattern that comes back only after more folds is not seen as a rule.",
    Status.HOUSE,
)
LOCK_DRIFT = _look(
    "drift of a locked pattern", "1/8", "Over the whole drop the print may run off so much."
)
LEAST_FULL_LOOP = fact(
    "least fullness that loops", 1.3, Unit.RATIO, "With less, loops hang flat.", Status.HOUSE
)
MOST_FULL_LOOP = fact(
    "most fullness of loops",
    2.0,
    Unit.RATIO,
    "Double length makes deep loops.",
    Status.PUBLISHED,
    source=Source(id="hobbled-shade-book", clause="excerpt"),
)

DIFFERENT_STACK = _look("raised sizes that differ", "1/2", "Less is not seen.")
TOLD_APART = _look("lengths told apart", "1/4", "A smaller trade is not worth a sentence.")

LEVEL_STEP = {
    System.INCH: _look("step of level rows", "1/8", "Twice a mark, so that half of it is one."),
    System.METRIC: fact(
        "step of level rows",
        Length.mm(2),
        Unit.LENGTH,
        "Twice a mark, so that half of it is one.",
        Status.HOUSE,
    ),
}
STACK_WORTH = _seconds(
    "time that a metre of raised shade is worth",
    7200,
    "Invented: about three minutes an inch are spent rather than let a raised shade hang lower.",
)
