"""The three states of a spring shade, each with its own signs of friction."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from foldwright.core.lift.span import Reals
from foldwright.core.lift.trials import Trials


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Stand:
    """One shade at many raises, or many trial shades at one: arrays that broadcast.

    `torque_n_m` is the spring's own, rate times turns, before friction.
    """

    torque_n_m: Reals
    arm_m: Reals
    load_n: Reals
    constant_friction_n_m: Reals
    load_friction: Reals
    spring_hysteresis: Reals

    @property
    def hand_down_n(self) -> Reals:
        """Give the force at the bar that pulls the shade down slowly."""
        wound = self.torque_n_m * (1 + self.spring_hysteresis) + self.constant_friction_n_m
        return wound / self.arm_m - self.load_n * (1 - self.load_friction)

    @property
    def hand_up_n(self) -> Reals:
        """Give the force that a hand still holds down while it eases the shade up."""
        wound = self.torque_n_m * (1 - self.spring_hysteresis) - self.constant_friction_n_m
        return wound / self.arm_m - self.load_n * (1 + self.load_friction)

    @property
    def lifting_n(self) -> Reals:
        """Give the load that the spring can just raise: where it is above the load, it rises."""
        wound = self.torque_n_m * (1 - self.spring_hysteresis) - self.constant_friction_n_m
        return np.maximum(wound, 0.0) / self.arm_m / (1 + self.load_friction)

    @property
    def resisting_n(self) -> Reals:
        """Give the load that would just sink against the spring: between the two it stays."""
        wound = self.torque_n_m * (1 + self.spring_hysteresis) + self.constant_friction_n_m
        return wound / self.arm_m / (1 - self.load_friction)

    @property
    def stays(self) -> NDArray[np.bool_]:
        """Tell where friction alone, without any lock, keeps the shade where it is."""
        return (self.lifting_n <= self.load_n) & (self.load_n <= self.resisting_n)


def lowered_stand(trials: Trials, turns: float) -> Stand:
    """Give the trial shades as they stand fully lowered, just lifted off the sill.

    Takes: trial shades; the turns in the spring at the up-stop.

    Gives: one state for each trial.

    Holds for: slow movement; the spring is strongest and the load smallest here.

    Source: derived here.

    >>> from foldwright.core.lift.trials import EXAMPLE
    >>> round(float(lowered_stand(EXAMPLE, 10.0).hand_down_n), 2)
    34.73
    """
    return Stand(
        torque_n_m=trials.rate_n_m_turn * (turns + trials.travel_turns),
        arm_m=trials.arm_lowered_m,
        load_n=trials.load_lowered_n,
        constant_friction_n_m=trials.constant_friction_n_m,
        load_friction=trials.load_friction,
        spring_hysteresis=trials.spring_hysteresis,
    )
