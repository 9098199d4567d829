"""What is chosen, or known, about the lift; None and UNKNOWN are asked for, never guessed."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from foldwright.core.quantity.length import Length


class LiftKind(Enum):
    """What turns the tube."""

    SPRING = "spring"
    CLUTCH = "clutch"
    MOTOR = "motor"


class Lock(Enum):
    """What the ratchet blocks."""

    ONE_WAY = "one-way"
    TWO_WAY = "two-way"
    NONE = "none"
    UNKNOWN = "don't know"


class Brake(Enum):
    """Whether a speed brake is fitted."""

    FITTED = "fitted"
    NONE = "none"
    UNKNOWN = "don't know"


@dataclass(frozen=True, kw_only=True, slots=True)
class LiftChoices:
    """The lift as specified, by names in the shop list."""

    kind: LiftKind | None = None
    spring: str = ""
    springs_side_by_side: int = 1
    turns: float | None = None  # turns already wound in, or wished for, at the up-stop
    lock: Lock = Lock.UNKNOWN
    brake: Brake = Brake.UNKNOWN
    clutch: str = ""
    motor: str = ""
    hand_force_limit_n: float | None = None
    raise_limit_share: float | None = None  # raise less than fully: share of the design travel
    wand: bool = False  # a pull wand hangs from the bar
    cords_apart: Length | None = None  # longest less shortest, as measured at the bench
