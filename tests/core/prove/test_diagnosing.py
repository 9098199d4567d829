"""Each cause is put into a simulated shade, tested at the bench, and must be named first."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from benchmarks.prove import much
from benchmarks.simulated_bench import TrueShade, some_case
from scipy.stats import qmc

from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Span
from foldwright.core.prove.advice import CauseName
from foldwright.core.prove.diagnosing import diagnose
from foldwright.core.prove.hypotheses import all_hypotheses
from foldwright.core.prove.learning import learn
from foldwright.core.prove.noting import BarLevel, Cycled
from foldwright.core.prove.observing import (
    GuidedStall,
    Observation,
    ScalePair,
    SpringTorque,
    Weighed,
)
from foldwright.core.prove.trouble import SOUND, Trouble
from foldwright.core.prove.true_shade import TrialShades
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill

DRAWS = qmc.Sobol(16, seed=1).random(1024)
TURNS = 12.0
CASE = some_case(np.random.default_rng(3))


def sick(trouble: Trouble = SOUND, case: LiftCase = CASE, from_share: float = 0.5) -> TrialShades:
    """Give one likeliest shade with one trouble, half of its range, from some height on."""
    middle = np.full((1, 16), 0.5)
    found = TrialShades.drawn(case, middle, trouble)
    from_m = np.array([from_share * found.travel_m])
    # What stands in for the height roughs the top up too; a truth needs no roughness.
    return replace(found, ailing=_from(found, from_m), rough_top_n=np.zeros(1))


def _from(found: TrialShades, from_m: np.ndarray) -> object:
    return type(found.ailing)(
        **{name: getattr(found.ailing, name) for name in ("pull", "drag_n", "caught_n", "climbed")},
        from_m=from_m,
    )


def scale(shade: TrialShades, share: float, turns: float = TURNS) -> ScalePair:
    raise_m = share * shade.travel_m
    down, up = (float(force[0]) for force in shade.hand_forces(turns, raise_m))
    return ScalePair(turns=turns, raise_m=raise_m, down_n=down, up_n=up)


def stall(shade: TrialShades, turns: float) -> GuidedStall:
    return GuidedStall(turns=turns, raise_m=float(shade.stalls_at(turns)[0]))


def weighed(shade: TrialShades) -> Weighed:
    return Weighed(mass_kg=float(shade.panel_n[0]) / 9.80665)


def heavy() -> LiftCase:
    return replace(
        CASE,
        load=replace(CASE.load, cloth_n_m=1.4 * CASE.load.cloth_n_m, bar_n=1.5 * CASE.load.bar_n),
    )


def stiffly_sprung() -> LiftCase:
    assert CASE.spring is not None
    assert isinstance(CASE.spring.rate_n_m_turn, Span)
    rate = CASE.spring.rate_n_m_turn.times(1.5)
    return replace(CASE, spring=replace(CASE.spring, rate_n_m_turn=rate))


def benches() -> dict[CauseName, list[Observation]]:
    sound, dragging = sick(), sick(Trouble(drag_n=(9.0, 9.0)))
    caught = sick(Trouble(caught_n=(18.0, 18.0)))
    climbed = sick(Trouble(climbed=(0.1, 0.1)), from_share=0.4)
    loose, wrong = sick(Trouble(pull=(0.1, 0.1))), sick(Trouble(pull=(-1.0, -1.0)))
    other = sick(case=stiffly_sprung())
    return {
        CauseName.NOTHING: [scale(sound, 0.25), scale(sound, 0.75), stall(sound, 7.0)],
        CauseName.WEIGHT_MISTAKEN: [weighed(sick(case=heavy())), scale(sick(case=heavy()), 0.75)],
        CauseName.OTHER_SPRING: [
            scale(other, 0.25),
            SpringTorque(turns=15.0, torque_n_m=float(15 * other.trials.rate_n_m_turn[0])),
        ],
        CauseName.BAR_DRAGS: [scale(dragging, 0.25), scale(dragging, 0.75)],
        CauseName.RING_CAUGHT: [stall(caught, TURNS), stall(caught, TURNS + 1)],
        CauseName.CLIMBED: [
            scale(climbed, 0.75),
            BarLevel(raise_m=climbed.travel_m, right_above_left_m=0.017),
            Cycled(cycles=10, cords_jumped=2),
        ],
        CauseName.NOT_ENGAGED: [scale(loose, 0.25), scale(loose, 0.75)],
        CauseName.WRONG_SIDE: [scale(wrong, 0.25)],
        CauseName.MISCOUNTED: [
            weighed(sound),
            SpringTorque(turns=15.0, torque_n_m=float(15 * sound.trials.rate_n_m_turn[0])),
            *(replace(scale(sound, share), turns=TURNS - 3) for share in (0.25, 0.75)),
        ],
    }


@pytest.mark.parametrize("name", CauseName, ids=lambda name: name.value)
def test_the_cause_is_named_first(name: CauseName) -> None:
    causes = diagnose(CASE, benches()[name], DRAWS).causes
    assert causes[0].name is name
    assert causes[0].chance.value > 0.6


@pytest.mark.parametrize("name", CauseName, ids=lambda name: name.value)
def test_each_cause_is_told_with_its_numbers_and_a_test(name: CauseName) -> None:
    for cause in diagnose(CASE, benches()[name], DRAWS).causes:
        told = [
            fill(words, cause.figures, system)
            for words in (cause.sentence, cause.test)
            for system in System
        ]
        assert all("{" not in words and "nan" not in words for words in told)
        assert cause.test


STRANGE = (
    CauseName.WEIGHT_MISTAKEN,
    CauseName.OTHER_SPRING,
    CauseName.RING_CAUGHT,
    CauseName.NOT_ENGAGED,
    CauseName.WRONG_SIDE,
    CauseName.MISCOUNTED,
)


@pytest.mark.parametrize("name", STRANGE, ids=lambda name: name.value)
def test_gross_trouble_is_seen_without_a_diagnosis(name: CauseName) -> None:
    assert learn(CASE, benches()[name], DRAWS).contradicted


def test_sound_shades_do_not_contradict_their_case() -> None:
    """A hundred that differ from every model, tested six ways."""
    chance = np.random.default_rng(17)
    trues = [TrueShade.drawn(CASE, chance) for _ in range(100)]
    learned = [learn(CASE, much(true, 10.0, chance), DRAWS) for true in trues]
    assert sum(each.contradicted for each in learned) <= 1


def test_the_chances_are_shares_of_one_and_fall() -> None:
    chances = [
        each.chance.value for each in diagnose(CASE, benches()[CauseName.BAR_DRAGS], DRAWS).causes
    ]
    assert sum(chances) == pytest.approx(1.0)
    assert chances == sorted(chances, reverse=True)


def test_with_nothing_noted_the_chances_are_those_before() -> None:
    before = {hypothesis.name: chance for hypothesis, chance in all_hypotheses()}
    found = diagnose(CASE, (), DRAWS)
    assert not found.contradicted
    for cause in found.causes:
        assert cause.chance.value == pytest.approx(before[cause.name], abs=1e-9)


def test_a_sound_shade_is_seldom_called_sick() -> None:
    """Of shades that differ from every model, as real ones do, at most one in ten."""
    chance = np.random.default_rng(5)
    called = []
    for _ in range(30):
        true = TrueShade.drawn(CASE, chance)
        seen = [true.scale(TURNS, share, chance) for share in (0.25, 0.75)]
        called.append(diagnose(CASE, [*seen, true.weighed(chance)], DRAWS).contradicted)
    assert np.mean(called) <= 0.1
