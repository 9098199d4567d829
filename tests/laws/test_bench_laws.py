"""What cancels at the bench cancels exactly, whatever the shade."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from tests.core.lift.worked import LIKELIEST
from tests.laws.shades import between
from tests.laws.test_lift_laws import cord_cases

from foldwright.core.lift.givens import LiftCase
from foldwright.core.prove.true_shade import TrialShades

CLOSE = 1e-9


def shade_of(case: LiftCase) -> TrialShades:
    return TrialShades.drawn(case, LIKELIEST)


def middle(shade: TrialShades, turns: float, raise_m: float) -> float:
    down, up = shade.hand_forces(turns, raise_m)
    return float(down[0] + up[0]) / 2


@given(cord_cases(), between(0, 1), between(0, 30), between(0, 0.3), between(0, 0.2))
def test_friction_cancels_in_the_mean_of_the_scale(
    case: LiftCase, share: float, turns: float, rubbing: float, still: float
) -> None:
    rough = replace(
        case, load_friction=rubbing, constant_friction_n_m=still, spring_hysteresis=rubbing / 2
    )
    raise_m = share * case.load.travel_m
    expected = middle(shade_of(case), turns, raise_m)
    assert middle(shade_of(rough), turns, raise_m) == pytest.approx(expected, rel=CLOSE, abs=CLOSE)


@given(cord_cases(), between(0, 1), between(0, 30))
def test_nothing_but_friction_is_in_half_the_difference(
    case: LiftCase, share: float, turns: float
) -> None:
    smooth = replace(case, load_friction=0.0, constant_friction_n_m=0.0, spring_hysteresis=0.0)
    down, up = shade_of(smooth).hand_forces(turns, share * case.load.travel_m)
    assert down == pytest.approx(up, rel=CLOSE, abs=CLOSE)


@given(cord_cases(), between(0, 0.45), between(0.55, 1), between(0, 30))
def test_a_scale_at_two_heights_gives_the_rate(
    case: LiftCase, low: float, high: float, turns: float
) -> None:
    shade, travel = shade_of(case), case.load.travel_m
    heights = (low * travel, high * travel)
    pulls = [middle(shade, turns, at) + float(shade.load_at(at)[0]) for at in heights]
    to_go = [float(shade.winding.turns_to_go(at, travel)[0]) for at in heights]
    rate = float(shade.arm_at(0.0)[0]) * (pulls[0] - pulls[1]) / (to_go[0] - to_go[1])
    assert rate == pytest.approx(float(shade.trials.rate_n_m_turn[0]), rel=1e-7)


@given(cord_cases(), between(0.05, 0.95))
def test_a_guided_stall_gives_the_least_turns(case: LiftCase, share: float) -> None:
    """Constant friction drops out; what is missing is the rest of the way and of the load."""
    shade, travel = shade_of(case), case.load.travel_m
    raise_m = share * travel
    arm, load = float(shade.arm_at(raise_m)[0]), float(shade.load_at(raise_m)[0])
    trials = shade.trials
    drive = float((trials.rate_n_m_turn * (1 - trials.spring_hysteresis))[0])
    wound = -float(shade.lifting_torque(0.0, raise_m)[0]) / drive
    assume(wound > 0)
    assert shade.lifting_torque(wound, raise_m) == pytest.approx(0.0, abs=CLOSE)
    to_go = float(shade.winding.turns_to_go(raise_m, travel)[0])
    heavier = float(trials.load_raised_n[0]) - load
    missing = to_go + (1 + float(trials.load_friction[0])) * arm * heavier / drive
    assert wound + missing == pytest.approx(float(shade.least_turns[0]), rel=CLOSE, abs=1e-8)


@given(cord_cases(), between(0, 1), between(0.5, 30))
def test_with_more_turns_no_stall_is_lower(case: LiftCase, share: float, turns: float) -> None:
    shade = shade_of(case)
    fewer = shade.stalls_at(turns * share)
    assert np.all(fewer <= shade.stalls_at(turns) + CLOSE)
