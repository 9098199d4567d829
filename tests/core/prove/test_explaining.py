"""Each symptom is explained by a cause worked through for the shade at hand."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest
from scipy.stats import qmc

from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.prove.advice import Explained, Symptom
from foldwright.core.prove.example import CASE
from foldwright.core.prove.explaining import explain_symptom
from foldwright.core.prove.learning import learn
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill

DRAWS = qmc.Sobol(16, seed=1).random(512)
LEARNED = learn(CASE, (), DRAWS)


def explained(symptom: Symptom, turns: float = 9.0) -> Explained:
    return explain_symptom(symptom, LEARNED, turns)


@pytest.mark.parametrize("symptom", Symptom, ids=lambda each: each.value)
@pytest.mark.parametrize("system", System)
def test_each_is_told_with_its_numbers_and_its_remedy(symptom: Symptom, system: System) -> None:
    found = explained(symptom)
    told = fill(found.sentence, found.figures, system)
    assert "{" not in told
    assert "nan" not in told
    assert told.endswith(".")
    assert found.remedy.endswith(".")


def test_more_turns_stall_higher_and_arrive_faster() -> None:
    low, high = (explained(Symptom.STALLS, turns).figures[1].value for turns in (5.0, 8.0))
    assert low < high
    slow, fast = (
        explained(Symptom.RISES_TOO_FAST, turns).figures[1].value for turns in (12.0, 16.0)
    )
    assert slow < fast


def test_without_a_brake_even_the_fewest_turns_arrive_too_fast() -> None:
    figures = explained(Symptom.RISES_TOO_FAST).figures
    assert figures[5].value > figures[3].value
    assert "brake" in explained(Symptom.RISES_TOO_FAST).remedy


def test_with_a_brake_turns_can_be_let_out() -> None:
    braked = replace(CASE, brake=Brake.FITTED, brake_drag_n_m_s=0.02)
    found = explain_symptom(Symptom.RISES_TOO_FAST, learn(braked, (), DRAWS), 14.0)
    assert found.remedy.startswith("Let turns out")


def test_what_is_missing_for_holding_falls_turn_by_turn() -> None:
    few, more = (explained(Symptom.SINKS, turns).figures[3].value for turns in (3.0, 4.0))
    assert few - more == pytest.approx(1.0, abs=0.02)


def test_a_shade_that_should_hold_is_not_told_to_be_wound() -> None:
    assert "should not sink" in explained(Symptom.SINKS, 12.0).sentence
    assert "are missing" in explained(Symptom.SINKS, 2.0).sentence


def test_behind_a_two_way_lock_the_lock_is_to_blame() -> None:
    locked = learn(replace(CASE, lock=Lock.TWO_WAY), (), DRAWS)
    assert "mend the lock" in explain_symptom(Symptom.SINKS, locked, 3.0).remedy


def test_a_climbed_wrap_gains_a_circle_of_the_cord_each_turn() -> None:
    _, gain, turns, out = explained(Symptom.HEM_CROOKED).figures
    assert gain.value.in_metres == pytest.approx(2 * pi * 0.0014, abs=1e-6)
    assert out.value.in_metres == pytest.approx(turns.value * gain.value.in_metres, rel=1e-3)


def test_a_release_asks_for_its_turns_round_the_tube() -> None:
    turns, pull, _ = explained(Symptom.WILL_NOT_RELEASE).figures
    assert pull.value.in_metres == pytest.approx(turns.value * 2 * pi * 0.0197, rel=2e-3)
