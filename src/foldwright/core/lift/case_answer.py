"""What is answered about one lift case, in plain SI numbers."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from foldwright.core.lift.balance import Verdict
from foldwright.core.lift.span import Span


class Limit(Enum):
    """What bounds the turns, in words."""

    LOAD = "the load fully raised"
    STEP = "the smallest step that can be wound"
    SPRING = "the spring's strength"
    HAND = "the pull on the bar fully lowered"
    SPEED = "the speed at the up-stop"


@dataclass(frozen=True, kw_only=True, slots=True)
class CaseWindow:
    """The turns that may be wound into the spring at the up-stop.

    `verdict` is what the turns allow, whatever else is still to be asked. What is said
    at `turns` holds for the turns given, else the recommended, else the likeliest.
    """

    verdict: Verdict
    rate_n_m_turn: Span
    least_turns: Span
    most_by_spring: Span | None  # None: nothing is known of the spring's strength
    most_by_hand: Span
    most_by_speed: Span | None  # None: no brake, or its drag is not known
    most_turns: Span  # the least of those that apply
    likeliest_turns: float  # with the greatest chance
    recommended_turns: float | None  # None when nothing fits
    chance: float  # that the likeliest turns satisfy every limit
    limited_below_by: Limit
    limited_above_by: Limit
    turns: float
    turns_chance: float
    hand_force_n: Span
    spring_energy_j: Span
    arrival_energy_j: Span  # after a free release without a brake, at most
    arrival_speed_m_s: Span


@dataclass(frozen=True, kw_only=True, slots=True)
class CaseAnswer:
    """What the lift must do, and with a spring, how far to wind it."""

    verdict: Verdict
    load_lowered_n: Span
    load_raised_n: Span
    arm_lowered_m: Span
    arm_raised_m: Span
    travel_turns: Span
    torque_needed_n_m: Span
    window: CaseWindow | None
