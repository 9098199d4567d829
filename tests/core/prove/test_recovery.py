"""A thousand seeded shades with known parameters, tested at a simulated bench and recovered.

Once the true shades are drawn as the model draws them: then nine in ten of the 90 % ranges
must hold the truth, neither more nor fewer. Once they differ from every model, as a real
shade does: then the ranges must still be honest, and narrow enough to be of use.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from benchmarks.prove import planned_turns, stalls
from benchmarks.simulated_bench import TrueShade, some_case
from numpy.typing import NDArray
from scipy.stats import qmc

from foldwright.core.facts.proving import HAND_UNSTEADINESS, WEIGHING_SPREAD
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Span
from foldwright.core.prove.learning import Learned, learn
from foldwright.core.prove.observing import Observation, ScalePair, SpringTorque, Weighed
from foldwright.core.prove.true_shade import TrialShades

SHADES = 1000
DRAWS = qmc.Sobol(16, seed=1).random(2048)
GRAVITY = 9.80665
Reals = NDArray[np.float64]


@pytest.fixture(scope="module")
def case() -> LiftCase:
    return some_case(np.random.default_rng(3))


@pytest.fixture(scope="module")
def recovered(case: LiftCase) -> list[tuple[int, Learned]]:
    """Weigh the panel, measure the spring, read a scale at two heights, and learn."""
    chance = np.random.default_rng(11)
    truths = TrialShades.drawn(case, chance.random((SHADES, 16)))
    seen = _bench(truths, 11.0, chance)
    return [(place, learn(case, seen[place], DRAWS)) for place in range(SHADES)]


def _bench(
    truths: TrialShades, turns: float, chance: np.random.Generator
) -> list[list[Observation]]:
    """Test all shades at once, every reading with the spread that the model gives it."""
    count, share = truths.cloth_scale.size, float(WEIGHING_SPREAD.value)
    kilograms = truths.panel_n / GRAVITY * chance.normal(1, share, count)
    torques = truths.trials.rate_n_m_turn * 15.0 * chance.normal(1, share, count)
    seen: list[list[Observation]] = [
        [Weighed(mass_kg=float(kg)), SpringTorque(turns=15.0, torque_n_m=float(torque))]
        for kg, torque in zip(kilograms, torques, strict=True)
    ]
    for height in (0.25, 0.75):
        raise_m = height * truths.travel_m
        down, up = truths.hand_forces(turns, raise_m)
        rough = truths.roughness_n * chance.normal(size=count)
        wavers = HAND_UNSTEADINESS.value * chance.normal(size=(2, count))
        for place, noted in enumerate(seen):
            noted.append(
                ScalePair(
                    turns=turns,
                    raise_m=raise_m,
                    down_n=float((down + rough + wavers[0])[place]),
                    up_n=float((up + rough + wavers[1])[place]),
                )
            )
    return seen


QUANTITIES = {
    "rate": lambda shades: shades.trials.rate_n_m_turn,
    "weight": lambda shades: shades.panel_n,
    "friction with the load": lambda shades: shades.trials.load_friction,
    "constant friction": lambda shades: shades.trials.constant_friction_n_m,
    "lost turns": lambda shades: shades.miscount_turns,
    "least turns": lambda shades: shades.least_turns,
}


@pytest.mark.parametrize("name", QUANTITIES)
def test_nine_in_ten_ranges_hold_the_truth(
    name: str, case: LiftCase, recovered: list[tuple[int, Learned]]
) -> None:
    """A thousand shades leave about one per cent of chance; another two are allowed."""
    quantity = QUANTITIES[name]
    truth = quantity(TrialShades.drawn(case, np.random.default_rng(11).random((SHADES, 16))))
    spans = [learned.span(quantity(learned.shades)) for _, learned in recovered]
    assert np.mean(_holds(spans, truth)) == pytest.approx(0.90, abs=0.03)


def _holds(spans: list[Span], truths: Reals) -> list[bool]:
    pairs = zip(spans, truths.tolist(), strict=True)
    return [span.low <= truth <= span.high for span, truth in pairs]


def test_what_was_measured_is_recovered_closely(
    case: LiftCase, recovered: list[tuple[int, Learned]]
) -> None:
    truths = TrialShades.drawn(case, np.random.default_rng(11).random((SHADES, 16)))
    rates = np.array([learned.span(each.trials.rate_n_m_turn).likely
                      for _, learned in recovered for each in (learned.shades,)])  # fmt: skip
    off = rates / truths.trials.rate_n_m_turn - 1
    assert np.std(off) < WEIGHING_SPREAD.value
    assert abs(np.mean(off)) < 0.002


@pytest.fixture(scope="module")
def unlike() -> list[tuple[TrueShade, Learned]]:
    """Stall a thousand shades that differ from every model, once each."""
    chance = np.random.default_rng(20260504)
    cases = [some_case(chance) for _ in range(20)]
    planned = [planned_turns(each) for each in cases]
    found = []
    for place in range(SHADES):
        true = TrueShade.drawn(cases[place % 20], chance)
        seen = stalls(1)(true, planned[place % 20], chance)
        found.append((true, learn(true.case, seen, DRAWS)))
    return found


def test_one_stall_narrows_honestly(unlike: list[tuple[TrueShade, Learned]]) -> None:
    spans = [learned.span(learned.shades.least_turns) for _, learned in unlike]
    truth = np.array([true.least_turns for true, _ in unlike])
    assert 0.88 <= np.mean(_holds(spans, truth)) <= 0.95
    assert np.median([span.high - span.low for span in spans]) <= 1.7


def test_the_planned_turns_lift_nearly_all(unlike: list[tuple[TrueShade, Learned]]) -> None:
    planned = {id(true.case): 0.0 for true, _ in unlike}
    planned = {key: planned_turns(next(t.case for t, _ in unlike if id(t.case) == key))
               for key in planned}  # fmt: skip
    assert np.mean([planned[id(true.case)] >= true.least_turns for true, _ in unlike]) >= 0.98


def test_learning_is_the_same_every_time(case: LiftCase) -> None:
    seen = [Weighed(mass_kg=1.6), SpringTorque(turns=15.0, torque_n_m=0.5)]
    first, second = (learn(case, seen, DRAWS) for _ in range(2))
    assert np.array_equal(first.weights, second.weights)


def test_the_order_of_what_was_noted_does_not_matter(case: LiftCase) -> None:
    rate = case.spring.rate_n_m_turn.likely  # type: ignore[union-attr]
    seen = [
        Weighed(mass_kg=float(TrialShades.drawn(case, DRAWS[:1] * 0 + 0.5).panel_n[0]) / GRAVITY),
        SpringTorque(turns=15.0, torque_n_m=15 * rate),
    ]
    first, second = (learn(case, each, DRAWS) for each in (seen, seen[::-1]))
    assert first.evidence == pytest.approx(second.evidence)


def test_a_shade_without_bar_spread_is_learnt_too(case: LiftCase) -> None:
    exact = replace(case, bar_mass_spread=0.0, cloth_mass_spread=0.0)
    assert learn(exact, [SpringTorque(turns=15.0, torque_n_m=0.5)], DRAWS).explaining > 0
