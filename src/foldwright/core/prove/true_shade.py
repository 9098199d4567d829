"""Trial shades that can be asked at any height what they would do."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache, cached_property

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtri

from foldwright.core.facts.proving import (
    DISCREPANCY_REACH,
    LOAD_DISCREPANCY,
    LOAD_ROUGHNESS,
)
from foldwright.core.lift.choices import Brake
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.sampling import (
    Draw,
    case_winding,
    lift_trials,
    spring_shade_trials,
)
from foldwright.core.lift.span import TAIL, Span, span_of
from foldwright.core.lift.trials import Trials
from foldwright.core.lift.winding import Winding
from foldwright.core.lift.window import least_turns, most_by_hand, most_by_speed, most_by_spring
from foldwright.core.prove.trouble import SOUND, Range, Trouble
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.load import PanelLoad

Reals = NDArray[np.float64]
MISCOUNT_COLUMN = 9
WANDER_COLUMNS = slice(10, 14)
TOP_COLUMN = 14  # where something is caught or climbed: the height from which on
AILING_COLUMN = 15
DEVIATIONS = float(ndtri(1 - TAIL))
WANDER_HEIGHTS = np.linspace(0.0, 1.0, 4)  # shares of the raise at which a wander is drawn
TIMED_HEIGHTS = 24
STALL_HEIGHTS = 72


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Ailing:
    """What is wrong with each trial shade, in what measure, and from which height on."""

    pull: Reals
    drag_n: Reals
    caught_n: Reals
    climbed: Reals
    from_m: Reals

    @classmethod
    def drawn(cls, trouble: Trouble, draws: Reals, travel_m: float) -> Ailing:
        """Draw the measure of what is wrong, evenly from its range."""
        measure = draws[:, AILING_COLUMN]
        return cls(
            pull=_evenly(trouble.pull, measure),
            drag_n=_evenly(trouble.drag_n, measure),
            caught_n=_evenly(trouble.caught_n, measure),
            climbed=_evenly(trouble.climbed, measure),
            from_m=travel_m * draws[:, TOP_COLUMN],
        )

    def caught_at(self, raise_m: float) -> Reals:
        """Give the force against rising of what is caught, at a raise."""
        return np.where(raise_m >= self.from_m, self.caught_n, 0.0)

    def climbed_at(self, raise_m: float) -> Reals:
        """Give the share of the load that climbed wraps add, at a raise."""
        return np.where(raise_m >= self.from_m, self.climbed, 0.0)


def _evenly(ends: Range, measure: Reals) -> Reals:
    return np.asarray(ends[0] + (ends[1] - ends[0]) * measure, dtype=np.float64)


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
    wander_n: Reals  # load above the model's at each of the wander heights, one row a shade
    rough_top_n: Reals  # and what the place drags at which it is heaviest, fully raised
    ailing: Ailing

    @classmethod
    def drawn(cls, case: LiftCase, draws: Reals, trouble: Trouble = SOUND) -> TrialShades:
        """Draw trial shades.

        Takes: a case with a spring; uniform numbers, one row for each shade and at least
        16 columns; what is wrong with them all, each in its own measure.

        Gives: the shades, each with its own spring, weights, friction and miscount.

        Holds for: as the lift's own trials.

        Source: derived here.

        >>> from foldwright.core.prove.example import CASE
        >>> shades = TrialShades.drawn(CASE, np.full((2, 16), 0.5))
        >>> shades.miscount_turns.tolist()
        [0.0, 0.0]
        """
        lift, curve = lift_trials(case, draws), LoadCurve.of(case.load)
        bar = Span.within(1.0, case.bar_mass_spread).at(draws[:, Draw.BAR]) - 1
        miscount = ndtri(draws[:, MISCOUNT_COLUMN]) / DEVIATIONS
        return cls(
            case=case,
            trials=spring_shade_trials(case, lift, draws),
            curve=curve,
            winding=case_winding(case, draws[:, Draw.WINDING]),
            cloth_scale=Span.within(1.0, case.cloth_mass_spread).at(draws[:, Draw.CLOTH]),
            bar_n=case.load.bar_n * bar,
            miscount_turns=trouble.miscount_turns * miscount,
            brake_drag_n_m_s=_brake(case).at(draws[:, Draw.BRAKE]),
            wander_n=LOAD_DISCREPANCY.value * middle_load(curve) * wander(draws[:, WANDER_COLUMNS]),
            rough_top_n=LOAD_ROUGHNESS.value * middle_load(curve) * ndtri(draws[:, TOP_COLUMN]),
            ailing=Ailing.drawn(trouble, draws, case.load.travel_m),
        )

    @property
    def travel_m(self) -> float:
        """Give the raise of the up-stop."""
        return self.case.load.travel_m

    @property
    def braked(self) -> bool:
        """Tell whether a speed brake of known drag is fitted."""
        return bool(self.brake_drag_n_m_s.max() > 0)

    @property
    def roughness_n(self) -> float:
        """Give how much the load differs from place to place, too fast to be drawn."""
        return float(LOAD_ROUGHNESS.value) * middle_load(self.curve)

    @cached_property
    def felt(self) -> Trials:
        """Give the trials with the load that each shade really has, and what pulls at it."""
        return replace(
            self.trials,
            rate_n_m_turn=self.trials.rate_n_m_turn * self.ailing.pull,
            load_lowered_n=self.trials.load_lowered_n + self.wander_at(0.0),
            load_raised_n=self.trials.load_raised_n
            + self.wander_at(self.travel_m)
            + self.rough_top_n,
        )

    def when_new(self) -> TrialShades:
        """Give the same shades before their springs lost any of their torque."""
        return replace(self, ailing=replace(self.ailing, pull=np.ones_like(self.ailing.pull)))

    @cached_property
    def least_turns(self) -> Reals:
        """Give the turns that would lift each shade, without a margin, as they are counted."""
        return least_turns(self.felt, 0.0) - self.miscount_turns

    @cached_property
    def most_turns(self) -> Reals:
        """Give the most turns that spring, hand and brake allow, as they are counted."""
        limits = [
            most_by_spring(self.felt, self.case.release_turns),
            most_by_hand(self.felt, self.case.hand_force_limit_n),
        ]
        if self.braked:
            limits.append(
                most_by_speed(self.felt, self.brake_drag_n_m_s, self.case.speed_limit_m_s)
            )
        return np.asarray(np.minimum.reduce(limits) - self.miscount_turns, dtype=np.float64)

    @cached_property
    def panel_n(self) -> Reals:
        """Give what the made-up panel weighs, all its cloth and hardware."""
        cloth_n, rest_n = panel_weight(self.case.load)
        return self.cloth_scale * cloth_n + rest_n + self.bar_n

    def wander_at(self, raise_m: float) -> Reals:
        """Give the load above the model's at a raise."""
        place = raise_m / self.travel_m * (WANDER_HEIGHTS.size - 1)
        below = min(int(place), WANDER_HEIGHTS.size - 2)
        share = place - below
        return (1 - share) * self.wander_n[:, below] + share * self.wander_n[:, below + 1]

    def load_at(self, raise_m: float) -> Reals:
        """Give the load at a raise, the upper value where a row is being picked up."""
        extra = self.curve.stiffness_extra(raise_m, self.cloth_scale)
        modelled = self.curve.load(raise_m, self.cloth_scale) + extra
        return modelled + self.bar_n + self.wander_at(raise_m)

    def arm_at(self, raise_m: float) -> Reals:
        """Give the arm at a raise."""
        return self.winding.arm(raise_m)

    def torque_at(self, turns: float, raise_m: float) -> Reals:
        """Give the spring's own torque at a raise, for turns counted at the up-stop."""
        there = self.winding.turns_to_go(raise_m, self.travel_m)
        wound = self.trials.rate_n_m_turn * (turns + self.miscount_turns + there)
        return wound * self.ailing.pull

    def lifting_torque(self, turns: float, raise_m: float) -> Reals:
        """Give what is left for lifting at a raise; below zero it does not rise."""
        return self._lifting(turns, raise_m, self.load_at(raise_m))

    def raised_torque(self, turns: float) -> Reals:
        """Give what is left for lifting fully raised; below zero the top is not reached."""
        return self._lifting(turns, self.travel_m, self.felt.load_raised_n)

    def _lifting(self, turns: float, raise_m: float, load_n: Reals) -> Reals:
        trials, arm, torque = self.trials, self.arm_at(raise_m), self.torque_at(turns, raise_m)
        drive = torque - trials.spring_hysteresis * np.abs(torque) - trials.constant_friction_n_m
        carried = load_n * (1 + trials.load_friction) * (1 + self.ailing.climbed_at(raise_m))
        return drive - arm * (carried + self.ailing.drag_n + self.ailing.caught_at(raise_m))

    def holding_torque(self, turns: float, raise_m: float) -> Reals:
        """Give what is left against sinking at a raise; below zero it sinks."""
        trials, arm, torque = self.trials, self.arm_at(raise_m), self.torque_at(turns, raise_m)
        hold = torque + trials.spring_hysteresis * np.abs(torque) + trials.constant_friction_n_m
        carried = (1 - trials.load_friction) * (1 + self.ailing.climbed_at(raise_m))
        return hold - arm * (self.load_at(raise_m) * carried - self.ailing.drag_n)

    def hand_forces(self, turns: float, raise_m: float) -> tuple[Reals, Reals]:
        """Give the scale's readings, drawn slowly down and let slowly up."""
        arm = self.arm_at(raise_m)
        return self.holding_torque(turns, raise_m) / arm, self.lifting_torque(turns, raise_m) / arm

    def stalls_at(self, turns: float) -> Reals:
        """Give the raise at which each shade, guided, stops by itself; the stop if it arrives."""
        heights = np.linspace(0.0, self.travel_m, STALL_HEIGHTS)
        spare = np.array([self.lifting_torque(turns, float(height)) for height in heights])
        stuck = spare < 0
        above = np.where(stuck.any(axis=0), stuck.argmax(axis=0), STALL_HEIGHTS - 1)
        below = np.maximum(above - 1, 0)
        shades = np.arange(spare.shape[1])
        left, lacking = np.maximum(spare[below, shades], 0.0), -spare[above, shades]
        share = left / np.maximum(left + lacking, 1e-12)
        there = heights[below] + share * (heights[above] - heights[below])
        return np.asarray(np.where(stuck.any(axis=0), there, self.travel_m), dtype=np.float64)

    def braked_seconds(self, turns: float) -> Reals:
        """Give the time of a full rise at the speed at which the brake eats the surplus."""
        heights = np.linspace(0.0, self.travel_m, TIMED_HEIGHTS)
        slowness = [self._slowness(turns, float(height)) for height in heights]
        return np.asarray(np.trapezoid(np.array(slowness), heights, axis=0), dtype=np.float64)

    def _slowness(self, turns: float, raise_m: float) -> Reals:
        arm, spare = self.arm_at(raise_m), self.lifting_torque(turns, raise_m)
        with np.errstate(divide="ignore"):
            return np.where(spare > 0, self.brake_drag_n_m_s / (spare * arm), np.inf)


def _brake(case: LiftCase) -> Span:
    """Give the drag of the brake, none where none is fitted, and what all springs' brakes add."""
    fitted = case.brake is Brake.FITTED and case.brake_drag_n_m_s is not None
    drag = span_of(case.brake_drag_n_m_s or 0.0).times(case.springs_side_by_side)
    return drag if fitted else Span.exact(0.0)


def middle_load(curve: LoadCurve) -> float:
    """Give the load half way up."""
    return float(curve.load(curve.panel.travel_m / 2))


def panel_weight(load: PanelLoad) -> tuple[float, float]:
    """Give what the cloth of a panel weighs, and what hangs on it, in newtons."""
    heights = sum(load.row_spacings_m) + load.top_panel_m
    cloth_n = load.cloth_n_m * (load.skirt_cloth_m + load.fullness * heights)
    lumps = sum(lump.weight_n for lump in load.lumps)
    return cloth_n, load.backing_n_m * heights + load.bar_n + sum(load.rows_n) + lumps


def wander(uniform: Reals) -> Reals:
    """Give standard normal numbers that are alike where their heights are near each other."""
    return np.asarray(ndtri(uniform) @ _likeness().T, dtype=np.float64)


@cache
def _likeness() -> Reals:
    apart = np.subtract.outer(WANDER_HEIGHTS, WANDER_HEIGHTS) / DISCREPANCY_REACH.value
    return np.asarray(np.linalg.cholesky(np.exp(-(apart**2) / 2)), dtype=np.float64)
