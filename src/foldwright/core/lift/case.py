"""The answer about one lift: what it must do, and how far to wind its spring.

A few thousand trial shades are drawn from the ranges of one case, and each limit is
computed for all of them at once.
"""

from __future__ import annotations

import numpy as np

from foldwright.core.facts.balancing import NARROW_CHANCE
from foldwright.core.lift import arrival, window
from foldwright.core.lift.balance import Verdict
from foldwright.core.lift.case_answer import CaseAnswer, CaseWindow, Limit
from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.lift.friction import lowered_stand
from foldwright.core.lift.givens import LiftCase, check_case
from foldwright.core.lift.sampling import Draw, lift_trials, spring_shade_trials, with_the_likeliest
from foldwright.core.lift.span import TAIL, Reals, Span, quantiles, span_of
from foldwright.core.lift.trials import LiftTrials, Trials

__all__ = ["LiftCase", "answer_case"]


def answer_case(case: LiftCase, draws: Reals) -> CaseAnswer:
    """Say what a lift must do, and which turns, if any, satisfy every limit.

    Takes: a case in SI; uniform numbers between 0 and 1, one row for each trial and at
    least 16 columns, made by the caller.

    Gives: spans of load, arm, turns and torque, and with a spring the window of turns,
    the turns to wind and the verdict.

    Raises: ValueError or ImpossiblePanel where the case contradicts itself.

    Holds for: slow raising; a spring whose torque is proportional to its turns.

    Source: derived here.

    >>> from foldwright.core.lift.spring import SpringCase
    >>> from foldwright.core.weigh.load import PanelLoad
    >>> panel = PanelLoad(
    ...     row_spacings_m=(0.2,) * 7, stacked_pitch_m=0.005, skirt_cloth_m=0.069,
    ...     top_panel_m=0.14, cloth_n_m=5.59214, bar_n=2.942, rows_n=(0.402073,) * 8,
    ...     travel_m=1.407,
    ... )
    >>> answer = answer_case(
    ...     LiftCase(
    ...         load=panel, tube_outside_m=0.038, cord_diameter_m=0.0014,
    ...         constant_friction_n_m=0.03, load_friction=0.12, spring_hysteresis=0.05,
    ...         cloth_mass_spread=0.0, load_margin=0.1, release_turns=0.5,
    ...         spring=SpringCase(rate_n_m_turn=0.034348, greatest_torque_n_m=0.8493),
    ...         brake=Brake.NONE, lock=Lock.ONE_WAY,
    ...     ),
    ...     np.full((1, 16), 0.5),
    ... )
    >>> answer.verdict.value, answer.window.recommended_turns
    ('works, guided by hand', 12.0)
    """
    check_case(case)
    trials = with_the_likeliest(draws)
    lift = lift_trials(case, trials)
    found = None if case.spring is None else _window(case, lift, trials)
    return CaseAnswer(
        verdict=_verdict(case, found),
        load_lowered_n=_span(lift.load_lowered_n),
        load_raised_n=_span(lift.load_raised_n),
        arm_lowered_m=_span(lift.arm_lowered_m),
        arm_raised_m=_span(lift.arm_raised_m),
        travel_turns=_span(lift.travel_turns),
        torque_needed_n_m=_span(window.torque_needed(lift)),
        window=found,
    )


def _window(case: LiftCase, lift: LiftTrials, draws: Reals) -> CaseWindow:
    """Compute every limit for all trials, then choose the turns."""
    trials = spring_shade_trials(case, lift, draws)
    least = window.least_turns(trials, case.load_margin)
    by_spring = window.most_by_spring(trials, case.release_turns)
    by_hand = window.most_by_hand(trials, case.hand_force_limit_n)
    by_speed = _by_speed(case, trials, draws)
    limits = {Limit.SPRING: by_spring, Limit.HAND: by_hand}
    if by_speed is not None and case.brake is Brake.FITTED:
        limits[Limit.SPEED] = by_speed
    most = np.minimum.reduce(list(limits.values()))
    choice = window.recommend(least[1:], most[1:], case.winding_step_turns)
    verdict = _turns_verdict(case, trials, choice)
    turns = choice.turns if case.turns is None else case.turns
    return CaseWindow(
        verdict=verdict,
        rate_n_m_turn=_span(trials.rate_n_m_turn),
        least_turns=_span(least),
        most_by_spring=None if trials.greatest_turns is None else _span(by_spring),
        most_by_hand=_span(by_hand),
        most_by_speed=None if by_speed is None else _span(by_speed),
        most_turns=_span(most),
        likeliest_turns=choice.turns,
        recommended_turns=None if verdict is Verdict.NOTHING_FITS else choice.turns,
        chance=choice.chance,
        limited_below_by=_below(least, case.winding_step_turns),
        limited_above_by=min(limits, key=lambda limit: quantiles(limits[limit][1:], (TAIL,))),
        turns=turns,
        turns_chance=window.chance(least[1:], most[1:], turns),
        hand_force_n=_span(lowered_stand(trials, turns).hand_down_n),
        spring_energy_j=_span(arrival.spring_energy(trials, turns)),
        arrival_energy_j=_span(arrival.arrival_energy(trials, turns)),
        arrival_speed_m_s=_span(arrival.arrival_speed(trials, turns)),
    )


def _span(draws: Reals) -> Span:
    """Give the likeliest, drawn first, and the middle 90 % of the others."""
    return Span.of_draws(float(draws[0]), draws[1:])


def _by_speed(case: LiftCase, trials: Trials, draws: Reals) -> Reals | None:
    if case.brake is Brake.NONE or case.brake_drag_n_m_s is None:
        return None
    drag = span_of(case.brake_drag_n_m_s).at(draws[:, Draw.BRAKE]) * case.springs_side_by_side
    return window.most_by_speed(trials, drag, case.speed_limit_m_s)


def _below(least: Reals, step_turns: float) -> Limit:
    (lift,) = quantiles(least[1:], (1 - TAIL,))
    return Limit.LOAD if lift > step_turns else Limit.STEP


def _turns_verdict(case: LiftCase, trials: Trials, choice: window.Recommendation) -> Verdict:
    """Say what the turns allow, as if what is not known about brake and lock were absent."""
    if case.lock is Lock.NONE and not lowered_stand(trials, choice.turns).stays[0]:
        return Verdict.NOTHING_FITS
    if choice.certain:
        return Verdict.WORKS if case.brake is Brake.FITTED else Verdict.BY_HAND
    return Verdict.NARROW if choice.chance >= NARROW_CHANCE.value else Verdict.NOTHING_FITS


def _verdict(case: LiftCase, found: CaseWindow | None) -> Verdict:
    """Say what can be promised: nothing while brake, lock or the spring's strength is unknown.

    What nothing can rescue is said even so.
    """
    if found is None:
        return Verdict.ASK
    unknown = Brake.UNKNOWN is case.brake or Lock.UNKNOWN is case.lock
    if (unknown or found.most_by_spring is None) and found.verdict is not Verdict.NOTHING_FITS:
        return Verdict.ASK
    return found.verdict
