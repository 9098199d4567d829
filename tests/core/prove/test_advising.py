"""What to turn, which way, how far, and how surely."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import qmc

from foldwright.core.facts.house import house_habits
from foldwright.core.lift.choices import Brake
from foldwright.core.lift.spring import SpringCase
from foldwright.core.measure.opening import Mount
from foldwright.core.prove.advising import advise
from foldwright.core.prove.asking import next_best
from foldwright.core.prove.example import CASE
from foldwright.core.prove.learning import learn
from foldwright.core.prove.observing import FullRise, GuidedStall, ScalePair, Weighed
from foldwright.core.quantity.rounding import System
from foldwright.core.rig import example as e
from foldwright.core.rig.headrail import Headrail
from foldwright.core.rig.rigging import rig_headrail
from foldwright.core.why.telling import fill, show, tell

DRAWS = qmc.Sobol(16, seed=1).random(4096)
EASY = replace(CASE, hand_force_limit_n=200.0, spring=SpringCase(rate_n_m_turn=0.034348))


def rig_it() -> Headrail:
    answer = rig_headrail(
        Mount(), e.SIZE, e.LAYOUT, e.BALANCE, e.WEIGHTS, e.CHOSEN, e.LIFT, house_habits()
    )
    assert answer.result is not None
    return answer.result


STALLED = [GuidedStall(turns=8.0, raise_m=1.1)]


def test_too_few_turns_are_wound_in() -> None:
    advice = advise(learn(EASY, STALLED, DRAWS), 8.0)
    assert advice.change_turns.value > 0
    assert advice.turns.value == 8.0 + advice.change_turns.value
    assert advice.chance.value > advice.chance_now.value
    assert advice.turns.value >= advice.least_turns.high


def test_too_many_turns_are_let_out() -> None:
    rises = [FullRise(turns=6.0, rose=True), ScalePair(turns=24.0, raise_m=0.3, down_n=66, up_n=56)]
    advice = advise(learn(CASE, rises, DRAWS), 24.0)
    assert advice.change_turns.value < 0


def test_turns_that_are_sure_enough_are_left_alone() -> None:
    learned = learn(EASY, STALLED, DRAWS)
    best = advise(learned, 8.0).turns.value
    again = advise(learned, best)
    assert again.change_turns.value == 0.0
    assert again.direction is None


def test_turns_come_in_winding_steps() -> None:
    advice = advise(learn(CASE, STALLED, DRAWS), 8.0)
    assert (advice.turns.value / CASE.winding_step_turns) % 1 == 0


@pytest.mark.parametrize(("turns", "winds"), [(6.0, True), (30.0, False)])
def test_the_direction_is_that_of_the_headrail(turns: float, winds: bool) -> None:  # noqa: FBT001 - a row of a table
    headrail = rig_it()
    advice = advise(learn(CASE, STALLED, DRAWS), turns, headrail)
    assert advice.direction is not None
    assert (advice.direction.value == headrail.wind_direction.value) is winds
    assert advice.end is headrail.spring_side


@pytest.mark.parametrize("system", System)
def test_every_figure_of_the_advice_says_why(system: System) -> None:
    advice = advise(learn(CASE, STALLED, DRAWS), 8.0, rig_it())
    for name in advice.__dataclass_fields__:
        figure = getattr(advice, name)
        if name != "contradicted":
            assert show(figure, system)
            assert "{" not in tell(figure, system)


def test_a_brake_limits_the_turns_by_the_speed_at_the_stop() -> None:
    braked = replace(EASY, brake=Brake.FITTED, brake_drag_n_m_s=0.004)
    free, limited = (learn(each, STALLED, DRAWS) for each in (EASY, braked))
    assert advise(limited, 8.0).most_turns.value < advise(free, 8.0).most_turns.value - 5


def test_a_contradicted_shade_is_called_one() -> None:
    seen = [FullRise(turns=6.0, rose=True), GuidedStall(turns=13.0, raise_m=0.3)]
    assert advise(learn(CASE, seen, DRAWS), 13.0).contradicted
    assert not advise(learn(CASE, STALLED, DRAWS), 8.0).contradicted


def test_the_next_step_expected_to_help_does_help() -> None:
    learned = learn(CASE, (), DRAWS)
    first = next_best(learned, (), 12.0)[0]
    assert first.kind == "guided stall"
    turns = first.figures[0].value
    raise_m = learned.span(learned.shades.stalls_at(turns)).likely
    after = learn(CASE, [GuidedStall(turns=turns, raise_m=raise_m)], DRAWS)
    span = after.span(after.shades.least_turns)
    assert span.high - span.low == pytest.approx(first.width_after.value, rel=0.35)


def test_steps_are_ranked_and_none_widens() -> None:
    steps = next_best(learn(CASE, STALLED, DRAWS), STALLED, 8.0)
    widths = [step.width_after.value for step in steps]
    assert widths == sorted(widths)
    assert all(step.width_after.value <= step.width_now.value for step in steps)
    assert all("{" not in fill(step.instruction, step.figures, System.INCH) for step in steps)


def test_what_was_weighed_is_not_asked_again_nor_a_hung_spring_taken_out() -> None:
    seen = [*STALLED, Weighed(mass_kg=1.55)]
    kinds = {step.kind for step in next_best(learn(CASE, seen, DRAWS), seen, 8.0)}
    assert "panel weighed" not in kinds
    assert "spring torque" not in kinds


def test_the_same_stall_is_not_proposed_twice() -> None:
    steps = next_best(learn(CASE, STALLED, DRAWS), STALLED, 8.0)
    stalls = [step.figures[0].value for step in steps if step.kind == "guided stall"]
    assert 8.0 not in stalls


def test_no_observation_leaves_the_weights_even() -> None:
    weights = learn(CASE, (), DRAWS).weights
    assert np.allclose(weights, 1 / len(DRAWS))
