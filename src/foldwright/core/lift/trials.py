"""Many trial shades at once: every uncertain input of the lift, one value for each draw."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from foldwright.core.lift.span import Reals


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class LiftTrials:
    """What a lift must do, for each trial shade: arrays of one value for each draw."""

    constant_friction_n_m: Reals
    load_friction: Reals
    load_lowered_n: Reals
    load_raised_n: Reals
    arm_lowered_m: Reals
    arm_raised_m: Reals
    travel_turns: Reals
    work_j: Reals  # of raising the load from fully down, without friction
    moving_kg: Reals  # fully raised, what turns counted as if it rose with the bar


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Trials(LiftTrials):
    """Trial shades with their trial springs.

    `greatest_turns` is None where nothing is known of the spring's strength.
    """

    rate_n_m_turn: Reals
    greatest_turns: Reals | None
    spring_hysteresis: Reals


EXAMPLE = Trials(  # an invented shade, for the examples of the functions beside
    constant_friction_n_m=np.asarray(0.03),
    load_friction=np.asarray(0.12),
    load_lowered_n=np.asarray(4.0),
    load_raised_n=np.asarray(11.0),
    arm_lowered_m=np.asarray(0.02),
    arm_raised_m=np.asarray(0.0201),
    travel_turns=np.asarray(10.0),
    work_j=np.asarray(9.0),
    moving_kg=np.asarray(1.2),
    rate_n_m_turn=np.asarray(0.0350),
    greatest_turns=np.asarray(25.0),
    spring_hysteresis=np.asarray(0.05),
)
