"""From one shade's ranges to many trial shades, all drawn at once."""

from __future__ import annotations

from dataclasses import fields
from enum import IntEnum

import numpy as np

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Reals, Span, span_of
from foldwright.core.lift.spring import SpringCase, spring_trials
from foldwright.core.lift.trials import LiftTrials, Trials
from foldwright.core.lift.winding import CordWinding, TapeWinding, Winding
from foldwright.core.weigh.curve import LoadCurve


class Draw(IntEnum):
    """Which column of the draws decides which uncertain input."""

    RATE = 0
    STRENGTH = 1
    CONSTANT_FRICTION = 2
    LOAD_FRICTION = 3
    HYSTERESIS = 4
    CLOTH = 5
    BAR = 6
    WINDING = 7
    BRAKE = 8


DRAW_COLUMNS = 16


def with_the_likeliest(draws: Reals) -> Reals:
    """Put the likeliest shade before all drawn ones: every uniform number one half."""
    if draws.ndim != 2 or draws.shape[1] < DRAW_COLUMNS:  # noqa: PLR2004 - rows and columns
        message = f"draws: {draws.shape} is not rows of {DRAW_COLUMNS} uniform numbers."
        raise ValueError(message)
    return np.vstack((np.full((1, draws.shape[1]), 0.5), draws))


def lift_trials(case: LiftCase, draws: Reals) -> LiftTrials:
    """Draw trial shades: load, arms, turns of travel and friction.

    Takes: a case; uniform numbers, one row for each trial and at least 16 columns.

    Gives: what the lift must do for each trial.

    Holds for: slow raising up to the design travel.

    Source: derived here.

    >>> from foldwright.core.weigh.load import PanelLoad
    >>> panel = PanelLoad(
    ...     row_spacings_m=(0.2,), stacked_pitch_m=0.0, skirt_cloth_m=0.1, top_panel_m=0.2,
    ...     cloth_n_m=5.0, bar_n=3.0, rows_n=(0.5, 0.5), travel_m=0.3,
    ... )
    >>> case = LiftCase(load=panel, tube_outside_m=0.038, cord_diameter_m=0.0014)
    >>> lift_trials(case, np.full((1, 16), 0.5)).load_lowered_n.round(3).tolist()
    [4.0]
    """
    curve, winding = LoadCurve.of(case.load), case_winding(case, draws[:, Draw.WINDING])
    travel = case.load.travel_m
    cloth = Span.within(1.0, case.cloth_mass_spread).at(draws[:, Draw.CLOTH])
    bar = case.load.bar_n * (Span.within(1.0, case.bar_mass_spread).at(draws[:, Draw.BAR]) - 1)
    raised = curve.greatest_load(None, cloth) + curve.stiffness_extra(travel, cloth) + bar
    arm = winding.arm(travel)
    return LiftTrials(
        constant_friction_n_m=span_of(case.constant_friction_n_m).at(
            draws[:, Draw.CONSTANT_FRICTION]
        ),
        load_friction=span_of(case.load_friction).at(draws[:, Draw.LOAD_FRICTION]),
        load_lowered_n=curve.load_lowered(cloth) + bar,
        load_raised_n=raised,
        arm_lowered_m=winding.arm(0.0),
        arm_raised_m=arm,
        travel_turns=winding.turns(travel),
        work_j=curve.energy(travel, cloth) + bar * travel,
        moving_kg=raised / GRAVITY.value + case.turning_inertia_kg_m2 / arm**2,
    )


def case_winding(case: LiftCase, draws: Reals) -> Winding:
    """Give the winding of all trial shades at once.

    Takes: a case; uniform numbers, one for each trial, that decide cord or tape.

    Gives: a winding whose arms and turns are arrays.

    Source: derived here.

    >>> from foldwright.core.weigh.load import PanelLoad
    >>> panel = PanelLoad(
    ...     row_spacings_m=(), stacked_pitch_m=0.0, skirt_cloth_m=0.1, top_panel_m=0.2,
    ...     cloth_n_m=5.0, bar_n=3.0, rows_n=(0.5,), travel_m=0.1,
    ... )
    >>> case = LiftCase(load=panel, tube_outside_m=0.038, cord_diameter_m=0.0014)
    >>> case_winding(case, np.full(1, 0.5)).arm(0.0).round(4).tolist()
    [0.0197]
    """
    radius = case.tube_outside_m / 2
    if case.cord_diameter_m is not None:
        return CordWinding(
            tube_radius_m=radius,
            cord_diameter_m=span_of(case.cord_diameter_m).at(draws),
            safety_wraps=case.safety_wraps,
        )
    return TapeWinding(
        tube_radius_m=radius,
        tape_thickness_m=span_of(case.tape_thickness_m or 0.0).at(draws),
        tape_width_m=0.0,
        safety_wraps=case.safety_wraps,
    )


def spring_shade_trials(case: LiftCase, lift: LiftTrials, draws: Reals) -> Trials:
    """Give trial shades with a trial spring each.

    Takes: a case with a spring; its trial lifts; the draws that they were made from.

    Gives: the trials, springs included.

    Source: derived here.

    >>> from foldwright.core.weigh.load import PanelLoad
    >>> panel = PanelLoad(
    ...     row_spacings_m=(), stacked_pitch_m=0.0, skirt_cloth_m=0.1, top_panel_m=0.2,
    ...     cloth_n_m=5.0, bar_n=3.0, rows_n=(0.5,), travel_m=0.1,
    ... )
    >>> case = LiftCase(
    ...     load=panel, tube_outside_m=0.038, cord_diameter_m=0.0014,
    ...     spring=SpringCase(rate_n_m_turn=0.03, greatest_torque_n_m=0.8),
    ... )
    >>> draws = np.full((1, 16), 0.5)
    >>> spring_shade_trials(case, lift_trials(case, draws), draws).rate_n_m_turn.tolist()
    [0.03]
    """
    spring = spring_trials(
        case.spring or SpringCase(),
        draws[:, Draw.RATE],
        draws[:, Draw.STRENGTH],
        side_by_side=case.springs_side_by_side,
    )
    return Trials(
        **{part.name: getattr(lift, part.name) for part in fields(LiftTrials)},
        rate_n_m_turn=spring.rate_n_m_turn,
        greatest_turns=spring.greatest_turns,
        spring_hysteresis=span_of(case.spring_hysteresis).at(draws[:, Draw.HYSTERESIS]),
    )
