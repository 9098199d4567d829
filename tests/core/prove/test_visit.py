"""Years later: the record and one observation say what to turn."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from benchmarks.simulated_bench import TrueShade, some_case
from scipy.stats import qmc

from foldwright.core.prove.advising import advise
from foldwright.core.prove.learning import learn
from foldwright.core.prove.visit import Since, revisit

DRAWS = qmc.Sobol(16, seed=1).random(2048)
CASE = some_case(np.random.default_rng(3))


def visited(chance: np.random.Generator, years: float, lost: float) -> tuple[bool, float, float]:
    """Prove a shade, let its spring tire, stall it once: held, width with and without record."""
    true = TrueShade.drawn(CASE, chance)
    some = round(1.4 * true.least_turns) / 2
    stall = true.stall(some, chance)
    assert stall is not None
    record = (true.weighed(chance), true.scale(10.0, 0.3, chance), stall)
    tired = replace(true, rate=true.rate * (1 - lost))
    now = tired.stall(some, chance)
    assert now is not None
    visit = revisit(CASE, Since(record=record, turns=10.0, years=years), [now], DRAWS)
    alone = advise(learn(CASE, [now], DRAWS), 10.0).least_turns
    least = visit.advice.least_turns
    return (
        least.low <= tired.least_turns <= least.high,
        least.high - least.low,
        alone.high - alone.low,
    )


def test_the_record_and_one_stall_tell_the_turns() -> None:
    chance = np.random.default_rng(3)
    rows = [visited(chance, 8.0, float(chance.uniform(0, 0.16))) for _ in range(60)]
    covered, with_record, alone = (np.array(column) for column in zip(*rows, strict=True))
    assert np.mean(covered) >= 0.85
    assert np.median(with_record) < np.median(alone)


def test_a_tired_spring_is_called_tired() -> None:
    chance = np.random.default_rng(8)
    true = TrueShade.drawn(CASE, chance)
    stall = true.stall(7.0, chance)
    record = tuple(each for each in (true.scale(10.0, 0.3, chance), stall) if each)
    fresh, tired = (
        revisit(
            CASE,
            Since(record=record, turns=10.0, years=10.0),
            [replace(true, rate=true.rate * share).scale(10.0, 0.3, chance)],
            DRAWS,
        )
        for share in (1.0, 0.85)
    )
    assert tired.torque_left.value < fresh.torque_left.value - 0.05
    assert tired.advice.least_turns.value > fresh.advice.least_turns.value


def test_on_the_day_itself_nothing_is_lost() -> None:
    chance = np.random.default_rng(8)
    true = TrueShade.drawn(CASE, chance)
    seen = (true.scale(10.0, 0.3, chance),)
    visit = revisit(CASE, Since(record=seen, turns=10.0, years=0.0), (), DRAWS)
    assert visit.torque_left.value == pytest.approx(1.0)
    expected = advise(learn(CASE, seen, DRAWS), 10.0)
    assert visit.advice.least_turns.value == pytest.approx(expected.least_turns.value)
