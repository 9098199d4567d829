"""What the bench tells the person at it: the change, the questions, the causes, the next step."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import Any

import numpy as np

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding

L = Figure[Length]
N = Figure[float]
W = Figure[str]


@dataclass(frozen=True, kw_only=True, slots=True)
class Advice:
    """What to turn, which way, how far and how surely; and what is now known of the shade.

    Ranges are the middle 90 %. All turns are counted at the up-stop.
    """

    change_turns: N  # above zero: wind in; below: let out
    turns: N  # in the spring afterwards
    direction: W | None  # clockwise or counter-clockwise, looking at the spring end
    end: W | None  # "right" or "left", seen from the room
    chance: N  # that the turns afterwards satisfy every limit
    chance_now: N  # the same for the turns that are in the spring now
    least_turns: N
    most_turns: N
    rate: N
    load_raised: N
    load_friction: N
    constant_friction: N
    spring_hysteresis: N
    lost_turns: N  # counted, but not in the spring; below zero: more in it than counted
    contradicted: bool  # hardly any shade of this case explains what was seen: see the causes


@dataclass(frozen=True, kw_only=True, slots=True)
class Question:
    """One thing noted that cannot be, or two that cannot both be: which, and what to ask."""

    about: tuple[int, ...]  # places in the list of observations; two where they contradict
    finding: Finding  # its figures: what was noted, and what would be expected


class CauseName(Enum):
    """What may be wrong with a shade that does not do as its case says, in trade words."""

    NOTHING = "nothing but what is usual"
    WRONG_SIDE = "spring wound the wrong way, or at the wrong end"
    NOT_ENGAGED = "spring not engaged"
    CLIMBED = "cord climbed on its own wraps"
    RING_CAUGHT = "ring or cord caught"
    WEIGHT_MISTAKEN = "weight mistaken"
    BAR_DRAGS = "bar drags"
    OTHER_SPRING = "another spring than on the sheet"
    MISCOUNTED = "turns miscounted"


@dataclass(frozen=True, kw_only=True, slots=True)
class Cause:
    """One explanation of what was seen, with its chance among all that were tried."""

    name: CauseName
    chance: N
    sentence: str  # what it would mean; {0}, {1} … stand for figures
    figures: tuple[Figure[Any], ...]
    test: str  # the test that tells it from the others


@dataclass(frozen=True, kw_only=True, slots=True)
class Diagnosis:
    """All explanations, the likeliest first."""

    causes: tuple[Cause, ...]
    contradicted: bool  # the likeliest is not "nothing but what is usual"


@dataclass(frozen=True, kw_only=True, slots=True)
class NextStep:
    """One observation not yet made, and what it would tell."""

    kind: str  # a word of `kinds.KINDS`
    instruction: str  # {0}, {1} … stand for figures
    figures: tuple[Figure[Any], ...]
    width_now: N  # of the 90 % range of the least turns
    width_after: N  # the same, as expected once it is made


class Symptom(Enum):
    """What is seen at the rig, in the words used there."""

    RISES_TOO_FAST = "rises too fast"
    SINKS = "sinks"
    STALLS = "stalls"
    WILL_NOT_RELEASE = "will not release"
    HEM_CROOKED = "hem crooked"
    CORD_JUMPS = "cord jumps"


@dataclass(frozen=True, kw_only=True, slots=True)
class Explained:
    """Why a symptom shows on this shade, from the simulated cause, and what mends it."""

    symptom: Symptom
    sentence: str  # {0}, {1} … stand for figures
    figures: tuple[Figure[Any], ...]
    remedy: str


@dataclass(frozen=True, kw_only=True, slots=True)
class RiseCurve:
    """Lines for the rise graphs and the moving shade; plain SI, one value for each sample."""

    time_s: tuple[float, ...]
    raise_m: tuple[float, ...]  # over time
    speed_m_s: tuple[float, ...]  # over time
    at_m: tuple[float, ...]  # raises at which the hand forces are given
    hand_down_n: tuple[float, ...]
    hand_down_low_n: tuple[float, ...]
    hand_down_high_n: tuple[float, ...]
    hand_up_n: tuple[float, ...]  # below zero: a hand must lift to keep it rising
    hand_up_low_n: tuple[float, ...]
    hand_up_high_n: tuple[float, ...]

    def raise_at(self, seconds: float) -> float:
        """Give the raise in m so long after the release, for the moving shade."""
        return float(np.interp(seconds, self.time_s, self.raise_m))

    def share_at(self, seconds: float) -> float:
        """Give the same as a share of the travel."""
        return self.raise_at(seconds) / self.at_m[-1]


@dataclass(frozen=True, kw_only=True, slots=True)
class RiseTold:
    """How the shade rises when it is let go, with ranges."""

    ending: W  # reaches the stop, stalls, does not move
    end_raise: L
    rise_time: N
    top_speed: N
    arrival_speed: N
    arrival_energy: N
    hand_force_down: N  # lowered
    hand_force_up: N  # raised
    curve: RiseCurve
