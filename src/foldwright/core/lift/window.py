"""The turns that may be wound into a spring at the up-stop: one function for each limit.

Friction opposes motion, so each state has its own signs: rising, the spring loses its
hysteresis and the load gains its friction; pulling down, both turn round. There is no
single efficiency.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from foldwright.core.lift.span import TAIL, Reals, quantiles
from foldwright.core.lift.trials import LiftTrials, Trials


def torque_needed(trials: LiftTrials) -> Reals:
    """Give the torque that raises the shade at its heaviest, fully raised, friction included.

    Takes: trial shades.

    Gives: newton metres at the tube, one for each trial.

    Holds for: slow raising; load and arm never fall on the way up, so the top is the worst.

    Source: derived here.

    >>> from foldwright.core.lift.trials import EXAMPLE
    >>> round(float(torque_needed(EXAMPLE)), 3)
    0.278
    """
    return trials.arm_raised_m * trials.load_raised_n * (1 + trials.load_friction) + (
        trials.constant_friction_n_m
    )


def least_turns(trials: Trials, load_margin: float) -> Reals:
    """Give the least turns at the up-stop that lift the shade all the way.

    Takes: trial shades; the margin on the load, as a share.

    Gives: turns, one for each trial.

    Holds for: slow raising; load and arm never fall on the way up.

    Source: derived here.

    >>> from foldwright.core.lift.trials import EXAMPLE
    >>> round(float(least_turns(EXAMPLE, 0.1)), 2)
    9.09
    """
    frictionless = trials.arm_raised_m * trials.load_raised_n
    lifted = frictionless * (1 + trials.load_friction) * (1 + load_margin)
    torque = lifted + trials.constant_friction_n_m
    return torque / (trials.rate_n_m_turn * (1 - trials.spring_hysteresis))


def most_by_spring(trials: Trials, release_turns: float) -> Reals:
    """Give the most turns at the up-stop that keep the spring safe when fully lowered.

    Takes: trial shades; the further turns that a release pull needs.

    Gives: turns, one for each trial; endless where the spring's strength is unknown.

    Holds for: springs whose greatest turns are counted from unwound.

    Source: derived here.

    >>> from foldwright.core.lift.trials import EXAMPLE
    >>> float(most_by_spring(EXAMPLE, 0.5))
    14.5
    """
    if trials.greatest_turns is None:
        return np.full_like(trials.travel_turns, math.inf)
    return trials.greatest_turns - trials.travel_turns - release_turns


def most_by_hand(trials: Trials, hand_force_limit_n: float) -> Reals:
    """Give the most turns at the up-stop that a hand can still pull down to the bottom.

    Takes: trial shades; the greatest force at the bar, in newtons.

    Gives: turns, one for each trial; below zero where even an unwound spring pulls too hard.

    Holds for: slow pulling; worst fully lowered, where spring and arm favour the spring most.

    Source: derived here.

    >>> from foldwright.core.lift.trials import EXAMPLE
    >>> round(float(most_by_hand(EXAMPLE, 50.0)), 2)
    18.31
    """
    held = hand_force_limit_n + trials.load_lowered_n * (1 - trials.load_friction)
    torque = held * trials.arm_lowered_m - trials.constant_friction_n_m
    return torque / (trials.rate_n_m_turn * (1 + trials.spring_hysteresis)) - trials.travel_turns


def most_by_speed(trials: Trials, brake_drag_n_m_s: Reals, speed_limit_m_s: float) -> Reals:
    """Give the most turns at the up-stop with which a braked shade still arrives gently.

    Takes: trial shades; drag torque per angular speed of the brake in N.m.s, one for each
    trial; the greatest speed of the bar at the stop, in m/s.

    Gives: turns, one for each trial.

    Holds for: viscous brakes strong enough that the speed follows the surplus at once.

    Source: derived here.

    >>> from foldwright.core.lift.trials import EXAMPLE
    >>> round(float(most_by_speed(EXAMPLE, np.asarray(0.012), 0.5)), 2)
    17.33
    """
    lifted = trials.arm_raised_m * trials.load_raised_n * (1 + trials.load_friction)
    dragged = brake_drag_n_m_s * speed_limit_m_s / trials.arm_raised_m
    torque = lifted + dragged + trials.constant_friction_n_m
    return torque / (trials.rate_n_m_turn * (1 - trials.spring_hysteresis))


@dataclass(frozen=True, kw_only=True, slots=True)
class Recommendation:
    """Turns to wind, whether they are certain, and how often they satisfy every limit."""

    turns: float
    certain: bool
    chance: float


def recommend(least: Reals, most: Reals, step_turns: float) -> Recommendation:
    """Choose the turns to wind: low inside the window, since more buys only speed and force.

    Takes: least and most turns, one for each trial; the step in which turns can be wound.

    Gives: the 95 % value of the least turns rounded up to the step if it lies below the
    5 % value of the most; otherwise the step that satisfies most of the trials.

    Holds for: any number of trials; one trial is certain.

    Source: *common practice* for winding in steps, derived here otherwise.

    >>> recommend(np.array([9.6, 9.8]), np.array([12.0, 12.2]), 0.5)
    Recommendation(turns=10.0, certain=True, chance=1.0)
    """
    (lift,) = quantiles(least, (1 - TAIL,))
    (limit,) = quantiles(most, (TAIL,))
    turns = _up_to_step(lift, step_turns)
    if turns <= limit:
        return Recommendation(turns=turns, certain=True, chance=chance(least, most, turns))
    return _likeliest(least, most, step_turns)


def chance(least: Reals, most: Reals, turns: float) -> float:
    """Give the share of the trials in which the turns satisfy every limit.

    Takes: least and most turns, one for each trial; turns.

    Gives: a share between 0 and 1.

    Source: derived here.

    >>> chance(np.array([9.0, 11.0]), np.array([14.0, 14.0]), 10.0)
    0.5
    """
    return float(np.mean((least <= turns) & (turns <= most)))


def _up_to_step(turns: float, step_turns: float) -> float:
    """Round up to what can be wound; at least one step, for an unwound spring holds nothing."""
    whole_steps = math.ceil(turns / step_turns - _HAIR)
    return max(whole_steps, 1) * step_turns


_HAIR = 1e-9  # a count that is whole but for the last binary digit is whole


def _likeliest(least: Reals, most: Reals, step_turns: float) -> Recommendation:
    """Try every step at which one more trial begins to lift, and take the best, lowest first."""
    possible = least <= most
    starts, ends = np.sort(least[possible]), np.sort(most[possible])
    if not starts.size:
        turns = _up_to_step(float(least.min()), step_turns)
        return Recommendation(turns=turns, certain=False, chance=0.0)
    tried = np.unique(np.maximum(np.ceil(starts / step_turns - _HAIR), 1)) * step_turns
    satisfied = np.searchsorted(starts, tried, side="right") - np.searchsorted(ends, tried)
    best = int(np.argmax(satisfied))
    return Recommendation(
        turns=float(tried[best]), certain=False, chance=float(satisfied[best] / least.size)
    )
