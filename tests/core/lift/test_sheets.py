"""What a spring's sheet says, and what it leaves open."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.core.layouts import HABITS

from foldwright.core.facts.records import Spring
from foldwright.core.lift.sheet import read_spring
from foldwright.core.lift.sheet_parts import SpringReading
from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase, spring_trials
from foldwright.core.quantity.length import Length
from foldwright.core.why.source import Status

WIRE = Spring(
    name="wire",
    wire=Length.mm("2.1"),
    mean_coil=Length.mm("22.5"),
    active_coils=480.0,
)
LOAD = Spring(
    name="load",
    load_n=15.0,
    load_drop=Length.mm(1500),
    load_tube_outside=Length.mm(38),
    load_turns=12.0,
)


def read(spring: Spring) -> SpringReading:
    reading = read_spring(spring, HABITS)
    assert reading is not None
    return reading


def ids(reading: SpringReading) -> set[str]:
    return {finding.id for finding in reading.findings}


def test_a_rate_alone_leaves_the_strength_to_be_asked() -> None:
    reading = read(Spring(name="S", rate_n_m_turn=0.03))
    assert reading.greatest_turns is None
    assert ids(reading) == {"lift.spring-strength"}
    assert Span.of_figure(reading.rate) == Span.within(0.03, HABITS.rate_spread.value)


def test_a_rate_with_its_torque_gives_the_turns() -> None:
    reading = read(Spring(name="S", rate_n_m_turn=0.03, greatest_torque_n_m=0.9, rate_spread=0.1))
    assert reading.greatest_turns is not None
    turns = Span.of_figure(reading.greatest_turns)
    assert (turns.low, turns.likely, turns.high) == pytest.approx((27.2727, 30, 33.3333), rel=1e-5)


def test_torque_and_turns_give_the_rate() -> None:
    reading = read(Spring(name="S", greatest_torque_n_m=0.9, greatest_turns=30.0))
    assert reading.rate.value == pytest.approx(0.03)
    assert reading.greatest_turns is not None
    assert reading.greatest_turns.value == 30
    assert not reading.findings


def test_a_sheet_that_contradicts_itself_is_asked_about() -> None:
    per_radian = Spring(
        name="S", rate_n_m_turn=0.03 / (2 * np.pi), greatest_torque_n_m=0.9, greatest_turns=30.0
    )
    assert ids(read(per_radian)) == {"lift.spring-contradicts"}
    agreeing = replace(per_radian, rate_n_m_turn=0.0305)
    assert ids(read(agreeing)) == set()


def test_a_spring_measured_on_the_bench_says_so() -> None:
    reading = read(Spring(name="S", rate_n_m_turn=0.03, greatest_turns=30.0, measured=True))
    assert reading.rate.inputs[0].status is Status.MEASURED


def test_measured_wire_holds_both_constants_in_its_range() -> None:
    reading = read(WIRE)
    rate = Span.of_figure(reading.rate)
    practical = 207e9 * 0.0021**4 / (10.8 * 0.0225 * 480)
    assert rate.likely == pytest.approx(practical)
    assert rate.low < practical < practical * 10.8 / 10.186 <= rate.high * 1.0001
    assert "older set, metric" in reading.greatest_turns.inputs[0].because  # type: ignore[union-attr]
    (note,) = reading.findings
    lowest, highest = note.figures
    assert highest.value / lowest.value == pytest.approx(2003 / 1825, abs=0.02)


def test_the_arbor_may_stop_the_coil_before_its_strength_does() -> None:
    free, tight = read(WIRE), read(replace(WIRE, arbor=Length.mm("17.7")))
    assert free.greatest_turns is not None
    assert tight.greatest_turns is not None
    assert tight.greatest_turns.value < free.greatest_turns.value
    assert tight.case.greatest_turns == pytest.approx(tight.greatest_turns.value)


def test_a_load_with_tube_and_turns_is_determined() -> None:
    reading = read(LOAD)
    torque = 15.0 * 0.019 * 1.12 / 0.95
    assert reading.rate.value == pytest.approx(torque / 12)
    assert reading.greatest_turns is not None
    assert reading.greatest_turns.value == pytest.approx(12 + 1.5 / (np.pi * 0.038))
    assert not reading.findings


@pytest.mark.parametrize("unknown", ["load_tube_outside", "load_turns"])
def test_a_load_that_leaves_something_open_keeps_every_pair(unknown: str) -> None:
    reading = read(replace(LOAD, **{unknown: None}))
    assert ids(reading) == {"lift.spring-sheet"}
    assert reading.rate.high is not None
    assert reading.rate.low is not None
    assert reading.rate.high > 1.5 * reading.rate.low
    assert len(reading.case.pairs) == 9


def test_every_pair_lifts_what_the_sheet_says() -> None:
    spring = replace(LOAD, load_turns=None)
    torque, travel = 15.0 * 0.019 * 1.12 / 0.95, 1.5 / (np.pi * 0.038)
    for rate, strongest in read(spring).case.pairs:
        assert torque <= strongest - rate * travel + 1e-12


def test_greatest_turns_on_the_sheet_bound_the_pairs() -> None:
    spring = replace(LOAD, load_turns=None, greatest_turns=22.0)
    pairs = read(spring).case.pairs
    travel = 1.5 / (np.pi * 0.038)
    assert len(pairs) < 9
    for rate, strongest in pairs:
        assert strongest / rate == pytest.approx(22)
        assert 15.0 * 0.019 * 1.12 / 0.95 / rate <= 22 - travel


@pytest.mark.parametrize("turns", [12.0, None])
def test_greatest_turns_on_the_sheet_are_told_as_the_sheet_says_them(turns: float | None) -> None:
    reading = read(replace(LOAD, load_turns=turns, greatest_turns=26.0))
    assert reading.greatest_turns is not None
    assert reading.greatest_turns.value == pytest.approx(26)
    assert reading.greatest_turns.status is Status.SUPPLIER


def test_a_sheet_that_says_nothing_is_not_read() -> None:
    assert read_spring(Spring(name="S", greatest_turns=30.0), HABITS) is None


def test_trial_springs_keep_their_pairs_together() -> None:
    case = SpringCase(pairs=((0.02, 0.5), (0.04, 1.4), (0.03, 0.9)))
    draws = np.random.default_rng(3).random(3000)
    trials = spring_trials(case, draws, draws)
    assert trials.greatest_turns is not None
    drawn = set(zip(trials.rate_n_m_turn, trials.greatest_turns.round(6), strict=True))
    assert drawn == {(0.02, 25.0), (0.03, 30.0), (0.04, 35.0)}
    shares = [np.mean(trials.rate_n_m_turn == rate) for rate in (0.02, 0.03, 0.04)]
    assert shares == pytest.approx([1 / 3] * 3, abs=0.03)


def test_the_lesser_of_two_strengths_counts() -> None:
    middle = np.array([0.5])
    case = SpringCase(rate_n_m_turn=0.03, greatest_torque_n_m=0.9, greatest_turns=25.0)
    trials = spring_trials(case, middle, middle)
    assert trials.greatest_turns is not None
    assert trials.greatest_turns[0] == 25
