"""What cannot be is asked about in one sentence; what proves nothing is refused with its reason."""

from __future__ import annotations

from dataclasses import replace
from math import inf, nan

import numpy as np
import pytest
from benchmarks.simulated_bench import TrueShade, some_case
from scipy.stats import qmc

from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.prove.learning import learn
from foldwright.core.prove.noting import FreeStall, TurnsWound
from foldwright.core.prove.observing import (
    FullRise,
    GuidedStall,
    Holding,
    Observation,
    RiseTime,
    ScaleForce,
    ScalePair,
    SpringTorque,
    Way,
    Weighed,
)
from foldwright.core.prove.questioning import questions, taken
from foldwright.core.prove.true_shade import TrialShades
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill

DRAWS = qmc.Sobol(16, seed=1).random(1024)
CASE = replace(some_case(np.random.default_rng(3)), hand_force_limit_n=60.0)
TRAVEL = CASE.load.travel_m
LIKELY = TrialShades.drawn(CASE, np.full((1, 16), 0.5))

WEIGHED = Weighed(mass_kg=float(LIKELY.panel_n[0]) / 9.80665)


def asked(*observations: Observation) -> list[tuple[tuple[int, ...], str]]:
    return [(each.about, each.finding.id) for each in questions(CASE, observations, DRAWS)]


@pytest.mark.parametrize(
    ("observation", "name"),
    [
        (GuidedStall(turns=8.0, raise_m=TRAVEL + 0.05), "prove.above-the-stop"),
        (GuidedStall(turns=8.0, raise_m=-0.01), "prove.below-the-bottom"),
        (GuidedStall(turns=400.0, raise_m=1.0), "prove.turns-miscounted"),
        (TurnsWound(turns=400.0), "prove.turns-miscounted"),
        (TurnsWound(turns=-2.0), "prove.no-turns"),
        (TurnsWound(turns=45.0), "prove.overwound"),
        (GuidedStall(turns=nan, raise_m=1.0), "prove.no-number"),
        (Weighed(mass_kg=inf), "prove.no-number"),
        (Weighed(mass_kg=0.0), "prove.nothing"),
        (Weighed(mass_kg=-1.0), "prove.nothing"),
        (Weighed(mass_kg=1400.0), "prove.far-off"),
        (SpringTorque(turns=15.0, torque_n_m=0.0), "prove.nothing"),
        (SpringTorque(turns=0.0, torque_n_m=0.3), "prove.no-turns"),
        (SpringTorque(turns=15.0, torque_n_m=30.0), "prove.far-off"),
        (
            ScalePair(turns=11.0, raise_m=0.4, down_n=20.0, up_n=31.0),
            "prove.friction-backwards",
        ),
        (ScaleForce(turns=11.0, raise_m=0.4, force_n=-30.0, way=Way.DOWN), "prove.far-off"),
        (ScaleForce(turns=11.0, raise_m=0.4, force_n=400.0, way=Way.UP), "prove.far-off"),
        (FreeStall(turns=8.0, raise_m=1.2), "prove.free-stall"),
        (RiseTime(turns=11.0, seconds=2.0), "prove.time-without-brake"),
        (RiseTime(turns=11.0, seconds=0.0), "prove.nothing"),
    ],
    ids=lambda each: str(each)[:40],
)
def test_it_is_questioned_in_one_sentence(observation: Observation, name: str) -> None:
    (question,) = questions(CASE, [observation], DRAWS)
    assert (question.about, question.finding.id) == ((0,), name)
    for system in System:
        told = fill(question.finding.sentence, question.finding.figures, system)
        assert told.endswith(".")
        assert told.count(". ") == 0
        assert "{" not in told
    assert question.finding.remedies


def test_sound_observations_are_not_questioned() -> None:
    chance = np.random.default_rng(8)
    true = TrueShade.drawn(CASE, chance)
    stall = true.stall(8.0, chance)
    assert stall is not None
    seen = [true.weighed(chance), true.spring_torque(15.0, chance), stall]
    assert asked(*seen, *(true.scale(11.0, share, chance) for share in (0.25, 0.75))) == []


def test_a_wrong_sign_is_called_one() -> None:
    found = questions(
        CASE, [ScaleForce(turns=11.0, raise_m=0.4, force_n=-30.0, way=Way.DOWN)], DRAWS
    )
    assert "wrong sign" in found[0].finding.remedies[0].sentence


def test_two_that_contradict_stand_side_by_side() -> None:
    low, high = (float(LIKELY.hand_forces(11.0, 0.5 * TRAVEL)[way][0]) for way in (1, 0))
    seen = [
        WEIGHED,
        ScalePair(turns=11.0, raise_m=0.5 * TRAVEL, down_n=high, up_n=low),
        GuidedStall(turns=6.0, raise_m=0.95 * TRAVEL),
    ]
    (question,) = questions(CASE, seen, DRAWS)
    assert question.about == (1, 2)
    assert question.finding.id == "prove.contradiction"
    one, other, expected, off = question.finding.figures
    assert other.value.in_metres == pytest.approx(0.95 * TRAVEL, abs=1e-4)
    assert expected.high < other.value
    assert off.value == other.value - expected.value
    assert "off" in fill(question.finding.sentence, question.finding.figures, System.INCH)
    assert one.value == pytest.approx(high)


def test_that_it_rose_and_that_it_did_not_contradict() -> None:
    seen = [FullRise(turns=9.0, rose=True), FullRise(turns=13.0, rose=False)]
    assert asked(*seen) == [((0, 1), "prove.contradiction")]


def test_what_is_questioned_is_not_learned_from_and_not_lost() -> None:
    seen = [GuidedStall(turns=400.0, raise_m=1.0), WEIGHED]
    found = questions(CASE, seen, DRAWS)
    assert taken(seen, found) == (seen[1],)
    assert taken(seen, found, confirmed=[0]) == tuple(seen)


def test_contradicting_observations_are_both_kept() -> None:
    seen = [FullRise(turns=9.0, rose=True), FullRise(turns=13.0, rose=False)]
    assert taken(seen, questions(CASE, seen, DRAWS)) == tuple(seen)


def test_a_free_stall_teaches_nothing_even_if_it_is_held_to() -> None:
    before = learn(CASE, (), DRAWS)
    after = learn(CASE, [FreeStall(turns=8.0, raise_m=1.1)], DRAWS)
    assert np.array_equal(before.weights, after.weights)


def test_the_reason_for_refusing_a_free_stall_has_its_number() -> None:
    (question,) = questions(CASE, [FreeStall(turns=8.0, raise_m=1.2)], DRAWS)
    _, free, guided = question.finding.figures
    assert free.value > guided.value


def test_behind_a_two_way_lock_holding_proves_nothing() -> None:
    locked = replace(CASE, lock=Lock.TWO_WAY)
    held = Holding(turns=3.0, raise_m=1.0, held=True)
    assert questions(locked, [held], DRAWS)[0].finding.id == "prove.two-way-lock-holds"
    before, after = (learn(locked, each, DRAWS) for each in ((), [held]))
    assert np.array_equal(before.weights, after.weights)


def test_with_a_brake_a_time_is_evidence() -> None:
    braked = replace(CASE, brake=Brake.FITTED, brake_drag_n_m_s=0.012)
    shades = TrialShades.drawn(braked, np.full((1, 16), 0.5))
    seconds = float(shades.braked_seconds(13.0)[0])
    seen = [RiseTime(turns=13.0, seconds=seconds)]
    assert questions(braked, seen, DRAWS) == ()
    before, after = (learn(braked, each, DRAWS) for each in ((), seen))
    widths = [each.span(each.shades.least_turns) for each in (before, after)]
    assert widths[1].high - widths[1].low < 0.8 * (widths[0].high - widths[0].low)
