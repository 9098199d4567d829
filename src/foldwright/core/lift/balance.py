"""The answer of the lift: will it rise and hold, with how many turns, and why."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from foldwright.core.lift.choices import LiftKind
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

L = Figure[Length]
N = Figure[float]
W = Figure[str]


class Verdict(Enum):
    """What can be promised."""

    WORKS = "works"
    BY_HAND = "works, guided by hand"  # no speed brake: never released free
    NARROW = "only just"  # no turns satisfy all limits with 95 % certainty
    NOTHING_FITS = "does not work as asked"
    ASK = "cannot be answered yet"


@dataclass(frozen=True, kw_only=True, slots=True)
class Window:
    """The turns that may be wound into the spring at the up-stop."""

    least_turns: N  # to lift; low and high give the 90 % range
    most_by_spring: N | None  # None where the sheet says nothing of the spring's strength
    most_by_hand: N
    most_by_speed: N | None  # None without a speed brake of known drag
    recommended_turns: N | None  # None when nothing fits
    chance: N  # that the recommended turns satisfy every limit
    limited_below_by: W
    limited_above_by: W
    sensitivities: tuple[N, ...] = ()  # change in least turns for a named change of input

    @property
    def most_turns(self) -> N:
        """Give the limit that bounds the turns above: the one with the lowest low end."""
        limits = (self.most_by_spring, self.most_by_hand, self.most_by_speed)
        return min((limit for limit in limits if limit), key=_low_end)


def _low_end(limit: N) -> float:
    return limit.value if limit.low is None else limit.low


@dataclass(frozen=True, kw_only=True, slots=True)
class SpringRank:
    """One spring of the shop's list, tried on this shade."""

    spring: str
    verdict: Verdict
    window: Window
    remark: W


@dataclass(frozen=True, kw_only=True, slots=True)
class RaiseCurve:
    """Lines for the raise graph; all at cord centre, newtons, one value for each raise."""

    raise_m: tuple[float, ...]
    load_n: tuple[float, ...]
    load_low_n: tuple[float, ...]
    load_high_n: tuple[float, ...]
    spring_n: tuple[float, ...]  # empty for clutch and motor
    spring_lifting_n: tuple[float, ...]  # what is left for lifting after friction
    spring_resisting_n: tuple[float, ...]  # what must be overcome when pulling down
    turns: float | None = None  # at the up-stop, that the spring's lines are drawn for


@dataclass(frozen=True, kw_only=True, slots=True)
class Balance:
    """Load against lift, for one shade."""

    kind: LiftKind | None
    verdict: Verdict
    load_lowered: N
    load_raised: N
    arm_lowered: L
    arm_raised: L
    travel_turns: N
    torque_needed: N
    window: Window | None = None
    hand_force_down: N | None = None  # at the bar, just lifted from fully down
    spring_energy: N | None = None  # stored when fully down
    chain_pull: N | None = None
    motor_torque: N | None = None
    motor_time: N | None = None
    motor_speed: N | None = None  # of the cords
    tube_sag: L | None = None
    bar_sag: L | None = None
    board_sag: L | None = None
    curve: RaiseCurve | None = None
    ranking: tuple[SpringRank, ...] = ()
