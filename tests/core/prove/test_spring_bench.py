"""A spring on bar and weight, simulated with unsteady hands, is found within its ranges."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from foldwright.core.prove.spring_bench import BarReading, SpringBench, characterise

G, KG = 9.80665, 0.3


def bench(
    chance: np.random.Generator | None, rate: float, hysteresis: float, still: float, play: float
) -> SpringBench:
    """Balance a third of a kilogram on a bar at three numbers of turns."""

    def waver(spread: float) -> float:
        return float(chance.normal(0, spread)) if chance else 0.0

    readings = []
    for turns in (8.0, 12.0, 16.0):
        torque = rate * (turns - play + waver(0.03))
        loss = hysteresis * torque + still
        winding, back = ((torque + sign * loss) / (G * KG) + waver(0.003) for sign in (1, -1))
        readings.append(BarReading(turns=turns, winding_m=winding, back_m=back))
    return SpringBench(weight_kg=KG, readings=tuple(readings))


def test_without_wavering_it_is_found_exactly() -> None:
    found = characterise(bench(None, 0.035, 0.05, 0.03, 0.0)).result
    assert found is not None
    assert found.rate.value == pytest.approx(0.035, rel=1e-3)
    assert found.lost_turns.value == pytest.approx(0.0, abs=0.02)


def test_nine_in_ten_ranges_hold_the_truth() -> None:
    """Five hundred seeded springs, each read at three numbers of turns."""
    chance, held = np.random.default_rng(12), []
    for _ in range(500):
        rate, play = chance.uniform(0.02, 0.06), chance.normal(0, 0.15)
        found = characterise(bench(chance, rate, 0.05, 0.03, play)).result
        assert found is not None
        held.append(found.rate.low <= rate <= found.rate.high)
    assert np.mean(held) == pytest.approx(0.90, abs=0.04)


def test_a_bar_of_its_own_weight_counts() -> None:
    light = bench(None, 0.035, 0.05, 0.03, 0.0)
    heavy = replace(
        light,
        bar_kg=0.2,
        bar_middle_m=0.1,
        readings=tuple(
            replace(each, winding_m=each.winding_m - 0.02 / KG, back_m=each.back_m - 0.02 / KG)
            for each in light.readings
        ),
    )
    one, other = (characterise(each).result for each in (light, heavy))
    assert one is not None
    assert other is not None
    assert other.rate.value == pytest.approx(one.rate.value)


def test_one_reading_is_enough_for_a_wide_range() -> None:
    many = bench(None, 0.035, 0.05, 0.03, 0.0)
    few = characterise(replace(many, readings=many.readings[:1])).result
    all_ = characterise(many).result
    assert few is not None
    assert all_ is not None
    assert few.rate.high - few.rate.low > 1.3 * (all_.rate.high - all_.rate.low)


@pytest.mark.parametrize(
    ("kilograms", "reading", "name"),
    [
        (1.0, None, "unread"),
        (0.0, BarReading(turns=8, winding_m=0.03, back_m=0.02), "unread"),
        (1.0, BarReading(turns=8, winding_m=0.20, back_m=0.23), "backwards"),
        (1.0, BarReading(turns=-8, winding_m=0.03, back_m=0.02), "from-nothing"),
    ],
)
def test_readings_that_cannot_be_are_asked_about(
    kilograms: float, reading: BarReading | None, name: str
) -> None:
    readings = (reading, reading) if reading else ()
    answer = characterise(SpringBench(weight_kg=kilograms, readings=readings))
    assert answer.result is None
    assert [finding.id for finding in answer.findings] == [f"prove.spring-{name}"]
