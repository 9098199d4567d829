"""Trial shades that can be asked at any height what they would do."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from foldwright.core.facts.proving import MISCOUNT
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.sampling import (
    Draw,
    case_winding,
    lift_trials,
    spring_shade_trials,
)
from foldwright.core.lift.span import Span, span_of
from foldwright.core.lift.trials import Trials
from foldwright.core.lift.winding import Winding
from foldwright.core.lift.window import least_turns
from foldwright.core.weigh.curve import LoadCurve

Reals = NDArray[np.float64]
MISCOUNT_COLUMN = 9
TIMED_HEIGHTS = 24


@dataclass(frozen=True, kw_only=True, eq=False)
class TrialShades:
    """Many shades drawn from the ranges of one case; arrays of one value for each."""

    case: LiftCase
    trials: Trials
    curve: LoadCurve
    winding: Winding
    cloth_scale: Reals
    bar_n: Reals  # bar heavier or lighter than its sheet
    miscount_turns: Reals  # really wound, less counted
    brake_drag_n_m_s: Reals

    @classmethod
    def drawn(cls, case: LiftCase, draws: Reals) -> TrialShades:
        """Draw trial shades.

        Takes: a case with a spring; uniform numbers, one row for each shade and at least
        16 columns.

        Gives: the shades, each with its own spring, weights, friction and miscount.

        Holds for: as the lift's own trials.

        Source: derived here.

        >>> from foldwright.core.prove.example import CASE
        >>> shades = TrialShades.drawn(CASE, np.full((2, 16), 0.5))
        >>> shades.miscount_turns.tolist()
        [0.0, 0.0]
        """
        lift = lift_trials(case, draws)
        bar = Span.within(1.0, case.bar_mass_spread).at(draws[:, Draw.BAR]) - 1
        uniform = draws[:, MISCOUNT_COLUMN]
        return cls(
            case=case,
            trials=spring_shade_trials(case, lift, draws),
            curve=LoadCurve.of(case.load),
            winding=case_winding(case, draws[:, Draw.WINDING]),
            cloth_scale=Span.within(1.0, case.cloth_mass_spread).at(draws[:, Draw.CLOTH]),
            bar_n=case.load.bar_n * bar,
            miscount_turns=Span.within(1.0, MISCOUNT.value).at(uniform) - 1.0,
            brake_drag_n_m_s=span_of(case.brake_drag_n_m_s or 0.0).at(draws[:, Draw.BRAKE]),
        )

    @property
    def travel_m(self) -> float:
        """Give the raise of the up-stop."""
        return self.case.load.travel_m

    @cached_property
    def least_turns(self) -> Reals:
        """Give the turns that would lift each shade, without a margin, as they are counted."""
        return least_turns(self.trials, 0.0) - self.miscount_turns

    def load_at(self, raise_m: float) -> Reals:
        """Give the load at a raise, the upper value where a row is being picked up."""
        extra = self.curve.stiffness_extra(raise_m, self.cloth_scale)
        return self.curve.load(raise_m, self.cloth_scale) + extra + self.bar_n

    def arm_at(self, raise_m: float) -> Reals:
        """Give the arm at a raise."""
        return self.winding.arm(raise_m)

    def torque_at(self, turns: float, raise_m: float) -> Reals:
        """Give the spring's own torque at a raise, for turns counted at the up-stop."""
        there = self.winding.turns_to_go(raise_m, self.travel_m)
        return self.trials.rate_n_m_turn * (turns + self.miscount_turns + there)

    def lifting_torque(self, turns: float, raise_m: float) -> Reals:
        """Give what is left for lifting at a raise; below zero it does not rise."""
        trials, moment = self.trials, self.arm_at(raise_m) * self.load_at(raise_m)
        drive = (1 - trials.spring_hysteresis) * self.torque_at(turns, raise_m)
        return drive - trials.constant_friction_n_m - moment * (1 + trials.load_friction)

    def holding_torque(self, turns: float, raise_m: float) -> Reals:
        """Give what is left against sinking at a raise; below zero it sinks."""
        trials, moment = self.trials, self.arm_at(raise_m) * self.load_at(raise_m)
        hold = (1 + trials.spring_hysteresis) * self.torque_at(turns, raise_m)
        return hold + trials.constant_friction_n_m - moment * (1 - trials.load_friction)

    def hand_forces(self, turns: float, raise_m: float) -> tuple[Reals, Reals]:
        """Give the scale's readings, drawn slowly down and let slowly up."""
        arm = self.arm_at(raise_m)
        return self.holding_torque(turns, raise_m) / arm, self.lifting_torque(turns, raise_m) / arm

    def braked_seconds(self, turns: float) -> Reals:
        """Give the time of a full rise at the speed at which the brake eats the surplus."""
        heights = np.linspace(0.0, self.travel_m, TIMED_HEIGHTS)
        slowness = [self._slowness(turns, float(height)) for height in heights]
        return np.asarray(np.trapezoid(np.array(slowness), heights, axis=0), dtype=np.float64)

    def _slowness(self, turns: float, raise_m: float) -> Reals:
        arm, spare = self.arm_at(raise_m), self.lifting_torque(turns, raise_m)
        with np.errstate(divide="ignore"):
            return np.where(spare > 0, self.brake_drag_n_m_s / (spare * arm), np.inf)
